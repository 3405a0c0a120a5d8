"""Ring gears of the demonstration book, worked by hand there, and what must always hold of heat and cold."""

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st

from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS

SHRINK = WORKINGS["shrink-fit"]
RING = {"way": "heat the outer", "diameter": "15.750 in", "interference": "0.018 in", "clearance": "0.012 in", "material": "steel",
        "room temperature": "65 °F", "never pass": "450 °F"}
COLD = {"way": "cool the inner", "diameter": "3.25 in", "interference": "0.0020 in", "clearance": "0.001 in", "room temperature": "70 °F", "never pass": "-109 °F"}


def shrink(base=None, **texts):
    outcome, problems = run(SHRINK, {**(base or RING), **{name.replace("_", " "): text for name, text in texts.items()}})
    assert problems == []
    return outcome


@pytest.mark.parametrize(("tight", "fahrenheit", "celsius"), [("0.016 in", "339 °F", "170.3 °C"), ("0.018 in", "358 °F", "181.1 °C"), ("0.020 in", "378 °F", "192.0 °C")])
def test_oven_for_a_ring_gear(tight, fahrenheit, celsius):
    oven = shrink(interference=tight).value("bring it to")
    assert (oven.printed, oven.converted) == (fahrenheit, celsius)


def test_a_rise_converts_without_the_32():
    rise = shrink().value("change of temperature")
    assert (rise.printed, rise.converted) == ("293 °F rise", "162.8 °C rise")


def test_what_is_still_free_on_the_way():
    """The book: .006 in is still free at 300 °F."""
    outcome = shrink(never_pass="300 °F", clearance="0.006 in")
    assert outcome.value("clearance at the limit").printed == "0.006 in"
    assert shrink().value("grips at").printed == "241 °F"
    assert len(outcome.told.tables[0].rows) == 5


def test_ring_stress_when_it_is_cold():
    assert shrink().value("ring stress").printed == "34 ksi"


@pytest.mark.parametrize(("base", "texts", "says"), [
    (RING, {"never_pass": "340 °F"}, "at the limit of 340 °F it grows 0.028 in, not the 0.030 in"), (RING, {"never_pass": "60 °F"}, "wrong side"),
    (COLD, {"never_pass": "80 °F"}, "wrong side"), (COLD, {"clearance": "0.002 in"}, "it shrinks 0.003 in, not the 0.004 in"),
    (COLD, {"never_pass": "-400 °F"}, "table of steel")])
def test_refusals(base, texts, says):
    outcome = shrink(base, **texts)
    assert outcome.values == () and says in outcome.refusals[0].message


def test_heating_needs_an_expansion():
    outcome, problems = run(SHRINK, {name: text for name, text in RING.items() if name != "material"})
    assert problems == [] and "how the outer part expands" in outcome.refusals[0].message


def test_steel_in_the_cold_needs_more_degrees_than_the_warm_coefficient_says():
    by_table, by_warm = shrink(COLD), shrink(COLD, cold_expansion="6.5 ppm/°F")
    assert by_table.value("bring it to").printed == "-93 °F" and by_warm.value("bring it to").printed == "-72 °F"
    assert "another metal" in by_table.warnings[0] and by_warm.warnings == ()


def test_tightest_and_least_expanding_decide():
    assert shrink(interference="0.016 to 0.018 in").value("bring it to").printed == "358 °F"
    assert shrink(expansion="6.5 to 7.0 ppm/°F").value("bring it to").printed == "358 °F"


def test_both_systems_give_the_same():
    inch = shrink()
    metric = shrink(diameter="400.05 mm", interference="0.4572 mm", clearance="0.3048 mm", room_temperature="18.3333333333 °C", never_pass="232.2222222222 °C")
    assert metric.value("bring it to").likely == pytest.approx(inch.value("bring it to").likely, abs=1e-6)
    assert metric.value("bring it to").printed == "181 °C"


tight = st.integers(1, 30).map(lambda n: f"{n / 1000:.3f} in")


@given_any(tight, tight, st.sampled_from(["RING", "COLD"]))
def test_tighter_needs_more(one, two, which):
    low, high = sorted((one, two))
    base = RING if which == "RING" else {**COLD, "never pass": "-320 °F", "diameter": "15.75 in"}
    loose, tighter = shrink(base, interference=low), shrink(base, interference=high)
    if tighter.values:
        assert abs(loose.value("change of temperature").likely) <= abs(tighter.value("change of temperature").likely) + 1e-9
        assert loose.value("clearance at the limit").likely >= tighter.value("clearance at the limit").likely
    else:
        assert tighter.refusals
