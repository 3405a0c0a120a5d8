"""Shim stacks against a general solver and published selections."""

import numpy as np
import pytest
from scipy.optimize import Bounds, LinearConstraint, milp
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS
from witnessmark.workings.shim_search import stacks


@pytest.mark.parametrize("stock", [(3, 5, 12, 25), (6, 9, 14, 33), (4, 7, 15, 31)])
def test_fewest_pieces_by_integer_programming(stock):
    """Second way: scipy's mixed-integer solver asked for the fewest pieces with exactly this sum."""
    made = stacks(stock, 6, 60)
    for target in range(1, 61):
        found = milp(np.ones(len(stock)), integrality=np.ones(len(stock)), bounds=Bounds(0, 6),
                     constraints=[LinearConstraint(np.array([stock]), target, target), LinearConstraint(np.ones((1, len(stock))), 0, 6)])
        assert (target in made) == found.success
        if found.success:
            assert len(made[target]) == round(found.fun)


def stack(thickness, stock):
    outcome, problems = run(WORKINGS["shim-stack"], {"thickness": thickness, "stock": stock})
    assert problems == []
    return outcome


# A transaxle workshop manual, shim selection table: shims needed of 1.27, 1.46 and 1.79 mm from packets in steps of 0.01, 0.02 and 0.05 mm.
# The first can be had, the others cannot and the next step stands on either side.
@pytest.mark.parametrize(("needed", "first", "step", "nearest"), [
    ("1.27 mm", 115, 1, ("1.27 mm",)), ("1.46 mm", 131, 2, ("1.45 mm", "1.47 mm")), ("1.79 mm", 140, 5, ("1.75 mm", "1.80 mm"))])
def test_published_selection(needed, first, step, nearest):
    stock = ", ".join(f"{(first + step * n) / 100:.2f} mm" for n in range(max(0, (int(float(needed[:4]) * 100) - first) // step - 4), (int(float(needed[:4]) * 100) - first) // step + 5))
    outcome = stack(needed, stock)
    found = (outcome.value("stack thickness").printed,) if outcome.has("stack") else (outcome.value("nearest thinner").printed, outcome.value("nearest thicker").printed)
    assert found == nearest


# A formula car's manual, differential centring: 5.05 mm in all, made of two shims of like thickness (it names 2.50 mm for one).
def test_two_shims_of_like_thickness():
    outcome = stack("5.05 mm", "2.40 mm, 2.45 mm, 2.50 mm, 2.55 mm, 2.60 mm")
    assert outcome.value("pieces").printed == "2"
    assert outcome.value("stack").printed in ("2.55 + 2.50 mm", "2.60 + 2.45 mm")


# US Army TM 9-2520-254-34, gasket pack under a diaphragm: for 0.028 in and over, one of 0.012 and one of 0.016 in; single ones below that.
@pytest.mark.parametrize(("window", "printed"), [("0.010 to 0.015 in", "0.012 in"), ("0.016 to 0.0209 in", "0.016 in"), ("0.028 in", "0.016 + 0.012 in")])
def test_gasket_pack_of_a_transmission(window, printed):
    assert stack(window, "0.012 in, 0.016 in, 0.021 in").value("stack").printed == printed


# An all-terrain vehicle's service manual, bevel drive gear: shims of 0.25, 0.30 and 0.35 mm and the combined shims made of them.
@pytest.mark.parametrize(("thickness", "pieces"), [("0.50 mm", 2), ("0.55 mm", 2), ("0.60 mm", 2), ("0.65 mm", 2), ("0.70 mm", 2), ("0.75 mm", 3), ("0.80 mm", 3), ("0.85 mm", 3)])
def test_combined_shims_of_a_bevel_gear(thickness, pieces):
    outcome = stack(thickness, "0.25 mm, 0.30 mm, 0.35 mm")
    assert outcome.value("pieces").likely == pieces and outcome.value("stack thickness").printed == thickness
