"""In what order to tighten holes: from the middle out, opposite pairs, widest gap first. Pure geometry on a plane.

Holes equally far from the middle form a ring. In a ring the next hole is the one whose neighbours already tightened are farthest
off (the nearest first compared, then the next), the lowest number where they are equal; its opposite follows.
"""
from __future__ import annotations

from collections.abc import Sequence
from math import cos, dist, floor, pi, sin

Point = tuple[float, float]

#: Of the size of the pattern: distances closer than this are equal. Holes marked out by hand lie no better.
_SAME = 0.02


def on_circle(holes: int) -> list[Point]:
    """Hole 1 at the top, then clockwise as seen; radius 1, y downwards."""
    return [(sin(2 * pi * k / holes), -cos(2 * pi * k / holes)) for k in range(holes)]


def in_rows(rows: int, in_each: int, pitch: float, spacing: float) -> list[Point]:
    """Numbered along the first row, then along the next in the same direction."""
    return [(column * pitch, row * spacing) for row in range(rows) for column in range(in_each)]


def size_of(holes: Sequence[Point]) -> float:
    """Farthest distance from the middle."""
    middle = middle_of(holes)
    return max(dist(hole, middle) for hole in holes)


def middle_of(holes: Sequence[Point]) -> Point:
    return sum(x for x, _ in holes) / len(holes), sum(y for _, y in holes) / len(holes)


def tightening_order(holes: Sequence[Point]) -> list[int]:
    """Numbers of the holes, from 1, in the order to tighten them."""
    middle, size = middle_of(holes), size_of(holes)
    done: list[int] = []
    for ring in _rings(holes, middle, size):
        left = list(ring)
        while left:
            chosen = _widest(holes, left, done, size, star=len(ring) % 2 == 1)
            done.append(chosen)
            left.remove(chosen)
            if left:
                mirror = (2 * middle[0] - holes[chosen][0], 2 * middle[1] - holes[chosen][1])
                opposite = min(left, key=lambda other: (_steps(dist(holes[other], mirror), size), other))
                done.append(opposite)
                left.remove(opposite)
    return [number + 1 for number in done]


def _rings(holes: Sequence[Point], middle: Point, size: float) -> list[list[int]]:
    """Numbers from 0, the innermost ring first."""
    far = {number: dist(hole, middle) for number, hole in enumerate(holes)}
    rings: list[list[int]] = []
    for number in sorted(far, key=lambda each: far[each]):
        if rings and far[number] - far[rings[-1][0]] <= _SAME * size:
            rings[-1].append(number)
        else:
            rings.append([number])
    return [sorted(ring) for ring in rings]


def _widest(holes: Sequence[Point], left: list[int], done: list[int], size: float, star: bool) -> int:
    def gaps(number: int) -> list[int]:
        return sorted(_steps(dist(holes[number], holes[other]), size) for other in done)

    best = max(map(gaps, left))
    equal = [number for number in left if gaps(number) == best]
    if star and done:                       # an odd ring has no true opposites: go on with a hole that is not next to the last
        last = holes[done[-1]]
        nearest = min(_steps(dist(hole, last), size) for number, hole in enumerate(holes) if number != done[-1])
        equal = [number for number in equal if _steps(dist(holes[number], last), size) > nearest] or equal
    return min(equal)


def _steps(distance: float, size: float) -> int:
    """Distances counted coarsely, so that a hair does not decide; the odd start keeps usual patterns off the edge of a step."""
    return floor(distance / (size * _SAME) + 0.137)
