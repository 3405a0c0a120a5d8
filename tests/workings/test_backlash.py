"""Backlash windows at the dial, and shifts of a bevel gear."""

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS

GEAR = {"pitch window": "0.008 to 0.014 in", "pitch radius": "6.50 in", "dial radius": "7.25 in"}
TEETH = {**GEAR, "pressure angle": "20 °", "gear teeth": "52", "pinion teeth": "13"}


def backlash(**texts):
    outcome, problems = run(WORKINGS["backlash"], {**GEAR, **{name.replace("_", " "): text for name, text in texts.items()}})
    assert problems == []
    return outcome


def shift(**texts):
    outcome, problems = run(WORKINGS["gear-shift"], {**TEETH, **{name.replace("_", " "): text for name, text in texts.items()}})
    assert problems == []
    return outcome


def test_the_window_at_the_dial():
    outcome = backlash(dial_division="0.0005 in")
    assert outcome.value("exact dial window").printed == "0.0089 to 0.0156 in"
    assert outcome.value("dial window").printed == "0.0090 to 0.0155 in"
    assert backlash(dial_radius="7.50 in").value("exact dial window").printed == "0.0092 to 0.0162 in"


def test_a_dial_that_cannot_show_it_or_has_no_radius_is_refused():
    assert "cannot show" in backlash(dial_division="0.010 in").refusals[0].message
    assert "does not read" in backlash(dial_radius="60 in").refusals[0].message


@given_any(st.integers(4, 30), st.integers(2, 20), st.integers(300, 900))
def test_what_the_dial_accepts_is_inside_the_window_at_pitch(low, width, radius):
    outcome = backlash(pitch_window=f"{low / 1000:.3f} to {(low + width) / 1000:.3f} in", dial_radius=f"{radius / 100:.2f} in", dial_division="0.0005 in")
    if not outcome.refusals:
        found = outcome.value("dial window")
        ends = [end / 0.0254 * 650 / radius * 1000 for end in (found.low, found.high)]
        assert low * (1 - 1e-9) <= ends[0] < ends[1] <= (low + width) * (1 + 1e-9)


def test_both_systems_of_units_agree():
    metric = backlash(pitch_window="0.2032 to 0.3556 mm", pitch_radius="165.1 mm", dial_radius="184.15 mm", dial_division="0.0005 in")
    assert metric.value("dial window").printed == "0.0090 to 0.0155 in"


def test_shift_from_four_readings():
    outcome = shift(readings="0.0200 in, 0.0201 in, 0.0199 in, 0.0200 in")
    assert outcome.value("backlash per shift").printed == "0.706"
    assert outcome.value("gear shift").printed == "0.010 in"
    assert outcome.value("which way").printed == "towards the pinion"
    assert outcome.value("leaves").printed == "0.0109 in"
    assert not outcome.warnings


def test_another_move_says_what_it_leaves():
    assert shift(readings="0.0200 in", move="0.011 in").value("leaves").printed == "0.0102 in"
    assert shift(readings="0.0200 in", move="0.009 in").value("leaves").printed == "0.0116 in"
    assert "outside" in shift(readings="0.0200 in", move="0.020 in").warnings[0]


def test_too_little_goes_away_and_inside_is_left():
    assert shift(readings="0.0060 in").value("which way").printed == "away from the pinion"
    inside = shift(readings="0.0120 in, 0.0130 in")
    assert inside.value("which way").printed.startswith("leave it") and inside.value("gear shift").likely == 0


def test_run_out_is_not_shimmed():
    assert "run-out" in shift(readings="0.0160 in, 0.0200 in, 0.0240 in, 0.0200 in").warnings[0]


def test_a_known_pitch_angle_and_a_spiral():
    teeth, angle = shift(), shift(pitch_angle="75.9637565 °")
    assert angle.value("backlash per shift").likely == pytest.approx(teeth.value("backlash per shift").likely, rel=1e-9)
    assert shift(spiral_angle="35 °").value("backlash per shift").printed == "0.862"


def test_without_readings_there_is_a_table_for_the_bench():
    outcome = shift()
    assert not outcome.has("gear shift")
    assert len(outcome.told.tables[0].rows) == 9
    waiting, problems = run(WORKINGS["gear-shift"], {**TEETH, "readings": "measured at read-backlash, 0.0160 to 0.0220 in"})
    assert problems == [] and waiting.waits == ("readings",) and waiting.values == ()
    assert ("0.0200 in", "0.706", "0.0179 in", "towards the pinion", "0.010 in", "0.0109 in") in waiting.told.tables[0].rows


@pytest.mark.parametrize(("texts", "said"), [({"gear teeth": None}, "not known"), ({"pressure angle": "60 °"}, "no bevel gear"), ({"pitch angle": "90 °"}, "no bevel gear")])
def test_refusals(texts, said):
    given = {name: text for name, text in {**TEETH, **texts}.items() if text}
    outcome, problems = run(WORKINGS["gear-shift"], given)
    assert problems == [] and said in outcome.refusals[0].message


@given_any(st.integers(150, 400))
def test_more_backlash_asks_for_no_less_shift(tenths):
    one, two = (shift(readings=f"{(tenths + more) / 10000:.4f} in").value("gear shift").likely for more in (0, 20))
    assert two >= one
