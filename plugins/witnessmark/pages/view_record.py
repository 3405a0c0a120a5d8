"""The record handed over with a machine: every value measured, what became of each part, what was tied up, what figures changed."""

from typing import NamedTuple

from . import words
from .fill_template import Markup
from .left_words import left_words
from .lookup import Lookup
from .prose import Prose
from .view_needs import NeedView
from .view_procedure import CorrectionView, correction_view
from .view_sheet import SheetView
from .view_step import RecordView

_PARTS = 3          # the last of a sheet's lists of needs


class Kept(NamedTuple):
    """What one sheet leaves to be kept."""

    title: str
    code: str
    records: tuple[RecordView, ...]
    parts: tuple[NeedView, ...]


class Tied(NamedTuple):
    name: str
    state: Markup
    where: str
    shut: str
    ticks: tuple[str, ...]


class HandOver(NamedTuple):
    machine: str
    variant: str
    viewpoint: Markup
    procedures: tuple[Kept, ...]
    left: tuple[Tied, ...]
    corrections: tuple[CorrectionView, ...]


def kept(sheet: SheetView) -> Kept:
    parts = sheet.procedure.needs[_PARTS].lines
    return Kept(sheet.procedure.title, sheet.code, tuple(record for step in sheet.procedure.steps for record in step.records), parts)


def hand_over(lookup: Lookup, variant: str, procedures: tuple[Kept, ...]) -> HandOver:
    machine, ledger, prose = lookup.machine, lookup.book.ledgers[lookup.machine.id], Prose(lookup, linked=False, variant=variant)
    left = []
    for one in ledger.left.values():
        if variant in ledger.variants(one):
            places = ledger.places(one, variant)
            ties = dict.fromkeys(tie.procedure.title for tie in ledger.ties[one.name] if ledger.done_on(tie.procedure, tie.step, variant))
            left.append(Tied(one.name, left_words(lookup, one, prose), words.and_places([place for place in places if place]),
                             f"{words.SHUT_IN} {', '.join(ties)}", tuple(places)))
    return HandOver(machine.title, variant, prose(machine.viewpoint), procedures, tuple(left),
                    tuple(correction_view(lookup, change, prose, "") for change in lookup.index.corrections_of(machine.id)))
