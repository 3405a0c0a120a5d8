"""Run-out rules and tables of published manuals, and a turning part followed by the dial."""

import math

import pytest
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS
from witnessmark.workings.run_out import shaft_and_part


def face(**texts):
    outcome, problems = run(WORKINGS["face-run-out"], {name.replace("_", " "): text for name, text in texts.items()})
    assert problems == [] and outcome.refusals == ()
    return outcome


# Generator manual (2012), table 1, maximum allowable run-out of engine housings by SAE number, TIR in thousandths for the inside
# diameter; its flywheel rule is 0.0005 in per inch of radius. Every row is that rule, cut down to a thousandth: exact.
@pytest.mark.parametrize(("across", "printed"), [(10.500, 2), (12.375, 3), (14.250, 3), (16.125, 4), (17.625, 4), (20.125, 5), (23.000, 5), (25.500, 6), (31.000, 7)])
def test_housing_table(across, printed):
    outcome = face(limit="0.0005 in", on_each="1 in", radius=f"{across / 2:.4f} in", division="0.001 in")
    assert outcome.value("most run-out").printed == f"0.{printed:03d} in"


# US Army TM 9-2815-202-34, paragraph 4-22: 0.001 in per inch of radius; with a radius of 12 in, 0.012 in.
def test_flywheel_of_the_army_manual():
    assert face(limit="0.001 in", on_each="1 in", radius="12 in", division="0.001 in").value("most run-out").printed == "0.012 in"


# Refrigeration-machine manual, alignment of couplings: face 5 in across, 0.012 in open, bolts 30 in apart: shim 0.072 in.
def test_tilt_of_a_coupling_face():
    tilt = face(limit="0.001 in", on_each="1 in", radius="2.5 in", reading="0.012 in").value("tilt").likely
    assert 30 * math.tan(tilt) == pytest.approx(0.072, rel=1e-9)


# Overhaul manual of a small diesel (rev. 1/97, page 46): deflection of the crankshaft is half the largest difference of the dial,
# at most 0.0008 in, so 0.0016 in on the dial; heat-treater's glossary: the eccentricity of a true cylinder is half the TIR.
def test_half_the_dial():
    outcome, _ = run(WORKINGS["run-out"], {"reading": "0.0016 in"})
    assert outcome.value("eccentricity").printed == "0.00080 in"


# The same refrigeration-machine manual: opening on the same side before and after half a turn, add and halve; other side,
# subtract the smaller and halve; unchanged on the same side, all of it is the shafts'.
@pytest.mark.parametrize(("first", "second", "turned", "shaft"), [(0.012, 0.008, 0.0, 0.010), (0.012, 0.004, math.pi, 0.004), (0.012, 0.012, 0.0, 0.012)])
def test_two_openings_half_a_turn_apart(first, second, turned, shaft):
    assert shaft_and_part(first, 0.0, second, turned)[0] == pytest.approx(shaft, abs=1e-12)


# An independent way, by brute force: a true disc 50 mm in radius, its centre 0.2 mm off the axis, turned in steps under a fixed dial
# that stands in line with the axis. Tolerance: a disc shows the second order of 0.2/50.
def test_a_turning_disc_moves_the_dial_by_twice_its_eccentricity():
    off, radius = 0.2, 50.0
    shown = [off * math.cos(turn) + math.sqrt(radius**2 - (off * math.sin(turn)) ** 2) for turn in (n * math.pi / 1800 for n in range(3600))]
    outcome, _ = run(WORKINGS["run-out"], {"reading": f"{max(shown) - min(shown):.6f} mm"})
    assert outcome.value("eccentricity").likely * 1000 == pytest.approx(off, rel=1e-4)
