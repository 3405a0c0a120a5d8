"""Slots, dressing and which way a castle nut goes."""

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st
from witnessmark.workings.castle_nut import ADJUSTS, CLAMPS, places_of_slots
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS

NUT = WORKINGS["castle-nut"]


def nut(thread, what=CLAMPS, **texts):
    outcome, problems = run(NUT, {"thread": thread, "the nut": what, **{name.replace("_", " "): text for name, text in texts.items()}})
    assert problems == []
    return outcome


@pytest.mark.parametrize(("thread", "advance"), [("1-1/8-12 UNF", "0.0139 in"), ("1/2-20 UNF", "0.0083 in"), ("M12 x 1.25", "0.208 mm")])
def test_advance_of_a_slot(thread, advance):
    outcome = nut(thread)
    assert outcome.value("advance of one slot").printed == advance
    assert outcome.value("one slot").printed == "60.0°"


def test_which_way_must_be_said():
    outcome, problems = run(NUT, {"thread": "1/2-20 UNF"})
    assert outcome is None and "needs 'the nut'" in problems[0].message
    assert nut("1/2-20 UNF").value("which way").printed.startswith("forward")
    assert nut("1/2-20 UNF", ADJUSTS).value("which way").printed.startswith("back off")


def test_forward_goes_what_is_short_and_back_the_rest_of_the_slot():
    forward, back = nut("1/2-20 UNF", degrees_short="20 °"), nut("1/2-20 UNF", ADJUSTS, degrees_short="20 °")
    assert (forward.value("turn to make").printed, forward.value("movement").printed, forward.value("dressing").printed) == ("20.0°", "0.0028 in", "0.0028 in")
    assert (back.value("turn to make").printed, back.value("movement").printed) == ("40.0°", "0.0056 in")
    assert not back.has("dressing")
    assert nut("1/2-20 UNF", ADJUSTS, degrees_short="0 °").value("turn to make").likely == 0


@pytest.mark.parametrize(("window", "graduation", "settings"), [("56 to 64 lbf·ft", "1 lbf·ft", ("59 lbf·ft", "61 lbf·ft")),
                                                                ("240 to 300 lbf·ft", "10 lbf·ft", ("250 lbf·ft", "280 lbf·ft"))])
def test_first_and_stop_setting(window, graduation, settings):
    outcome = nut("1/2-20 UNF", torque_window=window, wrench_graduation=graduation, wrench_accuracy="4 %")
    assert (outcome.value("first setting").printed, outcome.value("stop setting").printed) == settings
    assert "dress" in outcome.warnings[0]


@pytest.mark.parametrize(("what", "texts", "said"), [
    (CLAMPS, {"degrees_short": "60 °"}, "slot or more"), (CLAMPS, {"slots": "5"}, "no castle nut"), (CLAMPS, {"cross_holes": "3"}, "no castle nut"),
    (ADJUSTS, {"torque_window": "56 to 64 lbf·ft"}, "not left at a torque"), (CLAMPS, {"torque_window": "56 to 64 lbf·ft"}, "without the wrench"),
    (CLAMPS, {"torque_window": "56 to 57 lbf·ft", "wrench_graduation": "1 lbf·ft", "wrench_accuracy": "4 %"}, "no graduation")])
def test_refusals(what, texts, said):
    outcome = nut("1/2-20 UNF", what, **texts)
    assert outcome.values == () and said in outcome.refusals[0].message


@pytest.mark.parametrize("slots", [6, 8, 10, 12])
@pytest.mark.parametrize("holes", [1, 2])
def test_places_counted_one_by_one(slots, holes):
    """Every slot against every end of every hole, in hundredths of a degree."""
    ends = [0, 18000] if holes == 1 else [0, 9000, 18000, 27000]
    met = {round(end - slot * 36000 / slots) % 36000 for slot in range(slots) for end in ends}
    assert len(met) == places_of_slots(slots, holes)


@given_any(st.integers(0, 59), st.sampled_from(["1/2-20 UNF", "3/4-16 UNF", "1-8 UNC"]))
def test_forward_and_back_make_a_slot_together(short, thread):
    forward, back = nut(thread, degrees_short=f"{short} °"), nut(thread, ADJUSTS, degrees_short=f"{short} °")
    whole = forward.value("advance of one slot").likely
    together = forward.value("movement").likely + back.value("movement").likely
    assert together == pytest.approx(whole if short else 0.0, abs=1e-12)


def test_the_table_covers_one_slot():
    assert nut("1/2-20 UNF").told.tables[0].rows[2] == ("30°", "30°", "0.0042 in")
    assert "forward" in nut("1/2-20 UNF").told.drawing.shows
