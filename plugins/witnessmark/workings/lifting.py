"""The workings 'weight' and 'sling-legs': what a part weighs by its size, and what each leg of a sling carries."""
from __future__ import annotations

import math
from collections.abc import Mapping

from ..core.drawing import Drawing, Label, Stroke
from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Working
from .adhesion import GRAVITY
from .printed import in_system, three_figures, value
from .reach import beyond_reach

ADDED = 1.2
"""20 % on an estimate, and for a load that is not picked up evenly. Common practice, no source."""
FLATTEST = math.radians(30)
"""From the horizontal. Flatter than this riggers' rules do not go."""


def leg_load(weight: float, legs: int, angle: float) -> float:
    """W / (n sin angle), each leg carrying its share; angle from the horizontal, in radians."""
    return weight / (legs * math.sin(angle))


def _volume(given: Mapping[str, Given]) -> float | Refusal:
    length = given["length"].likely
    if "diameter" in given and not ("width" in given or "height" in given):
        bore = given["bore"].likely if "bore" in given else 0.0
        if bore >= given["diameter"].likely:
            return Refusal("the bore is as large as the part", "check bore and diameter")
        return math.pi / 4 * (given["diameter"].likely ** 2 - bore**2) * length
    if "width" in given and "height" in given and not ("diameter" in given or "bore" in given):
        return given["width"].likely * given["height"].likely * length
    return Refusal("that is neither a round part nor a block", "give diameter (and bore) and length, or width, height and length")


def _weight(given: Mapping[str, Given]) -> Outcome:
    refusal = beyond_reach(given)
    volume = refusal or _volume(given)
    if isinstance(volume, Refusal):
        return Outcome(refusals=(volume,))
    number = round(given["number"].likely) if "number" in given else 1
    mass = volume * given["density"].likely * number
    unit, step = in_system(given["density"], ("lb", "1"), ("kg", "1"))
    fine = three_figures(mass, "mass", unit, step)
    values = (value("weight", "mass", mass, unit, fine), value("weight to rig for", "mass", mass * ADDED, unit, fine, "up"))
    sizes = " x ".join(given[name].text for name in ("diameter", "bore", "width", "height", "length") if name in given)
    lines = (Line("Weight", "volume · density", f"{sizes}, {given['density'].text}{f', {number} of them' if number > 1 else ''}", values[0].printed),
             Line("An estimate, so 20 % more", "1.2 · weight", f"1.2 x {values[0].printed}", values[1].printed))
    return Outcome(values, details=lambda: Details(lines))


def _slings(given: Mapping[str, Given]) -> Outcome:
    refusal = beyond_reach(given)
    if refusal:
        return Outcome(refusals=(refusal,))
    legs, weight = round(given["legs"].likely), given["weight"]
    angle = math.pi / 2 if legs == 1 else given["angle"].low if "angle" in given else None
    if angle is None:
        return Outcome(refusals=(Refusal("nothing says how steep the legs stand", "measure their angle from the horizontal"),))
    degrees = math.degrees(angle)
    if angle < FLATTEST * (1 - 1e-9):
        return Outcome(refusals=(Refusal(f"at {degrees:.3g}° from the horizontal the legs pull more on each other than on the load", "use longer slings, 45° or steeper"),))
    if angle > math.pi / 2 * (1 + 1e-9):
        return Outcome(refusals=(Refusal(f"{degrees:.3g}° from the horizontal leans outward", "give the angle between leg and horizontal, at most 90°"),))
    force = weight.high * GRAVITY
    loads = leg_load(force, min(legs, 3), angle), ADDED * leg_load(force, min(legs, 2), angle)
    unit, step = in_system(weight, ("lbf", "1"), ("N", "1"))
    values = (value("leg load", "force", loads[0], unit, three_figures(loads[0], "force", unit, step)),
              value("rate each leg for", "force", loads[1], unit, three_figures(loads[1], "force", unit, "10" if loads[1] > 500 else "1"), "up"))
    warnings = () if legs < 3 else ("on a stiff load two legs may carry all of it: each leg is rated for that",)
    if degrees < 45 - 1e-9:
        warnings += ("flatter than 45°: longer slings would load every leg and eye less",)

    def details() -> Details:
        counted = f"{min(legs, 3)}" if legs < 4 else "3, the most that are counted"
        return Details((
            Line("Each leg, by its share", "W / (n sin angle)", f"{weight.text} / ({counted} x sin {degrees:.3g}°)", values[0].printed),
            Line("With 20 % added, on two legs at most", "1.2 W / (n sin angle)", f"1.2 x {weight.text} / ({min(legs, 2)} x sin {degrees:.3g}°)", values[1].printed)),
            drawing=_legs(min(legs, 2), degrees, values[0].printed, weight.text))

    return Outcome(values, (), warnings, details=details)


def _legs(legs: int, degrees: float, load: str, weight: str) -> Drawing:
    """Hook, two legs at their angle, load; one leg is drawn hanging straight."""
    top = 20.0
    if legs == 1 or degrees > 89:
        spots = (160.0,) if legs == 1 else (110.0, 210.0)
        marks = [Stroke(((x, top), (x, 140)), "thick") for x in spots]
    else:
        half = min(110.0, 120 / math.tan(math.radians(degrees)))
        drop = half * math.tan(math.radians(degrees))
        top, spots = 140 - drop, (160 - half, 160 + half)
        marks = [Stroke(((160, top), (x, 140)), "thick") for x in spots]
        start, turn = spots[0], math.radians(degrees)
        marks.append(Stroke(tuple((start + 34 * math.cos(turn * n / 8), 140 - 34 * math.sin(turn * n / 8)) for n in range(9))))
        marks.append(Label(start - 8, 134, f"{degrees:.3g}°", "end", big=True))
    marks += [Stroke(((40, 140), (280, 140), (280, 190), (40, 190)), "thin", "light", True), Label(160, 170, weight, big=True), Label(160, 216, f"{load} in {'the' if legs == 1 else 'each'} leg")]
    steep = "straight down" if legs == 1 else f"{degrees:.3g}° from the horizontal"
    return Drawing(320, 226, f"{weight} on {legs} leg{'s' if legs > 1 else ''}, {steep}: {load} in each leg.", tuple(marks))


WEIGHT = Working(
    id="weight",
    title="What a part weighs, by its size",
    purpose="Estimates a weight from a block or a round part and its density, and adds what rigging wants on an estimate.",
    formula=(Formula("weight = width · height · length · density", r"\text{weight} = \text{width} \cdot \text{height} \cdot \text{length} \cdot \text{density}"),
             Formula("weight = pi / 4 · (diameter² - bore²) · length · density", r"\text{weight} = \frac{\pi}{4} (\text{diameter}^2 - \text{bore}^2) \cdot \text{length} \cdot \text{density}"),
             Formula("weight to rig for = 1.2 · weight", r"\text{weight to rig for} = 1.2 \cdot \text{weight}")),
    inputs=(
        Input("density", "density", "of the material: steel 0.283, iron 0.26, bronze 0.32 lb/in³", ("0.05 lb/in³", "0.45 lb/in³"), "no metal of a machine?"),
        Input("length", "length", "length of the part", ("0.1 in", "400 in"), "inches and feet mixed up?"),
        Input("diameter", "diameter", "of a round part", required=False),
        Input("bore", "diameter", "hole through a round part", required=False),
        Input("width", "length", "of a block", required=False),
        Input("height", "length", "of a block", required=False),
        Input("number", "count", "how many of them hang together", required=False)),
    outputs=(
        Output("weight", "mass", "nearest", "estimate of the weight"),
        Output("weight to rig for", "mass", "up", "the same with 20 % added")),
    source="volume times density; 20 % on an estimate is common practice, no source",
    example=Example({"density": "0.2833 lb/in³", "width": "1 in", "height": "1 in", "length": "144 in"}, {"weight": "40.8 lb", "weight to rig for": "49.0 lb"},
                    "a square inch of steel twelve feet long, by hand"),
    goes_wrong=("Oil, water or chips left inside.", "Ribs, bosses and counterweights left out: an estimate is 10 to 20 % off. Weigh it.",
                "Feet taken for inches: twelve times out for each size that is."),
    refuses=("Sizes that make neither a block nor a round part.", "A bore as large as the part."),
    assumes=("The part is solid all through.",),
    compute=_weight)

SLINGS = Working(
    id="sling-legs",
    title="What each leg of a sling carries",
    purpose="Gives the pull in each leg at its angle, and what each leg must be rated for.",
    formula=(Formula("leg load = W / (n sin angle)", r"\text{leg load} = \frac{W}{n \sin \text{angle}}"),
             Formula("rate each leg for = 1.2 · W / (n sin angle)", r"\text{rate each leg for} = \frac{1.2 \cdot W}{n \sin \text{angle}}")),
    inputs=(
        Input("weight", "mass", "what hangs on the hook", ("10 lb", "100,000 lb"), "not what a shop lifts?"),
        Input("legs", "count", "legs of the sling", ("1", "4"), "more legs do not carry more"),
        Input("angle", "angle", "of each leg from the horizontal; not for one leg", ("45°", "90°"), "measured from the vertical, or between the legs?", required=False)),
    outputs=(
        Output("leg load", "force", "nearest", "pull in each leg by its share"),
        Output("rate each leg for", "force", "up", "with 20 % added, and on two legs at most: a stiff load hangs on two")),
    source="statics; sling-angle tables of rigging handbooks (factor 1 / sin); nothing under 30° from the horizontal: the same; 20 % added: common practice, no source",
    example=Example({"weight": "1,350 lb", "legs": "2", "angle": "45°"}, {"leg load": "955 lbf", "rate each leg for": "1150 lbf"},
                    "this project's demonstration book, by hand"),
    goes_wrong=("The angle taken from the vertical: 30° from the vertical is 60° from the horizontal.",
                "Eyebolts: pulled at 45° they have lost most of their rating.",
                "A middle that is not under the hook: the near leg carries more than its share."),
    refuses=("Legs flatter than 30° from the horizontal.", "More than one leg without an angle."),
    assumes=("The load hangs level, its middle under the hook.",),
    compute=_slings)
