"""Reads a spec and its figures."""

from dataclasses import replace

from ..core.figure import ROLES, Figure, NoFigure, NotKnown, Plain, Spec
from ..core.kinds import KINDS
from ..core.quantity import Quantity, read_quantity
from ..core.variation import Varies
from .read_varies import read_varies
from .scalars import Cites, Identifier, Measure, Number, Refers, Says, Text, ThreadText
from .shape import Fields, ListOf, Raw, Record, Report, wrong_shape
from .yaml_tree import Mapping, Node, Scalar, Sequence

_NAME = Text("a name")
_NAMES = ListOf(_NAME, single=True)
_WORDS = Raw((Text(),), varies=True)
_FIGURE_KEYS = {
    "role": Text("a role", ROLES), "by": _NAMES, "is": _WORDS, "from": Raw((Refers(),), varies=True),
    "source": ListOf(Cites(), single=True), "condition": Text(), "because": Says(),
    "kept for the record": Identifier(), "superseded by": Identifier(), "in doubt": Says(),
    "to be found by": Says(), "when": Text(), "was": _NAMES,
}
FIGURE = Fields("a figure", _FIGURE_KEYS, ("role",))
SPEC = Fields("a spec", {
    "label": Text(), "kind": Text("a kind", tuple(KINDS)), "condition": Text(), "places": _NAME,
    "at radius": Measure("radius"), "viewpoint": Text(), "thread": _WORDS, "grade": _WORDS, "surface": _WORDS,
    "wrench": _NAME, "adapter": _NAME, "passes": Raw((Number(most=10, least=1), ListOf(Measure("torque")))),
    "limited by": Says(), "must not out-pull": Refers(), "checked against": _WORDS, "note": Says(), "figures": ListOf(FIGURE),
    **_FIGURE_KEYS,
}, ("label", "kind"))
_ONE_FIGURE = frozenset(_FIGURE_KEYS) - {"condition", "was"}


def read_spec(name: str, record: Record, main_carrier: str, report: Report) -> Spec | None:
    """A spec from its record. `main_carrier` is the one whose variant counts where `by:` is not written."""
    before = len(report.findings)
    spec = _read_spec(name, record, main_carrier, report)
    if len(report.findings) > before:
        report.not_whole.add(name)
    return spec


def _read_spec(name: str, record: Record, main_carrier: str, report: Report) -> Spec | None:
    kind = record.get("kind")
    if kind is None:
        return None                                   # already reported
    by = tuple(record.get("by") or (main_carrier,))
    direct = [key for key in record if key in _ONE_FIGURE]
    figures = [read_figure(figure, kind, main_carrier, report) for figure in record.get("figures", ())]
    if figures and [key for key in direct if key != "by"]:
        key = next(key for key in direct if key != "by")
        report.error(record.at(key), "wrong-shape", f"'{key}' stands beside 'figures'", "move it into one of the figures")
    elif not figures and direct:
        record.setdefault("role", "target")
        figures = [read_figure(record, kind, main_carrier, report)]
    return Spec(
        id=name, label=record.get("label", name), kind=kind, condition=record.get("condition"),
        figures=tuple(figure for figure in figures if figure), place=record.place, places=record.get("places"),
        at_radius=record.get("at radius"), viewpoint=record.get("viewpoint"),
        thread=_varies(record, "thread", by, _or_none(ThreadText()), report),
        grade=_varies(record, "grade", by, Text().read, report),
        surface=_varies(record, "surface", by, Text().read, report),
        wrench=record.get("wrench"), adapter=record.get("adapter"), **_passes(record, report),
        limited_by=record.get("limited by"), must_not_outpull=record.get("must not out-pull"),
        checked_against=_varies(record, "checked against", by, _quantity_of(None), report),
        note=record.get("note"), was=record.get("was", ()), key_places=record.key_places)


def read_figure(record: Record, kind: str, main_carrier: str, report: Report) -> Figure | None:
    by = tuple(record.get("by") or (main_carrier,))
    worth = _varies(record, "is", by, _quantity_of(kind), report)
    comes_from, none = _without_none(_varies(record, "from", by, _or_none(Refers()), report))
    worth = worth or none
    if worth is None and comes_from is None:
        if not {"is", "from"} & (record.key_places.keys() | record.misspelt):
            report.error(record.place, "missing-key", "this figure has no 'is'",
                         "write 'is:' and the figure, or 'is: not known yet'")
        return None
    if worth and any(type(value) is NotKnown for value in worth.values()) and "to be found by" not in record:
        report.error(record.at("is"), "missing-key", "a figure that is not known yet says nobody will find it",
                     "write 'to be found by:' and who, how")
    return Figure(
        role=record.get("role", "target"), worth=worth, comes_from=comes_from, sources=record.get("source", ()),
        because=record.get("because"), condition=record.get("condition"), when=record.get("when"),
        kept_for_record=record.get("kept for the record"), superseded_by=record.get("superseded by"),
        in_doubt=record.get("in doubt"), to_be_found_by=record.get("to be found by"), was=record.get("was", ()),
        place=record.place, by_said="by" in record)


def _varies(record: Record, key: str, by: tuple[str, ...], read, report: Report):
    node = record.get(key)
    return read_varies(node, by, read, report) if node is not None else None


def _without_none(comes_from: Varies | None) -> tuple[Varies | None, Varies | None]:
    """The references, and apart from them the cases that deliberately have no figure: those are known without working out."""
    if comes_from is None:
        return None, None
    cases = [tuple(case for case in comes_from.cases if (type(case.value) is NoFigure) == none) for none in (False, True)]
    references, none = (replace(comes_from, cases=some) if some else None for some in cases)
    return references, none


def _or_none(shape):
    def read(node: Node, report: Report):
        if type(node) is Scalar and node.text.strip() == "none":
            return NoFigure()
        return shape.read(node, report)
    return read


_NO_NUMBER = "write the figure and its unit; 'not known yet' where nobody knows it; 'none' where there is deliberately none"


def _quantity_of(kind: str | None):
    """Reads one worth. `kind` None leaves the words: the kind is that of the figure compared with."""
    def read(node: Node, report: Report):
        if type(node) is not Scalar:
            return wrong_shape(node, report, "one figure with its unit")
        text = " ".join(node.text.split())
        if not text:
            report.error(node.place, "empty-value", "nothing stands here", "write the figure, or 'not known yet'")
            return None
        if text == "not known yet":
            return NotKnown()
        if text == "none":
            return NoFigure()
        if kind in (None, "thread", "none"):
            return Plain(text)
        quantity = read_quantity(text, kind)
        if isinstance(quantity, Quantity):
            return quantity
        report.error(node.place, "quantity", quantity.message, quantity.mend if any(map(str.isdigit, text)) else _NO_NUMBER)
        return None
    return read


def _passes(record: Record, report: Report) -> dict:
    """`passes: 3`, or the torque of each pass."""
    node = record.get("passes")
    if node is None:
        return {}
    if type(node) is Sequence:
        shape = Measure("torque")
        return {"passes": tuple(p for p in (shape.read(item, report) for item in node.items) if p is not None)}
    if type(node) is Mapping:
        wrong_shape(node, report, "how many passes, or a list of torques")
        return {}
    return {"pass_count": Number(most=10, least=1).read(node, report)}
