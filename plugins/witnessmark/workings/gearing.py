"""The workings 'gear-ratio' and 'road-speed': what turns in, what comes out, and a stopwatch to prove it."""
from __future__ import annotations

import math
from collections.abc import Mapping
from fractions import Fraction

from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Working
from .printed import in_system, in_unit, three_figures, unit_of, value, window, words
from .reach import beyond_reach

#: Most turns out that a hand counts.
_COUNTED = 20


def _each(given: Mapping[str, Given], name: str) -> tuple[Given, ...]:
    return (given[name].several or (given[name],)) if name in given else ()


def exact_ratio(given: Mapping[str, Given]) -> Fraction:
    """Turns in for one turn out: every ratio, and driven over driving teeth of every pair, multiplied as fractions."""
    ratio = Fraction(1)
    for each in (*_each(given, "ratios"), *_each(given, "further ratio")):
        ratio *= each.quantity.low if each.low == each.high else Fraction(each.likely)
    for driving, driven in zip(_each(given, "driving teeth"), _each(given, "driven teeth"), strict=True):
        ratio *= driven.quantity.low / driving.quantity.low
    return ratio


def turns_in_words(ratio: Fraction) -> str:
    """'39 turns in to 10 out'; 'about' where no small count is exact."""
    near = ratio.limit_denominator(_COUNTED)
    return f"{'' if near == ratio else 'about '}{near.numerator} turns in to {near.denominator} out"


def _ratio(given: Mapping[str, Given]) -> Outcome:
    refusal = beyond_reach(given)
    driving, driven = len(_each(given, "driving teeth")), len(_each(given, "driven teeth"))
    if not refusal and driving != driven:
        refusal = Refusal(f"{driving} driving gears and {driven} driven ones make no pairs", "give the teeth of each pair, driving and driven, in the same order")
    if not refusal and not driving and "ratios" not in given and "further ratio" not in given:
        refusal = Refusal("there is nothing to make a ratio of", "give teeth of the pairs, ratios, or both")
    if refusal:
        return Outcome(refusals=(refusal,))
    ratio = exact_ratio(given)
    values = [value("ratio", "gear ratio", float(ratio), "", three_figures(float(ratio), "gear ratio", "", "0.01")), words("count", turns_in_words(ratio))]
    if "input speed" in given:
        speed = given["input speed"].likely / float(ratio)
        values.append(value("output speed", "speed", speed, "rpm", three_figures(speed, "speed", "rpm", "1")))
    if "input torque" in given:
        kept = given["efficiency"].likely if "efficiency" in given else 1.0
        unit = unit_of(given["input torque"])
        torque = given["input torque"].likely * float(ratio) * kept
        values.append(value("output torque", "torque", torque, unit, three_figures(torque, "torque", unit.symbol, "1")))
        if "pitch diameter" in given:
            pull = 2 * torque / given["pitch diameter"].likely
            values.append(value("pull", "force", pull, *in_system(given["pitch diameter"], ("lbf", "1"), ("N", "1"))))
    pairs = zip(_each(given, "driven teeth"), _each(given, "driving teeth"), strict=True)
    parts = [each.text for each in (*_each(given, "ratios"), *_each(given, "further ratio"))] + [f"{one.text}/{two.text}" for one, two in pairs]
    return Outcome(tuple(values), details=lambda: Details((Line("Turns in for one turn out", "ratios · driven / driving", " x ".join(parts), values[0].printed),)))


def _speed(given: Mapping[str, Given]) -> Outcome:
    refusal = beyond_reach(given)
    if not refusal and "within" in given and given["within"].likely >= 1:
        refusal = Refusal(f"within {given['within'].text} is no proof of anything", "give a few per cent")
    if refusal:
        return Outcome(refusals=(refusal,))
    wheel, ratio = given["wheel diameter"], given["ratio"].likely
    speed = given["engine speed"].likely / ratio * math.pi * wheel.likely
    unit, step = in_system(wheel, ("mph", "0.01"), ("km/h", "0.01"))
    fine = three_figures(speed, "road speed", unit, step)
    values = [value("road speed", "road speed", speed, unit, fine)]
    lines = [Line("Turns of the wheel", "engine speed / ratio", f"{given['engine speed'].text} / {given['ratio'].text}",
                  in_unit(given["engine speed"].likely / ratio, "speed", "rpm", three_figures(given["engine speed"].likely / ratio, "speed", "rpm", "0.1"))),
             Line("Along the road", "turns · pi · D", f"pi x {wheel.text}", values[0].printed)]
    within = given["within"].likely if "within" in given else 0.0
    if within and (band := window("speed to accept", "road speed", speed * (1 - within), speed * (1 + within), unit, fine)):
        values.append(band)
    if "distance" in given:
        time = given["distance"].likely / speed
        values.append(value("stopwatch", "time", time, "s", "0.1"))
        if within:
            band = window("stopwatch to accept", "time", time / (1 + within), time / (1 - within), "s", "0.1")
            if band is None:
                return Outcome(refusals=(Refusal(f"{given['distance'].text} is too short to prove {given['within'].text} with a stopwatch", "measure off a longer distance"),))
            values.append(band)
        lines.append(Line("Time over the distance", "distance / speed", f"{given['distance'].text} / {values[0].printed}", in_unit(time, "time", "s", "0.1")))
    return Outcome(tuple(values), details=lambda: Details(tuple(lines)))


RATIO = Working(
    id="gear-ratio",
    title="Ratio of a train of gears, chains and boxes",
    purpose="Multiplies pairs of teeth and given ratios to turns in for one turn out, as a count that a hand can turn.",
    formula=(Formula("ratio = ratios · driven / driving", r"\text{ratio} = \text{ratios} \cdot \frac{\text{driven}}{\text{driving}}"),
             Formula("output torque = input torque · ratio · efficiency", r"\text{output torque} = \text{input torque} \cdot \text{ratio} \cdot \text{efficiency}")),
    inputs=(
        Input("driving teeth", "count", "teeth of each driving gear or sprocket", ("5", "250"), "not teeth?", required=False, many=True),
        Input("driven teeth", "count", "teeth of the gear it drives, in the same order", ("5", "250"), "not teeth?", required=False, many=True),
        Input("ratios", "gear ratio", "ratios already known, turns in for one out", ("0.1", "100"), "turned upside down?", required=False, many=True),
        Input("further ratio", "gear ratio", "one more, such as that of a gear which is a figure of its own", required=False),
        Input("input speed", "speed", "speed of what drives", required=False),
        Input("input torque", "torque", "torque of what drives", required=False),
        Input("efficiency", "share", "share of the torque that comes through", ("60 %", "100 %"), "the loss instead of what is left?", required=False),
        Input("pitch diameter", "diameter", "of the last sprocket or gear, for the pull of its chain or teeth", required=False)),
    outputs=(
        Output("ratio", "gear ratio", "nearest", "turns in for one turn out"),
        Output("count", "none", "nearest", "whole turns to count by hand"),
        Output("output speed", "speed", "nearest", "speed of what is driven"),
        Output("output torque", "torque", "nearest", "torque of what is driven"),
        Output("pull", "force", "nearest", "pull of the chain, or push of the teeth, at the pitch diameter")),
    source="kinematics of gear trains: products of driven over driving teeth (theory-of-machines textbooks)",
    example=Example({"ratios": "3.90", "driving teeth": "20, 13", "driven teeth": "30, 52"}, {"ratio": "23.40", "count": "117 turns in to 5 out"},
                    "this project's demonstration book, by hand"),
    goes_wrong=("A pair turned upside down: the ratio of a reduction is over one.",
                "Teeth counted from one to the same one: one too many.",
                "An idler counted as a pair: it changes the direction, not the ratio."),
    refuses=("Driving and driven gears that do not make pairs.", "Nothing to make a ratio of."),
    compute=_ratio)

SPEED = Working(
    id="road-speed",
    title="Road speed in a gear, and the stopwatch that proves it",
    purpose="Gives the speed at an engine speed and the time over a measured distance, with the band to accept: one wrong gear shows.",
    formula=(Formula("speed = engine speed / ratio · pi D", r"\text{speed} = \frac{\text{engine speed}}{\text{ratio}} \cdot \pi D"),
             Formula("time = distance / speed", r"\text{time} = \text{distance} / \text{speed}")),
    inputs=(
        Input("engine speed", "speed", "speed of the engine", ("100 rpm", "6000 rpm"), "not an engine's speed?"),
        Input("ratio", "gear ratio", "engine turns for one turn of the wheel", ("1", "500"), "turned upside down, or one step left out?"),
        Input("wheel diameter", "diameter", "of the wheel at the tread", ("6 in", "90 in"), "a radius, or over the flange?"),
        Input("distance", "length", "a distance measured off, for the stopwatch", required=False),
        Input("within", "share", "how far off it may be", ("0.5 %", "10 %"), "too wide to find a wrong gear, or too narrow for a hand on the watch?", required=False)),
    outputs=(
        Output("road speed", "road speed", "nearest", "speed along the road or rail"),
        Output("speed to accept", "road speed", "inward", "the band of speeds to accept"),
        Output("stopwatch", "time", "nearest", "time over the distance"),
        Output("stopwatch to accept", "time", "inward", "the band of times to accept")),
    source="kinematics: circumference times turns; no slip",
    example=Example({"engine speed": "1,000 rpm", "ratio": "23.4", "wheel diameter": "20.0 in", "distance": "100 ft", "within": "3 %"},
                    {"road speed": "2.54 mph", "stopwatch": "26.8 s", "stopwatch to accept": "26.1 to 27.6 s"}, "this project's demonstration book, by hand"),
    goes_wrong=("A worn or re-turned wheel: the speed is off by as much as its diameter.",
                "Time taken from a standing start.",
                "The engine not at the speed: read the tachometer over the same distance."),
    refuses=("A distance too short for a stopwatch to prove the band.", "A band of the whole speed or more."),
    assumes=("The wheel does not slip.",),
    compute=_speed)
