"""Filling, the engine test and the hand-over against the scenario: every figure by variant, the ledger, and two of its questions."""

from fractions import Fraction

import pytest

from demo.ledger import figures, procedure, step_of
from witnessmark.core.display import converted
from witnessmark.core.quantity import read_quantity

ALL = ("24-A", "24-B", "24-C")

# Scenario's label | role | standing | figure of the 24-A, 24-B and 24-C as the source writes it; '' where there is none.
FIGURES = [
    ("FT-FD-OIL", "target", "factory", "5 imperial pints", "5 imperial pints", "5 imperial pints"),
    ("FT-SUMP", "target", "factory", "14 imperial pints", "14 imperial pints", "9.5 litres"),
    ("FT-BOX-OIL", "target", "shop", "0.25 litre", "0.25 litre", "0.25 litre"),
    ("FT-COOL", "target", "factory", "9 imperial gallons", "5.5 imperial gallons", "5.5 imperial gallons"),
    ("FT-IDLE", "window", "factory", "380 to 420 rpm", "380 to 420 rpm", "500 to 550 rpm"),
    ("FT-GOV", "target", "factory", "1,080 rpm", "1,080 rpm", "1,500 rpm"),
    ("FT-FIRST", "stop", "shop", "800 rpm", "800 rpm", "1,100 rpm"),
    ("FT-OIL-PRESS", "window", "factory", "25 to 40 psi", "25 to 40 psi", "25 to 40 psi"),
    ("FT-OIL-PRESS", "stop", "factory", "under 10 psi", "under 10 psi", "under 10 psi"),
    ("FT-WATER", "window", "factory", "160 to 185 °F", "160 to 185 °F", "160 to 185 °F"),
    ("FT-WATER", "stop", "factory", "200 °F", "200 °F", "200 °F"),
    ("FT-DRIP", "window", "factory", "4 to 6 drops/min", "", ""),
    ("HO-LIGHT", "target", "shop", "30 min", "30 min", "30 min"),
    ("HO-TEMP", "window", "shop", "at most 60 °F rise", "at most 60 °F rise", "at most 60 °F rise"),
    ("HO-TEMP", "stop", "shop", "80 °F rise", "80 °F rise", "80 °F rise"),
    ("HO-STOP", "ceiling", "shop", "at most 15 ft", "at most 15 ft", "at most 15 ft"),
]


@pytest.mark.parametrize("label, role, standing, a, b, c", FIGURES)
def test_each_figure(book, label, role, standing, a, b, c):
    found = figures(book, "type-24", label, "locomotive", role)
    assert {variant: text for variant, (text, _) in found.items()} == {v: text for v, text in zip(ALL, (a, b, c)) if text}
    assert {word for _, word in found.values()} == {standing}


def test_the_governor_stop_for_the_first_start(book):
    stop = next(each for each in procedure(book, "fill-and-engine-test")["specs"] if each["id"] == "governor-stop")
    assert {each["as written"] for each in stop["figures"]} == {"2 turns"}


def test_the_stop_that_is_reckoned(book):
    stop = next(each for each in procedure(book, "close-up-and-hand-over")["specs"] if each["id"] == "stopping-distance")
    assert {(each["as written"], *each["standing"]) for each in stop["figures"] if each["role"] == "found"} == {
        ("5.6 ft", "computed"), ("12.9 ft", "computed")}


# The scenario's other measure of each volume; the page shows it beside the one that is typed.
@pytest.mark.parametrize("volume, beside", [("5 imperial pints", "2.84 litre"), ("14 imperial pints", "7.96 litre"), ("14 imperial pints", "16.8 US pint"),
                                            ("9 imperial gallons", "40.9 litre"), ("9 imperial gallons", "10.8 US gallon"), ("5.5 imperial gallons", "25.0 litre")])
def test_each_volume_in_the_other_measure(volume, beside):
    assert beside in converted(read_quantity(volume, "volume"), "target").split(", ")


def _litres(text):
    return read_quantity(text, "volume").si_low * 1000


def test_fourteen_pints_by_a_us_jug(book):
    """Scenario Q21: 6.62 litres, 16.7 % short of 7.96. The sizes of the two pints, 34.677 and 28.875 cubic inches, are statute."""
    imperial, us = _litres("14 imperial pints"), _litres("14 US pints")
    assert (round(imperial, 2), round(us, 2), round(100 * (1 - us / imperial), 1)) == (7.96, 6.62, 16.7)
    assert us == pytest.approx(14 * 28.875 * 0.0254**3 * 1000, rel=1e-12)
    assert imperial == pytest.approx(14 * 0.56826125, rel=1e-12)
    note = next(each for each in procedure(book, "fill-and-engine-test")["notes"] if each["kind"] == "answered question")
    assert "6.62 litres, 16.7 % short of 7.96" in note["says"]
    correction = next(each for each in book["corrections"] if each["id"] == "COR-3")
    assert (correction["on"], correction["about"]) == ("2024-01-27", ["fill-and-engine-test/sump-oil"])


def test_a_rise_is_no_temperature(book):
    """Scenario Q31: the limit is a rise of 33.3 °C, the box has risen 22.7 °C; in air of 18.3 °C the limit reads 51.7 and the stop 62.8."""
    assert converted(read_quantity("at most 60 °F rise", "temperature rise"), "window") == "at most 33.3 °C rise"
    assert converted(read_quantity("80 °F rise", "temperature rise"), "stop") == "44.4 °C rise"
    air = Fraction("18.3")
    risen = 41 - air
    assert (float(risen), float(risen * 9 / 5)) == pytest.approx((22.7, 40.86))
    assert risen < Fraction(60 * 5, 9)
    # 65 °F is 18.33 °C; the sheet's 51.7 and 62.8 are 125 °F and 145 °F.
    assert [round(float(Fraction((at - 32) * 5, 9)), 1) for at in (65, 125, 145)] == [18.3, 51.7, 62.8]
    assert round(float(Fraction((60 - 32) * 5, 9)), 1) == 15.6
    note = next(each for each in procedure(book, "close-up-and-hand-over")["notes"] if each["id"] == "rise-taken-for-a-temperature")
    assert all(word in note["says"] for word in ("15.6 °C", "33.3 °C", "22.7 °C", "40.8 °F", "51.7 °C", "62.8 °C", "110 lbf·ft"))


def test_the_remedy_of_a_hot_box_is_the_pad_and_not_its_keep(book):
    step = step_of(book, "close-up-and-hand-over#measure-bearings")
    assert step["go to"][0] == "fill-and-engine-test#oil-axleboxes"
    assert "tighten" not in step["if outside"].lower()


# The scenario's ledger, what these two procedures open and close: its label | left in | as | closed in.
LEDGER = [
    ("LE-03", "final-drive-build#leave-box-open", "drain-plug-finger-tight", "fill-and-engine-test#tighten-drain-plug"),
    ("LE-06", "coupling-rods#slip-cotters-in", "cotters-closed", "close-up-and-hand-over#open-cotters"),
    ("LE-10", "engine-top-end#leave-head-nuts-cold", "head-nuts-cold", "fill-and-engine-test#pull-head-nuts-hot"),
    ("LE-10", "engine-top-end#leave-head-nuts-cold", "head-nuts-cold", "fill-and-engine-test#pull-head-nuts-hot-metric"),
    ("LE-11", "engine-top-end#leave-unions-slack", "nozzle-unions-slack", "fill-and-engine-test#bleed-unions"),
    ("LE-12", "engine-bottom-end#leave-block-open", "block-drain-open", "fill-and-engine-test#shut-block-drain"),
    ("LE-13", "fill-and-engine-test#set-governor-stop", "top-speed-not-sealed", "close-up-and-hand-over#seal-top-speed"),
    ("LE-14", "hornways-and-springs#lay-dry-pads", "pads-dry", "fill-and-engine-test#oil-axleboxes"),
    ("LE-15", "strip-and-as-found#take-guards-off", "guards-off", "fill-and-engine-test#fit-guards"),
    ("LE-18", "strip-and-as-found#lock-off-supply", "isolator-and-fuel-cock", "fill-and-engine-test#unlock-supply"),
]


@pytest.mark.parametrize("label, left, loose, closed", LEDGER)
def test_the_ledger(book, label, left, loose, closed):
    end = next(each for each in step_of(book, left)["leaves"] if each["id"] == loose)
    assert end["closes in"] == closed.partition("#")[0]
    assert f"{left.partition('#')[0]}/{loose}" in step_of(book, closed)["closes"]


def test_every_union_and_plug_is_shut_before_the_engine_runs(book):
    steps = [step["id"] for step in procedure(book, "fill-and-engine-test")["steps"]]
    for earlier in ("shut-block-drain", "tighten-drain-plug", "fit-guards", "post-second-person", "bleed-unions"):
        assert steps.index(earlier) < steps.index("start-at-idle")


def test_the_machine_is_handed_over_here(book):
    machine = next(each for each in book["machines"] if each["id"] == "type-24")
    assert machine["hand-over"] == "close-up-and-hand-over"
    assert [step["id"] for step in procedure(book, "close-up-and-hand-over")["steps"]][-1] == "sign-hand-over"


def test_what_comes_first(book):
    """On a 24-C the chain drops out and the gear box stands in its place."""
    assert procedure(book, "fill-and-engine-test")["after"] == [
        "engine-top-end", "flywheel-and-clutch", "gear-change", "drive-chain", "flycrank-press-on", "hornways-and-springs", "brake-rigging"]
    assert procedure(book, "close-up-and-hand-over")["after"] == ["coupling-rods", "brake-rigging", "fill-and-engine-test"]


def test_the_ledger_has_18_entries_and_24_ticks(book):
    """A 24-C has no chain: 17 and 23. All but the two that the hand-over closes are shut before it begins."""
    ends = {f"{home['id']}/{end['id']}": (end, step["only"]) for home in book["procedures"] if home["machine"] == "type-24"
            for step in home["steps"] for end in step["leaves"]}
    on = {variant: [2 if end["each"] == "side" else 1 for end, only in ends.values() if not only or variant in only] for variant in ALL}
    assert {variant: (len(ticks), sum(ticks)) for variant, ticks in on.items()} == {"24-A": (18, 24), "24-B": (18, 24), "24-C": (17, 23)}
    assert set(ends) - set(procedure(book, "close-up-and-hand-over")["must be shut"]) == {
        "coupling-rods/cotters-closed", "fill-and-engine-test/top-speed-not-sealed"}


def test_what_is_open_before_the_quartering_is_proved(book):
    """Scenario Q24: thirteen ticks after the cranks are pressed on and the springs hung, with no engine work begun."""
    done = ("strip-and-as-found", "clean-measure-decide", "final-drive-build", "wheelset-repress", "flycrank-press-on", "hornways-and-springs")
    steps = [(name, step) for name in done for step in procedure(book, name)["steps"]]
    closed = {end for _, step in steps for end in step["closes"]}
    open_ = {f"{name}/{end['id']}": 2 if end["each"] == "side" else 1 for name, step in steps for end in step["leaves"]
             if f"{name}/{end['id']}" not in closed}
    assert sum(open_.values()) == 13 and len(open_) == 9
    assert {"final-drive-build/seal-carriers-off", "wheelset-repress/gauge-cock-shut"} <= closed
