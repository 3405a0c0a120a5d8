"""A comparison as data for a program; pages/static/compare.schema.json says what stands where."""

import json
from collections.abc import Iterable

from .change import Change
from .compare import Comparison

VERSION = 1


def as_data(comparison: Comparison) -> str:
    """JSON with sorted keys."""
    return json.dumps({
        "schema": "compare.schema.json", "version": VERSION, "old": comparison.old, "new": comparison.new, "verdict": comparison.verdict,
        "passes": comparison.passes, "first": comparison.first,
        "changes": _changes(comparison.changes), "consequences": _changes(comparison.consequences), "moved by the tool": _changes(comparison.by_tool),
        "sheets": [{"machine": each.machine, "procedure": each.procedure, "variant": each.variant, "old": each.old, "new": each.new} for each in comparison.sheets],
        "corrections": [{"id": each.id, "on": each.on, "reason": each.reason.text, "if already done": each.if_already_done} for each in comparison.corrections],
        "findings": [{"place": {"path": each.place.path, "line": each.place.line, "column": each.place.column}, "severity": each.severity, "rule": each.rule,
                      "message": each.message, "mend": each.mend} for each in comparison.findings],
    }, ensure_ascii=False, sort_keys=True, indent=1)


def _changes(changes: Iterable[Change]) -> list[dict]:
    return [{"severity": each.severity, "sort": each.sort, "machine": each.machine or None, "procedure": each.procedure or None, "name": each.name,
             "part": each.part, "what": each.what, "for": each.case, "old": each.old, "new": each.new, "old also": each.old_also, "new also": each.new_also,
             "per cent": each.per_cent, "reasons": list(each.reasons), "corrections": list(each.corrections), "place": each.place or None} for each in changes]
