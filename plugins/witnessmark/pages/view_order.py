"""The order of a machine's work as a drawing: boxes down the page, what each waits for on the left, loose ends on the right.

All numbers are in units of the drawing, one to a CSS pixel on a phone of 390 px. It is narrow enough to need no sideways
scroll there, and each box is high enough for a thumb.
"""

from typing import NamedTuple

from ..core.loose_ends import Ledger, Left
from ..core.lone_order import Turn
from . import words
from .address import ledger_url, loose_anchor, procedure_url

WIDTH = 358
_GAP, _BOX_LEAST, _LINE, _TOP = 22, 48, 18, 8
_LANE, _SPAN_LANE = 7, 20
_MOST_LANES, _MOST_SPANS = 6, 8
_SIGN, _SMALL_SIGN, _SMALL_LINE = 7.4, 6.6, 16      # an average sign of bold type 14 units high, and of plain type 13 high


Point = tuple[float, float]


class Box(NamedTuple):
    x: float
    y: float
    width: float
    height: float
    href: str
    number: int
    lines: tuple[tuple[float, str], ...]
    small: tuple[tuple[float, str], ...]


class Span(NamedTuple):
    """Loose ends left in one procedure and shut by another. `letter` stands at both of its ends."""

    letter: str
    x: float
    top: float
    bottom: float


class SpanWords(NamedTuple):
    letter: str
    opened: str
    shut: str
    ends: tuple[tuple[str, str], ...]


class Drawing(NamedTuple):
    width: float
    height: float
    boxes: tuple[Box, ...]
    paths: tuple[str, ...]
    arrows: tuple[Point, ...]
    heads: tuple[Point, ...]
    spans: tuple[Span, ...]
    legend: tuple[SpanWords, ...]
    undrawn: int


class _Group(NamedTuple):
    opener: int
    closer: int
    ends: list[Left]


def order_drawing(ledger: Ledger, turns: list[Turn], root: str) -> Drawing:
    rows = {turn.procedure.id: number for number, turn in enumerate(turns)}
    groups = _groups(ledger, rows)
    lanes, spans_wide = _lanes([(g.opener, g.closer) for g in groups], _MOST_SPANS)
    sources = _sources(ledger, turns, rows)
    gutters, gutters_wide = _lanes([(first, max(ends)) for first, ends in sources], _MOST_LANES)
    left = gutters_wide * _LANE + 8
    box_width = WIDTH - left - spans_wide * _SPAN_LANE - 6
    boxes = _boxes(ledger, turns, rows, left, box_width, root)
    paths, arrows, heads = _wires(sources, gutters, boxes, left)
    letters = _letters()
    spans, legend = [], []
    for group, lane in sorted(zip(groups, lanes), key=lambda pair: (pair[0].opener, pair[0].closer)):
        letter = next(letters) if lane is not None else ""
        if lane is not None:
            top, bottom = boxes[group.opener], boxes[group.closer]
            spans.append(Span(letter, left + box_width + 6 + lane * _SPAN_LANE + _SPAN_LANE / 2,
                              top.y + top.height - 12, bottom.y + 12 if group.closer > group.opener else bottom.y + bottom.height))
        home = ledger_url(ledger.machine.id)
        legend.append(SpanWords(letter, turns[group.opener].procedure.title, turns[group.closer].procedure.title,
                                tuple((left_end.end.state.text, f"{root}{home}#{loose_anchor(left_end.name)}") for left_end in group.ends)))
    height = boxes[-1].y + boxes[-1].height + _TOP if boxes else 0
    return Drawing(WIDTH, height, tuple(boxes), paths, arrows, heads, tuple(spans), tuple(legend), sum(lane is None for lane in lanes))


def _groups(ledger: Ledger, rows: dict[str, int]) -> list[_Group]:
    """Loose ends by the row that leaves them and the last row that shuts them; what is shut in its own procedure is no span."""
    found: dict[tuple[int, int], list[Left]] = {}
    for left in ledger.left.values():
        opener = rows[left.procedure.id]
        closers = [rows[tie.procedure.id] for tie in ledger.ties[left.name] if ledger.follows(tie, left)]
        if closers and max(closers) > opener:
            found.setdefault((opener, max(closers)), []).append(left)
    return [_Group(opener, closer, ends) for (opener, closer), ends in found.items()]


def _sources(ledger: Ledger, turns: list[Turn], rows: dict[str, int]) -> list[tuple[int, list[int]]]:
    """(row, rows that wait for it), enough to show the order: what follows through others is left out."""
    found: dict[int, list[int]] = {}
    for number, turn in enumerate(turns):
        for before in ledger.order.nearest(turn.procedure.id):
            if rows[before] < number:
                found.setdefault(rows[before], []).append(number)
    return sorted(found.items())


def _lanes(pieces: list[tuple[int, int]], most: int) -> tuple[list[int | None], int]:
    """A lane for each piece so that none overlap, the longest innermost; None for those that find no lane."""
    lanes: list[int | None] = [None] * len(pieces)
    taken: list[list[tuple[int, int]]] = []
    for number in sorted(range(len(pieces)), key=lambda number: (pieces[number][1] - pieces[number][0], pieces[number])):
        first, last = pieces[number]
        lane = next((at for at, held in enumerate(taken) if all(last <= a or b <= first for a, b in held)), len(taken))
        if lane >= most:
            continue
        if lane == len(taken):
            taken.append([])
        taken[lane].append((first, last))
        lanes[number] = lane
    return lanes, len(taken)


def _boxes(ledger: Ledger, turns: list[Turn], rows: dict[str, int], left: float, width: float, root: str) -> list[Box]:
    boxes, y = [], float(_TOP)
    every = set(ledger.machine.main.variants)
    for number, turn in enumerate(turns):
        procedure = turn.procedure
        lines = _wrapped(f"{number + 1}  {procedure.title}", int((width - 16) / _SIGN))
        waits = [rows[name] + 1 for name in ledger.order.nearest(procedure.id)]
        small = ", ".join(filter(None, [words.after_rows(sorted(waits)) if waits else words.FIRST_OF_ALL,
                                        f"{words.ONLY.lower()} {', '.join(procedure.variants)}" if set(procedure.variants) != every else ""]))
        under = _wrapped(small, int((width - 16) / _SMALL_SIGN))
        height = max(_BOX_LEAST, len(lines) * _LINE + len(under) * _SMALL_LINE + 14)
        boxes.append(Box(left, y, width, height, root + procedure_url(procedure.machine, procedure.id), number + 1,
                         tuple((y + 19 + at * _LINE, line) for at, line in enumerate(lines)), tuple((y + height - 9 - (len(under) - 1 - at) * _SMALL_LINE, line) for at, line in enumerate(under))))
        y += height + _GAP
    return boxes


def _wrapped(text: str, signs: int) -> list[str]:
    lines, line = [], ""
    for word in text.split(" "):
        if line and len(line) + 1 + len(word) > signs:
            lines.append(line)
            line = word
        else:
            line = f"{line} {word}" if line or not word else word
    return [*lines, line]


def _wires(sources, gutters, boxes: list[Box], left: float) -> tuple[tuple[str, ...], tuple[Point, ...], tuple[Point, ...]]:
    """One wire from each row to all that wait for it: straight down to the next row, else round by a lane on the left."""
    paths, arrows, heads = [], [], []
    for (first, ends), lane in zip(sources, gutters):
        start = boxes[first]
        if first + 1 in ends:
            x = left + 20
            paths.append(f"M{x:g} {start.y + start.height:g}V{boxes[first + 1].y - 5:g}")
            arrows.append((x, boxes[first + 1].y - 1))
        far = [end for end in ends if end > first + 1]
        if far and lane is not None:
            x = left - 8 - lane * _LANE
            last = boxes[max(far)]
            paths.append(f"M{left:g} {start.y + start.height - 10:g}H{x:g}V{last.y + 14:g}H{left:g}")
            paths += [f"M{x:g} {boxes[end].y + 14:g}H{left:g}" for end in far[:-1]]
            heads += [(left, boxes[end].y + 14) for end in far]
    return tuple(paths), tuple(arrows), tuple(heads)


def _letters():
    """A, B, ... Z, AA, AB, ..."""
    number = 0
    while True:
        number, text, left = number + 1, "", number
        while True:
            text = chr(65 + left % 26) + text
            left = left // 26 - 1
            if left < 0:
                break
        yield text
