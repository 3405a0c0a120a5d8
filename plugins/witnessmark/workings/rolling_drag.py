"""The working 'rolling-drag': a drag torque as a pull on a cord round a drum, on a scale that can show it. Declaration: see WORKING."""
from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from math import floor, hypot, log10

from ..core.drawing import Disc, Drawing, Label, Stroke
from ..core.rounding import round_to
from ..core.units import Unit, find_unit
from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Table, Value, Working
from .printed import in_unit, span, ten_step, unit_of, value, window

#: Scales are divided in these, times a power of ten.
_DIVISIONS = (1, 2, 5)
_LARGEST_DRUM = 0.1016
"""Radius in metres (4 in) over which a drum for a cord is more often a diameter taken for a radius."""


def compute(given: Mapping[str, Given]) -> Outcome:
    """The pull exactly, and as it is read: a window inward, a ceiling down, a floor up, a single figure to the nearest division."""
    radius, drag = given["drum radius"].likely, given["drag"]
    wrong = _not_a_radius(given)
    if wrong:
        return Outcome(refusals=(wrong,))
    unit = unit_of(given["scale division"]) if "scale division" in given else find_unit("N" if unit_of(drag).system == "metric" else "lbf", "force")
    low, high = drag.low / radius, drag.high / radius
    step = ten_step(given["scale division"].likely / unit.doubles[0] / 2) if "scale division" in given else min(ten_step(high / unit.doubles[0] / 100), Fraction(1))
    values: list[Value] = [span("exact pull", "force", low, high, unit, step)]
    warnings: tuple[str, ...] = ()
    if "scale division" in given:
        division = given["scale division"].quantity.low
        read = _on_scale(given, low, high, unit, division)
        if isinstance(read, Refusal):
            return Outcome(refusals=(read,))
        values.append(read)
        highest = given["scale highest"].high if "scale highest" in given else 0.0
        if highest and read.high < highest / 10:
            warnings = (f"the pull lies in the bottom tenth of the scale, 0 to {given['scale highest'].text}: a smaller scale is read better",)
    if radius > _LARGEST_DRUM:
        warnings += (_if_halved(given, low, high, unit, step),)
    return Outcome(tuple(values), warnings=warnings, details=lambda: Details(_lines(given, values), _tables(given, values), _drawing(given, values)))


def _not_a_radius(given: Mapping[str, Given]) -> Refusal | None:
    """Measured across as well, the drum tells a diameter from a radius."""
    if "drum diameter" not in given:
        return None
    radius, across = given["drum radius"], given["drum diameter"]
    if abs(2 * radius.likely - across.likely) <= 0.02 * across.likely:
        return None
    if abs(radius.likely - across.likely) <= 0.02 * across.likely:
        return Refusal(f"the drum radius of {radius.text} is its diameter", f"halve it: the drum measures {across.text} across")
    return Refusal(f"a drum {across.text} across has no radius of {radius.text}", "measure both again, the radius to the middle of the cord")


def _if_halved(given: Mapping[str, Given], low: float, high: float, unit: Unit, step: Fraction) -> str:
    length = unit_of(given["drum radius"])
    half = in_unit(given["drum radius"].likely / 2, "radius", length, "0.001")
    pulls = in_unit(2 * low, "force", unit, step) if low == high else \
        f"{in_unit(2 * low, 'force', unit, step).removesuffix(unit.symbol).strip()} to {in_unit(2 * high, 'force', unit, step)}"
    return f"{given['drum radius'].text} looks like a diameter: if it is, the radius is {half} and the pull {pulls}"


def _on_scale(given: Mapping[str, Given], low: float, high: float, unit: Unit, division: Fraction) -> Value | Refusal:
    """What to read on this scale, its uncertainty kept inside a window."""
    size = unit.doubles[0]
    highest = given["scale highest"].high if "scale highest" in given else 0.0
    if highest and high > highest * (1 + 1e-9):
        return Refusal(f"the pull of {in_unit(high, 'force', unit, division)} is over the end of the scale, {given['scale highest'].text}",
                       f"use a scale to {_round_up(high / size):g} {unit.symbol}, or a drum of larger radius")
    out = uncertainty(given)
    form = given["drag"].quantity.form
    if form in ("at most", "under"):
        return _one_sided("highest pull", high - out, unit, division, "down")
    if form in ("at least", "over"):
        return _one_sided("lowest pull", low + out, unit, division, "up")
    if low == high:
        if round_to(unit.from_si(low), division, "nearest") <= 0:
            return _too_coarse(low, low, unit, division)
        return value("pull", "force", float(unit.to_si(round_to(unit.from_si(low), division, "nearest"))), unit, division)
    found = window("pull window", "force", low + out, high - out, unit, division) if low + out < high - out else None
    return found or _too_coarse(low, high, unit, division)


def uncertainty(given: Mapping[str, Given]) -> float:
    """In N: class share of full scale and half a division, as squares; nothing where the scale has no stated accuracy."""
    if "scale accuracy" not in given or "scale highest" not in given:
        return 0.0
    return hypot(given["scale accuracy"].high * given["scale highest"].high, given["scale division"].likely / 2)


def _one_sided(name: str, newtons: float, unit: Unit, division: Fraction, side: str) -> Value | Refusal:
    if newtons <= 0 or round_to(unit.from_si(newtons), division, side) <= 0:
        return _too_coarse(max(newtons, 0.0), max(newtons, 0.0), unit, division)
    return value(name, "force", newtons, unit, division, side)


def _too_coarse(low: float, high: float, unit: Unit, division: Fraction) -> Refusal:
    """Names a division that leaves at least two graduations inside, with a scale of a hundred or so of them."""
    size = unit.doubles[0]
    room = (high - low) / size or high / size / 10
    told = in_unit(low, "force", unit, ten_step(max(low / size, 1e-12) / 100))
    told = told if low == high else f"{told.removesuffix(unit.symbol).strip()} to {in_unit(high, 'force', unit, ten_step(high / size / 100))}"
    said = f"a scale in divisions of {float(division):g} {unit.symbol} cannot show {told}"
    if room <= 0:
        return Refusal(said, "use a drum of smaller radius, which asks for more pull")
    fine = _round_down(room / 3)
    return Refusal(said, f"use a scale to {_round_up(1.2 * high / size):g} {unit.symbol} in divisions of {fine:g} {unit.symbol} or finer, or a drum of smaller radius")


def _round_down(number: float) -> float:
    """1, 2 or 5 times a power of ten, not over the number: what scales are divided in."""
    ten = 10.0 ** floor(log10(number) + 1e-9)
    return max(factor * ten for factor in _DIVISIONS if factor * ten <= number * (1 + 1e-9))


def _round_up(number: float) -> float:
    ten = 10.0 ** floor(log10(number) - 1e-9)
    return min(factor * ten for factor in (*_DIVISIONS, 10) if factor * ten >= number * (1 - 1e-9))


def _lines(given: Mapping[str, Given], values: list[Value]) -> tuple[Line, ...]:
    lines = [Line("Pull on the cord", "drag / radius", f"{given['drag'].text} / {given['drum radius'].text}", values[0].printed)]
    for each in values[1:]:
        out = uncertainty(given)
        why = {"pull window": "inward to a division", "highest pull": "down to a division", "lowest pull": "up to a division"}.get(each.name, "nearest division")
        within = f", {in_unit(out, 'force', each.unit, ten_step(out / each.unit.doubles[0] / 10))} of the scale inside" if out else ""
        lines.append(Line("As read on the scale", why, f"divisions of {given['scale division'].text}{within}", each.printed))
    return tuple(lines)


def _tables(given: Mapping[str, Given], values: list[Value]) -> tuple[Table, ...]:
    """What a reading means as a drag: for the card beside the scale."""
    if len(values) < 2:
        return ()
    unit, drag_unit, read = values[1].unit, unit_of(given["drag"]), values[1]
    step = ten_step(given["drag"].likely / drag_unit.doubles[0] / 100)
    ends = (0.7 * read.low, 1.3 * read.high)
    pulls = [ends[0] + (ends[1] - ends[0]) * part / 6 for part in range(7)]
    division = given["scale division"].quantity.low
    rows = {}
    for pull in pulls:
        newtons = float(unit.to_si(round_to(unit.from_si(pull), division, "nearest")))
        within = "inside" if read.low * (1 - 1e-9) <= newtons <= read.high * (1 + 1e-9) else "outside"
        rows[in_unit(newtons, "force", unit, division)] = (in_unit(newtons * given["drum radius"].likely, "rolling drag", drag_unit, step),
                                                           within if read.name == "pull window" else "")
    return (Table(f"What a reading means on a drum of {given['drum radius'].text} radius", ("pull", "drag", "window"), tuple((pull, *rest) for pull, rest in rows.items())),)


def _drawing(given: Mapping[str, Given], values: list[Value]) -> Drawing:
    x, y, r = 95.0, 95.0, 60.0
    read = values[-1]
    marks = (Disc(x, y, r, "thick", "light"), Disc(x, y, 3, fill="dark"), Stroke(((x, y), (x - r, y)), "dashed"), Label(x - r / 2, y - 8, "radius"),
             Stroke(((x, y - r), (285, y - r)), "thick"), Stroke(((275, y - r - 6), (287, y - r), (275, y - r + 6)), "thick"),
             Label(240, y - r - 14, "pull, steady"), Label(x, y + r + 22, f"radius {given['drum radius'].text}"), Label(240, y + 10, read.printed, big=True))
    return Drawing(320, 190, f"Cord off the top of a drum of {given['drum radius'].text} radius, pulled square and steady: {read.name} {read.printed}", marks)


WORKING = Working(
    id="rolling-drag",
    title="Rolling drag as a pull on a cord",
    purpose="Turns a drag torque into the pull on a cord round a drum of known radius, as a window that the scale in hand can show.",
    formula=(Formula("pull = drag / radius", r"\text{pull} = \frac{\text{drag}}{\text{radius}}"),),
    inputs=(
        Input("drag", "rolling drag", "drag to reach or keep inside; 'at most' for a ceiling", ("0.5 lbf·in", "200 lbf·in"), "pound-inches and pound-feet mixed up?"),
        Input("drum radius", "radius", "from the centre to the middle of the cord, never across", ("0.5 in", "4 in"), "a radius is from the centre, half of what is measured across"),
        Input("drum diameter", "diameter", "measured across as a check on the radius", required=False),
        Input("scale highest", "force", "end of the scale", required=False),
        Input("scale division", "force", "one division of the scale; without it only the exact pull is given", required=False),
        Input("scale accuracy", "share", "class of the scale, a share of its end; kept inside the window when given", ("0.1 %", "5 %"), "have the scale checked", required=False)),
    outputs=(
        Output("exact pull", "force", "nearest", "drag over radius, before the scale"),
        Output("pull window", "force", "inward", "accept between these readings"),
        Output("pull", "force", "nearest", "for a single drag: the nearest division"),
        Output("highest pull", "force", "down", "for a ceiling: never more than this reading"),
        Output("lowest pull", "force", "up", "for a floor: not less than this reading")),
    source="statics, torque = pull x radius; cord and pull scale on a hub: US Army TM 5-3805-257-14&P, wheel bearing adjustment; uncertainty as squares: usual practice of measurement (JCGM 100)",
    example=Example(
        {"drag": "28 to 40 lbf·in", "drum radius": "2.25 in", "scale highest": "30 lbf", "scale division": "0.25 lbf"},
        {"exact pull": "12.4 to 17.8 lbf", "pull window": "12.50 to 17.75 lbf"},
        "this project's demonstration book, by hand"),
    goes_wrong=("A diameter taken for the radius: the pull comes out half, and the bearing is set twice as tight.",
                "The jerk that starts it read instead of the steady pull.",
                "Seals, gears or a chain turning along.",
                "The cord not square to the radius, or winding up over itself.",
                "Heavy grease, or a cold shop."),
    refuses=("A pull over the end of the scale.", "A window that no division of the scale lies inside.", "A radius that the diameter measured contradicts."),
    assumes=("Read while turning slowly and steadily, nothing else turning along.",),
    compute=compute)
