"""Run-out: half of what the dial moves, shaft told from part, and a face limit that never rounds up."""

import cmath
import math

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS
from witnessmark.workings.run_out import shaft_and_part


def work(name, **texts):
    outcome, problems = run(WORKINGS[name], {key.replace("_", " "): text for key, text in texts.items()})
    assert problems == []
    return outcome


def test_the_centre_is_off_by_half_the_reading():
    assert work("run-out", reading="0.0006 in").value("eccentricity").printed == "0.00030 in"
    assert work("run-out", reading="0.06 mm").value("eccentricity").printed == "0.030 mm"


def test_one_reading_with_a_high_spot_is_refused():
    outcome = work("run-out", reading="0.006 in", high_spot="30°")
    assert outcome.values == () and "cannot be told apart" in outcome.refusals[0].message


@pytest.mark.parametrize(("spot", "shaft", "part"), [("30°", "0.00400 in", "0.00200 in"), ("210°", "0.00200 in", "0.00400 in")])
def test_high_spot_that_stays_is_the_shaft_and_one_that_goes_is_the_part(spot, shaft, part):
    outcome = work("run-out", reading="0.006 in", high_spot="30°", reading_turned="0.002 in", high_spot_turned=spot)
    assert (outcome.value("shaft run-out").printed, outcome.value("part run-out").printed) == (shaft, part)


angles = st.floats(0, 2 * math.pi)
sizes = st.floats(1e-6, 1e-2)


@given_any(sizes, angles, sizes, angles)
def test_shaft_and_part_are_found_again_from_what_a_dial_would_show(shaft, at, part, lies):
    bent, off = cmath.rect(shaft, at), cmath.rect(part, lies)
    before, after = bent + off, bent - off
    found = shaft_and_part(abs(before), cmath.phase(before), abs(after), cmath.phase(after))
    assert found == pytest.approx((shaft, part), rel=1e-6, abs=1e-12)


@pytest.mark.parametrize(("reading", "said"), [("0.0049 in", "inside the limit"), ("0.005 in", "inside the limit"), ("0.0051 in", "over the limit")])
def test_verdict(reading, said):
    assert work("run-out", reading=reading, limit="0.005 in").value("verdict").printed == said


def face(radius, **more):
    return work("face-run-out", limit="0.0005 in", on_each="1 in", radius=radius, **more)


def test_a_limit_less_than_a_division_is_refused():
    outcome = face("0.9 in", division="0.0005 in")
    assert outcome.values == () and "less than the dial can show" in outcome.refusals[0].message


@given_any(st.integers(1000, 40000))
def test_the_face_limit_never_rounds_up_and_both_systems_say_the_same(radius):
    most = face(f"{radius / 1000} in", division="0.0001 in").value("most run-out")
    assert most.likely <= 0.0005 * radius / 1000 * 0.0254 * (1 + 1e-6)
    assert most.likely >= (0.0005 * radius / 1000 - 0.0001) * 0.0254
    metric = work("face-run-out", limit="0.0127 mm", on_each="25.4 mm", radius=f"{radius * 0.0254:.6f} mm", division="0.0001 in").value("most run-out")
    assert metric.printed == most.printed


def test_tilt_and_verdict_of_a_reading():
    outcome = face("6.75 in", reading="0.003 in")
    assert outcome.value("verdict").printed == "inside the limit"
    assert math.tan(outcome.value("tilt").likely) == pytest.approx(0.003 / 13.5)
    assert face("6.75 in", reading="0.0031 in").value("verdict").printed == "over the limit"
