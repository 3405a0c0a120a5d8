"""Orders on circles, in rows and by position, and the rounds."""

from math import dist

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st
from witnessmark.workings.hole_order import in_rows, middle_of, on_circle, tightening_order
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS

ORDER = WORKINGS["tightening-order"]
WRENCH = {"wrench lowest": "40 lbf·ft", "wrench highest": "250 lbf·ft", "wrench graduation": "5 lbf·ft"}


def order(**texts):
    outcome, problems = run(ORDER, {name.replace("_", " "): text for name, text in texts.items()})
    assert problems == []
    return outcome


@pytest.mark.parametrize(("holes", "said"), [(2, "1-2"), (5, "1-3-5-2-4"), (6, "1-4-2-5-3-6"), (8, "1-5-3-7-2-6-4-8")])
def test_circles(holes, said):
    assert order(pattern="circle", holes=str(holes)).value("order").printed == said


def test_heads_of_two_rows_go_from_the_middle_out():
    assert order(pattern="rows", rows="2", in_each_row="4").value("order").printed == "2-7-3-6-1-8-4-5"
    assert order(pattern="rows", rows="2", in_each_row="5", pitch="4 in", row_spacing="7 in").value("order").printed == "3-8-2-9-4-7-1-10-5-6"


def test_holes_by_position():
    assert order(pattern="by position", positions="0 by 0 in, 3.5 by 0 in, 3.5 in by 4 in, 0 by 4 in, 1.75 by 2 in").value("order").printed == "5-1-3-2-4"


@given_any(st.integers(2, 24), st.floats(0, 360), st.integers(-3, 3), st.integers(1, 5))
def test_a_circle_moved_turned_and_marked_out_by_hand_keeps_opposite_pairs(pairs, turned, away, size):
    """Even circles: every second one is the opposite of the one before, wherever the circle lies."""
    from math import cos, radians, sin
    c, s = cos(radians(turned)), sin(radians(turned))
    holes = [(size * (c * x - s * y) + away, size * (s * x + c * y) - away) for x, y in on_circle(2 * pairs)]
    found = tightening_order(holes)
    assert all((one - other) % (2 * pairs) == pairs for one, other in zip(found[::2], found[1::2], strict=True))


@given_any(st.integers(1, 4), st.integers(1, 10))
def test_every_hole_once_and_never_further_in_again(rows, each):
    holes = in_rows(rows, each, 1.0, 1.4)
    if len(holes) < 2:
        return
    found = tightening_order(holes)
    assert sorted(found) == list(range(1, len(holes) + 1))
    far = [dist(holes[number - 1], middle_of(holes)) for number in found]
    assert all(later >= earlier - 0.03 * max(far) for earlier, later in zip(far, far[1:], strict=False))


def test_rounds_are_rounded_down_and_end_at_the_full_setting():
    outcome = order(pattern="circle", holes="8", torque="120 lbf·ft", **{name.replace(" ", "_"): text for name, text in WRENCH.items()}, round_shares="35 %, 70 %")
    assert [value.printed for value in outcome.values if value.name.startswith("round")] == ["40 lbf·ft", "80 lbf·ft", "120 lbf·ft"]
    assert outcome.value("last of all").printed.startswith("once more round")
    metric = order(pattern="rows", rows="2", in_each_row="5", torque="160 N·m", round_shares="33 %, 65 %", wrench_graduation="5 N·m", wrench_lowest="40 N·m", wrench_highest="200 N·m")
    assert [value.printed for value in metric.values if value.name.startswith("round")] == ["50 N·m", "100 N·m", "160 N·m"]


def test_a_round_under_the_wrench_is_left_out_and_said():
    outcome = order(pattern="circle", holes="6", torque="100 lbf·ft", **{name.replace(" ", "_"): text for name, text in WRENCH.items()})
    assert [value.printed for value in outcome.values if value.name.startswith("round")] == ["60 lbf·ft", "100 lbf·ft"]
    assert "30 %" in outcome.warnings[0]


def test_through_an_adapter_the_settings_are_lower():
    outcome = order(pattern="circle", holes="6", torque="225 lbf·ft", wrench_graduation="5 lbf·ft", wrench_length="42 in", adapter_length="3 in")
    assert [value.printed for value in outcome.values if value.name.startswith("round")] == ["60 lbf·ft", "125 lbf·ft", "210 lbf·ft"]


@pytest.mark.parametrize(("texts", "said"), [
    ({"pattern": "circle"}, "how many holes"), ({"pattern": "rows", "rows": "2"}, "rows and holes"), ({"pattern": "by position"}, "positions"),
    ({"pattern": "circle", "holes": "1"}, "no order"), ({"pattern": "circle", "holes": "60"}, "groups of four"),
    ({"pattern": "by position", "positions": "0 by 0 in, 4 by 0 in, 4 by 0 in"}, "same place"),
    ({"pattern": "by position", "positions": "4 by 0 in, 4 by 0 in"}, "same place"),
    ({"pattern": "circle", "holes": "6", "torque": "20 lbf·ft"}, "without the wrench"),
    ({"pattern": "circle", "holes": "6", "torque": "300 lbf·ft", **WRENCH}, "outside its range"),
    ({"pattern": "circle", "holes": "6", "torque": "100 lbf·ft", "round shares": "60 %, 30 %", **WRENCH}, "do not rise")])
def test_refusals(texts, said):
    outcome, problems = run(ORDER, texts)
    assert problems == [] and outcome.values == () and said in outcome.refusals[0].message


@pytest.mark.parametrize("text", ["3.5", "3.5 by", "a by b in", "3 by 4", "1 to 2 by 4 in", "at most 3 in by 4 in"])
def test_a_position_that_cannot_be_read_gets_an_example(text):
    outcome, problems = run(ORDER, {"pattern": "by position", "positions": f"0 by 0 in, {text}"})
    assert outcome is None and "3.5 by 4 in" in problems[0].mend


def test_the_drawing_shows_every_hole_and_the_table_its_boxes():
    told = order(pattern="circle", holes="8", torque="100 lbf·ft", **{name.replace(" ", "_"): text for name, text in WRENCH.items()}).told
    assert "1-5-3-7-2-6-4-8" in told.drawing.shows
    assert told.tables[0].rows[1] == ("2", "5", "□", "□")
