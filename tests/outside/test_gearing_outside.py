"""Gear trains, road speeds and adhesion against published rules, tables and answers."""

import math

import pytest
from scipy import constants
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS


def work(name, **texts):
    outcome, problems = run(WORKINGS[name], {key.replace("_", " "): text for key, text in texts.items()})
    assert problems == [] and outcome.refusals == ()
    return outcome


# Published examples: 20 teeth at 100 rpm drive 40 teeth at 50 rpm (mechanics question with its answer); 34 teeth to 17 are 2:1
# (cycle gearing notes, turned the other way round); gears 30 into 29 and final drive 20 into 88 make 4.25 to 1, printed 4.2
# as "1st dp" (vehicle-dynamics question): half a unit of that place.
def test_published_trains():
    assert work("gear-ratio", driving_teeth="20", driven_teeth="40", input_speed="100 rpm").value("output speed").printed == "50.0 rpm"
    assert work("gear-ratio", driving_teeth="17", driven_teeth="34").value("ratio").likely == 2
    assert work("gear-ratio", driving_teeth="30, 20", driven_teeth="29, 88").value("ratio").likely == pytest.approx(4.2, abs=0.0534)


# Farm-power question with its answer: 5 km/h, wheel 1.2 m: 83.33 m/min and 22.11 turns a minute; engine 1,000 rpm over 3 x 3.5
# leaves 4.3 for the final drive. Four and two figures.
def test_tractor():
    outcome = work("road-speed", engine_speed="22.11 rpm", ratio="1", wheel_diameter="1200 mm")
    assert outcome.value("road speed").likely == pytest.approx(83.33 / 60, rel=5e-4)
    left = 1000 / 22.11 / work("gear-ratio", ratios="3, 3.5").value("ratio").likely
    assert left == pytest.approx(4.3, abs=0.05)


# Racers' rule (published car arithmetic): mph = rpm x tyre diameter in inches / (ratio x 336). Its constant has three figures: 0.1 %.
@pytest.mark.parametrize(("rpm", "diameter", "gears"), [(3000, 28, 4.10), (1000, 20, 23.4), (2500, 36.4, 3.57)])
def test_rule_of_336(rpm, diameter, gears):
    outcome = work("road-speed", engine_speed=f"{rpm} rpm", ratio=f"{gears}", wheel_diameter=f"{diameter} in")
    assert outcome.value("road speed").likely / constants.mph == pytest.approx(rpm * diameter / gears / 336, rel=1e-3)


# Published table of feet and seconds to miles an hour (three decimals): 11 ft in 3 s 2.500; 16 ft in 4 s 2.727; and
# 60 mph is a mile in 60 s, a quarter-mile in 15 s. The wheel is made to turn once a second over `feet`/`seconds`.
@pytest.mark.parametrize(("feet", "seconds", "mph"), [(11, 3, 2.500), (16, 4, 2.727), (5280, 60, 60), (1320, 15, 60)])
def test_table_of_times(feet, seconds, mph):
    diameter = feet / seconds * 12 / math.pi
    outcome = work("road-speed", engine_speed="60 rpm", ratio="1", wheel_diameter=f"{diameter:.9f} in", distance=f"{feet} ft")
    assert outcome.value("road speed").likely / constants.mph == pytest.approx(mph, abs=5e-4)
    assert outcome.value("stopwatch").likely == pytest.approx(seconds, rel=1e-8)


# Examination question with its answer: four driving axles of 24 x 10^4 N each, friction 1/6: 16 x 10^4 N. And two published
# rules: a factor of adhesion of 4 is a coefficient of 0.25 (railroad encyclopedia); dry rails want five times the pull on the
# drivers, so 0.20 (locomotive handbook, 1888).
@pytest.mark.parametrize(("adhesion", "pull"), [("0.16666667", 16e4), ("0.25", 96e4 / 4), ("0.20", 96e4 / 5)])
def test_published_adhesion(adhesion, pull):
    outcome = work("slip-torque", weight_on_the_wheels=f"{96e4 / constants.g:.6f} kg", adhesion=adhesion, wheel_radius="500 mm")
    assert outcome.value("pull at slip").likely == pytest.approx(pull, rel=1e-6)
    assert outcome.value("slip torque").likely == pytest.approx(pull / 2, rel=1e-6)


# An independent way: follow the train turn by turn of its teeth until all wheels stand as at the start.
@pytest.mark.parametrize(("driving", "driven"), [((20, 13), (30, 52)), ((12, 17, 40), (35, 51, 20))])
def test_teeth_counted_until_all_stand_as_before(driving, driven):
    turns_in = 1
    while True:
        shaft = turns_in
        for one, two in zip(driving, driven, strict=True):
            if shaft * one % two:
                break
            shaft = shaft * one // two
        else:
            break
        turns_in += 1
    outcome = work("gear-ratio", driving_teeth=", ".join(map(str, driving)), driven_teeth=", ".join(map(str, driven)))
    assert outcome.value("ratio").likely == pytest.approx(turns_in / shaft, rel=1e-12)
