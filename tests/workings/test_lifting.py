"""Weights by size, and what a sling's legs carry: nothing flatter than 30°, never less than statics says."""

import math

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS


def work(name, **texts):
    outcome, problems = run(WORKINGS[name], {key.replace("_", " "): text for key, text in texts.items()})
    assert problems == []
    return outcome


def sling(**more):
    return work("sling-legs", **{"weight": "1,350 lb", "legs": "2", "angle": "45°", **more})


@pytest.mark.parametrize(("angle", "load"), [("60°", "779 lbf"), ("45°", "955 lbf"), ("30°", "1350 lbf")])
def test_leg_loads_of_the_engine(angle, load):
    assert sling(angle=angle).value("leg load").printed == load


@pytest.mark.parametrize(("more", "said"), [
    ({"angle": "29.9°"}, "pull more on each other"),
    ({"angle": "25 to 60°"}, "pull more on each other"),
    ({"angle": "0°"}, "pull more on each other"),
    ({"angle": "91°"}, "leans outward")])
def test_flat_legs_are_refused(more, said):
    outcome = sling(**more)
    assert outcome.values == () and said in outcome.refusals[0].message


def test_more_than_one_leg_needs_an_angle_and_one_does_not():
    assert "how steep" in work("sling-legs", weight="100 lb", legs="2").refusals[0].message
    assert work("sling-legs", weight="100 lb", legs="1").value("leg load").printed == "100 lbf"


def test_a_stiff_load_may_hang_on_two_legs():
    four, two = sling(legs="4"), sling(legs="2")
    assert four.value("rate each leg for").printed == two.value("rate each leg for").printed
    assert four.value("leg load").likely == sling(legs="3").value("leg load").likely < two.value("leg load").likely
    assert any("two legs" in warning for warning in four.warnings)


def test_flatter_than_45_is_warned_about():
    assert sling(angle="44°").warnings and not sling().warnings


@given_any(st.integers(50, 20000), st.integers(300, 900), st.integers(1, 4))
def test_rating_is_never_under_statics_with_a_fifth_added(weight, tenths, legs):
    outcome = sling(weight=f"{weight} lb", angle=f"{tenths / 10}°", legs=f"{legs}")
    steep = math.pi / 2 if legs == 1 else math.radians(tenths / 10)
    assert outcome.value("rate each leg for").likely >= 1.2 * weight * 4.4482216152605 / (min(legs, 2) * math.sin(steep)) * (1 - 1e-9)


@given_any(st.integers(300, 900), st.integers(300, 900))
def test_a_flatter_leg_carries_more(one, two):
    flat, steep = sorted((one, two))
    assert sling(angle=f"{flat / 10}°").value("leg load").likely >= sling(angle=f"{steep / 10}°").value("leg load").likely


def test_both_systems_of_units_agree():
    metric, inch = sling(weight="612.3497 kg").value("leg load"), sling().value("leg load")
    assert metric.printed == inch.converted and metric.likely == pytest.approx(inch.likely, rel=1e-7)


@pytest.mark.parametrize(("legs", "angle"), [("1", "90°"), ("2", "30°"), ("2", "60°"), ("4", "75°"), ("2", "90°")])
def test_the_drawing_stays_on_its_paper_and_says_what_it_shows(legs, angle):
    drawing = sling(legs=legs, angle=angle).told.drawing
    assert "1,350 lb" in drawing.shows
    for mark in drawing.marks:
        for x, y in getattr(mark, "points", ((getattr(mark, "x", 0), getattr(mark, "y", 0)),)):
            assert 0 <= x <= drawing.width and 0 <= y <= drawing.height


@pytest.mark.parametrize("sizes", [
    {"length": "10 in"}, {"length": "10 in", "width": "2 in"}, {"length": "10 in", "diameter": "2 in", "width": "2 in", "height": "2 in"},
    {"length": "10 in", "diameter": "2 in", "bore": "2 in"}])
def test_sizes_that_make_no_part_are_refused(sizes):
    assert work("weight", density="0.283 lb/in³", **sizes).values == ()


def test_a_bore_takes_away_and_several_add_up():
    solid = work("weight", density="0.283 lb/in³", diameter="4 in", length="10 in").value("weight").likely
    bored = work("weight", density="0.283 lb/in³", diameter="4 in", bore="2 in", length="10 in").value("weight").likely
    assert bored == pytest.approx(0.75 * solid)
    three = work("weight", density="0.283 lb/in³", diameter="4 in", length="10 in", number="3")
    assert three.value("weight").likely == pytest.approx(3 * solid)
    assert three.value("weight to rig for").likely >= 1.2 * three.value("weight").likely * (1 - 1e-9)
