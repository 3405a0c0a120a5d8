"""A sheet's record as single facts: what stands in it, taken apart so that two records can be laid side by side.

Records come from today's book or from an edition years old, so nothing here looks at a book.
"""

from collections import defaultdict
from collections.abc import Iterator
from typing import NamedTuple

from .derived import CombinationKey


class Key(NamedTuple):
    """What a fact is about. `sort` is a name in SORTS; `name` the spec, result, step, need; `part` the role, value or aspect.

    `of` tells press and gauge of a card, and which of several figures in one role it is."""

    sort: str
    name: str
    part: str
    of: tuple[str, ...] = ()


class Fact(NamedTuple):
    """`text` as printed; `kind` of a figure, or the working that refuses; `state` is '' where it is in force,
    'struck', 'doubt', 'recheck' or 'refused' where it is not."""

    text: str
    kind: str = ""
    state: str = ""


SORTS = ("figure", "mark", "setting", "result", "spec", "step", "caution", "loose end", "need", "order", "sheet", "formula")
#: combination of a fact that is one for the whole sheet; the variant stands in it so that sheets can be put together
Facts = dict[Key, dict[CombinationKey, Fact]]
_PARTS = ("kind", "numbers", "condition", "places", "viewpoint", "at radius", "wrench", "adapter", "passes", "fastener")
_SHEET = ("serials", "measure", "part to mark", "viewpoint", "defer", "after", "must be shut", "open at start", "to prove", "how left", "each", "people", "conditions")
_STEP = ("acted on", "specs", "each", "at", "acts", "opens up", "hold point", "second person", "go to", "closes", "records", "picture", "how left")


def acted(record: dict) -> Facts:
    """Every fact of a record, by what it is about and for which case. A record that is none raises one of BROKEN."""
    found: Facts = defaultdict(dict)
    whole = (("", record["variant"]),)
    for key, combination, fact in _facts(record):
        if not all(isinstance(text, str) for text in (key.name, key.part, *key.of, *fact)) or type(record["people"]) is not int:
            raise TypeError(key)
        found[key][combination or whole] = fact
    return dict(found)


#: What a record of another shape may raise.
BROKEN = (KeyError, TypeError, ValueError, IndexError, AttributeError, RecursionError)


def acted_figures(machine: str, specs: list) -> Facts:
    """The facts of specs that stand in no sheet: those of a machine."""
    found: Facts = defaultdict(dict)
    for spec in specs:
        for key, combination, fact in _spec(f"{machine}/{spec['id']}", spec):
            found[key][combination] = fact
    return dict(found)


def steps_of(record: dict) -> tuple[str, ...]:
    """The ids of the steps, in order."""
    return tuple(step["id"] for step in record["steps"])


def _facts(record: dict) -> Iterator[tuple[Key, CombinationKey, Fact]]:
    for part in _SHEET:
        yield Key("sheet", "", part), (), Fact(told(record[part]))
    for name, *rest in record["cautions"]:
        yield Key("caution", "", name), (), Fact(told(rest))
    for sort, name, *rest in record["needs"]:
        yield Key("need", sort, name or ""), (), Fact(told(rest))
    for spec in record["specs"]:
        yield from _spec(spec["id"], spec)
    for name, kind, cases in record["from elsewhere"]:
        yield from _elsewhere(name.partition(".")[0], kind, cases)
    for run in record["worked"]:
        yield from _worked(*run)
    for at, step in enumerate(record["steps"]):
        yield from _step(record, at, step)


def _spec(name: str, spec: dict) -> Iterator[tuple[Key, CombinationKey, Fact]]:
    for part in _PARTS:
        if spec[part]:
            yield Key("spec", name, part), (), Fact(told(spec[part]))
    yield from _figures(name, spec["kind"], spec["figures"])


def _figures(name: str, kind: str, cases: list) -> Iterator[tuple[Key, CombinationKey, Fact]]:
    for combination, figures in cases:
        counts: dict[tuple, int] = defaultdict(int)
        for role, worth, condition, when, kept, superseded, in_doubt, *recheck in figures:
            struck = kept or superseded
            state = "struck" if struck else "doubt" if in_doubt else "recheck" if recheck else ""
            family = role, condition or "", when or "", "struck" if struck else ""
            counts[family] += 1
            more = () if counts[family] == 1 else (str(counts[family]),)
            if worth is not None and worth != "none":
                text = f"{told(worth)} ({recheck[0]})" if recheck and state == "recheck" else told(worth)
                yield Key("figure", name, role, (*filter(None, family[1:]), *more)), case_of(combination), Fact(text, kind, state)


def _elsewhere(name: str, kind: str, cases: list) -> Iterator[tuple[Key, CombinationKey, Fact]]:
    """Figures and results that stand in another procedure; a name with a slash."""
    if kind:
        yield from _figures(name, kind, cases)
    else:
        for combination, values in cases:
            for value, printed in values:
                yield Key("result", name, told(value)), case_of(combination), Fact(told(printed))


def _worked(working, formula, owner, combination, press, gauge, values, refusals) -> Iterator[tuple[Key, CombinationKey, Fact]]:
    of, case = tuple(told(each) for each in (press, gauge) if each), case_of(combination)
    marks = [told(printed) for name, printed in values if name.startswith("mark at ")]
    marks += [f"never pass {told(printed)}" for name, printed in values if name == "never-pass mark"]
    if working == "press-card" and marks:
        yield Key("mark", owner, "marks", of), case, Fact(", ".join(marks))
    for name, printed in values:
        if working != "press-card" or not name.startswith(("mark at ", "never-pass")):
            yield Key("setting" if name == "setting" else "result", owner, name, of), case, Fact(told(printed))
    if refusals:
        yield Key("result", owner, "refused", of), case, Fact(told(refusals), told(working), "refused")
    yield Key("formula", working, ""), (), Fact(told(formula))


def _step(record: dict, at: int, step: dict) -> Iterator[tuple[Key, CombinationKey, Fact]]:
    name = step["id"]
    yield Key("step", name, ""), (), Fact("there")
    for part in _STEP:
        if step[part] not in (None, False) and told(step[part]):
            yield Key("step", name, part), (), Fact(told(step[part]))
    for caution, *rest in step["cautions"]:
        yield Key("caution", name, caution), (), Fact(told(rest))
    for end, *rest in step["leaves"]:
        yield Key("loose end", name, end), (), Fact(told(rest))


def case_of(combination: dict) -> CombinationKey:
    return tuple(sorted((told(carrier), told(variant)) for carrier, variant in combination.items()))


def told(data) -> str:
    """Plain data as words: lists with commas, nothing as ''."""
    if isinstance(data, str):
        return data
    if data is None or data is False:
        return ""
    if data is True:
        return "yes"
    if isinstance(data, list):
        return ", ".join(filter(None, map(told, data)))
    if isinstance(data, dict):
        return ", ".join(f"{key} {told(value)}" for key, value in data.items())
    return str(data)
