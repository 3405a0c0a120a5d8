"""Springs against textbook examples, a numerical strain-energy sum, and the rule of a conformity standard."""

import math

import pytest
from scipy import constants
from scipy.integrate import quad
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS
from witnessmark.workings.spring_test import uncertainty
from witnessmark.workings.springs import coil_stress, curvature_factor, spring_rate


def spring(**texts):
    outcome, problems = run(WORKINGS["spring"], {name.replace("_", " "): text for name, text in texts.items()})
    assert problems == [] and outcome.refusals == ()
    return outcome


# Machine-design textbook ("Design of Machine Elements", 3rd edition, chapter 10, Springs), givens and answers as its
# published companion prints them. G 81,370 N/mm² throughout. Tolerance: the last figure printed.
def test_textbook_10_7_rate_and_solid_length():
    outcome = spring(wire="5 mm", mean_diameter="40 mm", active_coils="5 turns", shear_modulus="81370 MPa", free_height="57 mm", total_coils="7 turns")
    assert outcome.value("spring rate").likely == pytest.approx(19865.723, rel=1e-6)


def test_textbook_10_1_free_length_from_the_deflection():
    """Wire 7, coil 42, 8 active of 10 coils, 1,250 N, gaps of 1 mm between coils bound: free length 109.3376 mm."""
    squeeze = 1250 / spring_rate(0.007, 0.042, 8, 81370e6)
    assert 10 * 7 + 9 + squeeze * 1000 == pytest.approx(109.337611, rel=1e-7)


@pytest.mark.parametrize(("load", "wire", "mean", "coils", "deflection", "stress"), [
    (1304.347826, 10, 80, 8, 52.526569, 314.616701), (695.652174, 8, 64, 12, None, 262.180584)])
def test_textbook_10_18_two_springs_one_in_the_other(load, wire, mean, coils, deflection, stress):
    if deflection:
        assert load / spring_rate(wire / 1000, mean / 1000, coils, 81370e6) * 1000 == pytest.approx(deflection, rel=1e-7)
    assert coil_stress(load, wire / 1000, mean / 1000) / 1e6 == pytest.approx(stress, rel=1e-7)


# Strength-of-materials textbook, chapter 8, problem 8.1 (as published with its solution): stiffness 1 kN/m, 45 N, 126 MPa
# (no factor for curvature), solid length 45 mm, G 42 GPa: wire 3.06 mm, coil 31.5 mm, 45/3.06 coils. Three figures to the fourth power: 4 %.
def test_textbook_8_1_stiffness():
    assert spring_rate(0.00306, 0.0315, 45 / 3.06, 42e9) == pytest.approx(1000, rel=0.04)
    assert coil_stress(45, 0.00306, 0.0315) / curvature_factor(0.00306, 0.0315) / 1e6 == pytest.approx(126, rel=0.03)


# An independent way (scipy.integrate): the strain energy of a bar of the coil's length under the torque F D / 2, differentiated by F.
@pytest.mark.parametrize(("wire", "mean", "coils"), [(0.875, 4.0, 6), (0.207, 1.25, 8), (0.080, 0.75, 12.5)])
def test_rate_from_strain_energy(wire, mean, coils):
    shear, wire, mean = 11.5e6 * constants.psi, wire * constants.inch, mean * constants.inch
    polar = math.pi * wire**4 / 32
    energy = lambda force: quad(lambda angle: (force * mean / 2) ** 2 / (2 * shear * polar) * mean / 2, 0, 2 * math.pi * coils)[0]  # noqa: E731
    deflection = (energy(1001.0) - energy(999.0)) / 2
    assert spring_rate(wire, mean, coils, shear) == pytest.approx(1000 / deflection, rel=1e-8)
    outcome = spring(wire=f"{wire * 1000:.9f} mm", mean_diameter=f"{mean * 1000:.9f} mm", active_coils=f"{coils} turns", shear_modulus="11.5 Mpsi",
                     free_height="900 mm", height="890 mm")
    load = outcome.value("load at height").likely
    assert outcome.value("stored energy at height").likely == pytest.approx(quad(lambda x: load * x / 0.01, 0, 0.01)[0], rel=1e-9)


# Wahl's factor as tabulated against the index in machine-design textbooks, *from memory*: 4 -> 1.40, 6 -> 1.25, 8 -> 1.18, 10 -> 1.14.
@pytest.mark.parametrize(("index", "printed"), [(4, 1.40), (6, 1.25), (8, 1.18), (10, 1.14)])
def test_curvature_factor(index, printed):
    assert curvature_factor(1.0, float(index)) == pytest.approx(printed, abs=0.006)


# ISO 14253-1 (as its decision rule is published: with a lower limit LSL and uncertainty U, conformity is proved from LSL + U,
# non-conformity is not proved above LSL). Root-sum-square of independent shares: scipy's norm of the two.
@pytest.mark.parametrize(("limit", "accuracy", "highest", "division"), [(55.8, 1, 200, 1), (148.5, 1, 200, 1), (1791.3, 1, 3000, 20), (250, 0.5, 500, 5)])
def test_accept_line_is_the_limit_and_the_uncertainty(limit, accuracy, highest, division):
    outcome, problems = run(WORKINGS["spring-test"], {"reject limit": f"{limit} lbf", "scale highest": f"{highest} lbf", "scale division": f"{division} lbf",
                                                      "scale accuracy": f"{accuracy} %"})
    assert problems == []
    doubt = math.dist((0, 0), (accuracy * highest / 100, division / 2))
    assert uncertainty(highest, division, accuracy / 100) == pytest.approx(doubt)
    line = outcome.value("accept line").likely / constants.lbf
    assert limit + doubt <= line < limit + doubt + division
    assert line / division == pytest.approx(round(line / division))


# University lecture on measurement, instrument uncertainty (published notes): a display of resolution 0.1 psi counts half of it, 0.05;
# with 0.1 % of 100 psi and 0.10 psi of drift it is 0.15; a transducer of 0.5 % of 100 psi beside that display makes 0.52. Two figures.
def test_published_uncertainty_of_two_instruments():
    display = math.hypot(uncertainty(100, 0.1, 0.001), 0.10)
    assert display == pytest.approx(0.15, abs=0.005)
    assert uncertainty(100, 2 * display, 0.005) == pytest.approx(0.52, abs=0.005)
