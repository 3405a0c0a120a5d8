"""Straight press fits against published worked examples and a second way of computing them."""

import math
from fractions import Fraction

import pytest

from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS
from witnessmark.workings.thick_cylinder import Pair

STRAIGHT = WORKINGS["straight-interference"]


def press(texts):
    outcome, problems = run(STRAIGHT, texts)
    assert problems == [] and outcome.refusals == ()
    return {value.name: value.likely for value in outcome.values}


def test_handbook_companion_with_radial_interference():
    """A machinery handbook's companion of worked examples, press fits, example 6: radial interference 0.0005 in, contact radius 2 in,
    hub radius 3 in, E 30e6 psi both: 2,083 psi (printed 2,100). Per side, so the wrong reading would give half."""
    texts = {"seat diameter": "4 in", "interference per side": "0.0005 in", "length": "3 in", "hub diameter": "6 in", "friction": "0.12",
             "hub modulus": "30 Mpsi", "hub poisson": "0.3", "shaft modulus": "30 Mpsi", "shaft poisson": "0.3"}
    psi = press(texts)["contact pressure"] / 6894.757
    assert psi == pytest.approx(2083, abs=0.5)
    assert psi == pytest.approx(2100, rel=0.01)
    del texts["interference per side"]
    assert press({**texts, "interference": "0.0005 in"})["contact pressure"] / 6894.757 == pytest.approx(2083 / 2, abs=0.3)


@pytest.mark.parametrize(("size", "hub", "length", "tight", "modulus", "friction", "pressure", "hoop", "force", "torque"), [
    (50, 80, 40, 0.040, 200, 0.15, 48.8, 111, 45.9, 1149), (25, 50, 20, 0.020, 210, 0.10, 63, 105, 9.9, None)])
def test_published_worked_examples_of_one_material(size, hub, length, tight, modulus, friction, pressure, hoop, force, torque):
    """Two worked examples printed with explanations of press fits (solid shaft and hub of one steel): MPa, kN, N·m.
    Tolerance: the last figure printed; 63 and 9.9 are cut from 63.0 and 9.896."""
    found = press({"seat diameter": f"{size} mm", "interference": f"{tight:.3f} mm", "length": f"{length} mm", "hub diameter": f"{hub} mm",
                   "friction": f"{friction}", "hub modulus": f"{modulus} GPa", "hub poisson": "0.3", "shaft modulus": f"{modulus} GPa", "shaft poisson": "0.3"})
    assert found["contact pressure"] / 1e6 == pytest.approx(pressure, abs=0.1)
    assert found["hub stress"] / 1e6 == pytest.approx(hoop, abs=0.6)
    assert found["press force"] / 1e3 == pytest.approx(force, abs=0.1)
    assert torque is None or found["torque held"] == pytest.approx(torque, rel=1e-3)


def test_published_steel_tyre_on_a_wheel_taken_as_rigid():
    """Singer and Pytel, Strength of Materials, problem 208: tyre 10 x 80 mm, 1,500.0 mm inside, on 1,500.5 mm, friction 0.30,
    E 200 GPa, wheel rigid, thin ring: 75.4 kN·m twists it. Lamé for a ring this thin lies 1.1 % under."""
    found = press({"seat diameter": "1500 mm", "interference": "0.5 mm", "length": "80 mm", "hub diameter": "1520 mm", "friction": "0.30",
                   "hub modulus": "200 GPa", "hub poisson": "0.3", "shaft modulus": "900000 GPa", "shaft poisson": "0.3"})
    assert found["torque held"] == pytest.approx(75.4e3, rel=0.012)
    assert found["torque held"] < 75.4e3


def test_exact_fractions_of_the_radial_form():
    """Second way: the textbook's radial form with radii, in exact fractions: delta_r = p R (((ro²+R²)/(ro²-R²) + nu)/E + ...)."""
    r, ro, ri, p = Fraction(15, 8), Fraction(7, 2), Fraction(1, 2), Fraction(10000)
    hub, shaft = Fraction(16100000), Fraction(30000000)
    radial = p * r * (((ro**2 + r**2) / (ro**2 - r**2) + Fraction(349, 1000)) / hub + ((r**2 + ri**2) / (r**2 - ri**2) - Fraction(292, 1000)) / shaft)
    pair = Pair(float(2 * r), float(2 * ro), float(2 * ri), float(hub), 0.349, float(shaft), 0.292)
    assert pair.interference(float(p)) == pytest.approx(float(2 * radial), rel=1e-12)


def test_stress_in_equilibrium_with_the_pressure():
    """Second way: hoop stress over the hub's wall carries the pressure, 2 ∫ s dr = p d, by Simpson's rule on Lamé's field."""
    a, b, p = 0.0375, 0.070, 50e6
    steps = 2000
    def hoop(r):
        return p * a**2 / (b**2 - a**2) * (1 + b**2 / r**2)
    width = (b - a) / steps
    total = sum((1 if i in (0, steps) else 4 if i % 2 else 2) * hoop(a + i * width) for i in range(steps + 1)) * width / 3
    assert 2 * total == pytest.approx(p * 2 * a, rel=1e-9)
    assert Pair(2 * a, 2 * b, 0, 2e11, 0.3, 2e11, 0.3).hub_stress(p) == pytest.approx(hoop(a), rel=1e-12)
    assert math.isclose(Pair(2 * a, 2 * b, 2e-9, 2e11, 0.3, 2e11, 0.3).shaft_stress(p), 2 * p, rel_tol=1e-9)  # a pinhole doubles it
