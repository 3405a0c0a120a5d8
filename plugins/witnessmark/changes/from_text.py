"""A correction that came as plain text, laid beside the book: the line to change, what the text asks for, what it would move."""

import json
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from ..core.book import Book
from ..core.correction_text import ASKED, SEVERAL, CorrectionText
from ..core.dependency import dependencies, resting_on
from ..core.figure import Figure
from ..core.machine import Machine
from ..core.place import Place
from ..core.procedure import Procedure
from ..core.quantity import Quantity, QuantityProblem, read_quantity
from ..core.record import worth_text
from ..core.shop_facts import SHELVES, shop_facts, thing_of
from . import words

#: How a sheet code is read off paper: no blanks, and signs that are none for the digits they look like.
_READ_AS = str.maketrans({"I": "1", "L": "1", "O": "0", "-": None, " ": None})
_NUMBERED = re.compile(r"(.*?)([0-9]+)")


@dataclass(frozen=True)
class Answer:
    """Lines to print; `sure` where the text names a figure that the book still prints so, and asks for one that can be read."""

    lines: tuple[str, ...]
    sure: bool


def answer_to(told: CorrectionText, book: Book, texts: Mapping[str, str]) -> Answer:
    """`texts` are the sources by path."""
    named = _named(told, book)
    if named is None:
        name = f"{told['Procedure']}/{told['Spec']}".strip("/")
        place = f", though the text names {told['Line']}" if told["Line"] else ""
        return Answer((f"{name}: the book has no such figure{place}", *_said(told)), False)
    printed = {text for part in told["Printed figure"].split(SEVERAL) for text in (part, part.rpartition(": ")[2])} - {""}    # "computed here: ..."
    still = [value for value in named.values if value.text in printed or _same(value.text, printed, named.kind)]
    still = [value for value in still if f"{value.place.path}:{value.place.line}" == told["Line"]][:1] or still
    lines = [f"{told['Procedure']}, {', '.join(filter(None, (named.label, told['Role'], told['Case'])))}"]
    for place in dict.fromkeys(value.place for value in still or named.values) or [named.place]:
        lines += [str(place), *_around(place, texts)]
    lines.append(f"The page printed: {told['Printed figure'] or words.NOTHING}" + ("" if still else f". {words.PRINTED_ELSE}"))
    wish, readable = _wish(told, named)
    lines += [wish, *_said(told), *_moves(book, named), "", "In site_data/corrections.yaml:", *_record(told, book, named)]
    return Answer(tuple(lines), bool(still) and readable)


class _Value(NamedTuple):
    """As the page prints it, and where it is written."""

    text: str
    place: Place


class _Named(NamedTuple):
    """What a text is about. `about` is how a correction names it, `address` how the graph of core/dependency.py does; `kind` of its
    figures, '' where its values are of several kinds."""

    label: str
    place: Place
    kind: str
    about: str
    address: str
    values: tuple[_Value, ...]


def _named(told: CorrectionText, book: Book) -> _Named | None:
    """The figure, result, version or thing of the shop by the name that it has now, or once had."""
    machine, _, procedure = told["Procedure"].partition("/")
    if machine == "site_data":
        return _of_shop(told, book, procedure)
    home = _home(book, machine, procedure) or _home_on_paper(told, book)
    if home is None:
        return None
    procedure = isinstance(home, Procedure)
    owner = f"{home.machine}/{home.id}" if procedure else home.id
    spec = _by_name(home.specs if procedure else home.figures, told["Spec"])
    if spec:
        values = tuple(value for figure in (spec.in_role(told["Role"]) if told["Role"] else spec.figures) for value in _of_figure(figure))
        return _Named(spec.label, spec.place, spec.kind, f"{home.id}/{spec.id}", f"{owner}/{spec.id}", values)
    if procedure and (computed := _by_name(home.computed, told["Spec"])):
        inputs = [varies for name, varies in computed.inputs.items() if told["Role"] in ("", name)]
        values = tuple(_Value(case.value, case.place) for varies in inputs for case in varies.cases)
        return _Named(computed.label, computed.place, "", f"{home.id}/{computed.id}", f"{owner}/{computed.id}", values)
    if not procedure and (carrier := home.carriers.get(told["Spec"])):
        values = tuple(_Value(str(variant.serials) if variant.serials else variant.measure.typed() if variant.measure else "", variant.place)
                       for variant in carrier.variants.values() if told["Role"] in ("", variant.id))
        return _Named(carrier.title, carrier.place, "", home.id, home.id, values)
    return None


def _of_figure(figure: Figure) -> Iterator[_Value]:
    if figure.comes_from:
        yield from (_Value(str(case.value), case.place) for case in figure.comes_from.cases)
    elif figure.worth:
        yield from (_Value(worth_text(case.value) or "", case.place) for case in figure.worth.cases)


def _home(book: Book, machine: str, procedure: str) -> Machine | Procedure | None:
    machine = book.machine_of(machine)
    if not procedure:
        return book.machines.get(machine)
    return next((each for (owner, name), each in book.procedures.items() if owner == machine and procedure in (name, *each.was)), None)


def _home_on_paper(told: CorrectionText, book: Book) -> Machine | Procedure | None:
    """By the title that stands on the sheet, else by the sheet's code where an edition has it."""
    plain = told["Procedure"].casefold()
    found = next((each for each in (*book.procedures.values(), *book.machines.values()) if each.title.casefold() == plain), None)
    code = told["Sheet code on the paper"].upper().translate(_READ_AS)
    issued = (edition for editions in book.editions.values() for edition in editions if edition.code.replace("-", "") == code)
    return found or next((_home(book, edition.machine, edition.procedure) for edition in issued), None)


def _by_name(things: Mapping, name: str):
    """By its id of today or of old, else by its label."""
    return things.get(name) or next((thing for thing in things.values() if name in thing.was or name.casefold() == thing.label.casefold()), None)


def _same(text: str, printed: Iterable[str], kind: str) -> bool:
    """Whether a figure is one of these, however they were typed."""
    if kind in ("", "none", "thread"):
        return False
    one, *others = (read_quantity(each, kind) for each in (text, *printed))
    worth = [(each.si_low, each.si_high, each.unit.symbol) for each in (one, *others) if isinstance(each, Quantity)]
    return isinstance(one, Quantity) and worth[0] in worth[1:]


def _of_shop(told: CorrectionText, book: Book, shelf: str) -> _Named | None:
    record = thing_of(book, shelf, told["Spec"])
    if record is None:
        return None
    values = tuple(_Value(text, record.place) for key, text in shop_facts(record) if told["Role"] in ("", key))
    return _Named(record.title, record.place, "", told["Spec"].partition("/")[0], f"{SHELVES[shelf].split()[-1]}/{told['Spec']}", values)


def _around(place: Place, texts: Mapping[str, str]) -> Iterator[str]:
    """The line itself, with its number."""
    lines = texts.get(place.path, "").splitlines()
    if place.line <= len(lines):
        yield f"  {place.line} | {lines[place.line - 1]}"


def _wish(told: CorrectionText, named: _Named) -> tuple[str, bool]:
    text = told["New figure and unit"]
    if not text:
        return "It names no new figure. Until there is one, withdraw it: in doubt: (a sentence that says why)", False
    if named.kind in ("", "none", "thread"):               # words, or a quantity whose kind its key tells
        return f"It asks for: {text}", True
    read = read_quantity(text, named.kind)
    if isinstance(read, QuantityProblem):
        return f"It asks for: {text}. That cannot be taken over as it is: {read.message}, {read.mend}", False
    return f"It asks for: {read.typed()}", True


def _said(told: CorrectionText) -> Iterator[str]:
    for name in ASKED[1:]:
        if told[name]:
            yield f"{name}: {told[name]}"


def _moves(book: Book, named: _Named) -> Iterator[str]:
    if moved := sorted(resting_on(dependencies(book), named.address)):
        yield "It would move: " + ", ".join(moved)


def _record(told: CorrectionText, book: Book, named: _Named) -> Iterator[str]:
    """A record to be finished by hand; every word of the stranger's in quotation marks, so that it stays a word."""
    numbers = [(found[1], int(found[2])) for name in book.corrections if (found := _NUMBERED.fullmatch(name))]
    head, number = max(numbers, key=lambda each: each[1], default=("COR-", 0))
    yield f"{head}{number + 1}:"
    yield "  on: (the day of the change)"
    yield f"  about: [{named.about}]"
    for key, value in (("old", told["Printed figure"]), ("new", told["New figure and unit"]), ("reason", told["What happened"]),
                       ("evidence", told["Source and page, or how measured"]), ("by", told["By whom"])):
        yield f"  {key}: {json.dumps(value, ensure_ascii=False) if value else '(to be said)'}"
    yield "  if already done: (fine, inspect or redo)"
