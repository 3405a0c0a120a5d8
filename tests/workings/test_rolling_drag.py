"""Pulls on a cord, on the scale that reads them."""

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS

DRAG = WORKINGS["rolling-drag"]
QUARTER = {"scale highest": "30 lbf", "scale division": "0.25 lbf"}


def pull(drag, radius, scale=QUARTER, **texts):
    outcome, problems = run(DRAG, {"drag": drag, "drum radius": radius, **scale, **{name.replace("_", " "): text for name, text in texts.items()}})
    assert problems == []
    return outcome


@pytest.mark.parametrize(("drag", "radius", "division", "window"), [
    ("28 to 40 lbf·in", "2.25 in", "0.25", "12.50 to 17.75 lbf"), ("14 to 20 lbf·in", "2.25 in", "0.25", "6.25 to 8.75 lbf"),
    ("9 to 14 lbf·in", "1.25 in", "0.25", "7.25 to 11.00 lbf"), ("6 to 10 lbf·in", "1.75 in", "0.1", "3.5 to 5.7 lbf")])
def test_a_window_is_rounded_inward(drag, radius, division, window):
    assert pull(drag, radius, {"scale highest": "30 lbf", "scale division": f"{division} lbf"}).value("pull window").printed == window


def test_a_diameter_taken_for_the_radius_is_flagged():
    outcome = pull("28 to 40 lbf·in", "4.5 in")
    assert outcome.value("exact pull").printed == "6.2 to 8.9 lbf"
    assert any("looks like a diameter" in warning and "12.4 to 17.8 lbf" in warning for warning in outcome.warnings)
    assert not pull("28 to 40 lbf·in", "2.25 in", drum_diameter="4.5 in").warnings
    assert "is its diameter" in pull("28 to 40 lbf·in", "2.25 in", drum_diameter="2.25 in").refusals[0].message
    assert "has no radius" in pull("28 to 40 lbf·in", "2.25 in", drum_diameter="6 in").refusals[0].message


def test_a_diameter_is_not_taken_where_a_radius_is_asked_for():
    from witnessmark.workings.printed import value
    from witnessmark.workings.read_inputs import given_of
    outcome, problems = run(DRAG, {"drag": "28 lbf·in", "drum radius": given_of(value("bore", "diameter", 0.1143, "in", "0.001"))})
    assert outcome is None and "diameter" in problems[0].message


def test_a_ceiling_goes_down_a_floor_up_and_a_single_drag_to_the_nearest():
    assert pull("at most 15 lbf·in", "1.75 in").value("highest pull").printed == "8.50 lbf"
    assert pull("at least 15 lbf·in", "1.75 in").value("lowest pull").printed == "8.75 lbf"
    assert pull("15 lbf·in", "1.75 in").value("pull").printed == "8.50 lbf"


def test_the_uncertainty_of_a_scale_is_kept_inside():
    outcome = pull("28 to 40 lbf·in", "2.25 in", {**QUARTER, "scale accuracy": "1 %"})
    assert outcome.value("pull window").printed == "13.00 to 17.25 lbf"


@pytest.mark.parametrize(("drag", "scale", "said", "instead"), [
    ("28 to 29 lbf·in", {"scale division": "0.5 lbf"}, "cannot show 12.4 to 12.9 lbf", "divisions of 0.1 lbf"),
    ("28 to 80 lbf·in", {"scale highest": "30 lbf", "scale division": "0.25 lbf"}, "over the end of the scale", "to 50 lbf"),
    ("at most 0.2 lbf·in", {"scale division": "0.25 lbf"}, "cannot show", "finer"), ("0.2 lbf·in", {"scale division": "0.25 lbf"}, "cannot show", "finer"),
    ("28 to 29 lbf·in", {"scale highest": "30 lbf", "scale division": "0.05 lbf", "scale accuracy": "5 %"}, "cannot show", "finer")])
def test_what_cannot_be_read_is_refused_with_what_would_do(drag, scale, said, instead):
    outcome = pull(drag, "2.25 in", scale)
    assert outcome.values == () and said in outcome.refusals[0].message and instead in outcome.refusals[0].instead


def test_the_scale_that_is_named_would_do():
    outcome = pull("28 to 29 lbf·in", "2.25 in", {"scale highest": "20 lbf", "scale division": "0.1 lbf"})
    assert outcome.value("pull window").printed == "12.5 to 12.8 lbf"


@given_any(st.integers(1, 60), st.integers(1, 40), st.integers(50, 400))
def test_a_reading_inside_never_leaves_the_drag(low, width, hundredths):
    radius = hundredths / 100
    outcome = pull(f"{low} to {low + width} lbf·in", f"{radius:.2f} in", {"scale division": "0.25 lbf"})
    if not outcome.refusals:
        found = outcome.value("pull window")
        assert low * (1 - 1e-9) <= found.low / 4.4482216152605 * radius and found.high / 4.4482216152605 * radius <= (low + width) * (1 + 1e-9)


@given_any(st.integers(5, 60), st.integers(60, 300))
def test_a_larger_drum_asks_for_less_pull(drag, hundredths):
    one, two = (pull(f"{drag} lbf·in", f"{hundredths / 100 * size:.2f} in", {}).value("exact pull").likely for size in (1, 2))
    assert two < one


def test_both_systems_of_units_agree():
    metric = pull("3.163574586 to 4.519392265 N·m", "57.15 mm")
    assert metric.value("pull window").printed == "12.50 to 17.75 lbf"
    assert pull("3 to 4 N·m", "50 mm", {}).value("exact pull").printed == "60.0 to 80.0 N"


def test_the_table_says_what_a_reading_means():
    told = pull("28 to 40 lbf·in", "2.25 in").told
    assert ("13.50 lbf", "30.4 lbf·in", "inside") in told.tables[0].rows
    assert "2.25 in radius" in told.drawing.shows
