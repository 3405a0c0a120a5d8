"""End play changed by a gasket, and bearings set by shim."""

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS

CAP = {"setting": "end play", "wanted": "0.0010 to 0.0016 in", "more shim": "loosens", "shim now": "0.012 in"}


def gasket(**texts):
    outcome, problems = run(WORKINGS["gasket-end-play"], {name.replace("_", " "): text for name, text in texts.items()})
    assert problems == []
    return outcome


def shim(**texts):
    given = {**CAP, **{name.replace("_", " "): text for name, text in texts.items()}}
    outcome, problems = run(WORKINGS["bearing-shim"], {name: text for name, text in given.items() if text})
    assert problems == []
    return outcome


def test_gaskets_in_place_and_the_change():
    outcome = gasket(old_gasket="0.055 in", old_squeeze="5 %", new_gasket="0.062 in", new_squeeze="15 %")
    assert outcome.value("new gasket in place").printed == "0.0527 in"
    assert outcome.value("old gasket in place").printed == "0.0523 in"
    assert outcome.value("change of end play").likely / 0.0254 == pytest.approx(0.00045, abs=1e-9)


def test_a_thinner_gasket_takes_play_away():
    outcome = gasket(old_gasket="0.015 in", new_gasket="0.006 in", end_play_now="0.012 in")
    assert outcome.value("change of end play").printed == "-0.0090 in"
    assert outcome.value("end play after").printed == "0.0030 in"


@pytest.mark.parametrize(("wanted", "said"), [("0.006 to 0.012 in", None), ("0.0080 to 0.012 in", "may be outside"), ("0.020 to 0.030 in", "is outside")])
def test_the_play_after_is_judged_over_its_band(wanted, said):
    outcome = gasket(old_gasket="0.006 in", old_squeeze="10 to 20 %", new_gasket="0.010 in", new_squeeze="10 to 20 %", end_play_now="0.005 in", wanted=wanted)
    assert outcome.value("end play after").printed == "0.0084 in (0.0076 to 0.0092)"
    assert (outcome.warnings == ()) if said is None else (said in outcome.warnings[-1])


def test_a_gasket_squeezed_to_nothing_is_refused():
    assert "to nothing" in gasket(old_gasket="0.006 in", old_squeeze="100 %", new_gasket="0.010 in").refusals[0].message


def test_a_cap_from_the_play_read_with_its_shims():
    outcome = shim(play_read="0.0029 in")
    assert outcome.value("shim").printed == "0.0101 to 0.0107 in"
    assert outcome.value("to do").printed.startswith("take out 0.0016")


@pytest.mark.parametrize(("made", "leaves", "warned"), [("0.0105 in", "0.0014 in", False), ("0.010 in", "0.0009 in", True), ("0.011 in", "0.0019 in", True)])
def test_what_the_stack_that_was_made_leaves(made, leaves, warned):
    outcome = shim(play_read="0.0029 in", shim_made=made)
    assert outcome.value("leaves").printed == leaves and outcome.value("that is").printed == "end play"
    assert bool(outcome.warnings) == warned


def test_the_window_of_the_shim_goes_straight_into_the_stack():
    from witnessmark.workings.read_inputs import given_of
    thickness = given_of(shim(play_read="0.0029 in").value("shim"))
    outcome, problems = run(WORKINGS["shim-stack"], {"thickness": thickness, "stock": "0.0005 in, 0.002 in, 0.003 in, 0.005 in"})
    assert problems == [] and outcome.value("stack").printed == "2 × 0.005 + 0.0005 in"


@pytest.mark.parametrize(("more", "setting", "expected"), [("loosens", "end play", 0.032), ("loosens", "preload", 0.028), ("tightens", "end play", 0.028), ("tightens", "preload", 0.032)])
def test_a_gap_with_no_shim_in(more, setting, expected):
    outcome = shim(more_shim=more, setting=setting, wanted="0.002 in", gap="0.030 in", shim_now=None, shim_made=f"{expected} in")
    assert outcome.value("shim").likely / 0.0254 == pytest.approx(expected)
    assert outcome.value("leaves").printed == "0.0020 in" and outcome.value("that is").printed == setting
    assert not outcome.warnings


def test_what_is_not_measured_or_measured_twice_is_refused_with_a_table_where_one_can_be_made():
    outcome = shim()
    assert "nothing is measured" in outcome.refusals[0].message
    assert ("0.0030 in", "0.0103 in (0.0100 to 0.0106)") in outcome.told.tables[0].rows
    assert "two ways" in shim(gap="0.030 in", play_read="0.002 in").refusals[0].message
    assert "less than none" in shim(play_read="0.020 in").refusals[0].message


@given_any(st.integers(0, 100), st.integers(0, 60), st.sampled_from(["loosens", "tightens"]), st.sampled_from(["end play", "preload"]))
def test_a_shim_as_worked_out_leaves_what_is_wanted(read, wanted, more, setting):
    given = {"more_shim": more, "setting": setting, "wanted": f"{wanted / 10000:.4f} in", "shim_now": "0.030 in", "play_read": f"{read / 10000:.4f} in"}
    needed = shim(**given).value("shim").likely / 0.0254
    outcome = shim(**given, shim_made=f"{needed:.6f} in")
    assert outcome.value("leaves").likely / 0.0254 == pytest.approx(wanted / 10000, abs=2e-6)


def test_both_systems_of_units_agree():
    metric = shim(wanted="0.0254 to 0.04064 mm", shim_now="0.3048 mm", play_read="0.07366 mm")
    assert metric.value("shim").likely == pytest.approx(shim(play_read="0.0029 in").value("shim").likely, rel=1e-9)
    assert metric.value("shim").printed == "0.257 to 0.272 mm"
