"""Reads the editions of one procedure: each line must be whole, and its code must be that of what it says stood on the sheet."""

import json
import re

from ..core.acted import BROKEN, acted
from ..core.canonical import canonical
from ..core.difference import Unfit, applied
from ..core.edition import MOST, Edition, Kept
from ..core.place import Place
from ..core.record import fingerprint
from .scalars import IDENTIFIER
from .shape import Report
from .slips import unseen

CODE = re.compile("[0-9A-HJKMNP-TV-Z]{4}-[0-9A-HJKMNP-TV-Z]{4}")
_DATE = re.compile("[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])")
#: All that the lines of one file spell, put together; a few lines could spell more than a machine holds.
_MOST_SIGNS = 20_000_000
_MEND = "take the file from the last revision in which it was whole; only 'witnessmark edition' writes in it"


def read_editions(machine: str, procedure: str, path: str, text: str, report: Report) -> list[Edition]:
    """The editions in the order of their lines; nothing of a line that is broken, nor of those told by it."""
    if deceiving := unseen(path, text):
        report.findings.append(deceiving)
        return []
    found: dict[str, Edition] = {}
    signs = 0
    for number, line in enumerate(text.removesuffix("\n").split("\n"), 1):
        place = Place(path, number)
        if number > MOST or signs > _MOST_SIGNS:
            report.error(place, "edition-broken", "the file holds more than can be read", _MEND)
            break
        try:
            edition, size = _edition(machine, procedure, line, found, place)
        except (*BROKEN, Unfit) as problem:
            why = str(problem) if isinstance(problem, Unfit) else "it is not what was written"
            report.error(place, "edition-broken", f"this line tells no edition: {why}", _MEND)
            continue
        signs += size
        if edition.code in found:
            report.error(place, "edition-twice", f"the sheet code {edition.code} stands already in line {found[edition.code].place.line}",
                         "delete the later of the two lines")
            continue
        found[edition.code] = edition
    return list(found.values())


def twice_issued(editions: dict[tuple[str, str], tuple[Edition, ...]], report: Report) -> None:
    """Reports a code that two procedures hold: paper that bears it could be either."""
    seen: dict[str, Place] = {}
    for edition in (each for of_one in editions.values() for each in of_one):
        if edition.code in seen and seen[edition.code].path != edition.place.path:
            report.error(edition.place, "edition-twice", f"the sheet code {edition.code} is that of a sheet in {seen[edition.code].path} too", _MEND)
        seen.setdefault(edition.code, edition.place)


def _edition(machine: str, procedure: str, line: str, before: dict[str, Edition], place: Place) -> tuple[Edition, int]:
    data = json.loads(line)
    variant, code, on = data["sheet"], data["code"], data["on"]
    if not (IDENTIFIER.fullmatch(variant) and CODE.fullmatch(code) and _DATE.fullmatch(on)):
        raise Unfit("its sheet, code or date cannot be one")
    if set(data) == {"sheet", "code", "on"}:
        return Edition(machine, procedure, variant, code, on, None, place), 0
    if "holds" in data:
        kept = data["holds"]
    else:
        base = before[data["like"]].kept
        if base is None:
            raise Unfit("what it is like is not kept")
        kept = applied(base.plain(), data["but"])
    record = kept["record"]
    text = canonical(record)
    if fingerprint(record) != code:
        raise Unfit("its code is not that of what it holds")
    if (record["machine"], record["procedure"], record["variant"]) != (machine, procedure, variant):
        raise Unfit("it is of another sheet")
    acted(record)
    names, given, corrections = kept["names"], kept["given"], tuple(kept["corrections"])
    if not all(isinstance(word, str) for word in (given, *corrections, *names.values())):
        raise Unfit("its words are none")
    return Edition(machine, procedure, variant, code, on, Kept(record, names, given, corrections), place), len(text)
