"""The working 'straight-interference': what a parallel press fit presses, holds and strains. Declaration: see WORKING.

Interference is on the diameter or per side, and which is said by the name and the kind of the input: the two are
never alike. Two thick cylinders after Lamé (thick_cylinder); friction drives the band.
"""
from __future__ import annotations

import math
from collections.abc import Mapping

from ..core.units import Unit, find_unit
from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Table, Value, Working
from .fit_drawing import section_drawing
from .printed import FORCE_STEPS, Band, banded, in_unit, unit_of, value
from .taper_fit import pair_of
from .taper_steps import friction_text
from .thick_cylinder import Pair

FORCE_UNITS = ("long ton", "short ton", "tonne", "kN", "lbf", "N")
WAYS = ("interference", "interference per side", "bore diameter")


def compute(given: Mapping[str, Given]) -> Outcome:
    """Pressure and stress over the interference; force and torque over interference and friction."""
    named = [name for name in WAYS if name in given]
    if len(named) != 1:
        return Outcome(refusals=(Refusal("it is not said how tight the fit is" if not named else f"the tightness is given {len(named)} times, as {' and '.join(named)}",
                                         "give one of: interference (on the diameter), interference per side, or the measured bore diameter"),))
    pair = pair_of(given, given["seat diameter"].likely)
    if wrong := pair.sense():
        return Outcome(refusals=(Refusal(wrong, "check seat, hub and bore"),))
    tight = _on_diameter(given, named[0])
    if tight[0] <= 0:
        return Outcome(refusals=(Refusal(f"the bore may be as large as the seat ({given[named[0]].text}): nothing holds by pressure",
                                         "measure both at one temperature, or choose a tighter part"),))
    friction, length = given["friction"], given["length"].likely
    pressures: Band = tuple(pair.pressure(each) for each in tight)
    grips = tuple(mu * math.pi * pair.diameter * length * p for mu, p in zip((friction.low, friction.likely, friction.high), pressures, strict=True))
    inch, unit = unit_of(given["seat diameter"]).system == "inch", _force_unit(given)
    length_unit, length_step = ("in", "0.0001") if inch else ("mm", "0.001")
    stress_unit, stress_step = ("ksi", "0.1") if inch else ("MPa", "1")
    values = [value("interference on diameter", "interference", _one(tight), length_unit, length_step),
              value("interference on each side", "interference per side", _one(tuple(each / 2 for each in tight)), length_unit, length_step),
              value("contact pressure", "stress", _one(pressures), "psi" if inch else "MPa", "1" if inch else "0.1"),
              value("hub stress", "stress", _one(tuple(map(pair.hub_stress, pressures))), stress_unit, stress_step),
              value("shaft stress", "stress", _one(tuple(map(pair.shaft_stress, pressures))), stress_unit, stress_step),
              value("press force", "press force", grips, unit, _step(unit)),
              value("torque held", "torque", tuple(grip * pair.diameter / 2 for grip in grips), "lbf·ft" if inch else "N·m", "1")]
    practice, warned = _practice(given, grips, unit)
    doubted = _doubts(given, pair, pressures, stress_unit)
    return Outcome((*values, *practice), (), (*warned, *doubted), details=lambda: _details(given, pair, tight, pressures, grips, unit))


def _on_diameter(given: Mapping[str, Given], name: str) -> Band:
    if name == "bore diameter":
        seat, bore = given["seat diameter"], given[name]
        return seat.low - bore.high, seat.likely - bore.likely, seat.high - bore.low
    times = 2 if name == "interference per side" else 1
    return given[name].low * times, given[name].likely * times, given[name].high * times


def _one(band: Band) -> float | Band:
    return band[1] if band[2] - band[0] <= 1e-12 * band[2] else band


def _force_unit(given: Mapping[str, Given]) -> Unit:
    if "force in" in given:
        return find_unit(given["force in"].text, "press force")
    if "practice for each inch" in given:
        return unit_of(given["practice for each inch"])
    return find_unit("long ton" if unit_of(given["seat diameter"]).system == "inch" else "kN", "press force")


def _step(unit: Unit) -> str:
    return "0.1" if "ton" in unit.symbol else FORCE_STEPS[unit.symbol]


def _practice(given: Mapping[str, Given], grips: Band, unit: Unit) -> tuple[list[Value], list[str]]:
    """Tons for each inch of seat: common practice, no source; compared with, never mixed into, the computed force."""
    if "practice for each inch" not in given:
        return [], []
    each, inches = given["practice for each inch"], given["seat diameter"].likely / 0.0254
    band = (each.low * inches, each.likely * inches, each.high * inches)
    values = [value("force by common practice", "press force", _one(band), unit, _step(unit))]
    low, high = (in_unit(end, "press force", unit, _step(unit)) for end in (band[0], band[2]))
    if grips[0] < band[0] * (1 - 1e-9):
        return values, [f"at the lowest friction it may end under the {low} of common practice"]
    if grips[2] > band[2] * (1 + 1e-9):
        return values, [f"at the highest friction it may run past the {high} of common practice"]
    return values, []


def _doubts(given: Mapping[str, Given], pair: Pair, pressures: Band, unit: str) -> list[str]:
    if "hub ultimate" not in given or pair.hub_stress(pressures[2]) < given["hub ultimate"].low:
        return []
    sort = given["hub ultimate is"].text if "hub ultimate is" in given else "assumed"
    return [f"the hub's stress of {in_unit(pair.hub_stress(pressures[2]), 'stress', unit, '0.1', 'up')} reaches its {sort} ultimate of {given['hub ultimate'].text}"]


def _details(given: Mapping[str, Given], pair: Pair, tight: Band, pressures: Band, grips: Band, unit: Unit) -> Details:
    friction, inch = given["friction"], unit_of(given["seat diameter"]).system == "inch"
    length = ("in", "0.00001") if inch else ("mm", "0.0001")
    psi, ksi = (("psi", "1"), ("ksi", "0.1")) if inch else (("MPa", "0.1"), ("MPa", "1"))
    delta, pressure = in_unit(tight[1], "interference", *length), in_unit(pressures[1], "stress", *psi)
    lines = (
        Line("Interference on the diameter", "", "twice what it is per side" if "interference per side" in given else "", delta),
        Line("Contact pressure", "p = delta / (d (a + c))",
             f"{delta} / ({given['seat diameter'].text} x (({pair.hub_ratio:.3f} + {pair.hub_poisson:g}) / {given['hub modulus'].text} "
             f"+ ({pair.shaft_ratio:.3f} - {pair.shaft_poisson:g}) / {given['shaft modulus'].text}))", pressure),
        Line("Hoop stress at the hub's bore", "p (D² + d²) / (D² - d²)", f"{pressure} x {pair.hub_ratio:.3f}",
             in_unit(pair.hub_stress(pressures[1]), "stress", *ksi)),
        Line("Force at the end of pressing", "F = mu pi d L p", f"friction {friction_text(friction.likely)}, {given['length'].text} long, {pressure}",
             in_unit(grips[1], "press force", unit, _step(unit))),
        Line("The same over friction and interference", "", "", banded(grips, "press force", unit, _step(unit))))
    frictions = (friction.low, friction.likely, friction.high)
    area = math.pi * pair.diameter * given["length"].likely
    rows = tuple((f"{name}, {in_unit(each, 'interference', *length)}",
                  *(in_unit(mu * area * pair.pressure(each), "press force", unit, _step(unit)) for mu in frictions))
                 for name, each in (("least", tight[0]), ("middle", tight[1]), ("most", tight[2])) if name == "middle" or tight[0] < tight[2])
    table = Table("Force by interference and friction", ("interference on diameter", *(f"friction {friction_text(mu)}" for mu in frictions)), rows)
    return Details(lines, (table,), section_drawing(given, pair, delta))


WORKING = Working(
    id="straight-interference",
    title="Press fit on a parallel seat",
    purpose="From interference, sizes and friction gives pressure, stress in hub and shaft, the force to expect on the press and the torque held.",
    formula=(Formula("p = delta / (d (a + c)), delta on the diameter", r"p = \frac{\delta}{d (a + c)} \text{, } \delta \text{ on the diameter}"),
             Formula("a = ((D² + d²) / (D² - d²) + nu) / E of the hub", r"a = \frac{(D^2 + d^2) / (D^2 - d^2) + \nu}{E} \text{ of the hub}"),
             Formula("c = ((d² + b²) / (d² - b²) - nu) / E of the shaft", r"c = \frac{(d^2 + b^2) / (d^2 - b^2) - \nu}{E} \text{ of the shaft}"),
             Formula("hoop stress = p (D² + d²) / (D² - d²)", r"\text{hoop stress} = p \frac{D^2 + d^2}{D^2 - d^2}"),
             Formula("F = mu pi d L p", r"F = \mu \pi d L p"),
             Formula("torque = F d / 2", r"\text{torque} = \frac{F d}{2}")),
    inputs=(
        Input("seat diameter", "diameter", "the seat on the shaft, as measured", ("0.25 in", "16 in"), "not a usual seat"),
        Input("length", "length", "length in contact", ("0.25 in", "20 in"), "not a usual hub"),
        Input("interference", "interference", "on the diameter: seat less bore", required=False),
        Input("interference per side", "interference per side", "on the radius: half of that on the diameter", required=False),
        Input("bore diameter", "diameter", "the hub's bore as measured; seat less bore is the interference on the diameter", required=False),
        Input("hub diameter", "diameter", "outside diameter of the hub", ("0.5 in", "40 in"), "not a usual hub"),
        Input("shaft bore", "diameter", "hole through the shaft, when it is hollow", required=False),
        Input("friction", "friction", "friction while pressing: low / likely / high", ("0.05", "0.30"), "not a friction of a press fit"),
        Input("hub modulus", "stress", "stiffness of the hub's material", ("8 Mpsi", "32 Mpsi"), "not iron, steel or bronze: ksi and Mpsi mixed up?"),
        Input("hub poisson", "factor", "Poisson's ratio of the hub", ("0.2", "0.36"), "not a usual metal"),
        Input("hub ultimate", "stress", "tensile strength of the hub, to see whether the stress reaches it", ("15 ksi", "160 ksi"), "not a usual hub", required=False),
        Input("hub ultimate is", "choice", "where that strength is from; assumed when not said", required=False, choices=("assumed", "published")),
        Input("shaft modulus", "stress", "stiffness of the shaft's material", ("8 Mpsi", "32 Mpsi"), "not iron, steel or bronze: ksi and Mpsi mixed up?"),
        Input("shaft poisson", "factor", "Poisson's ratio of the shaft", ("0.2", "0.36"), "not a usual metal"),
        Input("practice for each inch", "press force", "force for each inch of seat diameter that is common practice (no source), to set beside it",
              ("3 long ton", "15 long ton"), "not a usual practice for wheel seats", required=False),
        Input("force in", "choice", "unit of the force; long ton, or kN for metric sizes, when not said", required=False, choices=FORCE_UNITS)),
    outputs=(
        Output("interference on diameter", "interference", "nearest", "seat less bore"),
        Output("interference on each side", "interference per side", "nearest", "half of that"),
        Output("contact pressure", "stress", "nearest", "pressure between seat and bore"),
        Output("hub stress", "stress", "nearest", "hoop stress at the hub's bore"),
        Output("shaft stress", "stress", "nearest", "greatest squeeze in the shaft; at its bore when hollow"),
        Output("press force", "press force", "nearest", "force with the hub home, over friction and interference"),
        Output("torque held", "torque", "nearest", "torque before it slips, by friction alone"),
        Output("force by common practice", "press force", "nearest", "tons for each inch of seat: common practice, no source")),
    source="Lamé's thick cylinders, press and shrink fits: machine-design textbooks. Force for each inch of seat: common practice, no source",
    example=Example(
        {"seat diameter": "3.7540 in", "bore diameter": "3.7500 in", "length": "4.50 in", "hub diameter": "7.00 in", "friction": "0.10 / 0.12 / 0.16",
         "hub modulus": "30.0 Mpsi", "hub poisson": "0.292", "shaft modulus": "30.0 Mpsi", "shaft poisson": "0.292",
         "practice for each inch": "8 to 12 long ton"},
        {"interference on diameter": "0.0040 in", "press force": "32.4 long ton (27.0 to 43.2)"},
        "this project's demonstration book, by hand"),
    goes_wrong=("Interference per side taken for that on the diameter: twice or half the force.",
                "Seat and bore measured at two temperatures.",
                "A seat with taper or out of round by as much as the interference.",
                "A force read before the hub is home: it rises with the length that is in.",
                "A dry seat galls, and the force runs past everything here."),
    refuses=("Tightness not given, or given in more than one way.", "A bore that may be as large as the seat.",
             "A hub no larger than its seat, a shaft as hollow as it is thick."),
    assumes=("Friction drives the band of the force; where the interference is a band too, least goes with least and most with most.",
             "Everything stays elastic, hub and seat are as long as the contact and truly round."),
    compute=compute)
