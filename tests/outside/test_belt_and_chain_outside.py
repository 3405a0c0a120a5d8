"""Belts and chains against published manuals, handbook examples and an exact path round two sprockets."""

import math

import pytest
from witnessmark.workings.belt_and_chain import centres_for, links, pitch_diameter
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS


def work(name, **texts):
    outcome, problems = run(WORKINGS[name], {key.replace("_", " "): text for key, text in texts.items()})
    assert problems == [] and outcome.refusals == ()
    return outcome


# US Army TM 5-4310-339-15, paragraph 5-5.2: 1/64 in for each inch of span; a 100 in span 1-9/16 in. Millwrights' reference: pulleys
# 4 and 12 in at 24 in: span 23.66 in, push in 0.370 in, about 3/8. A belt guide: 0.4 mm for each 25 mm.
def test_belts():
    assert work("belt-sag", span="100 in").value("push in on a tape").printed == "1-9/16 in"
    outcome = work("belt-sag", centres="24 in", large_diameter="12 in", small_diameter="4 in")
    assert outcome.value("span").printed == "23.66 in" and outcome.value("push in").printed == "0.37 in" and outcome.value("push in on a tape").printed == "3/8 in"
    assert work("belt-sag", span="25.4 mm").value("push in").likely * 1000 == pytest.approx(0.4, abs=0.005)


# Belt technical handbook, equation 1-4: deflection force (Tst + t Y / L) / 16; with a belt that bends freely (Y = 0) a sixteenth of the tension.
def test_force_at_the_middle():
    assert work("belt-sag", span="40 in", tension="80 lbf").value("push with").likely / 4.4482216152605 == pytest.approx(80 / 16, rel=1e-3)


# Chain supplier's example: 24 pitches of 1 in are 24 in new; at 24.75 in and more it is time. The limit it names is 3 %: 24.72 in.
def test_wear():
    outcome = work("chain-wear", pitch="1 in", pitches="24", limit="3 %", reading="24.75 in")
    assert outcome.value("renew over").printed == "24.72 in" and outcome.value("verdict").printed == "renew"


# Paper on chain-drive selection: 20 and 63 teeth at 36 pitches by this usual equation 114.8 pitches (exactly 114.305), and at 114
# pitches 35.6 pitches of centres (exactly 35.8447). One decimal.
def test_links_and_centres():
    assert links(63, 20, 36) == pytest.approx(114.8, abs=0.05)
    assert centres_for(114, 63, 20) == pytest.approx(35.6, abs=0.05)


# ASME B29.1, pitch diameters for one inch of pitch (handbook table, *from memory*): 9 teeth 2.9238, 20 teeth 6.3925, 30 teeth 9.5668.
@pytest.mark.parametrize(("teeth", "across"), [(9, 2.9238), (20, 6.3925), (30, 9.5668)])
def test_pitch_diameters(teeth, across):
    assert pitch_diameter(1.0, teeth) == pytest.approx(across, abs=6e-5)


# An independent way: two straight spans and two arcs round the pitch circles, exact geometry of an open belt. The links' own straightness
# and the short form leave 0.3 pitches at these sizes.
@pytest.mark.parametrize(("one", "two", "centres"), [(20, 30, 18.4), (19, 57, 40), (25, 25, 30)])
def test_links_against_geometry(one, two, centres):
    small, large = sorted((pitch_diameter(1.0, one) / 2, pitch_diameter(1.0, two) / 2))
    lean = math.asin((large - small) / centres)
    around = 2 * centres * math.cos(lean) + (math.pi + 2 * lean) * large + (math.pi - 2 * lean) * small
    assert links(one, two, centres) == pytest.approx(around, abs=0.3)
