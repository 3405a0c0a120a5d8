"""Shims and gaskets against published selections."""

import pytest
from witnessmark.workings.end_play import in_place
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS


# A transaxle workshop manual, shim selection specifications, mm: measuring shim, end float with it, setting, shim required.
# Minus is play that is left, plus is preload; all its shims go behind a bearing ring.
@pytest.mark.parametrize(("shaft", "measuring", "float_", "setting", "wanted", "required"), [
    ("input", "1.00 mm", "0.32 mm", "end play", "0.05 mm", 1.27), ("output", "1.00 mm", "0.33 mm", "preload", "0.13 mm", 1.46), ("differential", "1.10 mm", "0.36 mm", "preload", "0.33 mm", 1.79)])
def test_shim_selection_of_a_transaxle(shaft, measuring, float_, setting, wanted, required):
    outcome, problems = run(WORKINGS["bearing-shim"], {"setting": setting, "wanted": wanted, "more shim": "tightens", "shim now": measuring, "play read": float_})
    assert problems == []
    assert outcome.value("shim").likely * 1000 == pytest.approx(required, abs=1e-9)


# An all-terrain vehicle's service manual, thrust shim B of the ring gear: 45.53 + 1.05 - (34.95 + 11.00) = 0.63 mm, a gap filled without play.
def test_a_gap_filled_without_play():
    outcome, problems = run(WORKINGS["bearing-shim"], {"setting": "end play", "wanted": "0 mm", "more shim": "tightens", "gap": f"{45.53 + 1.05 - (34.95 + 11.00):.2f} mm"})
    assert problems == [] and outcome.value("shim").printed == "0.630 mm"


# A car maker's shop manual, thrust shim of a gearbox: total clearance 1.93 mm, standard 0.11 to 0.17 mm, middle 0.14: 1.79 mm; of the table's shims the
# nearest is 1.80 mm. In inches the same case: 0.0759 - 0.0056 prints 0.0704 (each figure converted by itself: 1e-4 in).
def test_thrust_shim_of_a_gearbox():
    outcome, problems = run(WORKINGS["bearing-shim"], {"setting": "end play", "wanted": "0.11 to 0.17 mm", "more shim": "tightens", "gap": "1.93 mm"})
    assert problems == []
    assert outcome.value("shim").printed == "1.760 to 1.820 mm"
    chosen, _ = run(WORKINGS["shim-stack"], {"thickness": "1.76 to 1.82 mm", "stock": "1.70 mm, 1.75 mm, 1.80 mm, 1.85 mm", "most pieces": "1"})
    assert chosen.value("stack").printed == "1.80 mm"
    inches, _ = run(WORKINGS["bearing-shim"], {"setting": "end play", "wanted": "0.0056 in", "more shim": "tightens", "gap": "0.0759 in"})
    assert inches.value("shim").likely / 0.0254 == pytest.approx(0.0704, abs=1.01e-4)


@pytest.mark.parametrize(("old", "new", "squeezes"), [(0.006, 0.015, (0.10, 0.20)), (0.055, 0.062, (0.05, 0.15))])
def test_gaskets_by_every_corner_of_the_band(old, new, squeezes):
    """Second way: all four ends of the two squeezes tried one by one."""
    outcome, _ = run(WORKINGS["gasket-end-play"], {"old gasket": f"{old} in", "new gasket": f"{new} in", "old squeeze": f"{squeezes[0] * 100:g} to {squeezes[1] * 100:g} %",
                                                   "new squeeze": f"{squeezes[0] * 100:g} to {squeezes[1] * 100:g} %"})
    corners = [new * (1 - a) - old * (1 - b) for a in squeezes for b in squeezes]
    change = outcome.value("change of end play")
    assert (change.low / 0.0254, change.high / 0.0254) == pytest.approx((min(corners), max(corners)))


def test_no_squeeze_leaves_the_gasket_as_it_is():
    from witnessmark.core.working import Given
    assert in_place(Given("", 1.0, 1.5, 2.0), None) == (1.0, 1.5, 2.0)
