"""The grammar of quantities: what is read, what is refused and with which lesson."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.core.kinds import KINDS
from witnessmark.core.quantity import Quantity, QuantityProblem, read_quantity

F = Fraction


@pytest.mark.parametrize("text, kind, form, low, high, symbol", [
    ("57 lbf·ft", "torque", "exact", 57, 57, "lbf·ft"),
    ("1-1/2 in", "length", "exact", F(3, 2), F(3, 2), "in"),
    ("1/64 in", "length", "exact", F(1, 64), F(1, 64), "in"),
    (".018 in", "clearance", "exact", F(18, 1000), F(18, 1000), "in"),
    ("0.018 to 0.030 in", "clearance", "range", F(18, 1000), F(30, 1000), "in"),
    ("0.018 in to 0.030 in", "clearance", "range", F(18, 1000), F(30, 1000), "in"),
    ("1-1/4 to 1-1/2 in", "length", "range", F(5, 4), F(3, 2), "in"),
    ("3.120 ± 0.030 in", "length", "plus-minus", F("3.09"), F("3.15"), "in"),
    ("3.120 in +/- 0.030 in", "length", "plus-minus", F("3.09"), F("3.15"), "in"),
    ("21.750 in +0.062 -0.000", "length", "plus-minus", F("21.750"), F("21.812"), "in"),
    ("at least 0.047 in", "length", "at least", F("0.047"), None, "in"),
    ("At most 0.040 in", "length", "at most", None, F("0.04"), "in"),
    ("over 0.050 in", "length", "over", F("0.05"), None, "in"),
    ("under 10 psi", "pressure", "under", None, 10, "psi"),
    ("1:12", "taper", "ratio", F(1, 12), F(1, 12), ""),
    ("52:13", "gear ratio", "ratio", 4, 4, ""),
    ("52/13", "gear ratio", "exact", 4, 4, ""),
    ("15 °F", "temperature rise", "exact", 15, 15, "°F rise"),
    ("60 °F rise", "temperature rise", "exact", 60, 60, "°F rise"),
    ("-5 °C", "temperature", "exact", -5, -5, "°C"),
    ("−5 °C", "temperature", "exact", -5, -5, "°C"),
    ("90°", "angle", "exact", 90, 90, "°"),
    ("1,100 psi", "pressure", "exact", 1100, 1100, "psi"),
    ("1100 psi", "pressure", "exact", 1100, 1100, "psi"),
    ("12,345.6 lbf", "force", "exact", F("12345.6"), F("12345.6"), "lbf"),
    ("4.72 in2", "area", "exact", F("4.72"), F("4.72"), "in²"),
    ("6", "count", "exact", 6, 6, ""),
    ("75%", "share", "exact", 75, 75, "%"),
    ("  57\u00a0lbf·ft ", "torque", "exact", 57, 57, "lbf·ft"),
])
def test_reads(text, kind, form, low, high, symbol):
    quantity = read_quantity(text, kind)
    assert isinstance(quantity, Quantity), quantity
    assert (quantity.form, quantity.low, quantity.high, quantity.unit.symbol) == (form, low, high, symbol)


@pytest.mark.parametrize("text, decimals, whole", [
    ("57 in", 0, True), ("1-1/2 in", 0, True), ("0.018 to 0.03 in", 3, False), (".5 in", 1, False), ("5 ± 0.25 in", 2, False),
])
def test_digits_typed(text, decimals, whole):
    quantity = read_quantity(text, "length")
    assert (quantity.decimals, quantity.whole) == (decimals, whole)


def test_si_and_typed_text():
    quantity = read_quantity(".018  to .030 in", "clearance")
    assert quantity.si_low == 0.0004572
    assert quantity.si_high == 0.000762
    assert quantity.typed() == ".018 to .030 in"
    assert read_quantity("over 1 in", "length").si_high is None


@pytest.mark.parametrize("text, kind, said", [
    ("57", "torque", "unit is missing"),
    ("0.030 to 0.018 in", "clearance", "backwards"),
    ("nan", "length", "not a number"), ("inf in", "length", "not a number"), ("-inf in", "length", "not a number"),
    ("1e400 in", "length", "exponent"), ("1.5E-3 in", "length", "exponent"),
    ("1,5 mm", "length", "comma"), ("0,125 in", "length", "comma"), ("1.250,5 mm", "length", "comma"), ("1,10 psi", "pressure", "comma"),
    ("12–15 lbf·ft", "torque", "dash"), ("12 – 15 lbf·ft", "torque", "dash"), ("12-15 lbf·ft", "torque", "dash"),
    ("12...15 lbf·ft", "torque", "dots"), ("1 1/2 in", "length", "space"), ("1½ in", "length", "fraction sign"),
    ("11/2 in", "length", "fraction"), ("1-3/2 in", "length", "fraction"), ("1/0 in", "length", "fraction"),
    ("12 ton", "press force", "more than one unit"), ("20 mil", "length", "more than one unit"),
    ("12 to 14 ton", "press force", "more than one unit"),
    ("snug", "torque", "no number"), ("", "torque", "no quantity"), ("45 Nm", "length", "measures torque"),
    ("-5 lbf", "force", "under zero"), ("5 ± 6 lbf", "force", "under zero"), ("5 in to 6 mm", "length", "in one quantity"),
    ("012 in", "length", "needless 0"), ("5. in", "length", "point"), ("max 5 in", "length", "limit"), ("<5 in", "length", "limit"),
    ("2.5", "count", "whole number"), ("1:12", "length", "ratio"), ("0:12", "taper", "ratio"), ("1:0", "taper", "ratio"),
    ("9**9**9 in", "length", "cannot be read"), ("5 in in", "length", "no unit"), ("١٢ in", "length", "sign"),
    ("x" * 5000, "length", "far too long"), ("7/16-20", "length", "dash"),
    ("5 to 5 in", "length", "no width"), ("5 ± 0 in", "length", "no width"), ("5 in", "thread", "not measured"), ("5 in", "squid", "not measured"),
])
def test_refuses_with_a_mend(text, kind, said):
    problem = read_quantity(text, kind)
    assert isinstance(problem, QuantityProblem), problem
    assert said in problem.message
    assert problem.mend


NUMBERS = st.one_of(
    st.decimals(0, 99999, places=3).map(lambda number: f"{number:f}"),
    st.integers(1, 99999).map(str),
    st.builds(lambda whole, top: f"{whole}-{top}/64", st.integers(1, 30), st.integers(1, 63)),
    st.integers(1000, 9999999).map(lambda number: f"{number:,}"),
)
ANY_KIND = st.sampled_from(sorted(KINDS))


@given(st.text(max_size=80), ANY_KIND)
def test_junk_never_raises(text, kind):
    assert isinstance(read_quantity(text, kind), Quantity | QuantityProblem)


@given(st.text(alphabet="0123456789.,/-:+± to inlbf·°", max_size=25), ANY_KIND)
def test_likely_junk_never_raises_and_never_runs_backwards(text, kind):
    read = read_quantity(text, kind)
    assert isinstance(read, Quantity | QuantityProblem)
    if isinstance(read, Quantity) and None not in (read.low, read.high):
        assert read.low <= read.high


# What lengthens a number, begins another or turns its sign makes another quantity, rightly; nothing else may.
STRAY = st.characters(exclude_characters="0123456789.,/-−:+±", exclude_categories=("Cs",))


@given(NUMBERS, st.sampled_from([("psi", "pressure"), ("lbf·ft", "torque"), ("in", "length"), ("°F", "temperature")]),
       st.integers(0, 40), st.text(STRAY, min_size=1, max_size=2))
def test_a_stray_character_never_makes_another_number(number, unit, at, stray):
    symbol, kind = unit
    clean = read_quantity(f"{number} {symbol}", kind)
    assert isinstance(clean, Quantity)
    text = f"{number} {symbol}"
    read = read_quantity(text[:at] + stray + text[at:], kind)
    if isinstance(read, Quantity):
        assert (read.low, read.high, read.form, read.unit) == (clean.low, clean.high, clean.form, clean.unit)


@given(NUMBERS, NUMBERS)
def test_a_range_is_read_as_its_two_ends_or_refused(first, second):
    low, high = (read_quantity(f"{number} mm", "length").low for number in (first, second))
    read = read_quantity(f"{first} to {second} mm", "length")
    if low < high:
        assert (read.low, read.high) == (low, high)
    else:
        assert isinstance(read, QuantityProblem)
