"""A drawing as data to a picture: points and classes ready for the template."""

from functools import lru_cache
from typing import NamedTuple

from ..core.drawing import Disc, Drawing, Label, Stroke
from .fill_template import Markup, part


class Shape(NamedTuple):
    """One mark: `tag` polyline, polygon, circle or text; the attributes that go with it, the words of a text."""

    tag: str
    look: str
    points: str = ""
    x: str = ""
    y: str = ""
    radius: str = ""
    anchor: str = ""
    text: str = ""
    drawn: Markup = Markup("")


def picture(drawing: Drawing | None) -> Markup | None:
    """The drawing as inline SVG with its words for those who do not see it; None where there is none."""
    return None if drawing is None else _picture(drawing)


@lru_cache(maxsize=4096)
def _picture(drawing: Drawing) -> Markup:
    return part("drawing", "drawing")(_number(drawing.width), _number(drawing.height), drawing.shows, Markup("").join(map(_mark, drawing.marks)))


@lru_cache(maxsize=16384)
def _mark(mark: Stroke | Disc | Label) -> Markup:
    """Set once: the dials of a book have most of their marks in common."""
    return part("mark", "drawing")(_shape(mark))


def _shape(mark: Stroke | Disc | Label) -> Shape:
    if isinstance(mark, Stroke):
        points = " ".join(f"{_number(x)},{_number(y)}" for x, y in mark.points)
        return Shape("polygon" if mark.closed else "polyline", f"{mark.weight} {mark.fill}", points=points, drawn=_drawn(mark))
    if isinstance(mark, Disc):
        return Shape("circle", f"{mark.weight} {mark.fill}", x=_number(mark.x), y=_number(mark.y), radius=_number(mark.radius), drawn=_drawn(mark))
    return Shape("text", "big" if mark.big else "", x=_number(mark.x), y=_number(mark.y), anchor=mark.anchor, text=mark.text)


def _drawn(mark: Stroke | Disc) -> Markup:
    """The look again as attributes, for who reads no style sheet into a drawing."""
    weight = {"thick": ' stroke-width="2.6"', "dashed": ' stroke-dasharray="5 4"'}.get(mark.weight, "")
    return Markup(weight + (' fill="currentColor"' if mark.fill == "dark" else ""))


def _number(size: float) -> str:
    """To a hundredth: finer is not seen, and the page stays the same on every machine."""
    return f"{size:.2f}".rstrip("0").rstrip(".")
