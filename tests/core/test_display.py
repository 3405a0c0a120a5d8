"""Figures in the other system: safe side by role, no more digits than the source, and readable back."""

from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from witnessmark.core.display import converted, five_forces, shown
from witnessmark.core.kinds import KINDS
from witnessmark.core.quantity import Quantity, read_quantity
from witnessmark.core.units import find_unit, units_of


@pytest.mark.parametrize("text, kind, role, other", [
    ("57 lbf·ft", "torque", "target", "77.3 N·m"),
    ("57 lbf·ft", "torque", "ceiling", "77.2 N·m"),
    (".018 in", "length", "target", "0.46 mm"),
    ("0.018 to 0.030 in", "clearance", "window", "0.46 to 0.76 mm"),
    ("0.017 to 0.031 in", "clearance", "window", "0.44 to 0.78 mm"),           # 0.4318 and 0.7874: inward
    ("0.017 to 0.031 in", "clearance", "found", "0.43 to 0.79 mm"),
    ("240 to 300 lb-ft", "torque", "window", "326 to 406 N·m"),
    ("21.750 in +0.062 -0.000", "length", "window", "552.45 to 554.02 mm"),
    ("1-1/2 in", "length", "target", "38.1 mm"),
    ("18 long ton", "press force", "ceiling", "179 kN"),                        # 179.35
    ("18 long ton", "press force", "floor", "180 kN"),
    ("over .040 in", "length", "reject", "over 1.01 mm"),                       # 1.016: refused a little sooner
    ("over .040 in", "length", "floor", "over 1.02 mm"),
    ("under 8.75 in", "length", "reject", "under 222.3 mm"),                    # 222.25
    ("at least 0.047 in", "length", "floor", "at least 1.20 mm"),               # 1.1938
    ("at most 0.047 in", "length", "window", "at most 1.19 mm"),
    ("10,000 psi", "pressure", "ceiling", "689 bar"),                           # the noughts are no digits
    ("360 °F", "temperature", "ceiling", "182 °C"),
    ("33 °F", "temperature", "target", "0.6 °C"),
    ("60 °F rise", "temperature rise", "target", "33.3 °C rise"),               # never takes the 32 off
    ("12 imperial quart", "volume", "target", "14.4 US quart, 13.6 litre"),
    ("6.5 ppm/°F", "expansion", "target", "11.7 ppm/°C"),
    ("90°", "angle", "target", ""),
    ("1:12", "taper", "target", ""),
    ("0.15", "friction", "target", ""),
])
def test_converted(text, kind, role, other):
    quantity = read_quantity(text, kind)
    assert (quantity.typed(), converted(quantity, role)) == (text, other)


def test_a_window_narrower_than_a_step_shows_more_digits_and_stays_inside():
    quantity = read_quantity("0.101 to 0.102 in", "length")                     # 2.5654 to 2.5908
    assert converted(quantity, "window") == "2.57 to 2.59 mm"
    narrow = read_quantity("99.6 to 99.7 lbf", "force")                         # 443.04 to 443.49
    assert converted(narrow, "window") == "443.1 to 443.4 N"


@pytest.mark.parametrize("value, kind, unit, how, text", [
    (1.5707963267948966, "angle", "°", {}, "90.0°"),
    (1.5707963267948966, "angle", "°", {"digits": 2}, "90°"),
    (34.5e6, "pressure", "psi", {"step": 100, "side": "down"}, "5,000 psi".replace(",", "")),
    (1e8, "pressure", "psi", {"step": 100, "side": "down"}, "14,500 psi"),
    (0.0254, "length", "in", {"step": "1/64"}, "1.000000 in"),
    (0.3, "length", "m", {"step": 0.1, "side": "down"}, "0.3 m"),
    (0.15, "friction", "", {"digits": 2}, "0.15"),
    (0, "force", "lbf", {}, "0 lbf"),
    (268.15, "temperature", "°C", {"digits": 1}, "-5 °C"),
    (1.0, "turns", "turns", {"step": Fraction(1, 3), "side": "down"}, "1.000000 turns"),
])
def test_shown(value, kind, unit, how, text):
    assert shown(value, kind, unit, **how) == text


def test_five_forces():
    # 24,000 lbf: 12 short tons, 10.714 long tons, 10.886 tonnes, 106.757 kN
    assert five_forces(24000 * 4.4482216152605, "down") == (
        "12.00 short ton", "10.71 long ton", "10.88 tonne", "106.7 kN", "24,000 lbf")
    assert five_forces(24000 * 4.4482216152605, "up") == (
        "12.00 short ton", "10.72 long ton", "10.89 tonne", "106.8 kN", "24,000 lbf")


UNITS = [(kind, unit) for kind in KINDS if kind not in ("thread", "none", "count") for unit in units_of(kind)]


@given(st.sampled_from(UNITS), st.floats(1e-4, 1e6), st.integers(1, 6), st.sampled_from(["down", "up", "nearest"]))
def test_what_is_shown_reads_back_to_the_digits_shown(where, number, digits, side):
    kind, unit = where
    si = unit.to_si(Fraction(number))
    text = shown(si, kind, unit, digits=digits, side=side)
    read = read_quantity(text, kind)
    assert isinstance(read, Quantity), (text, read)
    assert read.unit == unit
    difference = read.low - Fraction(number)
    step = Fraction(10) ** (len(str(int(number))) - digits) if number >= 1 else Fraction(1, 10**(digits - 1))
    assert abs(difference) <= step * (1 if side != "nearest" else Fraction(51, 100))
    assert side != "down" or difference <= Fraction(number) / 10**12
    assert side != "up" or difference >= -Fraction(number) / 10**9


NUMBER = st.one_of(st.decimals("0.001", 20000, places=3).map("{:f}".format), st.integers(1, 20000).map(str))
LEAST, MOST = ("floor", "reject-min"), ("ceiling", "stop", "reject-max")


@given(st.sampled_from([u for u in UNITS if u[1].system != "both"]), NUMBER, NUMBER,
       st.sampled_from(["{} {u}", "at least {} {u}", "at most {} {u}", "{} to {} {u}"]), st.sampled_from(LEAST + MOST + ("window",)))
def test_what_is_converted_reads_back_inside_the_limits(where, first, second, form, role):
    kind, unit = where
    assume(Fraction(first) < Fraction(second))
    quantity = read_quantity(form.format(first, second, u=unit.symbol), kind)
    assert isinstance(quantity, Quantity)
    for text in filter(None, converted(quantity, role).split(", ")):
        read = read_quantity(text, kind)
        assert isinstance(read, Quantity), (text, read)
        slack = 1e-9 * float(quantity.unit.to_si(Fraction(second)))            # the stated tolerance, generously
        if quantity.form in ("at most", "range") or (quantity.form == "exact" and role in MOST):
            assert read.si_high <= quantity.si_high + slack
        if quantity.form in ("at least", "range") or (quantity.form == "exact" and role in LEAST):
            assert read.si_low >= quantity.si_low - slack


def test_units_by_spelling_or_by_unit_show_alike():
    assert shown(1000.0, "press force", "lbf") == shown(1000.0, "press force", find_unit("lbf", "press force"))
