"""Free travel of clutches against published figures and against the turning of a lever."""

from math import asin, sin

import pytest
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS


def travel(gap, ratio):
    outcome, problems = run(WORKINGS["lever-free-travel"], {"gap": gap, "lever ratio": ratio})
    assert problems == []
    return outcome.value("exact travel").likely / 0.0254


# A textbook of heavy trucks on push-type clutches: 1/8 in at the release bearing is 1-1/2 to 2 in at the pedal; such linkages have ratios of 12 to 16.
@pytest.mark.parametrize(("ratio", "printed"), [("12", 1.5), ("16", 2.0), ("3, 4", 1.5)])
def test_trucks(ratio, printed):
    assert travel("1/8 in", ratio) == pytest.approx(printed, abs=1e-9)


# A published measure of pedal ratio: pedal 14 in from its pivot, rod at 4 in: 3.5 to 1.
def test_pedal_ratio_of_two_arms():
    assert travel("1/8 in", "14:4") == pytest.approx(0.125 * 3.5, abs=1e-9)


@pytest.mark.parametrize(("short", "long"), [(4.0, 14.0), (1.5, 18.0)])
def test_by_the_turning_of_the_lever(short, long):
    """Second way: the lever turned until its short arm has moved the gap, both ends as heights of an arc. 0.5 % is the arc."""
    gap = 0.09
    turned = asin(gap / short)
    assert travel(f"{gap} in", f"{long}:{short}") == pytest.approx(long * sin(turned), rel=1e-9)
    assert travel(f"{gap} in", f"{long}:{short}") == pytest.approx(long * turned, rel=5e-3)


def test_release_by_work():
    """Second way: without friction the work put in at the lever is the work done on the plate, so forces and travels go by the same ratio."""
    outcome, problems = run(WORKINGS["release-lift"], {"plate lift": "0.060 in", "finger ratio": "3:2", "lever ratio": "4, 3"})
    assert problems == []
    plate_force = 1865.0
    at_lever = plate_force / 1.5 / 4 / 3
    assert at_lever * outcome.value("release travel").likely == pytest.approx(plate_force * 0.060 * 0.0254, rel=1e-12)
