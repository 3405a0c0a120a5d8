"""Shrink fits against published problems and tables of expansion."""

import pytest
from scipy.constants import convert_temperature

from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS
from witnessmark.workings.tables.steel_contraction import kelvin, steel_growth

SHRINK = WORKINGS["shrink-fit"]


def shrink(texts):
    outcome, problems = run(SHRINK, texts)
    assert problems == [] and outcome.refusals == ()
    return {value.name: value.likely for value in outcome.values}


def test_published_tyre_of_a_driving_wheel():
    """Singer and Pytel, Strength of Materials, problem 267: a tyre 12 x 90 mm just fits a wheel of 2 m at 80 °C, wheel at 25 °C,
    11.7 µm/(m·°C), 200 GPa, wheel rigid: the tyre is pulled with 138,996 N, so 128.7 MPa, 1.5444 MPa on the wheel."""
    tight = 11.7e-6 * 55 * 2000
    found = shrink({"way": "heat the outer", "diameter": "2000 mm", "interference": f"{tight:.4f} mm", "clearance": "0.1 mm",
                    "expansion": "11.7 ppm/°C", "room temperature": "25 °C", "never pass": "300 °C", "modulus": "200 GPa"})
    assert found["grips at"] == pytest.approx(convert_temperature(80, "C", "K"), abs=1e-6)
    assert found["ring stress"] * 12e-3 * 90e-3 == pytest.approx(138996, rel=1e-4)
    assert 2 * found["ring stress"] * 12 / 2000 == pytest.approx(1.5444e6, rel=1e-4)


def test_against_the_formula_of_an_assembly_table():
    """Published form for shrink fits, dt = delta / (alpha d) (engineering tables, assembly of shrink fits), by scipy's scales."""
    found = shrink({"way": "heat the outer", "diameter": "12 in", "interference": "0.020 in", "clearance": "0.010 in", "expansion": "6.5 ppm/°F",
                    "room temperature": "70 °F", "never pass": "600 °F"})
    assert found["bring it to"] == pytest.approx(convert_temperature(70 + 0.030 / (6.5e-6 * 12), "F", "K"), abs=1e-6)


@pytest.mark.parametrize(("fahrenheit", "mean"), [(100, 6.13), (150, 6.25), (200, 6.38)])
def test_steel_table_against_mean_coefficients(fahrenheit, mean):
    """Carbon steel, mean coefficient between 70 °F and the temperature listed, millionths per °F (a guide to pipe expansion, table 1).
    Another table than ours, which prints 0.01 in in 100 feet: the two differ by 4 % at 100 °F and 0.6 % at 200 °F."""
    growth = steel_growth(kelvin(fahrenheit))
    assert growth / (fahrenheit - 70) * 1e6 == pytest.approx(mean, rel=0.045)


@pytest.mark.parametrize(("to", "growth", "source"), [
    (-50, -6.2e-6 * 120, "ASME B31.3 table C-1, group 1 carbon steel: 6.2 from 70 °F to -50 °F"),
    (-100, -(6.404 + 5.28) / 2 * 170e-6, "a steel's 6.47 at 80 °F and 5.28 at -100 °F, straight between")])
def test_steel_table_against_other_tables_of_the_cold(to, growth, source):
    """Tables of different years and steels differ by 4 to 6 %; all lie under the 6.5 of warm steel."""
    assert steel_growth(kelvin(to)) == pytest.approx(growth, rel=0.07), source
    assert abs(steel_growth(kelvin(to))) < 6.5e-6 * (70 - to)


def test_cold_against_the_table_read_backwards():
    """Second way: numpy's interpolation of the printed rows, read from shrinkage to temperature."""
    import numpy as np
    rows = [(-325, -2.37), (-300, -2.24), (-250, -1.98), (-200, -1.71), (-150, -1.45), (-100, -1.15), (-50, -0.84), (0, -0.49), (50, -0.14), (70, 0.0)]
    found = shrink({"way": "cool the inner", "diameter": "3 in", "interference": "0.002 in", "clearance": "0.0015 in",
                    "room temperature": "70 °F", "never pass": "-320 °F"})
    at = np.interp(-0.0035 / 3 * 1200, [row[1] for row in rows], [row[0] for row in rows])
    assert found["bring it to"] == pytest.approx(convert_temperature(at, "F", "K"), abs=1e-6)
