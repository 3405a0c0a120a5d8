"""Measures of volume against a statute's schedule, NIST's handbook, and scipy's constants."""

import pytest
from scipy import constants
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS


def fill(text):
    outcome, problems = run(WORKINGS["volumes"], {"volume": text})
    assert problems == [] and outcome.refusals == ()
    return outcome


# Weights and measures ordinance, schedule of imperial and US units in metric ones (six figures): litres.
@pytest.mark.parametrize(("text", "litres"), [("1 imperial gallon", 4.54609), ("1 imperial quart", 1.13652), ("1 imperial pint", 0.568261), ("1 imperial fl oz", 0.0284131),
                                              ("1 US gallon", 3.78541), ("1 US quart", 0.946353), ("1 US pint", 0.473176), ("1 US fl oz", 0.0295735)])
def test_schedule(text, litres):
    assert fill(text).value("litres").likely * 1000 == pytest.approx(litres, rel=5e-6)


# The same schedule: an imperial gallon is 1.200 95 US gallons, a US one 0.832 674 imperial (so 16.7 % short, 20.1 % over).
# NIST Handbook 44, Appendix C: US gallon 231 in³ exactly; imperial gallon 277.42 in³.
def test_wrong_jug():
    assert fill("1 US gallon").value("by the wrong jug").likely / fill("1 US gallon").value("litres").likely == pytest.approx(1.20095, rel=5e-6)
    assert fill("1 imperial gallon").value("by the wrong jug").likely / fill("1 imperial gallon").value("litres").likely == pytest.approx(0.832674, rel=1e-6)
    assert fill("1 US gallon").value("litres").likely == pytest.approx(231 * constants.inch**3, rel=1e-12)
    assert fill("1 imperial gallon").value("litres").likely / constants.inch**3 == pytest.approx(277.42, abs=0.005)


# scipy.constants carries both gallons and both fluid ounces.
def test_scipy():
    assert fill("1 imperial gallon").value("litres").likely == pytest.approx(constants.gallon_imp, rel=1e-12)
    assert fill("1 US gallon").value("litres").likely == pytest.approx(constants.gallon_US, rel=1e-12)
    assert fill("1 imperial fl oz").value("litres").likely == pytest.approx(constants.fluid_ounce_imp, rel=1e-12)
    assert fill("1 US fl oz").value("litres").likely == pytest.approx(constants.fluid_ounce_US, rel=1e-12)
