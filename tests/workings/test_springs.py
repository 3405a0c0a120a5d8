"""Springs: what is refused, which way the figures move, and that both systems of units say the same."""

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st
from witnessmark.core.quantity import read_quantity
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS

AXLE = {"wire": "0.875 in", "mean diameter": "4.00 in", "active coils": "6 turns", "shear modulus": "11.5 Mpsi", "free height": "9.00 in"}
TESTER = {"scale highest": "3,000 lbf", "scale division": "20 lbf", "scale accuracy": "1 %"}


def work(name, texts, **more):
    outcome, problems = run(WORKINGS[name], {**texts, **{key.replace("_", " "): text for key, text in more.items()}})
    assert problems == []
    return outcome


def spring(**more):
    return work("spring", AXLE, **more)


def on_tester(**more):
    return work("spring-test", TESTER, **more)


@pytest.mark.parametrize(("more", "said"), [
    ({"wire": "4 in"}, "as thick as the coil"),
    ({"height": "9.00 in"}, "not squeezed"),
    ({"height": "7.00 in", "total_coils": "8 turns"}, "already be bound"),
    ({"height": "7.20 in", "solid_height": "7.25 in"}, "already be bound"),
    ({"load": "4400 lbf", "total_coils": "8 turns"}, "would be bound"),
    ({"load": "30000 lbf"}, "nothing of the height"),
    ({"total_coils": "11 turns"}, "no travel above the solid height"),
    ({"wire": "0.000000000001 in"}, "no size of any machine"),
])
def test_refusals(more, said):
    outcome = spring(**more)
    assert outcome.values == () and said in outcome.refusals[0].message


def test_a_height_without_the_free_height_is_refused():
    texts = {name: text for name, text in AXLE.items() if name != "free height"}
    assert "free height is needed" in work("spring", texts, height="7 in").refusals[0].message
    assert [value.name for value in work("spring", texts).values] == ["spring rate"]


def test_height_under_load_undoes_load_at_height():
    loaded = spring(height="7.86 in").value("load at height").likely
    back = spring(load=f"{loaded / 4.4482216152605:.6f} lbf").value("height under load").likely
    assert back == pytest.approx(7.86 * 0.0254, abs=1e-9)


def test_little_travel_left_is_warned_about():
    assert any("15 %" in warning for warning in spring(height="7.20 in", total_coils="8 turns").warnings)
    assert not spring(height="7.40 in", total_coils="8 turns").warnings


def test_the_band_runs_from_thin_wire_to_thick():
    value = spring(wire="0.870 to 0.880 in").value("spring rate")
    assert value.low < value.likely < value.high
    assert value.low == pytest.approx(spring(wire="0.870 in").value("spring rate").likely)
    assert value.high == pytest.approx(spring(wire="0.880 in").value("spring rate").likely)


thousandths = st.integers(100, 1500)


@given_any(thousandths, thousandths)
def test_thicker_wire_is_stiffer_and_a_wider_coil_softer(one, two):
    thin, thick = sorted((one, two))
    rate = lambda **more: spring(**more).value("spring rate").likely  # noqa: E731
    assert rate(wire=f"{thin / 1000} in") <= rate(wire=f"{thick / 1000} in")
    assert rate(mean_diameter=f"{1 + thin / 100} in") >= rate(mean_diameter=f"{1 + thick / 100} in")


@given_any(st.integers(7001, 8999))
def test_both_systems_of_units_agree(height):
    inch = spring(height=f"{height / 1000} in", total_coils="8 turns")
    metric = work("spring", {**AXLE, "wire": "22.225 mm", "mean diameter": "101.6 mm", "free height": "228.6 mm"},
                  height=f"{height * 0.0254:.6f} mm", total_coils="8 turns")
    for value in inch.values:
        assert metric.value(value.name).likely == pytest.approx(value.likely, rel=1e-9)
        if value.kind != "stress":                   # printed to whole ksi, and to whole MPa
            assert read_quantity(metric.value(value.name).printed, value.kind).si_low == pytest.approx(value.likely, rel=5.1e-3)


@given_any(st.integers(50, 2600), st.integers(1, 40))
def test_what_is_proved_good_is_over_the_limit_with_the_tester_at_its_worst(limit, tenths):
    outcome = on_tester(reject_limit=f"{limit} lbf", scale_accuracy=f"{tenths / 10} %")
    if not outcome.refusals:
        line, doubt = outcome.value("accept line").likely, outcome.value("uncertainty").likely
        assert line - doubt >= limit * 4.4482216152605 * (1 - 1e-9)
        assert read_quantity(outcome.value("accept line").printed, "force").low % 20 == 0


@pytest.mark.parametrize(("more", "said"), [
    ({}, "from which load"),
    ({"load": "3,000 lbf"}, "from which load"),
    ({"reject_limit": "2,990 lbf"}, "past the end of the tester"),
    ({"load": "100 lbf", "share": "90 %"}, "could not even prove a new spring good"),
])
def test_a_tester_that_cannot_tell_is_refused(more, said):
    outcome = on_tester(**more)
    assert outcome.values == () and said in outcome.refusals[0].message


@pytest.mark.parametrize(("reading", "said"), [("2,220 lbf", "reject"), ("2,260 lbf", "not proved good"), ("2,280 lbf", "not proved good"),
                                               ("2,300 lbf", "good"), ("2,380 lbf", "good")])
def test_verdicts(reading, said):
    outcome = on_tester(reject_limit="2,251 lbf", reading=reading)
    assert outcome.value("verdict").printed == said
    assert said in outcome.told.drawing.shows and reading in outcome.told.drawing.shows


def test_the_drawing_stays_on_its_paper():
    for reading in ("20 lbf", "2,300 lbf", "3,000 lbf"):
        drawing = on_tester(load="2,500 lbf", share="90 %", reading=reading).told.drawing
        for mark in drawing.marks:
            for x, y in getattr(mark, "points", ((getattr(mark, "x", 0), getattr(mark, "y", 0)),)):
                assert 0 <= x <= drawing.width and 0 <= y <= drawing.height


@pytest.mark.parametrize(("load", "squeeze", "energy"), [("2505 lbf", "1.14 in", "119 lbf·ft"), ("1000 lbf", "0.46 in", "19.0 lbf·ft")])
def test_under_a_load(load, squeeze, energy):
    outcome = spring(load=load)
    assert outcome.value("squeeze under load").printed == squeeze and outcome.value("stored energy under load").printed == energy
    assert outcome.value("stored energy under load").likely == pytest.approx(
        float(load.split()[0]) * 4.4482216152605 * outcome.value("squeeze under load").likely / 2)


def test_a_reject_limit_is_written_as_one():
    limit = on_tester(reject_limit="2,251 lbf").value("reject limit")
    assert (limit.printed, limit.converted) == ("under 2251 lbf", "under 10,013 N")
