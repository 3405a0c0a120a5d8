"""Reads what the shop owns: one shape and one builder for each file of site_data/."""

from ..core import equipment
from ..core.kinds import KINDS
from .read_picture import PICTURE, read_picture
from .scalars import Cites, Date, Measure, Number, Says, Single, Text, ThreadText, YesNo, map_of
from .shape import Fields, ListOf, Raw, Record, Report, Shape
from .yaml_tree import Node

_DECIMAL = Number(whole=False)
_BAND = Fields("a friction band", {"low": _DECIMAL, "likely": _DECIMAL, "high": _DECIMAL, "source": Cites()},
               ("low", "likely", "high", "source"))
_GAUGE = Fields("a gauge", {"title": Text(), "full scale": Single("pressure"), "division": Single("pressure"),
                            "accuracy": Single("share", nothing=True), "range used": Measure("pressure"), "checked": Date(),
                            "notes": ListOf(Says(), single=True)},
                ("full scale", "division", "accuracy"))
_STUD = Fields("a draw stud", {"thread": ThreadText(), "yield": Single("stress"), "engagement": Single("length"),
                               "source": Cites()}, ("thread", "yield"))
PRESS = Fields("a press", {
    "title": Text(), "area": Single("area"), "bore": Single("diameter"), "rod": Single("diameter"),
    "side": Text("push or pull", ("push", "pull")), "rated force": Single("press force"),
    "rated pressure": Single("pressure"), "source": Cites(), "notes": ListOf(Says(), single=True),
    "draw stud": _STUD, "gauges": map_of(_GAUGE)}, ("title", "gauges"))
WRENCH = Fields("a wrench", {
    "title": Text(), "lowest": Single("torque", nothing=True), "highest": Single("torque"), "graduation": Single("torque"),
    "accuracy": Single("share", nothing=True), "length": Single("length"), "checked": Date()},
    ("title", "lowest", "highest", "graduation", "accuracy"))
ADAPTER = Fields("an adapter", {"title": Text(), "offset": Single("length", nothing=True), "angle": Single("angle", nothing=True)},
                 ("title", "offset"))
_OF_ITS_KIND = Raw((Text("a quantity of the scale's kind"),))
SCALE = Fields("a scale", {"title": Text(), "kind": Text("a kind", tuple(KINDS)), "highest": _OF_ITS_KIND,
                           "division": _OF_ITS_KIND, "accuracy": Single("share", nothing=True), "checked": Date()}, ("title", "kind", "highest", "division"))
SURFACE = Fields("a surface", {"title": Text(), "condition words": ListOf(Text(), single=True), "nut factor": _BAND,
                               "taper friction": _BAND}, ("title",))
MATERIAL = Fields("a material", {"title": Text(), "modulus": Single("stress"), "poisson": _DECIMAL,
                                 "expansion": _DECIMAL, "ultimate": Single("stress"), "assumed": YesNo(),
                                 "source": Cites()}, ("title",))
SHIM_STOCK = Fields("a shim stock", {"title": Text(), "pieces": ListOf(Single("length")), "most pieces": Number(most=20),
                                     "for": ListOf(Text(), single=True), "source": Cites()}, ("title", "pieces"))
MADE_TOOL = Fields("a made tool", {"title": Text(), "for": Says(), "critical features": ListOf(Says(), single=True),
                                   "drawing": Text(), "picture": PICTURE}, ("title",))


def read_equipment(file: str, node: Node, report: Report) -> dict:
    """The records of one file, by id. `file` is a key of EQUIPMENT."""
    shape, build = EQUIPMENT[file]
    found = map_of(shape).read(node, report) or {}
    return {key: built for key, (record, place) in found.items()
            if all(name in record for name in shape.required) and (built := build(key, record, place, report))}


def _press(key: str, record: Record, place, report: Report):
    if not {"area", "bore"} & (record.key_places.keys() | record.misspelt):
        report.error(record.place, "missing-key", "the press has neither area nor bore",
                     "write 'area:' from the nameplate, or 'bore:' (and 'rod:') in inches or millimetres")
        return None
    if "area" not in record and "bore" not in record:
        return None                                   # its own slip is reported
    gauges = {name: equipment.Gauge(name, value.get("title", name), value["full scale"], value["division"],
                                    value["accuracy"], value.get("range used"), value.get("checked"), where,
                                    value.get("notes", ()))
              for name, (value, where) in record["gauges"].items() if all(k in value for k in _GAUGE.required)}
    stud = record.get("draw stud")
    return equipment.Press(
        key, record["title"], record.get("area"), record.get("bore"), record.get("rod"), record.get("side"),
        record.get("rated force"), record.get("rated pressure"), gauges,
        equipment.DrawStud(stud["thread"], stud["yield"], stud.get("engagement"), stud.get("source"))
        if stud and "thread" in stud and "yield" in stud else None,
        record.get("notes", ()), record.get("source"), place)


def _wrench(key, record, place, report):
    return equipment.Wrench(key, record["title"], record["lowest"], record["highest"], record["graduation"],
                            record["accuracy"], record.get("length"), record.get("checked"), place)


def _adapter(key, record, place, report):
    return equipment.Adapter(key, record["title"], record["offset"], record.get("angle"), place)


def _scale(key, record, place, report):
    measure: Shape = Single(record["kind"])
    highest, division = measure.read(record["highest"], report), measure.read(record["division"], report)
    return highest and division and equipment.Scale(
        key, record["title"], record["kind"], highest, division, record.get("accuracy"), record.get("checked"), place)


def _band(record: Record | None):
    if record is None or any(key not in record for key in ("low", "likely", "high")):
        return None
    return equipment.Band(record["low"], record["likely"], record["high"], record.get("source"))


def _surface(key, record, place, report):
    return equipment.Surface(key, record["title"], _band(record.get("nut factor")),
                             _band(record.get("taper friction")), place, record.get("condition words", ()))


def _material(key, record, place, report):
    return equipment.Material(key, record["title"], record.get("modulus"), record.get("poisson"),
                              record.get("expansion"), record.get("ultimate"), record.get("assumed", False),
                              record.get("source"), place)


def _shim_stock(key, record, place, report):
    return equipment.ShimStock(key, record["title"], record["pieces"], record.get("most pieces", 6),
                               record.get("for", ()), record.get("source"), place)


def _made_tool(key, record, place, report):
    return equipment.MadeTool(key, record["title"], record.get("for"), record.get("critical features", ()),
                              record.get("drawing"), place, read_picture(record))


EQUIPMENT = {
    "presses": (PRESS, _press), "wrenches": (WRENCH, _wrench), "adapters": (ADAPTER, _adapter),
    "scales": (SCALE, _scale), "surfaces": (SURFACE, _surface), "materials": (MATERIAL, _material),
    "shim_stocks": (SHIM_STOCK, _shim_stock), "made_tools": (MADE_TOOL, _made_tool),
}
