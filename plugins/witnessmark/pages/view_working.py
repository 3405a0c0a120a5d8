"""The manual page of a working, from its declaration and the run of its own example."""

from typing import NamedTuple

from ..core.working import Input, Outcome, Table, Working
from . import words
from .fill_template import Markup
from .set_formula import mathml
from .view_drawing import picture


class ManualView(NamedTuple):
    """`results` are what the example gave, as (name, printed, converted); `command` asks for it at a terminal."""

    id: str
    title: str
    purpose: str
    formulas: tuple[tuple[str, Markup], ...]
    inputs: tuple[tuple[str, str], ...]
    outputs: tuple[tuple[str, str], ...]
    example: tuple[tuple[str, str], ...]
    results: tuple[tuple[str, str, str], ...]
    tables: tuple[Table, ...]
    drawing: Markup | None
    command: str
    example_source: str
    source: str
    assumes: tuple[str, ...]
    goes_wrong: tuple[str, ...]
    refuses: tuple[str, ...]


def manual_view(working: Working, outcome: Outcome, command: str) -> ManualView:
    """`outcome` is what the example of the declaration gave, `command` how it is typed at a terminal."""
    return ManualView(
        working.id, working.title, working.purpose, tuple((formula.text, mathml(formula.latex)) for formula in working.formula),
        tuple((declared.name, _input(declared)) for declared in working.inputs),
        tuple((output.name, f"{output.kind}: {output.doc}; {words.SIDES[output.side]}" if output.kind != "none"
               else output.doc) for output in working.outputs),
        tuple(working.example.inputs.items()), tuple((value.name, value.printed, value.converted) for value in outcome.values),
        outcome.told.tables, picture(outcome.told.drawing), command, working.example.source, working.source,
        working.assumes, working.goes_wrong, working.refuses)


def _input(declared: Input) -> str:
    says = [f"{declared.kind}: {declared.doc}"]
    if declared.many:
        says.append(words.SEVERAL)
    if declared.choices:
        says.append(", ".join(declared.choices))
    if declared.usual:
        says.append(f"{words.USUAL} {declared.usual[0]} to {declared.usual[1]}; {words.OUTSIDE_USUAL}: {declared.outside}")
    if not declared.required:
        says.append(words.OPTIONAL)
    return "; ".join(says)
