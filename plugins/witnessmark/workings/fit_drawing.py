"""A hub on a parallel seat in section, with its sizes."""
from __future__ import annotations

from collections.abc import Mapping

from ..core.drawing import Drawing, Label, Stroke
from ..core.working import Given
from .thick_cylinder import Pair

_MIDDLE = 85.0


def section_drawing(given: Mapping[str, Given], pair: Pair, tight: str) -> Drawing:
    """To scale across; `tight` is the text of the interference on the diameter."""
    half, outside = 60 * pair.diameter / pair.outside, 60.0
    hollow = 60 * pair.bore / pair.outside
    left, right = 95.0, 205.0
    marks: list[Stroke | Label] = [Stroke(((30, _MIDDLE), (300, _MIDDLE)), "dashed"),
                                   Stroke(((40, _MIDDLE - half), (270, _MIDDLE - half), (270, _MIDDLE + half), (40, _MIDDLE + half)), "thick", "none", True)]
    for side in (-1, 1):
        marks.append(Stroke(((left, _MIDDLE + side * half), (right, _MIDDLE + side * half), (right, _MIDDLE + side * outside),
                             (left, _MIDDLE + side * outside)), "thick", "light", True))
        if hollow:
            marks.append(Stroke(((40, _MIDDLE + side * hollow), (270, _MIDDLE + side * hollow)), "dashed"))
    middle = (left + right) / 2
    marks += [Label(middle, 18, f"D {given['hub diameter'].text}"), Label(middle, _MIDDLE - 4, f"d {given['seat diameter'].text}"),
              Label(middle, 163, f"L {given['length'].text}"), Label(160, 183, f"{tight} tight on the diameter")]
    shows = (f"Section of a hub {given['hub diameter'].text} outside on a seat of {given['seat diameter'].text}, {given['length'].text} in contact"
             + (f", the shaft bored {given['shaft bore'].text}" if hollow else "") + f"; {tight} tight on the diameter.")
    return Drawing(320, 192, shows, tuple(marks))
