"""The pages of machines and of the whole book, ready to print."""

from typing import NamedTuple

from . import words, words_ask
from .address import ASK_URL, CAUTIONS_URL, CORRECTIONS_URL, carrier_anchor, corrections_url, ledger_url, machine_url, needs_url, procedure_url, record_url
from .fill_template import Markup
from .lookup import Lookup
from .paper_pages import binder_links, blank_links
from .prose import Prose, plain
from .view_lists import list_links
from .view_plan import PlanView, plan_view
from .view_procedure import VariantView, variant_view
from .view_spec import SpecView, place_words, spec_view
from .view_step import Target


class CarrierView(NamedTuple):
    """`anchor` is where it stands on the page, and where it is corrected on the page for that."""

    id: str
    anchor: str
    title: str
    told_by: str
    variants: tuple[VariantView, ...]


class MachineView(NamedTuple):
    id: str
    title: str
    href: str
    summary: Markup | None
    viewpoint: Markup
    serial_plate: Markup | None
    carriers: tuple[CarrierView, ...]
    places: tuple[tuple[str, str], ...]
    plan: PlanView
    links: tuple[Target, ...]
    specs: tuple[SpecView, ...]
    defer: tuple[Markup, ...]


def machine_view(lookup: Lookup, root: str, pdf: bool = False) -> MachineView:
    """With `pdf` the binders are there as files."""
    machine, prose = lookup.machine, Prose(lookup, linked=False)
    carriers = tuple(CarrierView(carrier.id, carrier_anchor(carrier.id), carrier.title, carrier.told_by,
                                 tuple(variant_view(lookup, variant, prose, root) for variant in carrier.variants.values()))
                     for carrier in machine.carriers.values())
    return MachineView(machine.id, machine.title, root + machine_url(machine.id), prose(machine.summary), prose(machine.viewpoint),
                       prose(machine.serial_plate), carriers, tuple((group, ", ".join(place_words(machine, group, None))) for group in machine.places),
                       plan_view(lookup.book.ledgers[machine.id], lookup.index.turns[machine.id], root), plan_links(lookup, root, pdf),
                       tuple(spec_view(lookup, spec, prose, root) for spec in machine.figures.values()), prose.all(machine.defer))


def plan_links(lookup: Lookup, root: str, pdf: bool) -> tuple[Target, ...]:
    """The pages about the machine's whole work that have something on them."""
    machine = lookup.machine.id
    corrections = (Target(words.CORRECTIONS, root + corrections_url(machine)),) if lookup.index.corrections_of(machine) else ()
    return (Target(words.LEDGER, root + ledger_url(machine)), Target(words.ROLL_TITLE, root + needs_url(machine)), *list_links(lookup, root), *corrections,
            *(Target(f"{words.HAND_OVER}, {variant}", root + record_url(machine, variant)) for variant in lookup.machine.main.variants),
            *(binder_links(lookup.machine, root) if pdf else ()), *blank_links(root))


def procedure_targets(procedures, root: str) -> tuple[Target, ...]:
    return tuple(Target(procedure.title, root + procedure_url(procedure.machine, procedure.id)) for procedure in procedures)


def home_defer(book) -> tuple[Markup, ...]:
    """Each sentence of deference once, whichever machine says it."""
    return tuple(dict.fromkeys(plain(sentence) for machine in book.machines.values() for sentence in machine.defer))


def home_lists() -> tuple[Target, ...]:
    return (Target(words.PRESSES, "press/"), Target(words.SOURCES, "source/"), Target(words.WORKINGS, "working/"), Target(words.LEGEND, CAUTIONS_URL), Target(words.CORRECTIONS, CORRECTIONS_URL), Target(words_ask.TITLE, ASK_URL))
