"""Any working, whatever can be typed for it: values that are numbers, or words; never an exception."""

import math
import random

import pytest
from witnessmark.core.kinds import KINDS
from witnessmark.core.units import units_of
from witnessmark.workings.explain import outcome_lines
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS

WILD = {
    "none": ("",),
    "choice": ("",),
    "position": ("0 by 0 in", "3.5 by 4 mm", "3.5 by 4 in", "0.0000001 by 0 in", "9999999 in by 3 m", "-4 by 99999999 ft"),
    "count": ("0", "1", "7", "100000", "9" * 40),
    "turns": ("0.001 turns", "1 turns", "6.5 turns", "0 turns", "9" * 60 + " turns"),
}
_SIZES = ("0." + "0" * 60 + "1", "0.000001", "0.5", "1", "2 to 3", "at most 3", "47", "999999", "9" * 60)


def wild_texts(declared, unit: str) -> tuple[str, ...]:
    """Texts from far too little to far too much for one declared input, in `unit`."""
    if declared.kind == "choice":
        return declared.choices
    texts = WILD.get(declared.kind) or tuple(f"{size} {unit}".strip() for size in _SIZES)
    return (*texts, ", ".join(texts[1:4])) if declared.many else texts


@pytest.mark.parametrize("working", WORKINGS.values(), ids=WORKINGS)
def test_wild_inputs_get_an_answer_in_words(working):
    chance = random.Random(working.id)
    for _ in range(150):
        texts = dict(working.example.inputs)
        for declared in working.inputs:
            if chance.random() < 0.4 and declared.kind not in ("thread", "grade"):
                units = [unit.symbol for unit in units_of(declared.kind)] if declared.kind in KINDS else [""]
                texts[declared.name] = chance.choice(wild_texts(declared, chance.choice(units)))
            elif not declared.required and chance.random() < 0.2:
                texts.pop(declared.name, None)
        outcome, problems = run(working, texts)
        assert (outcome is None) == bool(problems), texts
        if outcome is not None:
            assert outcome.values or outcome.refusals, texts
            assert all(math.isfinite(end) for value in outcome.values for end in (value.low, value.likely, value.high)), texts
            assert outcome_lines(working, outcome)
