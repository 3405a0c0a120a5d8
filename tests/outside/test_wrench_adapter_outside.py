"""Settings through an adapter against the worked examples of public manuals. Each prints whole figures: half a unit of the last."""

import pytest
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS


def exact(torque, wrench, adapter, angle="0 °"):
    outcome, problems = run(WORKINGS["wrench-adapter"], {"torque": torque, "wrench length": f"{wrench} in", "adapter length": f"{adapter} in", "adapter angle": angle})
    assert problems == [] and outcome.refusals == ()
    found = outcome.value("exact setting")
    return float(found.unit.from_si(found.likely))


@pytest.mark.parametrize(("torque", "wrench", "adapter", "angle", "printed", "half"), [
    ("40 lbf·ft", 12, 4, "0 °", 30, 1e-9),            # US Army TM 9-2350-261-20-1, page 2-29, use of torque wrench adapters
    ("100 lbf·in", 12, 6, "0 °", 66.7, 0.05),         # US Navy aviation structural mechanic manual, figure 3-45 asks for this case: 100 x 12 / 18
    ("70 lbf·in", 12, 2, "0 °", 60, 1e-9),            # US Army TM 9-254, figure 45: 60 on a 12 in wrench with 2 in gives 70
    ("30 lbf·ft", 12, 3, "0 °", 24, 1e-9),            # US military maintenance manual, adapter in line
    ("30 lbf·ft", 12, 6, "0 °", 20, 1e-9),            # the same
    ("20 lbf·ft", 12, 3, "0 °", 16, 1e-9),            # the same
    ("135 lbf·in", 10, 1.5, "0 °", 117.39, 0.005),    # a helicopter maintenance manual, chapter 20, figure 20-1, longer
    ("135 lbf·in", 10, 1.5, "180 °", 158.82, 0.005),  # the same, figure 20-2, shorter: L - A
])
def test_worked_examples(torque, wrench, adapter, angle, printed, half):
    assert exact(torque, wrench, adapter, angle) == pytest.approx(printed, abs=half)


@pytest.mark.parametrize("angle", range(0, 181, 15))
def test_angle_by_the_moment_of_the_pull(angle):
    """Second way: hand, drive and fastener as points in a plane, the pull as a vector square to the wrench, moments as cross products."""
    from math import cos, radians, sin
    wrench, adapter, pull = 42.0, 3.0, 137.0
    fastener = (wrench + adapter * cos(radians(angle)), adapter * sin(radians(angle)))
    at_drive, at_fastener = pull * wrench, pull * (fastener[0] - 0.0)
    assert exact(f"{at_fastener:.9f} lbf·in", wrench, adapter, f"{angle} °") == pytest.approx(at_drive, rel=2e-4)
