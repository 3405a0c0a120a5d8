"""Reads one procedure file."""

from ..core.finding import nearest
from ..core.machine import Machine
from ..core.procedure import Computed, Need, Needs, Note, PressNeed, Procedure, Tried
from .read_picture import PICTURE, read_picture
from .read_spec import SPEC, read_spec
from .read_step import STEP, read_step
from .read_varies import read_varies
from .scalars import Date, Identifier, Measure, Number, Says, Text, YesNo, map_of
from .shape import Fields, ListOf, Raw, Record, Report, wrong_shape
from .yaml_tree import Mapping, Node, Scalar

_NAMES = ListOf(Text("a name"), single=True)
FATES = ("reuse", "reclaim", "renew", "make", "one-use", "undecided")
NOTE_KINDS = ("open decision", "on trial", "answered question", "symptom")
_COUNTED = Text("how it is counted", ("out", "in", "out and in"))
_PRESS = Fields("a press", {"press": Text(), "gauge": Text()}, ("press", "gauge"))
_TOOL = Fields("a tool", {"tool": Text(), "wrench": Text(), "adapter": Text(), "scale": Text(), "tester": Text(),
                          "made": Text(), "count": Text(), "counted": _COUNTED, "note": Says(), "picture": PICTURE}, brief="tool")
_ITEM = Fields("a part or supply", {"item": Text(), "number": Text(), "count": Text(), "counted": _COUNTED, "one use": YesNo(),
                                    "fate": Text("a fate", FATES), "note": Says(), "picture": PICTURE}, ("item",), brief="item")
_NEEDS = Fields("needs", {"presses": ListOf(_PRESS), "tools": ListOf(_TOOL), "supplies": ListOf(_ITEM),
                          "parts": ListOf(_ITEM)}, ("presses", "tools", "supplies", "parts"))
_COMPUTED = Fields("a computed result", {"label": Text(), "working": Text(), "by": _NAMES, "was": _NAMES}, ("working",),
                   extra=Raw((Text(),), varies=True))
_NOTE = Fields("a note", {"id": Identifier(), "kind": Text("a kind of note", NOTE_KINDS), "says": Says(),
                          "review": Date(), "causes": ListOf(Says()), "leads to": _NAMES}, ("id", "kind", "says"))
_TRIED = Fields("where it was tried", {"serial": Text(), "on": Date()}, ("serial", "on"))
PROCEDURE = Fields("a procedure", {
    "title": Text(), "machine": Text(), "assembly": Identifier(), "summary": Says(), "after": _NAMES, "must be shut": _NAMES, "was": _NAMES,
    "applies to": _NAMES, "each": Text(), "people": Number(most=20, least=1), "skill": Says(), "time": Measure("time"),
    "tried": Raw((Text(choices=("desk",)), _TRIED)), "conditions": ListOf(Says()), "cautions": _NAMES, "needs": _NEEDS,
    "specs": map_of(SPEC), "computed": map_of(_COMPUTED), "steps": ListOf(STEP), "notes": ListOf(_NOTE),
}, ("title", "machine", "after", "people", "tried", "needs", "steps"))


def read_procedure(name: str, node: Node, machines: dict[str, Machine], report: Report) -> Procedure | None:
    """The procedure, or None when what it lacks leaves nothing to show (reported)."""
    record = PROCEDURE.read(node, report)
    if record is None or any(key not in record for key in ("title", "machine", "needs", "steps")):
        return None
    nameless = any("id" not in step or "do" not in step for step in record["steps"])
    if record.misspelt or nameless or not record["needs"].whole:
        report.not_whole |= {record.place.path, name}
    machine = machines.get(record["machine"])
    if machine is None:
        now = next((machine.id for machine in machines.values() if record["machine"] in machine.was), None)
        report.error(record.at("machine"), "unknown-reference", f"there is no machine '{record['machine']}'",
                     f"it is {now} now" if now else nearest(record["machine"], machines))
        return None
    main = machine.main.id
    each = None if record.get("each") == "none" else record.get("each")
    specs = {key: spec for key, (value, _) in record.get("specs", {}).items()
             if (spec := read_spec(key, value, main, report))}
    computed = {key: Computed(key, value.get("label") or key.replace("-", " "), value["working"], _inputs(value, main, report), place, value.get("was", ()))
                for key, (value, place) in record.get("computed", {}).items() if "working" in value}
    return Procedure(
        id=name, machine=machine.id, title=record["title"], summary=record.get("summary"),
        after=record.get("after", ()), must_be_shut=record.get("must be shut", ()),
        variants=record.get("applies to") or tuple(machine.main.variants),
        each=each, people=record.get("people", 1),
        skill=record.get("skill"), time=record.get("time"), tried=_tried(record, report),
        conditions=record.get("conditions", ()), cautions=record.get("cautions", ()),
        needs=_needs(record["needs"]), specs=specs, computed=computed,
        steps=tuple(step for step in (read_step(value, each) for value in record["steps"]) if step),
        notes=tuple(Note(n.get("id", ""), n.get("kind", ""), n["says"], n.get("review"), n.get("causes", ()),
                         n.get("leads to", ()), n.place) for n in record.get("notes", ()) if "says" in n),
        was=record.get("was", ()), place=record.place, key_places=record.key_places, assembly=record.get("assembly"))


def _tried(record: Record, report: Report) -> Tried:
    node = record.get("tried")
    if type(node) is Mapping:
        tried = _TRIED.read(node, report)
        return Tried(tried.get("serial"), tried.get("on"))
    if node is not None and not (type(node) is Scalar and node.text.strip() == "desk"):
        wrong_shape(node, report, "desk, or {serial: ..., on: 2024-05-11}")
    return Tried()


def _inputs(record: Record, main: str, report: Report) -> dict:
    by = tuple(record.get("by") or (main,))
    return {name: varies for name, node in record.items() if name not in ("label", "working", "by", "was")
            if (varies := read_varies(node, by, Text().read, report))}


def _needs(record: Record) -> Needs:
    return Needs(
        tuple(PressNeed(p["press"], p["gauge"], p.place) for p in record.get("presses", ()) if len(p) == 2),
        tuple(need for tool in record.get("tools", ()) if (need := _tool(tool))),
        tuple(_item("supply", item) for item in record.get("supplies", ()) if "item" in item),
        tuple(_item("part", item) for item in record.get("parts", ()) if "item" in item))


def _tool(record: Record) -> Need | None:
    for sort in ("wrench", "scale", "tester", "made", "tool"):
        if sort in record:
            return Need("scale" if sort == "tester" else sort, record[sort], None, record.get("count"), False, None,
                        record.get("adapter"), record.get("note"), record.place, read_picture(record), record.get("counted"))
    return None


def _item(sort: str, record: Record) -> Need:
    return Need(sort, record["item"], record.get("number"), record.get("count"), record.get("one use", False),
                record.get("fate"), None, record.get("note"), record.place, read_picture(record), record.get("counted"))
