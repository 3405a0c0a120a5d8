"""Orders and rounds against published ones."""

from itertools import permutations
from math import dist

import pytest
from witnessmark.workings.hole_order import on_circle, tightening_order
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS


# 12 bolts: a published answer on the torque pattern of a 12-bolt flange. The others: ASME PCC-1, legacy cross pattern, from memory.
# For 20 bolts PCC-1 goes on with 5-15 where 4-14 leaves gaps just as wide: there only the first four pairs are the same.
@pytest.mark.parametrize(("holes", "printed"), [
    (12, "1-7-4-10-2-8-5-11-3-9-6-12"), (4, "1-3-2-4"), (8, "1-5-3-7-2-6-4-8"), (16, "1-9-5-13-3-11-7-15-2-10-6-14-4-12-8-16"),
    (24, "1-13-7-19-4-16-10-22-2-14-8-20-5-17-11-23-3-15-9-21-6-18-12-24")])
def test_published_orders(holes, printed):
    assert "-".join(map(str, tightening_order(on_circle(holes)))) == printed


def test_the_first_pairs_of_twenty():
    assert tightening_order(on_circle(20))[:8] == [1, 11, 6, 16, 3, 13, 8, 18]


# Fluid Sealing Association guidance, as a gasket maker's page on bolting flanges gives it: 12 and 6 o'clock, then 3 and 9, then the pair nearest
# 1:30 and 7:30; rounds at 30 %, 60 % and 100 %, then once round.
def test_guidance_of_the_sealing_trade():
    clock = {1: "12", 5: "6", 3: "3", 7: "9", 2: "1:30", 6: "7:30"}
    outcome, _ = run(WORKINGS["tightening-order"], {"pattern": "circle", "holes": "8", "torque": "100 lbf·ft", "wrench graduation": "1 lbf·ft"})
    assert [clock.get(int(number)) for number in outcome.value("order").printed.split("-")][:6] == ["12", "6", "3", "9", "1:30", "7:30"]
    assert [value.printed for value in outcome.values if value.name.startswith("round")] == ["30 lbf·ft", "60 lbf·ft", "100 lbf·ft"]


@pytest.mark.parametrize("holes", [4, 6, 8])
def test_widest_gap_by_brute_force(holes):
    """Of all orders in opposite pairs that begin with hole 1, ours keeps the least distance to what is tightened as great as any, pair by pair."""
    points = on_circle(holes)

    def gaps(found):
        return [round(min(dist(points[found[n] - 1], points[other - 1]) for other in found[:n]), 6) for n in range(2, holes, 2)]

    ours = tightening_order(points)
    best = max(gaps([number for first in starts for number in (first, first + holes // 2)])
               for starts in ((1, *rest) for rest in permutations(range(2, holes // 2 + 1))))
    assert gaps(ours) == best
