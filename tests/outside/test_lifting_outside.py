"""Weights of bars and pulls in sling legs against published tables, and a hook in balance."""

import math

import pytest
from scipy import constants
from scipy.optimize import brentq
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS


def work(name, **texts):
    outcome, problems = run(WORKINGS[name], {key.replace("_", " "): text for key, text in texts.items()})
    assert problems == [] and outcome.refusals == ()
    return outcome


# Precision machining trade article, rapid methods for the weight of a steel bar (inch), 0.2833 lb/in³, as printed. Its first two
# figures come from 3.4 lb for a foot of inch-square bar, hence 0.5 %; the others agree to the last figure.
@pytest.mark.parametrize(("sizes", "pounds", "off"), [
    ({"width": "1 in", "height": "1 in", "length": "144 in"}, 40.97, 5e-3),
    ({"width": "1/2 in", "height": "2 in", "length": "120 in"}, 33.99, 5e-4),
    ({"diameter": "1 in", "length": "144 in"}, 32.04, 3e-4),
    ({"diameter": "0.750 in", "length": "48 in"}, 6.00, 2e-3)])
def test_bars(sizes, pounds, off):
    assert work("weight", density="0.2833 lb/in³", **sizes).value("weight").likely / constants.lb == pytest.approx(pounds, rel=off)


# Published plate weight: 40.8 lb for each square foot and inch of thickness, 10.2 lb at a quarter inch; three figures.
@pytest.mark.parametrize(("thick", "pounds"), [("1 in", 40.8), ("1/4 in", 10.2)])
def test_plate(thick, pounds):
    outcome = work("weight", density="0.2833 lb/in³", width="12 in", height=thick, length="12 in")
    assert outcome.value("weight").likely / constants.lb == pytest.approx(pounds, rel=2e-3)


# Sling catalogues, tension multiplier by angle from the horizontal, three decimals (two published tables agree but for 60°: 1.154).
@pytest.mark.parametrize(("angle", "factor"), [(90, 1.000), (85, 1.004), (80, 1.015), (75, 1.035), (70, 1.064), (65, 1.104), (60, 1.155), (55, 1.221),
                                               (50, 1.305), (45, 1.414), (40, 1.555), (35, 1.742), (30, 2.000)])
def test_sling_angle_table(angle, factor):
    outcome = work("sling-legs", weight="10,000 lb", legs="2", angle=f"{angle}°")
    assert outcome.value("leg load").likely / (5000 * constants.lbf) == pytest.approx(factor, abs=1.5e-3)


# The same catalogues, examples: 10,000 lb on two legs, 5,775 lbf at 60° and 7,070 at 45°; 1,000 lb at 45°, 707.
@pytest.mark.parametrize(("weight", "angle", "pull"), [("10,000 lb", "60°", 5775), ("10,000 lb", "45°", 7070), ("1,000 lb", "45°", 707)])
def test_catalogue_examples(weight, angle, pull):
    assert work("sling-legs", weight=weight, legs="2", angle=angle).value("leg load").likely / constants.lbf == pytest.approx(pull, rel=6e-4)


# An independent way: the pull at which the forces on the hook are in balance, found by scipy.
@pytest.mark.parametrize("angle", [31, 47.5, 62, 88])
def test_hook_in_balance(angle):
    weight, steep = 1350 * constants.lb * constants.g, math.radians(angle)
    pull = brentq(lambda force: 2 * force * math.sin(steep) - weight, 0, 1e5)
    assert work("sling-legs", weight="1,350 lb", legs="2", angle=f"{angle}°").value("leg load").likely == pytest.approx(pull, rel=1e-9)
