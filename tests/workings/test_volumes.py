"""One volume in every measure, and the wrong jug."""

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS


def fill(text):
    outcome, problems = run(WORKINGS["volumes"], {"volume": text})
    assert problems == []
    return {value.name: value.printed for value in outcome.values}


@pytest.mark.parametrize(("text", "imperial", "us"), [
    ("9.5 litre", "16.7 imperial pint", "20.1 US pint"),
    ("9 imperial gallon", "9.00 imperial gallon", "10.8 US gallon"),
    ("5.5 imperial gallon", "5.50 imperial gallon", "6.61 US gallon"),
    ("500 mL", "0.880 imperial pint", "1.06 US pint")])
def test_measures(text, imperial, us):
    shown = fill(text)
    assert (shown["in imperial measure"], shown["in US measure"]) == (imperial, us)


def test_litres_have_no_wrong_jug():
    assert "by the wrong jug" not in fill("9.5 litre")


@pytest.mark.parametrize(("text", "litres", "said"), [("14 imperial pint", "6.62 litre", "16.7 % too little"), ("14 US pint", "7.96 litre", "20.1 % too much"),
                                                      ("2 US quart", "2.27 litre", "20.1 % too much"), ("10 imperial fl oz", "0.296 litre", "4.1 % too much")])
def test_the_wrong_jug(text, litres, said):
    shown = fill(text)
    assert (shown["by the wrong jug"], shown["the wrong jug gives"]) == (litres, said)


@pytest.mark.parametrize("text", ["14 pints", "2 gallon", "3 quarts", "1 fl oz"])
def test_a_measure_of_no_kind_is_refused_by_name(text):
    outcome, problems = run(WORKINGS["volumes"], {"volume": text})
    assert outcome is None and "could be more than one unit" in problems[0].message and "imperial" in problems[0].mend


@given_any(st.integers(1, 10**6))
def test_each_measure_is_the_same_volume(thousandths):
    outcome, _ = run(WORKINGS["volumes"], {"volume": f"{thousandths / 1000} imperial pint"})
    values = {value.name: value.likely for value in outcome.values}
    assert values["litres"] == values["in imperial measure"] == values["in US measure"]
    assert values["by the wrong jug"] / values["litres"] == pytest.approx(0.473176473 / 0.56826125)
