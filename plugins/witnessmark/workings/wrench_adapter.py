"""The working 'wrench-adapter': what to set on a torque wrench that turns the fastener through an adapter. Declaration: see WORKING.

The hand pulls square to the wrench. With the adapter turned by an angle the arm from hand to fastener along the wrench is L + a cos angle.
"""
from __future__ import annotations

from collections.abc import Mapping
from math import cos, radians, sin

from ..core.drawing import Disc, Drawing, Label, Stroke
from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Table, Value, Working
from .printed import in_unit, span, ten_step, unit_of, value
from .wrench import lever, setting_on, window_on

_TURNED = (0, 30, 45, 60, 90, 120, 135, 150, 180)


def compute(given: Mapping[str, Given]) -> Outcome:
    """The setting for one torque, or the lowest and highest for a window, and what the fastener then gets."""
    ratio = lever(given)
    if isinstance(ratio, Refusal):
        return Outcome(refusals=(ratio,))
    torque, unit = given["torque"], unit_of(given["torque"])
    step = ten_step(unit_worth(torque.likely, given) / 1000)
    is_window = torque.low < torque.high
    values = [span("exact setting", "torque", torque.low / ratio, torque.high / ratio, unit, step)]
    if "wrench graduation" in given:
        found = _window(given, torque) if is_window else setting_on(given, torque.likely)
        if isinstance(found, Refusal):
            return Outcome(refusals=(found,))
        values += [_with_band(each, given) for each in found]
    return Outcome(tuple(values), details=lambda: Details(_lines(given, ratio, values), (_table(given),), _drawing(given, values)))


def unit_worth(si: float, given: Mapping[str, Given]) -> float:
    """A torque in the unit it was asked for in."""
    return si / unit_of(given["torque"]).doubles[0]


def _window(given: Mapping[str, Given], torque: Given) -> list[Value] | Refusal:
    ends = window_on(given, torque.low, torque.high)
    if isinstance(ends, Refusal):
        return ends
    unit, graduation = unit_of(given["wrench graduation"]), given["wrench graduation"].quantity.low
    return [value("lowest setting", "torque", float(unit.to_si(ends[0])), unit, graduation, "up"),
            value("highest setting", "torque", float(unit.to_si(ends[1])), unit, graduation, "down")]


def _with_band(result: Value, given: Mapping[str, Given]) -> Value:
    """What is delivered is known no better than the wrench is."""
    out = given["wrench accuracy"].high if "wrench accuracy" in given else 0.0
    if result.name != "delivered torque" or not out:
        return result
    step = min(given["wrench graduation"].quantity.low, 1)
    return value(result.name, result.kind, (result.likely * max(0.0, 1 - out), result.likely, result.likely * (1 + out)), result.unit, step)


def _lines(given: Mapping[str, Given], ratio: float, values: list[Value]) -> tuple[Line, ...]:
    angle = given["adapter angle"].text if "adapter angle" in given else "0°"
    lines = [Line("Arm at the fastener over length of the wrench", "(L + a cos angle) / L",
                  f"({given['wrench length'].text} + {given['adapter length'].text} x cos {angle}) / {given['wrench length'].text}", f"{ratio:.4f}"),
             Line("Setting before rounding", "torque / ratio", f"{given['torque'].text} / {ratio:.4f}", values[0].printed)]
    for each in values[1:]:
        why = "down to a graduation" if each.side == "down" else "up to a graduation" if each.side == "up" else "setting x ratio"
        lines.append(Line(each.name.capitalize(), why, "", each.printed))
    return tuple(lines)


def _table(given: Mapping[str, Given]) -> Table:
    """What the same torque asks for with the adapter turned otherwise, before rounding: a slip of the hand shows here."""
    wrench, adapter, torque = given["wrench length"].likely, given["adapter length"].likely, given["torque"].likely
    unit, rows = unit_of(given["torque"]), []
    for turned in _TURNED:
        arm = wrench + adapter * cos(radians(turned))
        where = {0: "0°, in line", 90: "90°, square", 180: "180°, back along the wrench"}.get(turned, f"{turned}°")
        rows.append((where, in_unit(torque * wrench / arm, "torque", unit, "0.1") if arm > 0 else "no leverage left"))
    return Table(f"Setting for {in_unit(torque, 'torque', unit, '0.1')} with the adapter turned otherwise, before rounding", ("adapter", "setting"), tuple(rows))


def _drawing(given: Mapping[str, Given], values: list[Value]) -> Drawing:
    angle = given["adapter angle"].likely if "adapter angle" in given else 0.0
    reach = min(90.0, max(25.0, 190.0 * given["adapter length"].likely / given["wrench length"].likely))
    drive, middle = 215.0, 110.0
    end = (drive + reach * cos(angle), middle - reach * sin(angle))
    told = next((each for each in values if each.name in ("setting", "lowest setting")), values[0])
    words = f"{told.name} {told.printed}"
    turned = given["adapter angle"].text if angle else "in line"
    marks = (Stroke(((25, middle), (drive, middle)), "thick"), Stroke(((drive, middle), end), "thick"),
             Disc(25, middle, 7, fill="light"), Disc(drive, middle, 5, fill="dark"), Disc(*end, 10, "thick"),
             Label(25, middle + 26, "hand", "start"), Label(120, middle - 10, given["wrench length"].text),
             Label(160, middle + 50, f"adapter {given['adapter length'].text}, {turned}"), Label(160, 190, words, big=True))
    return Drawing(320, 205, f"Wrench of {given['wrench length'].text} from hand to drive, adapter of {given['adapter length'].text} {turned}: {words}", marks)


WORKING = Working(
    id="wrench-adapter",
    title="Torque wrench with an adapter",
    purpose="Gives what to set on the wrench when an adapter stands between its drive and the fastener: in line, square, back along the wrench or at any angle.",
    formula=(Formula("setting = torque L / (L + a cos angle)", r"\text{setting} = \frac{\text{torque} \, L}{L + a \cos \text{angle}}"),
             Formula("window: low / (1 - wrench) to high / (1 + wrench), both through the same ratio",
                     r"\text{window: } \frac{\text{low}}{1 - \text{wrench}} \text{ to } \frac{\text{high}}{1 + \text{wrench}} \text{, both through the same ratio}")),
    inputs=(
        Input("torque", "torque", "torque wanted at the fastener; a window is kept at both ends", ("5 lbf·in", "2000 lbf·ft"), "pound-inches and pound-feet mixed up?"),
        Input("wrench length", "length", "from the drive square to the middle of the hand", ("4 in", "60 in"), "not a hand wrench"),
        Input("adapter length", "length", "from the drive square to the middle of the fastener", ("0.5 in", "24 in"), "not a usual adapter"),
        Input("adapter angle", "angle", "between wrench and adapter: 0° in line, 90° square, 180° back along the wrench; in line when not said", ("0 °", "180 °"),
              "turn it into 0 to 180°", required=False),
        Input("wrench lowest", "torque", "lowest setting of the wrench", required=False),
        Input("wrench highest", "torque", "highest setting of the wrench", required=False),
        Input("wrench graduation", "torque", "one graduation of the wrench; without it only the exact setting is given", required=False),
        Input("wrench accuracy", "share", "how far the wrench may be out, either way", ("1 %", "10 %"), "have the wrench checked", required=False)),
    outputs=(
        Output("exact setting", "torque", "nearest", "what the wrench would have to show, before rounding to a graduation"),
        Output("setting", "torque", "down", "what to set on the wrench for one torque"),
        Output("delivered torque", "torque", "nearest", "what that setting gives at the fastener, with the wrench low and high"),
        Output("lowest setting", "torque", "up", "for a window: with the wrench reading low the fastener is still inside"),
        Output("highest setting", "torque", "down", "for a window: with the wrench reading high the fastener is still inside")),
    source="US military and naval training manuals: TM 1-1500-204-23-9, figure 8-16; TM 9-254, torque wrench, figures 45 and 46; naval aviation structural manual, drive-end extension",
    example=Example(
        {"torque": "20 lbf·ft", "wrench length": "12 in", "adapter length": "3 in", "wrench graduation": "1 lbf·ft"},
        {"exact setting": "16.00 lbf·ft", "setting": "16 lbf·ft", "delivered torque": "20 lbf·ft"},
        "US Navy training manual, drive-end extension in line"),
    goes_wrong=("Hand not on the middle of the grip: the wrench is then another length.",
                "An adapter that swings while pulling: at 90° nothing is corrected, in line all of it.",
                "A click wrench read as if the adapter were not there: with 3 in on 42 in the nut gets 7 % more.",
                "An extension along the axis of the fastener is no adapter: it changes nothing."),
    refuses=("An adapter turned back so far that no leverage is left.", "A setting outside the range of the wrench.",
             "A window narrower than the wrench can keep."),
    assumes=("The pull is square to the wrench and at the middle of the grip.",),
    compute=compute)
