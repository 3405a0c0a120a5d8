"""The working 'timing-arc': an angle of the crank as a length along the rim of its flywheel."""
from __future__ import annotations

import math
from collections.abc import Mapping
from fractions import Fraction

from ..core.drawing import Disc, Drawing, Label, Stroke
from ..core.rounding import round_to
from ..core.units import find_unit
from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Working
from .printed import in_system, in_unit, spread, value, words
from .reach import beyond_reach

SIXTY_FOURTH = Fraction(1, 64)


def arc_length(diameter: float, angle: float) -> float:
    """Along the rim, in m from m and radians."""
    return diameter * angle / 2


def chord_length(diameter: float, angle: float) -> float:
    """Straight across between the two marks, as dividers reach."""
    return diameter * math.sin(angle / 2)


def on_inch_tape(inches: Fraction) -> str:
    """'3-49/64 in': a multiple of 1/64, as a tape is read."""
    whole, part = divmod(inches, 1)
    if not part:
        return f"{whole} in"
    return f"{whole}-{part} in" if whole else f"{part} in"


def compute(given: Mapping[str, Given]) -> Outcome:
    """Arc, chord and what both kinds of tape show of the arc."""
    refusal = beyond_reach(given)
    diameter, angle = given["rim diameter"], given["angle"]
    if not refusal and angle.high >= 2 * math.pi:
        refusal = Refusal(f"{angle.text} is a whole turn or more", "give the angle from the dead centre")
    if refusal:
        return Outcome(refusals=(refusal,))
    unit, step = in_system(diameter, ("in", "0.001"), ("mm", "0.1"))
    arc = arc_length(diameter.likely, angle.likely)
    chord = min(chord_length(diameter.likely, angle.likely), diameter.likely)
    inch, millimetre = find_unit("in", "length"), find_unit("mm", "length")
    tape = round_to(inch.from_si(arc), SIXTY_FOURTH, "nearest")
    metric = round_to(millimetre.from_si(arc), "0.5", "nearest")
    values = (value("arc", "length", spread(arc_length(diameter.low, angle.low), arc, arc_length(diameter.high, angle.high)), unit, step),
              value("for each degree", "length", arc_length(diameter.likely, math.radians(1)), unit, Fraction(step) / 10 if unit == "mm" else step),
              value("straight across", "length", chord, unit, step),
              words("inch tape", on_inch_tape(tape)),
              words("metric tape", in_unit(float(millimetre.to_si(metric)), "length", millimetre, "0.5")))

    def details() -> Details:
        off = math.degrees((float(inch.to_si(tape)) - arc) / (diameter.likely / 2))
        return Details((
            Line("Round the rim", "pi D", f"pi x {diameter.text}", in_unit(math.pi * diameter.likely, "length", unit, step)),
            Line("Along the rim", "pi D angle / 360°", f"pi x {diameter.text} x {angle.text} / 360°", in_unit(arc, "length", unit, step)),
            Line("Straight across, with dividers", "D sin(angle / 2)", f"{diameter.text} x sin({math.degrees(angle.likely) / 2:.2f}°)",
                 in_unit(chord, "length", unit, step)),
            Line("Nearest sixty-fourth on the tape puts the mark off by", "", on_inch_tape(tape), f"{off:+.2f}°")),
            drawing=_rim(math.degrees(angle.likely), angle.text, diameter.text, on_inch_tape(tape), values[4].printed))

    return Outcome(values, details=details)


def _rim(degrees: float, angle: str, diameter: str, tape: str, metric: str) -> Drawing:
    """The rim with its two marks; the arc between them thick."""
    x, y, radius = 160.0, 160.0, 110.0

    def at(turn: float, out: float) -> tuple[float, float]:
        return x - out * math.sin(math.radians(turn)), y - out * math.cos(math.radians(turn))

    steps = max(2, math.ceil(degrees / 3))
    arc = tuple(at(degrees * n / steps, radius + 6) for n in range(steps + 1))
    marks = (Disc(x, y, radius), Disc(x, y, 8), Stroke(arc, "thick"),
             Stroke((at(0, 8), at(0, radius + 14))), Stroke((at(degrees, 8), at(degrees, radius + 14))),
             Label(*at(0, radius + 22), "dead centre", "start" if degrees > 5 else "middle"),
             Label(x + 16, y + 6, angle, "start", big=True), Label(x, y + 146, f"{tape}, or {metric}"), Label(x, y + 166, f"on a rim {diameter} across"))
    return Drawing(320, 338, f"Rim {diameter} across: from the dead-centre mark {tape}, or {metric}, along the rim to the mark at {angle}.", marks)


WORKING = Working(
    id="timing-arc",
    title="Crank angle as a length on the rim",
    purpose="Gives the length to lay along a flywheel rim from the dead-centre mark, on an inch tape to 1/64 and on a metric one.",
    formula=(Formula("arc = pi D angle / 360°", r"\text{arc} = \frac{\pi D \, \text{angle}}{360^\circ}"),
             Formula("straight across = D sin(angle / 2)", r"\text{straight across} = D \, \sin(\text{angle} / 2)")),
    inputs=(
        Input("rim diameter", "diameter", "across the rim where the tape lies", ("4 in", "120 in"), "a radius, or the length round the rim?"),
        Input("angle", "angle", "crank angle from the dead centre", ("1°", "90°"), "camshaft degrees instead of crank degrees?")),
    outputs=(
        Output("arc", "length", "nearest", "length along the rim"),
        Output("for each degree", "length", "nearest", "length along the rim for one degree"),
        Output("straight across", "length", "nearest", "the same with dividers, straight from mark to mark"),
        Output("inch tape", "none", "nearest", "the arc to the nearest sixty-fourth"),
        Output("metric tape", "none", "nearest", "the arc to the nearest half millimetre")),
    source="length of a circular arc; geometry",
    example=Example({"rim diameter": "18.0 in", "angle": "24°"}, {"arc": "3.770 in", "for each degree": "0.157 in", "inch tape": "3-49/64 in", "metric tape": "96.0 mm"},
                    "this project's demonstration book, by hand"),
    goes_wrong=("Dead centre taken where the piston seems to stand still: find it by a stop, turning both ways, half-way between.",
                "The rim measured over the ring gear and the tape laid on the turned face.",
                "Dividers set to the length along the rim."),
    refuses=("A whole turn or more.",),
    assumes=("The tape lies flat on a round rim.",),
    compute=compute)
