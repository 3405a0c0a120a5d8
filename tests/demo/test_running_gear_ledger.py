"""What strip, wheels, horns, springs and rods leave loose and close again, and what comes first, against the scenario's ledger."""

import pytest

from demo.ledger import procedure, step_of

MOVE = ["run", "turn by power"]
# The scenario's ledger: loose end | left in | closed in | for each | never while open.
LEDGER = [
    ("chocks-and-board", "strip-and-as-found#chock-wheels", None, ["turn by power"]),
    ("isolator-and-fuel-cock", "strip-and-as-found#lock-off-supply", None, MOVE),
    ("guards-off", "strip-and-as-found#take-guards-off", None, MOVE),
    ("brake-rod-out", "strip-and-as-found#free-brake", None, MOVE),
    ("gauge-cock-shut", "wheelset-repress#shut-gauge-cock", None, ["press (hub)"]),
    ("spring-clamps-on", "hornways-and-springs#clamp-springs", "side", MOVE),
    ("keeps-nipped", "hornways-and-springs#nip-keeps", "side", ["lift (frame)", *MOVE]),
    ("pads-dry", "hornways-and-springs#lay-dry-pads", "side", MOVE),
    ("cotters-closed", "coupling-rods#slip-cotters-in", "side", ["turn by power"]),
]
CLOSED = [
    ("strip-and-as-found", "brake-rod-out", "brake-rigging#fit-pull-rod"),
    ("strip-and-as-found", "chocks-and-board", "brake-rigging#take-chocks-away"),
    ("wheelset-repress", "gauge-cock-shut", "flycrank-press-on#rig-press"),
    ("hornways-and-springs", "spring-clamps-on", "coupling-rods#take-clamps-off"),
    ("hornways-and-springs", "keeps-nipped", "coupling-rods#tighten-keeps"),
]
OURS = ("strip-and-as-found", "clean-measure-decide", "wheelset-repress", "hornways-and-springs", "coupling-rods")


@pytest.mark.parametrize("loose, left, each, never", LEDGER)
def test_what_is_left_loose(book, loose, left, each, never):
    end = next(one for one in step_of(book, left)["leaves"] if one["id"] == loose)
    assert (end["each"], end["never while open"]) == (each, never)


def test_nothing_else_is_left_loose(book):
    assert {end["id"] for name in OURS for step in procedure(book, name)["steps"] for end in step["leaves"]} == {row[0] for row in LEDGER}


@pytest.mark.parametrize("owner, loose, closed", CLOSED)
def test_what_is_closed_again(book, owner, loose, closed):
    end = next(one for step in procedure(book, owner)["steps"] for one in step["leaves"] if one["id"] == loose)
    assert end["closes in"] == closed.partition("#")[0]
    assert f"{owner}/{loose}" in step_of(book, closed)["closes"]


def test_what_comes_first(book):
    first = {name: procedure(book, name)["after"] for name in (*OURS, "final-drive-build", "flycrank-press-on", "quartering-check", "brake-rigging")}
    assert first == {
        "strip-and-as-found": [], "clean-measure-decide": ["strip-and-as-found"], "wheelset-repress": ["clean-measure-decide"],
        "final-drive-build": ["clean-measure-decide"], "flycrank-press-on": ["final-drive-build", "wheelset-repress"],
        "quartering-check": ["wheelset-repress", "flycrank-press-on"], "hornways-and-springs": ["wheelset-repress"],
        "coupling-rods": ["quartering-check", "hornways-and-springs"], "brake-rigging": ["hornways-and-springs", "coupling-rods"]}


def test_what_is_open_before_the_quartering_is_proved(book):
    """Q24: cranks pressed and springs hung on a 24-B, engine work not begun: thirteen ticks."""
    ends: dict[str, int] = {}
    for name in ("strip-and-as-found", "clean-measure-decide", "final-drive-build", "wheelset-repress", "flycrank-press-on", "hornways-and-springs"):
        for step in procedure(book, name)["steps"]:
            ends |= {f"{name}/{end['id']}": 2 if end["each"] == "side" else 1 for end in step["leaves"]}
            for closed in step["closes"]:
                del ends[closed]
    assert set(ends) == {
        "flycrank-press-on/tab-washer-flat", "final-drive-build/drain-plug-finger-tight", "hornways-and-springs/keeps-nipped",
        "hornways-and-springs/spring-clamps-on", "strip-and-as-found/brake-rod-out", "hornways-and-springs/pads-dry",
        "strip-and-as-found/guards-off", "strip-and-as-found/chocks-and-board", "strip-and-as-found/isolator-and-fuel-cock"}
    assert sum(ends.values()) == 13


ACTS = {
    "strip-and-as-found": ["run", "lift (frame)", "press (hub)"], "clean-measure-decide": [],
    "wheelset-repress": ["lift (wheelset)", "press (wheel)", "press (wheel)"],
    "hornways-and-springs": ["press (spring)", "lift (frame)"], "coupling-rods": ["press (bush)"],
}


@pytest.mark.parametrize("name", OURS)
def test_what_its_steps_do(book, name):
    assert [act for step in procedure(book, name)["steps"] for act in step["acts"]] == ACTS[name]


@pytest.mark.parametrize("step, to", [
    ("strip-and-as-found#read-engine", "engine-bottom-end#choose-undersize"),
    ("strip-and-as-found#measure-horn-gaps", "hornways-and-springs#shim-horn-liners"),
    ("strip-and-as-found#measure-rod-clearance", "coupling-rods#press-bush"),
    ("clean-measure-decide#measure-crank-hub", "flycrank-press-on#read-press-card"),
    ("clean-measure-decide#measure-engine", "engine-bottom-end#choose-undersize engine-bottom-end#choose-oversize"),
    ("wheelset-repress#work-out-interference", "measure-seat-and-bore"),
    ("wheelset-repress#press-on", "fix-never-pass-mark measure-seat-and-bore"),
    ("wheelset-repress#read-last-bar", "fix-never-pass-mark measure-seat-and-bore"),
    ("wheelset-repress#measure-back-to-back", "fix-never-pass-mark"),
    ("hornways-and-springs#lower-frame", "shim-horn-liners"),
    ("coupling-rods#take-clamps-off", "hornways-and-springs#test-spring"),
    ("coupling-rods#measure-axle-centres", "hornways-and-springs#shim-horn-liners"),
    ("coupling-rods#check-clearance", "ream-bore press-bush"),
    ("coupling-rods#turn-by-bar", "measure-axle-centres quartering-check#compare-axles"),
    ("quartering-check#turn-half", "wheelset-repress#fix-never-pass-mark flycrank-press-on#degrease"),
])
def test_each_remedy(book, step, to):
    assert step_of(book, step)["go to"] == to.split()
