"""Texts to inputs of a working. What is wrong with them comes back as words with an example, never as an exception."""
from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from difflib import get_close_matches
from functools import lru_cache

from ..core.kinds import KINDS, Problem
from ..core.quantity import Quantity, read_quantity
from ..core.thread import Thread, read_thread
from ..core.working import Given, Input, Outcome, Working

NO_QUANTITY = ("thread", "choice", "grade")


def given_inputs(working: Working, texts: Mapping[str, str]) -> tuple[dict[str, Given], list[Problem]]:
    """The inputs that could be read, and a problem for each that is missing, unknown or wrong."""
    given: dict[str, Given] = {}
    problems: list[Problem] = []
    names = [declared.name for declared in working.inputs]
    for name, text in texts.items():
        if name not in names:
            near = get_close_matches(name, names, 1)
            problems.append(Problem(f"{working.id} has no input '{name}'", f"write {near[0]}" if near else f"write one of {', '.join(names)}"))
            continue
        read = read_given(working.input(name), str(text))
        if isinstance(read, Given):
            given[name] = read
        else:
            problems.append(Problem(f"{name}: {read.message}", read.mend))
    for declared in working.inputs:
        if declared.required and declared.name not in texts:
            problems.append(Problem(f"{working.id} needs '{declared.name}' ({declared.doc})", _example(working, declared)))
    return given, problems


def run(working: Working, texts: Mapping[str, str]) -> tuple[Outcome | None, list[Problem]]:
    """One run from texts: the outcome with warnings about unusual inputs added, or None and the problems."""
    given, problems = given_inputs(working, texts)
    if problems:
        return None, problems
    outcome = working.compute(given)
    return replace(outcome, warnings=outside_usual(working, given) + outcome.warnings), []


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
    """One input: a thread, a choice word, a quantity, or a band 'low / likely / high'."""
    if declared.kind == "thread":
        thread = read_thread(text)
        return Given(text, thread=thread) if isinstance(thread, Thread) else thread
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
    low, high = (high if low is None else low), (low if high is None else high)
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


def _positive(declared: Input, given: Given) -> Given | Problem:
    """Everything measured here is over zero, except an angle, which may be nothing, and an accuracy."""
    if given.low > 0 or (declared.kind in ("angle", "share") and given.low >= 0):
        return given
    return Problem(f"'{given.text}' is not over zero", f"check {declared.name}: {declared.doc}")


def _example(working: Working, declared: Input) -> str:
    example = working.example.inputs.get(declared.name) or (declared.usual[0] if declared.usual else "")
    return f"write it such as {declared.name}: {example}" if example else "add it"
