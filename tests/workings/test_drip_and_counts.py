"""Oil by the drop and by the strand; small parts counted out and in."""

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS


def work(name, **texts):
    outcome, problems = run(WORKINGS[name], {key.replace("_", " "): text for key, text in texts.items()})
    assert problems == []
    return outcome


@pytest.mark.parametrize(("rate", "hour", "lasts"), [("4 to 6 drops/min", "9.0 mL (7.2 to 10.8)", "6.7 h (5.6 to 8.3)"),
                                                     ("8 to 12 drops/min", "18.0 mL (14.4 to 21.6)", "3.3 h (2.8 to 4.2)")])
def test_drip(rate, hour, lasts):
    outcome = work("drip-rate", drops=rate, drop="0.03 mL", cup="60 mL")
    assert (outcome.value("oil in an hour").printed, outcome.value("cup lasts").printed) == (hour, lasts)


def test_time_between_drops_is_the_same_rate():
    assert work("drip-rate", between_drops="12 s", drop="0.03 mL").value("oil in an hour").likely == pytest.approx(
        work("drip-rate", drops="5 drops/min", drop="0.03 mL").value("oil in an hour").likely)
    slow = work("drip-rate", between_drops="90 to 240 s", drop="0.03 mL", cup="25 mL")
    assert slow.value("oil in an hour").printed == "0.655 mL (0.450 to 1.200)"


@pytest.mark.parametrize("rates", [{}, {"drops": "5 drops/min", "between_drops": "12 s"}])
def test_a_rate_twice_or_never_is_refused(rates):
    outcome = work("drip-rate", drop="0.03 mL", **rates)
    assert outcome.values == () and "given twice or not at all" in outcome.refusals[0].message


@given_any(st.integers(1, 600), st.integers(10, 100))
def test_a_cup_lasts_until_its_oil_is_gone(tenths, hundredths):
    outcome = work("drip-rate", drops=f"{tenths / 10} drops/min", drop=f"{hundredths / 1000} mL", cup="45 mL")
    assert outcome.value("oil in an hour").likely * outcome.value("cup lasts").likely / 3600 == pytest.approx(45e-6)


@given_any(st.integers(1, 400), st.integers(1, 12), st.integers(1, 400))
def test_the_strands_give_at_least_the_oil_wanted_and_one_less_would_not(collected, strands, wanted):
    outcome = work("wick-feed", collected=f"{collected / 10} mL", collected_in="1 h", strands=f"{strands}", wanted_in_an_hour=f"{wanted / 10} mL")
    needed, each = outcome.value("strands needed").likely, collected / 10 / strands
    assert needed * each >= wanted / 10 * (1 - 1e-6)
    assert needed == 1 or (needed - 1) * each < wanted / 10


def counted(**more):
    texts = {"places": "2", "in_each_place": "6", "taken_off": "12", "put_back": "12", **more}
    return {value.name: value.printed for value in work("counts", **texts).values}


@pytest.mark.parametrize(("more", "off", "on"), [
    ({}, "agrees", "agrees"),
    ({"put_back": "9", "set_aside": "3", "new": "3"}, "agrees", "agrees"),
    ({"put_back": "9", "set_aside": "2", "new": "3"}, "1 not accounted for", "agrees"),
    ({"put_back": "9", "set_aside": "3"}, "agrees", "3 still to fit"),
    ({"put_back": "12", "set_aside": "1"}, "1 more than came off", "agrees"),
    ({"put_back": "12", "new": "2"}, "agrees", "2 more than there are places"),
])
def test_counts(more, off, on):
    said = counted(**more)
    assert said["off the machine"].startswith(off) and said["on the machine"].startswith(on)
    assert (said["verdict"] == "in equals out") == (off == on == "agrees")


numbers = st.integers(0, 40)


@given_any(numbers, numbers, numbers, numbers)
def test_in_equals_out_only_when_both_sides_do(off, back, aside, new):
    said = counted(taken_off=f"{off}", put_back=f"{back}", set_aside=f"{aside}", new=f"{new}")
    assert (said["verdict"] == "in equals out") == (off == back + aside and back + new == 12)
