"""One change, ready to be told: what it is of, old and new in both systems, how grave, and why it was made."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from ..core.acted import Fact, Facts, Key
from ..core.derived import CombinationKey
from ..core.display import converted
from ..core.quantity import Quantity, read_quantity
from . import words
from .judge import FORCES, Verdict, judged

_GRAVITY = {words.STOP: 0, words.LOOK: 1, words.WORDING: 2}
_SORTS = ("figure", "mark", "setting", "result", "caution", "loose end", "step", "order", "need", "spec", "sheet")


@dataclass(frozen=True)
class Change:
    """`procedure` is '' for what belongs to no procedure. `case` is '' where it is so in every case.

    `name` and `part` are those of the fact: a spec and its role, a step and its aspect.
    `old` and `new` are None where the thing was not there, or is no longer; `also` is the same in the other system."""

    severity: str
    sort: str
    machine: str
    procedure: str
    name: str
    what: str
    case: str
    old: str | None
    new: str | None
    old_also: str = ""
    new_also: str = ""
    per_cent: float | None = None
    reasons: tuple[str, ...] = ()
    corrections: tuple[str, ...] = ()
    in_consequence: bool = False
    part: str = ""
    place: str = ""

    def order(self) -> tuple:
        """The gravest first, then by procedure, then as a mechanic works: figures, marks, settings, cautions, steps."""
        sort = _SORTS.index(self.sort) if self.sort in _SORTS else len(_SORTS)
        return _GRAVITY[self.severity], self.machine, self.procedure, sort, self.what, self.case, self.old or "", self.new or ""


class Moved(NamedTuple):
    """One fact that differs, in the cases in which it went from the same old to the same new."""

    key: Key
    cases: tuple[CombinationKey, ...]
    old: Fact | None
    new: Fact | None


def moved(old: Facts, new: Facts) -> Iterator[Moved]:
    """Every fact that differs, its cases put together."""
    for key in dict.fromkeys((*old, *new)):
        before, after = old.get(key, {}), new.get(key, {})
        if before == after:
            continue
        together: dict[tuple[Fact | None, Fact | None], list[CombinationKey]] = defaultdict(list)
        for case in dict.fromkeys((*before, *after)):
            if before.get(case) != after.get(case):
                together[before.get(case), after.get(case)].append(case)
        for (one, other), cases in together.items():
            refused = new.get(key._replace(sort="result", part="refused"), {})
            if other is None and key.sort in ("mark", "setting", "result") and all(case in refused for case in cases):
                continue                # that it is refused says so for all of its values
            yield Moved(key, tuple(cases), one, other)


def differing(old: Facts, new: Facts) -> Iterator[Moved]:
    """Every fact that differs; of a step that came or went as a whole only that, and what made the work safe in it."""
    found = list(_matched(list(moved(old, new))))
    whole = {(each.key.name, each.cases) for each in found if each.key.sort == "step" and not each.key.part}
    for each in found:
        key = each.key
        with_step = key.sort in ("step", "caution", "loose end") and key.part and (key.name, each.cases) in whole
        grave = each.old and not each.new and (key.sort == "caution" or key.part in ("hold point", "second person"))
        if not with_step or grave:
            yield each


def _matched(found: list[Moved]) -> Iterator[Moved]:
    """A figure gone and one come, alike but for their condition, are one figure under another condition."""
    pairs: dict[tuple, list[Moved]] = defaultdict(list)
    for each in found:
        if each.key.sort == "figure" and (each.old is None) != (each.new is None):
            pairs[each.key.name, each.key.part, each.cases, "struck" in each.key.of].append(each)
    twins = {id(one): pair for pair in pairs.values() if len(pair) == 2 and (pair[0].old is None) != (pair[1].old is None) for one in pair}
    for each in found:
        if id(each) not in twins:
            yield each
        elif each.old:
            [come] = [other for other in twins[id(each)] if other.new]
            if each.old != come.new:
                yield Moved(come.key, each.cases, each.old, come.new)
            of = [Fact(", ".join(word for word in one.key.of if not word.isdecimal())) for one in (each, come)]
            yield Moved(Key("spec", each.key.name, "condition", (each.key.part,)), each.cases, *of)


def order_change(machine: str, procedure: str, old: tuple[str, ...], new: tuple[str, ...], place: str = "") -> list[Change]:
    """One change where the steps that both hold stand in another order, else none."""
    if [each for each in old if each in new] == [each for each in new if each in old]:
        return []
    return [Change(words.LOOK, "order", machine, procedure, "", words.SORT["order"], "", ", ".join(old), ", ".join(new), place=place)]


def told_change(each: Moved, machine: str, procedure: str, names: Mapping[str, str], all_cases: Iterable[CombinationKey], main: str, **more) -> Change:
    """A fact that differs, in words. `more` are further fields of Change; a `severity` and `reasons` there stand over ours."""
    verdict: Verdict = judged(each.key, each.old, each.new)
    (old, old_also), (new, new_also) = _shown(each.key, each.old), _shown(each.key, each.new)
    fields = {"severity": verdict.severity, "reasons": verdict.why, **more}
    return Change(sort=each.key.sort, machine=machine, procedure=procedure, name=each.key.name, part=each.key.part, what=words.what(each.key, names),
                  case=case_words(each.cases, all_cases, main), old=old, new=new, old_also=old_also, new_also=new_also,
                  per_cent=verdict.per_cent, **fields)


def _shown(key: Key, fact: Fact | None) -> tuple[str | None, str]:
    if fact is None:
        return None, ""
    also = ""
    if key.sort == "figure" and isinstance(quantity := read_quantity(fact.text, fact.kind), Quantity):
        also = converted(quantity, key.part)
    elif key.sort in ("mark", "setting", "result"):
        also = _converted_result(fact.text.partition(" (")[0])
    return words.STATE[fact.state] + fact.text, also


def _converted_result(text: str) -> str:
    for kind in (*FORCES, "pressure", "length", "temperature"):
        if isinstance(quantity := read_quantity(text, kind), Quantity):
            return converted(quantity, "ceiling")
    return ""


def case_words(cases: Iterable[CombinationKey], all_cases: Iterable[CombinationKey], main: str) -> str:
    """Which cases of all these are: '' for all, else the carriers that tell them apart, `main` before another that tells the same."""
    mine = set(cases)
    carriers = {carrier for case in mine for carrier, _ in case}
    every = {case for case in all_cases if {carrier for carrier, _ in case} == carriers} | mine
    values = {carrier: _values(mine, carrier) for carrier in sorted(carriers)}
    telling = {carrier: variants for carrier, variants in values.items() if variants != _values(every, carrier)}
    if not telling:
        return "" if mine == every else "; ".join(_one(case, [c for c in values if len(_values(every, c)) > 1]) for case in sorted(mine))
    for carrier in sorted(telling, key=lambda name: (name != main, len(telling[name]), name), reverse=True):     # what follows from the others is not said
        fewer = {name: variants for name, variants in telling.items() if name != carrier}
        if fewer and _covered(every, fewer) == _covered(every, telling):
            telling = fewer
    if _covered(every, telling) == mine:
        return ", ".join(f"{carrier} {' or '.join(variants)}".strip() for carrier, variants in telling.items())
    return "; ".join(_one(case, list(telling)) for case in sorted(mine))


def _values(cases: set[CombinationKey], carrier: str) -> tuple[str, ...]:
    return tuple(sorted({dict(case)[carrier] for case in cases}))


def _covered(every: set[CombinationKey], telling: Mapping[str, tuple[str, ...]]) -> set[CombinationKey]:
    return {case for case in every if all(dict(case)[carrier] in variants for carrier, variants in telling.items())}


def _one(case: CombinationKey, carriers: list[str]) -> str:
    return ", ".join(f"{carrier} {variant}".strip() for carrier, variant in case if carrier in carriers)
