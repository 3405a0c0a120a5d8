"""A correction that came as plain text, laid beside the book: the line to change, what the text asks for, what it would move."""

import json
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from ..core.book import Book
from ..core.correction_text import CorrectionText
from ..core.dependency import dependencies, resting_on
from ..core.figure import Figure, Spec
from ..core.machine import Machine
from ..core.place import Place
from ..core.procedure import Procedure
from ..core.quantity import QuantityProblem, read_quantity
from ..core.record import worth_text
from . import words

_NUMBERED = re.compile(r"(.*?)([0-9]+)")


@dataclass(frozen=True)
class Answer:
    """Lines to print; `sure` where the text names a figure that the book still prints so, and asks for one that can be read."""

    lines: tuple[str, ...]
    sure: bool


def answer_to(told: CorrectionText, book: Book, texts: Mapping[str, str]) -> Answer:
    """`texts` are the sources by path."""
    owner, spec = _named(told, book)
    if spec is None:
        name = f"{told['Procedure']}/{told['Spec']}".strip("/")
        place = f", though the text names {told['Line']}" if told["Line"] else ""
        return Answer((f"{name}: the book has no such figure{place}", *_said(told)), False)
    places = _places(told, spec)
    still = bool(places)
    lines = [f"{told['Procedure']}, {', '.join(filter(None, (spec.label, told['Role'], told['Case'])))}"]
    for place in places or [figure.place for figure in spec.in_role(told["Role"])] or [spec.place]:
        lines += [str(place), *_around(place, texts)]
    lines.append(f"The page printed: {told['Printed figure'] or words.NOTHING}" + ("" if still else ". The book prints something else now: it was changed since, or the text is of another book."))
    wish, readable = _wish(told, spec)
    lines += [wish, *_said(told), *_moves(told, book, spec), "", "In site_data/corrections.yaml:", *_record(told, book, owner, spec)]
    return Answer(tuple(lines), still and readable)


def _named(told: CorrectionText, book: Book) -> tuple[Machine | Procedure | None, Spec | None]:
    """The figure by the name that it has now, or once had."""
    machine, _, procedure = told["Procedure"].partition("/")
    if procedure:
        home = next((each for (owner, name), each in book.procedures.items() if owner == machine and procedure in (name, *each.was)), None)
        specs = home.specs if home else {}
    else:
        home = book.machines.get(machine)
        specs = home.figures if home else {}
    return home, specs.get(told["Spec"]) or next((spec for spec in specs.values() if told["Spec"] in spec.was), None)


def _places(told: CorrectionText, spec: Spec) -> list[Place]:
    """Where the figure that was printed is written; the line that the text names, if it is one of them."""
    found = [case.place for figure in spec.in_role(told["Role"]) for case in _cases(figure) if worth_text(case.value) == told["Printed figure"]]
    return [place for place in found if f"{place.path}:{place.line}" == told["Line"]][:1] or found[:1]


def _cases(figure: Figure):
    return figure.worth.cases if figure.worth and not figure.comes_from else ()


def _around(place: Place, texts: Mapping[str, str]) -> Iterator[str]:
    """The line itself, with its number."""
    lines = texts.get(place.path, "").splitlines()
    if place.line <= len(lines):
        yield f"  {place.line} | {lines[place.line - 1]}"


def _wish(told: CorrectionText, spec: Spec) -> tuple[str, bool]:
    text = told["New figure and unit"]
    if not text:
        return "It names no new figure. Until there is one, withdraw it: in doubt: (a sentence that says why)", False
    if spec.kind in ("none", "thread"):                    # words, not a quantity
        return f"It asks for: {text}", True
    read = read_quantity(text, spec.kind)
    if isinstance(read, QuantityProblem):
        return f"It asks for: {text}. That cannot be taken over as it is: {read.message}, {read.mend}", False
    return f"It asks for: {read.typed()}", True


def _said(told: CorrectionText) -> Iterator[str]:
    for name in ("Condition", "Source and page, or how measured", "Serial", "What happened", "Sheet code on the paper", "By whom"):
        if told[name]:
            yield f"{name}: {told[name]}"


def _moves(told: CorrectionText, book: Book, spec: Spec) -> Iterator[str]:
    if moved := sorted(resting_on(dependencies(book), f"{told['Procedure']}/{spec.id}")):
        yield "It would move: " + ", ".join(moved)


def _record(told: CorrectionText, book: Book, home: Machine | Procedure, spec: Spec) -> Iterator[str]:
    """A record to be finished by hand; every word of the stranger's in quotation marks, so that it stays a word."""
    numbers = [(found[1], int(found[2])) for name in book.corrections if (found := _NUMBERED.fullmatch(name))]
    head, number = max(numbers, key=lambda each: each[1], default=("COR-", 0))
    yield f"{head}{number + 1}:"
    yield "  on: (the day of the change)"
    yield f"  about: [{home.id}/{spec.id}]"
    for key, value in (("old", told["Printed figure"]), ("new", told["New figure and unit"]), ("reason", told["What happened"]),
                       ("evidence", told["Source and page, or how measured"]), ("by", told["By whom"])):
        yield f"  {key}: {json.dumps(value, ensure_ascii=False) if value else '(to be said)'}"
    yield "  if already done: (fine, inspect or redo)"
