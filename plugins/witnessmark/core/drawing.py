"""A small line drawing as data: what a page turns into a picture. Sizes are in units of the drawing, y downwards."""
from __future__ import annotations

from dataclasses import dataclass

WEIGHTS = ("thin", "thick", "dashed")
FILLS = ("none", "light", "dark")


@dataclass(frozen=True)
class Stroke:
    """A line through points; `closed` joins the last to the first. Dark fills carry no text."""
    points: tuple[tuple[float, float], ...]
    weight: str = "thin"
    fill: str = "none"
    closed: bool = False


@dataclass(frozen=True)
class Disc:
    x: float
    y: float
    radius: float
    weight: str = "thin"
    fill: str = "none"


@dataclass(frozen=True)
class Label:
    """Words at a point; `anchor` is start, middle or end. `big` is for a number read at arm's length."""
    x: float
    y: float
    text: str
    anchor: str = "middle"
    big: bool = False


@dataclass(frozen=True)
class Drawing:
    """`shows` says in words all that the drawing says, for those who do not see it. 320 wide fits a phone."""
    width: float
    height: float
    shows: str
    marks: tuple[Stroke | Disc | Label, ...]
