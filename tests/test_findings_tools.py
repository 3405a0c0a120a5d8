"""Slips about tools, needs, cautions and steps, each changed in the smallest book: (rule, stands, stands instead, line:column, says)."""

import pytest
from small_book import PROCEDURE, SITE_DATA
from test_findings import findings

TOOLS = "  tools: [{wrench: W1}]"
BOLT = "    is: 55 lbf·ft\n    source: shop p. 3\n"
PRESS = "  - id: press\n"
PULL = """\
  pull:
    label: Pull on the drum
    at radius: 2.00 in
    kind: force
    is: 6.0 to 9.0 lbf
    role: window
    source: shop p. 4
steps:
  - id: pull
    do: Pull the cord.
    record: {label: Pull, spec: pull}
"""
SHOP = {
    "scales": """\
fine: {title: Fine scale, kind: force, highest: 10 lbf, division: 0.1 lbf}
short: {title: Short scale, kind: force, highest: 5 lbf, division: 0.1 lbf}
coarse: {title: Winch scale, kind: force, highest: 1000 lbf, division: 10 lbf, accuracy: 1 %}
""",
    "adapters": "crow: {title: crowfoot, offset: 3 in}\n",
}


def window(text: str, more: str = "") -> str:
    return f"    figures:\n      - {{role: window, is: {text}, source: shop p. 3}}\n{more}"


def target(text: str) -> str:
    return f"      - {{role: target, is: {text}, source: shop p. 3}}\n"


CASES = [
    ("tool-not-in-needs", TOOLS, "  tools: [Spanner]", "28:5", "the wrench W1, which is not among the tools, add {wrench: W1} to"),
    ("tool-not-in-needs", "    wrench: W1\n", "    wrench: W1\n    adapter: crow\n", "28:5", "write {wrench: W1, adapter: crow}"),
    # 5 lbf·ft a graduation, 4 % either way: 56 to 59 holds no graduation, 50 to 56 only 55, which may be 57.2 or 52.8
    ("wrench-too-coarse", BOLT, window("56 to 59 lbf·ft"), "30:9", "no graduation inside 56 to 59 lbf·ft"),
    ("wrench-too-coarse", BOLT, window("50 to 56 lbf·ft"), "30:9", "cannot stay inside 50 to 56 lbf·ft"),
    ("wrench-too-coarse", BOLT, window("10 to 15 lbf·ft"), "30:9", "this one goes from 20 lbf·ft to 150 lbf·ft"),
    ("wrench-too-coarse", BOLT, window("45 to 60 lbf·ft", target("60 lbf·ft")), "30:9", "set for 60 lbf·ft"),
    ("reading-without-scale", "steps:\n", PULL, "32:5", "no scale or tester is among the tools"),
    ("press-force-without-ceiling", "      - {role: target, is: {early: 8 short ton, late: 10 short ton}, source: shop p. 1}\n"
     "      - {role: ceiling, is: 14 short ton, source: shop p. 2}\n", "      - {role: window, is: 8 to 10 short ton, source: shop p. 1}\n",
     "14:5", "has an accept band and no ceiling"),
    ("out-pulls-press", "    wrench: W1\n", "    wrench: W1\n    must not out-pull: bolt\n", "29:5", "'bolt' is a torque, no press force"),
    ("caution-too-late", "Tighten the bolts to", "WARNING, hub loaded. Tighten the bolts to", "36:9", "'WARNING' is typed inside the step 'bolt'"),
    ("caution-too-late", PRESS, "  - {id: ram, do: Set the ram., acts: [{press: hub}]}\n" + PRESS + "    acts: [{press: hub}]\n", "36:5",
     "HZ-1 is first named here, but 'ram' does the same (press (hub))"),
    ("one-action-a-step", "Tighten the bolts to {bolt}.", "Tighten the bolts to {bolt} and then wire them.", "36:9", "a second action, 'wire'"),
    ("one-action-a-step", "Tighten the bolts to {bolt}.", "Tighten the bolts to {bolt}, then bend the plate.", "36:9", "'bend'"),
    ("one-action-a-step", "Tighten the bolts to {bolt}.", "Tighten the bolts to {bolt}. Bend the plate.", "36:9", "'bend'"),
]


@pytest.mark.parametrize("rule, stands, wrong, at, says", CASES, ids=[f"{case[0]}: {case[2].strip()[-30:]!r}" for case in CASES])
def test_a_slip_is_one_finding_at_its_place(rule, stands, wrong, at, says):
    assert PROCEDURE.count(stands) == 1, "the case must change exactly one place"
    found = [finding.line() for finding in findings(PROCEDURE.replace(stands, wrong), **SHOP)]
    lines = [line for line in found if line.endswith(f"[{rule}]")]
    assert len(lines) == 1 and lines[0].startswith(f"procedures/hoist/drum.yaml:{at}: ") and says in lines[0], found


QUIET = [
    (BOLT, window("43 to 47 lbf·ft"), "45 stays inside, 43.2 to 46.8"),
    (BOLT, window("43 to 47 lbf·ft", target("45 lbf·ft")), "target in the middle"),
    ("Tighten the bolts to {bolt}.", "Tighten the bolts to {bolt}, first the left, then the right.", "one action in two places"),
    ("Tighten the bolts to {bolt}.", "Tighten the bolts to {bolt}. On a cold day warm them.", "a second sentence that is no action"),
]


@pytest.mark.parametrize("stands, right, why", QUIET, ids=[case[2] for case in QUIET])
def test_what_is_right_gives_no_finding(stands, right, why):
    assert PROCEDURE.count(stands) == 1
    assert [finding.line() for finding in findings(PROCEDURE.replace(stands, right), **SHOP)] == []


@pytest.mark.parametrize("named, says", [
    ("{scale: fine}", None), ("{scale: short}", "Short scale ends at 5 lbf"), ("{tester: coarse}", "too coarse by its 10 lbf division and 1 %"),
    ("{scale: short}, {scale: fine}", None), ("{scale: short}, {scale: coarse}", "ends at 5 lbf; Winch scale is too coarse")])
def test_a_scale_must_reach_the_pull_and_be_fine_enough(named, says):
    text = PROCEDURE.replace("steps:\n", PULL).replace(TOOLS, f"  tools: [{{wrench: W1}}, {named}]")
    lines = [finding.line() for finding in findings(text, **SHOP)]
    assert (lines == []) if says is None else (len(lines) == 1 and says in lines[0]), lines


def test_a_drag_is_judged_by_the_pull_at_its_radius():
    """28 to 40 lbf·in on a radius of 4 in is a pull of 7 to 10 lbf, just on a scale of 10; on 3 in it is 13.3, off it."""
    for radius, expected in (("4.00 in", 0), ("3.00 in", 1)):
        drag = PULL.replace("kind: force", "kind: rolling drag").replace("2.00 in", radius).replace("6.0 to 9.0 lbf", "28 to 40 lbf·in")
        text = PROCEDURE.replace("steps:\n", drag).replace(TOOLS, "  tools: [{wrench: W1}, {scale: fine}]")
        assert [finding.rule for finding in findings(text, **SHOP)] == ["reading-without-scale"] * expected


def test_an_adapter_moves_the_graduations():
    """On a wrench of 15 in, 3 in in line turns 1.2 times the setting: 40 gives 48, where the bare wrench has only 45 and 50."""
    true = SITE_DATA["site_data/wrenches.yaml"].replace("accuracy: 4 %", "accuracy: 1 %, length: 15 in")
    bare = PROCEDURE.replace(BOLT, window("47.4 to 48.6 lbf·ft"))
    crow = bare.replace(TOOLS, "  tools: [{wrench: W1, adapter: crow}]").replace("    wrench: W1\n", "    wrench: W1\n    adapter: crow\n")
    assert [finding.rule for finding in findings(bare, **SHOP, wrenches=true)] == ["wrench-too-coarse"]
    assert findings(crow, **SHOP, wrenches=true) == []


def test_a_caution_that_does_not_say_how_to_avoid_is_a_finding():
    cautions = SITE_DATA["site_data/cautions.yaml"].replace("avoid: Stand clear.", "avoid: none")
    assert [finding.line() for finding in findings(cautions=cautions)] == [
        "site_data/cautions.yaml:1:1: error: the caution HZ-1 does not say how to avoid the hazard, "
        "write under 'avoid:' what to do, such as: Stand clear [caution-incomplete]"]


HELD = PROCEDURE.replace("    wrench: W1\n", "    wrench: W1\n    must not out-pull: press.target\n")


def test_a_nut_that_holds_a_press_needs_a_press_it_is_measured_by():
    bare = HELD.replace("[{press: P20, gauge: main}]", "none")
    assert "out-pulls-press" in [finding.rule for finding in findings(bare)]
    assert findings(HELD) == []


def test_a_nut_that_may_clamp_over_three_quarters_of_its_press_is_warned_about():
    """1/2 in, K 0.13, 4 % high: 65 lbf·ft may clamp 12,480 lbf, 78 % of 8 short tons (16,000 lbf); 55 lbf·ft 66 %."""
    said = [finding for finding in findings(HELD.replace("55 lbf·ft", "65 lbf·ft")) if "of the press force" in finding.message]
    assert [finding.severity for finding in said] == ["warning"] and "up to 78" in said[0].message


@pytest.mark.parametrize("accuracy", ["100 %", "250 %"])
def test_a_wrench_that_may_be_out_by_all_of_it_is_never_fine_enough(accuracy):
    wild = SITE_DATA["site_data/wrenches.yaml"].replace("accuracy: 4 %", f"accuracy: {accuracy}")
    assert "wrench-too-coarse" in [finding.rule for finding in findings(PROCEDURE.replace(BOLT, window("40 to 60 lbf·ft")), wrenches=wild)]
