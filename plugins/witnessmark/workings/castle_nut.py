"""The working 'castle-nut': which way to the next slot, how far, and what to dress off when that is too far. Declaration: see WORKING."""
from __future__ import annotations

from collections.abc import Mapping
from math import cos, gcd, pi, sin

from ..core.drawing import Disc, Drawing, Label, Stroke
from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Table, Value, Working
from .printed import in_unit, unit_of, value, words
from .wrench import window_on

CLAMPS, ADJUSTS = "clamps a joint", "adjusts a bearing"
_WAY = {CLAMPS: "forward to the next slot, never back", ADJUSTS: "back off to the next slot, never forward"}


def places_of_slots(slots: int, holes: int) -> int:
    """At how many places of one turn a slot meets a hole; two holes stand square to each other."""
    return slots * 4 // gcd(slots, 4) if holes == 2 else slots


def compute(given: Mapping[str, Given]) -> Outcome:
    """Degrees and advance of a slot, the turn still missing, the dressing, and the settings for a torque window."""
    slots = round(given["slots"].likely) if "slots" in given else 6
    holes = round(given["cross holes"].likely) if "cross holes" in given else 1
    if slots % 2 or not 4 <= slots <= 18 or holes not in (1, 2):
        return Outcome(refusals=(Refusal(f"a split pin goes through two slots that face each other: {slots} slots and {holes} holes are no castle nut",
                                         "count slots and holes again: 6, 8 or 10 slots and one hole are usual, some shafts have two"),))
    thread, nut = given["thread"].thread, given["the nut"].text
    pitch, turn = thread.pitch_si, 2 * pi / places_of_slots(slots, holes)
    unit, step = ("in", "0.0001") if thread.family == "unified" else ("mm", "0.001")
    values = [words("which way", _WAY[nut]), value("one slot", "angle", turn, "°", "0.1"),
              value("advance of one slot", "length", pitch * turn / (2 * pi), unit, step),
              _turn_for_one_division(pitch, unit)]
    warnings: tuple[str, ...] = ()
    if "degrees short" in given:
        short = given["degrees short"].likely
        if short >= turn * (1 - 1e-9):
            return Outcome(refusals=(Refusal(f"{given['degrees short'].text} is a slot or more: the next slot is never further off than {in_unit(turn, 'angle', '°', '0.1')}",
                                             "measure forward from the hole to the nearest slot that has not reached it"),))
        to_go = short if nut == CLAMPS or short == 0 else turn - short
        values += [value("turn to make", "angle", to_go, "°", "0.1"), value("movement", "length", pitch * to_go / (2 * pi), unit, step)]
        if nut == CLAMPS:
            values.append(value("dressing", "length", pitch * short / (2 * pi), unit, step))
    if "torque window" in given:
        found = _settings(given, nut)
        if isinstance(found, Refusal):
            return Outcome(refusals=(found,))
        values += found
        warnings = ("if the wrench clicks at the stop setting before the slot is there, take the nut off and dress its face",)
    return Outcome(tuple(values), warnings=warnings, details=lambda: Details(_lines(given, pitch, turn, values), (_table(given, pitch, turn, unit, step),),
                                                                             _drawing(given, slots, turn)))


def _turn_for_one_division(pitch: float, unit: str) -> Value:
    division, name = (25.4e-6, "turn for 0.001 in") if unit == "in" else (1e-5, "turn for 0.01 mm")
    return value(name, "angle", 2 * pi * division / pitch, "°", "0.1")


def _settings(given: Mapping[str, Given], nut: str) -> list[Value] | Refusal:
    if nut == ADJUSTS:
        return Refusal("a nut that sets a bearing is not left at a torque", "leave the torque window out: the bearing's drag or end play judges it")
    if "wrench graduation" not in given:
        return Refusal("the window cannot be brought to a setting without the wrench", "name the wrench, or its graduation and accuracy")
    ends = window_on(given, given["torque window"].low, given["torque window"].high)
    if isinstance(ends, Refusal):
        return ends
    unit, graduation = unit_of(given["wrench graduation"]), given["wrench graduation"].quantity.low
    return [value("first setting", "torque", float(unit.to_si(ends[0])), unit, graduation, "up"),
            value("stop setting", "torque", float(unit.to_si(ends[1])), unit, graduation, "down")]


def _lines(given: Mapping[str, Given], pitch: float, turn: float, values: list[Value]) -> tuple[Line, ...]:
    thread = given["thread"].thread
    unit, step = ("in", "0.0001") if thread.family == "unified" else ("mm", "0.001")
    printed = {each.name: each.printed for each in values}
    pitch_text = in_unit(pitch, "length", unit, step)
    lines = [Line("Pitch", "one turn moves the nut by", given["thread"].text, pitch_text),
             Line("One slot", "360° / places where a slot meets a hole", f"360° / {round(2 * pi / turn)}", printed["one slot"]),
             Line("Advance of one slot", "pitch / places", f"{pitch_text} / {round(2 * pi / turn)}", printed["advance of one slot"])]
    if "movement" in printed:
        lines.append(Line("Movement along the thread", "pitch x degrees / 360", f"{pitch_text} x {printed['turn to make']} / 360", printed["movement"]))
    if "dressing" in printed:
        lines.append(Line("Off the face of the nut, to meet the slot at the same torque", "pitch x degrees short / 360",
                          f"{pitch_text} x {given['degrees short'].text} / 360", printed["dressing"]))
    if "stop setting" in printed:
        out = given["wrench accuracy"].text if "wrench accuracy" in given else "0 %"
        lines.append(Line("Set first, then go forward", "low end / (1 - wrench), up to a graduation", f"{given['torque window'].text}, wrench {out} out", printed["first setting"]))
        lines.append(Line("Stop here", "high end / (1 + wrench), down to a graduation", "", printed["stop setting"]))
    return tuple(lines)


def _table(given: Mapping[str, Given], pitch: float, turn: float, unit: str, step: str) -> Table:
    """For the bench: degrees short as read, what the nut moves and what to dress."""
    clamps, rows = given["the nut"].text == CLAMPS, []
    for part in range(1, 7):
        short = turn * part / 6
        to_go = short if clamps else turn - short
        move = in_unit(pitch * to_go / (2 * pi), "length", unit, step)
        rows.append((in_unit(short, "angle", "°", "1"), in_unit(to_go, "angle", "°", "1"), move))
    last = "advance, or dressing off the face" if clamps else "backs away by"
    return Table("Degrees short of the slot", ("short by", "turn forward" if clamps else "back off", last), tuple(rows))


def _drawing(given: Mapping[str, Given], slots: int, turn: float) -> Drawing:
    """The nut from above: slots as gaps in the crown, the hole as a dashed line, and which way to go."""
    clamps = given["the nut"].text == CLAMPS
    short = given["degrees short"].likely if "degrees short" in given else turn / 3
    x, y, crown = 110.0, 100.0, 62.0
    marks: list[Stroke | Disc | Label] = [Disc(x, y, 30, "thin", "light"), Disc(x, y, crown, "thick")]
    for k in range(slots):
        at = -short + k * 2 * pi / slots
        along, across = (cos(at), sin(at)), (-sin(at), cos(at))
        marks.append(Stroke(tuple((x + r * along[0] + side * 6 * across[0], y + r * along[1] + side * 6 * across[1])
                                  for r, side in ((34, -1), (crown + 6, -1), (crown + 6, 1), (34, 1))), "thin", "light", True))
    marks.append(Stroke(((x - 92, y), (x + 92, y)), "dashed"))
    way = "forward" if clamps else "back off"
    told = f"a slot {in_unit(short, 'angle', '°', '1')} short of the hole" if "degrees short" in given else "a slot short of the hole"
    marks += [Label(x + 96, y - 6, "hole", "start"), Label(220, 40, way, "start", True), Label(160, 190, told)]
    return Drawing(320, 200, f"Castle nut with {slots} slots from above, {told}: {_WAY[given['the nut'].text]}", tuple(marks))


WORKING = Working(
    id="castle-nut",
    title="Castle nut to its slot",
    purpose="Says whether the nut goes forward or backs off to the slot, how far that moves it along its thread, and how much to dress off its face when the slot lies too far on.",
    formula=(Formula("one slot = 360° / slots", r"\text{one slot} = \frac{360°}{\text{slots}}"),
             Formula("movement = pitch · degrees / 360", r"\text{movement} = \frac{\text{pitch} · \text{degrees}}{360}"),
             Formula("dressing = pitch · degrees short / 360", r"\text{dressing} = \frac{\text{pitch} · \text{degrees short}}{360}")),
    inputs=(
        Input("thread", "thread", "thread of the bolt or shaft"),
        Input("the nut", "choice", "what the nut is for: one that clamps goes forward, one that sets a bearing backs off", choices=(CLAMPS, ADJUSTS)),
        Input("slots", "count", "slots in the nut; 6 when not said", ("6", "10"), "count them again", required=False),
        Input("cross holes", "count", "holes through the bolt: 1, or 2 square to each other; 1 when not said", required=False),
        Input("degrees short", "angle", "how far the nut must still turn forward until a slot meets the hole", required=False),
        Input("torque window", "torque", "least and most torque of a nut that clamps", required=False),
        Input("wrench lowest", "torque", "lowest setting of the wrench", required=False),
        Input("wrench highest", "torque", "highest setting of the wrench", required=False),
        Input("wrench graduation", "torque", "one graduation of the wrench", required=False),
        Input("wrench accuracy", "share", "how far the wrench may be out, either way", ("1 %", "10 %"), "have the wrench checked", required=False)),
    outputs=(
        Output("which way", "none", "nearest", "forward or back off"),
        Output("one slot", "angle", "nearest", "turn from one place where the pin goes in to the next"),
        Output("advance of one slot", "length", "nearest", "how far that moves the nut along its thread"),
        Output("turn for 0.001 in", "angle", "nearest", "turn that moves an inch thread by a thousandth"),
        Output("turn for 0.01 mm", "angle", "nearest", "turn that moves a metric thread by a hundredth"),
        Output("turn to make", "angle", "nearest", "forward or back, as the nut asks for"),
        Output("movement", "length", "nearest", "how far that turn moves the nut along its thread"),
        Output("dressing", "length", "nearest", "off the face of the nut, so that the slot meets the hole at the torque it has now"),
        Output("first setting", "torque", "up", "set this first: the low end of the window with the wrench reading low"),
        Output("stop setting", "torque", "down", "go forward to the slot, but not past this: the high end with the wrench reading high")),
    source="thread geometry, ASME B1.1 and ISO 261; forward for a clamping nut and back for a bearing: common practice, no source; back-off of wheel bearing nuts: TMC RP 618A",
    example=Example(
        {"thread": "1/2-20 UNF", "the nut": CLAMPS, "degrees short": "15 °", "torque window": "56 to 64 lbf·ft", "wrench graduation": "1 lbf·ft", "wrench accuracy": "4 %"},
        {"which way": "forward to the next slot, never back", "advance of one slot": "0.0083 in", "dressing": "0.0021 in", "first setting": "59 lbf·ft", "stop setting": "61 lbf·ft"},
        "this project's demonstration book, by hand"),
    goes_wrong=("A clamping nut turned back to a slot: it has lost what the torque gave it.",
                "A bearing nut turned forward to a slot: the bearing runs hot.",
                "Dressing the slotted end, or one side of the face: the nut must stand square.",
                "A pin too thin for the hole, or used twice."),
    refuses=("A number of slots that is no castle nut.", "More degrees short than one slot.",
             "A torque window for a nut that sets a bearing.", "A window narrower than the wrench can keep."),
    assumes=("The joint is rigid: how much torque a slot adds depends on its stretch, and the wrench tells it.",),
    compute=compute)
