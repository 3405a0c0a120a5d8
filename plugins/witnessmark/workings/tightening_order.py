"""The working 'tightening-order': which bolt after which, and in how many rounds. Declaration: see WORKING."""
from __future__ import annotations

from collections.abc import Mapping
from math import dist

from ..core.drawing import Disc, Drawing, Label
from ..core.rounding import round_to
from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Table, Value, Working
from .hole_order import Point, in_rows, on_circle, tightening_order
from .printed import unit_of, value, words
from .wrench import lever, setting_on

MOST = 48
_SHARES = (0.3, 0.6)


def compute(given: Mapping[str, Given]) -> Outcome:
    """The order in words and the setting of each round, down to a graduation."""
    holes = _holes(given)
    if isinstance(holes, Refusal):
        return Outcome(refusals=(holes,))
    order = tightening_order(holes)
    values, warnings = [words("order", "-".join(map(str, order)))], ()
    if "torque" in given:
        found = _rounds(given)
        if isinstance(found, Refusal):
            return Outcome(refusals=(found,))
        values += found[0]
        warnings = found[1]
    return Outcome(tuple(values), warnings=warnings, details=lambda: Details(_lines(given, values), (_table(order, values),), _drawing(holes, order)))


def _holes(given: Mapping[str, Given]) -> list[Point] | Refusal:
    pattern = given["pattern"].text
    if pattern == "by position":
        if "positions" not in given:
            return Refusal("the positions of the holes are not given", "give each as across by down, with a comma between: 0 by 0 in, 3.5 by 0 in")
        holes = [(place.several[0].likely, place.several[1].likely) for place in given["positions"].several]
    elif pattern == "circle":
        if "holes" not in given:
            return Refusal("how many holes the circle has is not given", "count them")
        count = given["holes"].likely
        holes = on_circle(round(count)) if 2 <= count <= MOST else [(0.0, 0.0)] * (1 if count < 2 else MOST + 1)
    else:
        if "rows" not in given or "in each row" not in given:
            return Refusal("rows and holes in each row are not given", "count them, or give the holes by position")
        rows, each = given["rows"].likely, given["in each row"].likely
        pitch = given["pitch"].likely if "pitch" in given else 1.0
        spacing = given["row spacing"].likely if "row spacing" in given else pitch
        holes = in_rows(round(rows), round(each), pitch, spacing) if rows * each <= MOST else [(0.0, 0.0)] * (MOST + 1)
    if len(holes) < 2:
        return Refusal("one hole has no order", "give two holes or more")
    if len(holes) > MOST:
        return Refusal(f"more than {MOST} holes are tightened in groups of four that count as one", "number the groups and give their number")
    far = max(dist(one, holes[0]) for one in holes)
    if any(dist(one, other) <= 0.005 * far for n, one in enumerate(holes) for other in holes[:n]):
        return Refusal("two holes stand at the same place", "measure the positions again, all from one corner")
    return holes


def _rounds(given: Mapping[str, Given]) -> tuple[list[Value], tuple[str, ...]] | Refusal:
    """A setting for each share, then the full torque; a round that the wrench cannot be set to is left out."""
    if "wrench graduation" not in given:
        return Refusal("the rounds cannot be brought to settings without the wrench", "name the wrench, or its graduation")
    full = setting_on({name: each for name, each in given.items() if name != "passes"}, given["torque"].likely)
    if isinstance(full, Refusal):
        return full
    unit, graduation = unit_of(given["wrench graduation"]), given["wrench graduation"].quantity.low
    lowest = given["wrench lowest"].low if "wrench lowest" in given else 0.0
    shares = [each.likely for each in given["round shares"].several] if "round shares" in given else list(_SHARES)
    if any(one >= other for one, other in zip([0.0, *shares], [*shares, 1.0], strict=True)) or len(shares) > 4:
        return Refusal("the rounds do not rise to the full torque", "give up to four shares that rise and stay under 100 %, such as 30 %, 60 %")
    last, settings, warnings = full[0].likely, [], []
    for share in shares:
        part = float(unit.to_si(round_to(unit.from_si(given["torque"].likely * share / _ratio(given)), graduation, "down")))
        if part <= 0 or part < lowest * (1 - 1e-9) or part >= last or part in settings:
            warnings.append(f"a round at {round(share * 100)} % cannot be set apart on this wrench: it is left out")
        else:
            settings.append(part)
    names = [f"round {n}" for n in range(1, len(settings) + 2)]
    found = [value(name, "torque", si, unit, graduation, "down") for name, si in zip(names, [*settings, last], strict=True)]
    return [*found, full[1], words("last of all", "once more round at the full setting, hole by hole, until none moves")], tuple(warnings)


def _ratio(given: Mapping[str, Given]) -> float:
    ratio = lever(given)
    return ratio if isinstance(ratio, float) else 1.0


def _lines(given: Mapping[str, Given], values: list[Value]) -> tuple[Line, ...]:
    lines = [Line("From the middle out, opposite pairs, widest gap first", "", given["pattern"].text, values[0].printed)]
    shares = given["round shares"].text if "round shares" in given else "30 %, 60 %"
    rounds = [each for each in values if each.name.startswith("round ")]
    if rounds:
        lines.append(Line("Rounds, each down to a graduation", "torque x share", f"{given['torque'].text} x {shares}, then full", " then ".join(each.printed for each in rounds)))
    return tuple(lines)


def _table(order: list[int], values: list[Value]) -> Table:
    """For the bench: one row a bolt, one box a round."""
    rounds = [each.printed for each in values if each.name.startswith("round ")]
    return Table("Tick off each hole in each round", ("turn", "hole", *rounds), tuple((str(turn), str(hole), *("□",) * len(rounds)) for turn, hole in enumerate(order, 1)))


def _drawing(holes: list[Point], order: list[int]) -> Drawing:
    """Every hole with its number inside and its turn beside it."""
    left, top = min(x for x, _ in holes), min(y for _, y in holes)
    wide, high = max(x for x, _ in holes) - left, max(y for _, y in holes) - top
    scale = min(250 / wide if wide else 1e9, 250 / high if high else 1e9)
    nearest = min(dist(one, other) for n, one in enumerate(holes) for other in holes[:n]) * scale
    radius = max(5.0, min(13.0, nearest * 0.3))
    at = [(160 + (x - left - wide / 2) * scale, 35 + (y - top) * scale) for x, y in holes]
    turn = {hole: n for n, hole in enumerate(order, 1)}
    marks: list[Disc | Label] = []
    for number, (x, y) in enumerate(at, 1):
        marks += [Disc(x, y, radius, "thick", "light"), Label(x, y + 4, str(number)), Label(x, y + radius + 18, f"({turn[number]})", big=nearest > 34)]
    marks.append(Label(160, 20 + 35 + high * scale + 48, "hole number inside, its turn in brackets"))
    return Drawing(320, 118 + high * scale, f"{len(holes)} holes, tightened in the order {'-'.join(map(str, order))}", tuple(marks))


WORKING = Working(
    id="tightening-order",
    title="Tightening order and rounds",
    purpose="Gives the order of the bolts of a joint, on a circle, in rows or scattered, and the wrench setting of each round.",
    formula=(Formula("from the middle out; in each ring opposite pairs, widest gap first", r"\text{from the middle out; in each ring opposite pairs, widest gap first}"),
             Formula("round = torque · share, down to a graduation", r"\text{round} = \text{torque} · \text{share, down to a graduation}")),
    inputs=(
        Input("pattern", "choice", "how the holes lie", choices=("circle", "rows", "by position")),
        Input("holes", "count", "holes on a circle, numbered clockwise from the top", ("3", "24"), "count again", required=False),
        Input("rows", "count", "rows, numbered along the first, then along the next in the same direction", ("1", "4"), "give them by position instead", required=False),
        Input("in each row", "count", "holes in each row", ("2", "12"), "count again", required=False),
        Input("pitch", "length", "from hole to hole along a row", required=False),
        Input("row spacing", "length", "from row to row; as the pitch when not said", required=False),
        Input("positions", "position", "each hole as across by down, from any corner, numbered as written: 0 by 0 in, 3.5 by 0 in", required=False, many=True),
        Input("torque", "torque", "full torque at the fastener", ("5 lbf·in", "2000 lbf·ft"), "pound-inches and pound-feet mixed up?", required=False),
        Input("round shares", "share", "rounds before the full torque; 30 %, 60 % when not said", required=False, many=True),
        Input("wrench lowest", "torque", "lowest setting of the wrench", required=False),
        Input("wrench highest", "torque", "highest setting of the wrench", required=False),
        Input("wrench graduation", "torque", "one graduation of the wrench", required=False),
        Input("wrench length", "length", "from the drive square to the middle of the hand", ("4 in", "60 in"), "not a hand wrench", required=False),
        Input("adapter length", "length", "from the drive square to the middle of the fastener", ("0.5 in", "24 in"), "not a usual adapter", required=False),
        Input("adapter angle", "angle", "between wrench and adapter: 0° straight on, 90° no correction", ("0 °", "180 °"), "turn it into 0 to 180°", required=False)),
    outputs=(
        Output("order", "none", "nearest", "numbers of the holes in the order to tighten them"),
        *(Output(f"round {n}", "torque", "down", "setting of this round; the last is the full torque") for n in range(1, 6)),
        Output("delivered torque", "torque", "nearest", "what the full setting gives at the fastener"),
        Output("last of all", "none", "nearest", "the check round")),
    source="cross pattern in opposite pairs: ASME PCC-1, legacy pattern; rounds of 30, 60 and 100 %, then once round: Fluid Sealing Association guidance on bolting; from the middle out for heads and covers: common practice, no source",
    example=Example(
        {"pattern": "circle", "holes": "8", "torque": "120 lbf·ft", "wrench lowest": "40 lbf·ft", "wrench highest": "250 lbf·ft", "wrench graduation": "5 lbf·ft",
         "round shares": "35 %, 70 %"},
        {"order": "1-5-3-7-2-6-4-8", "round 1": "40 lbf·ft", "round 2": "80 lbf·ft", "round 3": "120 lbf·ft"},
        "ASME PCC-1, legacy pattern for 8 bolts (from memory)"),
    goes_wrong=("Round the circle bolt after bolt: the joint tips and the gasket is cut on one side.",
                "The first bolt at full torque: all the others then slacken it.",
                "No round after the last: each bolt loosens the one before it.",
                "Another's numbers on the same picture: number the holes with chalk before the first pull."),
    refuses=("Two holes at one place.", f"More than {MOST} holes, or one.", "Rounds that do not rise to the full torque.", "A setting outside the wrench."),
    assumes=("All bolts are alike and the joint is as stiff everywhere: where a maker prints an order, his goes first.",),
    compute=compute)
