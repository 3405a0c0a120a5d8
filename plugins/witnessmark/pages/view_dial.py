"""The dial of a press gauge, drawn for paper: where the needle stops, and the black band it never enters."""

from functools import lru_cache
from math import cos, floor, hypot, log10, radians, sin
from typing import NamedTuple, Sequence

from ..core.drawing import Disc, Drawing, Label, Stroke

_MIDDLE, _WIDE, _HIGH = (100.0, 100.0), 200.0, 186.0
_RIM = 76.0
_BAND = 14.0                         # how wide the black band is
_HALF_DIGIT, _HALF_HIGH = 4.4, 6.0   # of a number as it is printed
_FROM, _SWEEP = 225.0, 270.0         # degrees: zero at the lower left, full scale at the lower right
_STEPS = (1, 2, 2.5, 5, 10)
_MOST_TICKS = 130
_CLEAR = 0.045                       # of the scale: a number nearer to a needle would be struck through by it


class Needle(NamedTuple):
    """A mark by its number on the card and its share of full scale."""

    name: str
    share: float


def dial(full_scale: float, division: float, unit: str, stops: Sequence[Needle], never: float | None, shows: str) -> Drawing:
    """`full_scale` and `division` in `unit`; `never` is the share of full scale at which the band begins, None for an empty card."""
    marks: list[Stroke | Disc | Label] = [Disc(*_MIDDLE, _RIM, "thick"), *_ticks(round(full_scale / division))]
    step = _numbered(full_scale)
    for n in range(int(full_scale / step + 1e-9) + 1):
        share = n * step / full_scale
        marks.append(Stroke((_at(share, _RIM - 11), _at(share, _RIM)), "thick"))
        if all(abs(share - taken) > _CLEAR for taken in (*(stop.share for stop in stops), *([] if never is None else [never]))):
            marks.append(_number(share, f"{n * step:g}"))
    marks.append(Label(_MIDDLE[0], _HIGH - 22, unit))
    if never is not None:
        marks += _never(never)
    far = _spread(stops)
    for stop, share in zip(stops, far, strict=True):
        x, y = _at(share, _RIM + 14)
        marks += [Stroke((_at(stop.share, 26), _at(stop.share, _RIM)), "thick"), Stroke((_at(stop.share, _RIM), _at(share, _RIM + 7))),
                  Disc(x, y, 8), Label(x, y + 4.6, stop.name)]
    marks.append(Disc(*_MIDDLE, 4, "thick", "dark"))
    return Drawing(_WIDE, _HIGH, shows, tuple(marks))


@lru_cache(maxsize=256)
def _ticks(count: int) -> tuple[Stroke, ...]:
    return tuple(Stroke((_at(n / count, _RIM - 6), _at(n / count, _RIM))) for n in range(0, count + 1, max(1, -(-count // _MOST_TICKS))))


@lru_cache(maxsize=1024)
def _number(share: float, text: str) -> Label:
    """As far out as it stands clear of the band with every digit: 10000 short of its last nought is another pressure."""
    radius = _RIM - _BAND - 2
    while True:
        x, y = _at(share, radius)
        wide = abs(x - _MIDDLE[0]) + _HALF_DIGIT * len(text)
        if hypot(wide, abs(y - _MIDDLE[1]) + _HALF_HIGH) <= _RIM - _BAND - 1:
            return Label(x, y + 4, text)
        radius -= 1


def _never(share: float) -> list[Stroke | Disc | Label]:
    """A solid band from the mark to the end of the scale, and a line across the face: black on a photocopy of a photocopy."""
    steps = [share + (1 - share) * n / 40 for n in range(41)]
    band = tuple(_at(s, _RIM - 1) for s in steps) + tuple(_at(s, _RIM - _BAND) for s in reversed(steps))
    line = (*(_at(share, r, side) for r, side in ((14, -2.2), (_RIM + 4, -2.2), (_RIM + 4, 2.2), (14, 2.2))),)
    return [Stroke(band, "thin", "dark", True), Stroke(line, "thin", "dark", True)]


def _at(share: float, radius: float, beside: float = 0.0) -> tuple[float, float]:
    """A point at a share of the scale and a distance from the middle, `beside` it by so much clockwise."""
    angle = radians(_FROM - _SWEEP * share)
    return (_MIDDLE[0] + radius * cos(angle) + beside * sin(angle), _MIDDLE[1] - radius * sin(angle) + beside * cos(angle))


def _numbered(full_scale: float) -> float:
    """How far apart the numbers stand: at most nine of them."""
    power = 10.0 ** floor(log10(full_scale / 8))
    return next(step * power for step in _STEPS if full_scale / (step * power) <= 8.0001)


def _spread(stops: Sequence[Needle]) -> list[float]:
    """Where the numbered rings stand round the rim: at their marks, pushed apart where they would touch."""
    room = 0.082
    places = [stop.share for stop in stops]
    for n in range(1, len(places)):
        places[n] = max(places[n], places[n - 1] + room)
    over = max(0.0, places[-1] - 1.02) if places else 0.0
    for n in range(len(places) - 1, -1, -1):
        places[n] = min(places[n], (places[n + 1] - room) if n + 1 < len(places) else places[n] - over)
    return places


def empty_dial(shows: str) -> Drawing:
    """A rim with its ends marked, for the needle marks of a press that is not in the book."""
    ends = tuple(Stroke((_at(share, _RIM - 11), _at(share, _RIM)), "thick") for share in (0.0, 1.0))
    return Drawing(_WIDE, _HIGH, shows, (Disc(*_MIDDLE, _RIM, "thick"), *ends, Disc(*_MIDDLE, 4, "thick", "dark")))
