"""The workings 'run-out' and 'face-run-out': what a dial shows of a part that does not turn true."""
from __future__ import annotations

import cmath
import math
from collections.abc import Mapping

from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Value, Working
from .printed import in_system, in_unit, unit_of, value, words
from .reach import beyond_reach

INSIDE, OVER = "inside the limit", "over the limit"
_FINE = (("in", "0.00005"), ("mm", "0.001"))


def shaft_and_part(reading: float, spot: float, turned: float, turned_spot: float) -> tuple[float, float]:
    """Run-out of the shaft and of the part on it, from two readings with the part turned half round between them.

    High spots in radians from one mark on the shaft. The shaft's own share stays where it was, the part's goes to the
    other side: half the sum of the two, and half their difference, as arrows."""
    first, second = cmath.rect(reading, spot), cmath.rect(turned, turned_spot)
    return abs(first + second) / 2, abs(first - second) / 2


def _true(given: Mapping[str, Given]) -> Outcome:
    refusal = beyond_reach(given)
    pair = [name for name in ("high spot", "reading turned", "high spot turned") if name in given]
    if not refusal and pair and len(pair) < 3:
        refusal = Refusal("shaft and part cannot be told apart from one reading", "give both readings, each with its high spot from one mark on the shaft")
    if refusal:
        return Outcome(refusals=(refusal,))
    reading = given["reading"]
    unit, step = in_system(reading, *_FINE)
    values: list[Value] = [value("eccentricity", "length", reading.likely / 2, unit, step)]
    lines = [Line("Centre off the axis", "run-out / 2", f"{reading.text} / 2", in_unit(reading.likely / 2, "length", unit, step))]
    if pair:
        shaft, part = shaft_and_part(reading.likely, given["high spot"].likely, given["reading turned"].likely, given["high spot turned"].likely)
        values += [value("shaft run-out", "length", shaft, unit, step), value("part run-out", "length", part, unit, step)]
        both = f"{reading.text} at {given['high spot'].text} and {given['reading turned'].text} at {given['high spot turned'].text}"
        lines += [Line("Of the shaft", "half the sum, as arrows", both, in_unit(shaft, "length", unit, step)),
                  Line("Of the part", "half the difference, as arrows", both, in_unit(part, "length", unit, step))]
    if "limit" in given:
        values.append(words("verdict", INSIDE if reading.high <= given["limit"].likely * (1 + 1e-9) else OVER))
    return Outcome(tuple(values), details=lambda: Details(tuple(lines)))


def _face(given: Mapping[str, Given]) -> Outcome:
    refusal = beyond_reach(given)
    if refusal:
        return Outcome(refusals=(refusal,))
    rate, each, radius = given["limit"], given["on each"], given["radius"]
    limit = rate.likely / each.likely * radius.likely
    unit, step = in_system(rate, ("in", "0.001"), ("mm", "0.01"))
    if "division" in given:
        unit, step = unit_of(given["division"]).symbol, given["division"].quantity.low
    most = value("most run-out", "length", limit, unit, step, "down")
    if most.likely <= 0:
        return Outcome(refusals=(Refusal(f"the limit at {radius.text}, {in_unit(limit, 'length', *in_system(rate, *_FINE))}, is less than the dial can show",
                                         "use a dial with finer divisions, or measure further out"),))
    values = [most]
    lines = [Line("Limit at the radius", "limit / each · radius", f"{rate.text} / {each.text} x {radius.text}",
                  in_unit(limit, "length", *in_system(rate, *_FINE))),
             Line("Down to what the dial shows", "", "", most.printed)]
    if "reading" in given:
        tilt = math.atan2(given["reading"].likely, 2 * radius.likely)
        values += [value("tilt", "angle", tilt, "°", "0.001"),
                   words("verdict", INSIDE if given["reading"].high <= most.likely * (1 + 1e-9) else OVER)]
        lines.append(Line("Tilt of the face", "atan(reading / (2 radius))", f"{given['reading'].text} / (2 x {radius.text})", values[1].printed))
    return Outcome(tuple(values), details=lambda: Details(tuple(lines)))


RUN_OUT = Working(
    id="run-out",
    title="What a dial says of a part that runs out",
    purpose="Turns a total reading into how far the centre is off, and tells a bent shaft from a part that is not true on it.",
    formula=(Formula("eccentricity = run-out / 2", r"\text{eccentricity} = \text{run-out} / 2"),
             Formula("shaft = (first + second) / 2", r"\text{shaft} = (\text{first} + \text{second}) / 2"),
             Formula("part = (first - second) / 2", r"\text{part} = (\text{first} - \text{second}) / 2")),
    inputs=(
        Input("reading", "length", "all the dial moves in one turn", ("0.0001 in", "0.100 in"), "the dial's zero not set, or the part not round?", sign="zero or over"),
        Input("high spot", "angle", "where it reads highest, from a mark on the shaft", required=False),
        Input("reading turned", "length", "the same after the part was turned half round on the shaft", required=False, sign="zero or over"),
        Input("high spot turned", "angle", "where it reads highest then, from the same mark on the shaft", required=False),
        Input("limit", "length", "most that is allowed in all, for a verdict", required=False)),
    outputs=(
        Output("eccentricity", "length", "nearest", "how far the centre is off the axis"),
        Output("shaft run-out", "length", "nearest", "what stays with the shaft, as a total reading"),
        Output("part run-out", "length", "nearest", "what goes with the part, as a total reading"),
        Output("verdict", "none", "nearest", "inside or over the limit")),
    source="ASME Y14.5, circular run-out (full indicator movement); two readings half a turn apart: shaft-alignment manuals",
    example=Example({"reading": "0.006 in", "high spot": "30°", "reading turned": "0.002 in", "high spot turned": "30°", "limit": "0.005 in"},
                    {"eccentricity": "0.00300 in", "shaft run-out": "0.00400 in", "part run-out": "0.00200 in", "verdict": "over the limit"},
                    "by hand: half of six, half of six and two, half of six less two"),
    goes_wrong=("The total reading taken for the eccentricity: the part is moved twice too far.",
                "A part that is not round read as one that is off centre: look for two high spots in a turn.",
                "The part turned on a shaft whose taper or key makes it sit otherwise than before."),
    refuses=("One reading with a high spot: shaft and part need two, each with its high spot.",),
    assumes=("The part is round, and sits on the shaft each time in the same way.",),
    compute=_true)

FACE = Working(
    id="face-run-out",
    title="How much a face may run out at a radius",
    purpose="Turns a limit for each inch of radius into the most the dial may show where it stands, rounded down to its divisions.",
    formula=(Formula("most = limit / each · radius", r"\text{most} = \text{limit} / \text{each} \cdot \text{radius}"),
             Formula("tilt = atan(reading / (2 radius))", r"\text{tilt} = \text{atan}(\text{reading} / (2 \, \text{radius}))")),
    inputs=(
        Input("limit", "length", "run-out allowed for each inch (or other measure) of radius", ("0.0001 in", "0.002 in"), "for each inch of radius, not in all?"),
        Input("on each", "radius", "the radius that limit is for, such as 1 in"),
        Input("radius", "radius", "where the dial stands, from the middle", ("0.5 in", "40 in"), "a diameter instead of a radius?"),
        Input("division", "length", "smallest division of the dial", required=False),
        Input("reading", "length", "what the dial showed in all, for a verdict", required=False, sign="zero or over")),
    outputs=(
        Output("most run-out", "length", "down", "the most the dial may show there"),
        Output("tilt", "angle", "nearest", "how far the face leans"),
        Output("verdict", "none", "nearest", "inside or over the limit")),
    source="engine and generator manuals: 0.0005 in for each inch of radius; geometry of a leaning face",
    example=Example({"limit": "0.0005 in", "on each": "1 in", "radius": "6.75 in", "reading": "0.004 in"},
                    {"most run-out": "0.003 in", "verdict": "over the limit"}, "this project's demonstration book, by hand"),
    goes_wrong=("End play of the shaft read as run-out: push it one way and keep it there.",
                "The diameter given for the radius: twice the run-out is let through."),
    refuses=("A limit less than one division of the dial.",),
    assumes=("The face is flat: what the dial shows grows with the radius.",),
    compute=_face)
