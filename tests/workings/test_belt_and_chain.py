"""Belts and chains: spans, sag inside its window, growth, and an even number of links."""

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st
from witnessmark.workings.belt_and_chain import centres_for, links
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS


def work(name, **texts):
    outcome, problems = run(WORKINGS[name], {key.replace("_", " "): text for key, text in texts.items()})
    assert problems == []
    return outcome


@pytest.mark.parametrize("name", ["belt-sag", "chain-sag"])
@pytest.mark.parametrize(("texts", "said"), [
    ({}, "how long the free span is"),
    ({"centres": "20 in", "large_diameter": "8 in"}, "how long the free span is"),
    ({"centres": "7 in", "large_diameter": "8 in", "small_diameter": "6 in"}, "overlap")])
def test_spans_that_cannot_be(name, texts, said):
    share = {"share": "2 to 3 %"} if name == "chain-sag" else {}
    outcome = work(name, **texts, **share)
    assert outcome.values == () and said in outcome.refusals[0].message


def test_wheels_may_be_given_either_way_round():
    one = work("belt-sag", centres="24 in", large_diameter="12 in", small_diameter="4 in")
    two = work("belt-sag", centres="24 in", large_diameter="4 in", small_diameter="12 in")
    assert one.value("span").printed == two.value("span").printed == "23.66 in"


def test_a_share_without_room_is_refused():
    assert "nothing is left" in work("chain-sag", span="20 in", share="2 %").refusals[0].message


@given_any(st.integers(500, 8000))
def test_sag_is_rounded_inward_and_both_systems_agree(hundredths):
    inch = work("chain-sag", span=f"{hundredths / 100} in", share="2 to 3 %").value("movement")
    metric = work("chain-sag", span=f"{hundredths * 0.254:.4f} mm", share="2 to 3 %").value("movement")
    for band in (inch, metric):
        assert 0.02 * hundredths * 0.000254 * (1 - 1e-9) <= band.low < band.high <= 0.03 * hundredths * 0.000254 * (1 + 1e-9)
    assert inch.low == pytest.approx(metric.low, abs=0.3e-3) and inch.high == pytest.approx(metric.high, abs=0.3e-3)


@pytest.mark.parametrize(("reading", "growth", "said"), [("25.31 in", "1.2 %", "in order"), ("25.50 in", "2.0 %", "in order"), ("25.51 in", "2.0 %", "renew")])
def test_growth(reading, growth, said):
    outcome = work("chain-wear", pitch="1.250 in", pitches="20", limit="2 %", reading=reading)
    assert (outcome.value("growth").printed, outcome.value("verdict").printed) == (growth, said)


@given_any(st.integers(6, 100), st.integers(5, 30))
def test_the_limit_never_rounds_up(pitches, tenths):
    most = work("chain-wear", pitch="0.375 in", pitches=f"{pitches}", limit=f"{tenths / 10} %").value("renew over").likely
    exact = pitches * 0.375 * 0.0254 * (1 + tenths / 1000)
    assert exact - 0.01 * 0.0254 <= most <= exact * (1 + 1e-9)


@pytest.mark.parametrize(("texts", "said"), [({"teeth": "4"}, "fewer than five teeth"), ({"centres": "9 in"}, "overlap")])
def test_chains_that_cannot_be(texts, said):
    outcome = work("chain-length", **{"pitch": "1.250 in", "teeth": "20", "other_teeth": "30", "centres": "23.0 in", **texts})
    assert outcome.values == () and said in outcome.refusals[0].message


teeth = st.integers(9, 60)


@given_any(teeth, teeth, st.integers(0, 400))
def test_links_are_even_and_near_the_centres_wanted(one, two, further):
    centres = (one + two) / 5 + further / 10
    count = 2 * round(links(one, two, centres) / 2)
    found = centres_for(count, one, two)
    assert found == pytest.approx(centres, abs=0.75)


def test_more_links_stand_further_apart():
    assert [centres_for(count, 20, 30) for count in (60, 62, 64)] == sorted(centres_for(count, 20, 30) for count in (60, 62, 64))
    assert centres_for(20, 20, 30) is None
