"""The workings 'lever-free-travel' and 'release-lift': what a gap at the clutch is at the lever, and how far the lever goes to free it. See TRAVEL and LIFT."""
from __future__ import annotations

from collections.abc import Mapping
from math import prod

from ..core.drawing import Disc, Drawing, Label, Stroke
from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Table, Value, Working
from .printed import in_unit, span, spread, unit_of, value, window

_FINE = {"in": ("0.01", "0.001"), "mm": ("0.1", "0.01")}
"""Step of a travel at the lever, and of a gap at the clutch."""


def ratio_of(given: Given) -> float:
    """Levers one behind the other: their ratios multiplied."""
    return prod(each.likely for each in given.several or (given,))


def _unit(given: Given) -> str:
    return "mm" if unit_of(given).system == "metric" else "in"


def _compute_travel(given: Mapping[str, Given]) -> Outcome:
    """Gap times ratio, and the lost motion of the pins on top; a window inward to the rule."""
    gap, ratio = given["gap"], ratio_of(given["lever ratio"])
    lost = given["lost motion"].likely if "lost motion" in given else 0.0
    unit = _unit(gap)
    step = _FINE[unit][0]
    low, high = (each * ratio + lost for each in (gap.low, gap.high))
    values: list[Value] = [span("exact travel", "length", low, high, unit, _FINE[unit][1])]
    if low < high:
        rule = given.get("rule division")
        found = window("free travel", "length", low, high, unit_of(rule) if rule else unit, rule.quantity.low if rule else step)
        if found is None:
            return Outcome(refusals=(Refusal(f"a rule in {rule.text if rule else f'{step} {unit}'} divisions cannot show this window", "use a finer rule, or measure the gap itself with a feeler"),))
        values.append(found)
    warnings = ("lost motion is as great as the gap at the lever: renew the pins before setting anything",) if lost > gap.low * ratio else ()
    return Outcome(tuple(values), warnings=warnings, details=lambda: Details(_travel_lines(given, values), (_travel_table(given, ratio, lost, unit),), _drawing(given, values[-1])))


def _travel_lines(given: Mapping[str, Given], values: list[Value]) -> tuple[Line, ...]:
    lost = f" + {given['lost motion'].text}" if "lost motion" in given else ""
    lines = [Line("Travel at the lever before the gap is taken up", "gap x ratio + lost motion", f"{given['gap'].text} x {given['lever ratio'].text}{lost}", values[0].printed)]
    lines += [Line("Inward to the rule", "", given["rule division"].text if "rule division" in given else "", each.printed) for each in values[1:]]
    return tuple(lines)


def _travel_table(given: Mapping[str, Given], ratio: float, lost: float, unit: str) -> Table:
    """Gap and travel in pairs: whichever can be reached is measured."""
    gap, rows = given["gap"], []
    for part in range(7):
        at = gap.low * 0.7 + (gap.high * 1.3 - gap.low * 0.7) * part / 6
        within = "inside" if gap.low * (1 - 1e-9) <= at <= gap.high * (1 + 1e-9) else "outside"
        rows.append((in_unit(at, "clearance", unit, _FINE[unit][1]), in_unit(at * ratio + lost, "length", unit, _FINE[unit][0]), within if gap.low < gap.high else ""))
    return Table("Gap at the clutch and travel at the lever", ("gap", "travel", "window"), tuple(rows))


def _drawing(given: Mapping[str, Given], result: Value) -> Drawing:
    marks = (Stroke(((60, 150), (250, 60)), "thick"), Stroke(((60, 150), (260, 95)), "dashed"), Disc(60, 150, 6, fill="dark"), Disc(112, 125, 5, "thick", "light"),
             Label(262, 58, "travel", "start"), Label(60, 178, "pivot"), Label(104, 108, "rod to the clutch", "end"), Label(160, 24, f"{result.name} {result.printed}", big=True))
    return Drawing(330, 190, f"Lever on its pivot, rod to the clutch near it: {given['gap'].text} at the clutch is {result.printed} at the end of the lever", marks)


def _compute_lift(given: Mapping[str, Given]) -> Outcome:
    """How far the release bearing and the lever go to free the plates, free travel included."""
    lift, fingers = given["plate lift"], ratio_of(given["finger ratio"])
    ratio, unit = ratio_of(given["lever ratio"]), _unit(given["plate lift"])
    lost = given["lost motion"].likely if "lost motion" in given else 0.0
    bearing = tuple(each * fingers for each in (lift.low, lift.likely, lift.high))
    values: list[Value] = [value("bearing travel", "length", spread(*bearing), unit, _FINE[unit][1]),
                           value("release travel", "length", spread(*(each * ratio for each in bearing)), unit, _FINE[unit][0])]
    gap = given.get("gap")
    whole = tuple(each * ratio + (end * ratio if gap else 0.0) + lost for each, end in zip(bearing, (gap.low, gap.likely, gap.high) if gap else (0.0,) * 3, strict=True))
    if gap or lost:
        values.append(value("whole travel", "length", spread(*whole), unit, _FINE[unit][0]))
    warnings: tuple[str, ...] = ()
    if "lever stroke" in given and whole[2] > given["lever stroke"].low * (1 + 1e-9):
        short = in_unit(whole[2] - given["lever stroke"].low, "length", unit, _FINE[unit][0], "up")
        warnings = (f"the lever's stroke of {given['lever stroke'].text} is up to {short} short: the clutch will drag",)
    return Outcome(tuple(values), warnings=warnings, details=lambda: Details(_lift_lines(given, values)))


def _lift_lines(given: Mapping[str, Given], values: list[Value]) -> tuple[Line, ...]:
    lines = [Line("Travel of the release bearing", "plate lift x finger ratio", f"{given['plate lift'].text} x {given['finger ratio'].text}", values[0].printed),
             Line("Travel of the lever to free it", "bearing travel x lever ratio", f"{values[0].printed} x {given['lever ratio'].text}", values[1].printed)]
    extra = " + ".join(given[name].text for name in ("gap", "lost motion") if name in given)
    lines += [Line("With free travel and lost motion", "release travel + gap x lever ratio + lost motion", extra, each.printed) for each in values[2:]]
    return tuple(lines)


TRAVEL = Working(
    id="lever-free-travel",
    title="Free travel of a clutch lever",
    purpose="Turns the gap at the release bearing into the free travel at the end of the lever or pedal, as a window that a rule can show.",
    formula=(Formula("travel = gap · ratio + lost motion", r"\text{travel} = \text{gap} · \text{ratio} + \text{lost motion}"),),
    inputs=(
        Input("gap", "clearance", "between release bearing and fingers", ("0.02 in", "0.30 in"), "not a usual gap"),
        Input("lever ratio", "gear ratio", "travel at the lever over travel at the bearing; several levers with commas", ("1.2", "30"), "measure both arms again", many=True),
        Input("lost motion", "length", "slack of worn pins at the lever: rock it with the bearing held; it is added", required=False, sign="zero or over"),
        Input("rule division", "length", "one division of the rule; 0.01 in or 0.1 mm when not said", required=False)),
    outputs=(
        Output("exact travel", "length", "nearest", "gap times ratio, with the lost motion"),
        Output("free travel", "length", "inward", "accept between these at the lever")),
    source="law of the lever",
    example=Example({"gap": "0.060 to 0.090 in", "lever ratio": "10"}, {"free travel": "0.60 to 0.90 in"}, "this project's demonstration book, by hand"),
    goes_wrong=("Slack in the pins taken for free travel: the bearing never stops turning and burns.", "Set with the facings worn and never again: the gap closes as they wear.",
                "Measured with the return spring off."),
    refuses=("A window that the rule cannot show.",),
    assumes=("The ratio is the same all the way: near enough for so short a travel.",),
    compute=_compute_travel)

LIFT = Working(
    id="release-lift",
    title="Lever travel that frees a clutch",
    purpose="Says how far release bearing and lever must go to lift the plates clear, and whether the stroke is long enough.",
    formula=(Formula("bearing = lift · finger ratio", r"\text{bearing} = \text{lift} · \text{finger ratio}"),
             Formula("lever = (bearing + gap) · lever ratio + lost motion", r"\text{lever} = (\text{bearing} + \text{gap}) · \text{lever ratio} + \text{lost motion}")),
    inputs=(
        Input("plate lift", "length", "how far the pressure plate must move, all gaps of the pack together", ("0.02 in", "0.25 in"), "not a usual lift"),
        Input("finger ratio", "gear ratio", "travel of the release bearing over that of the plate", ("1", "8"), "measure both arms again", many=True),
        Input("lever ratio", "gear ratio", "travel of the lever over that of the bearing; several levers with commas", ("1.2", "30"), "measure both arms again", many=True),
        Input("gap", "clearance", "between release bearing and fingers, taken up first", required=False, sign="zero or over"),
        Input("lost motion", "length", "slack of worn pins at the lever", required=False, sign="zero or over"),
        Input("lever stroke", "length", "how far the lever can go", required=False)),
    outputs=(
        Output("bearing travel", "length", "nearest", "of the release bearing while it lifts the plate"),
        Output("release travel", "length", "nearest", "of the lever for that"),
        Output("whole travel", "length", "nearest", "of the lever with free travel and lost motion")),
    source="law of the lever",
    example=Example({"plate lift": "0.060 in", "finger ratio": "1.5", "lever ratio": "12", "gap": "0.125 in"},
                    {"bearing travel": "0.090 in", "release travel": "1.08 in", "whole travel": "2.58 in"}, "by hand"),
    goes_wrong=("A pack with one disc more: each gap between plates needs its own lift.", "Free travel set so wide that nothing is left to lift the plate."),
    refuses=("Nothing: a stroke that is too short is warned about.",),
    assumes=("The ratios are the same all the way.",),
    compute=_compute_lift)
