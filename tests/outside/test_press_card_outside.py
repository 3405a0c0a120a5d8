"""Press cards against figures published by others, and against constants that are not ours."""

import math

import pytest
from scipy import constants
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS
from witnessmark.workings.tables.gauge_ranges import standard_gauges

PSI_GAUGE = {"full scale": "10,000 psi", "division": "100 psi", "accuracy": "1.5 %", "rated pressure": "10,000 psi"}


def card(**texts):
    outcome, problems = run(WORKINGS["press-card"], {name.replace("_", " "): text for name, text in texts.items()})
    assert problems == [] and outcome.refusals == ()
    return outcome


# DOE-HDBK-1018/2-93, Mechanical Science, module 5, hydraulic force: 1,500 lbf/in² on 2 in² gives 3,000 lbf.
# US Navy hydraulics training manual (public domain): a 2.56 in bore has 5.147 in² and gives 51,472 lbf at 10,000 psi.
@pytest.mark.parametrize(("ram", "lbf", "psi"), [({"area": "2 in2"}, 3000, 1500), ({"area": "5.147 in2"}, 51472, 10000), ({"bore": "2.56 in"}, 51472, 10000)])
def test_force_is_pressure_times_area(ram, lbf, psi):
    gauge = {**PSI_GAUGE, "full scale": "20,000 psi", "rated pressure": "15,000 psi"}
    outcome = card(**ram, **gauge, target=f"{lbf} lbf", ceiling=f"{lbf * 2 if lbf < 50000 else 60000} lbf")
    assert outcome.value("exact reading").likely / constants.psi == pytest.approx(psi, rel=2e-4)


# JCGM 100:2008 (GUM), 5.1.2: independent contributions add as squares. 3 and 4 give 5.
def test_uncertainty_adds_as_squares():
    outcome = card(area="10 in2", full_scale="1000 bar", division="8 bar", accuracy="0.3 %", rated_pressure="1000 bar", ceiling="300 kN")
    assert outcome.value("uncertainty").likely / constants.bar == pytest.approx(math.hypot(3, 4), rel=1e-12)


# scipy.constants (CODATA): pound-force, psi, bar, inch; the three tons by their definition.
@pytest.mark.parametrize(("typed", "newtons"), [("18 long ton", 18 * 2240 * constants.lbf), ("18 short ton", 18 * 2000 * constants.lbf),
                                               ("18 tonne", 18 * 1000 * constants.kgf), ("18 kN", 18e3)])
@pytest.mark.parametrize("unit", ["psi", "bar"])
def test_exact_reading_in_every_unit(typed, newtons, unit):
    full = {"psi": "10,000 psi", "bar": "700 bar"}[unit]
    outcome = card(area="10.97 in2", full_scale=full, division=f"5 {unit}", accuracy="1 %", rated_pressure="9,100 psi", target=typed, ceiling=typed.replace("18", "24"))
    pascals = newtons / (10.97 * constants.inch**2)
    assert outcome.value("exact reading").likely == pytest.approx(pascals, rel=1e-12)
    step = 5 * {"psi": constants.psi, "bar": constants.bar}[unit]
    assert 0 <= pascals - outcome.value("mark at 100 %").likely < step


# EN 837-1: scale intervals are 1, 2 or 5 x 10^n of the unit; each class of the table must be such a dial.
def test_offered_gauges_have_divisions_of_the_standard():
    for full_scale, accuracy, division in standard_gauges():
        assert any(division == pytest.approx(step * 10**n) for step in (1, 2, 5) for n in (-1, 0, 1)), (full_scale, accuracy)
        assert division / full_scale <= 2 * 2.5 * float(accuracy) / 100
