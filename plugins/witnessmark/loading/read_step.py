"""Reads the steps of a procedure."""

from ..core.procedure import Act, IfOutside, LooseEnd, Record as Reading, Step
from ..core.kinds import KINDS
from .read_picture import PICTURE, read_picture
from .read_varies import read_selector
from .scalars import Identifier, Refers, Says, Text, YesNo
from .shape import Fields, ListOf, Record, Shape, any_schema, wrong_shape
from .yaml_tree import Mapping, Scalar

VERBS = ("run", "turn by power", "lift", "press", "fill")
_NAMED = ("lift", "press", "fill")
_NAMES = ListOf(Text("a name"), single=True)


class _ActShape(Shape):
    """`run`, `turn by power`, or `{press: hub}`."""

    def read(self, node, report):
        if type(node) is Mapping and len(node.entries) == 1 and type(node.entries[0][1]) is Scalar:
            key, thing = node.entries[0]
            if Text(choices=VERBS).read(key, report) is None:
                return None
            return Act(key.text, thing.text.strip() or None, node.place)
        if type(node) is not Scalar:
            return wrong_shape(node, report, "run, turn by power, or one of {lift: ...}, {press: ...}, {fill: ...}")
        verb = Text(choices=VERBS).read(node, report)
        if verb in _NAMED:
            report.error(node.place, "wrong-shape", f"'{verb}' does not say what", f"write {{{verb}: the thing}}")
            return None
        return verb and Act(verb, None, node.place)

    def schema(self):
        named = {"type": "object", "minProperties": 1, "maxProperties": 1, "propertyNames": {"enum": list(VERBS)}}
        return any_schema({"enum": [verb for verb in VERBS if verb not in _NAMED]}, named)


class _SelectorShape(Shape):
    wanted = "a variant, or serials 1390 to 2215"

    def of_text(self, text, node, report):
        return read_selector(node)


_ACTS = ListOf(_ActShape(), single=True)
_LOOSE_END = Fields("a loose end", {
    "id": Identifier(), "state": Says(), "because": Says(), "if forgotten": Says(), "never while open": _ACTS,
    "each": Text(), "closes in": Identifier(), "opens again": _NAMES, "tag": Text(), "was": _NAMES,
}, ("id", "state", "because", "if forgotten", "never while open"))
_IF_OUTSIDE = Fields("what to do when outside", {"above": Says(), "below": Says(), "go to": _NAMES})
_RECORD = Fields("a record", {
    "label": Text(), "spec": Refers(), "kind": Text("a kind", tuple(KINDS)), "places": Text(),
    "if outside": _IF_OUTSIDE}, ("label",), brief="label")
STEP = Fields("a step", {
    "id": Identifier(), "do": Says(), "check": Says(), "if outside": Says(), "go to": _NAMES, "cautions": _NAMES,
    "specs": ListOf(Refers(), single=True), "each": Text(), "at": Text(), "only": ListOf(_SelectorShape(), single=True),
    "acts": _ACTS, "measures": _NAMES, "opens up": _NAMES, "record": ListOf(_RECORD, single=True),
    "picture": PICTURE, "hold point": Says(), "leaves": ListOf(_LOOSE_END, single=True), "closes": _NAMES, "was": _NAMES, "note": Says(),
    "second person": YesNo(),
}, ("id", "do"))


def read_step(record: Record, each: str | None) -> Step | None:
    """A step from its record; one that does not say is done at each place of `each`, the procedure's own."""
    if "id" not in record or "do" not in record:
        return None
    return Step(
        id=record["id"], do=record["do"], check=record.get("check"), if_outside=record.get("if outside"),
        go_to=record.get("go to", ()), cautions=record.get("cautions", ()), specs=record.get("specs", ()),
        each=_group(record, "each") if "each" in record or "at" in record else each, at=record.get("at"), only=record.get("only", ()), acts=record.get("acts", ()),
        opens_up=record.get("opens up", ()), records=tuple(map(_reading, record.get("record", ()))),
        picture=read_picture(record),
        hold_point=record.get("hold point"),
        leaves=tuple(end for end in map(_loose_end, record.get("leaves", ())) if end),
        closes=record.get("closes", ()), second_person=record.get("second person", False), note=record.get("note"),
        was=record.get("was", ()), place=record.place, key_places=record.key_places, measures=record.get("measures", ()))


def _group(record: Record, key: str) -> str | None:
    return None if record.get(key) == "none" else record.get(key)


def _reading(record: Record) -> Reading:
    outside = record.get("if outside")
    return Reading(
        record.get("label", ""), record.get("spec"), record.get("kind"), record.get("places"),
        IfOutside(outside.get("above"), outside.get("below"), outside.get("go to", ())) if outside else None,
        record.place)


def _loose_end(record: Record) -> LooseEnd | None:
    if any(key not in record for key in ("id", "state", "because", "if forgotten")):
        return None
    return LooseEnd(
        record["id"], record["state"], record["because"], record["if forgotten"], record.get("never while open", ()),
        _group(record, "each"), record.get("closes in"), record.get("tag"), record.get("was", ()), record.place, record.get("opens again", ()))
