"""Where a figure is corrected: every figure of a procedure or machine with its line in the source, and what it would move."""

from typing import NamedTuple

from ..core.correction_text import written
from ..core.dependency import Users, resting_of
from ..core.figure import Figure, Spec
from ..core.place import Place
from . import words, words_correct
from .address import figure_anchor, machine_url, procedure_url, result_anchor, spec_anchor
from .cases import told_apart
from .forge_links import Forge
from .lookup import Lookup, shown
from .view_spec import role_word
from .view_step import Target


class LineView(NamedTuple):
    """One figure in one case, as its line in the source gives it. Links are '' where there is no such thing."""

    anchor: str
    role: str
    case: str
    printed: str
    at: str
    edit: str
    see: str
    issue: str
    subject: str
    text: str


class ToCorrect(NamedTuple):
    anchor: str
    label: str
    lines: tuple[LineView, ...]
    own: tuple[str, ...]
    moves: tuple[Target, ...]


class CorrectView(NamedTuple):
    title: str
    back: str
    specs: tuple[ToCorrect, ...]
    other: LineView
    codes: tuple[tuple[str, str], ...]
    data: dict


def correct_view(lookup: Lookup, root: str, codes: dict[str, str], book_id: str, forge: Forge | None, mail: str) -> CorrectView:
    """`codes` maps variant to sheet code; empty for the figures of a machine."""
    home = lookup.procedure or lookup.machine
    owner = f"{lookup.machine.id}/{home.id}" if lookup.procedure else lookup.machine.id
    given = {"Book": book_id, "Procedure": owner, "Sheet codes of the page": ", ".join(f"{variant} {code}" for variant, code in codes.items())}
    specs = home.specs if lookup.procedure else home.figures
    resting = lookup.index.resting
    found = tuple(_spec(lookup, spec, given, forge, resting, owner, root) for spec in specs.values())
    other = _line(forge, given, "else", "", "", "", home.place, home.title)
    lines = [line for spec in found for line in spec.lines] + [other]
    url = procedure_url(lookup.machine.id, home.id) if lookup.procedure else machine_url(home.id)
    form = forge and forge.issues()
    data = {"book": book_id, "root": root, "page": url, "mail": mail, "issue": form and form._asdict(),
            "lines": {line.anchor: {"subject": line.subject, "text": line.text} for line in lines}}
    return CorrectView(home.title, root + url, found, other, tuple(codes.items()), data)


def _spec(lookup: Lookup, spec: Spec, given: dict, forge, resting: Users, owner: str, root: str) -> ToCorrect:
    lines = tuple(line for figure in spec.figures for line in _lines(lookup, spec, figure, given, forge))
    own = [words_correct.CARD] * bool(lookup.procedure and spec.kind == "press force" and lookup.procedure.needs.presses)
    own += [words_correct.SETTING] * bool(spec.kind == "torque" and spec.wrench)
    return ToCorrect(spec.id, spec.label, lines, tuple(own), _moved(lookup, resting_of(resting, f"{owner}/{spec.id}"), root))


def _lines(lookup: Lookup, spec: Spec, figure: Figure, given: dict, forge: Forge | None):
    """One for each line of the source, with the cases it holds for."""
    anchor, varies = figure_anchor(spec, figure), figure.comes_from or figure.worth
    found = []
    for _, combination in lookup.every():
        matching = varies.matching(combination, lookup.machine.serial_ranges)
        found += [(combination, (_printed(figure, case.value), case.place.path, case.place.line)) for case in matching]
    for number, told in enumerate(told_apart(lookup.machine, found)):
        printed, path, line = told.value
        role = words.STRUCK_ROLE if not figure.standing() else role_word(figure.role, lookup.cases(spec, figure) or ())
        more = {"Spec": spec.id, "Role": figure.role, "Case": told.label, "Printed figure": printed}
        yield _line(forge, {**given, **more}, anchor if number == 0 else f"{anchor}.{number + 1}", role, told.label, printed, Place(path, line),
                    ", ".join(filter(None, (spec.label, words.ROLE.get(figure.role, ""), told.label))))


def _printed(figure: Figure, value) -> str:
    if figure.in_doubt:
        return words.DO_NOT_USE
    return f"{words.STANDING['computed']}: {value}" if figure.comes_from else shown(value, figure.role).printed


def _line(forge: Forge | None, given: dict, anchor: str, role: str, case: str, printed: str, place, subject: str) -> LineView:
    at = f"{place.path}:{place.line}"
    text = written({**given, "Line": at})
    form = forge and forge.issues()
    return LineView(anchor, role, case, printed, at, forge.edit(place.path, place.line) if forge else "", forge.shown(place.path, place.line) if forge else "",
                    form.filled(words_correct.SCRIPT["subject"].format(subject), text) if form else "", subject, text)


def _moved(lookup: Lookup, names: list[str], root: str) -> tuple[Target, ...]:
    """What rests on a figure, by its label, with its procedure where that is another."""
    found = []
    for name in names:
        machine, *rest = name.split("/")
        procedure = lookup.book.procedures.get((machine, rest[0])) if len(rest) == 2 else None
        if procedure is None:
            continue
        spec = procedure.specs.get(rest[1])
        label = spec.label if spec else rest[1].replace("-", " ")
        anchor = spec_anchor(rest[1]) if spec else result_anchor(rest[1])
        text = label if procedure is lookup.procedure else f"{label} ({procedure.title})"
        found.append(Target(text, f"{root}{procedure_url(machine, procedure.id)}#{anchor}"))
    return tuple(found)
