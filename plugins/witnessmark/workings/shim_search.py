"""Which sums a stock of shims can make, exactly. Thicknesses are whole numbers of one small unit, so that no rounding hides a miss."""
from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction
from math import lcm

MOST_KINDS, MOST_PIECES = 10, 10
#: Thicker than this many units nothing is said of "any number of pieces".
_FARTHEST = 2_000_000


def in_common_units(thicknesses: Iterable[Fraction]) -> tuple[list[int], Fraction]:
    """The same thicknesses as whole numbers, and the unit they count."""
    thicknesses = list(thicknesses)
    denominator = lcm(*(each.denominator for each in thicknesses))
    return [int(each * denominator) for each in thicknesses], Fraction(1, denominator)


def stacks(pieces: Iterable[int], most: int, limit: int) -> dict[int, tuple[int, ...]]:
    """Every sum up to `limit` that at most `most` pieces make, each with the fewest pieces, thickest first."""
    pieces = sorted(set(pieces), reverse=True)
    made: dict[int, tuple[int, ...]] = {}
    level: Mapping[int, tuple[int, ...]] = {0: ()}
    for _ in range(most):
        following: dict[int, tuple[int, ...]] = {}
        for total, stack in level.items():
            for piece in pieces:
                new = total + piece
                if new <= limit and new not in made and new not in following:
                    following[new] = tuple(sorted((*stack, piece), reverse=True))
        made.update(following)
        level = following
    return made


def in_any_number(pieces: Iterable[int], target: int) -> bool | None:
    """Whether any number of pieces makes `target`; None where that is too far to look."""
    if target > _FARTHEST:
        return None
    reached, mask = 1, (1 << (target + 1)) - 1
    for piece in pieces:
        step = piece
        while step <= target:                  # 1, 2, 4 … of the piece: together any number of it
            reached |= (reached << step) & mask
            step *= 2
    return bool(reached >> target & 1)
