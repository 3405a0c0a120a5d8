"""The lathe headstock against the scenario: every figure by variant, what is left loose and closed, what each step sends to."""

import pytest

from demo.ledger import figures, procedure, step_of

LATHE = ("lathe-strip-and-readings", "lathe-front-bearing-plain", "lathe-front-bearing-taper", "lathe-headstock-close",
         "lathe-run-in-and-test")

# Scenario's label of the spec | variant | role | figure as the source writes it | standing.
FIGURES = [
    ("LA-NOSE", "plain taper", "window", "at most 0.0003 in", "factory"),
    ("LA-NOSE", "plain taper", "reject", "over 0.0006 in", "factory"),
    ("LA-LIFT", "plain", "window", "0.0010 to 0.0016 in", "factory"),
    ("LA-FLOAT", "plain taper", "window", "0.001 to 0.003 in", "factory"),
    ("LB-CAP", "plain", "target", "40 lbf·ft", "factory standard"),
    ("LB-SHIM", "plain", "target", "0.0105 in", "computed"),
    ("LB-TURN", "plain", "ceiling", "under 15 lbf·in", "shop"),
    ("LC-HEAT", "taper", "target", "242 °F", "computed"),
    ("LC-HEAT", "taper", "stop", "250 °F", "factory"),
    ("LC-DRAG", "taper", "window", "6 to 10 lbf·in", "factory"),
    ("LC-BACK", "taper", "found", "0.0021 in for 12 degrees; 0.001 in is 5.8 degrees", "computed"),
    ("LC-GROWTH", "taper", "found", "0.0010 in", "computed"),
    ("LD-MESH", "plain taper", "window", "0.003 to 0.006 in", "factory"),
    ("LD-PLATE", "plain taper", "target", "18 lbf·ft", "factory standard"),
    ("LD-DRAG", "taper", "ceiling", "at most 2 lbf·in", "shop"),
    ("LD-BELT", "plain taper", "target", "0.28 in", "factory"),
    ("LR-DRIP", "plain taper", "window", "8 to 12 drops/min", "factory"),
    ("LR-RISE", "plain taper", "window", "at most 20 °F rise", "factory"),
    ("LR-RISE", "plain taper", "stop", "60 °F rise", "factory"),
]


@pytest.mark.parametrize("label, variants, role, written, standing", FIGURES)
def test_each_figure(book, label, variants, role, written, standing):
    found = figures(book, "thornley-13", label, "headstock", role)
    assert {variant: text for variant, (text, _) in found.items()} == dict.fromkeys(variants.split(), written)
    assert {word for _, word in found.values()} == {standing}


def test_the_variants_part_at_serial_2750(book):
    machine = next(each for each in book["machines"] if each["id"] == "thornley-13")
    assert [(v["id"], v["serials"]) for v in machine["carriers"][0]["variants"]] == [("plain", "1200 to 2749"), ("taper", "2750 to 3890")]
    assert machine["hand-over"] == "lathe-run-in-and-test"


def test_the_middle_speed_may_rise_further_but_stops_at_the_same(book):
    middle = next(each for each in procedure(book, "lathe-run-in-and-test")["specs"] if each["id"] == "rise-middle")
    assert {(each["role"], each["as written"]) for each in middle["figures"]} == {("window", "at most 45 °F rise"), ("stop", "60 °F rise")}


@pytest.mark.parametrize("owner, torque, setting, share", [("cap-bolts", "40 lbf·ft", "40 lbf·ft", "40 %"),
                                                           ("rear-plate-bolts", "18 lbf·ft", "18 lbf·ft", "68 %")])
def test_each_torque_and_its_share_of_proof(book, owner, torque, setting, share):
    runs = [run for name in LATHE for run in procedure(book, name)["worked"] if run["owner"] == owner]
    assert runs
    for run in runs:
        shown = {value["name"]: value["shown"] for value in run["values"]}
        assert (shown["torque"], shown["setting"]) == (torque, setting)
        assert shown["share of proof"].split(" (")[0] == share


# The scenario's ledger: loose end | left in | closed in | never while open.
LEDGER = [
    ("lock-screw-slack", "lathe-front-bearing-taper#leave-lock-screw", "lathe-run-in-and-test#lock-preload-nut", []),
    ("wicks-dry", "lathe-headstock-close#fit-dry-wicks", "lathe-run-in-and-test#fill-drip-cups", ["run", "turn by power"]),
    ("supply-locked-off", "lathe-strip-and-readings#lock-supply-off", "lathe-run-in-and-test#unlock-supply", ["run", "turn by power"]),
    ("belt-guard-off", "lathe-strip-and-readings#take-belt-off", "lathe-headstock-close#fit-belt-guard", ["run", "turn by power"]),
    ("locked-for-warm-readings", "lathe-run-in-and-test#lock-for-warm-readings", "lathe-run-in-and-test#close-and-unlock", ["run", "turn by power"]),
]


@pytest.mark.parametrize("loose, left, closed, never", LEDGER)
def test_the_ledger(book, loose, left, closed, never):
    end = next(each for each in step_of(book, left)["leaves"] if each["id"] == loose)
    assert (end["never while open"], end["closes in"], end["each"]) == (never, closed.partition("#")[0], None)
    assert f"{left.partition('#')[0]}/{loose}" in step_of(book, closed)["closes"]


def test_nothing_else_is_left_loose_on_the_lathe(book):
    assert {end["id"] for name in LATHE for step in procedure(book, name)["steps"] for end in step["leaves"]} == {row[0] for row in LEDGER}


def test_no_step_of_a_plain_headstock_closes_the_lock_screw(book):
    assert step_of(book, "lathe-run-in-and-test#lock-preload-nut")["only"] == ["taper"]


def test_what_comes_first(book):
    assert [(name, procedure(book, name)["after"]) for name in LATHE] == [
        ("lathe-strip-and-readings", []), ("lathe-front-bearing-plain", ["lathe-strip-and-readings"]),
        ("lathe-front-bearing-taper", ["lathe-strip-and-readings"]),
        ("lathe-headstock-close", ["lathe-front-bearing-plain", "lathe-front-bearing-taper"]),
        ("lathe-run-in-and-test", ["lathe-headstock-close"])]


def test_the_guard_is_on_before_the_run_in_begins(book):
    assert procedure(book, "lathe-run-in-and-test")["must be shut"] == ["lathe-strip-and-readings/belt-guard-off"]
