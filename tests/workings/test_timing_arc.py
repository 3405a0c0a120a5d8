"""Arc on the rim: tape, chord, drawing, both systems."""

from fractions import Fraction

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS
from witnessmark.workings.timing_arc import on_inch_tape


def arc(diameter, angle):
    outcome, problems = run(WORKINGS["timing-arc"], {"rim diameter": diameter, "angle": angle})
    assert problems == []
    return outcome


@pytest.mark.parametrize(("inches", "text"), [(Fraction(0), "0 in"), (Fraction(3), "3 in"), (Fraction(3, 4), "3/4 in"), (Fraction(241, 64), "3-49/64 in"), (Fraction(5, 2), "2-1/2 in")])
def test_tape(inches, text):
    assert on_inch_tape(inches) == text


def test_a_whole_turn_is_refused():
    assert "whole turn" in arc("18 in", "360°").refusals[0].message
    assert arc("18 in", "359°").values


@given_any(st.integers(100, 6000), st.integers(1, 3599))
def test_tape_is_within_half_a_sixty_fourth_and_the_chord_shorter(hundredths, tenths):
    outcome = arc(f"{hundredths / 100} in", f"{tenths / 10}°")
    text = outcome.value("inch tape").printed.removesuffix(" in")
    whole, _, part = text.rpartition("-") if "/" in text else (text, "", "0")
    inches = Fraction(part) + Fraction(whole or 0)
    assert abs(float(inches) * 0.0254 - outcome.value("arc").likely) <= 0.0254 / 128 * (1 + 1e-9)
    assert outcome.value("straight across").likely <= outcome.value("arc").likely


@given_any(st.integers(100, 6000), st.integers(1, 900))
def test_both_systems_of_units_agree(hundredths, tenths):
    inch, metric = arc(f"{hundredths / 100} in", f"{tenths / 10}°"), arc(f"{hundredths * 0.254:.4f} mm", f"{tenths / 10}°")
    assert inch.value("inch tape").printed == metric.value("inch tape").printed
    assert inch.value("metric tape").printed == metric.value("metric tape").printed


@pytest.mark.parametrize("angle", ["0.5°", "24°", "90°", "180°", "300°"])
def test_the_drawing_says_what_it_shows_and_stays_on_its_paper(angle):
    drawing = arc("18.0 in", angle).told.drawing
    assert angle in drawing.shows
    for mark in drawing.marks:
        for x, y in getattr(mark, "points", ((getattr(mark, "x", 0), getattr(mark, "y", 0)),)):
            assert 0 <= x <= drawing.width and 0 <= y <= drawing.height
