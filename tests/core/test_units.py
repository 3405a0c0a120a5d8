"""The closed table: what a spelling means under a kind, and what is refused."""

import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.core import unit_answers, unit_sizes
from witnessmark.core.kinds import KINDS
from witnessmark.core.units import Unit, UnitProblem, counterpart, find_unit, units_of

MEASURED = [kind for kind in KINDS if kind not in ("thread", "none")]
NAMES = [unit.size for kind in MEASURED for unit in units_of(kind) if isinstance(unit.size, str)]


def test_the_answers_kept_are_those_that_pint_gives_now(update_golden):
    """Exactly, to the last figure of each fraction: none is missing, none is left over, none was typed by hand."""
    kept, now = Path(unit_answers.__file__), unit_sizes.answers(NAMES)
    if update_golden:
        kept.write_text(now, encoding="utf-8", newline="\n")
    assert kept.read_text(encoding="utf-8") == now, "meant? make test ARGS=--update-golden, then read the difference"


def test_a_unit_without_an_answer_is_asked_of_pint(monkeypatch):
    monkeypatch.setattr(unit_sizes, "ANSWERS", {})
    monkeypatch.setattr(unit_sizes, "asked", lambda name: f"asked for {name}")
    assert unit_sizes.size_and_zero.__wrapped__("inch") == "asked for inch"


def test_a_command_that_needs_no_other_unit_does_not_wait_for_pint():
    code = ("import sys; from witnessmark.cli import main; "
            "main(['work', 'taper-advance', 'force=15 long ton']); print('pint' in sys.modules)")
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, env={"PYTHONPATH": ":".join(sys.path)})
    assert ran.stdout.splitlines()[-1] == "False", ran.stderr


@pytest.mark.parametrize("spelling, kind, symbol", [
    ("lb-ft", "torque", "lbf·ft"), ("ft-lb", "torque", "lbf·ft"), ("lb·ft", "torque", "lbf·ft"), ("lbf-ft", "torque", "lbf·ft"),
    ("lbf ft", "torque", "lbf·ft"), ("ft.-lbs.", "torque", "lbf·ft"), ("LB-FT", "torque", "lbf·ft"), ("Nm", "torque", "N·m"),
    ("N m", "torque", "N·m"), ("N-m", "torque", "N·m"), ("in-lb", "rolling drag", "lbf·in"), ("in2", "area", "in²"),
    ("sq in", "area", "in²"), ("sq. in.", "area", "in²"), ("kg/cm2", "pressure", "kgf/cm²"), ("kg per cm²", "pressure", "kgf/cm²"),
    ("F", "temperature", "°F"), ("deg F", "temperature", "°F"), ("°F", "temperature rise", "°F rise"),
    ("F rise", "temperature rise", "°F rise"), ("inch", "length", "in"), ('"', "length", "in"), ("litres", "volume", "litre"),
    ("imp. qt", "volume", "imperial quart"), ("drops per minute", "drip rate", "drops/min"), ("lb/in", "spring rate", "lbf/in"),
    ("miles per hour", "road speed", "mph"), ("PSI", "pressure", "psi"), ("UK tons", "press force", "long ton"),
    ("", "friction", ""), ("deg", "angle", "°"), ("lb", "force", "lbf"), ("lb", "mass", "lb"),
])
def test_spelling(spelling, kind, symbol):
    found = find_unit(spelling, kind)
    assert isinstance(found, Unit), found
    assert found.symbol == symbol


def test_one_spelling_is_another_unit_under_another_kind():
    force, mass = find_unit("long ton", "press force"), find_unit("long ton", "mass")
    assert force != mass
    assert float(force.factor / mass.factor) == pytest.approx(9.80665)


@pytest.mark.parametrize("spelling, kind", [
    ("ton", "press force"), ("tons", "mass"), ("T", "press force"), ("quart", "volume"), ("gal", "volume"), ("pint", "volume"),
    ("fl oz", "volume"), ("fl. oz.", "volume"), ("mil", "length"), ("mils", "clearance"),
])
def test_a_word_for_two_sizes_is_refused_and_both_are_named(spelling, kind):
    problem = find_unit(spelling, kind)
    assert isinstance(problem, UnitProblem)
    assert "more than one unit" in problem.message
    assert " or " in problem.mend


@pytest.mark.parametrize("spelling, kind, said, mend", [
    ("lbf·ft", "press force", "measures torque", "long ton"),
    ("kg", "force", "measures mass", "lbf"),
    ("J", "torque", "measures energy", "N·m"),
    ("°C", "angle", "measures temperature", "°"),
    ("inc", "length", "is no unit", "write in if"),
    ("mpa", "pressure", "is no unit", "write MPa if"),       # a small m is a thousandth, a large one a million
    ("NM", "torque", "is no unit", "write N·m if"),
    ("nm", "length", "is no unit", "mm"),
    ("", "torque", "missing", "lbf·ft"),
    ("mm", "friction", "measures length", "plain number"),
])
def test_wrong_unit_says_what_to_write(spelling, kind, said, mend):
    problem = find_unit(spelling, kind)
    assert isinstance(problem, UnitProblem)
    assert said in problem.message
    assert mend in problem.mend


@pytest.mark.parametrize("kind", MEASURED)
def test_every_kind_has_units_and_every_symbol_finds_itself(kind):
    assert units_of(kind)
    for unit in units_of(kind):
        assert find_unit(unit.symbol, kind) is unit
        assert unit.factor > 0


def test_no_spelling_is_claimed_by_two_units_of_a_kind():
    for kind in MEASURED:
        for unit in units_of(kind):
            for spelling in unit.spellings:
                assert find_unit(spelling, kind) is unit, (kind, spelling)


@pytest.mark.parametrize("kind", MEASURED)
def test_counterparts_are_of_the_kind_and_not_the_unit_itself(kind):
    for unit in units_of(kind):
        for other in counterpart(unit, kind):
            assert kind in other.kinds and other != unit
        if unit.system != "both" and kind != "taper":
            assert counterpart(unit, kind), f"{unit.symbol} has none"


@pytest.mark.parametrize("symbol, kind, others", [
    ("lbf·ft", "torque", ["N·m"]), ("long ton", "press force", ["kN"]), ("psi", "pressure", ["bar"]), ("in", "length", ["mm"]),
    ("psi", "stress", ["MPa"]), ("kN", "force", ["lbf"]), ("kN", "press force", ["long ton", "short ton"]),
    ("imperial quart", "volume", ["US quart", "litre"]), ("°F rise", "temperature rise", ["°C rise"]), ("°", "angle", []),
])
def test_counterpart(symbol, kind, others):
    assert [unit.symbol for unit in counterpart(find_unit(symbol, kind), kind)] == others


@given(st.text(max_size=60), st.sampled_from(MEASURED))
def test_junk_never_raises(text, kind):
    assert isinstance(find_unit(text, kind), Unit | UnitProblem)
