"""What changed in one procedure: its sheets laid side by side, its sentences, its sources and what its results are given."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from ..core.acted import Facts, Key, acted, steps_of
from ..core.book import Book
from ..core.derived import CombinationKey
from ..core.figure import Spec
from ..core.procedure import Procedure
from . import words
from .change import Change, Moved, differing, order_change, told_change
from .judge import OTHER_NEEDS, given
from .reach import Reach
from .renamed import Names, in_todays_names
from .side import Side
from .told_words import said, severity

_IN_CONSEQUENCE = ("mark", "setting", "result")
#: Told by the sentences themselves, or by the shelf.
_TOLD_ELSEWHERE = {("step", "acted on"), ("sheet", "conditions")}


@dataclass(frozen=True)
class Pair:
    """A procedure in both books, and what is called otherwise in the new one."""

    old: Procedure
    new: Procedure
    names: Names
    reach: Reach
    fresh: frozenset[str]               # ids of the corrections that came with the new book
    labels: Mapping[str, str]           # of the figures of the whole machine, by procedure/spec
    main: str                           # the carrier that is the machine itself

    @property
    def machine(self) -> str:
        return self.new.machine

    def why(self, key: Key) -> tuple[str, ...]:
        """The corrections that came with the new book and account for a fact of the procedure."""
        return tuple(name for name in self.reach.of_fact(self.machine, self.new.id, key) if name in self.fresh)


def procedure_changes(old: Side, new: Side, pair: Pair) -> Iterator[Change]:
    before, after = old.variants(pair.old.machine, pair.old.id), new.variants(pair.machine, pair.new.id)
    both = [variant for variant in after if variant in before]
    old_records = [in_todays_names(old.record_of((pair.old.machine, pair.old.id, variant)), pair.names) for variant in both]
    new_records = [new.record_of((pair.machine, pair.new.id, variant)) for variant in both]
    for variant in dict.fromkeys((*before, *after)):
        if variant not in both:
            yield _other(pair, words.STOP, "sheet", f"sheet for {variant}", "there" if variant in before else None,
                         "there" if variant in after else None, ("it is for other machines",))
    if old_records != new_records:
        yield from _facts(pair, _together(old_records), _together(new_records))
        yield from _order(pair, old_records, new_records)
    if pair.old != pair.new:
        yield from _sentences(pair)
        yield from _given(pair)
        yield from _sources(pair)
        yield from _renames(pair)


def _together(records: list[dict]) -> Facts:
    found: Facts = {}
    for record in records:
        for key, cases in acted(record).items():
            found.setdefault(key, {}).update(cases)
    return found


def _facts(pair: Pair, old: Facts, new: Facts) -> Iterator[Change]:
    every = {case for facts in (old, new) for cases in facts.values() for case in cases}
    names = pair.labels | names_of(pair.old) | names_of(pair.new)
    for each in differing(old, new):
        key = each.key
        on_shelf = each.old and each.new and (key.sort == "caution" or (key.sort == "need" and key.name not in OTHER_NEEDS))
        if (key.sort, key.part) not in _TOLD_ELSEWHERE and not on_shelf:
            yield _told(pair, each, names, every, key in old and key in new)


def _told(pair: Pair, each: Moved, names: Mapping[str, str], every: set[CombinationKey], in_both: bool) -> Change:
    key, more = each.key, {}
    there = each.old or each.new
    if in_both and (each.old is None or each.new is None) and not there.state and (key.sort, key.part) in (
            ("step", ""), *[("figure", role) for role in ("target", "window", "floor", "ceiling", "reject", "stop")]):
        more = {"severity": words.STOP, "reasons": ("it is for other machines",)}
    spec = pair.new.specs.get(key.name)
    taken = spec is not None and any(figure.role == key.part and figure.comes_from for figure in spec.figures)
    follows = key.sort in _IN_CONSEQUENCE or "/" in key.name or taken or bool(each.new and each.new.state == "recheck")
    return told_change(each, pair.machine, pair.new.id, names, every, pair.main, in_consequence=follows, place=_place(pair.new, key),
                       corrections=pair.why(key), **more)


def _place(procedure: Procedure, key) -> str:
    spec = procedure.specs.get(key.name)
    figure = next((each for each in spec.figures if each.role == key.part and each.standing()), None) if spec and key.sort == "figure" else None
    thing = figure or spec or procedure.computed.get(key.name)
    if key.sort in ("step", "caution", "loose end") and key.name:
        thing = next((step for step in procedure.steps if step.id == key.name), None)
    return str(thing.place if thing else procedure.place)


def _order(pair: Pair, old: list[dict], new: list[dict]) -> Iterator[Change]:
    """Once, for the first variant on which it is so."""
    found = (order_change(pair.machine, pair.new.id, steps_of(one), steps_of(other), str(pair.new.place)) for one, other in zip(old, new, strict=True))
    yield from next(filter(None, found), [])


def _sentences(pair: Pair) -> Iterator[Change]:
    old, new = said(pair.old, pair.names), said(pair.new)
    names = names_of(pair.old) | names_of(pair.new)
    kept = {step.id for step in pair.new.steps} & {pair.names.step(pair.old.id, step.id) for step in pair.old.steps}
    for key in dict.fromkeys((*old, *new)):
        before, after = old.get(key), new.get(key)
        if (before and before.sentence.text) == (after and after.sentence.text) or (key.sort == "step" and key.name not in kept):
            continue
        yield Change(severity(before, after), key.sort, pair.machine, pair.new.id, key.name, words.what(key, names), "",
                     before and before.sentence.text, after and after.sentence.text, place=_place(pair.new, key))


def _given(pair: Pair) -> Iterator[Change]:
    """What a computed result is worked out from, as the source says it."""
    before = {pair.names.figure(pair.old.id, name): computed for name, computed in pair.old.computed.items()}
    for name in dict.fromkeys((*before, *pair.new.computed)):
        one, other = before.get(name), pair.new.computed.get(name)
        texts = [{"working": each.working, **{key: _varying(varies) for key, varies in each.inputs.items()}} if each else {} for each in (one, other)]
        for key in dict.fromkeys((*texts[0], *texts[1])):
            was, now = texts[0].get(key), texts[1].get(key)
            if (pair.names.reference(pair.old.id, was) if was else was) != now:
                grave = _grave_input(key, *((each.inputs.get(key) if each else None) for each in (one, other)))
                yield _other(pair, words.STOP if grave else words.LOOK, "result", f"{(other or one).label}, given {key}", was, now, grave, name)


def _grave_input(name: str, old, new) -> tuple[str, ...]:
    """Case by case where both have the same ones; else the first of each stands for all."""
    if not old or not new:
        return ()
    pairs = zip(old.values(), new.values()) if len(old.cases) == len(new.cases) else [(old.cases[0].value, new.cases[0].value)]
    return tuple(dict.fromkeys(why for one, other in pairs if one != other for why in given(name, one, other)))


def _varying(varies) -> str:
    return ", ".join(" ".join((*(f"{selector.text}:" for selector in case.when), case.value)) for case in varies.cases)


def _sources(pair: Pair) -> Iterator[Change]:
    before = {pair.names.figure(pair.old.id, name): spec for name, spec in pair.old.specs.items()}
    yield from source_changes(before, pair.new.specs, pair.machine, pair.new.id, pair.why)


def source_changes(before: Mapping[str, Spec], after: Mapping[str, Spec], machine: str, procedure: str, why: Callable[[Key], tuple[str, ...]]) -> Iterator[Change]:
    """Whose figure it is, where that is told otherwise; both maps by today's ids. `why` gives the corrections that account for it."""
    for name, spec in after.items():
        one, other = (_cited(each) if each else {} for each in (before.get(name), spec))
        for key in one:
            if key in other and one[key] != other[key]:
                gone = len(one[key]) > len(other[key])
                old, new = (", ".join(" ".join(each).strip() for each in cited) or None for cited in (one[key], other[key]))
                yield Change(words.STOP if gone else words.LOOK, "source", machine, procedure, name, f"{spec.label}, {key[0]}: source", "", old, new,
                             reasons=("a source is gone",) if gone else (), corrections=why(Key("source", name, "")), place=str(spec.place))


def _cited(spec) -> dict[tuple[str, str, int], tuple[tuple[str, str], ...]]:
    found: dict = {}
    for figure in spec.figures:
        struck = "" if figure.standing() else "struck"
        found[figure.role, struck, sum(key[:2] == (figure.role, struck) for key in found)] = tuple((c.source, c.where) for c in figure.sources)
    return found


def _renames(pair: Pair) -> Iterator[Change]:
    if pair.old.id != pair.new.id:
        yield _other(pair, words.WORDING, "words", words.RENAMED, pair.old.id, pair.new.id)
    here = [(old, new) for names in (pair.names.figures, pair.names.steps, pair.names.ends) for (home, old), new in names.items() if home == pair.old.id]
    was = {*pair.old.specs, *pair.old.computed, *(step.id for step in pair.old.steps), *(end.id for step in pair.old.steps for end in step.leaves)}
    for old, new in here:
        if old in was:
            yield _other(pair, words.WORDING, "words", words.RENAMED, old, new)


def _other(pair: Pair, severity_: str, sort: str, what: str, old: str | None, new: str | None, reasons: tuple[str, ...] = (), name: str = "") -> Change:
    return Change(severity_, sort, pair.machine, pair.new.id, name, what, "", old, new, reasons=reasons, corrections=pair.why(Key(sort, name, "")),
                  place=str(pair.new.place))


def labels_of(book: Book, machine: str) -> dict[str, str]:
    """Labels of every figure of a machine, as another procedure names it: `procedure/spec`, `machine/figure`."""
    return {f"{owner.id}/{spec.id}": spec.label for owner, specs in (
        (book.machines[machine], book.machines[machine].figures.values()),
        *((book.procedures[machine, name], book.procedures[machine, name].specs.values()) for name in book.procedure_ids[machine])) for spec in specs}


def names_of(procedure: Procedure) -> dict[str, str]:
    """What its ids are called: labels of figures, sentences of steps (as `step` and id), states of loose ends (`end` and id)."""
    return {**{f"step {step.id}": _short(step.do.text) for step in procedure.steps},
            **{f"end {end.id}": _short(end.state.text) for step in procedure.steps for end in step.leaves},
            **{spec.id: spec.label for spec in procedure.specs.values()}}


def _short(text: str, most: int = 80) -> str:
    return text if len(text) <= most else text[:most - 1].rstrip() + "…"
