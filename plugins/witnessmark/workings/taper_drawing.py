"""Two pictures of a taper fit in one: its section with d, D, L and T, and hub stress against force for each friction."""
from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import NamedTuple

from ..core.drawing import Drawing, Label, Stroke
from ..core.working import Given

WIDTH, MIDDLE = 320.0, 92.0
_PLOT_TOP, _PLOT_FOOT, _PLOT_LEFT, _PLOT_RIGHT = 215.0, 345.0, 25.0, 175.0


class Curve(NamedTuple):
    """Stress at the full force, in Pa, under a name: from nothing to there it is a straight line."""
    name: str
    stress: float


def taper_drawing(given: Mapping[str, Given], curves: Sequence[Curve], force: str, stress: Callable[[float], str]) -> Drawing:
    """`force` is the text of the full force; `stress` makes the text of a stress."""
    told = "; ".join(f"{curve.name}: {stress(curve.stress)}" for curve in curves)
    shows = (f"Section of a hub {given['hub diameter'].text} outside on a shaft with a taper of {given['taper'].text} on the diameter, "
             f"{given['mean diameter'].text} at the middle of {given['length'].text} of contact. "
             f"Hub stress rises in a straight line with the force; at {force} it is, {told}.")
    return Drawing(WIDTH, 370, shows, (*_section(given), *_plot(curves, force, stress)))


def _section(given: Mapping[str, Given]) -> list[Stroke | Label]:
    """To scale across, and the taper drawn at its true slope where it can be seen (at least 1 in 16)."""
    scale = 55 / given["hub diameter"].likely
    half, outside = given["mean diameter"].likely * scale, 55.0
    length = min(max(given["length"].likely * scale * 2, 60.0), 130.0)
    fall = min(max(length * max(given["taper"].likely, 1 / 16) / 2, 3.0), half * 0.4)
    left, right = 80.0, 80.0 + length
    marks: list[Stroke | Label] = [Stroke(((30, MIDDLE), (right + 60, MIDDLE)), "dashed")]
    for side in (-1, 1):
        large, small, rim = MIDDLE + side * (half + fall / 2), MIDDLE + side * (half - fall / 2), MIDDLE + side * outside
        marks += [Stroke(((left, large), (right, small), (right, rim), (left, rim)), "thick", "light", True),
                  Stroke(((40, large), (left, large), (right, small), (right + 20, small)), "thick")]
    middle = (left + right) / 2
    marks += [Stroke(((right + 20, MIDDLE - half + fall / 2), (right + 20, MIDDLE + half - fall / 2)), "thick"),
              Stroke(((middle, MIDDLE - half), (middle, MIDDLE + half))),
              Label(middle - 4, MIDDLE - 5, f"d {given['mean diameter'].text}", "end"),
              Stroke(((left, 158), (right, 158))), Label(middle, 172, f"L {given['length'].text}"),
              Label(right + 28, MIDDLE - half - 6, f"T {given['taper'].text}", "start"),
              Stroke(((right + 8, MIDDLE - outside), (right + 8, MIDDLE + outside))),
              Label(middle, 28, f"D {given['hub diameter'].text}")]
    return marks


def _plot(curves: Sequence[Curve], force: str, stress: Callable[[float], str]) -> list[Stroke | Label]:
    highest = max(curve.stress for curve in curves)
    marks: list[Stroke | Label] = [
        Label(_PLOT_LEFT, _PLOT_TOP - 12, "hub stress against force", "start"),
        Stroke(((_PLOT_LEFT, _PLOT_TOP), (_PLOT_LEFT, _PLOT_FOOT), (_PLOT_RIGHT, _PLOT_FOOT)), "thin"),
        Label(_PLOT_LEFT - 4, _PLOT_FOOT + 4, "0", "end"), Label(_PLOT_RIGHT, _PLOT_FOOT + 16, force)]
    free = _PLOT_FOOT + 14.0
    for curve in sorted(curves, key=lambda each: each.stress):
        end = _PLOT_FOOT - (_PLOT_FOOT - _PLOT_TOP) * curve.stress / highest
        free = min(end + 4, free - 14)          # one label under the other, however close the lines end
        marks += [Stroke(((_PLOT_LEFT, _PLOT_FOOT), (_PLOT_RIGHT, end)), "dashed" if "oiled" in curve.name else "thick"),
                  Label(_PLOT_RIGHT + 5, free, f"{curve.name}: {stress(curve.stress)}", "start")]
    return marks
