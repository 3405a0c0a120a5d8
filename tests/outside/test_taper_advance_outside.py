"""Taper advance against a published drive-up table, published designs of a cone connection, and a second way of computing it."""

import math

import numpy as np
import pytest
from scipy.integrate import solve_bvp

from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS
from witnessmark.workings.taper_fit import Taper
from witnessmark.workings.thick_cylinder import Pair

STEEL = (206e9, 0.3)

# Drive-up of spherical roller bearings with a tapered bore, as a maker's mounting card prints it: bore over / up to (mm),
# greatest reduction of radial clearance, greatest axial drive-up on 1:12 and on 1:30 (mm).
DRIVE_UP = [(80, 100, 0.050, 0.79, 2.00), (100, 120, 0.060, 0.95, 2.35), (120, 140, 0.075, 1.10, 2.80), (140, 160, 0.085, 1.30, 3.20),
            (180, 200, 0.105, 1.60, 4.00), (225, 250, 0.130, 1.95, 4.85), (280, 315, 0.165, 2.40, 6.00)]


@pytest.mark.parametrize(("over", "upto", "reduction", "on_12", "on_30"), DRIVE_UP)
def test_published_drive_up_on_two_tapers(over, upto, reduction, on_12, on_30):
    """For one pressure the advance goes as one over the taper: the card's two columns, rounded to 0.05 mm, differ by 2.4 to 2.6."""
    pair = Pair((over + upto) / 2000, upto * 1.3 / 1000, 0.0, *STEEL, *STEEL)
    pressure = pair.pressure(reduction / 1000)
    advances = []
    for taper in (1 / 12, 1 / 30):
        force = pressure * math.pi * pair.diameter * 0.08 * (0.12 + taper / 2)
        advances.append(Taper(pair, taper, 0.08).fit(force, 0.12).advance)
    assert advances[1] / advances[0] == pytest.approx(2.5, rel=1e-12)
    assert on_30 / on_12 == pytest.approx(advances[1] / advances[0], rel=0.04)


@pytest.mark.parametrize(("over", "upto", "reduction", "on_12", "on_30"), DRIVE_UP)
def test_published_drive_up_from_the_reduction_of_clearance(over, upto, reduction, on_12, on_30):
    """The raceway (taken at 1.3 times the bore, solid shaft) grows by less than the interference, so the advance lies over 12
    and under 20 times the reduction; ours for the same growth comes within a fifth of the card, which adds for smoothing."""
    diameter, outside = (over + upto) / 2000, 1.3 * (over + upto) / 2000
    pair = Pair(diameter, outside, 0.0, *STEEL, *STEEL)
    growth = reduction / 1000                                   # of the outside: u = p d² D 2 / (E (D² - d²)) on diameter
    pressure = growth * STEEL[0] * (outside**2 - diameter**2) / (2 * diameter**2 * outside)
    advance = pair.interference(pressure) * 12 * 1000
    assert on_12 == pytest.approx(advance, rel=0.2)
    assert 12 < on_12 / reduction < 20


CONES = [  # 1 in, mean and hub diameter, length, area; axial friction; pressure, normal force, give of shaft and hub, interference
    (50, 51.5, 94, 40, 6472, 112.5, 728.1, 3.333, 10.278, 79), (10, 57.3, 120, 45, 8111, 26.9, 218.178, 3.333, 9.011, 19)]


@pytest.mark.parametrize(("cone", "diameter", "outside", "length", "area", "pressure", "normal", "shaft", "hub", "interference"), CONES)
def test_published_designs_of_a_cone_connection(cone, diameter, outside, length, area, pressure, normal, shaft, hub, interference):
    """Two designs of a cone connection after DIN 7190 as a calculation report prints them (the first is the worked example of
    Niemann, Winter, Höhn: Maschinenelemente I, 4th edition): mm, mm², N/mm², kN, µm²/N, µm; E 210 GPa and 0.3 throughout.
    Tolerance: half the last figure printed; the report works on with d / D and the mean diameter as it prints them (0.1 %)."""
    pair = Pair(diameter / 1000, outside / 1000, 0.0, 210e9, 0.3, 210e9, 0.3)
    assert (pair.shaft_ratio - 0.3) / 210e9 * 1e12 == pytest.approx(shaft, abs=0.0005)
    assert (pair.hub_ratio + 0.3) / 210e9 * 1e12 == pytest.approx(hub, rel=1e-3)
    force = pressure * 1e6 * math.pi * pair.diameter * length / 1000 * (0.110 + 1 / (2 * cone))
    fit = Taper(pair, 1 / cone, length / 1000).fit(force, 0.110)
    assert fit.pressure * area * 1e-6 == pytest.approx(normal * 1000, rel=2e-3)
    assert fit.interference * 1e6 == pytest.approx(interference, abs=0.5)
    assert fit.advance == pytest.approx(cone * fit.interference, rel=1e-12)


def test_against_a_boundary_value_solution_of_both_rings():
    """Second way: u'' + u'/r - u/r² = 0 solved by collocation in hub and hollow shaft with the pressure as load; the gap
    between the two radial displacements is half the interference. Collocation to 1e-8: agreement to 1e-6."""
    d, outside, bore, pressure = 0.0762, 0.13335, 0.030, 44e6
    pair = Pair(d, outside, bore, 100e9, 0.211, 206e9, 0.292)

    def displacement(inner, outer, p_inner, p_outer, modulus, poisson, at):
        def stress(u, slope, r):
            return modulus / (1 - poisson**2) * (slope + poisson * u / r)
        solved = solve_bvp(lambda r, y: np.vstack((y[1], y[0] / r**2 - y[1] / r)),
                           lambda a, b: np.array([stress(a[0], a[1], inner) + p_inner, stress(b[0], b[1], outer) + p_outer]) / modulus,
                           np.linspace(inner, outer, 60), np.zeros((2, 60)), tol=1e-10, max_nodes=100000)
        assert solved.success
        return solved.sol(at)[0]

    gap = displacement(d / 2, outside / 2, pressure, 0, 100e9, 0.211, d / 2) - displacement(bore / 2, d / 2, 0, pressure, 206e9, 0.292, d / 2)
    assert pair.interference(pressure) == pytest.approx(2 * gap, rel=1e-6)


def test_the_declared_example_against_plain_arithmetic():
    """Fractions of the textbook formulas with no code shared: 40,320 lbf on 1:12."""
    outcome, _ = run(WORKINGS["taper-advance"], WORKINGS["taper-advance"].example.inputs)
    p = 40320 / (math.pi * 3 * 3.5 * (0.15 + 1 / 24))
    delta = p * 3 / 30e6 * ((5.25**2 + 9) / (5.25**2 - 9) + 1)
    assert outcome.value("advance").likely / 0.0254 == pytest.approx(12 * delta, rel=1e-9)
