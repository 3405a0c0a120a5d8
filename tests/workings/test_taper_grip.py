"""Floors and grips of the demonstration book's tapers, worked by hand there."""

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS

GRIP = WORKINGS["taper-grip"]
CRANK = {"taper": "1:12", "mean diameter": "3.000 in", "length": "3.50 in", "friction": "0.12 / 0.15 / 0.20"}


def grip(torque, **texts):
    outcome, problems = run(GRIP, {**CRANK, "torque to carry": torque, **{name.replace("_", " "): text for name, text in texts.items()}})
    assert problems == []
    return outcome


@pytest.mark.parametrize(("torque", "floor"), [(2520, "12.2 long ton"), (3080, "14.9 long ton"), (3640, "17.6 long ton")])
def test_floors(torque, floor):
    value = grip(f"{torque} lb-ft").value("force needed")
    assert value.printed == floor
    assert value.likely == pytest.approx(float(floor.split()[0]) * 9964.016, rel=1e-6)


@pytest.mark.parametrize(("force", "grips", "off"), [(15, "3287 lbf·ft (3118 to 3476)", "8.5 long ton (7.3 to 9.8)"),
                                                     (18, "3944 lbf·ft (3741 to 4171)", "10.2 long ton (8.7 to 11.8)"),
                                                     (21.5, "4711 lbf·ft (4468 to 4982)", "12.2 long ton (10.4 to 14.1)")])
def test_grip_and_push_off_at_a_force(force, grips, off):
    outcome = grip("2000 lb-ft", force=f"{force} long ton")
    assert outcome.value("grip").printed == grips
    assert outcome.value("push-off force").printed == off


def test_contact_pressure_rises_as_friction_falls():
    outcome = grip("1690 lb-ft", **{"mean_diameter": "2.375 in", "length": "3.00 in", "taper": "1:16", "friction": "0.12 to 0.20", "force": "12 short ton"})
    assert outcome.value("contact pressure").printed.endswith("(4640 to 7090)")


def test_a_force_that_does_not_hold_is_warned_about():
    assert grip("3080 lb-ft", force="14.8 long ton").warnings
    assert not grip("3080 lb-ft", force="14.9 long ton").warnings


def test_a_taper_that_would_not_hold_itself_is_refused():
    outcome = grip("3080 lb-ft", friction="0.04 / 0.06 / 0.10")
    assert outcome.values == () and "would not hold itself" in outcome.refusals[0].message
    assert "to a point" in grip("3080 lb-ft", taper="2:1", friction="2").refusals[0].message


def test_unit_of_the_floor_follows_the_torque_or_the_author():
    assert grip("4176 N·m").value("force needed").printed == "148 kN"
    assert grip("3080 lb-ft", force_in="short ton").value("force needed").printed == "16.6 short ton"


frictions = st.integers(43, 300).map(lambda thousandths: f"{thousandths / 1000:.3f}")


@given_any(frictions, frictions)
def test_less_friction_needs_more_force(one, two):
    low, high = sorted((one, two))
    assert grip("3080 lb-ft", friction=low).value("force needed").likely >= grip("3080 lb-ft", friction=high).value("force needed").likely


@given_any(st.integers(20, 9000), frictions)
def test_the_floor_always_carries_the_torque(torque, friction):
    floor = grip(f"{torque} lb-ft", friction=friction).value("force needed").likely
    held = floor * 0.0762 / 2 * float(friction) / (float(friction) + 1 / 24)
    assert held >= torque * 1.3558179483314004 * (1 - 1e-9)


@given_any(st.integers(20, 9000))
def test_both_systems_of_units_agree(torque):
    inch = grip(f"{torque} lb-ft")
    metric = grip(f"{torque * 1.3558179483314004:.10f} N·m", mean_diameter="76.2 mm", length="88.9 mm", force_in="long ton")
    assert metric.value("force needed").printed == inch.value("force needed").printed
