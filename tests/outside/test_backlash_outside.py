"""Backlash and gear shift against an independent geometry and published ratios."""

from math import asin, cos, hypot, pi, radians, sin, tan

import pytest
from scipy.optimize import brentq
from witnessmark.workings.backlash import at_radius, per_shift
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS


# Involute spur gears moved apart: j = 2 tan(phi) x centre distance change, the small-change rule of gear handbooks and of backlash calculators;
# a rack is the bevel with a pitch angle of 90 degrees. 20 degrees: 0.728 per unit; 14.5 degrees: 0.517 (both from tan tables).
@pytest.mark.parametrize(("flank", "printed"), [(20, 0.728), (14.5, 0.517), (25, 0.933)])
def test_a_rack_moved_off_its_gear(flank, printed):
    assert per_shift(radians(flank), pi / 2) == pytest.approx(printed, abs=5e-4)


def backlash_of_involutes(teeth, module, flank, further):
    """Backlash along the working pitch circle of two equal involute gears without any at standard centres, moved `further` apart: exact."""
    pitch, base = teeth * module / 2, teeth * module / 2 * cos(flank)
    working = 2 * pitch + further
    angle = brentq(lambda a: base / cos(a) - working / 2, 0.0, 1.4)

    def involute(a):
        return tan(a) - a

    radius = working / 2
    tooth = radius * (pi / teeth + 2 * (involute(flank) - involute(angle)))
    return 2 * pi * radius / teeth - 2 * tooth


@pytest.mark.parametrize("flank", [14.5, 20, 25])
def test_against_exact_involutes(flank):
    """Second way: tooth thickness of the involute. 1 % is the curvature left out, for a shift of a hundredth of a module."""
    exact = backlash_of_involutes(40, 5.0, radians(flank), 0.05)
    assert exact == pytest.approx(per_shift(radians(flank), pi / 2) * 0.05, rel=0.01)


def test_back_cone_of_a_bevel():
    """Tredgold: at its outer end a bevel gear works as a spur gear on the back cone, and a shift dx moves that cone dx sin(pitch angle) away."""
    pinion, gear = 13, 52
    cone = asin(gear / hypot(pinion, gear))
    away = 0.01 * sin(cone)
    exact = backlash_of_involutes(60, 6.35, radians(20), away * 25.4) / 25.4
    outcome, _ = run(WORKINGS["gear-shift"], {"pitch window": "0.008 to 0.014 in", "pitch radius": "6.50 in", "dial radius": "6.50 in", "pressure angle": "20 °",
                                              "gear teeth": "52", "pinion teeth": "13"})
    assert outcome.value("backlash per shift").likely * 0.01 == pytest.approx(exact, rel=0.01)


# Axle setters' common rule, moving 0.010 in of shim across changes backlash by 0.007 in for a usual hypoid ring gear (common practice, no source).
def test_rule_of_axle_setters():
    assert 0.006 < 0.010 * per_shift(radians(20), radians(75)) < 0.008


@pytest.mark.parametrize(("read_at", "wanted_at"), [(7.25, 6.5), (5.75, 4.5)])
def test_by_the_angle_the_gear_turns(read_at, wanted_at):
    angle = 0.016 / read_at
    assert at_radius(0.016, read_at, wanted_at) == pytest.approx(angle * wanted_at, rel=1e-12)
