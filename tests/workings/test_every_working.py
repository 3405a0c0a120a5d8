"""What every declaration owes its reader: an example that runs, words for everything, and matching outputs."""

import re

import pytest

from witnessmark.core.kinds import KINDS
from witnessmark.core.quantity import Quantity, read_quantity
from witnessmark.core.drawing import FILLS, WEIGHTS
from witnessmark.core.working import SIDES, SIGNS
from witnessmark.workings.explain import command, manual_lines, outcome_lines
from witnessmark.workings.read_inputs import NO_QUANTITY, given_inputs, run
from witnessmark.workings.registry import WORKINGS

every = pytest.mark.parametrize("working", WORKINGS.values(), ids=WORKINGS)


@every
def test_example_gives_what_it_says(working):
    outcome, problems = run(working, working.example.inputs)
    assert problems == []
    assert outcome.refusals == ()
    assert {name: outcome.value(name).printed for name in working.example.outputs} == dict(working.example.outputs)


@every
def test_results_are_declared_with_kind_and_side(working):
    declared = {output.name: (output.kind, output.side) for output in working.outputs}
    outcome, _ = run(working, working.example.inputs)
    for value in outcome.values:
        assert (value.kind, value.side) == declared[value.name] or value.name == "torque"
        assert value.low <= value.likely <= value.high
        assert value.printed


@every
def test_declaration_is_whole(working):
    assert working.source and working.purpose and working.formula and working.goes_wrong and working.refuses
    assert all(output.side in SIDES and output.kind in KINDS for output in working.outputs)
    for declared in working.inputs:
        assert declared.sign in SIGNS
        assert declared.doc and (declared.kind in KINDS or declared.kind in NO_QUANTITY)
        if declared.usual:
            ends = [read_quantity(end, declared.kind) for end in declared.usual]
            assert all(isinstance(end, Quantity) for end in ends), declared.name
            assert ends[0].si_low < ends[1].si_low
            assert declared.outside


@every
def test_a_drawing_uses_the_lines_there_are_and_says_in_words_what_it_shows(working):
    outcome, _ = run(working, working.example.inputs)
    drawing = outcome.told.drawing
    for mark in drawing.marks if drawing else ():
        assert getattr(mark, "weight", "thin") in WEIGHTS and getattr(mark, "fill", "none") in FILLS
    assert drawing is None or drawing.shows


@every
def test_manual_and_outcome_tell_everything(working):
    manual = "\n".join(manual_lines(working))
    for declared in (*working.inputs, *working.outputs):
        assert declared.name in manual
    assert command(working) in manual
    outcome, _ = run(working, working.example.inputs)
    told = "\n".join(outcome_lines(working, outcome))
    for value in outcome.values:
        assert f"{value.name}: {value.printed}" in told
    for line in outcome.lines:
        assert line.value in told
    assert working.source in told


@every
def test_each_required_input_is_asked_for_with_an_example(working):
    for declared in working.inputs:
        if declared.required:
            texts = {name: text for name, text in working.example.inputs.items() if name != declared.name}
            outcome, problems = run(working, texts)
            assert outcome is None
            assert any(f"needs '{declared.name}'" in problem.message and working.example.inputs[declared.name] in problem.mend
                       for problem in problems)


@every
def test_an_unusual_input_is_warned_about_and_not_refused_for_that(working):
    for declared in working.inputs:
        if declared.usual and declared.name in working.example.inputs and declared.kind == "friction":
            texts = {**working.example.inputs, declared.name: "0.9"}
            outcome, problems = run(working, texts)
            assert problems == []
            assert any(declared.name in warning and declared.outside in warning for warning in outcome.warnings)


def test_misspelt_name_is_recognised():
    working = WORKINGS["taper-grip"]
    _, problems = given_inputs(working, {**working.example.inputs, "mean diametre": "3 in"})
    assert [(problem.message, problem.mend) for problem in problems] == [
        ("taper-grip has no input 'mean diametre'", "write mean diameter")]


@pytest.mark.parametrize("text", ["", "nan", "inf", "1e9", "-0.1", "0", "0.2 / 0.1 / 0.3", "0.1 / 0.2", "a / b / c", "0.20 to 0.12", "{", "9" * 500])
def test_nonsense_is_words_and_not_an_exception(text):
    working = WORKINGS["taper-grip"]
    outcome, problems = run(working, {**working.example.inputs, "friction": text})
    assert outcome is None
    assert problems[0].message.startswith("friction: ")


def test_a_band_keeps_its_likely_value():
    working = WORKINGS["taper-grip"]
    given, _ = given_inputs(working, {**working.example.inputs, "friction": "0.12 / 0.15 / 0.20"})
    assert (given["friction"].low, given["friction"].likely, given["friction"].high) == (0.12, 0.15, 0.20)
    given, _ = given_inputs(working, {**working.example.inputs, "torque to carry": "at most 100 lbf·ft"})
    assert given["torque to carry"].low == given["torque to carry"].high


@every
def test_a_formula_in_text_and_as_set_on_the_page_hold_the_same_letters_and_figures(working):
    for formula in working.formula:
        assert spelt(formula.text) == spelt(re.sub(r"\\([a-zA-Z]+)", lambda m: m[1] if m[1] in SPELT_OUT else " ", formula.latex)), formula.text


SPELT_OUT = ("pi", "mu", "nu", "alpha", "delta", "rho", "sigma", "phi", "eta", "sqrt", "cos", "sin", "tan", "min", "max", "log", "ln", "exp")


def spelt(text: str) -> list[str]:
    """Letters and figures in any order: only the layout may differ."""
    return sorted(letter for letter in text.replace("²", "2").replace("³", "3") if letter.isalnum())
