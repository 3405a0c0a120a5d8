"""What of a book the search can find: one entry a procedure, its words, exact keys and figures with their anchors."""

from functools import cache

from ..core.book import Book
from ..core.derived import Derived
from ..core.figure import NoFigure, Plain, Spec
from ..core.kinds import KINDS
from ..core.memory import FORGETFUL, Memory
from ..core.procedure import Procedure
from ..core.quantity import Quantity
from ..core.rests_on import ANYTHING, RestsOn
from ..core.sentence import Sentence
from ..core.thread import Thread
from ..core.units import units_of
from .address import note_anchor, procedure_url, spec_anchor, step_anchor
from .search_index import Entry, Line, SearchUnit, cut, filed


def search_files(book: Book, derived: dict[tuple[str, str], Derived], rests: RestsOn = ANYTHING, memory: Memory = FORGETFUL) -> dict[str, str]:
    """Path -> JSON text of every file the search needs."""
    cuts = [memory.of(("search", key), rests.figures(key), lambda: cut(_entry(book, procedure, derived[key])))
            for key, procedure in sorted(book.procedures.items())]
    return filed(cuts, search_units())


@cache
def search_units() -> tuple[SearchUnit, ...]:
    """Every unit a reader may type, under the SI unit of its kind: a torque and a drag are both found in N·m."""
    found: dict[tuple, SearchUnit] = {}
    for kind in KINDS.values():
        for unit in units_of(kind.name) if kind.si_symbol else ():
            offset = float(unit.offset)
            row = SearchUnit(kind.si_symbol, float(unit.factor), (unit.symbol, *unit.spellings), offset)
            found.setdefault((row.dimension, row.factor, offset), row)
    return tuple(found.values())


def _entry(book: Book, procedure: Procedure, derived: Derived) -> Entry:
    lines = [Line("", sentence.text) for sentence in (procedure.summary, *procedure.conditions) if sentence]
    needs = (*procedure.needs.tools, *procedure.needs.supplies, *procedure.needs.parts)
    lines += [Line("needs", " ".join(filter(None, (_need_name(book, need), need.number, need.count)))) for need in needs]
    keys = [(need.number, "needs", need.name) for need in needs if need.number]
    keys += [(need.press, "needs", book.presses[need.press].title) for need in procedure.needs.presses
             if need.press in book.presses]
    figures: list[tuple[str, float, str, str]] = []
    for spec in procedure.specs.values():
        _spec(spec, derived, lines, keys, figures)
    for step in procedure.steps:
        anchor = step_anchor(step.id)
        lines.append(Line(anchor, " ".join(_words(sentence) for sentence in step.sentences())))
        lines += [Line(anchor, _words(sentence)) for end in step.leaves for sentence in (end.state, end.if_forgotten)]
        keys += [(name, anchor, step.do.text) for name in step.cautions]
    for note in procedure.notes:
        lines.append(Line(note_anchor(note.id), f"{note.kind}: {' '.join(map(_words, (note.says, *note.causes)))}"))
    places = {name: step_anchor(step.id) for step in reversed(procedure.steps) for name in step.cautions}
    for name, anchor in {**places, **dict.fromkeys(procedure.cautions, "cautions")}.items():
        if caution := book.cautions.get(name):
            lines.append(Line(anchor, f"{caution.word}: {_words(caution.hazard)}"))
    return Entry(procedure_url(procedure.machine, procedure.id), procedure.title, book.machines[procedure.machine].title,
                 tuple(lines), tuple(keys), tuple(figures))


def _need_name(book: Book, need) -> str:
    shelf = {"wrench": book.wrenches, "scale": book.scales, "made": book.made_tools}.get(need.sort, {})
    return f"{need.name} {shelf[need.name].title}" if need.name in shelf else need.name


def _words(sentence: Sentence) -> str:
    """References give way to the name of what they point at: the figures themselves are found by their value."""
    return " ".join(part.text if not hasattr(part, "name") else part.name.replace("-", " ") for part in sentence.parts)


def _spec(spec: Spec, derived: Derived, lines: list, keys: list, figures: list) -> None:
    anchor = spec_anchor(spec.id)
    lines.append(Line(anchor, " ".join(filter(None, (spec.label, spec.condition)))))
    keys += [(name, anchor, spec.label) for name in spec.was]
    for thread in dict.fromkeys(spec.thread.values()) if spec.thread else ():
        if isinstance(thread, Thread):
            keys += [(name, anchor, f"{spec.label}, {thread.text}") for name in dict.fromkeys((thread.text, thread.text.split()[0]))]
    seen = {}
    for (_, owner), resolved in derived.resolved.items():
        if owner == spec.id:
            seen.update(((each.figure.role, each.worth), each) for each in resolved
                        if each.worth is not None and each.in_force())
    for role, worth in seen:
        if isinstance(worth, Quantity):
            si = KINDS[spec.kind].si_symbol
            figures += [(si, value, anchor, f"{spec.label}: {worth.typed()}")
                        for value in dict.fromkeys((worth.si_low, worth.si_high)) if value is not None]
        elif isinstance(worth, Plain) and not isinstance(worth, NoFigure):
            lines.append(Line(anchor, f"{spec.label}: {worth.text}"))
