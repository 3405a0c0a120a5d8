"""Settings through an adapter: one torque, a window, and what is refused."""

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS

ADAPTER = WORKINGS["wrench-adapter"]
LONG = {"wrench length": "42 in", "adapter length": "3.0 in", "wrench lowest": "150 lbf·ft", "wrench highest": "600 lbf·ft",
        "wrench graduation": "10 lbf·ft", "wrench accuracy": "4 %"}


def through(torque, **texts):
    outcome, problems = run(ADAPTER, {**LONG, "torque": torque, **{name.replace("_", " "): text for name, text in texts.items()}})
    assert problems == []
    return outcome


@pytest.mark.parametrize(("torque", "setting", "delivered"), [(360, "330", "354"), (420, "390", "418"), (460, "420", "450"), (500, "460", "493"), (530, "490", "525")])
def test_a_setting_is_rounded_down_and_says_what_it_delivers(torque, setting, delivered):
    outcome = through(f"{torque} lbf·ft")
    assert outcome.value("setting").printed == f"{setting} lbf·ft"
    assert outcome.value("delivered torque").printed.startswith(f"{delivered} lbf·ft (")


def test_a_window_is_kept_with_the_wrench_out_at_both_ends():
    outcome = through("240 to 300 lbf·ft", adapter_angle="90 °")
    assert (outcome.value("lowest setting").printed, outcome.value("highest setting").printed) == ("250 lbf·ft", "280 lbf·ft")
    assert not outcome.has("setting")


def test_square_changes_nothing_and_back_along_the_wrench_asks_for_more():
    assert through("460 lbf·ft", adapter_angle="90 °").value("exact setting").printed == "460.0 lbf·ft"
    assert through("460 lbf·ft", adapter_angle="180 °").value("exact setting").printed == "495.4 lbf·ft"


@pytest.mark.parametrize(("torque", "texts", "said"), [
    ("100 lbf·ft", {}, "outside its range"), ("700 lbf·ft", {}, "outside its range"), ("240 to 245 lbf·ft", {}, "no graduation"),
    ("120 to 160 lbf·ft", {}, "outside the range"), ("460 lbf·ft", {"adapter_angle": "180 °", "adapter_length": "42 in"}, "leverage"),
    ("240 to 300 lbf·ft", {"wrench_accuracy": "100 %"}, "says nothing")])
def test_refusals(torque, texts, said):
    outcome = through(torque, **texts)
    assert outcome.values == () and said in outcome.refusals[0].message


@given_any(st.integers(150, 590), st.integers(0, 89), st.integers(1, 20))
def test_more_adapter_in_line_needs_less_and_nothing_passes_the_torque(torque, angle, length):
    outcome = through(f"{torque} lbf·ft", adapter_angle=f"{angle} °", adapter_length=f"{length} in")
    assert outcome.refusals or outcome.value("delivered torque").likely <= torque * 1.3558179483314004 * (1 + 1e-9)
    straight = run(ADAPTER, {"torque": f"{torque} lbf·ft", "wrench length": "42 in", "adapter length": f"{length} in"})[0].value("exact setting").likely
    turned = run(ADAPTER, {"torque": f"{torque} lbf·ft", "wrench length": "42 in", "adapter length": f"{length} in", "adapter angle": f"{angle} °"})[0]
    assert turned.value("exact setting").likely >= straight * (1 - 1e-12)


@given_any(st.integers(160, 280), st.integers(30, 200))
def test_the_window_is_never_left_by_a_wrench_that_is_out(low, width):
    outcome = through(f"{low} to {low + width} lbf·ft")
    if not outcome.refusals:
        for name, side in (("lowest setting", 0.96), ("highest setting", 1.04)):
            at_nut = outcome.value(name).likely / 1.3558179483314004 * 45 / 42 * side
            assert low * (1 - 1e-9) <= at_nut <= (low + width) * (1 + 1e-9)


@given_any(st.integers(170, 500))
def test_both_systems_of_units_agree(torque):
    metric = through(f"{torque * 1.3558179483314004:.10f} N·m", wrench_length="1066.8 mm", adapter_length="76.2 mm")
    assert metric.value("setting").printed == through(f"{torque} lbf·ft").value("setting").printed


def test_the_page_gets_a_table_and_a_drawing():
    told = through("460 lbf·ft").told
    assert told.tables[0].rows[4] == ("90°, square", "460.0 lbf·ft")
    assert "420 lbf·ft" in told.drawing.shows
