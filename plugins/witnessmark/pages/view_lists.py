"""What a machine's procedures say of one sort, in one place each: sources that disagree, points where work stops, notes."""

from typing import NamedTuple

from ..core.procedure import Note, Procedure
from . import words
from .address import conflicts_url, holds_url, note_anchor, notes_url, procedure_url, spec_anchor, step_anchor
from .fill_template import Markup
from .lookup import Lookup
from .prose import Prose
from .view_spec import Conflict, SpecView, spec_view
from .view_step import Target, target


class ConflictView(NamedTuple):
    """A conflict with the whole spec it is about; `real` says whether both sides can be right."""

    id: str
    about: Target
    real: str
    conflicts: tuple[Conflict, ...]
    spec: SpecView


class HoldView(NamedTuple):
    step: Target
    do: Markup
    hold: Markup | None
    second: str


class NoteView(NamedTuple):
    """`leads_to` are steps; `at` is where the note stands."""

    id: str
    kind: str
    says: Markup
    review: str
    causes: tuple[Markup, ...]
    leads_to: tuple[Target, ...]
    at: Target


def conflict_views(lookup: Lookup, root: str) -> tuple[ConflictView, ...]:
    found = []
    for conflict in lookup.book.conflicts.values():
        home = lookup.book.procedures.get((lookup.machine.id, conflict.about.owner or ""))
        spec = home.specs.get(conflict.about.name) if home else None
        if spec:
            there = lookup.of(home.id)
            url = root + procedure_url(home.machine, home.id)
            view = spec_view(there, spec, Prose(there, linked=False), root)
            rows = tuple(row._replace(derived_from=tuple((*source[:-1], url + source[-1]) for source in row.derived_from)) for row in view.rows)
            found.append(ConflictView(conflict.id, Target(f"{spec.label}, {home.title}", f"{url}#{spec_anchor(spec.id)}"), words.REAL[conflict.real],
                                      view.conflicts, view._replace(rows=rows, conflicts=())))
    return tuple(found)


def hold_views(lookup: Lookup, root: str) -> tuple[tuple[Target, tuple[HoldView, ...]], ...]:
    """(procedure, its points) for each procedure that has one, in the order for one pair of hands."""
    found = []
    for procedure in lookup.index.order[lookup.machine.id]:
        url = root + procedure_url(procedure.machine, procedure.id)
        points = []
        for number, step in enumerate(procedure.steps, 1):
            if step.hold_point or step.second_person:
                prose = _prose(lookup, procedure, any(sentence.references() for sentence in (step.do, step.hold_point) if sentence))
                points.append(HoldView(Target(f"{words.STEP} {number}", f"{url}#{step_anchor(step.id)}"), prose(step.do), prose(step.hold_point),
                                       words.SECOND if step.second_person else words.ALONE))
        if points:
            found.append((Target(procedure.title, url), tuple(points)))
    return tuple(found)


def note_views(lookup: Lookup, root: str) -> tuple[tuple[str, tuple[NoteView, ...]], ...]:
    """(kind in words, notes) for each kind there is; what waits for a decision or a review first, the earliest review first."""
    every = [(procedure, note) for procedure in lookup.index.order[lookup.machine.id] for note in procedure.notes]
    found = []
    for kind, heading in words.NOTE_KINDS.items():
        mine = sorted((pair for pair in every if pair[1].kind == kind), key=lambda pair: pair[1].review or "9999")
        if mine:
            found.append((heading, tuple(note_view(lookup, procedure, note, root) for procedure, note in mine)))
    return tuple(found)


def note_view(lookup: Lookup, procedure: Procedure, note: Note, root: str) -> NoteView:
    url = root + procedure_url(procedure.machine, procedure.id)
    prose = _prose(lookup, procedure, any(sentence.references() for sentence in (note.says, *note.causes)))
    leads = []
    for name in note.leads_to:
        there = target(lookup if lookup.procedure is procedure else lookup.of(procedure.id), name, root)
        leads.append(there._replace(text=f"{procedure.title}, {there.text}", href=url + there.href) if there.href.startswith("#") else there)
    return NoteView(note.id, note.kind, prose(note.says), note.review or "", prose.all(note.causes), tuple(leads),
                    Target(procedure.title, f"{url}#{note_anchor(note.id)}"))


def list_links(lookup: Lookup, root: str) -> tuple[Target, ...]:
    """Those of these pages that have something on them."""
    machine, procedures = lookup.machine.id, lookup.index.order[lookup.machine.id]
    found = []
    if any(step.hold_point or step.second_person for procedure in procedures for step in procedure.steps):
        found.append(Target(words.HOLDS, root + holds_url(machine)))
    if any(owner in lookup.book.orders[machine].procedures for owner, _ in lookup.index.conflicts):
        found.append(Target(words.CONFLICTS, root + conflicts_url(machine)))
    if any(procedure.notes for procedure in procedures):
        found.append(Target(words.NOTES, root + notes_url(machine)))
    return tuple(found)


def _prose(lookup: Lookup, procedure: Procedure, refers: bool) -> Prose:
    """Figures in a sentence are looked up in its own procedure; without any the machine's prose does."""
    return Prose(lookup.of(procedure.id) if refers else lookup, linked=False)
