"""Results worked out in the demonstration against the scenario's own numbers, and readings judged as its questions ask."""

from pathlib import Path

import pytest

from witnessmark.prove import check
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS
from witnessmark.workings.shelf import shelf_of

BOOK = Path(__file__).parents[2]

# procedure / computed | result | what it shows for 24-A; 24-B; 24-C (one for all, - where the procedure is not for it)
RESULTS = """\
hornways-and-springs / axle-spring | spring rate | 1631 lbf/in; 2194 lbf/in; 2892 lbf/in
hornways-and-springs / axle-spring | load when solid | 4079 lbf; 4389 lbf; 4338 lbf
hornways-and-springs / axle-spring | stored energy under load | 102 lbf·ft; 119 lbf·ft; 129 lbf·ft
hornways-and-springs / axle-spring-reject | uncertainty | 32 lbf
hornways-and-springs / axle-spring-reject | accept line | 1840 lbf; 2300 lbf; 2720 lbf
engine-top-end / valve-spring-accept | uncertainty | 2.1 lbf
engine-top-end / valve-spring-accept | accept line | 58 lbf
engine-top-end / injection-mark | arc | 3.770 in; 3.770 in; 95.3 mm
engine-top-end / injection-mark | inch tape | 3-49/64 in; 3-49/64 in; 3-3/4 in
flywheel-and-clutch / clutch-spring-accept | reject limit | under 149 lbf
flywheel-and-clutch / clutch-spring-accept | accept line | 151 lbf
flywheel-and-clutch / clutch-face-limit | most run-out | 0.003 in
engine-bottom-end / sling-steep | leg load | 779 lbf
engine-bottom-end / sling-half | leg load | 955 lbf
engine-bottom-end / sling-flat | leg load | 1350 lbf
engine-bottom-end / undersize-example | grind to | 2.740 in
engine-bottom-end / oversize-example | bore to | 4.270 in
coupling-rods / bush-fitted | contact pressure | 2546 psi
coupling-rods / bush-fitted | closes in | 0.0019 in
coupling-rods / bush-fitted | bore before pressing | 2.264 in
drive-chain / chain | links | 62; 62; -
drive-chain / chain | centres then | 23.04 in; 23.04 in; -
drive-chain / chain | pitch diameter | 7.991 in; 7.991 in; -
drive-chain / chain | other pitch diameter | 11.958 in; 11.958 in; -
drive-chain / chain-limit | renew over | 25.50 in; 25.50 in; -
drive-chain / slack-side | span | 22.95 in; 22.95 in; -
drive-chain / slack-side | movement | 0.46 to 0.68 in; 0.46 to 0.68 in; -
drive-chain / chain-drive | pull | 1698 lbf; 1698 lbf; -
gear-change / first-train | ratio | 23.40; 23.40; 32.80
gear-change / first-speed | road speed | 2.54 mph
gear-change / second-speed | road speed | 6.20 mph; 4.51 mph; 4.53 mph
fill-and-engine-test / sump-measure | litres | 7.96 litre; 7.96 litre; 9.50 litre
fill-and-engine-test / sump-measure | in imperial measure | 14.0 imperial pint; 14.0 imperial pint; 16.7 imperial pint
fill-and-engine-test / coolant-measure | litres | 40.9 litre; 25.0 litre; 25.0 litre
fill-and-engine-test / coolant-measure | in US measure | 10.8 US gallon; 6.61 US gallon; 6.61 US gallon
fill-and-engine-test / final-drive-measure | litres | 2.84 litre
lathe-run-in-and-test / headstock-oil | oil in an hour | 18.0 mL (14.4 to 21.6)
lathe-run-in-and-test / headstock-oil | cup lasts | 2.5 h (2.1 to 3.1)
"""


@pytest.mark.parametrize("row", RESULTS.splitlines())
def test_each_result(book, row):
    where, result, expected = (part.strip() for part in row.split(" | "))
    procedure, computed = where.split(" / ")
    shown = {}
    for run_of in next(each for each in book["procedures"] if each["id"] == procedure)["worked"]:
        if run_of["owner"] == computed:
            assert run_of["refused"] == []
            value = next(each for each in run_of["values"] if each["name"] == result)
            shown.setdefault(run_of["for"].get("locomotive", ""), set()).add(value["shown"])
    cases = expected.split("; ")
    variants = sorted(shown) if len(cases) == 1 else ["24-A", "24-B", "24-C"]
    assert shown == {variant: {case} for variant, case in zip(variants, cases * (len(variants) if len(cases) == 1 else 1), strict=True) if case != "-"}
    assert shown


@pytest.fixture(scope="module")
def shelf():
    return shelf_of(check(BOOK).book)


def work(name, shelf, **texts):
    outcome, problems = run(WORKINGS[name], {key.replace("_", " "): text for key, text in texts.items()}, shelf)
    assert problems == [] and outcome.refusals == ()
    return {value.name: value.printed for value in outcome.values}


@pytest.mark.parametrize(("reading", "verdict"), [("2,220 lbf", "reject"), ("2,280 lbf", "not proved good"), ("2,420 lbf", "good"), ("2,380 lbf", "good")])
def test_q22_springs_on_the_tester(shelf, reading, verdict):
    told = work("spring-test", shelf, reject_limit="2,251 lbf", scale="tester-3000", reading=reading)
    assert (told["reject limit"], told["accept line"], told["verdict"]) == ("under 2251 lbf", "2300 lbf", verdict)


def test_q21_fourteen_pints_by_a_us_jug(shelf):
    told = work("volumes", shelf, volume="14 imperial pint")
    assert (told["by the wrong jug"], told["litres"], told["the wrong jug gives"]) == ("6.62 litre", "7.96 litre", "16.7 % too little")


@pytest.mark.parametrize(("variant", "torque"), [("24-A", "2520 lbf·ft"), ("24-B", "3080 lbf·ft"), ("24-C", "3640 lbf·ft")])
def test_slip_torque_of_the_machine(book, variant, torque):
    """The figure of the machine is worked out where it is used: 0.30 of the weight at 10.0 in."""
    machine = next(each for each in book["machines"] if each["id"] == "type-24")
    figures = next(spec for spec in machine["figures"] if spec["id"] == "slip-torque")["figures"]
    assert {figure["as written"] for figure in figures if figure["for"]["locomotive"] == variant} == {torque}


@pytest.mark.parametrize(("gear", "speed", "rpm"), [("1.20", "8.26 mph", "1,000 rpm"), ("1.15", "9.05 mph", "1,400 rpm")])
def test_top_gear(shelf, gear, speed, rpm):
    train = work("gear-ratio", shelf, further_ratio=gear, ratios="1.500" if rpm == "1,000 rpm" else "2.000", driving_teeth="13", driven_teeth="52")["ratio"]
    assert work("road-speed", shelf, engine_speed=rpm, ratio=train, wheel_diameter="20.0 in")["road speed"] == speed


def test_a_nose_out_by_six_tenths_is_eccentric_by_three(shelf):
    assert work("run-out", shelf, reading="0.0006 in")["eccentricity"] == "0.00030 in"


def test_the_jackshaft_cup(shelf):
    told = work("drip-rate", shelf, drops="4 to 6 drops/min", drop="0.03 mL", cup="60 mL")
    assert (told["oil in an hour"], told["cup lasts"]) == ("9.0 mL (7.2 to 10.8)", "6.7 h (5.6 to 8.3)")
