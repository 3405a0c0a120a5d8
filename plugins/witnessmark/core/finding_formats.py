"""The findings of a check as text for a person, as JSON for a program, and as annotations for a forge."""

import json
from dataclasses import asdict
from typing import Sequence

from .finding import Finding


def as_text(findings: Sequence[Finding], procedures: int, left_out: int = 0) -> str:
    """One line a finding, then how many there are in how many procedures, and how many are not told yet."""
    what = f"{procedures} procedure{'s' * (procedures != 1)}"
    count = f"{len(findings)} finding{'s' * (len(findings) != 1)}" if findings else "no findings"
    more = f"{left_out} more rest{'s' * (left_out == 1)} on what could not be read: mend the above, then check again"
    return "\n".join([*(finding.line() for finding in findings), f"{what}: {count}", *([more] if left_out else [])])


def as_json(findings: Sequence[Finding]) -> str:
    """A list of objects: place (path, line, column), rule, message, mend, severity."""
    return json.dumps([{**asdict(finding), "place": finding.place._asdict()} for finding in findings], ensure_ascii=False, indent=1)


def as_annotations(findings: Sequence[Finding]) -> str:
    """One workflow command a finding, which a forge shows beside the line; '' where there is none.

    `::error file=...,line=...,col=...,title=rule::message, mend`, paths relative to the book. Source of the form and of
    what must be escaped in it: "Workflow commands for GitHub Actions", and its toolkit's own writer of commands.
    """
    return "\n".join(
        f"::{finding.severity} file={_property(finding.place.path)},line={finding.place.line},col={finding.place.column},"
        f"title={_property(finding.rule)}::{_data(f'{finding.message}, {finding.mend}')}" for finding in findings)


def _data(text: str) -> str:
    return text.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A")


def _property(text: str) -> str:
    return _data(text).replace(":", "%3A").replace(",", "%2C")
