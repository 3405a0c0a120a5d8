"""Shim stacks and shims moved across, against every stack there is."""

from fractions import Fraction
from itertools import combinations_with_replacement

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS
from witnessmark.workings.shim_search import in_any_number, in_common_units, stacks

AB, C = "0.003 in, 0.005 in, 0.012 in, 0.025 in", "0.006 in, 0.009 in, 0.014 in, 0.033 in"
CAP = "0.0005 in, 0.002 in, 0.003 in, 0.005 in"


def stack(thickness, stock, **texts):
    outcome, problems = run(WORKINGS["shim-stack"], {"thickness": thickness, "stock": stock, **{name.replace("_", " "): text for name, text in texts.items()}})
    assert problems == []
    return outcome


def move(left, right, by, to, stock):
    outcome, problems = run(WORKINGS["shim-move"], {"left now": left, "right now": right, "move": by, "to": to, "stock": stock})
    assert problems == []
    return outcome


@pytest.mark.parametrize(("thickness", "stock", "told"), [
    ("0.044 in", AB, "3 × 0.012 + 0.005 + 0.003 in"), ("0.031 in", AB, "0.025 + 2 × 0.003 in"), ("0.045 in", C, "0.033 + 2 × 0.006 in"),
    ("0.030 in", C, "2 × 0.009 + 2 × 0.006 in"), ("0.0105 in", CAP, "2 × 0.005 + 0.0005 in"), ("0.0101 to 0.0107 in", CAP, "2 × 0.005 + 0.0005 in")])
def test_fewest_pieces(thickness, stock, told):
    assert stack(thickness, stock).value("stack").printed == told


@pytest.mark.parametrize(("stock", "missing"), [(AB, (4, 7)), (C, (7, 8, 10, 11, 13, 16, 17, 19, 22, 25, 31))])
def test_what_a_stock_cannot_make(stock, missing):
    least = 3 if stock == AB else 6
    highest = 60 if stock == AB else 50
    for thou in range(least, highest + 1):
        outcome = stack(f"0.{thou:03d} in", stock)
        assert outcome.has("stack") == (thou not in missing), thou
        if thou in missing:
            assert "nor in any number" in outcome.warnings[0]
            assert outcome.value("nearest thinner").likely < thou * 25.4e-6 < outcome.value("nearest thicker").likely


def test_more_pieces_than_allowed_is_said():
    outcome = stack("0.024 in", "0.003 in", most_pieces="6")
    assert "in 6 pieces, but in more than 6" in outcome.warnings[0]
    assert outcome.value("nearest thinner").printed == "0.018 in" and not outcome.has("nearest thicker")
    assert stack("0.024 in", "0.003 in", most_pieces="8").value("pieces").printed == "8"


def test_a_window_with_nothing_inside():
    outcome = stack("0.0101 to 0.0104 in", AB)
    assert "nothing between" in outcome.warnings[0]
    assert (outcome.value("thinner stack").printed, outcome.value("thicker stack").printed) == ("2 × 0.005 in", "0.005 + 2 × 0.003 in")


def test_a_result_with_the_dust_of_doubles_is_met():
    from witnessmark.workings.printed import value
    from witnessmark.workings.read_inputs import given_of
    dusty = value("shim", "length", (0.1 + 0.2) * 0.0254 / 10, "in", "0.001")
    outcome, problems = run(WORKINGS["shim-stack"], {"thickness": given_of(dusty), "stock": "0.010 in"})
    assert problems == [] and outcome.value("stack").printed == "3 × 0.010 in"


def test_shims_moved_across_keep_their_sum():
    outcome = move("0.034 in", "0.041 in", "0.010 in", "left", AB)
    assert [outcome.value(name).printed for name in ("left", "left stack", "right", "right stack", "sum")] == [
        "0.044 in", "3 × 0.012 + 0.005 + 0.003 in", "0.031 in", "0.025 + 2 × 0.003 in", "0.075 in"]
    assert move("0.041 in", "0.034 in", "0.010 in", "right", AB).value("right").printed == "0.044 in"


def test_the_nearest_moves_on_both_sides_when_one_stack_cannot_be_made():
    outcome = move("0.034 in", "0.041 in", "0.010 in", "left", C)
    assert "0.031 in cannot be made from this stock in 6 pieces, nor in any number" in outcome.warnings[0]
    assert not outcome.has("left")
    assert outcome.value("larger move").printed == "0.011 in"
    assert outcome.value("left stack at the larger move").printed == "0.045 in: 0.033 + 2 × 0.006 in"
    assert outcome.value("right stack at the larger move").printed == "0.030 in: 2 × 0.009 + 2 × 0.006 in"
    assert outcome.value("smaller move").printed == "0.009 in"
    assert outcome.value("left stack at the smaller move").printed == "0.043 in: 2 × 0.014 + 0.009 + 0.006 in"
    assert outcome.value("right stack at the smaller move").printed == "0.032 in: 0.014 + 2 × 0.009 in"


def test_refusals():
    assert "not enough" in move("0.034 in", "0.010 in", "0.010 in", "left", AB).refusals[0].message
    assert "measure the sum" in move("0.004 in", "0.003 in", "0.001 in", "left", "0.050 in").refusals[0].instead
    assert "not tried" in stack("0.044 in", AB, most_pieces="40").refusals[0].message
    assert "cannot be made" in stack("0.044 in", "0.050 in", most_pieces="1").warnings[0]


def test_both_systems_of_units_agree():
    assert stack("1.1176 mm", AB).value("stack").printed == stack("0.044 in", AB).value("stack").printed
    assert stack("0.50 mm", "0.10 mm, 0.15 mm, 0.25 mm").value("stack").printed == "2 × 0.25 mm"


pieces = st.lists(st.integers(1, 40), min_size=1, max_size=4, unique=True)


@given_any(pieces, st.integers(1, 5), st.integers(1, 120))
def test_every_sum_and_its_fewest_pieces_by_brute_force(stock, most, limit):
    made = stacks(stock, most, limit)
    everyone: dict[int, int] = {}
    for count in range(1, most + 1):
        for chosen in combinations_with_replacement(stock, count):
            if sum(chosen) <= limit:
                everyone.setdefault(sum(chosen), count)
    assert {total: len(found) for total, found in made.items()} == everyone
    assert all(sum(found) == total and set(found) <= set(stock) for total, found in made.items())


@given_any(pieces, st.integers(1, 150))
def test_any_number_of_pieces_by_brute_force(stock, target):
    reached = {0}
    for total in range(1, target + 1):
        if any(total - piece in reached for piece in stock):
            reached.add(total)
    assert in_any_number(stock, target) == (target in reached)
    assert in_any_number(stock, 10**9) is None


@given_any(st.lists(st.fractions(min_value=Fraction(1, 10**6), max_value=2), min_size=1, max_size=6))
def test_common_units_are_exact(thicknesses):
    counted, unit = in_common_units(thicknesses)
    assert [count * unit for count in counted] == thicknesses


def test_the_page_gets_sums_a_table_and_a_drawing():
    told = stack("0.044 in", AB).told
    assert told.lines[1].value == "0.044 in"
    assert ("0.044 in", "3 × 0.012 + 0.005 + 0.003 in", "5") in told.tables[0].rows
    assert "0.044 in" in told.drawing.shows
