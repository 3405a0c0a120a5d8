"""The one rounding function: to a graduation, on the safe side, in spite of what doubles do."""

from fractions import Fraction
from math import floor

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.core.rounding import TOLERANCE, round_to

VALUES = st.floats(-1e6, 1e6)
STEPS = st.sampled_from([Fraction(1, 1000), Fraction(1, 64), Fraction(1, 4), Fraction(1), Fraction(5), Fraction(100)])


@pytest.mark.parametrize("value, step, steps", [(0.3, 0.1, 3), (4.1, 0.1, 41), (0.29, 0.01, 29), (0.1 + 0.2, 0.1, 3), (1.1 * 3, 1.1, 3)])
def test_doubles_just_off_a_graduation_count_as_on_it(value, step, steps):
    exact = steps * Fraction(str(step))
    assert round_to(value, step, "down") == round_to(value, step, "up") == round_to(value, step, "nearest") == exact


def test_plain_division_would_lose_a_graduation():
    assert floor(0.3 / 0.1) == 2               # why the tolerance exists


@pytest.mark.parametrize("value, side, mark", [
    (5085, "down", 5000), (5085, "up", 5100), (5085, "nearest", 5100), (5050, "nearest", 5100), (5000, "down", 5000),
    (5000, "up", 5000), (99, "down", 0), (-5, "down", -100), (-5, "up", 0),
])
def test_sides(value, side, mark):
    assert round_to(value, 100, side) == mark


def test_tolerance_is_a_billionth_of_a_step_and_no_more():
    assert round_to(1 - Fraction(1, 10**9), 1, "down") == 1
    assert round_to(1 - Fraction(2, 10**9), 1, "down") == 0
    assert round_to(1 + Fraction(2, 10**9), 1, "up") == 2


@given(VALUES, STEPS)
def test_never_past_the_limit_beyond_the_tolerance(value, step):
    down, up = round_to(value, step, "down"), round_to(value, step, "up")
    assert (down / step).denominator == (up / step).denominator == 1
    assert Fraction(value) - step < down <= Fraction(value) + TOLERANCE * step + Fraction(1, 10**15)
    assert Fraction(value) + step > up >= Fraction(value) - TOLERANCE * step - Fraction(1, 10**15)
    assert round_to(value, step, "nearest") in (down, up)


@given(VALUES, STEPS, st.sampled_from(["down", "up", "nearest"]))
def test_rounding_twice_changes_nothing(value, step, side):
    once = round_to(value, step, side)
    assert round_to(once, step, side) == once == round_to(float(once), step, side)


@pytest.mark.parametrize("value, step", [(1, 0), (1, -1), (float("nan"), 1), (1, float("inf"))])
def test_nonsense_is_an_error_of_the_caller(value, step):
    with pytest.raises((ValueError, OverflowError)):
        round_to(value, step, "down")
