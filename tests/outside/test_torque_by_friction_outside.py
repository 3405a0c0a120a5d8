"""Torque by friction against the guideline's table, a textbook example and the exact geometry of a thread."""

import math

import pytest

from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS
from witnessmark.workings.torque_by_friction import torque

BY_FRICTION = WORKINGS["torque-by-friction"]

# VDI 2230 (2001), fine threads, class 8.8, 90 % of yield: preload kN, torque N·m at friction 0.10, 0.12 and 0.14. Face of the
# hexagon head: least washer-face diameter of ISO 4014, medium hole of ISO 273, in mm.
GUIDELINE = [
    ("M8 x 1", 11.63, 9, {0.10: (20.7, 22.8), 0.12: (20.2, 26.1), 0.14: (19.7, 29.2)}),
    ("M10 x 1.25", 14.63, 11, {0.10: (32.4, 44), 0.12: (31.6, 51), 0.14: (30.8, 57)}),
    ("M16 x 1.5", 22.49, 17.5, {0.10: (89.6, 189), 0.12: (87.6, 218), 0.14: (85.5, 244)}),
    ("M20 x 1.5", 28.19, 22, {0.10: (151, 392), 0.12: (148, 454), 0.14: (144, 511)}),
    ("M24 x 2", 33.61, 26, {0.10: (213, 666), 0.12: (209, 769), 0.14: (204, 865)})]


@pytest.mark.parametrize(("thread", "face", "hole", "friction", "preload", "printed"), [
    (thread, face, hole, friction, *row) for thread, face, hole, rows in GUIDELINE for friction, row in rows.items()])
def test_the_guidelines_table(thread, face, hole, friction, preload, printed):
    """Preloads have three figures, so a torque may be off by 0.4 % and half its last figure."""
    outcome, problems = run(BY_FRICTION, {"thread": thread, "clamp": f"{preload} kN", "thread friction": f"{friction}", "head friction": f"{friction}",
                                          "head diameter": f"{face} mm", "hole diameter": f"{hole} mm"})
    assert problems == []
    assert outcome.value("torque").likely == pytest.approx(printed, abs=0.004 * printed + (0.5 if printed > 40 else 0.05))


def test_textbook_example_by_friction():
    """Machine-design textbook, example 8-3: 3/4-16, 25 kip, friction 0.15, collar of 1.5 diameters: 3,551 lbf·in by friction, 3,750 by K 0.2."""
    outcome, _ = run(BY_FRICTION, {"thread": "3/4-16 UNF", "clamp": "25000 lbf", "thread friction": "0.15", "head friction": "0.15", "head diameter": "1.125 in"})
    assert outcome.value("torque").likely / 0.1129848 == pytest.approx(3551, abs=1)
    assert outcome.value("nut factor").likely == pytest.approx(0.2 * 3551 / 3750, abs=0.0005)


@pytest.mark.parametrize("friction", [0.08, 0.12, 0.20])
@pytest.mark.parametrize(("size", "pitch"), [(0.008, 0.00125), (0.020, 0.0015), (0.01905, 0.0254 / 16)])
def test_the_exact_inclined_plane(size, pitch, friction):
    """Second way: F d2/2 tan(slope + atan(mu / cos 30°)) with nothing rounded. The guideline drops the product of slope and
    friction and rounds 0.577 to 0.58: within 1 %."""
    middle = size - 0.75 * math.sqrt(3) / 2 * pitch
    slope = math.atan(pitch / (math.pi * middle))
    exact = middle / 2 * math.tan(slope + math.atan(friction / math.cos(math.radians(30)))) + 1.3 * size / 2 * friction
    assert torque(1.0, pitch, middle, friction, 1.3 * size, friction) == pytest.approx(exact, rel=0.01)
