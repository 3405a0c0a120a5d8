"""Everything that is printed: the sheets, and the single leaves that go with them. Finished files of our own shell."""

from collections.abc import Mapping
from typing import NamedTuple

from ..core.correction_text import ON_PAPER
from ..core.machine import Machine
from . import words
from .address import binder_url, leaves_url, procedure_url, record_url, root_from, sheet_url, sheets_url, tags_url
from .fill_template import fill
from .lookup import Lookup
from .prose import Prose
from .view_press_paper import empty_cards
from .view_procedure import ProcedureView
from .view_record import Kept, hand_over, kept
from .view_sheet import Paper, SheetView, sheet_view
from .view_step import Target

SLIP_URL, FORM_URL = "sheet/correction-slip/", "sheet/procedure-form/"


class Leaf(NamedTuple):
    """One thing to print: what it is called, where it stands, and the code of a sheet."""

    title: str
    url: str
    code: str = ""


class SingleLeaf(NamedTuple):
    """A leaf on the page of a sheet's leaves, by its id there."""

    id: str
    title: str


class Binder(NamedTuple):
    """All that is printed for a machine, or for one `variant` of it; '' for all."""

    machine: str
    title: str
    variant: str
    leaves: tuple[Leaf, ...]


def sheet_files(lookup: Lookup, view: ProcedureView, codes: dict[str, str], workings, paper: Paper) -> tuple[dict[str, str], dict[str, Kept]]:
    """The sheets of a procedure, their leaves, and the page that offers them; and what each leaves to be kept."""
    procedure, files, keeps, offers = lookup.procedure, {}, {}, {}
    for variant in procedure.variants:
        at = sheet_url(procedure, variant)
        sheet = sheet_view(lookup, variant, root_from(at), codes[variant], workings, paper)
        keeps[variant] = kept(sheet)
        files[f"{at}index.html"] = fill("sheet", title=f"{procedure.title}, {variant}, {codes[variant]}", root=root_from(at), sheet=sheet, p=sheet.procedure)
        at = leaves_url(procedure, variant)
        files[f"{at}index.html"], leaves = _leaves(lookup, sheet, at)
        offers[variant] = tuple(Target(leaf.title, f"../leaves/{variant}/#{leaf.id}") for leaf in leaves)
    at = sheets_url(procedure)
    files[f"{at}index.html"] = fill("sheets", title=f"{words.CHECKLIST}: {procedure.title}", root=root_from(at), p=view, offers=offers,
                                    pdf=paper.pdf, always=_always(root_from(at), procedure.machine, procedure.variants))
    return files, keeps


def _leaves(lookup: Lookup, sheet: SheetView, at: str) -> tuple[str, tuple[SingleLeaf, ...]]:
    """The page of a sheet's leaves, and which: the night before always; the cards of presses and torques where there are any."""
    view, prose = sheet.procedure, Prose(lookup, linked=False, variant=sheet.variant.id)
    blanks = tuple(card for card in empty_cards(lookup, view.specs, sheet.variant.id) if card.rows)
    there = (("night", words.NIGHT, True), ("cards", words.PRESS_LEAF, blanks or sheet.presses), ("torques", words.TORQUE_LEAF, sheet.torques))
    leaves = tuple(SingleLeaf(name, title) for name, title, holds in there if holds)
    root = root_from(at)
    return fill("leaves", title=f"{words.LEAVES_TOO}: {view.title}, {sheet.variant.id}", root=root, leaves=leaves, about=f"{view.title} · {view.machine} · {sheet.variant.id}",
                back=Target(view.title, root + procedure_url(lookup.machine.id, view.id)), sheet=sheet, p=view, blanks=blanks,
                plate=prose(lookup.machine.serial_plate)), leaves


def record_files(lookup: Lookup, keeps: dict[str, list[Kept]]) -> dict[str, str]:
    """For each variant the record that is handed over with the machine."""
    files = {}
    for variant, kept_here in keeps.items():
        at = record_url(lookup.machine.id, variant)
        view = hand_over(lookup, variant, tuple(kept_here))
        title = f"{words.HAND_OVER}: {view.machine}, {variant}"
        files[f"{at}index.html"] = fill("record", title=title, root=root_from(at), leaf=words.HAND_OVER, about=f"{view.machine} · {variant}", code="", sources="",
                                        back=Target(view.machine, "../../../"), r=view)
    return files


def blank_files() -> dict[str, str]:
    """What is written by hand and typed in later: a correction, and a whole procedure."""
    slip = tuple((name, *words.SLIP_HELP[name]) for name in ON_PAPER)
    return {f"{at}index.html": fill("form", title=title, root=root_from(at), leaf=title, about="", code="", sources="", back=Target(words.FRONT, root_from(at)),
                                    says=says, fields=fields)
            for at, title, says, fields in ((SLIP_URL, words.SLIP, words.SLIP_SAYS, slip), (FORM_URL, words.FORM, words.FORM_SAYS, words.FORM_FIELDS))}


def _always(root: str, machine: str, variants: tuple[str, ...]) -> tuple[Target, ...]:
    return (*(Target(f"{words.HAND_OVER}, {variant}", root + record_url(machine, variant)) for variant in variants), *blank_links(root))


def blank_links(root: str) -> tuple[Target, ...]:
    return (Target(words.SLIP, root + SLIP_URL), Target(words.FORM, root + FORM_URL))


def binders(lookup: Lookup, procedures, codes: Mapping[tuple[str, str, str], str]) -> tuple[Binder, ...]:
    """One for the machine, with the sheets of every variant, then one for each variant alone: in the order of the work, each sheet
    once; then tags, records, and what is filled in by hand."""
    machine = lookup.machine
    on = {variant: [procedure for procedure in procedures if variant in procedure.variants] for variant in machine.main.variants}
    mine = tuple(variant for variant in on if on[variant])
    alone = [_binder(lookup, on[variant], (variant,), variant, codes) for variant in mine]
    return (_binder(lookup, procedures, mine, "", codes), *alone) if len(mine) > 1 else tuple(alone)


def _binder(lookup: Lookup, procedures, variants: tuple[str, ...], variant: str, codes: Mapping[tuple[str, str, str], str]) -> Binder:
    """`variant` is '' for all of them: the titles then say for which one each leaf is."""
    def named(title: str, one: str) -> str:
        return title if variant else f"{title}, {one}"

    machine = lookup.machine
    return Binder(machine.id, machine.title, variant, (
        *(Leaf(named(procedure.title, one), sheet_url(procedure, one), codes.get((machine.id, procedure.id, one), ""))
          for procedure in procedures for one in variants if one in procedure.variants),
        *(Leaf(f"{words.TAGS}: {procedure.title}", tags_url(procedure)) for procedure in procedures if any(step.leaves for step in procedure.steps)),
        *(Leaf(named(words.HAND_OVER, one), record_url(machine.id, one)) for one in variants), Leaf(words.SLIP, SLIP_URL)))


def binder_links(machine: Machine, root: str) -> tuple[Target, ...]:
    """The files, where the site holds them: my own variant's first, for that is the one to take to the bench."""
    variants = tuple(machine.main.variants)
    whole = ("",) if len(variants) > 1 else ()
    return tuple(Target(f"{words.BINDER}, {variant or words.EVERY_VARIANT} ({words.DOWNLOAD})", root + binder_url(machine.id, variant)) for variant in (*variants, *whole))
