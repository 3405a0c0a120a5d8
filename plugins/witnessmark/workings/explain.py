"""A working and its outcome in plain lines of text, for the command line and for pages."""
from __future__ import annotations

from dataclasses import asdict

from ..core.working import Outcome, Working


def manual_lines(working: Working) -> tuple[str, ...]:
    """The whole declaration as a manual page."""
    lines = [f"{working.id}: {working.title}", "", working.purpose, "", "How it is worked out"]
    lines += [f"  {formula.text}" for formula in working.formula]
    lines += ["", "Inputs"]
    for declared in working.inputs:
        need = "" if declared.required else ", may be left out"
        choices = f": {', '.join(declared.choices)}" if declared.choices else ""
        lines.append(f"  {declared.name} ({declared.kind}{need}): {declared.doc}{choices}")
        if declared.usual:
            lines.append(f"    usually {declared.usual[0]} to {declared.usual[1]}; outside: {declared.outside}")
    lines += ["", "Results"]
    for output in working.outputs:
        side = {"nearest": "to the nearest", "inward": "inward"}.get(output.side, f"rounded {output.side}")
        lines.append(f"  {output.name} ({output.kind}, {side}): {output.doc}")
    if working.assumes:
        lines += ["", "Assumes", *(f"  {text}" for text in working.assumes)]
    lines += ["", "Goes wrong", *(f"  {text}" for text in working.goes_wrong)]
    lines += ["", "Refuses", *(f"  {text}" for text in working.refuses)]
    lines += ["", f"Source: {working.source}", "", "Example", f"  {command(working)}"]
    lines += [f"  gives {name}: {text}" for name, text in working.example.outputs.items()]
    return (*lines, f"  ({working.example.source})")


def outcome_lines(working: Working, outcome: Outcome) -> tuple[str, ...]:
    """Refusals first, then results in both systems, warnings, and how it was worked out."""
    lines = [f"REFUSED: {refusal.message}; {refusal.instead}" for refusal in outcome.refusals]
    for value in outcome.values:
        lines.append(f"{value.name}: {value.printed}" + (f" = {value.converted}" if value.converted else ""))
    lines += [f"WARNING: {warning}" for warning in outcome.warnings]
    if outcome.lines:
        lines += ["", "How it was worked out"]
        for line in outcome.lines:
            steps = " = ".join(part for part in (line.formula, line.substituted, line.value) if part)
            lines.append(f"  {line.text}: {steps}")
    for table in outcome.told.tables:
        lines += ["", table.title, *_columns((table.heads, *table.rows))]
    if working.assumes:
        lines += ["", *(f"Assumes: {text}" for text in working.assumes)]
    return (*lines, "", f"Source: {working.source}")


def outcome_record(outcome: Outcome) -> dict:
    """The outcome as plain data, SI values beside the texts."""
    return {"values": [{"name": v.name, "kind": v.kind, "low": v.low, "likely": v.likely, "high": v.high, "side": v.side,
                        "printed": v.printed, "converted": v.converted} for v in outcome.values],
            "lines": [asdict(line) for line in outcome.lines],
            "tables": [asdict(table) for table in outcome.told.tables],
            "refusals": [asdict(refusal) for refusal in outcome.refusals],
            "warnings": list(outcome.warnings), "waits": list(outcome.waits)}


def _columns(rows: tuple[tuple[str, ...], ...]) -> list[str]:
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    return ["  " + "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip() for row in rows]


def command(working: Working) -> str:
    """The example as it is typed on the command line."""
    return f"witnessmark work {working.id} " + " ".join(f"'{name}={text}'" for name, text in working.example.inputs.items())
