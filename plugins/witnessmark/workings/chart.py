"""What follows from a reading still to be taken, in a small table over the range its author expects.

    present gap: measured at read-gap, 0.030 to 0.050 in
"""
from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from ..core.kinds import Problem
from ..core.quantity import Quantity, read_quantity
from ..core.working import Details, Given, Outcome, Table, Working
from .printed import in_unit, ten_step

#: A table longer than this is not read at a bench.
_MOST_ROWS = 13


def expected(working: Working, name: str, text: str) -> Quantity | Problem | None:
    """The range to chart, None where the author gave none."""
    _, comma, range_text = text.partition(",")
    if not comma:
        return None
    quantity = read_quantity(range_text.strip(), working.input(name).kind)
    if not isinstance(quantity, Quantity):
        return Problem(f"{name}: {quantity.message}", quantity.mend)
    if quantity.form != "range":
        return Problem(f"{name}: '{range_text.strip()}' is no range", "write the least and the most to expect, such as 0.030 to 0.050 in")
    return quantity


def chart(working: Working, given: Mapping[str, Given], name: str, over: Quantity) -> Details:
    """Each reading of the range at a round step, and every result it leads to; a refusal stands as REFUSED."""
    runs = []
    for at in _readings(over):
        si = float(over.unit.to_si(at))
        text = in_unit(si, over.kind, over.unit, _step(over))
        reading = Given(text, si, si, si, Quantity(text, "exact", at, at, over.unit, over.kind, 0, False))
        runs.append((text, working.compute({**given, name: reading})))
    names = list(dict.fromkeys(value.name for _, outcome in runs for value in outcome.values))
    rows = tuple((text, *(_cell(outcome, result) for result in names)) for text, outcome in runs)
    return Details(tables=(Table(f"What follows from {name}", (name, *names), rows),)) if names else Details()


def _cell(outcome: Outcome, name: str) -> str:
    if outcome.refusals:
        return "REFUSED"
    return outcome.value(name).printed if outcome.has(name) else ""


def _step(over: Quantity) -> Fraction:
    """1, 2 or 5 of a power of ten, so that the range takes no more rows than a table can have."""
    least = (over.high - over.low) / (_MOST_ROWS - 1)
    power = ten_step(float(least))
    return next(power * times for times in (1, 2, 5, 10) if power * times >= least)


def _readings(over: Quantity) -> list[Fraction]:
    """From the low end on, at each round step between, to the high end."""
    step = _step(over)
    first = -(-over.low // step) * step
    between = [first + number * step for number in range(int((over.high - first) // step) + 1)]
    return list(dict.fromkeys((over.low, *between, over.high)))
