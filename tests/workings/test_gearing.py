"""Ratios as exact counts, speeds that a stopwatch proves, and the torque at which wheels slip."""

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st
from witnessmark.core.quantity import read_quantity
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS


def work(name, **texts):
    outcome, problems = run(WORKINGS[name], {key.replace("_", " "): text for key, text in texts.items()})
    assert problems == []
    return outcome


def ratio(**texts):
    return work("gear-ratio", **texts)


@pytest.mark.parametrize(("texts", "count"), [
    ({"ratios": "3.90"}, "39 turns in to 10 out"),
    ({"ratios": "4.10"}, "41 turns in to 10 out"),
    ({"driving_teeth": "13", "driven_teeth": "52"}, "4 turns in to 1 out"),
    ({"driving_teeth": "30", "driven_teeth": "20"}, "2 turns in to 3 out"),
    ({"ratios": "3.1416"}, "about 22 turns in to 7 out"),
])
def test_counts(texts, count):
    assert ratio(**texts).value("count").printed == count


@pytest.mark.parametrize(("texts", "said"), [
    ({}, "nothing to make a ratio of"),
    ({"driving_teeth": "20, 13", "driven_teeth": "30"}, "make no pairs"),
    ({"driving_teeth": "20"}, "make no pairs"),
])
def test_no_ratio(texts, said):
    outcome = ratio(**texts)
    assert outcome.values == () and said in outcome.refusals[0].message


def test_what_goes_in_comes_out_slower_and_stronger():
    outcome = ratio(ratios="4", input_speed="1000 rpm", input_torque="100 lbf·ft", efficiency="90 %", pitch_diameter="6 in")
    printed = {value.name: value.printed for value in outcome.values}
    assert printed["output speed"] == "250 rpm" and printed["output torque"] == "360 lbf·ft" and printed["pull"] == "1440 lbf"


teeth = st.integers(5, 120)


@given_any(teeth, teeth, teeth, teeth)
def test_pairs_multiply_and_one_turned_round_undoes_itself(a, b, c, d):
    there = ratio(driving_teeth=f"{a}, {b}", driven_teeth=f"{c}, {d}").value("ratio").likely
    back = ratio(driving_teeth=f"{c}, {d}", driven_teeth=f"{a}, {b}").value("ratio").likely
    assert there * back == pytest.approx(1)
    assert there == pytest.approx(c / a * d / b)


def speed(**more):
    return work("road-speed", **{"engine_speed": "1,000 rpm", "ratio": "23.4", "wheel_diameter": "20.0 in", **more})


def test_speed_refusals():
    assert "too short to prove" in speed(distance="1 ft", within="3 %").refusals[0].message
    assert "no proof" in speed(within="100 %").refusals[0].message


@given_any(st.integers(20, 5000), st.integers(10, 100))
def test_a_time_inside_the_band_is_a_speed_inside_the_band(feet, tenths):
    outcome = speed(distance=f"{feet} ft", within=f"{tenths / 10} %")
    if outcome.refusals:
        return
    band, exact = outcome.value("stopwatch to accept"), outcome.value("road speed").likely
    for time in (band.low, band.high):
        assert abs(feet * 0.3048 / time / exact - 1) <= tenths / 1000 * (1 + 1e-6)


@given_any(st.integers(5, 90), st.integers(10, 3000))
def test_both_systems_of_units_agree(inches, tenths):
    inch = speed(wheel_diameter=f"{inches} in", ratio=f"{tenths / 10}", distance="100 ft")
    metric = speed(wheel_diameter=f"{inches * 25.4:.2f} mm", ratio=f"{tenths / 10}", distance="30.48 m")
    assert inch.value("stopwatch").printed == metric.value("stopwatch").printed
    assert inch.value("road speed").likely == pytest.approx(metric.value("road speed").likely, rel=1e-12)


def slip(**more):
    return work("slip-torque", **{"weight_on_the_wheels": "5.5 long ton", "adhesion": "0.30", "wheel_radius": "10.0 in", **more})


def test_a_reduction_spares_the_shaft():
    assert slip(reduction="4").value("slip torque").printed == "770 lbf·ft"
    assert slip().value("slip torque").likely == pytest.approx(4 * slip(reduction="4").value("slip torque").likely)


def test_the_band_follows_the_adhesion():
    band = slip(adhesion="0.20 / 0.30 / 0.35").value("slip torque")
    assert band.printed == "3080 lbf·ft (2053 to 3593)"


@given_any(st.integers(1, 90), st.integers(1, 90))
def test_more_grip_is_more_torque(one, two):
    low, high = sorted((one, two))
    assert slip(adhesion=f"{low / 100}").value("slip torque").likely <= slip(adhesion=f"{high / 100}").value("slip torque").likely


def test_slip_in_both_systems():
    metric = slip(weight_on_the_wheels="5588.26 kg", wheel_radius="254 mm").value("slip torque")
    assert metric.printed == "4176 N·m"
    assert read_quantity(metric.converted, "torque").si_low == pytest.approx(slip().value("slip torque").likely, rel=1e-3)
