"""One break in the plan of a rebuild a case: what is changed in the small plan, and the finding it must give, at its place.

A case is (rule, procedure, words that stand there, what stands there instead, file:line:column, part of the message and mend)."""

import pytest
from plan_book import HEAD, MACHINE, PROCEDURES, read

CASES = [
    ("unknown-reference", "try", "strip/pawl-wedged", "strip/pawl-wedgd", "try:7:1", "there is no loose end in strip: 'pawl-wedgd', did you mean 'pawl-wedged'?"),
    ("unknown-reference", "try", "strip/pawl-wedged", "stripp/pawl-wedged", "try:7:1", "there is no procedure 'stripp', did you mean 'strip'?"),
    ("unknown-reference", "try", "[strip/pawl-wedged]", "[pawl-wedgd]", "try:7:1", "there is no one loose end 'pawl-wedgd'"),
    ("unknown-reference", "try", "closes: [strip/guard-off]", "closes: [guard-off]", "try:11:5", "there is no loose end 'guard-off'"),
    ("unknown-reference", "build", "steps:\n", "notes:\n  - id: stiff\n    kind: symptom\n    says: It turns stiffly.\n    leads to: [free-pawls]\nsteps:\n", "build:8:5", "there is no step 'free-pawls', did you mean 'free-pawl'?"),
    ("order-loop", "strip", "after: none", "after: [build]", "build:3:1", "'build' after 'strip', and 'strip' after 'build', so that none of them can be begun"),
    ("order-loop", "strip", "after: none", "after: [strip]", "strip:3:1", "'strip' is to be done after itself"),
    ("order-loop", "strip", "after: none", "after: [try]", "build:3:1", "'build' after 'strip', and 'strip' after 'try', and 'try' after 'build'"),
    # A loose end: closed by nobody, on one variant, at one place, too early, too late, by a procedure that may come first.
    ("loose-end-open", "try", "    closes: [strip/guard-off]\n", "", "strip:12:9", "nothing ties up 'guard-off' after it is left, write 'closes: [strip/guard-off]'"),
    ("loose-end-open", "try", "    closes: [strip/guard-off]\n", "    closes: [strip/guard-off]\n    only: [late]\n", "strip:12:9", "nothing ties up 'guard-off' after it is left (early),"),
    ("loose-end-open", "build", "    each: side\n", "    at: left\n", "strip:21:9", "nothing ties up 'pawl-wedged' after it is left (right),"),
    ("loose-end-open", "build", "    each: side\n", "    at: left\n    only: [late]\n", "strip:21:9", "(early, left and right; late, right)"),
    ("loose-end-open", "try", "steps:\n  - id: guard-on\n    do: Fit the guard.\n", "each: side\nsteps:\n  - id: guard-on\n    do: Fit the guard.\n    at: left\n",
     "strip:12:9", "nothing ties up 'guard-off' after it is left (right)"),
    ("loose-end-open", "build", "after: [strip]", "after: none", "build:11:5", "nothing says that build comes after strip, write strip under 'after:'"),
    ("loose-end-open", "strip", "        each: side\n", "        each: side\n        closes in: try\n", "strip:21:9", "says that it is closed in try, but no step there closes it"),
    ("loose-end-open", "strip", "        each: side\n", "        each: side\n        closes in: biuld\n", "strip:21:9", "closed in 'biuld', and there is no such procedure, did you mean 'build'?"),
    ("loose-end-open", "try", "    closes: [strip/guard-off]\n", "    closes: [strip/guard-off]\n    leaves: [{id: off-again, state: Off., because: So., if forgotten: Cut., never while open: none, opens again: [strip/guard-off]}]\n", "try:12:14",
     "'off-again' opens 'strip/guard-off' again, but it is not surely left and shut by then"),
    ("unknown-reference", "try", "    closes: [strip/guard-off]\n", "    closes: [strip/guard-off]\n    leaves: [{id: off-again, state: Off., because: So., if forgotten: Cut., never while open: none, opens again: [strip/guard]}]\n", "try:12:14",
     "there is no loose end in strip: 'guard', did you mean 'guard-off'?"),
    ("not-shut", "try", "after: [build, paint]", "after: [paint]", "try:7:1", "'strip/pawl-wedged' must be shut before this starts, but nothing that is surely done by then closes it, write build under 'after:'"),
    ("not-shut", "build", "    closes: [strip/pawl-wedged]\n", "    closes: [strip/pawl-wedged]\n    only: [late]\n", "try:7:1", "closes it (early, left and right)"),
    ("not-shut", "build", "    each: side\n    closes", "    at: right\n    closes", "try:7:1", "closes it (left)"),
    ("not-shut", "try", "must be shut: [strip/pawl-wedged]", "must be shut: [strip/guard-off]", "try:7:1", "'strip/guard-off' must be shut before this starts, but nothing that is surely done by then closes it, close it in a procedure"),
    ("opened-up-unsaid", "paint", "    do: Paint the frame.\n", "    do: Paint the frame.\n    opens up: [grease cup]\n", "paint:10:5", "'brush' opens up grease cup and leaves no loose end"),
    ("act-while-open", "paint", "    do: Paint the frame.\n", "    do: Paint the frame.\n    acts: [run]\n", "paint:10:5", "'brush' does run while 'strip/guard-off', left at procedures/hoist/strip.yaml:12:9, may be open, close it"),
    ("act-while-open", "paint", "    do: Paint the frame.\n", "    do: Paint the frame.\n    acts: [{lift: load}]\n", "paint:10:5", "'brush' does lift (load) while 'strip/pawl-wedged'"),
    ("act-while-open", "build", "    each: side\n    closes", "    at: left\n    closes", "try:14:5", "'turn' does run while 'strip/pawl-wedged', left at procedures/hoist/strip.yaml:21:9, may be open (right)"),
    ("act-while-open", "paint", "    do: Paint the frame.\n", "    do: Paint the frame.\n    acts: [{lift: loads}]\n", "strip:25:33", "no step does lift (load), so that nothing is forbidden by it, did you mean {lift: loads}?"),
    ("unknown-reference", "strip", "    do: Take off the guard.\n", "    do: Take off the guard.\n    measures: drumm\n", "strip:10:5", "there is no carrier 'drumm', did you mean 'drum'?"),
    # A figure that goes by a swappable part, before the part is measured.
    ("part-not-measured", "strip", "    measures: drum\n", "", "build:12:5", "'press' works to 'gap', which goes by the Drum, before a step that measures the Drum, write 'measures: drum'"),
    ("part-not-measured", "strip", "    measures: drum\n", "    measures: drum\n    only: [late]\n", "build:12:5", "measures the Drum on early, write 'measures: drum'"),
    ("part-not-measured", "build", "after: [strip]", "after: none", "build:12:5", "write strip under 'after:'"),
    # What is counted out.
    ("counted-out", "build", "count: 4, counted: in", "count: 4", "strip:6:32", "'Wedges' is counted out and never counted in again, write 'counted: in'"),
    ("counted-out", "build", "count: 4, counted: in", "count: 3, counted: in", "build:6:32", "3 of 'Wedges' are counted in here, but 4 were counted out in strip"),
    ("counted-out", "strip", "count: 4, counted: out", "count: 4", "build:6:32", "'Wedges' is counted in, but no procedure before this one counts it out"),
    ("counted-out", "strip", "count: 4, counted: out", "counted: out", "strip:6:32", "'Wedges' is counted, but not how many there are"),
    ("counted-out", "build", "after: [strip]", "after: [strip]\napplies to: [late]", "strip:6:32", "never counted in again on early"),
]


@pytest.mark.parametrize("rule, where, stands, wrong, at, says", CASES, ids=[f"{case[0]}: {case[3][:40]!r}" for case in CASES])
def test_a_break_is_a_finding_at_its_place(rule, where, stands, wrong, at, says):
    assert PROCEDURES[where].count(stands) == 1, "the case must change exactly one place"
    _, _, found = read(**{where: PROCEDURES[where].replace(stands, wrong)})
    lines = [finding.line() for finding in found if finding.rule == rule]
    assert any(line.startswith(f"procedures/hoist/{at.replace(':', '.yaml:', 1)}: ") and says in line for line in lines), [f.line() for f in found]


def test_the_small_plan_has_no_finding():
    assert read()[2] == []


def test_a_loose_end_is_known_by_its_bare_name_where_only_one_procedure_leaves_it():
    assert read(**{"try": PROCEDURES["try"].replace("[strip/pawl-wedged]", "[pawl-wedged]")})[2] == []


def test_what_was_shut_may_be_opened_again_by_name():
    again = PROCEDURES["try"] + """\
  - id: off-again
    do: Take the guard off for the last reading.
    leaves: [{id: guard-off-again, state: Guard off again., because: The drum is read., if forgotten: A hand is drawn in., never while open: [run], opens again: [strip/guard-off]}]
  - id: on-again
    do: Fit the guard.
    closes: [guard-off-again]
"""
    assert read(**{"try": again})[2] == []


def test_left_as_a_whole_and_shut_side_by_side_it_is_shut_after_both_sides():
    both = PROCEDURES["try"].replace("steps:\n", "each: side\nsteps:\n").replace("    closes: [strip/guard-off]\n", """\
    at: left
    closes: [strip/guard-off]
  - id: guard-on-right
    do: Fit the guard.
    at: right
    closes: [strip/guard-off]
""")
    assert read(**{"try": both})[2] == []
    between = both.replace("  - id: guard-on-right\n", "  - id: turn-early\n    do: Run the hoist.\n    acts: [run]\n  - id: guard-on-right\n")
    [finding] = read(**{"try": between})[2]
    assert finding.rule == "act-while-open" and "'turn-early' does run while 'strip/guard-off'" in finding.message and "(right)" in finding.message


def test_tie_ups_that_exclude_each_other_by_variant_are_judged_by_variant():
    both = PROCEDURES["try"].replace("    closes: [strip/guard-off]\n", """\
    only: [early]
    closes: [strip/guard-off]
  - id: guard-on-late
    do: Fit the guard.
    only: [late]
    closes: [strip/guard-off]
""")
    assert read(**{"try": both})[2] == []
    [finding] = read(**{"try": both.replace("only: [late]", "only: [early]")})[2][:1]
    assert "(late)" in finding.message


def test_a_tie_up_after_the_hand_over_comes_too_late():
    polish = HEAD.format(title="Polish it", after="[try]") + "steps:\n  - {id: on, do: Fit the guard., closes: [strip/guard-off]}\n"
    idle = PROCEDURES["try"].replace("    closes: [strip/guard-off]\n", "").replace("    acts: [run]\n", "")
    [finding] = read(**{"try": idle, "polish": polish})[2]
    assert "'guard-off' is tied up only in polish, which need not be done before the hand-over" in finding.message


def test_a_machine_with_loose_ends_names_its_hand_over():
    [finding] = read(machine=MACHINE.replace("hand-over: try\n", ""))[2]
    assert "no procedure ends the work on this machine" in finding.message and finding.rule == "loose-end-open"


@pytest.mark.parametrize(("by", "found"), [("", True), (", by: drum", False), (", by: hoist", False)])
def test_a_limit_of_force_says_which_part_it_goes_by_where_two_have_versions_of_the_same_names(by, found):
    limit = f"  pull: {{label: Pull at the drum, kind: force, role: ceiling{by}, is: {{early: 40 lbf, late: 60 lbf}}, source: shop p. 4}}\n"
    lines = [each.line() for each in read(build=PROCEDURES["build"] + limit)[2] if each.rule == "limit-by-whom"]
    assert bool(lines) == found and all("procedures/hoist/build.yaml:" in line and "write 'by: drum', or 'by: hoist'" in line for line in lines)
