"""Ranges of serials in values and steps: each takes whole variants, or is a finding at its place."""

import pytest
from small_book import PROCEDURE
from test_findings import findings

TARGET = "{early: 8 short ton, late: 10 short ton}"        # early is serials up to 499, late from 500
CASES = [
    ("{up to 499: 8 short ton, from 400: 10 short ton}", "19:53", "'from 400' takes only part of early, which is serials up to 499"),
    ("{up to 450: 8 short ton, late: 10 short ton}", "19:29", "'up to 450' takes only part of early"),
    ("{early: 8 short ton, late: 10 short ton, from 9000: 9 short ton}", "19:69", "'from 9000' takes only part of late"),
    ("{early: 8 short ton, late: 10 short ton, serials 300 to 700: 9 short ton}", "19:69", "takes only part of early"),
]


def found(procedure: str) -> list[str]:
    return [finding.line() for finding in findings(procedure) if finding.rule == "serials-cut-a-variant"]


@pytest.mark.parametrize("wrong, at, says", CASES)
def test_a_range_that_cuts_a_variant(wrong, at, says):
    [line] = found(PROCEDURE.replace(TARGET, wrong))
    assert line.startswith(f"procedures/hoist/drum.yaml:{at}: error: ") and says in line


@pytest.mark.parametrize("right", ["{up to 499: 8 short ton, from 500: 10 short ton}",
                                   "{serials up to 499: 8 short ton, late: 10 short ton}"])
def test_ranges_of_whole_variants_are_right(right):
    assert findings(PROCEDURE.replace(TARGET, right)) == []


def test_a_step_for_part_of_a_variant():
    [line] = found(PROCEDURE.replace("  - id: bolt\n", "  - id: bolt\n    only: from 700\n"))
    assert "'from 700' takes only part of late" in line


def test_serials_of_a_part_that_has_none():
    machine = """\
title: Yard hoist
viewpoint: Left and right are named facing the drum.
carriers:
  hoist: {title: hoist, told by: serial, variants: {early: {serials: up to 499}, late: {serials: from 500}}}
  hub: {title: hub, told by: its bore, variants: {small: {measure: 2 in}, large: {measure: 3 in}}}
"""
    wrong = PROCEDURE.replace(f"is: {TARGET}", "by: hub, is: {small: 8 short ton, large: 9 short ton, from 500: 9 short ton}")
    lines = [f.line() for f in findings(wrong, **{"machines/hoist": machine}) if f.rule == "serials-cut-a-variant"]
    assert len(lines) == 1 and "'from 500' holds for no hub, the machine has no serials at all" in lines[0]
