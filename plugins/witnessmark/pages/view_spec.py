"""Specs ready to print: each figure in its role, for each case, with whose it is."""

from typing import NamedTuple

from ..core.book import Book
from ..core.figure import Figure, Spec
from ..core.machine import Machine
from ..core.sentence import Reference
from . import words
from .cases import told_apart
from .address import figure_anchor, result_anchor, spec_anchor
from .fill_template import Markup
from .lookup import FigureView, Lookup
from .prose import Cited, Prose, cited


class FigureRow(NamedTuple):
    """One figure of a spec; `anchor` names it on the page for corrections. `struck` holds the words that go with a figure printed struck through."""

    anchor: str
    view: FigureView
    role_word: str
    sources: tuple[Cited, ...]
    condition: str
    because: Markup | None
    struck: str
    in_doubt: Markup | None
    found_by: Markup | None
    unknown: bool
    conflict: str
    derived_from: tuple[tuple[str, str, str], ...]      # words, name, address


class Conflict(NamedTuple):
    id: str
    printed: Markup
    why: Markup
    sides: tuple[tuple[Markup, Cited | None], ...]


class SpecView(NamedTuple):
    """`details` are (words, text or cases) lines under the label."""

    id: str
    anchor: str
    was: tuple[str, ...]
    label: str
    kind: str
    condition: str
    details: tuple[tuple[str, object], ...]
    rows: tuple[FigureRow, ...]
    limited: Markup | None
    note: Markup | None
    conflicts: tuple[Conflict, ...]


def spec_view(lookup: Lookup, spec: Spec, prose: Prose, root: str) -> SpecView:
    """In-force figures first, then those kept for the record, each in the author's order."""
    rows = [row for figure in sorted(spec.figures, key=lambda figure: figure.kept_for_record is not None)
            if (row := _row(lookup, spec, figure, prose, root)) is not None]
    owner = lookup.procedure.id if lookup.procedure else lookup.machine.id
    kept = dict.fromkeys([*(figure.kept_for_record for figure in spec.figures if figure.kept_for_record),
                          *lookup.index.conflicts.get((owner, spec.id), ())])
    conflicts = tuple(conflict_view(lookup.book, name, prose, root) for name in kept if name in lookup.book.conflicts)
    return SpecView(spec.id, spec_anchor(spec.id), spec.was, spec.label, "" if spec.kind == "none" else spec.kind, spec.condition or "",
                    tuple(_details(lookup, spec, prose.variant)), tuple(rows), prose(spec.limited_by), prose(spec.note), conflicts)


def _row(lookup: Lookup, spec: Spec, figure: Figure, prose: Prose, root: str) -> FigureRow | None:
    cases = tuple(told for told in lookup.cases(spec, figure, prose.variant) if told.value.state != "none")
    if not cases:
        return None
    struck = words.KEPT if figure.kept_for_record else words.SUPERSEDED if figure.superseded_by else ""
    sources = tuple(cited(lookup.book, citation, root) for citation in figure.sources)
    derived_from = tuple(dict.fromkeys(_derived(lookup, reference) for reference in figure.comes_from.values())) if figure.comes_from else ()
    condition = ", ".join(text for text in (figure.condition, figure.when) if text and text != spec.condition)
    view = FigureView(spec.id, figure.role, " ".join(figure.was + spec.was), "", cases)
    return FigureRow(figure_anchor(spec, figure), view, words.STRUCK_ROLE if struck else role_word(figure.role, cases), sources, condition,
                     prose(figure.because if figure.in_doubt is None else None),      # the reason of a withdrawn number often repeats it
                     struck, prose(figure.in_doubt),
                     prose(figure.to_be_found_by), any(told.value.state == "unknown" for told in cases),
                     figure.kept_for_record or "", derived_from)


def _derived(lookup: Lookup, reference: Reference) -> tuple[str, str, str]:
    """Where a figure comes from: worked out, or taken from another spec, which is then whose figure it is."""
    there = lookup.reference(reference)
    taken = lookup.procedure is not None and isinstance(lookup.book.target(reference, lookup.procedure), Spec)
    return (words.TAKEN_FROM if taken else words.STANDING["computed"], label_of(lookup, reference),
            there.href if there else f"#{result_anchor(reference.name)}")


def role_word(role: str, cases) -> str:
    """A window with one open end is no "between"; a limit that says "at most" itself is not "never more than" that."""
    if role in ("ceiling", "floor") and cases[0].value.printed.startswith(("at most ", "at least ")):
        return words.MUST_BE
    if role == "window" and " to " not in cases[0].value.printed and "±" not in cases[0].value.printed:
        return words.ACCEPT_WORD
    return words.ROLE[role]


def _details(lookup: Lookup, spec: Spec, variant: str | None):
    for word, varies, text in ((words.THREAD, spec.thread, lambda thread: thread.text if thread else words.NONE),
                               (words.GRADE, spec.grade, str), (words.SURFACE, spec.surface, lambda s: _surface(lookup.book, s))):
        if cases := lookup.told(varies, variant, text):
            yield word, cases
    if spec.at_radius:
        yield words.AT_RADIUS, spec.at_radius.typed()
    if spec.places:
        yield words.EACH, places_text(lookup, spec.places, variant)
    if spec.viewpoint:
        yield words.LEFT_RIGHT, spec.viewpoint
    if spec.wrench:
        yield words.WRENCH, wrench_text(lookup.book, spec.wrench, spec.adapter)
    if spec.passes and not _withheld(lookup, spec, variant):
        yield words.PASSES, ", ".join(quantity.typed() for quantity in spec.passes)
    elif spec.pass_count:
        yield words.PASSES, str(spec.pass_count)
    if spec.must_not_outpull:
        yield words.OUTPULL, label_of(lookup, spec.must_not_outpull)
    if spec.checked_against and (waiting := [(combination, why) for key, combination in lookup.every(variant)
                                             if (why := lookup.recheck(spec, key))]):
        yield words.RECHECK_WHY, told_apart(lookup.machine, waiting)


def _withheld(lookup: Lookup, spec: Spec, variant: str | None) -> bool:
    """Whether the torque is withdrawn or waits for a check: its last pass would print it all the same."""
    return any(figure.in_doubt for figure in spec.figures) or any(lookup.recheck(spec, key) for key, _ in lookup.every(variant))


def label_of(lookup: Lookup, reference: Reference) -> str:
    """What a reference points at, by its label and the role or the result meant."""
    home = lookup.procedure or lookup.book.procedures.get((lookup.machine.id, reference.owner))       # a machine's own figure has none
    target = lookup.book.target(reference, home) if home else None
    part = words.ROLE.get(reference.part or "", "") if isinstance(target, Spec) else reference.part or ""
    return f"{target.label}, {part}".rstrip(", ") if target else str(reference)


def _surface(book: Book, surface: str) -> str:
    return book.surfaces[surface].title.lower() if surface in book.surfaces else surface


def wrench_text(book: Book, wrench: str, adapter: str | None) -> str:
    title = book.wrenches[wrench].title if wrench in book.wrenches else wrench
    if not adapter:
        return f"{title} ({wrench})"
    return f"{title} ({wrench}), {book.adapters[adapter].title if adapter in book.adapters else adapter}"


def place_words(machine: Machine, group: str | None, variant: str | None) -> tuple[str, ...]:
    """The places of a variant; for all variants together, one that not all have names those that do."""
    names = machine.places_on(group, variant)
    return names if variant else tuple(f"{name} ({', '.join(machine.only[group, name])})" if (group, name) in machine.only else name
                                       for name in names)


def places_text(lookup: Lookup, group: str, variant: str | None) -> str:
    names = place_words(lookup.machine, group, variant)
    return f"{group}: {', '.join(names)}" if names else group


def conflict_view(book: Book, conflict_id: str, prose, root: str) -> Conflict:
    conflict = book.conflicts[conflict_id]
    sides = tuple((prose(side.says), cited(book, side.source, root)) for side in conflict.sides)
    return Conflict(conflict.id, prose(conflict.printed), prose(conflict.why), sides)


def places_of(lookup: Lookup, spec: str, variant: str | None) -> tuple[str, ...]:
    """Where a spec of this procedure is measured; empty where it has one place only."""
    known = lookup.procedure.specs.get(spec) if lookup.procedure else None
    return place_words(lookup.machine, known.places, variant) if known and known.places else ()
