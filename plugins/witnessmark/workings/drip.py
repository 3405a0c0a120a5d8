"""The workings 'drip-rate' and 'wick-feed': how much oil a drip or a wick gives in an hour, and how long a cup lasts."""
from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from ..core.rounding import round_to
from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Working
from .printed import spread, three_figures, value
from .reach import beyond_reach

HOUR = 3600.0


def _drip(given: Mapping[str, Given]) -> Outcome:
    refusal = beyond_reach(given)
    if not refusal and ("drops" in given) == ("between drops" in given):
        refusal = Refusal("the rate is given twice or not at all", "give the drops in a minute, or the time between two drops")
    if refusal:
        return Outcome(refusals=(refusal,))
    drop = given["drop"]
    if "drops" in given:
        rates = (given["drops"].low, given["drops"].likely, given["drops"].high)
    else:
        between = given["between drops"]
        rates = (1 / between.high, 1 / between.likely, 1 / between.low)
    hourly = tuple(HOUR * rate * size for rate, size in zip(rates, (drop.low, drop.likely, drop.high), strict=True))
    values = [value("oil in an hour", "volume", spread(*hourly), "mL", _step(hourly[1]))]
    if "cup" in given:
        cup = given["cup"]
        lasts = (HOUR * cup.low / hourly[2], HOUR * cup.likely / hourly[1], HOUR * cup.high / hourly[0])
        values.append(value("cup lasts", "time", spread(*lasts), "h", "0.1"))
    rate = given["drops"].text if "drops" in given else f"one in {given['between drops'].text}"
    lines = [Line("Oil in an hour", "drops in an hour · drop", f"{rate}, each {drop.text}", values[0].printed)]
    if "cup" in given:
        lines.append(Line("The cup lasts", "cup / oil in an hour", given["cup"].text, values[1].printed))
    return Outcome(tuple(values), details=lambda: Details(tuple(lines)))


def _wick(given: Mapping[str, Given]) -> Outcome:
    refusal = beyond_reach(given)
    if refusal:
        return Outcome(refusals=(refusal,))
    strands = given["strands"].likely
    hourly = given["collected"].likely / given["collected in"].likely * HOUR
    values = [value("oil in an hour", "volume", hourly, "mL", _step(hourly))]
    lines = [Line("Oil in an hour", "collected / time", f"{given['collected'].text} / {given['collected in'].text}", values[0].printed)]
    if "wanted in an hour" in given:
        needed = given["wanted in an hour"].likely / hourly * strands
        values.append(value("strands needed", "count", float(max(round_to(needed, 1, "up"), 1)), "", "1", "up"))
        lines.append(Line("Strands for the wanted oil, up to a whole one", "wanted / oil in an hour · strands",
                          f"{given['wanted in an hour'].text} / {values[0].printed} x {given['strands'].text}", values[1].printed))
    return Outcome(tuple(values), details=lambda: Details(tuple(lines)))


def _step(hourly: float) -> Fraction:
    """A tenth of a millilitre; finer for less than one."""
    return Fraction(1, 10) if hourly >= 1e-6 else three_figures(hourly, "volume", "mL", "0.1")


DRIP = Working(
    id="drip-rate",
    title="Oil from a drip in an hour, and how long the cup lasts",
    purpose="Turns drops in a minute into oil in an hour and the life of a cup, over the size a drop may have.",
    formula=(Formula("oil in an hour = drops in an hour · drop", r"\text{oil in an hour} = \text{drops in an hour} \cdot \text{drop}"),
             Formula("cup lasts = cup / oil in an hour", r"\text{cup lasts} = \frac{\text{cup}}{\text{oil in an hour}}")),
    inputs=(
        Input("drops", "drip rate", "drops in a minute", ("0.2 drops/min", "60 drops/min"), "that is a stream, or next to nothing", required=False),
        Input("between drops", "time", "time between two drops, for a slow feed", ("1 s", "300 s"), "that is a stream, or next to nothing", required=False),
        Input("drop", "volume", "size of one drop: count a hundred into a syringe", ("0.01 mL", "0.1 mL"), "oil drops are 0.02 to 0.05 mL"),
        Input("cup", "volume", "what the cup holds", ("1 mL", "5,000 mL"), "not an oil cup?", required=False)),
    outputs=(
        Output("oil in an hour", "volume", "nearest", "oil given in an hour"),
        Output("cup lasts", "time", "nearest", "time from full to empty")),
    source="arithmetic; the size of an oil drop, 0.02 to 0.05 mL, is common practice, no source",
    example=Example({"drops": "4 to 6 drops/min", "drop": "0.03 mL", "cup": "60 mL"}, {"oil in an hour": "9.0 mL (7.2 to 10.8)", "cup lasts": "6.7 h (5.6 to 8.3)"},
                    "this project's demonstration book, by hand"),
    goes_wrong=("Set warm and run cold: cold oil halves the rate, or worse.",
                "The level falls and the drip slows: set it with the cup half full.",
                "A drop taken from a table: the size follows the oil, the needle and the temperature."),
    refuses=("A rate given twice, or not at all.",),
    assumes=("The size of a drop drives the band: measure your own.",),
    compute=_drip)

WICK = Working(
    id="wick-feed",
    title="Oil from a wick, and strands for the oil wanted",
    purpose="Turns what a wick gave in a time into oil in an hour, and says how many strands would give the oil wanted.",
    formula=(Formula("oil in an hour = collected / time", r"\text{oil in an hour} = \text{collected} / \text{time}"),
             Formula("strands needed = wanted / oil in an hour · strands", r"\text{strands needed} = \frac{\text{wanted}}{\text{oil in an hour}} \cdot \text{strands}")),
    inputs=(
        Input("collected", "volume", "oil caught below the wick", ("0.1 mL", "1,000 mL"), "not what a wick gives?"),
        Input("collected in", "time", "time it took", ("1 min", "24 h"), "too short to trust, or left too long?"),
        Input("strands", "count", "strands in the wick it was caught from", ("1", "30"), "not a wick?"),
        Input("wanted in an hour", "volume", "oil wanted in an hour", ("0.1 mL", "500 mL"), "not a wick's work?", required=False)),
    outputs=(
        Output("oil in an hour", "volume", "nearest", "oil given in an hour"),
        Output("strands needed", "count", "up", "strands for the oil wanted, up to a whole one")),
    source="common practice, no source: feed goes with the number of strands, lift and oil the same",
    example=Example({"collected": "4 mL", "collected in": "30 min", "strands": "4", "wanted in an hour": "11 mL"},
                    {"oil in an hour": "8.0 mL", "strands needed": "6"}, "by hand: 8 mL from four strands is 2 mL each"),
    goes_wrong=("A new wick put in dry: soak it first, or the first hour gives nothing.",
                "A wick that hangs lower or higher than before: the lift changes the feed.",
                "A wick feeds while the machine stands: pull it, or the cup is empty in the morning."),
    refuses=("Sizes no machine has.",),
    assumes=("Same oil, same lift, same warmth; only the number of strands is changed.",),
    compute=_wick)
