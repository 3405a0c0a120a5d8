"""Equal values are merged and labelled so that no reader can take one case for another."""

from itertools import product

from hypothesis import given, strategies as st
from tiny_book import machine

from witnessmark.pages.cases import told_apart

ALL = [{"winch": winch, "hub": hub} for winch, hub in product("AB", "AB")]


def labels(values, always=()):
    return [(told.label, told.value) for told in told_apart(machine(), list(zip(ALL, values)), always)]


def test_one_value_needs_no_label():
    assert labels([1, 1, 1, 1]) == [("", 1)]


def test_the_carrier_that_decides_is_named():
    assert labels([1, 1, 2, 2]) == [("A", 1), ("B", 2)]
    assert labels([1, 2, 1, 2]) == [("hub A", 1), ("hub B", 2)]


def test_two_carriers_are_named_where_both_decide():
    assert labels([1, 1, 2, 3]) == [("A with hub A or B", 1), ("B with hub A", 2), ("B with hub B", 3)]


def test_a_carrier_that_must_be_named_is():
    assert labels([1, 1, 1, 1], ("winch", "hub")) == [("A with hub A or B; B with hub A or B", 1)]


@given(st.lists(st.integers(0, 2), min_size=4, max_size=4))
def test_every_case_keeps_its_value(values):
    """Read back by the data, each combination finds exactly the value it was given."""
    for combination, value in zip(ALL, values):
        assert [told.value for told in told_apart(machine(), list(zip(ALL, values))) if holds(told, combination)] == [value]


def holds(told, combination) -> bool:
    cases = [dict(pair.split(":") for pair in case.split(",")) for case in told.case.split()]
    return combination["winch"] in told.variants.split() and (not cases or any(case.items() <= combination.items() for case in cases))
