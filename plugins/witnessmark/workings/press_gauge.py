"""A ram with its gauge, and whether a job's forces can be read on it.

Readings are floats in the gauge's own unit; forces are in N. Judging is done on unrounded
figures; only marks are rounded, and always down to a full division.
"""
from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from math import hypot

from ..core.rounding import round_to
from ..core.units import Unit, find_unit
from ..core.working import Refusal
from .printed import force, in_unit, ten_step
from .tables.gauge_ranges import standard_gauges

SHARES = (50, 75, 90, 100)


@dataclass(frozen=True)
class Press:
    """A ram's area in m² and its gauge, all but the area in gauge units.

    `rated` is the reading at the ram's rating; `gauge_limit` the highest the gauge is used to.
    """
    area: float
    unit: Unit
    full_scale: Fraction
    division: Fraction
    accuracy: float
    rated: float
    gauge_limit: float

    @property
    def limit(self) -> float:
        return min(self.rated, self.gauge_limit)

    @property
    def limit_words(self) -> str:
        if self.rated <= self.gauge_limit:
            return "nameplate"
        return "end of the gauge" if self.gauge_limit == self.full_scale else "limit set for the gauge"

    @cached_property
    def uncertainty(self) -> float:
        """Class share of full scale and half a division, as squares (root sum of squares)."""
        return hypot(self.accuracy * float(self.full_scale), float(self.division) / 2)

    def reading(self, newtons: float) -> float:
        return newtons / self.area / self.unit.doubles[0]

    def force(self, reading: float) -> float:
        return reading * self.unit.doubles[0] * self.area

    def down(self, reading: float) -> Fraction:
        return round_to(reading, self.division, "down")

    def up(self, reading: float) -> Fraction:
        return round_to(reading, self.division, "up")

    def shown(self, reading: float | Fraction) -> str:
        """A mark as printed: '3600 psi'."""
        return self._text(reading, self.division)

    def shown_finely(self, reading: float) -> str:
        """A reading that is not a mark, to a twentieth of a division or so."""
        return self._text(reading, ten_step(float(self.division) / 20))

    def _text(self, reading: float | Fraction, step: Fraction) -> str:
        return in_unit(float(reading) * self.unit.doubles[0], "pressure", self.unit, step)


@dataclass(frozen=True)
class Job:
    """What is to be pressed, in N; None where a figure is not given. `unit` is the author's own force unit."""
    unit: Unit
    target: float | None = None
    floor: float | None = None
    ceiling: float | None = None
    window: tuple[float, float] | None = None


@dataclass(frozen=True)
class Verdict:
    """Marks a press may be worked to, or the refusal and no marks."""
    refusal: Refusal | None = None
    marks: tuple[Fraction, ...] = ()
    never_pass: Fraction | None = None
    band: tuple[Fraction, Fraction] | None = None
    in_bottom_quarter: bool = False
    warnings: tuple[str, ...] = ()


def judge_job(job: Job) -> Refusal | None:
    """What is wrong with the figures themselves, whichever press is used."""
    if job.ceiling is None:
        return Refusal("no ceiling is given for this force, so nobody can say where to stop",
                       "give a ceiling with its source")
    for name, newtons in (("floor", job.floor), ("target", job.target)):
        if newtons is not None and newtons > job.ceiling:
            return Refusal(f"the {name} of {force(newtons, job.unit)} is over the ceiling of {force(job.ceiling, job.unit)}",
                           "find out which of the two sources is right; do not press")
    if job.target is not None and job.floor is not None and job.target < job.floor:
        return Refusal(f"the target of {force(job.target, job.unit)} is under the floor of {force(job.floor, job.unit)}",
                       "find out which of the two sources is right; do not press")
    return None


def judge(press: Press, job: Job) -> Verdict:
    """Marks for `job` on `press`. Assumes judge_job found nothing."""
    wanted = job.ceiling if job.target is None else job.target
    exact = press.reading(wanted)
    if exact > press.limit:
        instead = (f"a press rated for {force(wanted, job.unit)} or more" if exact > press.rated
                   else "a gauge of a larger range")
        return Verdict(Refusal(f"{force(wanted, job.unit)} is {press.shown_finely(exact)}, "
                               f"over the {press.shown_finely(press.limit)} {press.limit_words}", instead))
    warnings: list[str] = []
    never_pass = press.down(press.reading(job.ceiling) - press.uncertainty)
    if never_pass > press.limit:
        never_pass = press.down(press.limit)
        warnings.append(f"the never-pass mark is held down to the {press.limit_words}, {press.shown_finely(press.limit)}")
    if never_pass <= 0:
        return Verdict(Refusal("the gauge's uncertainty is as large as the ceiling itself", "a gauge of a smaller range"))
    marks: tuple[Fraction, ...] = ()
    if job.target is not None:
        marks = tuple(press.down(exact * share / 100) for share in SHARES)
        refusal = _judge_last_mark(press, job, marks[-1])
        if refusal:
            return Verdict(refusal)
        if len(set(marks)) < len(marks) or marks[0] <= 0:
            warnings.append("some of the four marks fall on one division: this gauge is coarse for the job")
        if job.floor is None:
            warnings.append("no floor is given: nothing says whether the low edge of the last mark still holds")
    last = marks[-1] if marks else never_pass
    bottom = last * 4 < press.full_scale
    if bottom:
        warnings.append(f"the reading is in the bottom quarter of the gauge ({float(100 * last / press.full_scale):.1f} % of its range)")
    band = None
    if job.window is not None:
        band = (press.up(press.reading(job.window[0]) + press.uncertainty),
                min(never_pass, press.down(press.reading(job.window[1]) - press.uncertainty)))
        if band[0] > band[1]:
            return Verdict(Refusal(
                f"with {press.shown_finely(press.uncertainty)} of uncertainty no mark is sure to lie between "
                f"{force(job.window[0], job.unit)} and {force(job.window[1], job.unit)}", "a finer gauge"))
    return Verdict(None, marks, never_pass, band, bottom, tuple(warnings))


def _judge_last_mark(press: Press, job: Job, mark: Fraction) -> Refusal | None:
    low, high = (press.force(float(mark) + side * press.uncertainty) for side in (-1, 1))
    meaning = (f"the last mark, {press.shown(mark)}, means anything from {force(low, job.unit)} to {force(high, job.unit)}")
    if mark <= 0:
        return Refusal(f"one division is more than the target: {meaning}", "a gauge of a smaller range")
    if job.floor is not None and low < job.floor:
        return Refusal(f"{meaning}; its low edge is under the floor of {force(job.floor, job.unit)}", "a finer gauge")
    if high > job.ceiling:
        return Refusal(f"{meaning}; its high edge is over the ceiling of {force(job.ceiling, job.unit)}", "a finer gauge")
    return None


def standard_that_would_do(press: Press, job: Job, at_most: int = 3) -> tuple[str, ...]:
    """Standard gauges that on this ram accept the job outside their bottom quarter, coarsest class each."""
    bar = find_unit("bar", "pressure")
    rated = press.rated * float(press.unit.factor / bar.factor)
    found: dict[int, str] = {}
    for full_scale, accuracy, division in standard_gauges():
        if len(found) == at_most:
            break
        if full_scale in found:
            continue
        gauge = Press(press.area, bar, Fraction(full_scale), Fraction(str(division)), float(accuracy) / 100,
                      rated, full_scale)
        verdict = judge(gauge, job)
        if not verdict.refusal and not verdict.in_bottom_quarter:
            found[full_scale] = f"a 0 to {full_scale} bar gauge of class {accuracy} in divisions of {division:g} bar"
    return tuple(found.values())
