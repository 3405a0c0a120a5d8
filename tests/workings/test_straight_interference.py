"""Wheel seats of the demonstration book, worked by hand there; on the diameter and per side are never alike."""

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st

from witnessmark.core.drawing import Label
from witnessmark.workings.read_inputs import given_of, run
from witnessmark.workings.registry import WORKINGS

STRAIGHT = WORKINGS["straight-interference"]
SEAT = {"seat diameter": "3.750 in", "interference": "0.0040 in", "length": "4.50 in", "hub diameter": "7.00 in", "friction": "0.10 / 0.12 / 0.16",
        "hub material": "steel", "shaft material": "steel"}


def press(leave=(), **texts):
    given = {name: text for name, text in SEAT.items() if name not in leave}
    outcome, problems = run(STRAIGHT, {**given, **{name.replace("_", " "): text for name, text in texts.items()}})
    assert problems == []
    return outcome


@pytest.mark.parametrize(("texts", "force", "pressure", "hoop"), [
    ({"interference": "0.0045 in", "hub_diameter": "7.25 in", "hub_material": "grey-iron"}, "21.6 long ton (18.0 to 28.9)", "7619 psi", "13.2 ksi"),
    ({}, "32.4 long ton (27.0 to 43.2)", "11,408 psi", "20.6 ksi"),
    ({"seat_diameter": "4.000 in", "interference": "0.0045 in", "hub_diameter": "7.50 in", "length": "4.75 in"},
     "38.6 long ton (32.2 to 51.5)", "12,075 psi", "21.7 ksi")])
def test_wheel_seats_at_middle_interference(texts, force, pressure, hoop):
    outcome = press(**texts)
    assert [outcome.value(name).printed for name in ("press force", "contact pressure", "hub stress")] == [force, pressure, hoop]


def test_three_ways_to_say_how_tight_give_one_answer():
    whole = press()
    for other in (press(("interference",), interference_per_side="0.0020 in"), press(("interference",), bore_diameter="3.746 in")):
        assert other.value("press force").likely == pytest.approx(whole.value("press force").likely, rel=1e-9)
    assert press(interference_per_side="0.0020 in").refusals[0].message.startswith("the tightness is given 2 times")
    assert press(("interference",)).refusals[0].message == "it is not said how tight the fit is"


def test_a_result_per_side_is_not_taken_for_one_on_the_diameter():
    outcome = press()
    for name, asked, alike in (("interference on each side", "interference", False), ("interference on each side", "interference per side", True),
                               ("interference on diameter", "interference per side", False), ("interference on diameter", "interference", True)):
        texts = {key: text for key, text in SEAT.items() if key != "interference"}
        _, problems = run(STRAIGHT, {**texts, asked: given_of(outcome.value(name))})
        assert (problems == []) is alike, (name, asked)


def test_common_practice_stands_beside_and_warns():
    outcome = press(practice_for_each_inch="8 to 12 long ton")
    assert outcome.value("force by common practice").printed == "37.5 long ton (30.0 to 45.0)"
    assert outcome.warnings == ("at the lowest friction it may end under the 30.0 long ton of common practice",)
    assert "run past the 45.0 long ton" in press(practice_for_each_inch="6 to 12 long ton", friction="0.10 to 0.20").warnings[0]
    assert press(practice_for_each_inch="6 to 12 long ton").warnings == ()


@pytest.mark.parametrize(("leave", "texts", "says"), [
    (("interference",), {"bore_diameter": "3.751 in"}, "as large as the seat"), ((), {"hub_diameter": "3.7 in"}, "no larger outside"),
    ((), {"shaft_bore": "3.75 in"}, "as large as the shaft"), (("interference",), {"bore_diameter": "3.749 to 3.7505 in"}, "as large as the seat")])
def test_refusals(leave, texts, says):
    outcome = press(leave, **texts)
    assert outcome.values == () and says in outcome.refusals[0].message


def test_a_stress_that_reaches_the_ultimate_is_said_with_the_word_assumed():
    assert press(hub_ultimate="25 ksi").warnings == ()
    assert "assumed ultimate of 20 ksi" in press(hub_ultimate="20 ksi").warnings[0]


def test_interference_as_a_range_widens_force_and_stress():
    outcome = press(interference="0.0035 to 0.0045 in")
    assert outcome.value("press force").printed == "32.4 long ton (23.6 to 48.6)"
    assert outcome.value("hub stress").low < outcome.value("hub stress").likely < outcome.value("hub stress").high
    assert len(outcome.told.tables[0].rows) == 3


def test_both_systems_give_the_same():
    inch, metric = press(), press(seat_diameter="95.25 mm", interference="0.1016 mm", length="114.3 mm", hub_diameter="177.8 mm")
    for name in ("contact pressure", "hub stress", "press force", "torque held"):
        assert metric.value(name).likely == pytest.approx(inch.value(name).likely, rel=1e-9)
    assert metric.value("press force").printed == inch.value("press force").converted


tenths = st.integers(1, 80).map(lambda n: n / 10000)


@given_any(tenths, tenths, st.integers(40, 200), st.integers(0, 36))
def test_tighter_means_more_force_and_a_hollow_shaft_less(one, two, outside, bore):
    low, high = sorted((one, two))
    size = {"hub_diameter": f"{outside / 10} in"}
    loose, tight = (press(interference=f"{amount:.4f} in", **size) for amount in (low, high))
    for name in ("press force", "hub stress", "contact pressure", "torque held"):
        assert loose.value(name).likely <= tight.value(name).likely
    if bore:
        assert press(shaft_bore=f"{bore / 10} in", **size).value("press force").likely <= press(**size).value("press force").likely


def test_the_drawing_stays_in_its_frame():
    drawing = press(shaft_bore="1.5 in").told.drawing
    assert "bored 1.5 in" in drawing.shows and "0.00400 in tight on the diameter" in drawing.shows
    for mark in drawing.marks:
        points = getattr(mark, "points", ((getattr(mark, "x", 0), getattr(mark, "y", 0)),))
        assert all(0 <= x <= drawing.width and 0 <= y <= drawing.height for x, y in points)
        if isinstance(mark, Label):                             # a letter of the page's script is under 6 units wide
            room = {"start": drawing.width - mark.x, "end": mark.x, "middle": 2 * min(mark.x, drawing.width - mark.x)}[mark.anchor]
            assert 6 * len(mark.text) <= room, mark.text
