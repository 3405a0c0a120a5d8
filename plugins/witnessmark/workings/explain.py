"""A working and its outcome in plain lines of text, for the command line and for pages."""
from __future__ import annotations

from ..core.working import Outcome, Working


def manual_lines(working: Working) -> tuple[str, ...]:
    """The whole declaration as a manual page."""
    lines = [f"{working.id}: {working.title}", "", working.purpose, "", "How it is worked out"]
    lines += [f"  {formula}" for formula in working.formula]
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
    return (*lines, "", f"Source: {working.source}")


def command(working: Working) -> str:
    """The example as it is typed on the command line."""
    return f"witnessmark work {working.id} " + " ".join(f"'{name}={text}'" for name, text in working.example.inputs.items())
