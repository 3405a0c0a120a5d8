"""Corrections of a machine and of the whole book, and the page of one to be pinned up over the bench."""

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from ..core.authority import Correction
from ..core.machine import Machine
from ..core.procedure import Procedure
from . import words_corrections as say
from .address import corrections_url, machine_url, pin_url
from .fill_template import Markup
from .lookup import Lookup
from .old_sheets import OldSheet
from .prose import Prose
from .view_procedure import CorrectionView, correction_view
from .view_step import Target


class Brief(NamedTuple):
    """A line of the book's list."""

    id: str
    on: str
    about: str
    old: Markup
    new: Markup
    if_done: str
    there: Target
    pin: str


class PinView(NamedTuple):
    """`serials` are machine, variant and its serials or measure; `now` procedure, variant and code that hold now."""

    view: CorrectionView
    machine: str
    stop: bool
    sheets: tuple[OldSheet, ...]
    now: tuple[tuple[str, str, str], ...]
    serials: tuple[tuple[str, str], ...]
    done: str


def is_pinned(correction: Correction, sheets: Mapping[str, list[OldSheet]]) -> bool:
    """Whether hands must stop for it: work done is to be looked at, or something grave changed on a sheet."""
    return correction.if_already_done != "fine" or any(sheet.stop for sheet in sheets.get(correction.id, ()))


def views(lookup: Lookup, root: str) -> tuple[CorrectionView, ...]:
    prose = Prose(lookup, linked=False)
    return tuple(correction_view(lookup, correction, prose, root) for correction in lookup.index.corrections_of(lookup.machine.id))


def brief(lookup: Lookup, correction: Correction, sheets, root: str) -> Brief:
    view = correction_view(lookup, correction, Prose(lookup, linked=False), root)
    there = Target(lookup.machine.title, f"{root}{corrections_url(lookup.machine.id)}#correction-{correction.id}")
    return Brief(view.id, view.on, ", ".join(target.text for target in view.about), view.old, view.new, view.if_done, there,
                 root + pin_url(correction.id) if is_pinned(correction, sheets) else "")


def pin_view(lookup: Lookup, correction: Correction, sheets: Mapping[str, list[OldSheet]], codes: Mapping[tuple[str, str, str], str], root: str) -> PinView:
    old = tuple(sheets.get(correction.id, ()))
    procedures = _procedures(lookup, correction, old)
    touched = {sheet.variant for sheet in old} or {variant for procedure in procedures for variant in procedure.variants}
    now = tuple((procedure.title, variant, codes.get((procedure.machine, procedure.id, variant), "")) for procedure in procedures for variant in procedure.variants)
    return PinView(correction_view(lookup, correction, Prose(lookup, linked=False), root), lookup.machine.title, is_pinned(correction, sheets), old, now,
                   tuple(_serials(lookup.machine, touched)), say.SERIALS[correction.if_already_done])


def _procedures(lookup: Lookup, correction: Correction, old: tuple[OldSheet, ...]) -> list[Procedure]:
    """Those it is about, and those whose sheets went stale with it, in the order of the machine."""
    names = {owner for owner, found in lookup.index.corrections.items() if correction in found} | {sheet.procedure for sheet in old if sheet.machine == lookup.machine.id}
    return [procedure for procedure in lookup.index.order[lookup.machine.id] if procedure.id in names]


def _serials(machine: Machine, variants: set[str]) -> Iterator[tuple[str, str]]:
    for variant in machine.main.variants.values():
        if variant.id in variants:
            yield variant.title, f"serials {variant.serials}" if variant.serials else say.ALL_SERIALS


def machine_back(machine: Machine, root: str) -> Target:
    return Target(machine.title, root + machine_url(machine.id))
