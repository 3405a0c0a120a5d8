"""Turn and movement of castle nuts against published adjustments."""

from fractions import Fraction

import pytest
from witnessmark.workings.castle_nut import ADJUSTS, CLAMPS
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS


def outcome(thread, what=CLAMPS, **texts):
    found, problems = run(WORKINGS["castle-nut"], {"thread": thread, "the nut": what, **{name.replace("_", " "): text for name, text in texts.items()}})
    assert problems == [] and found.refusals == ()
    return found


def inches(thread, back_off):
    """Movement of a bearing nut backed off by a part of a turn, in slots of that part."""
    places = back_off.denominator
    found = outcome(thread, ADJUSTS, slots=str(places)) if places > 3 else outcome(thread, ADJUSTS)
    slots = back_off * round(360 / (found.value("one slot").likely * 57.29577951308232))
    return float(found.value("advance of one slot").likely / 0.0254 * slots)


# A builders' forum of light aircraft, thread on castle nuts of axles: 16 threads an inch, 0.01041 in a flat, half of it 0.0052 in.
def test_sixteen_threads_an_inch():
    found = outcome("1-1/4-16 UN", degrees_short="30 °")
    assert found.value("advance of one slot").likely / 0.0254 == pytest.approx(0.01041, abs=1e-5)
    assert found.value("dressing").printed == "0.0052 in"


# TMC RP 618A, wheel bearing adjustment, final back-off, steer axles: 12 threads an inch 1/6 turn is the same setting as 18 threads 1/4 turn,
# and with the other nuts 12 threads 1/3 turn as 18 threads 1/2 turn: the same movement along the spindle.
@pytest.mark.parametrize(("twelve", "eighteen"), [(Fraction(1, 6), Fraction(1, 4)), (Fraction(1, 3), Fraction(1, 2))])
def test_back_off_of_wheel_bearing_nuts_moves_the_same_distance(twelve, eighteen):
    assert inches("1-1/2-12 UNF", twelve) == pytest.approx(inches("1-1/8-18 UNEF", eighteen), rel=1e-9)


# A car maker's published wheel bearing adjustment: 30 degrees back from snug, end play then 0.05 mm at most (a 1.5 mm pitch is from memory).
# Snug is a little preload, which takes part of the movement: the movement must not be under the play.
def test_movement_is_not_under_the_play_it_gives():
    found = outcome("M22 x 1.5", ADJUSTS, degrees_short="30 °").value("movement").likely * 1000
    assert found == pytest.approx(0.125) and found > 0.05


@pytest.mark.parametrize("thread", ["1/2-20 UNF", "1-1/8-12 UNF", "3/4-16 UNF"])
def test_by_exact_fractions(thread):
    per_inch = int(thread.split("-")[-1].split()[0])
    found = outcome(thread, degrees_short="20 °")
    assert found.value("dressing").likely / 0.0254 == pytest.approx(float(Fraction(20, 360 * per_inch)), rel=1e-12)
