"""All pages of a book: bodies for the host's shell, and finished files that need no host."""

import json
from dataclasses import dataclass, field, replace
from functools import partial
from typing import Mapping, NamedTuple

from ..core.authority import SIGNAL_WORDS
from ..core.book import Book
from ..core.derived import Derived
from ..core.memory import FORGETFUL, Memory
from ..core.procedure import Procedure
from ..core.rests_on import ANYTHING, RestsOn
from ..core.working import Working
from . import my_bench_words, words, words_corrections
from .address import CAUTIONS_URL, MY_BENCH_URL, bench_url, machine_url, press_url, procedure_url, root_from, source_url, worked_url, working_url
from .ask_page import ask_file
from .book_index import BookIndex
from .correct_page import correct_file, shop_correct_file
from .corrections_pages import corrections_bodies, pin_files
from .fill_template import fill, static_files
from .forge_links import Forge
from .lookup import Lookup
from .old_sheets import OldSheet
from .offline import About, about_book, offline_files
from .loose_data import loose_data
from .paper_pages import Binder, binders, blank_files, record_files, sheet_files
from .plan_pages import needs_files, plan_bodies, tag_file
from .prose import Prose
from .script_tables import script_tables
from .view_bench import bench_view
from .view_caution import caution_view
from .view_machine import home_defer, home_lists, machine_view, procedure_targets
from .view_procedure import procedure_view
from .view_record import Kept
from .view_sheet import Paper
from .view_shop import press_view, source_view
from .view_step import Target
from .view_torque import Torque
from .view_worked import owner_views
from .view_working import ManualView


@dataclass(frozen=True, slots=True)
class Heading:
    """A line of a page's contents: `level` 2 or 3, the id it leads to, its words."""

    level: int
    id: str
    title: str


@dataclass(frozen=True, slots=True)
class Page:
    """A page to be shown in the host's shell. `url` from the site's root, '' for the first page; `source_path` from the book's."""

    url: str
    title: str
    html: str
    toc: tuple[Heading, ...] = ()
    source_path: str | None = None
    description: str = ""


@dataclass(frozen=True, slots=True)
class SitePages:
    pages: tuple[Page, ...]
    files: dict[str, str | bytes]
    about: About = About()
    binders: tuple[Binder, ...] = ()


@dataclass(frozen=True)
class Settings:
    """`mail` is where corrections go, '' for nowhere."""

    book_title: str
    book_id: str
    forge: Forge | None = None
    workings: Mapping[str, Working] = field(default_factory=dict)
    manuals: tuple[ManualView, ...] = ()
    gauges: tuple[tuple[int, str, float], ...] = ()
    paper: Paper = Paper()
    mail: str = ""
    old_sheets: Mapping[str, list[OldSheet]] = field(default_factory=dict)      # by correction
    bars: Mapping[tuple[str, str], tuple[str, frozenset[str], frozenset[str]]] = field(default_factory=dict)


Fingerprints = dict[tuple[str, str, str], str]


def site_pages(book: Book, derived: dict[tuple[str, str], Derived], fingerprints: Fingerprints, settings: Settings,
               rests: RestsOn = ANYTHING, memory: Memory = FORGETFUL) -> SitePages:
    """Every page and file of the book. The same book gives the same bytes. `rests` says what pages rest on beside the settings:
    where that is the same, what `memory` holds is not set again."""
    index = BookIndex(book)
    pages: list[Page] = [_home(book, index, settings)]
    files: dict[str, str | bytes] = {f"assets/witnessmark/{path}": content for path, content in static_files().items()
                                      if not path.endswith((".json", "/sw.js"))}
    files.update(script_tables(settings.workings, settings.gauges))
    files.update(offline_files(settings.book_title))
    about = about_book(book, settings.book_id)
    files.update(ask_file(settings.book_title, about))
    bound: list[Binder] = []
    for machine in book.machines.values():
        told = replace(settings, old_sheets={}, bars={key: bars for key, bars in settings.bars.items() if key[0] == machine.id})
        its_own = memory.of(("pages", machine.id), (rests.machine(machine.id), told, about),
                            partial(_of_machine, Lookup(book, index, derived, machine), derived, fingerprints, told, about, rests, memory))
        pages += its_own.pages
        files.update(its_own.files)
        bound += its_own.binders
    files[f"{MY_BENCH_URL}index.html"] = fill("my_bench", title=my_bench_words.TITLE, root=root_from(MY_BENCH_URL), book_id=settings.book_id, book_title=settings.book_title)
    files.update(blank_files())
    files.update(shop_correct_file(book, index, settings.book_id, settings.forge, settings.mail))
    lookups = [Lookup(book, index, derived, machine) for machine in book.machines.values()]
    pages += [Page(url, title, html, description=title) for url, title, html in corrections_bodies(lookups, settings.old_sheets)]
    files.update(pin_files(lookups, settings.old_sheets, fingerprints))
    pages += _shop(book, index, settings)
    return SitePages(tuple(pages), files, about, tuple(bound))


def _of_machine(lookup: Lookup, derived: dict[tuple[str, str], Derived], fingerprints: Fingerprints, settings: Settings, about: About,
                rests: RestsOn, memory: Memory) -> SitePages:
    """The pages, files and binders of one machine and its procedures."""
    book, machine, url = lookup.book, lookup.machine, machine_url(lookup.machine.id)
    pages = [_page(url, machine.title, "machine", machine.place.path, m=machine_view(lookup, root_from(url), settings.paper.pdf))]
    pages += [Page(url, title, html, description=title) for url, title, html in plan_bodies(lookup, settings.book_id)]
    files: dict[str, str | bytes] = {}
    torques, meanings, keeps = {}, {}, {variant: [] for variant in machine.main.variants}
    for procedure in lookup.index.order[machine.id]:
        key = machine.id, procedure.id
        told = replace(settings, bars={key: settings.bars[key]} if key in settings.bars else {})
        moves = [lookup.index.moved_by(f"{machine.id}/{procedure.id}/{spec}") for spec in (*procedure.specs, *procedure.computed)]
        codes = {variant: fingerprints.get((*key, variant), "") for variant in procedure.variants}
        made = memory.of(("pages", *key), (rests.pages(key), told, about, moves), partial(procedure_pages, lookup, derived, procedure, codes, told, about))
        pages.append(made.page)
        files.update(made.files)
        torques[procedure.id], meanings[procedure.id] = made.torques, made.meanings
        for variant, kept in made.keeps.items():
            keeps[variant].append(kept)
    files.update(needs_files(lookup, torques))
    files.update(record_files(lookup, keeps))
    files.update(correct_file(lookup, {}, settings.book_id, settings.forge, settings.mail))
    files[f"{url}loose.json"] = json.dumps(loose_data(book, machine.id, meanings), ensure_ascii=False, separators=(",", ":"))
    return SitePages(tuple(pages), files, about, binders(lookup, lookup.index.order[machine.id], fingerprints))


class Made(NamedTuple):
    """What is set of one procedure; `torques`, `meanings` of its steps and `keeps` go into the lists of its machine."""

    page: Page
    files: dict[str, str]
    torques: tuple[Torque, ...]
    meanings: dict[str, dict[str, str]]
    keeps: dict[str, Kept]


def procedure_pages(of_machine: Lookup, derived: dict[tuple[str, str], Derived], procedure: Procedure, codes: dict[str, str], settings: Settings, about: About) -> Made:
    """The page and files of one procedure. What it shows of others stands in their outlines, or it names them: see core/outline.py."""
    lookup = Lookup(of_machine.book, of_machine.index, derived, of_machine.machine, procedure)
    files: dict[str, str] = {}
    url = procedure_url(procedure.machine, procedure.id)
    root = root_from(url)
    view = procedure_view(lookup, Prose(lookup, linked=True), root, codes, settings.workings)
    contents = _contents(view)
    page = Page(url, procedure.title, fill("procedure", p=view, contents=contents, bars=_bars(settings, procedure), words_c=words_corrections, root=root, book_id=settings.book_id), contents,
                      procedure.place.path, procedure.summary.text if procedure.summary else f"{procedure.title}, {view.machine}")
    files.update(tag_file(lookup))
    files.update(correct_file(lookup, codes, settings.book_id, settings.forge, settings.mail))
    at = bench_url(procedure)
    bench = bench_view(lookup, root_from(at), codes, settings.workings, settings.book_id)
    files[f"{at}index.html"] = fill("bench", title=f"{words.BENCH}: {procedure.title}", root=root_from(at), p=bench.procedure, bench=bench,
                                   about=about, keep=about.script_data(root_from(at)))
    sheets, keeps = sheet_files(lookup, view, codes, settings.workings, settings.paper)
    files.update(sheets)
    if lookup.derived.worked:
        at = worked_url(procedure)
        files[f"{at}index.html"] = fill("worked", title=f"{words.HOW_WORKED}: {procedure.title}", root=root_from(at), page_title=procedure.title,
                                        owners=owner_views(lookup, settings.workings, root_from(at), settings.forge))
    return Made(page, files, view.torques, bench.meanings, keeps)


def _bars(settings: Settings, procedure) -> tuple[str, frozenset[str], frozenset[str]]:
    """Since which edition, and the ids of the figures and steps that changed since; nothing where nothing did."""
    return settings.bars.get((procedure.machine, procedure.id), ("", frozenset(), frozenset()))


def _contents(view) -> tuple[Heading, ...]:
    parts = [("before", words.BEFORE, True), ("needs", words.NEEDS, True), ("cautions", words.CAUTIONS, view.cautions),
             ("steps", words.STEPS, True), ("left-loose", words.OPEN_AT_STOP, True), ("press-cards", words.CARDS, view.cards),
             ("torques", words.TORQUES, view.torques), ("figures", words.SPECS, view.specs), ("results", words.RESULTS, view.results),
             ("notes", words.NOTES, view.notes), ("corrections", words.CORRECTIONS, view.corrections)]
    return tuple(Heading(2, anchor, title) for anchor, title, there in parts if there)


def _home(book: Book, index: BookIndex, settings: Settings) -> Page:
    machines = [{"id": machine.id, "title": machine.title, "href": machine_url(machine.id), "summary": machine.summary and machine.summary.text,
                 "procedures": procedure_targets(index.order[machine.id], "")} for machine in book.machines.values()]
    return _page("", settings.book_title, "home", None, title=settings.book_title, machines=machines, lists=home_lists(), defer=home_defer(book))


def _shop(book: Book, index: BookIndex, settings: Settings) -> list[Page]:
    """Presses, sources, cautions and workings, each with its list."""
    found = []
    for press in book.presses.values():
        url = press_url(press.id)
        root = root_from(url)
        users = procedure_targets(index.press_users.get(press.id, ()), root)
        found.append(_page(url, press.title, "press", press.place.path, press=press_view(book, press, users, root)))
    for source in book.sources.values():
        url = source_url(source.id)
        found.append(_page(url, source.title, "source", source.place.path, root=root_from(url), source=source_view(source, tuple(index.rests[source.id]))))
    for manual in settings.manuals:
        found.append(_page(working_url(manual.id), manual.title, "working", None, w=manual))
    for url, title, records in (("press/", words.PRESSES, book.presses), ("source/", words.SOURCES, book.sources), ("working/", words.WORKINGS, settings.workings)):
        targets = tuple(Target(record.title, f"{record.id}/") for record in records.values())
        found.append(_page(url, title, "list", None, title=title, targets=targets))
    order = {word: number for number, word in enumerate(SIGNAL_WORDS)}
    cautions = sorted(book.cautions.values(), key=lambda caution: order[caution.word])
    found.append(_page(CAUTIONS_URL, words.LEGEND, "cautions", "site_data/cautions.yaml", ladder=tuple(words.SIGNAL_LADDER.items()),
                       cautions=[caution_view(book, caution, root_from(CAUTIONS_URL)) for caution in cautions]))
    return found


def _page(url: str, title: str, template: str, source_path: str | None, /, **values) -> Page:
    return Page(url, title, fill(template, **values), (), source_path, title)
