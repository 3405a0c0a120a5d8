"""Stacks of tolerances and clutch torques against published examples."""

from math import pi

import numpy as np
import pytest
from scipy.integrate import quad
from witnessmark.workings.disc_pack import NEW, RUN_IN, mean_radius
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS


def pack(**texts):
    outcome, problems = run(WORKINGS["disc-pack"], {name.replace("_", " "): text for name, text in texts.items()})
    assert problems == [] and outcome.refusals == ()
    return outcome


def clutch(**texts):
    outcome, problems = run(WORKINGS["clutch-capacity"], {name.replace("_", " "): text for name, text in texts.items()})
    assert problems == [] and outcome.refusals == ()
    return outcome


# A guide for machine operators on tolerance stack-up: three spacers of 1.000 ± 0.005 in make 3.000 ± 0.015 in at worst.
def test_three_spacers():
    outcome = pack(friction_discs="3", friction_disc="1.000 ± 0.005 in")
    assert (outcome.value("height").printed, outcome.value("worst tolerance").printed) == ("3.000 in", "0.015 in")


# A page on root sum of squares: ten parts of ± 0.1 mm, worst ± 1.0 mm, likely ± 0.316 mm.
def test_ten_parts():
    outcome = pack(friction_discs="10", friction_disc="5.0 ± 0.1 mm")
    assert outcome.value("worst tolerance").likely * 1000 == pytest.approx(1.0, abs=1e-9)
    assert outcome.value("likely tolerance").likely * 1000 == pytest.approx(0.316, abs=5e-4)


def test_likely_tolerance_by_throwing_dice():
    """Second way: a hundred thousand packs of parts at random, three standard deviations of a part inside its tolerance. 1 % of chance."""
    chance = np.random.default_rng(24)
    heights = chance.normal(0.170, 0.001, (100_000, 6)).sum(axis=1) + chance.normal(0.125, 0.0005, (100_000, 7)).sum(axis=1)
    outcome = pack(friction_discs="6", friction_disc="0.170 ± 0.003 in", steel_plates="7", steel_plate="0.1250 ± 0.0015 in")
    assert outcome.value("likely tolerance").likely / 0.0254 == pytest.approx(3 * heights.std(), rel=0.01)


# A problem with its answer: seven steel and six friction discs, radii 100 and 65 mm, greatest pressure 0.1 MPa, friction 0.28, even wear: 396 N·m.
# Even wear has its greatest pressure inside: F = 2 pi p ri (ro - ri).
def test_multi_plate_clutch():
    force = 2 * pi * 1e5 * 0.065 * 0.035
    outcome = clutch(faces="12", friction="0.28", force=f"{force:.6f} N", outer_diameter="200 mm", inner_diameter="130 mm", facing="run in")
    assert outcome.value("capacity").printed == "396 N·m"


# A textbook problem, 12 kW at 1,500 rpm, radii 50 and 100 mm, friction 0.35, springs not over 1 kN, even wear: three pairs of faces, 970 N (answer from memory).
def test_number_of_faces():
    torque = 12000 / (2 * pi * 25)
    three = clutch(faces="3", friction="0.35", force="970 N", outer_diameter="200 mm", inner_diameter="100 mm", facing="run in").value("capacity").likely
    two = clutch(faces="2", friction="0.35", force="1000 N", outer_diameter="200 mm", inner_diameter="100 mm", facing="run in").value("capacity").likely
    assert three == pytest.approx(torque, rel=1e-3)
    assert two < torque


@pytest.mark.parametrize(("outer", "inner"), [(6.0, 4.0), (0.1, 0.065), (10.0, 9.9), (5.0, 0.1)])
def test_mean_radius_by_integration(outer, inner):
    """Second way: pressure over the ring, integrated. New: p constant; run in: p as 1/r."""
    for facing, pressure in ((NEW, lambda r: 1.0), (RUN_IN, lambda r: 1 / r)):
        torque = quad(lambda r, p=pressure: p(r) * r * r, inner, outer)[0]
        force = quad(lambda r, p=pressure: p(r) * r, inner, outer)[0]
        assert mean_radius(outer, inner, facing) == pytest.approx(torque / force, rel=1e-9)


# A machine-design textbook, hydraulic multidisc clutch: 6.5 in over 4 in, friction 0.24, greatest pressure 120 psi, six planes of sliding, even wear:
# 1,885 lbf and 7,125 lbf·in (from memory).
def test_hydraulic_multidisc_clutch():
    force = 2 * pi * 120 * 2.0 * (3.25 - 2.0)
    assert force == pytest.approx(1885, abs=0.5)
    outcome = clutch(faces="6", friction="0.24", force=f"{force:.4f} lbf", outer_diameter="6.5 in", inner_diameter="4 in", facing="run in")
    assert outcome.value("capacity").likely / 0.112984829 == pytest.approx(7125, abs=1)
