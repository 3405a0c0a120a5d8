"""Engagement against a published table of lengths, and limits of threads as standards' tables print them."""

import math

import pytest

from witnessmark.core.thread import read_thread
from witnessmark.workings.stress_area import stress_area
from witnessmark.workings.thread_limits import thread_limits

INCH = 0.0254

# Steel bolts, minimum length of engagement in equally strong metal, UNC and UNF, class 2A/2B, as a table of sizes prints it.
LENGTHS = [("1/4-20 UNC", .173, 3), ("5/16-18 UNC", .223, 3), ("3/8-16 UNC", .269, 3), ("7/16-14 UNC", .31, 2), ("1/2-13 UNC", .36, 2), ("9/16-12 UNC", .41, 2),
           ("5/8-11 UNC", .45, 2), ("3/4-10 UNC", .55, 2), ("7/8-9 UNC", .64, 2), ("1-8 UNC", .73, 2), ("1/4-28 UNF", .195, 3), ("5/16-24 UNF", .242, 3),
           ("3/8-24 UNF", .304, 3), ("7/16-20 UNF", .347, 3), ("1/2-20 UNF", .400, 3), ("9/16-18 UNF", .450, 3), ("5/8-18 UNF", .513, 3), ("3/4-16 UNF", .605, 3),
           ("7/8-14 UNF", .709, 3), ("1-12 UNF", .797, 3)]


@pytest.mark.parametrize(("thread", "printed", "decimals"), LENGTHS)
def test_published_lengths_of_engagement(thread, printed, decimals):
    """The table works from limits rounded to 0.001 in; a minor diameter 0.0005 in off moves a length by 1 %: tolerance 1.5 %."""
    read = read_thread(thread)
    needed = 2 * stress_area(read) / thread_limits(read).bolt_shear() / INCH
    assert needed == pytest.approx(printed, rel=0.015, abs=0.5 * 10**-decimals)


# Limits as tables of ASME B1.1 print them: bolt 2A least outside and pitch diameter; hole 2B largest pitch and minor diameter.
UNIFIED = [("15/16-16 UN", .9266, .8904, .9034, .8840), ("15/16-12 UN", .9244, .8760, .8908, .8650), ("15/16-20 UNEF", .9280, .8991, .9109, .8950),
           ("5/8-11 UNC", .6113, .5589, .5732, .546), ("5/8-18 UNF", .6149, .5828, .5949, .578)]


@pytest.mark.parametrize(("thread", "outside", "bolt_pitch", "hole_pitch", "minor"), UNIFIED)
def test_printed_limits_of_unified_threads(thread, outside, bolt_pitch, hole_pitch, minor):
    limits = thread_limits(read_thread(thread))
    found = [each / INCH for each in (limits.bolt_major, limits.bolt_pitch, limits.hole_pitch, limits.hole_minor)]
    assert found == pytest.approx([outside, bolt_pitch, hole_pitch, minor], abs=0.0006)   # minor diameters are rounded to 0.001


# ISO 965, 6g: least outside and pitch diameter, as a metric thread chart prints them.
METRIC = [("M3 x 0.5", 2.874, 2.580), ("M4 x 0.7", 3.838, 3.433), ("M5 x 0.8", 4.826, 4.361), ("M6 x 1", 5.794, 5.212)]


@pytest.mark.parametrize(("thread", "outside", "pitch"), METRIC)
def test_printed_limits_of_metric_threads(thread, outside, pitch):
    """Tolerances are rounded to preferred numbers in the standard: within 0.004 mm."""
    limits = thread_limits(read_thread(thread))
    assert [limits.bolt_major * 1000, limits.bolt_pitch * 1000] == pytest.approx([outside, pitch], abs=0.004)


def test_published_minor_and_pitch_diameters_of_unc_holes():
    """UNC internal threads, class 2B, as a one-page chart prints them: largest pitch diameter and largest minor diameter."""
    for thread, pitch, minor in (("1/2-13 UNC", .4565, .434), ("3/4-10 UNC", .6927, .663), ("7/8-9 UNC", .8110, .778), ("1-8 UNC", .9276, .890),
                                 ("1-1/8-7 UNC", 1.0416, .998), ("1-1/4-7 UNC", 1.1668, 1.123), ("1-3/8-6 UNC", 1.2771, 1.225)):
        limits = thread_limits(read_thread(thread))
        assert [limits.hole_pitch / INCH, limits.hole_minor / INCH] == pytest.approx([pitch, minor], abs=0.0006)


def test_shear_area_as_a_sum_of_cylinders():
    """Second way: the metal left at the hole's minor diameter, turn by turn, from the 60° flanks."""
    limits = thread_limits(read_thread("3/4-16 UNF"))
    width = limits.pitch / 2 + 2 * (limits.bolt_pitch - limits.hole_minor) / 2 * math.tan(math.radians(30))
    turns = 12
    assert limits.bolt_shear() * turns * limits.pitch == pytest.approx(turns * math.pi * limits.hole_minor * width, rel=1e-12)
