"""Torques of the demonstration book, worked by hand there, and the ways a torque is refused."""

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS

TORQUE = WORKINGS["tightening-torque"]
OILED, DRY = "0.13 / 0.15 / 0.17", "0.17 / 0.20 / 0.25"
TW1 = {"wrench lowest": "10 lb-ft", "wrench highest": "80 lb-ft", "wrench graduation": "1 lb-ft", "wrench accuracy": "4 %", "wrench length": "15 in"}
TW3 = {"wrench lowest": "150 lb-ft", "wrench highest": "600 lb-ft", "wrench graduation": "10 lb-ft", "wrench accuracy": "4 %", "wrench length": "42 in"}
CROWFOOT = {"adapter length": "3.0 in"}
NUT = {"thread": "1-1/2-12 UNF", "grade": "none", "nut factor": OILED, "force in": "long ton"}


def torque(**texts):
    outcome, problems = run(TORQUE, {name.replace("_", " "): text for name, text in texts.items()})
    assert problems == []
    return outcome


def work(*parts, **texts):
    merged = {}
    for part in parts:
        merged.update(part)
    return torque(**merged, **texts)


@pytest.mark.parametrize(("figure", "setting", "delivers", "clamp"), [
    (360, 330, 354, "8.6 long ton (7.3 to 10.3)"), (460, 420, 450, "11.0 long ton (9.3 to 13.1)"), (530, 490, 525, "12.6 long ton (10.7 to 15.1)")])
def test_nut_through_the_crowfoot(figure, setting, delivers, clamp):
    outcome = work(NUT, TW3, CROWFOOT, torque=f"{figure} lb-ft")
    assert outcome.value("setting").printed == f"{setting} lbf·ft"
    assert outcome.value("delivered torque").printed == f"{delivers} lbf·ft"
    assert outcome.value("clamp").printed == clamp
    assert not outcome.has("share of proof")


@pytest.mark.parametrize(("figure", "pressed", "worst"), [(460, "17.63", "74.5 %"), (360, "14.69", "70.0 %"), (420, "16.16", "74.3 %"), (500, "19.59", "72.9 %"), (530, "21.06", "71.9 %"), (360, "14.05", "73.2 %")])
def test_worst_share_of_the_press_force(figure, pressed, worst):
    outcome = work(NUT, TW3, torque=f"{figure} lb-ft", press_force=f"{pressed} long ton", press_ceiling="26 long ton")
    assert outcome.value("worst share of press force").printed == worst
    assert outcome.warnings == ()


def test_a_nut_that_would_press_is_warned_about_and_over_the_ceiling_blocked():
    outcome = work(NUT, torque="400 lb-ft", wrench_accuracy="4 %", press_force="14.046 long ton")
    assert "81.4 %" in outcome.warnings[0]
    blocked = work(NUT, torque="1100 lb-ft", wrench_accuracy="4 %", press_ceiling="22 long ton")
    assert blocked.values == () and "31.4 long ton" in blocked.refusals[0].message
    assert [line.value for line in blocked.lines][1:] == ["26.2 long ton", "22.2 long ton", "31.4 long ton"]


@pytest.mark.parametrize(("thread", "grade", "factor", "figure", "clamp", "share"), [
    ("7/16-20 UNF", "8", OILED, 55, "10,057 lbf", "71 %"), ("1/2-13 UNC", "5", OILED, 55, "8800 lbf", "73 %"),
    ("3/8-16 UNC", "2", DRY, 16, "2560 lbf", "60 %"), ("1/2-13 UNC", "5", DRY, 55, "6600 lbf", "55 %")])
def test_bolts(thread, grade, factor, figure, clamp, share):
    outcome = work(TW1, thread=thread, grade=grade, nut_factor=factor, torque=f"{figure} lb-ft")
    assert outcome.value("clamp").printed.startswith(clamp + " (")
    assert outcome.value("share of proof").printed == share
    assert outcome.value("torque").printed == f"{figure} lb-ft"
    assert outcome.value("setting").printed == f"{figure} lbf·ft"


def test_pinion_nut_at_both_ends_of_its_window():
    for figure, clamp, share in ((240, "17,067 lbf", "27 %"), (300, "21,333 lbf", "34 %")):
        outcome = work(thread="1-1/8-12 UNF", grade="5", nut_factor=OILED, torque=f"{figure} lb-ft")
        assert outcome.value("clamp").printed.startswith(clamp)
        assert outcome.value("share of proof").printed == share


def test_a_printed_torque_is_judged_and_never_changed():
    dry_figure_on_oil = work(thread="1/2-13 UNC", grade="5", nut_factor=OILED, torque="75 lb-ft")
    assert dry_figure_on_oil.value("torque").printed == "75 lb-ft"
    assert dry_figure_on_oil.value("share of proof").printed == "99 %"
    assert "over 90 %" in dry_figure_on_oil.warnings[0]
    assert "past its proof load" in work(thread="1/2-13 UNC", grade="5", nut_factor=OILED, torque="80 lb-ft").warnings[0]
    assert "work loose" in work(thread="1/2-13 UNC", grade="5", nut_factor=OILED, torque="15 lb-ft").warnings[0]
    assert work(thread="1/2-13 UNC", grade="5", nut_factor=OILED, torque="50 lb-ft").warnings == ()


def test_torque_from_a_share_of_proof_is_rounded_down():
    outcome = work(thread="3/4-16 UNF", grade="5", nut_factor=OILED, share_of_proof="75 %", wrench_graduation="5 lb-ft")
    assert (outcome.value("exact torque").printed, outcome.value("torque").printed, outcome.value("setting").printed) == ("222.9 lbf·ft", "220 lbf·ft", "220 lbf·ft")


@pytest.mark.parametrize(("thread", "grade", "words"), [
    ("1-1/8-7 UNC", "5.2", "not given for 1-1/8-7"), ("M20", "9.8", "not given for M20"), ("M12", "5", "unified threads and M12 is metric"),
    ("1/2-13", "10.9", "metric threads"), ("1/2-13", "6", "no strength is known"), ("#10-24", "5", "not given")])
def test_a_grade_outside_its_sizes_is_refused(thread, grade, words):
    outcome = work(thread=thread, grade=grade, nut_factor=OILED, torque="20 lb-ft")
    assert outcome.values == () and words in outcome.refusals[0].message and outcome.refusals[0].instead


@pytest.mark.parametrize("grade", ["grade 8", "SAE grade 8", "8", "SAE 8"])
def test_grade_spellings(grade):
    assert work(thread="7/16-20", grade=grade, nut_factor=OILED, torque="55 lb-ft").value("share of proof").printed == "71 %"


@pytest.mark.parametrize(("figure", "words"), [("140 lb-ft", "140.0 lbf·ft on the wrench is outside its range, 150 lb-ft to 600 lb-ft"), ("620 lb-ft", "outside its range")])
def test_a_setting_outside_the_wrench_is_refused(figure, words):
    outcome = work(NUT, TW3, torque=figure)
    assert words in outcome.refusals[0].message and "use a wrench that can be set to" in outcome.refusals[0].instead


def test_adapter_needs_the_wrench_length_and_leverage():
    no_length = {name: text for name, text in TW3.items() if name != "wrench length"}
    assert "length is not given" in work(NUT, no_length, CROWFOOT, torque="460 lb-ft").refusals[0].message
    back = work(NUT, TW3, torque="460 lb-ft", adapter_length="42 in", adapter_angle="180°")
    assert "takes all the leverage away" in back.refusals[0].message
    square = work(NUT, TW3, CROWFOOT, torque="460 lb-ft", adapter_angle="90°")
    assert square.value("setting").printed == "460 lbf·ft"


def test_rounds_end_at_the_setting():
    outcome = work(NUT, TW3, torque="460 lb-ft", passes="3")
    assert [outcome.value(f"pass {n}").printed for n in (1, 2, 3)] == ["230 lbf·ft", "340 lbf·ft", "460 lbf·ft"]
    assert not work(NUT, TW3, torque="460 lb-ft").has("pass 1")


def test_nothing_to_work_with_is_refused():
    assert "no torque to judge" in work(NUT).refusals[0].message
    assert "no torque to judge" in work(NUT, share_of_proof="75 %").refusals[0].message


figures = st.integers(1, 600)


@given_any(figures, st.integers(1, 24), st.integers(0, 179))
def test_a_setting_never_delivers_more_than_the_figure(figure, adapter, angle):
    outcome = work(NUT, {**TW3, "wrench lowest": "1 lb-ft", "wrench highest": "2000 lb-ft"}, torque=f"{figure} lb-ft",
                   adapter_length=f"{adapter} in", adapter_angle=f"{angle}°")
    if not outcome.refusals:
        assert outcome.value("delivered torque").likely <= outcome.value("torque").likely * (1 + 1e-9)


@given_any(figures, figures)
def test_more_torque_clamps_more(one, two):
    low, high = (work(NUT, torque=f"{figure} lb-ft").value("clamp") for figure in sorted((one, two)))
    assert low.low <= high.low and low.likely <= high.likely and low.high <= high.high


@given_any(figures)
def test_both_systems_of_units_agree(figure):
    inch = work(thread="1/2-13", grade="none", nut_factor=OILED, torque=f"{figure} lb-ft")
    metric = work(thread="1/2-13", grade="none", nut_factor=OILED, torque=f"{figure * 1.3558179483314004:.10f} N·m")
    assert metric.value("clamp").likely == pytest.approx(inch.value("clamp").likely, rel=1e-9)
    assert metric.value("clamp").printed.split(" ")[1] == "kN"


@pytest.mark.parametrize("figure", [10, 80])
def test_either_end_of_the_wrench_is_inside_its_range(figure):
    outcome = work(NUT, TW1, torque=f"{figure} lb-ft")
    assert not outcome.refusals and outcome.value("setting").printed == f"{figure} lbf·ft"
