"""The workings 'shim-stack' and 'shim-move': a thickness from the shims in stock, and shims moved from one side to the other. See STACK and MOVE."""
from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from fractions import Fraction

from ..core.drawing import Drawing, Label, Stroke
from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Table, Value, Working
from .printed import in_unit, unit_of, value, words
from .shim_search import MOST_KINDS, MOST_PIECES, in_any_number, in_common_units, stacks

_USUAL_MOST = 6


class Stock:
    """The shims and the thicknesses asked for, counted in one small unit."""

    def __init__(self, given: Mapping[str, Given], *asked: Given):
        self.pieces_given = given["stock"].several or (given["stock"],)
        self.unit, self.most = unit_of(self.pieces_given[0]), round(given["most pieces"].likely) if "most pieces" in given else _USUAL_MOST
        self.step = Fraction(1, 10 ** min(6, max(each.quantity.decimals for each in self.pieces_given)))
        exact = [_metres(each, "low") for each in self.pieces_given]
        ends = [_metres(each, end) for each in asked for end in ("low", "high")]
        counted, self.size = in_common_units([*exact, *ends])
        self.own_steps = {count: Fraction(1, 10 ** min(6, each.quantity.decimals)) for count, each in zip(counted, self.pieces_given, strict=False) if unit_of(each) == self.unit}
        self.pieces, self.asked = sorted(set(counted[:len(exact)]), reverse=True), counted[len(exact):]

    def too_many(self) -> Refusal | None:
        if len(self.pieces) > MOST_KINDS or not 1 <= self.most <= MOST_PIECES:
            return Refusal(f"more than {MOST_KINDS} thicknesses or {MOST_PIECES} pieces are not tried", "a stack of more than six pieces springs: machine a spacer")
        return None

    def metres(self, counted: int) -> float:
        return float(counted * self.size)

    def thickness(self, counted: int) -> str:
        return in_unit(self.metres(counted), "length", self.unit, self.step)

    def told(self, stack: tuple[int, ...]) -> str:
        """'3 × 0.012 + 0.005 + 0.003 in'"""
        if not stack:
            return "no shim"
        bare = [f"{count} × {self._bare(piece)}" if count > 1 else self._bare(piece) for piece, count in Counter(stack).items()]
        return f"{' + '.join(bare)} {self.unit.symbol}"

    def _bare(self, piece: int) -> str:
        """As finely as the stock is marked: 0.005, beside a leaf of 0.0005."""
        return in_unit(self.metres(piece), "length", self.unit, self.own_steps.get(piece, self.step)).removesuffix(self.unit.symbol).strip()

    def length(self, name: str, counted: int) -> Value:
        return value(name, "length", self.metres(counted), self.unit, self.step)

    def never(self, counted: int) -> str:
        """Why not: not in so many pieces, or not in any number."""
        any_number = in_any_number(self.pieces, counted)
        words_for = ", nor in any number" if any_number is False else f", but in more than {self.most}" if any_number else ""
        return f"{self.thickness(counted)} cannot be made from this stock in {self.most} pieces{words_for}"


def _metres(given: Given, end: str) -> Fraction:
    """Exactly, to a millionth of the unit it was given in: a result of another working has the dust of doubles on it."""
    number = given.quantity.low if end == "low" else given.quantity.high
    return (Fraction(number).limit_denominator(10**6) or Fraction(number)) * unit_of(given).factor


def _compute_stack(given: Mapping[str, Given]) -> Outcome:
    """The stack with the fewest pieces, or the nearest thinner and thicker ones."""
    stock = Stock(given, given["thickness"])
    refused = stock.too_many()
    if refused:
        return Outcome(refusals=(refused,))
    low, high = stock.asked
    made = stacks(stock.pieces, stock.most, high + stock.pieces[0])
    middle = (low + high) / 2
    inside = [total for total in made if low <= total <= high]
    if inside:
        best = min(inside, key=lambda total: (abs(total - middle), len(made[total]), total))
        values = [words("stack", stock.told(made[best])), stock.length("stack thickness", best), value("pieces", "count", float(len(made[best])), "", "1")]
        return Outcome(tuple(values), details=lambda: _stack_details(given, stock, made, [made[best]], low, high))
    under, over = max((total for total in made if total < low), default=None), min((total for total in made if total > high), default=None)
    values = []
    for name, total in (("thinner", under), ("thicker", over)):
        if total is not None:
            values += [words(f"{name} stack", stock.told(made[total])), stock.length(f"nearest {name}", total)]
    if not values:
        return Outcome(refusals=(Refusal(stock.never(low), "get other shims"),))
    reason = stock.never(low) if low == high else f"nothing between {stock.thickness(low)} and {stock.thickness(high)} can be made from this stock in {stock.most} pieces"
    shown = [made[total] for total in (under, over) if total is not None]
    return Outcome(tuple(values), warnings=(reason,), details=lambda: _stack_details(given, stock, made, shown, low, high))


def _stack_details(given: Mapping[str, Given], stock: Stock, made: Mapping[int, tuple[int, ...]], shown: list[tuple[int, ...]], low: int, high: int) -> Details:
    lines = [Line("Shims in stock, and pieces at most", "", f"{given['stock'].text}; {stock.most}", given["thickness"].text)]
    lines += [Line("Checked by adding up", stock.told(stack), "", stock.thickness(sum(stack))) for stack in shown]
    near = sorted(sorted(made, key=lambda total: (abs(2 * total - low - high), total))[:7])
    table = Table("What this stock makes near it", ("thickness", "stack", "pieces"), tuple((stock.thickness(total), stock.told(made[total]), str(len(made[total]))) for total in near))
    return Details(tuple(lines), (table,), _drawing(stock, shown))


def _drawing(stock: Stock, shown: list[tuple[int, ...]]) -> Drawing:
    """Each stack to scale, thickest at the bottom."""
    marks: list[Stroke | Label] = []
    scale = 120 / max(sum(stack) for stack in shown)
    for column, stack in enumerate(shown):
        left, y = 40.0 + 140 * column, 150.0
        for piece in stack:
            high = max(piece * scale, 2.0)
            marks.append(Stroke(((left, y), (left + 60, y), (left + 60, y - high), (left, y - high)), "thin", "light", True))
            if high >= 11:
                marks.append(Label(left + 66, y - high / 2 + 4, stock.thickness(piece), "start"))
            y -= high
        marks.append(Label(left, 170, stock.thickness(sum(stack)), "start", True))
    return Drawing(320, 180, "Stack of " + "; or ".join(f"{stock.told(stack)}, {stock.thickness(sum(stack))}" for stack in shown), tuple(marks))


def _compute_move(given: Mapping[str, Given]) -> Outcome:
    """Both stacks after the move with their sum kept, or the nearest smaller and larger moves that both sides can make."""
    to_left = given["to"].text == "left"
    grows, gives = (given["left now"], given["right now"]) if to_left else (given["right now"], given["left now"])
    stock = Stock(given, grows, gives, given["move"])
    refused = stock.too_many()
    if refused:
        return Outcome(refusals=(refused,))
    grown, given_up, move = stock.asked[0], stock.asked[2], stock.asked[4]
    if move >= given_up:
        return Outcome(refusals=(Refusal(f"the {'right' if to_left else 'left'} side has {stock.thickness(given_up)}, not enough to move {stock.thickness(move)}",
                                         "measure both stacks again"),))
    total = grown + given_up
    made = stacks(stock.pieces, stock.most, total)
    moves = {one - grown: one for one in made if total - one in made and one > grown}

    def sides(moved: int) -> tuple[tuple[str, int], tuple[str, int]]:
        pair = (("left", moves[moved]), ("right", total - moves[moved]))
        return pair if to_left else (("left", total - moves[moved]), ("right", moves[moved]))

    if move in moves:
        values = [each for side, counted in sides(move) for each in (stock.length(side, counted), words(f"{side} stack", stock.told(made[counted])))]
        values.append(stock.length("sum", total))
        return Outcome(tuple(values), details=lambda: _move_details(given, stock, made, [sides(move)], total))
    nearest = [("smaller", max((one for one in moves if one < move), default=None)), ("larger", min((one for one in moves if one > move), default=None))]
    values, found = [], []
    for name, moved in nearest:
        if moved is not None:
            found.append(sides(moved))
            values.append(stock.length(f"{name} move", moved))
            values += [words(f"{side} stack at the {name} move", f"{stock.thickness(counted)}: {stock.told(made[counted])}") for side, counted in sides(moved)]
    missing = [stock.never(one) for one in (grown + move, given_up - move) if one not in made]
    if not values:
        return Outcome(refusals=(Refusal("; ".join(missing), "no move keeps the sum with this stock: measure the sum again, or get other shims"),))
    values.append(stock.length("sum", total))
    return Outcome(tuple(values), warnings=tuple(missing), details=lambda: _move_details(given, stock, made, found, total))


def _move_details(given: Mapping[str, Given], stock: Stock, made: Mapping[int, tuple[int, ...]], found, total: int) -> Details:
    now = f"{given['left now'].text} + {given['right now'].text}"
    lines = [Line("Sum that is kept", "left + right", now, stock.thickness(total))]
    lines += [Line("Checked by adding up", " + ".join(f"{side} {stock.thickness(counted)}" for side, counted in pair), "", stock.thickness(sum(counted for _, counted in pair)))
              for pair in found]
    rows = tuple((f"{side} {stock.thickness(counted)}", stock.told(made[counted])) for pair in found for side, counted in pair)
    return Details(tuple(lines), (Table("Stacks to build", ("side", "stack"), rows),))


_SHIMS = (
    Input("stock", "length", "thicknesses of the shims in stock, with commas; any number of each", ("0.0005 in", "0.25 in"), "a spacer more than a shim", many=True),
    Input("most pieces", "count", "pieces in a stack at most; 6 when not said", ("1", "6"), "a thick packet of thin shims springs", required=False))

STACK = Working(
    id="shim-stack",
    title="Shim stack from stock",
    purpose="Builds a thickness from the shims there are with the fewest pieces, or gives the nearest stack on either side and says that the thickness itself cannot be made.",
    formula=(Formula("thickness = sum of the pieces", r"\text{thickness} = \text{sum of the pieces}"),),
    inputs=(Input("thickness", "length", "thickness wanted, or a window of it", ("0.002 in", "0.5 in"), "a spacer more than a stack"), *_SHIMS),
    outputs=(
        Output("stack", "none", "nearest", "the pieces, thickest first"),
        Output("stack thickness", "length", "nearest", "what they add up to"),
        Output("pieces", "count", "nearest", "how many there are"),
        Output("thinner stack", "none", "nearest", "when it cannot be made: the nearest one thinner"),
        Output("nearest thinner", "length", "nearest", "its thickness"),
        Output("thicker stack", "none", "nearest", "when it cannot be made: the nearest one thicker"),
        Output("nearest thicker", "length", "nearest", "its thickness")),
    source="exact search over all stacks; fewest pieces: public service manuals on shims; six pieces at most: common practice, no source",
    example=Example({"thickness": "0.044 in", "stock": "0.003 in, 0.005 in, 0.012 in, 0.025 in"},
                    {"stack": "3 × 0.012 + 0.005 + 0.003 in", "stack thickness": "0.044 in", "pieces": "5"}, "this project's demonstration book, by hand"),
    goes_wrong=("Burrs and dirt: a thousandth at every joint.", "Thin shims on the outside: they tear and creep out.",
                "The stack not measured as a whole after it is built.", "A torn or bent shim used again."),
    refuses=("A stock or a stack with too many pieces to be sensible.",),
    assumes=("Each shim is as thick as its mark: measure the stack.",),
    compute=_compute_stack)

MOVE = Working(
    id="shim-move",
    title="Shims moved from side to side",
    purpose="Moves a thickness of shims from one side to the other with their sum kept, or gives the nearest moves that both stacks can make.",
    formula=(Formula("left + right = constant", r"\text{left} + \text{right} = \text{constant}"),),
    inputs=(
        Input("left now", "length", "stack on the left", ("0.002 in", "0.5 in"), "a spacer more than a stack"),
        Input("right now", "length", "stack on the right", ("0.002 in", "0.5 in"), "a spacer more than a stack"),
        Input("move", "length", "thickness to take from one side to the other", ("0.001 in", "0.1 in"), "more than shims usually move"),
        Input("to", "choice", "side that gets thicker", choices=("left", "right")), *_SHIMS),
    outputs=(
        Output("left", "length", "nearest", "stack on the left after the move"), Output("left stack", "none", "nearest", "its pieces"),
        Output("right", "length", "nearest", "stack on the right after the move"), Output("right stack", "none", "nearest", "its pieces"),
        Output("smaller move", "length", "nearest", "when the move cannot be made: the nearest smaller one that both sides can make"),
        Output("left stack at the smaller move", "none", "nearest", "thickness and pieces"), Output("right stack at the smaller move", "none", "nearest", "thickness and pieces"),
        Output("larger move", "length", "nearest", "the nearest larger one"),
        Output("left stack at the larger move", "none", "nearest", "thickness and pieces"), Output("right stack at the larger move", "none", "nearest", "thickness and pieces"),
        Output("sum", "length", "nearest", "left and right together, before and after")),
    source="exact search over all pairs of stacks; sum kept so that the bearings keep their setting: public service manuals on shims",
    example=Example({"left now": "0.034 in", "right now": "0.041 in", "move": "0.010 in", "to": "left", "stock": "0.003 in, 0.005 in, 0.012 in, 0.025 in"},
                    {"left stack": "3 × 0.012 + 0.005 + 0.003 in", "right stack": "0.025 + 2 × 0.003 in", "sum": "0.075 in"}, "this project's demonstration book, by hand"),
    goes_wrong=("One side changed and not the other: the bearings lose their preload.", "Left and right named from the wrong end.",
                "Stacks measured dirty before and clean after."),
    refuses=("More taken from a side than it has.", "A stock with which no move keeps the sum."),
    assumes=("Each shim is as thick as its mark: measure both stacks.",),
    compute=_compute_move)
