"""Limits and fits: steps, sorts of fit, refusals, and rounding that never leaves the zone."""

from fractions import Fraction

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st

from witnessmark.core.drawing import Label
from witnessmark.workings.read_inputs import given_of, run
from witnessmark.workings.registry import WORKINGS
from witnessmark.workings.tables.iso_286 import GRADES, LETTERS, hole_limits, shaft_limits, tolerance

LIMITS = WORKINGS["limits-and-fits"]


def limits(size, **texts):
    outcome, problems = run(LIMITS, {"size": size, **texts})
    assert problems == []
    return outcome


@pytest.mark.parametrize(("size", "shaft"), [("50 mm", "50.043 to 50.059 mm"), ("50.01 mm", "50.063 to 50.082 mm"), ("30 mm", "30.035 to 30.048 mm"), ("30.5 mm", "30.543 to 30.559 mm")])
def test_a_size_on_a_step_belongs_to_the_step_that_ends_there(size, shaft):
    assert limits(size, shaft="s6").value("shaft size").printed == shaft


@pytest.mark.parametrize(("hole", "shaft", "sort", "values"), [
    ("H7", "g6", "clearance", {"least clearance": "0.007 mm", "greatest clearance": "0.041 mm"}),
    ("H7", "k6", "transition", {"greatest clearance": "0.019 mm", "greatest interference": "0.015 mm"}),
    ("H7", "p6", "interference", {"greatest interference": "0.035 mm", "least interference": "0.001 mm"}),
    ("H7", "h6", "clearance", {"least clearance": "0.000 mm", "greatest clearance": "0.034 mm"})])
def test_sorts_of_fit(hole, shaft, sort, values):
    outcome = limits("25 mm", hole=hole, shaft=shaft)
    assert outcome.value("sort of fit").printed.startswith(sort)
    assert {value.name: value.printed for value in outcome.values if value.kind in ("clearance", "interference")} == values


def test_a_single_part_has_limits_and_no_fit():
    outcome = limits("25 mm", hole="H7")
    assert [value.name for value in outcome.values] == ["hole size"]


def test_interference_goes_on_into_the_press_fit():
    fit = limits("95 mm", hole="H7", shaft="s6").value("greatest interference")
    outcome, problems = run(WORKINGS["straight-interference"], {
        "seat diameter": "95 mm", "interference": given_of(fit), "length": "100 mm", "hub diameter": "180 mm", "friction": "0.12",
        "hub material": "steel", "shaft material": "steel"})
    assert problems == [] and outcome.value("interference on diameter").printed == "0.093 mm"


@pytest.mark.parametrize(("size", "texts", "says"), [
    ("251 mm", {"hole": "H7"}, "ends at 250"), ("10 in", {"hole": "H7"}, "ends at 250"), ("24 to 25 mm", {"hole": "H7"}, "no one size"), ("25 mm", {}, "neither"),
    ("25 mm", {"hole": "h7"}, "written as one of a shaft"), ("25 mm", {"shaft": "H7"}, "written as one of a hole"), ("25 mm", {"shaft": "z6"}, "not in the table"),
    ("25 mm", {"shaft": "h14"}, "not in the table"), ("20 mm", {"shaft": "t6"}, "no t6 at this size"), ("25 mm", {"hole": "K9"}, "no K9"), ("25 mm", {"hole": "loose"}, "no tolerance class"),
    ("25 mm", {"hole": "Js7"}, "written as one of a shaft"), ("0.0394 in", {"shaft": "m4"}, "closer than")])
def test_refusals(size, texts, says):
    outcome = limits(size, **texts)
    assert outcome.values == () and says in outcome.refusals[0].message


def test_an_inch_size_is_rounded_inward_to_a_tenth_of_a_thou():
    outcome = limits("1 in", hole="H8", shaft="f7")
    assert outcome.value("hole size").printed == "1.0000 to 1.0012 in"
    assert outcome.value("shaft size").printed == "0.9984 to 0.9992 in"


sizes = st.integers(1, 250000).map(lambda n: Fraction(n, 1000))


@given_any(sizes, st.sampled_from(LETTERS), st.sampled_from(list(GRADES)))
def test_every_zone_is_as_wide_as_its_tolerance(size, letter, grade):
    for zone in (shaft_limits(size, letter, grade), hole_limits(size, letter, grade)):
        if zone is not None:
            assert zone[1] - zone[0] == tolerance(size, grade)


@given_any(sizes, st.sampled_from("kmnprst"), st.integers(6, 7))
def test_hole_and_shaft_systems_fit_alike(size, letter, grade):
    """H7/p6 and P7/h6 are as tight: the reason for the lift of holes (over 3 mm)."""
    shaft = shaft_limits(size, letter, grade - 1)
    hole = hole_limits(size, letter, grade)
    if size > 3 and shaft is not None and hole is not None:
        assert hole[0] - 0 == -shaft[1] and tolerance(size, grade) - shaft[0] == hole[1] + tolerance(size, grade - 1)


@given_any(sizes, st.sampled_from([letter for letter in LETTERS if letter != "js"]), st.integers(5, 11), st.sampled_from(["mm", "in"]))
def test_printed_limits_never_leave_the_zone(size, letter, grade, unit):
    text = f"{float(size):.3f} mm" if unit == "mm" else f"{float(size / Fraction(254, 10)):.4f} in"
    outcome, problems = run(LIMITS, {"size": text, "shaft": f"{letter}{grade}"})
    if problems or not outcome.values:
        return
    scale = 1 if unit == "mm" else Fraction(254, 10)
    exact = Fraction(text.split()[0]) * scale
    low, high = (exact + end / 1000 for end in shaft_limits(exact, letter, grade))
    first, last = outcome.value("shaft size").printed.removesuffix(unit).split(" to ")
    assert low - Fraction(1, 10**9) <= Fraction(first) * scale < Fraction(last.strip()) * scale <= high + Fraction(1, 10**9)


@pytest.mark.parametrize("text", ["H", "7", "H77", "H007", "", "H7/p6", "ZZ7", "js 6", "½", "H" * 300, "H-7"])
def test_no_class_is_an_exception(text):
    outcome, problems = run(LIMITS, {"size": "25 mm", "hole": text})
    assert problems or outcome.refusals


def test_the_drawing_stays_in_its_frame():
    drawing = limits("240 mm", hole="F8", shaft="u6").told.drawing
    assert "shaft u6 from +284 µm to +313 µm" in drawing.shows
    for mark in drawing.marks:
        points = getattr(mark, "points", ((getattr(mark, "x", 0), getattr(mark, "y", 0)),))
        assert all(0 <= x <= drawing.width and 0 <= y <= drawing.height for x, y in points)
        if isinstance(mark, Label):                             # a letter of the page's script is under 6 units wide
            room = {"start": drawing.width - mark.x, "end": mark.x, "middle": 2 * min(mark.x, drawing.width - mark.x)}[mark.anchor]
            assert 6 * len(mark.text) <= room, mark.text
