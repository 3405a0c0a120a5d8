"""The workings 'undersize', 'oversize' and 'running-clearance': what goes on the machine shop's order sheet."""
from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from ..core.units import Unit
from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Working
from .printed import in_system, in_unit, unit_of, value, window, words
from .reach import beyond_reach

INSIDE, TIGHT, SLACK = "inside the window", "tighter than the window", "slacker than the window"
_TOLERANCE = 1e-9                              # of a length in m: far under what a micrometer shows


def _each(given: Given) -> tuple[Given, ...]:
    return given.several or (given,)


def _step(given: Given) -> tuple[Unit, Fraction]:
    """Unit of the standard size, and a thousandth of an inch or hundredth of a millimetre, finer where it was typed finer."""
    unit = unit_of(given)
    return unit, min(Fraction(1, 100) if unit.system == "metric" else Fraction(1, 1000), Fraction(1, 10**given.quantity.decimals))


def next_size(standard: float, cleaned: float, steps: list[float], sign: int) -> float | None:
    """The first step that a surface cleaned up to `cleaned` still makes; sign -1 for a journal, 1 for a bore. None: past the last."""
    return next((step for step in sorted(steps) if sign * (standard + sign * step - cleaned) >= -_TOLERANCE), None)


def _pick(given: Mapping[str, Given], sign: int, stock: str) -> Outcome:
    refusal = beyond_reach(given)
    if refusal:
        return Outcome(refusals=(refusal,))
    standard, clean = given["standard size"], given["clean-up"]
    readings = _each(given["readings"])
    worst = min(readings, key=lambda each: each.low) if sign < 0 else max(readings, key=lambda each: each.high)
    reading = worst.low if sign < 0 else worst.high
    unit, step = _step(standard)
    if sign * (standard.likely - reading) > _TOLERANCE:
        return Outcome(refusals=(Refusal(f"{worst.text} is {'over' if sign < 0 else 'under'} the standard size {standard.text}", "check which journal or bore was measured, and its standard size"),))
    cleaned = reading + sign * clean.likely
    chosen = next_size(standard.likely, cleaned, [each.likely for each in _each(given[stock])], sign)
    cleaned_text = in_unit(cleaned, "diameter", unit, min(step, Fraction(1, 10000)))
    if chosen is None:
        return Outcome(refusals=(Refusal(f"cleaned up it is {cleaned_text}, past the last of the sizes, {given[stock].text}", "renew it, build it up or sleeve it, or refer it"),))
    size = standard.likely + sign * chosen
    if size <= 0:
        return Outcome(refusals=(Refusal("the sizes leave nothing of the part", "check standard size and the steps"),))
    verb = "grind to" if sign < 0 else "bore to"
    values = (value("cleaned up", "diameter", cleaned, unit, min(step, Fraction(1, 10000))), value(verb, "diameter", size, unit, step), value(stock.removesuffix("s"), "length", chosen, unit, step),
              value("left to take off", "length", max(sign * (size - reading), 0.0), unit, min(step, Fraction(1, 10000))))
    warnings = ()
    if "wear limit" in given and sign * (reading - standard.likely) <= given["wear limit"].likely + _TOLERANCE:
        warnings = (f"the worst, {worst.text}, is inside the limit of wear: nothing asks for a new size yet",)
    lines = (Line("Worst of them", "", given["readings"].text, worst.text),
             Line("Cleaned up", f"worst {'-' if sign < 0 else '+'} clean-up", f"{worst.text} {'-' if sign < 0 else '+'} {clean.text}", cleaned_text),
             Line("First size that lies past it", "", f"{standard.text}, {given[stock].text}", values[1].printed))
    return Outcome(values, (), warnings, details=lambda: Details(lines))


def _clearance(given: Mapping[str, Given]) -> Outcome:
    refusal = beyond_reach(given)
    if refusal:
        return Outcome(refusals=(refusal,))
    rule, each, diameter = given["clearance"], given["on each"].likely, given["diameter"].likely
    low, high = (end / each * diameter for end in (rule.low, rule.high))
    unit, step = in_system(given["diameter"], ("in", "0.0001"), ("mm", "0.001"))
    room = window("running clearance", "clearance", low, high, unit, step)
    if room is None:
        return Outcome(refusals=(Refusal("nothing is left between least and most clearance", "give the clearance as a range, such as 0.0008 to 0.0014 in"),))
    values = [room]
    for name, other, ends in (("shaft", "bore", (low, high)), ("bore", "shaft", (-high, -low))):
        if name in given and other not in given:
            made = window(f"{other} to make", "diameter", given[name].likely + ends[0], given[name].likely + ends[1], unit, step)
            if made is None or made.low <= 0:
                return Outcome(refusals=(Refusal(f"no {other} goes with a {name} of {given[name].text} at this clearance", f"check the {name} and the diameter"),))
            values.append(made)
    lines = [Line("Clearance on this diameter", "clearance / each · diameter", f"{rule.text} / {given['on each'].text} x {given['diameter'].text}", room.printed)]
    if "shaft" in given and "bore" in given:
        found = given["bore"].likely - given["shaft"].likely
        values += [value("clearance found", "clearance", found, unit, step),
                   words("verdict", TIGHT if found < room.low - _TOLERANCE else SLACK if found > room.high + _TOLERANCE else INSIDE)]
        lines.append(Line("Clearance found", "bore - shaft", f"{given['bore'].text} - {given['shaft'].text}", values[-2].printed))
    return Outcome(tuple(values), details=lambda: Details(tuple(lines)))


def _size_inputs(thing: str, worst: str, steps: str, usual: tuple[str, str]) -> tuple[Input, ...]:
    return (Input("standard size", "diameter", f"size of the {thing} when it was new", ("0.2 in", "24 in"), f"not a usual {thing}?"),
            Input("readings", "diameter", f"every reading of every {thing} that must come to one size; the {worst} counts", ("0.2 in", "24 in"), f"not a usual {thing}?", many=True),
            Input("clean-up", "length", "what must come off the diameter there to leave it round and bright", ("0.0002 in", "0.020 in"), "on the diameter, not on a side?"),
            Input(steps, "length", "stock sizes there are, as steps from standard", usual, "steps, not whole sizes?", many=True))


UNDERSIZE = Working(
    id="undersize",
    title="Which undersize to grind to",
    purpose="Takes the worst journal reading, allows for cleaning up, and names the first stock size it still makes.",
    formula=(Formula("cleaned up = worst - clean-up", r"\text{cleaned up} = \text{worst} - \text{clean-up}"),
             Formula("grind to = standard - undersize", r"\text{grind to} = \text{standard} - \text{undersize}")),
    inputs=_size_inputs("journal", "smallest", "undersizes", ("0.001 in", "0.080 in")),
    outputs=(
        Output("cleaned up", "diameter", "nearest", "the worst reading with the clean-up"),
        Output("grind to", "diameter", "nearest", "size to order"),
        Output("undersize", "length", "nearest", "the stock step that is"),
        Output("left to take off", "length", "nearest", "what comes off the worst place")),
    source="overhaul manuals: all journals to one size, the next stock undersize; clean-up 0.0015 in: common practice, no source",
    example=Example({"standard size": "2.750 in", "readings": "2.7452 in, 2.7440 in, 2.7461 in", "clean-up": "0.0015 in", "undersizes": "0.010 in, 0.020 in, 0.030 in"},
                    {"grind to": "2.740 in", "undersize": "0.010 in"}, "this project's demonstration book, by hand"),
    goes_wrong=("Measured one way only: an oval journal is smallest where it was not measured.",
                "One journal ground alone: all that run in the same set of shells come to one size.",
                "The size ordered and the step not: write both on the sheet."),
    refuses=("Cleaned up, it lies past the last stock size.", "A reading over the standard size."),
    compute=lambda given: _pick(given, -1, "undersizes"))

OVERSIZE = Working(
    id="oversize",
    title="Which oversize to bore to",
    purpose="Takes the worst bore reading, allows for cleaning up, and names the first stock size it still makes.",
    formula=(Formula("cleaned up = worst + clean-up", r"\text{cleaned up} = \text{worst} + \text{clean-up}"),
             Formula("bore to = standard + oversize", r"\text{bore to} = \text{standard} + \text{oversize}")),
    inputs=(*_size_inputs("bore", "largest", "oversizes", ("0.005 in", "0.150 in")),
            Input("wear limit", "length", "wear of the diameter up to which it may stay as it is", required=False)),
    outputs=(
        Output("cleaned up", "diameter", "nearest", "the worst reading with the clean-up"),
        Output("bore to", "diameter", "nearest", "size to order"),
        Output("oversize", "length", "nearest", "the stock step that is"),
        Output("left to take off", "length", "nearest", "what comes off the worst place")),
    source="overhaul manuals: all bores to the oversize of the largest; clean-up 0.004 in with the hone: common practice, no source",
    example=Example({"standard size": "4.250 in", "readings": "4.2630 in", "clean-up": "0.004 in", "oversizes": "0.020 in, 0.040 in, 0.060 in", "wear limit": "0.012 in"},
                    {"bore to": "4.270 in", "oversize": "0.020 in"}, "this project's demonstration book, by hand"),
    goes_wrong=("Measured below the ridge only: the worst place is at the top of the stroke, across the engine.",
                "Bored before the pistons are in hand: bore to the piston, with its clearance.",
                "One cylinder alone bored out: pistons of two weights."),
    refuses=("Cleaned up, it lies past the last stock size.", "A reading under the standard size."),
    compute=lambda given: _pick(given, 1, "oversizes"))

CLEARANCE = Working(
    id="running-clearance",
    title="Running clearance on a diameter",
    purpose="Turns so much clearance for each inch into the window on this diameter, and into the bore for a shaft or the shaft for a bore.",
    formula=(Formula("window = clearance / each · diameter", r"\text{window} = \frac{\text{clearance}}{\text{each}} \cdot \text{diameter}"),
             Formula("bore = shaft + window", r"\text{bore} = \text{shaft} + \text{window}")),
    inputs=(
        Input("clearance", "clearance", "clearance on the diameter, from least to most, for each inch (or other measure) of it", ("0.0003 in", "0.010 in"), "on a side instead of on the diameter?"),
        Input("on each", "diameter", "the diameter that clearance is for, such as 1 in"),
        Input("diameter", "diameter", "size of the bearing or bore", ("0.1 in", "24 in"), "not a usual bearing?"),
        Input("shaft", "diameter", "measured shaft or piston", required=False),
        Input("bore", "diameter", "measured bore", required=False)),
    outputs=(
        Output("running clearance", "clearance", "inward", "clearance to accept on this diameter"),
        Output("bore to make", "diameter", "inward", "bore for the shaft in hand"),
        Output("shaft to make", "diameter", "inward", "shaft for the bore in hand"),
        Output("clearance found", "clearance", "nearest", "bore less shaft as measured"),
        Output("verdict", "none", "nearest", "inside the window, tighter or slacker")),
    source="bearing makers' guides: 0.00075 to 0.0010 in for each inch of shaft, 0.0015 in for plain bushes; the window is the author's",
    example=Example({"clearance": "0.0008 to 0.0014 in", "on each": "1 in", "diameter": "2.750 in", "shaft": "2.7400 in"},
                    {"running clearance": "0.0022 to 0.0038 in", "bore to make": "2.7422 to 2.7438 in"}, "by hand"),
    goes_wrong=("Clearance on a side taken for clearance on the diameter: twice too slack.",
                "Measured warm: a steel shaft 50 °F warmer than its bore is a third of a thou too large in each inch.",
                "The rule of one metal used for another: aluminium pistons want half as much again as iron."),
    refuses=("A clearance that leaves no room between least and most.",),
    compute=_clearance)
