"""Thread designations, against the published series.

Sources of the expected values: size lists of the Unified Thread Standard as tabulated from ASME B1.1-2003 Table 1 and 2
(UNC to 4 in, 25 sizes of UNEF, 1-14 UNS); stress areas printed in ANSI B1.1-1974 and ISO 898-1 tables, from which the
pitch follows: As = pi/4 (D - 0.9743/n)^2 in inches, pi/4 (d - 0.938194 p)^2 in millimetres.
"""

from fractions import Fraction
from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.core.thread import Thread, ThreadProblem, read_thread


@pytest.mark.parametrize("text, family, nominal, pitch, series", [
    ("1-1/2-12 UNF", "unified", "3/2", "12", "UNF"), ("3/4-16", "unified", "3/4", "16", "UNF"),
    ("1-1/2-8 UN", "unified", "3/2", "8", "UN"), ("1-1/2-8UN", "unified", "3/2", "8", "UN"),
    ("1-14 UNS", "unified", "1", "14", "UNS"), ("#10-32", "unified", "0.190", "32", "UNF"),
    ("No. 10-24", "unified", "0.190", "24", "UNC"), ("7/16-20 UNF-2A", "unified", "7/16", "20", "UNF"),
    ("2-4.5 UNC", "unified", "2", "9/2", "UNC"), ("0.750-10", "unified", "3/4", "10", "UNC"),
    ("M12 x 1.25", "metric", "12", "5/4", "fine"), ("M12×1.75", "metric", "12", "7/4", "coarse"),
    ("M12", "metric", "12", "7/4", "coarse"), ("M14 x 1.25", "metric", "14", "5/4", "fine"), ("M11 x 1", "metric", "11", "1", "special"),
])
def test_reads(text, family, nominal, pitch, series):
    thread = read_thread(text)
    assert isinstance(thread, Thread), thread
    assert (thread.family, thread.nominal, thread.pitch, thread.series) == (family, Fraction(nominal), Fraction(pitch), series)


@pytest.mark.parametrize("text", """
    #0-80 UNF, #1-64 UNC, #1-72 UNF, #2-56 UNC, #2-64 UNF, #3-48 UNC, #12-32 UNEF, 1/4-32 UNEF, 5/16-18 UNC, 9/16-32 UN, 1/2-28 UNEF,
    5/8-11 UNC, 5/8-12 UN, 5/8-14 UNS, 5/8-16 UN, 5/8-18 UNF, 5/8-20 UN, 5/8-24 UNEF, 5/8-27 UNS, 5/8-28 UN, 5/8-32 UN, 11/16-12 UN,
    11/16-16 UN, 11/16-24 UNEF, 7/8-32 UN, 15/16-12 UN, 1-14 UNS, 1-20 UNEF, 1-1/16-12 UN, 1-3/16-28 UN, 1-1/4-7 UNC, 1-1/4-8 UN,
    1-9/16-20 UN, 1-5/8-6 UN, 1-11/16-18 UNEF, 1-3/4-5 UNC, 1-15/16-20 UN, 2-4.5 UNC, 2-1/4-4.5 UNC, 2-3/4-20 UN, 2-7/8-6 UN, 3-8 UN,
    4-16 UN, 4-4 UNC, 7/16-16 UN
    """.replace("\n", " ").split(","))
def test_series_is_worked_out_as_the_standard_names_it(text):
    designation, series = text.split()
    assert read_thread(designation).series == series
    assert read_thread(text.strip()).series == series


@pytest.mark.parametrize("text, area", [       # square inches, square millimetres; the tables cut the last figure off
    ("1/4-20 UNC", 0.0318), ("3/8-16 UNC", 0.0775), ("1/2-13 UNC", 0.1419), ("1/2-20 UNF", 0.1599), ("5/8-11 UNC", 0.226),
    ("3/4-10 UNC", 0.334), ("3/4-16 UNF", 0.373), ("7/8-14 UNF", 0.509), ("1-8 UNC", 0.606), ("1-12 UNF", 0.663),
    ("1-1/4-12 UNF", 1.073), ("M6", 20.1), ("M8", 36.6), ("M10", 58.0), ("M12", 84.3), ("M16", 157), ("M20", 245), ("M24", 353),
])
def test_pitch_gives_the_printed_stress_area(text, area):
    thread = read_thread(text)
    lost, unit = (0.9743, 0.0254) if thread.family == "unified" else (0.938194, 0.001)
    assert pi / 4 * ((thread.nominal_si - lost * thread.pitch_si) / unit) ** 2 == pytest.approx(area, rel=0.003)


@pytest.mark.parametrize("text, said, mend", [
    ("1-14 UNF", "UNF at this size has 12", "1-12 UNF or 1-14 UNS"),            # a misprint often seen
    ("3/4-10 UNF", "UNF at this size has 16", "3/4-10 UNC"),
    ("1-12 UNS", "standard, not special", "1-12 UNF"),
    ("1/2-12 UN", "no such UN", "UNS"),
    ("1-3/4-12 UNF", "no such UNF", "1-3/4-12 UN"),
    ("8-32", "screw number", "#8-32"), ("10-32", "screw number", "#10-32"), ("6-32 UNC", "screw number", "#6-32 UNC"),
    ("#11-24", "no screw #11", "designation"), ("11/2-12", "fraction", "1-1/2"), ("3/4-61", "no usual pitch", "UNS"),
    ("1/8-27 NPT", "NPT", "UNC"), ("M12 x 1.57", "no standard pitch", "1.75"), ("M12 x 2", "no standard pitch", "1.75"),
    ("M11", "not a coarse thread", "M11 x 1"), ("3/8 BSP", "no thread", "designation"), ("", "no thread", "designation"),
])
def test_refuses(text, said, mend):
    problem = read_thread(text)
    assert isinstance(problem, ThreadProblem), problem
    assert said in problem.message
    assert mend in problem.mend


def test_metres():
    inch, metric = read_thread("1-1/2-12 UNF"), read_thread("M12 x 1.25")
    assert (inch.nominal_si, inch.pitch_si) == pytest.approx((0.0381, 0.0254 / 12))
    assert (metric.nominal_si, metric.pitch_si) == pytest.approx((0.012, 0.00125))
    assert (inch.nominal_in, inch.tpi, inch.nominal_mm, inch.pitch_mm) == (Fraction(3, 2), 12, None, None)
    assert (metric.nominal_mm, metric.pitch_mm, metric.nominal_in, metric.tpi) == (12, Fraction(5, 4), None, None)


@given(st.one_of(st.text(max_size=40), st.text(alphabet="0123456789#-/. MUNCFSExX", max_size=14)))
def test_junk_never_raises(text):
    assert isinstance(read_thread(text), Thread | ThreadProblem)
