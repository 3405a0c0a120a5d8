"""Reads one machine family."""

from ..core.finding import nearest
from ..core.machine import Carrier, Machine, Variant
from ..core.variation import read_serials
from .read_spec import SPEC, read_spec
from .scalars import Identifier, Measure, Says, Text, map_of
from .shape import Fields, ListOf, Record, Report, Shape
from .yaml_tree import Node


class _SerialsShape(Shape):
    wanted = "a range such as 1390 to 2215, from 2750, up to 1389"

    def of_text(self, text, node, report):
        serials = read_serials(text)
        if serials is None or (serials.first and serials.last and serials.first > serials.last):
            report.error(node.place, "serials", f"'{text}' is not a range of serials", f"write {self.wanted}")
            return None
        return serials


_VARIANT = Fields("a variant", {"title": Text(), "serials": _SerialsShape(), "measure": Measure("length"),
                                "summary": Says()})
_CARRIER = Fields("a carrier", {"title": Text(), "told by": Text(), "variants": map_of(_VARIANT, name=Identifier(page=True))},
                  ("title", "told by", "variants"))
_PLACE = Fields("a place", {"place": Text(), "only": ListOf(Text("a name"), single=True)}, ("place",), brief="place")
MACHINE = Fields("a machine", {
    "title": Text(), "summary": Says(), "viewpoint": Says(), "serial plate": Says(), "carriers": map_of(_CARRIER),
    "places": map_of(ListOf(_PLACE), name=Text()), "figures": map_of(SPEC), "hand-over": Identifier(),
    "defer": ListOf(Says(), single=True), "was": ListOf(Identifier(), single=True),
}, ("title", "viewpoint", "carriers"))


def read_machine(name: str, node: Node, report: Report) -> Machine | None:
    record = MACHINE.read(node, report)
    if record is None or any(key not in record for key in ("title", "viewpoint", "carriers")):
        return None
    carriers = {key: Carrier(key, value.get("title", key), value.get("told by", ""), _variants(value), place)
                for key, (value, place) in record["carriers"].items()}
    if not carriers or not next(iter(carriers.values())).variants:
        if not all(value.whole for value, _ in record["carriers"].values()):
            return None                               # its own slip is reported
        report.error(record.at("carriers"), "missing-key", "the machine has no variants",
                     "write the machine itself as its first carrier, with at least one variant")
        return None
    main = next(iter(carriers))
    figures = {key: spec for key, (value, _) in record.get("figures", {}).items()
               if (spec := read_spec(key, value, main, report))}
    return Machine(
        name, record["title"], record.get("summary"), record["viewpoint"], record.get("serial plate"), carriers,
        {key: tuple(each["place"] for each in value if "place" in each) for key, (value, _) in record.get("places", {}).items()},
        figures, record.get("hand-over"), record.get("defer", ()), record.place, _only(record, carriers[main], report), record.get("was", ()))


def _only(record: Record, carrier: Carrier, report: Report) -> dict[tuple[str, str], tuple[str, ...]]:
    """Which variants of the machine itself have a place, for those places that not all of them have."""
    only = {}
    for group, (names, _) in record.get("places", {}).items():
        for each in names:
            if "only" not in each or "place" not in each:
                continue
            only[group, each["place"]] = each["only"]
            for variant in each["only"]:
                if variant not in carrier.variants:
                    report.error(each.at("only"), "unknown-reference", f"there is no variant of the {carrier.title} '{variant}'",
                                 nearest(variant, carrier.variants))
    return only


def _variants(record: Record) -> dict[str, Variant]:
    return {key: Variant(key, value.get("title", key), value.get("serials"), value.get("measure"),
                         value.get("summary"), place)
            for key, (value, place) in record.get("variants", {}).items()}
