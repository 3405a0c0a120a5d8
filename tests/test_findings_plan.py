"""One break in the plan of a rebuild a case: what is changed in the small plan, and the finding it must give, at its place.

A case is (rule, procedure, words that stand there, what stands there instead, line:column, part of the message and mend)."""

import pytest
from plan_book import PROCEDURES, read

CASES = [
    ("unknown-reference", "try", "strip/pawl-wedged", "strip/pawl-wedgd", "7:1", "there is no loose end in strip: 'pawl-wedgd', did you mean 'pawl-wedged'?"),
    ("unknown-reference", "try", "strip/pawl-wedged", "stripp/pawl-wedged", "7:1", "there is no procedure 'stripp', did you mean 'strip'?"),
    ("unknown-reference", "try", "[strip/pawl-wedged]", "[pawl-wedgd]", "7:1", "there is no one loose end 'pawl-wedgd'"),
    ("unknown-reference", "try", "closes: [strip/guard-off]", "closes: [guard-off]", "11:5", "there is no loose end 'guard-off'"),
]


@pytest.mark.parametrize("rule, where, stands, wrong, at, says", CASES, ids=[f"{case[0]}: {case[3][:40]!r}" for case in CASES])
def test_a_break_is_a_finding_at_its_place(rule, where, stands, wrong, at, says):
    assert PROCEDURES[where].count(stands) == 1, "the case must change exactly one place"
    _, _, found = read(**{where: PROCEDURES[where].replace(stands, wrong)})
    lines = [finding.line() for finding in found if finding.rule == rule]
    assert any(line.startswith(f"procedures/hoist/{where}.yaml:{at}: ") and says in line for line in lines), [f.line() for f in found]


def test_the_small_plan_has_no_finding():
    assert read()[2] == []


def test_a_loose_end_is_known_by_its_bare_name_where_only_one_procedure_leaves_it():
    assert read(**{"try": PROCEDURES["try"].replace("[strip/pawl-wedged]", "[pawl-wedged]")})[2] == []
