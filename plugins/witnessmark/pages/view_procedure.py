"""The page of a procedure, ready to print."""

from typing import NamedTuple

from ..core.authority import Correction
from . import words
from .address import loose_anchor, machine_url, procedure_url, sheet_url, sheets_url, tags_url, worked_url
from .fill_template import Markup
from .left_words import left_words
from .lookup import Lookup
from .prose import Cited, Prose, cited
from .view_about import about_targets
from .view_caution import CautionView, caution_views
from .view_lists import NoteView, note_view
from .view_needs import NeedList, need_lists
from .view_open import OpenViews, open_views
from .view_press import PressCards, press_cards
from .view_spec import SpecView, places_text, spec_view
from .view_step import StepView, Target, step_views
from .view_torque import Result, Torque, results, torques
from .view_which import PartView, part_views


#: So many that may go side by side are named on a page.
_NAMED = 8


class CorrectionView(NamedTuple):
    id: str
    on: str
    old: Markup
    new: Markup
    reason: Markup
    evidence: Markup | None
    by: str
    sources: tuple[Cited, ...]
    if_done: str
    touches: Markup | None
    about: tuple[Target, ...]


class VariantView(NamedTuple):
    """A version and how it is told: serials or a measure."""

    id: str
    title: str
    serials: str
    measure: str
    summary: Markup | None
    sheet: str
    code: str


class ProcedureView(NamedTuple):
    """Shared by page and sheets up to `steps`; what only the page shows follows."""

    id: str
    title: str
    summary: Markup | None
    machine: str
    machine_href: str
    viewpoint: Markup
    tried: str
    badge: str
    applies: str
    variants: tuple[VariantView, ...]
    after: tuple[Target, ...]
    must_be_shut: tuple[tuple[Markup, Target], ...]
    conditions: tuple[Markup, ...]
    each: str
    people: int
    skill: Markup | None
    time: str
    cautions: tuple[CautionView, ...]
    needs: tuple[NeedList, ...]
    specs: tuple[SpecView, ...]
    cards: tuple[PressCards, ...]
    torques: tuple[Torque, ...]
    steps: tuple[StepView, ...]
    defer: tuple[Markup, ...]
    results: tuple[Result, ...]
    corrections: tuple[CorrectionView, ...]
    notes: tuple[NoteView, ...]
    was: tuple[str, ...]
    sheets: str
    worked: str
    before: Target | None
    next: Target | None
    open: OpenViews
    beside: tuple[Target, ...]
    beside_more: str
    parts: tuple[PartView, ...]
    tags: str


def procedure_view(lookup: Lookup, prose: Prose, root: str, codes: dict[str, str], workings) -> ProcedureView:
    """`codes` maps variant to sheet code; `prose.variant` picks one variant, else all are shown side by side."""
    book, machine, procedure = lookup.book, lookup.machine, lookup.procedure
    every = set(procedure.variants) == set(machine.main.variants)
    tried = procedure.tried
    before, after = _neighbours(lookup, root)
    variants = (prose.variant,) if prose.variant else procedure.variants
    return ProcedureView(
        procedure.id, procedure.title, prose(procedure.summary), machine.title, root + machine_url(machine.id), prose(machine.viewpoint),
        words.TRIED.format(serial=tried.serial, on=tried.on) if tried.serial else words.DESK, "tried" if tried.serial else "desk",
        words.applies(", ".join(procedure.variants), every),
        tuple(variant_view(lookup, machine.main.variants[v], prose, root, codes.get(v, "")) for v in procedure.variants if v in machine.main.variants),
        tuple(filter(None, (_first(lookup, name, variants, root) for name in procedure.after))),
        tuple(filter(None, (_shut(lookup, name, variants, prose, root) for name in procedure.must_be_shut))), prose.all(procedure.conditions),
        places_text(lookup, procedure.each, prose.variant) if procedure.each else "", procedure.people, prose(procedure.skill),
        procedure.time.typed() if procedure.time else "", caution_views(book, procedure.cautions),
        need_lists(book, procedure, prose, root), tuple(spec_view(lookup, spec, prose, root) for spec in procedure.specs.values()),
        press_cards(lookup, root, prose.variant), torques(lookup, prose.variant), step_views(lookup, prose, root), prose.all(machine.defer),
        results(lookup, workings, prose.variant),
        tuple(correction_view(lookup, correction, prose, root) for correction in _corrections(lookup)),
        tuple(note_view(lookup, procedure, note, root) for note in procedure.notes) if prose.linked else (),
        procedure.was, root + sheets_url(procedure), root + worked_url(procedure) if lookup.derived.worked else "", before, after,
        open_views(lookup, prose, root), *_beside(lookup, root), part_views(lookup, root, prose.variant), root + tags_url(procedure) if any(step.leaves for step in procedure.steps) else "")


def _beside(lookup: Lookup, root: str) -> tuple[tuple[Target, ...], str]:
    """Those that may be under way at the same time, the first few by name, and how many more there are."""
    order = lookup.book.orders[lookup.machine.id]
    mask = order.beside(lookup.procedure.id)
    more = mask.bit_count() - _NAMED
    few = order.of(mask)[:_NAMED] if more < 100 else ()
    return tuple(_procedure_target(lookup, other.id, root) for other in few), words.BESIDE_MORE.format(count=more) if more > 0 else ""


def variant_view(lookup: Lookup, variant, prose, root: str, code: str = "") -> VariantView:
    return VariantView(variant.id, variant.title, str(variant.serials) if variant.serials else "",
                       variant.measure.typed() if variant.measure else "", prose(variant.summary),
                       root + sheet_url(lookup.procedure, variant.id) if lookup.procedure else "", code)


def _procedure_target(lookup: Lookup, name: str, root: str) -> Target:
    there = lookup.book.procedures.get((lookup.machine.id, name))
    return Target(there.title if there else name, root + procedure_url(lookup.machine.id, name))


def _first(lookup: Lookup, name: str, variants: tuple[str, ...], root: str) -> Target | None:
    """What is done first, and on which of these variants if not on all; None where on none."""
    there, target = lookup.book.procedures.get((lookup.machine.id, name)), _procedure_target(lookup, name, root)
    return _told_of(target, [v for v in variants if there is None or v in there.variants], variants)


def _told_of(target: Target, on: list[str], variants: tuple[str, ...]) -> Target | None:
    if not on:
        return None
    return target if len(on) == len(variants) else target._replace(text=f"{target.text}, {words.only(on)}")


def _shut(lookup: Lookup, name: str, variants: tuple[str, ...], prose: Prose, root: str) -> tuple[Markup | str, Target] | None:
    """What must be shut before starting, in the words of the step that left it, and where it was left; None where no variant leaves it."""
    left = lookup.book.ledgers[lookup.machine.id].named(lookup.procedure, name)
    if left is None:
        return name, _procedure_target(lookup, name.partition("/")[0], root)
    there = _procedure_target(lookup, left.procedure.id, root)
    on = lookup.book.ledgers[lookup.machine.id].variants(left)
    told = _told_of(there._replace(href=f"{there.href}#{loose_anchor(left.end.id)}"), [v for v in variants if v in on], variants)
    return (left_words(lookup, left, prose), told) if told else None


def _neighbours(lookup: Lookup, root: str) -> tuple[Target | None, Target | None]:
    before, after = lookup.index.neighbours(lookup.procedure)
    return tuple(_procedure_target(lookup, other.id, root) if other else None for other in (before, after))


def _corrections(lookup: Lookup) -> list[Correction]:
    return lookup.index.corrections.get(lookup.procedure.id, [])


def correction_view(lookup: Lookup, correction: Correction, prose: Prose, root: str) -> CorrectionView:
    return CorrectionView(correction.id, correction.on, prose(correction.old), prose(correction.new), prose(correction.reason),
                          prose(correction.evidence), correction.by or "",
                          tuple(cited(lookup.book, citation, root) for citation in correction.sources),
                          words.IF_ALREADY_DONE[correction.if_already_done], prose(correction.touches), about_targets(lookup, correction, root))
