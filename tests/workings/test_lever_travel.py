"""Free travel and release of a clutch lever."""

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS


def travel(**texts):
    outcome, problems = run(WORKINGS["lever-free-travel"], {name.replace("_", " "): text for name, text in texts.items()})
    assert problems == []
    return outcome


def lift(**texts):
    given = {"plate lift": "0.060 in", "finger ratio": "1.5", "lever ratio": "12", **{name.replace("_", " "): text for name, text in texts.items()}}
    outcome, problems = run(WORKINGS["release-lift"], given)
    assert problems == []
    return outcome


def test_a_gap_becomes_a_window_at_the_lever():
    assert travel(gap="0.060 to 0.090 in", lever_ratio="10").value("free travel").printed == "0.60 to 0.90 in"
    assert travel(gap="0.104 to 0.146 in", lever_ratio="12").value("exact travel").printed == "1.248 to 1.752 in"
    assert travel(gap="0.104 to 0.146 in", lever_ratio="3, 4", rule_division="1/16 in").value("free travel").printed == "1.2500 to 1.7500 in"
    assert not travel(gap="0.060 in", lever_ratio="10").has("free travel")


def test_lost_motion_is_added_and_too_much_of_it_is_said():
    outcome = travel(gap="0.060 to 0.090 in", lever_ratio="10", lost_motion="0.25 in")
    assert outcome.value("free travel").printed == "0.85 to 1.15 in" and not outcome.warnings
    assert "renew the pins" in travel(gap="0.060 to 0.090 in", lever_ratio="10", lost_motion="0.7 in").warnings[-1]


def test_a_rule_that_cannot_show_it_is_refused():
    assert "cannot show" in travel(gap="0.060 to 0.062 in", lever_ratio="10", rule_division="1/8 in").refusals[0].message


def test_lift_and_stroke():
    outcome = lift(gap="0.125 in", lost_motion="0.10 in", lever_stroke="2.5 in")
    assert [outcome.value(name).printed for name in ("bearing travel", "release travel", "whole travel")] == ["0.090 in", "1.08 in", "2.68 in"]
    assert "up to 0.18 in short" in outcome.warnings[-1]
    assert not lift(gap="0.125 in", lever_stroke="3 in").warnings
    assert not lift().has("whole travel")


@given_any(st.integers(20, 150), st.integers(5, 100), st.integers(2, 25))
def test_the_window_at_the_lever_never_leaves_the_gap(low, width, ratio):
    outcome = travel(gap=f"{low / 1000:.3f} to {(low + width) / 1000:.3f} in", lever_ratio=str(ratio), rule_division="1/32 in")
    if not outcome.refusals:
        found = outcome.value("free travel")
        assert low * (1 - 1e-9) <= found.low / 25.4e-6 / ratio < found.high / 25.4e-6 / ratio <= (low + width) * (1 + 1e-9)


@given_any(st.integers(20, 150), st.integers(2, 25))
def test_a_longer_lever_travels_further(gap, ratio):
    one, two = (travel(gap=f"{gap / 1000:.3f} in", lever_ratio=str(ratio + more)).value("exact travel").likely for more in (0, 1))
    assert one < two


def test_both_systems_of_units_agree():
    metric = travel(gap="1.524 to 2.286 mm", lever_ratio="10", rule_division="0.01 in")
    assert metric.value("free travel").printed == "0.60 to 0.90 in"
    assert travel(gap="1.5 to 2.3 mm", lever_ratio="10").value("free travel").printed == "15.0 to 23.0 mm"


def test_the_table_pairs_gap_and_travel():
    told = travel(gap="0.060 to 0.090 in", lever_ratio="10").told
    assert told.tables[0].rows[0] == ("0.042 in", "0.42 in", "outside")
    assert "0.60 to 0.90 in" in told.drawing.shows
