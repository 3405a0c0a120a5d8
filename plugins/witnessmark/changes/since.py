"""What changed since a sheet was printed: for each sheet code ever issued, as data for the page that is asked by it."""

import json
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from ..core.acted import BROKEN, Fact, Facts, acted, steps_of
from ..core.authority import IF_ALREADY_DONE, Correction
from ..core.book import Book
from ..core.canonical import canonical
from ..core.edition import TOLD_IN, Edition
from ..core.procedure import Procedure
from . import words
from .change import Change, differing, order_change, told_change
from .procedures import labels_of, names_of
from .reach import Reach
from .renamed import Names, in_todays_names, names_since

VERSION = 1
MOST_CHANGES = 80
SAME, SUPERSEDED, GONE = "same", "superseded", "gone"
Sheet = tuple[str, str, str]
#: Addresses from the site's root: of a page by machine and procedure, of a sheet by procedure and variant.
Page, SheetPage = Callable[[str, str], str], Callable[[Procedure, str], str]


def since_files(book: Book, records: Mapping[Sheet, dict], codes: Mapping[Sheet, str], page: Page, sheet_page: SheetPage) -> dict[str, str]:
    """Every file of TOLD_IN by its path in the site; DEVELOPERS.md says what stands in them."""
    newest = max((edition.on for editions in book.editions.values() for edition in editions), default=None)
    shards: dict[str, dict] = {}
    for code, entry in _Since(book, records, codes, page, sheet_page).entries():
        shards.setdefault(code[:2], {})[code] = entry
    head = {"version": VERSION, "newest": newest}
    return {f"{TOLD_IN}/index.json": canonical({**head, "prefixes": sorted(shards)}) + "\n",
            **{f"{TOLD_IN}/{prefix}.json": json.dumps({**head, "codes": codes}, ensure_ascii=False, sort_keys=True) + "\n"
               for prefix, codes in shards.items()}}


@dataclass(frozen=True)
class _Today:
    """The sheet that holds now, taken apart."""

    procedure: Procedure
    code: str
    facts: Facts
    steps: tuple[str, ...]


class _Since:
    def __init__(self, book: Book, records: Mapping[Sheet, dict], codes: Mapping[Sheet, str], page: Page, sheet_page: SheetPage):
        self.book, self.records, self.codes, self.page, self.sheet_page, self.reach = book, records, codes, page, sheet_page, Reach(book)
        self.names = {name: names_since(book, machine.id) for machine in book.machines.values() for name in (*machine.was, machine.id)}
        self.labels = {machine: labels_of(book, machine) for machine in book.machines}
        self.issued = {edition.code: edition for editions in book.editions.values() for edition in editions}
        self._today: dict[Sheet, _Today] = {}

    def entries(self) -> Iterator[tuple[str, dict]]:
        """Each code with what is told of it: those of the editions, then those of today that are in none."""
        for code, edition in self.issued.items():
            yield code, self._entry(edition)
        for sheet, code in self.codes.items():
            if code not in self.issued:
                yield code, self._told(sheet, self.book.procedures[sheet[:2]], None, code, SAME)

    def _entry(self, edition: Edition) -> dict:
        names = self.names.get(edition.machine, Names(edition.machine))
        today = (names.machine, names.procedures.get(edition.procedure, edition.procedure), edition.variant)
        procedure = self.book.procedures.get(today[:2])
        if today not in self.records:
            return self._told(today, procedure, edition, None, GONE, already_done="inspect")
        if edition.code == self.codes[today]:
            return self._told(today, procedure, edition, edition.code, SAME)
        now = self._of_today(today)
        changes = self._changes(edition, names, now)
        if changes == []:
            return self._told(today, procedure, edition, now.code, SAME)
        return self._told(today, procedure, edition, now.code, SUPERSEDED, changes)

    def _of_today(self, sheet: Sheet) -> _Today:
        if sheet not in self._today:
            record = self.records[sheet]
            self._today[sheet] = _Today(self.book.procedures[sheet[:2]], self.codes[sheet], acted(record), steps_of(record))
        return self._today[sheet]

    def _changes(self, edition: Edition, names: Names, now: _Today) -> list[Change] | None:
        """The gravest first; None where what stood on the old sheet is not kept."""
        if edition.kept is None:
            return None
        try:
            record = in_todays_names(edition.kept.record, names)
            then = acted(record)
        except BROKEN:
            return None
        machine = self.book.machines[names.machine]
        called = {**edition.kept.names, **self.labels[machine.id], **names_of(now.procedure)}
        every = {case for facts in (then, now.facts) for cases in facts.values() for case in cases}
        found = []
        for each in differing(then, now.facts):
            reached = self.reach.of_fact(machine.id, now.procedure.id, each.key)
            if each.key.sort == "formula":
                each = each._replace(old=each.old and Fact(words.OLDER_FORMULA), new=each.new and Fact(words.NEWER_FORMULA))
            found.append(told_change(each, machine.id, now.procedure.id, called, every, machine.main.id,
                                     corrections=tuple(name for name in reached if name not in edition.kept.corrections)))
        found += order_change(machine.id, now.procedure.id, steps_of(record), now.steps)
        acted_on = [change for change in found if change.part != "found" and (change.sort != "result" or change.part == "refused")]
        return sorted(acted_on or found, key=Change.order)         # what only explains is told where nothing else is

    def _told(self, sheet: Sheet, procedure: Procedure | None, edition: Edition | None, now: str | None, state: str,
              changes: list[Change] | None = (), already_done: str | None = None) -> dict:
        machine, name, variant = sheet
        why = self._why(procedure, edition, changes) if state == SUPERSEDED else []
        return {
            "machine": machine, "procedure": name, "variant": variant, "title": procedure.title if procedure else name.replace("-", " "),
            "page": self.page(machine, name) if procedure else None, "sheet": self.sheet_page(procedure, variant) if now else None,
            "on": edition.on if edition else None, "now": now, "now on": self.issued[now].on if now in self.issued else None, "state": state,
            "already done": _already_done(changes, why) if state == SUPERSEDED else already_done,
            "changes": [_plain(change) for change in (changes or ())[:MOST_CHANGES]],
            "left out": None if changes is None else max(0, len(changes) - MOST_CHANGES),
            "corrections": [_correction(each) for each in why],
        }

    def _why(self, procedure: Procedure, edition: Edition, changes: list[Change] | None) -> list[Correction]:
        """The corrections that account for a change; where nothing is kept those of a later day that reach the sheet. Newest first."""
        if changes is None:
            ids = {name for name in self.reach.sheet(procedure) if self.book.corrections[name].on >= edition.on}
        else:
            ids = {name for change in changes for name in change.corrections}
        return sorted((self.book.corrections[name] for name in ids), key=lambda each: (each.on, each.id), reverse=True)


def _already_done(changes: list[Change] | None, why: list[Correction]) -> str:
    """The gravest that the corrections say; what none of them accounts for is at least to be inspected."""
    said = [each.if_already_done for each in why]
    if changes is None or any(not change.corrections for change in changes):
        said.append("inspect")
    return max(said, key=IF_ALREADY_DONE.index)


def _correction(each: Correction) -> dict:
    return {"id": each.id, "on": each.on, "old": each.old.text, "new": each.new.text, "reason": each.reason.text,
            "evidence": each.evidence and each.evidence.text, "touches": each.touches and each.touches.text, "if already done": each.if_already_done}


def _plain(change: Change) -> dict:
    sort = {"spec": "figure", "sheet": "other", "formula": "other"}.get(change.sort, change.sort)
    return {"sort": sort, "what": change.what, "for": change.case, "old": change.old, "new": change.new, "old also": change.old_also,
            "new also": change.new_also, "per cent": change.per_cent, "stop": change.severity == words.STOP, "why": list(change.corrections)}
