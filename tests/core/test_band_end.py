"""An end of a band is asked for by name and printed as it stands in the band."""

import pytest

from witnessmark.core.band_end import end_named, end_text
from witnessmark.workings.read_inputs import given_of, run
from witnessmark.workings.registry import WORKINGS


@pytest.mark.parametrize(("text", "low", "high"), [
    ("0.0227 in (0.0180 to 0.0269)", "0.0180 in", "0.0269 in"), ("3944 lbf·ft (3741 to 4171)", "3741 lbf·ft", "4171 lbf·ft"),
    ("16,380 psi (15,060 to 17,560)", "15,060 psi", "17,560 psi"), ("2.17 (1.99 to 2.39)", "1.99", "2.39"), ("12° (10 to 14)", "10°", "14°"),
    ("10.21 long ton (8.75 to 11.84), 11.44 short ton (9.80 to 13.26)", "8.75 long ton, 9.80 short ton", "11.84 long ton, 13.26 short ton"),
    ("-0.002 in (-0.010 to 0.006)", "-0.010 in", "0.006 in"), ("0.0180 to 0.0260 in", "0.0180 in", "0.0260 in"), ("0.3 in", "0.3 in", "0.3 in"), ("", "", "")])
def test_text_of_an_end(text, low, high):
    assert (end_text(text, "low"), end_text(text, "high")) == (low, high)


@pytest.mark.parametrize(("name", "parts"), [("advance low", ("advance", "low")), ("hub stress high", ("hub stress", "high")), ("advance", ("advance", "")), ("low", ("low", ""))])
def test_name_of_an_end(name, parts):
    assert end_named(name) == parts


def test_an_end_is_a_value_that_goes_on_into_another_working():
    outcome, _ = run(WORKINGS["taper-advance"], WORKINGS["taper-advance"].example.inputs)
    band, low = outcome.value("push-off force"), outcome.value("push-off force low")
    assert (low.low, low.likely, low.high) == (band.low,) * 3 and given_of(low).text == "8.7 long ton"
    assert outcome.has("push-off force high") and not outcome.has("push-off low") and not outcome.has("high")


def test_a_result_whose_own_name_ends_so_comes_first():
    outcome, _ = run(WORKINGS["press-card"], {**WORKINGS["press-card"].example.inputs, "window": "14.9 to 22 long ton", "full scale": "10000 psi"})
    own = outcome.value("accept band low")
    assert own.name == "accept band low" and " to " not in own.printed
