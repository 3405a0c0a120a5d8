"""The working 'taper-advance': how far a hub climbs its taper, and what that does to it. Declaration: see WORKING.

Interference is on the diameter unless it says per side. Strengths and stress concentration are assumptions: they
explain, they never permit.
"""
from __future__ import annotations

import math
from collections.abc import Mapping

from ..core.working import Example, Formula, Given, Input, Outcome, Output, Refusal, Value, Working
from .printed import in_unit, value, window, words
from .taper_fit import Fit, Taper, pair_of
from .taper_steps import Units, details, keyway_factor, off_step, sort_of_strength, units_of_fit


def compute(given: Mapping[str, Given]) -> Outcome:
    """Everything over the friction band; with a measured advance, what it says of the surfaces."""
    joint = Taper(pair_of(given, given["mean diameter"].likely), given["taper"].likely, given["length"].likely)
    if wrong := joint.sense():
        return Outcome(refusals=(Refusal(wrong, "check taper, length and diameters"),))
    units, force, friction = units_of_fit(given), given["force"], given["friction"]
    least, likely, most = (joint.fit(*pressed) for pressed in (
        (force.low, friction.high), (force.likely, friction.likely), (force.high, friction.low)))
    slack, tight = joint.fit(force.low, friction.low), joint.fit(force.high, friction.high)
    rising = (least, likely, most)
    values = [
        value("contact pressure", "stress", tuple(fit.pressure for fit in rising), units.pressure, units.pressure_step),
        value("hub stress", "stress", tuple(fit.stress for fit in rising), units.stress, units.stress_step),
        value("advance", "length", tuple(fit.advance for fit in rising), units.length, units.length_step),
        value("interference", "interference", tuple(fit.interference for fit in rising), units.length, units.length_step),
        value("interference per side", "interference per side", tuple(fit.interference / 2 for fit in rising), units.length, units.length_step),
        value("grip", "torque", (slack.grip, likely.grip, tight.grip), units.torque, "1"),
        value("push-off force", "press force", (slack.off, likely.off, tight.off), units.force, off_step(units.force)),
        words("holds itself", _holds(friction, joint.taper))]
    warnings = []
    proud, said = _proud(given, rising, units)
    strength, doubted = _strength(given, likely, most, units)
    accept, read, doubt = _reading(given, joint)
    values += [*proud, *strength, *accept, *read]
    return Outcome(tuple(values), (), tuple([*warnings, *said, *doubted, *doubt]), details=lambda: details(given, joint, units))


def _holds(friction: Given, taper: float) -> str:
    if friction.low > taper / 2:
        return "yes, over the whole friction band"
    return "no: it comes off by itself" if friction.high <= taper / 2 else "only at the higher frictions of the band"


def _proud(given: Mapping[str, Given], rising: tuple[Fit, ...], units: Units) -> tuple[list[Value], list[str]]:
    if "proud by hand" not in given:
        return [], []
    hand, (least, likely, most) = given["proud by hand"], (fit.advance for fit in rising)
    after = (hand.low - most, hand.likely - likely, hand.high - least)
    warned = []
    if "least proud" in given and after[0] < given["least proud"].low * (1 - 1e-9):
        warned = [f"may stand only {in_unit(after[0], 'length', units.length, units.length_step, 'down')} proud, under the {given['least proud'].text} "
                  "asked for: the washer would clamp the shaft, not the hub"]
    return [value("proud after", "length", after, units.length, units.length_step)], warned


def _strength(given: Mapping[str, Given], likely: Fit, most: Fit, units: Units) -> tuple[list[Value], list[str]]:
    """How many times the stress goes into the ultimate, over the concentration at a keyway: an illustration."""
    if "hub ultimate" not in given:
        return [], []
    ultimate, raised = given["hub ultimate"], keyway_factor(given)
    times = (ultimate.low / (raised[2] * likely.stress), ultimate.likely / (raised[1] * likely.stress), ultimate.high / (raised[0] * likely.stress))
    warned = []
    if raised[2] * most.stress >= ultimate.low:
        warned = [f"at friction {most.friction:g} the stress at the bore, raised {raised[2]:g} times, reaches the ultimate of {ultimate.text} ({sort_of_strength(given)})"]
    return [value("ultimate over stress", "factor", times, "", "0.01")], warned


def _reading(given: Mapping[str, Given], joint: Taper) -> tuple[list[Value], list[Value], list[str]]:
    """The accept band at the likely force, inward to the tool, and the reading of a measured advance."""
    force, friction = given["force"].likely, given["friction"]
    low, high = joint.fit(force, friction.high).advance, joint.fit(force, friction.low).advance
    accept, read = [], []
    if "scale division" in given:
        division = given["scale division"].quantity
        band = window("advance to accept", "length", low, high, division.unit, division.low)
        if band is None:
            return [], [], [f"between the advances at either end of the friction band there is no full division of {division.text}: read it on a finer tool"]
        accept, low, high = [band], band.low, band.high
    if "measured advance" in given:
        measured = given["measured advance"].likely
        tolerance = 1e-9 * high
        read.append(words("reading", "looks fouled" if measured < low - tolerance else "looks oiled" if measured > high + tolerance else "dry as expected"))
        shown = force * joint.pair.give() / (measured * joint.taper * math.pi * joint.length) - joint.taper / 2
        if shown > 0:
            read.append(value("friction it shows", "friction", shown, "", "0.01"))
    return accept, read, []


WORKING = Working(
    id="taper-advance",
    title="How far a hub climbs its taper, and what that does to it",
    purpose="For a press force gives pressure, hub stress, advance and push-off over the friction band, and reads a measured advance: "
            "tons set the grip, friction sets the stress.",
    formula=(Formula("p = F / (pi d L (mu + T/2))", r"p = \frac{F}{\pi d L (\mu + T/2)}"),
             Formula("s = p (D² + d²) / (D² - d²)", r"s = p \frac{D^2 + d^2}{D^2 - d^2}"),
             Formula("delta = p d (a + c)", r"\delta = p d (a + c)"),
             Formula("a = ((D² + d²) / (D² - d²) + nu) / E of the hub", r"a = \frac{(D^2 + d^2) / (D^2 - d^2) + \nu}{E} \text{ of the hub}"),
             Formula("c = ((d² + b²) / (d² - b²) - nu) / E of the shaft", r"c = \frac{(d^2 + b^2) / (d^2 - b^2) - \nu}{E} \text{ of the shaft}"),
             Formula("advance = delta / T", r"\text{advance} = \frac{\delta}{T}"),
             Formula("push-off = F (mu - T/2) / (mu + T/2), holding itself only where mu is over T/2",
                     r"\text{push-off} = F \cdot \frac{\mu - T/2}{\mu + T/2} \text{, holding itself only where } \mu \text{ is over } T/2")),
    inputs=(
        Input("force", "press force", "force it is pressed with", ("0.5 long ton", "200 long ton"), "not the force of a shop press"),
        Input("taper", "taper", "taper on the diameter", ("1:24", "1:6"), "per side instead of on the diameter?"),
        Input("mean diameter", "diameter", "middle of the large and small end", ("0.5 in", "8 in"), "not a usual shaft taper"),
        Input("length", "length", "length in contact", ("0.5 in", "12 in"), "not a usual hub"),
        Input("hub diameter", "diameter", "outside diameter of the hub's barrel", ("0.75 in", "24 in"), "not a usual hub"),
        Input("shaft bore", "diameter", "hole through the shaft, when it is hollow", required=False),
        Input("friction", "friction", "friction of the surfaces as they should be: low / likely / high", ("0.05", "0.25"), "not a friction of steel on steel"),
        Input("oiled friction", "friction", "friction if oil got in, for one column more", ("0.03", "0.15"), "not an oiled taper", required=False),
        Input("hub modulus", "stress", "stiffness of the hub's material", ("8 Mpsi", "32 Mpsi"), "not iron, steel or bronze: ksi and Mpsi mixed up?"),
        Input("hub poisson", "factor", "Poisson's ratio of the hub", ("0.2", "0.36"), "not a usual metal"),
        Input("hub ultimate", "stress", "tensile strength of the hub, to see how far the stress is from it", ("15 ksi", "160 ksi"), "not a usual hub", required=False),
        Input("hub ultimate is", "choice", "where that strength is from; assumed when not said", required=False, choices=("assumed", "published")),
        Input("keyway factor", "factor", "how many times a keyway raises the stress, assumed", ("1.5", "4"), "not a usual keyway", required=False),
        Input("shaft modulus", "stress", "stiffness of the shaft's material", ("8 Mpsi", "32 Mpsi"), "not iron, steel or bronze: ksi and Mpsi mixed up?"),
        Input("shaft poisson", "factor", "Poisson's ratio of the shaft", ("0.2", "0.36"), "not a usual metal"),
        Input("proud by hand", "length", "how far the hub stands proud of the shaft end before pressing", required=False),
        Input("least proud", "length", "how far it must still stand proud afterwards", required=False),
        Input("scale division", "length", "division of the dial or depth gauge the advance is read on; without it no band to accept", required=False),
        Input("measured advance", "length", "advance that was measured, to read what it says", required=False)),
    outputs=(
        Output("contact pressure", "stress", "nearest", "pressure between hub and shaft, over the friction band"),
        Output("hub stress", "stress", "nearest", "hoop stress at the hub's bore, no keyway counted"),
        Output("advance", "length", "nearest", "along the shaft, from the hand fit"),
        Output("interference", "interference", "nearest", "on the diameter"),
        Output("interference per side", "interference per side", "nearest", "half of it, on the radius"),
        Output("grip", "torque", "nearest", "torque it holds without its key"),
        Output("push-off force", "press force", "nearest", "force to push it off again while the fit is fresh; nothing when it does not hold itself"),
        Output("holds itself", "none", "nearest", "whether friction is over half the taper"),
        Output("proud after", "length", "nearest", "what is left of the stand-proud"),
        Output("ultimate over stress", "factor", "nearest", "at the likely friction, over the keyway factor: an illustration, never permission"),
        Output("advance to accept", "length", "inward", "between the advances at the highest and the lowest friction, inward to the tool"),
        Output("reading", "none", "nearest", "dry as expected, looks oiled, or looks fouled: dirt, a tight key, no draw left"),
        Output("friction it shows", "friction", "nearest", "friction at which this force gives the measured advance")),
    source="Lamé's thick cylinders and press fits: machine-design textbooks; statics of a self-holding cone as for cone clutches",
    example=Example(
        {"force": "18 long ton", "taper": "1:12", "mean diameter": "3.000 in", "length": "3.50 in", "hub diameter": "5.25 in",
         "friction": "0.12 / 0.15 / 0.20", "oiled friction": "0.06", "hub modulus": "30.0 Mpsi", "hub poisson": "0.292",
         "hub ultimate": "75 ksi", "keyway factor": "2.5 to 3", "shaft modulus": "30.0 Mpsi", "shaft poisson": "0.292",
         "proud by hand": "0.100 in", "scale division": "0.0005 in", "measured advance": "0.0430 in"},
        {"hub stress": "12.6 ksi (10.0 to 14.9)", "advance": "0.0227 in (0.0180 to 0.0269)", "interference": "0.0019 in (0.0015 to 0.0022)",
         "push-off force": "10.2 long ton (8.7 to 11.8)", "reading": "looks oiled"},
        "this project's demonstration book, by hand"),
    goes_wrong=("An oiled taper: the grip hardly changes, the hub's stress may double. Record tons and advance.",
                "The advance measured from a hub that was not yet home by hand.",
                "A worn taper with no draw left, or a key that bottoms: force without advance.",
                "Per side read as on the diameter.",
                "Serrated or splined tapers: the area is unknown and the result only a trend."),
    refuses=("A hub no larger than the large end of its taper, a shaft as hollow as it is thick.",
             "A taper that runs to a point within its length."),
    assumes=("Friction drives the whole band: each result runs from one end of it to the other.",
             "Everything stays elastic, and the contact is even over the length; the hub is taken as a plain barrel.",
             "A strength or keyway factor is assumed unless it says otherwise: it shows what is believable and permits nothing.",
             "The advance to accept is for the likely force: a force known less well does not widen it."),
    compute=compute)
