"""No readable input makes a fit, an engagement or a torque raise: it gives numbers or a refusal, and texts for whatever is asked."""

import pytest
from hypothesis import given as given_any
from hypothesis import settings
from hypothesis import strategies as st

from witnessmark.core.units import units_of
from witnessmark.workings.explain import outcome_lines, outcome_record
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS

FITS = ["taper-advance", "straight-interference", "shrink-fit", "limits-and-fits", "thread-engagement", "torque-by-friction"]
NUMBERS = ["0.000000000000001", "0.0000001", "0.001", "0.5", "1", "3", "1:12", "0.1 / 0.2 / 0.3", "at least 2", "at most 0.01", "7 to 7000", "250", "123456789", "1,000,000,000,000,000", "-40"]
WORDS = ["1/2-13 UNC", "M12", "5", "8.8", "none", "H7", "p6", "heat the outer", "cool the inner", "assumed", "kN", "long ton", "interference", "???"]


@st.composite
def wild(draw, working):
    """The example with up to four of the inputs replaced, added or left out: most of these are read and worked out."""
    texts = dict(working.example.inputs)
    for declared in draw(st.lists(st.sampled_from(working.inputs), max_size=4, unique=True)):
        if not declared.required and draw(st.booleans()):
            texts.pop(declared.name, None)
        elif declared.kind in ("thread", "grade", "choice"):
            texts[declared.name] = draw(st.sampled_from([*WORDS, *declared.choices]))
        else:
            texts[declared.name] = f"{draw(st.sampled_from(NUMBERS))} {draw(st.sampled_from(units_of(declared.kind))).symbol}".strip()
    return texts


@pytest.mark.parametrize("name", FITS)
@settings(max_examples=150, deadline=None)
@given_any(st.data())
def test_wild_inputs(name, data):
    working = WORKINGS[name]
    outcome, problems = run(working, data.draw(wild(working)))
    if outcome is None:
        assert problems
        return
    assert outcome.values or outcome.refusals
    assert not (outcome.values and outcome.refusals)
    assert outcome_lines(working, outcome) and outcome_record(outcome)
    for value in outcome.values:
        assert value.low <= value.likely <= value.high
        assert value.printed and "inf" not in value.printed and "nan" not in value.printed
