"""The workings 'backlash' and 'gear-shift': bevel gear backlash at another radius, and how far to move the gear. Declarations: see BACKLASH and SHIFT.

Backlash read along the circumference grows with the radius it is read at. Moving the gear along its own axis by dx takes it
dx sin(pitch angle) off the pinion's cone, and a gap between flanks of pressure angle phi opens by 2 tan(phi) of that.
"""
from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from math import atan2, cos, degrees, pi, sin, tan

from ..core.drawing import Disc, Drawing, Label, Stroke
from ..core.rounding import round_to
from ..core.units import find_unit
from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Table, Value, Working
from .printed import in_unit, span, spread, unit_of, value, window, words

_FINE = {"in": "0.0001", "mm": "0.001"}
_SPREAD = 76.2e-6
"""0.003 in: a reading that differs by more round the gear is run-out, which no shim takes away. Common practice, no source."""


def at_radius(backlash: float, read_at: float, wanted_at: float) -> float:
    return backlash * wanted_at / read_at


def per_shift(pressure_angle: float, pitch_angle: float, spiral: float = 0.0) -> float:
    """Backlash at the pitch circle for a shift of 1 along the gear's axis; angles in radians."""
    return 2 * tan(pressure_angle) * sin(pitch_angle) / cos(spiral)


def _unit(given: Given) -> str:
    return "mm" if unit_of(given).system == "metric" else "in"


def _compute_backlash(given: Mapping[str, Given]) -> Outcome:
    """The pitch window as the dial shows it: exactly, and inward to its divisions."""
    pitch, dial, gap = given["pitch radius"].likely, given["dial radius"].likely, given["pitch window"]
    if not 0.2 <= dial / pitch <= 5:
        return Outcome(refusals=(Refusal(f"a dial at {given['dial radius'].text} does not read a gear of {given['pitch radius'].text} pitch radius",
                                         "check that both are radii, from the centre of the gear"),))
    unit = _unit(gap)
    low, high = (at_radius(each, pitch, dial) for each in (gap.low, gap.high))
    values: list[Value] = [span("exact dial window", "clearance", low, high, unit, _FINE[unit])]
    if "dial division" in given and low < high:
        division = given["dial division"]
        usable = window("dial window", "clearance", low, high, unit_of(division), division.quantity.low)
        if usable is None:
            return Outcome(refusals=(Refusal(f"a dial in {division.text} divisions cannot show {values[0].printed}",
                                             "use a finer dial, or set it at a larger radius"),))
        values.append(usable)

    def details() -> Details:
        lines = [Line("The window at the dial", "pitch window x dial radius / pitch radius",
                      f"{gap.text} x {given['dial radius'].text} / {given['pitch radius'].text}", values[0].printed)]
        lines += [Line("Inward to the divisions of the dial", "", given["dial division"].text, each.printed) for each in values[1:]]
        return Details(tuple(lines), (_reading_table(given, unit, low, high),), _drawing(given))

    return Outcome(tuple(values), details=details)


def _reading_table(given: Mapping[str, Given], unit: str, low: float, high: float) -> Table:
    rows = []
    for part in range(9):
        reading = (0.6 + 0.1 * part) * (low + high) / 2
        at_pitch = at_radius(reading, given["dial radius"].likely, given["pitch radius"].likely)
        rows.append((in_unit(reading, "clearance", unit, _FINE[unit]), in_unit(at_pitch, "clearance", unit, _FINE[unit]),
                     "inside" if given["pitch window"].low <= at_pitch <= given["pitch window"].high else "outside"))
    return Table("What the dial shows and what it is at the pitch circle", ("dial", "at pitch", "window"), tuple(rows))


def _drawing(given: Mapping[str, Given]) -> Drawing:
    ratio = given["dial radius"].likely / given["pitch radius"].likely
    pitch, dial = (60.0, 60.0 * ratio) if ratio < 1.4 else (84.0 / ratio, 84.0)
    x, y = 100.0, 105.0
    marks = (Disc(x, y, pitch, "dashed"), Disc(x, y, max(pitch, dial) + 4, "thick"), Disc(x, y, 3, fill="dark"), Stroke(((x, y), (x, y - dial)), "thin"),
             Stroke(((x, y - dial), (x + 60, y - dial)), "thick"), Disc(x + 75, y - dial, 15, "thick", "light"),
             Label(x + 98, y - dial + 5, "dial, square to its radius", "start"), Label(205, y + 20, f"pitch radius {given['pitch radius'].text}", "start"),
             Label(205, y + 42, f"dial at {given['dial radius'].text}", "start"))
    return Drawing(400, 215, f"Gear of {given['pitch radius'].text} pitch radius, dial at {given['dial radius'].text} from its centre, square to that radius", marks)


def _compute_shift(given: Mapping[str, Given]) -> Outcome:
    """Backlash at pitch from the readings, the shift that brings it to the middle of its window, and what that leaves."""
    cone = _pitch_angle(given)
    if isinstance(cone, Refusal):
        return Outcome(refusals=(cone,))
    flank, spiral = given["pressure angle"].likely, given["spiral angle"].likely if "spiral angle" in given else 0.0
    if not (0.1 <= flank <= 0.7 and 0 < cone < pi / 2 and spiral < 1.2):
        return Outcome(refusals=(Refusal("these angles are of no bevel gear", "pressure angle 14.5 to 25°, pitch angle over 0 and under 90°, spiral under 60°"),))
    factor = per_shift(flank, cone, spiral)
    unit = _unit(given["pitch window"])
    values = [value("backlash per shift", "gear ratio", factor, "", "0.001")]
    warnings: tuple[str, ...] = ()
    if "readings" in given:
        found, warnings = _found(given, factor, unit)
        values += found
    return Outcome(tuple(values), warnings=warnings, details=lambda: Details(_shift_lines(given, factor, cone, values), (_shift_table(given, factor, unit),)))


def _pitch_angle(given: Mapping[str, Given]) -> float | Refusal:
    if "pitch angle" in given:
        return given["pitch angle"].likely
    if "gear teeth" in given and "pinion teeth" in given:
        return atan2(given["gear teeth"].likely, given["pinion teeth"].likely)
    return Refusal("the pitch angle of the gear is not known", "give it, or the teeth of gear and pinion where the shafts are square")


def _found(given: Mapping[str, Given], factor: float, unit: str) -> tuple[list[Value], tuple[str, ...]]:
    pitch, dial, gap = given["pitch radius"].likely, given["dial radius"].likely, given["pitch window"]
    places = [at_radius(each.likely, dial, pitch) for each in given["readings"].several or (given["readings"],)]
    mean, wanted = sum(places) / len(places), (gap.low + gap.high) / 2
    length = find_unit(unit, "length")
    step = given["shim step"].quantity.low * unit_of(given["shim step"]).factor if "shim step" in given else Fraction(_FINE[unit]) * 10 * length.factor
    inside = all(gap.low * (1 - 1e-9) <= place <= gap.high * (1 + 1e-9) for place in places)
    steps = 0.0 if inside else float(round_to(abs(mean - wanted) / factor, step, "nearest"))
    shift = value("gear shift", "length", steps, unit, min(Fraction(_FINE[unit]) * 10, step / length.factor))
    made = given["move"].likely if "move" in given else shift.likely
    closer = mean > wanted
    left = mean - factor * made if closer else mean + factor * made
    way = "leave it: every place is inside the window" if inside and "move" not in given else "towards the pinion" if closer else "away from the pinion"
    values = [value("backlash at pitch", "clearance", spread(min(places), mean, max(places)), unit, _FINE[unit]),
              words("which way", way), shift, value("leaves", "clearance", left, unit, _FINE[unit])]
    warnings = []
    if max(places) - min(places) > _SPREAD * 1.000001:
        warnings.append(f"the readings differ by {in_unit(max(places) - min(places), 'clearance', unit, _FINE[unit])} at pitch round the gear: "
                        "that is run-out, find it before any shim is moved")
    if left < gap.low * (1 - 1e-9) or left > gap.high * (1 + 1e-9):
        warnings.append(f"this move leaves {in_unit(left, 'clearance', unit, _FINE[unit])}, outside {gap.text}")
    return values, tuple(warnings)


def _shift_lines(given: Mapping[str, Given], factor: float, cone: float, values: list[Value]) -> tuple[Line, ...]:
    lines = []
    if "pitch angle" not in given:
        lines.append(Line("Pitch angle of the gear, shafts square", "tan = gear teeth / pinion teeth", f"{given['gear teeth'].text} / {given['pinion teeth'].text}", f"{degrees(cone):.2f}°"))
    spiral = f" / cos {given['spiral angle'].text}" if "spiral angle" in given else ""
    lines.append(Line("Backlash for each unit of shift", "2 tan(pressure angle) sin(pitch angle)",
                      f"2 tan {given['pressure angle'].text} x sin {degrees(cone):.2f}°{spiral}", f"{factor:.3f}"))
    printed = {each.name: each.printed for each in values}
    if "leaves" in printed:
        lines.append(Line("At the pitch circle", "mean reading x pitch radius / dial radius", f"{given['readings'].text} x {given['pitch radius'].text} / {given['dial radius'].text}",
                          printed["backlash at pitch"]))
        lines.append(Line("Shift to the middle of the window, in whole steps of shim", "(backlash - middle) / factor", given["pitch window"].text, printed["gear shift"]))
        lines.append(Line("What that leaves", "backlash less shift x factor", given["move"].text if "move" in given else printed["gear shift"], printed["leaves"]))
    return tuple(lines)


def _shift_table(given: Mapping[str, Given], factor: float, unit: str) -> Table:
    """For the bench: mean reading of the dial, and the shift it asks for."""
    gap, ratio = given["pitch window"], given["pitch radius"].likely / given["dial radius"].likely
    middle, rows = (gap.low + gap.high) / 2, []
    for part in range(0, 9):
        at_pitch = gap.low + (gap.high - gap.low) * (part - 2) / 4 if gap.low < gap.high else middle * (0.6 + 0.1 * part)
        if at_pitch <= 0:
            continue
        shift = (at_pitch - middle) / factor
        way = "none" if gap.low * (1 - 1e-9) <= at_pitch <= gap.high * (1 + 1e-9) else "towards" if shift > 0 else "away"
        rows.append((in_unit(at_pitch / ratio, "clearance", unit, _FINE[unit]), in_unit(at_pitch, "clearance", unit, _FINE[unit]),
                     in_unit(abs(shift), "length", unit, _FINE[unit]), way))
    return Table("Mean reading of the dial and the shift to the middle of the window", ("dial", "at pitch", "shift", "pinion"), tuple(rows))


_RADII = (
    Input("pitch window", "clearance", "backlash to accept, at the pitch circle at the outer end of the teeth", ("0.002 in", "0.040 in"), "thousandths misread?"),
    Input("pitch radius", "radius", "of the gear, to the pitch circle at the outer end of the teeth", ("0.5 in", "40 in"), "not a usual gear"),
    Input("dial radius", "radius", "from the centre of the gear to the point of the dial", ("0.5 in", "40 in"), "not a usual gear"))

BACKLASH = Working(
    id="backlash",
    title="Backlash at the radius of the dial",
    purpose="Turns a backlash window at the pitch circle into what a dial at another radius must show.",
    formula=(Formula("at dial = at pitch · dial radius / pitch radius", r"\text{at dial} = \text{at pitch} · \frac{\text{dial radius}}{\text{pitch radius}}"),),
    inputs=(*_RADII, Input("dial division", "clearance", "one division of the dial; without it only the exact window is given", required=False)),
    outputs=(
        Output("exact dial window", "clearance", "nearest", "the window at the dial, before its divisions"),
        Output("dial window", "clearance", "inward", "accept between these readings")),
    source="geometry of a turning gear: an arc grows with its radius",
    example=Example({"pitch window": "0.008 to 0.014 in", "pitch radius": "6.50 in", "dial radius": "7.25 in", "dial division": "0.0005 in"},
                    {"exact dial window": "0.0089 to 0.0156 in", "dial window": "0.0090 to 0.0155 in"}, "this project's demonstration book, by hand"),
    goes_wrong=("The arm of the dial guessed: a quarter of an inch makes 3 % of the window.", "The dial not square to its radius: it shows too little.",
                "The pinion not held while the gear is rocked."),
    refuses=("A dial so far in or out that one of the two is no radius.", "A dial too coarse to show the window."),
    assumes=("The pinion is held still and the shafts have no end play.",),
    compute=_compute_backlash)

SHIFT = Working(
    id="gear-shift",
    title="Gear shift for a change of backlash",
    purpose="Says how far to move a bevel gear along its axis, and which way, to bring the backlash to the middle of its window.",
    formula=(Formula("backlash change = 2 tan(pressure angle) sin(pitch angle) · shift / cos(spiral angle)",
                     r"\text{backlash change} = \frac{2 \tan(\text{pressure angle}) \sin(\text{pitch angle}) · \text{shift}}{\cos(\text{spiral angle})}"),),
    inputs=(
        *_RADII,
        Input("pressure angle", "angle", "of the teeth; 14.5° on many gears cut before 1940", ("14 °", "25 °"), "not a usual tooth"),
        Input("pitch angle", "angle", "half the pitch cone of the gear that is moved", ("10 °", "85 °"), "the pinion's instead?", required=False),
        Input("gear teeth", "count", "with the pinion's, instead of the pitch angle, where the shafts are square", required=False),
        Input("pinion teeth", "count", "with the gear's, instead of the pitch angle", required=False),
        Input("spiral angle", "angle", "of spiral bevels; straight when not said", ("0 °", "40 °"), "not a usual spiral", required=False),
        Input("readings", "clearance", "dial readings round the gear, with commas; four places", required=False, many=True),
        Input("shim step", "length", "thinnest difference the shims can make; 0.001 in or 0.01 mm when not said", required=False),
        Input("move", "length", "a move to try instead of the one worked out: what it leaves", required=False)),
    outputs=(
        Output("backlash per shift", "gear ratio", "nearest", "backlash at pitch for each unit of shift"),
        Output("backlash at pitch", "clearance", "nearest", "mean of the readings at the pitch circle, with the least and most"),
        Output("which way", "none", "nearest", "towards the pinion takes backlash away"),
        Output("gear shift", "length", "nearest", "to the middle of the window, in whole steps of shim"),
        Output("leaves", "clearance", "nearest", "backlash at pitch after the move")),
    source="bevel gear geometry: change of backlash with mounting distance, 2 tan(pressure angle) sin(pitch angle), as gear makers' handbooks give it",
    example=Example({"pitch window": "0.008 to 0.014 in", "pitch radius": "6.50 in", "dial radius": "7.25 in", "pressure angle": "20 °", "gear teeth": "52", "pinion teeth": "13",
                     "readings": "0.0200 in, 0.0201 in, 0.0199 in, 0.0200 in"},
                    {"backlash per shift": "0.706", "gear shift": "0.010 in", "leaves": "0.0109 in"}, "this project's demonstration book, by hand"),
    goes_wrong=("Shims taken off one side and not put on the other: the bearings lose their setting.", "The wrong pressure angle: 14.5° instead of 20° is 30 % off.",
                "Run-out shimmed as if it were backlash.", "The contact pattern not looked at after the move."),
    refuses=("A pitch angle that is neither given nor follows from the teeth.", "Angles of no bevel gear."),
    assumes=("The pinion stays where it is, and its contact is right.",),
    compute=_compute_shift)
