"""Reads sources, cautions, conflicts and corrections."""

from ..core import authority
from .scalars import Cites, Date, Refers, Says, Text, YesNo, map_of
from .shape import Fields, ListOf, Report
from .yaml_tree import Node

SOURCE = Fields("a source", {"title": Text(), "kind": Text("a kind of source", tuple(authority.STANDING)),
                             "edition": Text(), "weight": Says(), "date": Text()}, ("title", "kind"))
CAUTION = Fields("a caution", {"word": Text("a signal word", authority.SIGNAL_WORDS), "hazard": Says(),
                               "consequence": Says(), "avoid": ListOf(Says(), single=True), "source": Cites()},
                 ("word", "hazard", "consequence", "avoid"))
_SIDE = Fields("a side of a conflict", {"says": Says(), "source": Cites()}, ("says", "source"))
CONFLICT = Fields("a conflict", {"about": Refers(), "printed": Says(), "why": Says(), "sides": ListOf(_SIDE),
                                 "real": YesNo()}, ("about", "printed", "why", "sides"))
CORRECTION = Fields("a correction", {
    "on": Date(), "about": ListOf(Refers(), single=True), "old": Says(), "new": Says(), "reason": Says(),
    "evidence": Says(), "by": Text(), "source": ListOf(Cites(), single=True),
    "if already done": Text("fine, inspect or redo", authority.IF_ALREADY_DONE), "touches": Says(),
}, ("on", "about", "old", "new", "reason", "if already done"))


def read_authority(file: str, node: Node, report: Report) -> dict:
    """The records of one file, by id. `file` is a key of AUTHORITY."""
    shape, build = AUTHORITY[file]
    found = map_of(shape).read(node, report) or {}
    return {key: build(key, record, place) for key, (record, place) in found.items()
            if all(name in record for name in shape.required)}


def _source(key, record, place):
    return authority.Source(key, record["title"], record["kind"], record.get("edition"), record.get("weight"),
                            record.get("date"), place)


def _caution(key, record, place):
    return authority.Caution(key, record["word"], record["hazard"], record["consequence"], record["avoid"],
                             record.get("source"), place)


def _conflict(key, record, place):
    sides = tuple(authority.Side(side["says"], side.get("source")) for side in record["sides"] if "says" in side)
    return authority.Conflict(key, record["about"], record["printed"], record["why"], sides,
                              record.get("real", True), place)


def _correction(key, record, place):
    return authority.Correction(
        key, record["on"], record["about"], record["old"], record["new"], record["reason"], record.get("evidence"),
        record.get("by"), record.get("source", ()), record["if already done"], record.get("touches"), place)


AUTHORITY = {"sources": (SOURCE, _source), "cautions": (CAUTION, _caution), "conflicts": (CONFLICT, _conflict),
             "corrections": (CORRECTION, _correction)}
