"""Two books to a list of changes, on meaning: what was changed, what moves in consequence, and which paper no longer holds."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from ..core.acted import Key, acted, acted_figures
from ..core.authority import Correction
from ..core.book import Book
from ..core.derived import RECHECK
from ..core.finding import WARNING, Finding
from ..core.place import Place
from ..core.procedure import Procedure
from ..core.record import fingerprint, given, results, spec_record
from . import words
from .change import Change, differing, moved, told_change
from .procedures import Pair, labels_of, names_of, procedure_changes, source_changes
from .reach import Reach
from .renamed import names_since
from .shelves import shelf_changes
from .side import Side, touched
from .told_words import Said, of_specs, severity

RULE = "correction-missing"
_NOWHERE = Place("")


@dataclass(frozen=True)
class SheetCode:
    """A sheet whose code is another: `old` None for a new sheet, `new` None for one that is gone."""

    machine: str
    procedure: str
    variant: str
    old: str | None
    new: str | None


@dataclass(frozen=True)
class Comparison:
    """`changes` were written, `consequences` follow from them; `by_tool` moved with the tool since their edition, in the old book already."""

    old: str
    new: str
    changes: tuple[Change, ...]
    consequences: tuple[Change, ...]
    by_tool: tuple[Change, ...]
    sheets: tuple[SheetCode, ...]
    corrections: tuple[Correction, ...]
    findings: tuple[Finding, ...]
    first: bool = False                 # the old one was no book yet

    @property
    def stops(self) -> tuple[Change, ...]:
        return tuple(change for change in (*self.changes, *self.consequences, *self.by_tool) if change.severity == words.STOP)

    @property
    def passes(self) -> bool:
        """Whether it may be taken over by who knows what they do: no finding, and each stop has its correction."""
        return not self.findings and all(change.corrections for change in self.stops)

    @property
    def verdict(self) -> str:
        """The gravest severity there is: stop, look, wording or same."""
        found = {change.severity for change in (*self.changes, *self.consequences, *self.by_tool)}
        return next((severity for severity in (words.STOP, words.LOOK, words.WORDING) if severity in found), words.SAME)


def compare(old: Side, new: Side) -> Comparison:
    """What the new book says otherwise than the old one."""
    corrections = tuple(correction for name, correction in sorted(new.book.corrections.items())
                        if _bare(correction) != _bare(old.book.corrections.get(name)))
    reach, fresh = Reach(new.book), frozenset(correction.id for correction in corrections)
    pairs = list(_pairs(old, new, reach, fresh))
    changes = [*shelf_changes(old, new, lambda *names: tuple(name for name in reach.whole(*names) if name in fresh)),
               *_corrections(old.book, new.book), *_machines(old, new, reach, fresh)]
    for pair in pairs:
        changes += procedure_changes(old, new, pair)
    changes += _come_and_gone(old, new, pairs, reach, fresh)
    sheets = tuple(_sheets(old, new, pairs))
    if changes or sheets:
        changes += _orphans(old.book, new.book, reach, fresh)
    changes.sort(key=Change.order)
    told = {(finding.rule, finding.message) for finding in old.findings}
    findings = [finding for finding in new.findings if (finding.rule, finding.message) not in told]
    return Comparison(old.name, new.name, tuple(each for each in changes if not each.in_consequence),
                      tuple(each for each in changes if each.in_consequence), tuple(sorted(_by_tool(old, reach, new.book), key=Change.order)), sheets, corrections,
                      (*findings, *_without_correction(changes, reach, fresh)), not old.texts and bool(new.texts))


def _bare(correction: Correction | None) -> tuple | None:
    """What a correction says, wherever it stands."""
    return correction and (correction.on, tuple(map(str, correction.about)), correction.old.text, correction.new.text, correction.reason.text,
                           correction.evidence and correction.evidence.text, correction.by, tuple((c.source, c.where) for c in correction.sources),
                           correction.if_already_done, correction.touches and correction.touches.text)


def _pairs(old: Side, new: Side, reach: Reach, fresh: frozenset[str]) -> Iterator[Pair]:
    names = {machine: names_since(new.book, machine) for machine in new.book.machines}
    labels = {machine: labels_of(new.book, machine) for machine in new.book.machines}
    differing = touched(old, new)
    for key, procedure in new.book.procedures.items():
        former = ((machine, name) for name in (key[1], *procedure.was) for machine in (key[0], *new.book.machines[key[0]].was))
        was = next((each for each in former if each in old.book.procedures), None)
        if was and (key in differing or was in differing):
            machine = new.book.machines[key[0]]
            yield Pair(old.book.procedures[was], procedure, names[key[0]], reach, fresh, labels[key[0]], machine.main.id)


def _come_and_gone(old: Side, new: Side, pairs: list[Pair], reach: Reach, fresh: frozenset[str]) -> Iterator[Change]:
    renamed = {(pair.old.machine, pair.old.id) for pair in pairs}
    known = {(pair.machine, pair.new.id) for pair in pairs}
    for side, other, gone in ((old, new, True), (new, old, False)):
        for key, procedure in side.book.procedures.items():
            if key not in other.book.procedures and key not in (renamed if gone else known):
                yield Change(words.LOOK, "sheet", *key, "", "procedure", "", procedure.title if gone else None, None if gone else procedure.title,
                             place="" if gone else str(procedure.place))
                if gone:
                    yield from _gone_with(procedure, tuple(name for name in reach.whole(key[0]) if name in fresh))


def _gone_with(procedure: Procedure, why: tuple[str, ...]) -> Iterator[Change]:
    """What made the work safe in a procedure that is no longer there; `why` are the corrections about its machine."""
    for step in procedure.steps:
        for there, what in ((step.cautions, "a caution is gone"), (step.hold_point, "a hold point is gone"), (step.second_person, "a second person is gone")):
            if there:
                yield Change(words.STOP, "step", procedure.machine, procedure.id, step.id, words.SORT["step"], "", step.do.text, None, reasons=(what,), corrections=why)


def _machines(old: Side, new: Side, reach: Reach, fresh: frozenset[str]) -> Iterator[Change]:
    """The figures that belong to a machine itself."""
    for name, machine in new.book.machines.items():
        before = next((old.book.machines[each] for each in (name, *machine.was) if each in old.book.machines), None)
        if before is not None and before.id != name:
            yield Change(words.WORDING, "words", name, "", name, words.RENAMED, "", before.id, name, place=str(machine.place))
        if before is None or before.figures == machine.figures:
            continue
        facts = [acted_figures(name, [spec_record(there, side.derived[there.id, ""], spec, tuple(
            key for keys in side.derived[there.id, ""].combinations.values() for key in keys), None) for spec in there.figures.values()])
            for side, there in ((old, before), (new, machine))]

        def why(key: Key, machine: str = name) -> tuple[str, ...]:
            return tuple(each for each in reach.of_fact(machine, "", key) if each in fresh)

        yield from source_changes(before.figures, machine.figures, name, "", why)
        spoken = [{key: Said(sentence) for key, sentence, _ in of_specs(there.figures.values())} for there in (before, machine)]
        for key in dict.fromkeys((*spoken[0], *spoken[1])):
            was, now = spoken[0].get(key), spoken[1].get(key)
            if (was and was.sentence.text) != (now and now.sentence.text):
                yield Change(severity(was, now), "words", name, "", key.name, f"{key.name.replace('-', ' ')}, {key.part}", "",
                             was and was.sentence.text, now and now.sentence.text, place=str(machine.place))
        labels = {f"{name}/{spec.id}": spec.label for spec in (*before.figures.values(), *machine.figures.values())}
        every = {case for each in facts for cases in each.values() for case in cases}
        for each in differing(*facts):
            spec = machine.figures.get(each.key.name.rpartition("/")[2])
            yield told_change(each, name, "", labels, every, machine.main.id, place=str((spec or machine).place),
                              corrections=why(each.key))


def _corrections(old: Book, new: Book) -> Iterator[Change]:
    """A correction is history: one that is told otherwise, or no longer, is seen."""
    for name, before in old.corrections.items():
        after = new.corrections.get(name)
        if _bare(before) != _bare(after):
            yield Change(words.LOOK, "correction", "", "", name, f"correction {name}", "", before.new.text, after and after.new.text,
                         place=str(after.place) if after else "")


def _sheets(old: Side, new: Side, pairs: list[Pair]) -> Iterator[SheetCode]:
    for pair in sorted(pairs, key=lambda pair: (pair.machine, pair.new.id)):
        before, after = old.variants(pair.old.machine, pair.old.id), new.variants(pair.machine, pair.new.id)
        for variant in dict.fromkeys((*after, *before)):
            codes = (fingerprint(old.record_of((pair.old.machine, pair.old.id, variant))) if variant in before else None,
                     fingerprint(new.record_of((pair.machine, pair.new.id, variant))) if variant in after else None)
            if codes[0] != codes[1]:
                yield SheetCode(pair.machine, pair.new.id, variant, *codes)
    renamed = {(pair.old.machine, pair.old.id) for pair in pairs} | {(pair.machine, pair.new.id) for pair in pairs}
    for side, other, gone in ((old, new, True), (new, old, False)):
        for key in side.book.procedures:
            if key not in other.book.procedures and key not in renamed:
                for variant in side.variants(*key):
                    code = fingerprint(side.record_of((*key, variant)))
                    yield SheetCode(*key, variant, code if gone else None, None if gone else code)


def _orphans(old: Book, new: Book, reach: Reach, fresh: frozenset[str]) -> Iterator[Change]:
    """What is left loose and no step after it ties up, where one did before."""
    names = {machine: names_since(new, machine) for machine in new.machines}
    was = {(now, names[now].end("", name), variant, places) for machine, name, variant, places in _never_closed(old) if (now := new.machine_of(machine)) in names}
    for machine, name, variant, places in _never_closed(new):
        if (machine, name, variant, places) not in was:
            left = new.ledgers[machine].left[name]
            yield Change(words.STOP, "loose end", machine, left.procedure.id, left.end.id, f"left loose: {left.end.state.text.rstrip('.')}",
                         ", ".join(filter(None, (variant, *places))), None, "no step ties it up", reasons=("a loose end is orphaned",),
                         corrections=tuple(each for each in reach.whole(left.procedure.id, machine) if each in fresh), place=str(left.end.place))


def _never_closed(book: Book) -> Iterator[tuple[str, str, str, tuple[str, ...]]]:
    for machine, ledger in book.ledgers.items():
        for name, left in ledger.left.items():
            for variant in ledger.variants(left):
                if places := ledger.never_closed(left, variant):
                    yield machine, name, variant, tuple(places)


def _by_tool(old: Side, reach: Reach, new: Book) -> Iterator[Change]:
    """Results that are others than when their edition was issued, though the book gives the workings the same. A correction
    in the new book that the edition did not know accounts for them."""
    for (machine, name), editions in old.book.editions.items():
        procedure = old.book.procedures.get((machine, name))
        home = new.machine_of(machine)
        today = next((each.id for each in new.procedures.values() if each.machine == home and name in each.was), name)
        for variant in old.variants(machine, name):
            last = next((each for each in reversed(editions) if each.variant == variant), None)
            if last is None or last.kept is None or last.kept.given != given(old.derived[machine, name], variant):
                continue
            if results(old.book.machines[machine], procedure, old.derived[machine, name], variant) == [[run[0], None, *run[2:]] for run in last.kept.record["worked"]]:
                continue
            then, now = acted(last.kept.record), acted(old.record_of((machine, name, variant)))
            every = {case for cases in now.values() for case in cases}
            for each in moved(then, now):
                if each.key.sort in ("mark", "setting", "result"):
                    since = [why for why in reach.of_fact(home, today, each.key) if why not in last.kept.corrections]
                    yield replace(told_change(each, machine, name, names_of(procedure), every, old.book.machines[machine].main.id), severity=words.STOP,
                                  reasons=("moved by this version of the tool",), corrections=tuple(since), place=str(procedure.place))


def _same_figure(change: Change) -> bool:
    """True where the figure came back, or was marked, as it was."""
    bare = [text and text.removeprefix(words.STATE["doubt"]).removeprefix(words.STATE["recheck"]).partition(" (")[0] for text in (change.old, change.new)]
    return bare[0] == bare[1]


def _without_correction(changes: list[Change], reach: Reach, fresh: frozenset[str]) -> Iterator[Finding]:
    """A figure that is worked to and was changed, with no correction that came with it and names it."""
    seen: set[tuple[str, str, str]] = set()
    for change in changes:
        figure = (change.machine, change.procedure, change.name)
        withdrawn = change.new and change.new.startswith((words.STATE["doubt"], words.STATE["struck"], RECHECK))
        if (change.sort != "figure" or change.in_consequence or change.old is None or withdrawn or figure in seen
                or change.part == "found" or _same_figure(change) or not fresh.isdisjoint(reach.about(*figure))):
            continue
        seen.add(figure)
        path, line, column = (change.place or "site_data/corrections.yaml:1:1").rsplit(":", 2)
        name = change.name if "/" in change.name else f"{change.procedure}/{change.name}"
        yield Finding(Place(path, int(line), int(column)), RULE, f"'{name}' is another figure now and no correction says why",
                      f"add one to site_data/corrections.yaml with 'about: {name}', or withdraw the figure with 'in doubt:' until it is known", WARNING)
