"""Arcs on a rim against published rules and tables, and the rim cut into ten thousand straight pieces."""

import math

import pytest
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS


def arc(diameter, angle):
    outcome, problems = run(WORKINGS["timing-arc"], {"rim diameter": diameter, "angle": angle})
    assert problems == [] and outcome.refusals == ()
    return outcome


# How to make a timing tape (engine builders' wiki): a tenth of the way round is 36°, half of that 18°, half again 9°; exact.
@pytest.mark.parametrize(("angle", "part"), [("36°", 10), ("18°", 20), ("9°", 40)])
def test_parts_of_the_way_round(angle, part):
    outcome = arc("8.000 in", angle)
    assert outcome.value("arc").likely == pytest.approx(math.pi * 8 * 0.0254 / part, rel=1e-12)


# Published arc-length table, radius 5 m, angle 0.698131700797601 (40°): 3.490658503988 m.
def test_table_of_arcs():
    assert arc("10 m", "40°").value("arc").likely == pytest.approx(3.490658503988, rel=1e-9)


# Ignition timing worked through on a damper (a restorer's published notes): 40° laid off as 46.58 mm; its diameter follows from
# the rule stated there, 46.58 x 360 / 40 / pi. The tape must read the nearest half millimetre.
def test_damper():
    outcome = arc(f"{46.58 * 9 / math.pi:.6f} mm", "40°")
    assert outcome.value("arc").printed == "46.6 mm"
    assert outcome.value("metric tape").printed == "46.5 mm"


# Table of chords for radius 1 (handbook, *from memory*): 30° 0.5176, 60° 1.0000, 90° 1.4142; four figures.
@pytest.mark.parametrize(("angle", "chord"), [("30°", 0.5176), ("60°", 1.0000), ("90°", 1.4142)])
def test_chords(angle, chord):
    assert arc("2 m", angle).value("straight across").likely == pytest.approx(chord, abs=5.1e-5)


# An independent way: many short straight steps round the rim add up to the arc.
@pytest.mark.parametrize(("diameter", "degrees"), [(0.4572, 24), (0.42, 26), (1.5, 133)])
def test_many_short_steps(diameter, degrees):
    points = [(diameter / 2 * math.cos(n * math.radians(degrees) / 10000), diameter / 2 * math.sin(n * math.radians(degrees) / 10000)) for n in range(10001)]
    walked = sum(math.dist(one, two) for one, two in zip(points, points[1:], strict=False))
    outcome = arc(f"{diameter * 1000:.6f} mm", f"{degrees}°")
    assert outcome.value("arc").likely == pytest.approx(walked, rel=1e-8)
    assert outcome.value("straight across").likely == pytest.approx(math.dist(points[0], points[-1]), rel=1e-9)
