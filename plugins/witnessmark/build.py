"""The whole pipeline on one screen: sources -> Book -> derived figures -> findings, pages, files."""

import gc
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from functools import cache, partial
from pathlib import Path
from urllib.parse import unquote

from .changes.bars import bars
from .changes.compare import Comparison, compare
from .changes.issue import issue, missing
from .changes.side import Side
from .changes.since import FOLDER as EDITIONS, since_files
from .core.book import Book
from .core.canonical import digest
from .core.derived import Derived
from .core.every_picture import pictures_of_book
from .core.finding import ERROR, Finding
from .core.memory import FORGETFUL, Memory
from .core.picture import PictureFile
from .core.record import fingerprint, sheet_record
from .core.resting import Resting
from .core.working import Outcome
from .loading.load_book import FOLDERS, UNREAD, load_book
from .loading.new_book import new_book_files
from .loading.revisions import Revision, RevisionProblem
from .loading.source_schemas import schema_files
from .loading.source_files import EDITIONS as ISSUED, Beside, SourceFile, beside_sources, picture_bytes, picture_file, yaml_sources
from .loading.stray_files import pictures_of_pages, stray_findings
from .pages.address import picture_url, procedure_url, sheet_url
from .pages.book_json import book_json, schema_json
from .pages.forge_links import Forge
from .pages.old_sheets import old_sheets
from .pages.pdf import Press
from .pages.search_entries import search_files
from .pages.site import Settings, SitePages, site_pages
from .pages.view_sheet import Paper
from .pages.view_working import ManualView, manual_view
from .rules.table import check_book
from .workings.derive import derive_machine, joined
from .workings.explain import command
from .workings.read_inputs import run
from .workings.registry import WORKINGS
from .workings.tables.gauge_ranges import standard_gauges


#: Sources that are read by one machine's pages alone; editions by none but the page that is asked by an old code.
_OF_ONE_MACHINE = ("procedures/", "site_data/machines/", f"{ISSUED}/")
#: What a formula is, in ten signs: a sheet does not outlive the formula behind its marks.
_FORMULAS = {working.id: digest([formula.text for formula in working.formula]) for working in WORKINGS.values()}


@dataclass(frozen=True)
class Checked:
    """A book, what was worked out from it, and everything wrong with it in the order of places."""

    book: Book
    derived: dict[tuple[str, str], Derived]
    findings: tuple[Finding, ...]
    left_out: int = 0                   # findings not told, because they rest on what could not be read
    texts: dict[str, str] = field(default_factory=dict)         # the sources by path, and the digests of pictures
    rests_on: dict[str, tuple] = field(default_factory=dict)    # by machine, all that its figures and pages rest on

    @property
    def errors(self) -> int:
        return sum(finding.severity == ERROR for finding in self.findings)


def check(folder: Path, memory: Memory = FORGETFUL) -> Checked:
    """Reads and proves the book in `folder`; nothing is rendered. What `memory` holds of an earlier check is not worked out again."""
    return proved(yaml_sources(folder, FOLDERS), beside_sources(folder), partial(picture_file, folder), memory)


def check_at(revision: Revision) -> Checked:
    """Reads and proves the book as it stood at a revision."""
    return proved(revision.sources(FOLDERS), revision.beside(), revision.picture)


@contextmanager
def _uncollected() -> Iterator[None]:
    """Records and views hold no cycles: looking for some took a fifth of the time."""
    gc.disable()
    try:
        yield
    finally:
        gc.enable()


@_uncollected()
def proved(files: list[SourceFile], beside: Beside, picture_of: Callable[[str], PictureFile], memory: Memory = FORGETFUL) -> Checked:
    """Proves a book from its sources, what lies beside them, and what is known of a picture by its path."""
    book, findings = load_book(files, memory)
    pages, others = beside
    by_page = pictures_of_pages(pages)
    named = {picture.path for picture in pictures_of_book(book)} | by_page.intersection(others)
    book.pictures.update({path: picture_of(path) for path in sorted(named)})
    findings += stray_findings(pages, others, by_page, book.pictures)
    rests_on = _rests_on(book, files)
    derived, worked_findings = joined(memory.of(("derived", machine), rests_on[machine], partial(derive_machine, book, machine)) for machine in book.machines)
    slips = {finding for finding in findings if finding.rule != "unknown-reference"}
    others = {*findings, *worked_findings, *check_book(book, derived)} - slips
    rests = Resting(book, slips)
    # Names that stand in a file nobody could read are not the mistakes of those who use them: first things first.
    told = set() if any(slip.rule in UNREAD for slip in slips) else {finding for finding in others if not rests(finding)}
    told -= {finding for finding in told if finding.rule == "no-figure" and (finding.place.path, finding.place.line) in
             {(other.place.path, other.place.line) for other in told if other.rule == "unknown-reference"}}
    texts = {**{file.path: file.text for file in files}, **{path: picture.digest or "" for path, picture in book.pictures.items()}}
    return Checked(book, derived, tuple(sorted(slips | told)), len(others) - len(told), texts, rests_on)


def _rests_on(book: Book, files: list[SourceFile]) -> dict[str, tuple]:
    """By machine, all that its figures, sheet codes and pages rest on: the whole shop, every picture, the machine and its
    own procedures. No page of a machine looks at another machine; one that does must be added here first."""
    shop = [file for file in files if not file.path.startswith(_OF_ONE_MACHINE)], book.pictures
    return {machine: (shop, book.machines[machine], [book.procedures[machine, name] for name in names])
            for machine, names in book.procedure_ids.items()}


def codes(checked: Checked) -> dict[tuple[str, str, str], str]:
    """Sheet code by (machine, procedure, variant)."""
    return {sheet: fingerprint(record) for sheet, record in records(checked).items()}


def records(checked: Checked, memory: Memory = FORGETFUL) -> dict[tuple[str, str, str], dict]:
    """All that is acted on by each sheet, by (machine, procedure, variant)."""
    found = {}
    for machine in checked.book.machines:
        found |= memory.of(("records", machine), checked.rests_on.get(machine, object()), partial(_records, checked, machine))
    return found


def _records(checked: Checked, machine: str) -> dict[tuple[str, str, str], dict]:
    return {(*key, variant): record(checked, (*key, variant)) for key in checked.book.procedures if key[0] == machine
            for variant in checked.derived[key].combinations}


def record(checked: Checked, sheet: tuple[str, str, str]) -> dict:
    """All that is acted on by one sheet."""
    machine, procedure, variant = sheet
    return sheet_record(checked.book, checked.book.procedures[machine, procedure], checked.derived, variant, _FORMULAS)


def new_editions(checked: Checked, on: str) -> dict[str, str]:
    """The files of site_data/editions to be written, by path, so that every sheet of today is in an edition; new ones are dated `on`."""
    return issue(checked.book, checked.derived, records(checked), on)


def missing_editions(checked: Checked) -> list[Finding]:
    """The sheets that a release would leave unknown to every reader's phone."""
    return sorted(missing(checked.book, records(checked)))


def first_book() -> dict[str, str]:
    """The files of a small whole book, by path, for one who begins; its schemas are those of this tool."""
    return {**new_book_files(), **{f"site_data/schema/{name}": text for name, text in schema_files(WORKINGS).items()}}


def compared(old: tuple[str, Checked], new: tuple[str, Checked]) -> Comparison:
    """What the new book says otherwise than the old one; each with the name its reader knows it by."""
    return compare(*(Side(name, checked.book, checked.derived, checked.findings, checked.texts, partial(record, checked)) for name, checked in (old, new)))


def paper_press(folder: Path, checked: Checked, site: SitePages, size: str) -> Press:
    """What sets the pages of a site as PDF. Raises NoPdf where that cannot be done here."""
    pictures = {unquote(picture_url(path)): path for path in checked.book.pictures}

    def read(address: str) -> bytes | None:
        known = site.files.get(unquote(address))
        if known is None and unquote(address) in pictures:
            return picture_bytes(folder, pictures[unquote(address)])
        return known.encode() if isinstance(known, str) else known

    return Press(read, size)


def paper_of(folder: Path, checked: Checked, site_url: str | None, environment: dict[str, str], pdf: bool = False) -> Paper:
    """What every sheet says of the book: where it is read, and the day of its sources; none where they differ from what git holds."""
    try:
        head = Revision(str(folder), "HEAD", environment)
        held = {file.path: file.text for file in head.sources(FOLDERS)}
        as_held = held == {path: text for path, text in checked.texts.items() if path in held or path.endswith((".yaml", ".yml"))}
        return Paper(site_url or "", head.day(FOLDERS) if as_held else "", pdf)
    except RevisionProblem:
        return Paper(site_url or "", "", pdf)


@cache
def _manuals() -> tuple[ManualView, ...]:
    """Each working's page, its example run."""
    return tuple(manual_view(working, run(working, working.example.inputs)[0] or Outcome(), command(working)) for working in WORKINGS.values())


@cache
def _source_schemas() -> dict[str, str]:
    return {f"schema/{name}": text for name, text in schema_files(WORKINGS).items()}


@_uncollected()
def render(checked: Checked, title: str, book_id: str, edit_base: str | None, paper: Paper = Paper(),
           forge: Forge | None = None, mail: str = "", memory: Memory = FORGETFUL) -> SitePages:
    """Every page body and every finished file of the site. What `memory` holds of an earlier rendering is not set again."""
    sheets = records(checked, memory)
    sheet_codes = {sheet: fingerprint(each) for sheet, each in sheets.items()}
    since = since_files(checked.book, sheets, procedure_url, sheet_url)
    settings = Settings(title, book_id, edit_base, WORKINGS, _manuals(), tuple(standard_gauges()), paper, forge, mail,
                        old_sheets(since), bars(checked.book, sheets))
    site = site_pages(checked.book, checked.derived, sheet_codes, settings, checked.rests_on, memory)
    files = {**site.files, **search_files(checked.book, checked.derived),
             "book.json": book_json(checked.book, checked.derived, sheet_codes), "book.schema.json": schema_json(),
             **since,
             f"{EDITIONS}/editions.schema.json": schema_json("editions"), "schema/compare.schema.json": schema_json("compare"),
             **_source_schemas()}
    return SitePages(site.pages, files, site.about, site.binders)
