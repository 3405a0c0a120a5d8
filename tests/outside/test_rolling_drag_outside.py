"""Cord pulls against the wheel bearing adjustment of a public manual."""

import pytest
from scipy import constants
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS


# US Army TM 5-3805-257-14&P, wheel hub of 8-5/16 in radius: rotating torque 15 to 20 lbf·ft on new bearings or 21 to 28 lbf on the cord,
# 6 to 12 lbf·ft on used ones or 9 to 17 lbf. Whole pounds, some cut off and some rounded: 1 lbf.
@pytest.mark.parametrize(("torque", "printed"), [(15, 21), (20, 28), (6, 9), (12, 17)])
def test_pull_on_a_wheel_hub(torque, printed):
    outcome, problems = run(WORKINGS["rolling-drag"], {"drag": f"{torque} lbf·ft", "drum radius": "8-5/16 in"})
    assert problems == []
    assert outcome.value("exact pull").likely / constants.pound_force == pytest.approx(printed, abs=1.0)


@pytest.mark.parametrize(("drag", "radius"), [(28, 2.25), (14, 1.25), (10, 1.75)])
def test_by_work_done_in_a_turn(drag, radius):
    """Second way: over one turn the cord runs off 2 pi r and the drag takes 2 pi T."""
    outcome, _ = run(WORKINGS["rolling-drag"], {"drag": f"{drag} lbf·in", "drum radius": f"{radius} in"})
    work = drag * constants.pound_force * constants.inch * 2 * constants.pi
    assert outcome.value("exact pull").likely * 2 * constants.pi * radius * constants.inch == pytest.approx(work, rel=1e-12)
