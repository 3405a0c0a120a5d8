"""Texts to inputs of a working. What is wrong with them comes back as words with an example, never as an exception.

An input is a text (`3.000 in`, `0.12 / 0.15 / 0.20`, a thread, `measured at STEP`), or what another working gave."""
from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from difflib import get_close_matches
from fractions import Fraction
from functools import lru_cache, partial

from ..core.kinds import KINDS, Problem
from ..core.quantity import Quantity, read_quantity
from ..core.thread import Thread, read_thread
from ..core.working import MEASURED, Details, Given, Input, Outcome, Value, Working
from .chart import chart, expected
from .shelf import PUBLISHED, Shelf, from_shelf

NO_QUANTITY = ("thread", "choice", "grade", "position")
#: A result of one of these kinds may be given where another of the same set is asked for. A radius is never a diameter.
_ALIKE = ({"press force", "force"}, {"pressure", "stress"}, {"torque", "rolling drag"}, {"length", "clearance", "interference"},
          {"length", "diameter"}, {"length", "radius"}, {"gear ratio", "share", "friction"})
#: In SI; beyond it, and under one over it, nothing is measured in a shop.
_FAR = 1e15


def given_inputs(working: Working, texts: Mapping[str, str | Given]) -> tuple[dict[str, Given], list[Problem]]:
    """The inputs that could be read, and a problem for each that is missing, unknown or wrong."""
    given: dict[str, Given] = {}
    problems: list[Problem] = []
    names = [declared.name for declared in working.inputs]
    for name, text in texts.items():
        if name not in names:
            near = get_close_matches(name, names, 1)
            problems.append(Problem(f"{working.id} has no input '{name}'", f"write {near[0]}" if near else f"write one of {', '.join(names)}"))
            continue
        read = _fitting(working.input(name), text) if isinstance(text, Given) else read_given(working.input(name), text)
        if isinstance(read, Given):
            given[name] = read
        else:
            problems.append(Problem(f"{name}: {read.message}", read.mend))
    for declared in working.inputs:
        if declared.required and declared.name not in texts:
            problems.append(Problem(f"{working.id} needs '{declared.name}' ({declared.doc})", _example(working, declared)))
    return given, problems


def run(working: Working, texts: Mapping[str, str | Given], shelf: Shelf = PUBLISHED) -> tuple[Outcome | None, list[Problem]]:
    """One run: the outcome with warnings about unusual inputs added, or None and the problems.

    A tool, material or stock named by its id gives the inputs that belong to it. With an input still to be measured
    there is no value: the outcome says what it waits for."""
    texts, problems = from_shelf(working, texts, shelf)
    known = {declared.name for declared in working.inputs}
    waits = tuple(name for name, text in texts.items() if name in known and isinstance(text, str) and text.startswith(MEASURED))
    given, more = given_inputs(working, {name: text for name, text in texts.items() if name not in waits} if waits else texts)
    problems += [problem for problem in more if not any(f"needs '{name}'" in problem.message for name in waits)]
    ranges = {name: expected(working, name, texts[name]) for name in waits}
    problems += [over for over in ranges.values() if isinstance(over, Problem)]
    if problems:
        return None, problems
    if waits:
        return _waiting(working, given, ranges), []
    outcome = working.compute(given)
    return replace(outcome, warnings=outside_usual(working, given) + outcome.warnings), []


def _waiting(working: Working, given: Mapping[str, Given], ranges: Mapping[str, Quantity | None]) -> Outcome:
    """No value yet; where one reading is missing and its range is known, what each reading would lead to."""
    (name, over), *more = ranges.items()
    details = partial(chart, working, given, name, over) if over and not more else Details
    return Outcome(waits=tuple(ranges), warnings=outside_usual(working, given), details=details)


def outside_usual(working: Working, given: Mapping[str, Given]) -> tuple[str, ...]:
    """A sentence for each input outside its usual range."""
    warnings = []
    for declared in working.inputs:
        if declared.usual is None or declared.name not in given:
            continue
        lowest, highest = (read_quantity(end, declared.kind) for end in declared.usual)
        value = given[declared.name]
        slack = 1e-9 * abs(highest.si_high)
        if value.low < lowest.si_low - slack or value.high > highest.si_high + slack:
            warnings.append(f"{declared.name} {value.text} is outside the usual {declared.usual[0]} to {declared.usual[1]}: {declared.outside}")
    return tuple(warnings)


@lru_cache(maxsize=4096)
def read_given(declared: Input, text: str) -> Given | Problem:
    """One input: a thread, a choice word, a quantity, a band 'low / likely / high', or several with commas."""
    if declared.many:
        return _several(declared, text)
    if declared.kind == "thread":
        thread = read_thread(text)
        return Given(text, thread=thread) if isinstance(thread, Thread) else thread
    if declared.kind == "position":
        return _position(text)
    if declared.kind == "choice" and text not in declared.choices:
        return Problem(f"'{text}' is no choice here", f"write {' or '.join(declared.choices)}")
    if declared.kind in NO_QUANTITY:
        return Given(text.strip())
    if declared.kind not in KINDS:
        return Problem(f"the kind {declared.kind} is not known", "report this as a fault of the working")
    parts = text.split(" / ")
    if len(parts) == 3:
        return _band(declared, text, parts)
    quantity = read_quantity(text, declared.kind)
    if not isinstance(quantity, Quantity):
        return quantity
    low, high = quantity.si_low, quantity.si_high
    if low is None or high is None:                             # a limit is worth itself: all that is given is that number
        low = high = high if low is None else low
        limit = quantity.high if quantity.low is None else quantity.low
        quantity = replace(quantity, low=limit, high=limit)
    return _positive(declared, Given(text, low, low if low == high else (low + high) / 2, high, quantity))


def _band(declared: Input, text: str, parts: list[str]) -> Given | Problem:
    """'0.12 / 0.15 / 0.20': the unit may stand once, after the last."""
    last = read_quantity(parts[2], declared.kind)
    if not isinstance(last, Quantity):
        return last
    ends = []
    for part in parts[:2]:
        end = read_quantity(part, declared.kind)
        if not isinstance(end, Quantity):
            end = read_quantity(f"{part} {last.unit.symbol}", declared.kind)
        if not isinstance(end, Quantity):
            return end
        ends.append(end.si_low)
    low, likely, high = *ends, last.si_low
    if None in (low, likely, high) or not low <= likely <= high:
        return Problem(f"'{text}' does not rise", "write low / likely / high, such as 0.12 / 0.15 / 0.20")
    return _positive(declared, Given(text, low, likely, high, last))


def _position(text: str) -> Given | Problem:
    """'3.5 by 4 in': across, then down, from any corner; the unit may stand once, after the second."""
    across, by, down = text.strip().partition(" by ")
    second = read_quantity(down, "length")
    first = read_quantity(across, "length")
    if isinstance(second, Quantity) and not isinstance(first, Quantity):
        first = read_quantity(f"{across} {second.unit.symbol}", "length")
    if not by or not isinstance(first, Quantity) or not isinstance(second, Quantity) or {first.form, second.form} != {"exact"}:
        return Problem(f"'{text}' is no position", "write how far across and how far down, such as 3.5 by 4 in")
    return Given(text, several=tuple(Given(each.text, each.si_low, each.si_low, each.si_low, each) for each in (first, second)))


def _several(declared: Input, text: str) -> Given | Problem:
    """'0.003 in, 0.005 in, 0.012 in': the band runs from the least to the most."""
    one = replace(declared, many=False)
    parts = [read_given(one, part.strip()) for part in text.split(",")]
    wrong = next((part for part in parts if not isinstance(part, Given)), None)
    if wrong is not None:
        return Problem(wrong.message, f"{wrong.mend}; several stand with a comma between")
    return Given(text, min(part.low for part in parts), parts[0].likely, max(part.high for part in parts), parts[0].quantity,
                 several=tuple(parts))


def given_of(value: Value) -> Given:
    """A result as an input of the next working: its band unrounded, its text as printed."""
    def exactly(si: float) -> Fraction:
        return value.unit.from_si(si)

    if value.unit is None:
        return Given(value.printed)
    form = "exact" if value.low == value.high else "range"
    return Given(value.printed, value.low, value.likely, value.high,
                 Quantity(value.printed, form, exactly(value.low), exactly(value.high), value.unit, value.kind, 0, False))


def _fitting(declared: Input, given: Given) -> Given | Problem:
    """A result of another working, if it is of the kind that is asked for."""
    kind = given.quantity.kind if given.quantity else "words"
    if kind != declared.kind and not any({kind, declared.kind} <= alike for alike in _ALIKE):
        return Problem(f"{declared.name}: {given.text} is a {kind}, not a {declared.kind}", "take a result of the same kind")
    return _positive(declared, given)


def _positive(declared: Input, given: Given) -> Given | Problem:
    """Most of what is measured is over zero; an angle and an accuracy may be nothing, and where it says so anything."""
    if any(end and not 1 / _FAR < abs(end) < _FAR for end in (given.low, given.high)):
        return Problem(f"'{given.text}' is beyond anything measured", f"check the figure and its unit: {declared.doc}")
    least_is_zero = declared.sign == "zero or over" or declared.kind in ("angle", "share")
    if declared.sign == "signed" or given.low > 0 or (least_is_zero and given.low >= 0):
        return given
    return Problem(f"'{given.text}' is {'under' if least_is_zero else 'not over'} zero", f"check {declared.name}: {declared.doc}")


def _example(working: Working, declared: Input) -> str:
    example = working.example.inputs.get(declared.name) or (declared.usual[0] if declared.usual else "")
    return f"write it such as {declared.name}: {example}" if example else "add it"
