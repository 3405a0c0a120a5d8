"""Order-sheet sizes against overhaul manuals and bearing guides; a bush against a textbook and the equation solved numerically."""

import numpy as np
import pytest
from scipy import constants
from scipy.integrate import solve_bvp
from witnessmark.workings.bush import closing_in
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS
from witnessmark.workings.thick_cylinder import Pair


def work(name, texts):
    outcome, problems = run(WORKINGS[name], texts)
    assert problems == [] and outcome.refusals == ()
    return outcome


# US Army TM 10-3930-638-24P, page 4-29, rod journals: new 2.2480 to 2.2490 in; worn more than 0.002 in, grind 0.010, 0.020 or 0.030
# undersize to 2.2380-2.2390, 2.2280-2.2290, 2.2180-2.2190. The middle of the new size must come to the middle of each.
@pytest.mark.parametrize(("reading", "low", "high"), [("2.2455 in", 2.2380, 2.2390), ("2.2380 in", 2.2280, 2.2290), ("2.2280 in", 2.2180, 2.2190)])
def test_rod_journals_of_the_army_manual(reading, low, high):
    outcome = work("undersize", {"standard size": "2.2485 in", "readings": reading, "clean-up": "0.0005 in", "undersizes": "0.010 in, 0.020 in, 0.030 in"})
    assert low <= outcome.value("grind to").likely / constants.inch <= high
    assert outcome.value("grind to").likely / constants.inch == pytest.approx((low + high) / 2, abs=1e-9)


# Diesel manual (1998), main journals, new 3.1228-3.1236 in: 0.010 undersize 3.1128-3.1136, 0.020 3.1028-3.1036, 0.030 3.0928-3.0936.
@pytest.mark.parametrize(("reading", "low", "high"), [("3.1210 in", 3.1128, 3.1136), ("3.1115 in", 3.1028, 3.1036), ("3.1020 in", 3.0928, 3.0936)])
def test_main_journals_of_a_diesel(reading, low, high):
    outcome = work("undersize", {"standard size": "3.1232 in", "readings": reading, "clean-up": "0.001 in", "undersizes": "0.010 in, 0.020 in, 0.030 in"})
    assert low <= outcome.value("grind to").likely / constants.inch <= high


# Motor-cycle instruction book, overhead-camshaft single: bore 2.913 in, rebored when worn over 0.008 in, oversizes 0.020 and 0.040 in and
# no others. Engine manual (1997): the largest bore decides for all, steps 0.25, 0.50, 0.75 and 1.00 mm.
def test_oversizes():
    book = {"standard size": "2.913 in", "clean-up": "0.004 in", "oversizes": "0.020 in, 0.040 in", "wear limit": "0.008 in"}
    worn = work("oversize", {**book, "readings": "2.922 in"})
    assert worn.value("bore to").printed == "2.933 in" and not worn.warnings
    assert work("oversize", {**book, "readings": "2.9205 in"}).warnings
    assert work("oversize", {**book, "readings": "2.930 in"}).value("bore to").printed == "2.953 in"
    several = work("oversize", {"standard size": "86.50 mm", "clean-up": "0.05 mm", "oversizes": "0.25 mm, 0.50 mm, 0.75 mm, 1.00 mm", "readings": "86.58 mm, 86.81 mm, 86.60 mm"})
    assert several.value("oversize").printed == "0.50 mm"


# Bearing maker's guide: 0.00075 to 0.0010 in for each inch of shaft; a 2.000 in shaft wants 0.0015 to 0.0020. Another maker's rule for
# plain bushes: 0.0015 in for each inch of bore. Motor-repair article, four rules in use: among them 0.002 in for each inch.
def test_running_clearance():
    guide = work("running-clearance", {"clearance": "0.00075 to 0.0010 in", "on each": "1 in", "diameter": "2.000 in"})
    assert guide.value("running clearance").printed == "0.0015 to 0.0020 in"
    rules = work("running-clearance", {"clearance": "0.0015 to 0.002 in", "on each": "1 in", "diameter": "4 in"})
    assert (rules.value("running clearance").low, rules.value("running clearance").high) == pytest.approx((4 * 0.0015 * constants.inch, 4 * 0.002 * constants.inch))


# Machine-design textbook (3rd edition), chapter 22, example 22.6, as its companion prints it: tubes 20, 40 and 60 mm, E 207,000 N/mm²,
# 100 N/mm² at most in the jacket: it is bored 39.968289 mm, so 0.031711 mm tight. The stress that follows: 2.6 p = 100.
def test_textbook_jacket():
    outcome = work("bush-closing-in", {"bush outside": "40 mm", "bush bore": "20 mm", "housing outside": "60 mm", "interference": "0.031711 mm",
                                       "bush modulus": "207 GPa", "bush poisson": "0.30", "housing modulus": "207 GPa", "housing poisson": "0.30"})
    assert outcome.value("contact pressure").likely * (60**2 + 40**2) / (60**2 - 40**2) == pytest.approx(100e6, rel=2e-5)


# Handbook companion, fits, example 6: radial 0.0005 in (0.001 in on the diameter), shaft 2 in radius, hub 3 in, E 30e6: 2,083 psi, printed
# 2,100. Its shaft is solid: a bore of a hundredth of an inch stands for none.
def test_handbook_hub():
    outcome = work("bush-closing-in", {"bush outside": "4 in", "bush bore": "0.01 in", "housing outside": "6 in", "interference": "0.001 in",
                                       "bush modulus": "30 Mpsi", "bush poisson": "0.3", "housing modulus": "30 Mpsi", "housing poisson": "0.3"})
    assert outcome.value("contact pressure").likely / constants.psi == pytest.approx(2083, rel=1e-3)


BUSHES = [(2.875, 2.262, 16.1e6, 0.349), (1.5, 1.25, 16.1e6, 0.349), (40.0, 20.0, 30e6, 0.29)]


# Encyclopaedia Britannica, 11th edition, volume 9, Elasticity (tube under pressure): extension all round (1 - s)/E (p1 r1² - p0 r0²) / (r0² - r1²)
# and hoop (1 + s)/E (p1 - p0) r0² r1² / (r0² - r1²) / r²; at the bore, times its diameter, with no pressure inside.
@pytest.mark.parametrize(("outside", "bore", "modulus", "poisson"), BUSHES)
def test_encyclopaedia_tube(outside, bore, modulus, poisson):
    pressure, r0, r1 = 2546.0, outside / 2, bore / 2
    hoop = (1 - poisson) / modulus * -pressure * r0**2 / (r0**2 - r1**2) - (1 + poisson) / modulus * pressure * r0**2 * r1**2 / (r0**2 - r1**2) / r1**2
    pair = Pair(outside, 10 * outside, bore, modulus, poisson, modulus, poisson)
    assert closing_in(pair, pressure) == pytest.approx(-hoop * bore, rel=1e-12)


# An independent way: the equation of a disc, u'' + u'/r - u/r² = 0, solved numerically (scipy) with no stress at the bore and the pressure outside.
@pytest.mark.parametrize(("outside", "bore", "modulus", "poisson"), BUSHES)
def test_disc_solved_numerically(outside, bore, modulus, poisson):
    pressure, r0, r1 = 2546.0, outside / 2, bore / 2

    def radial_stress(u, slope, r):
        return modulus / (1 - poisson**2) * (slope + poisson * u / r)

    def ends(at_bore, at_rim):
        return np.array([radial_stress(*at_bore, r1) / modulus * 1e6, (radial_stress(*at_rim, r0) + pressure) / modulus * 1e6])

    radii = np.linspace(r1, r0, 200)
    solved = solve_bvp(lambda r, y: np.vstack((y[1], y[0] / r**2 - y[1] / r)), ends, radii, np.zeros((2, 200)), tol=1e-9)
    assert solved.success
    pair = Pair(outside, 10 * outside, bore, modulus, poisson, modulus, poisson)
    assert closing_in(pair, pressure) == pytest.approx(-2 * solved.sol(r1)[0], rel=1e-6)
