"""The second half of the pipeline: what was proved -> sheet codes, editions, comparisons, pages, files. `prove.py` is the first."""

from functools import cache, partial
from pathlib import Path
from urllib.parse import unquote

from .changes.bars import bars
from .changes.compare import Comparison, compare
from .changes.issue import issue, missing
from .changes.side import Side
from .changes.since import since_files
from .core.canonical import digest
from .core.edition import TOLD_IN
from .core.finding import Finding
from .core.memory import FORGETFUL, Memory
from .core.record import fingerprint, sheet_record
from .core.working import Outcome
from .loading.load_book import FOLDERS
from .loading.new_book import new_book_files
from .loading.revisions import Revision, RevisionProblem
from .loading.source_schemas import schema_files
from .loading.source_files import picture_bytes
from .pages.address import picture_url, procedure_url, sheet_url
from .pages.book_json import book_json, schema_json
from .pages.forge_links import Forge
from .pages.old_sheets import old_sheets
from .pages.pdf import Press
from .pages.search_entries import search_files
from .pages.site import Settings, SitePages, site_pages
from .pages.view_sheet import Paper
from .pages.view_working import ManualView, manual_view
from .prove import Checked, proved, uncollected
from .workings.explain import command
from .workings.read_inputs import run
from .workings.registry import WORKINGS
from .workings.tables.gauge_ranges import standard_gauges

#: What a formula is, in ten signs: a sheet does not outlive the formula behind its marks.
_FORMULAS = {working.id: digest([formula.text for formula in working.formula]) for working in WORKINGS.values()}


def check_at(revision: Revision) -> Checked:
    """Reads and proves the book as it stood at a revision."""
    return proved(revision.sources(FOLDERS), revision.beside(), revision.picture)


def codes(checked: Checked) -> dict[tuple[str, str, str], str]:
    """Sheet code by (machine, procedure, variant)."""
    return {sheet: fingerprint(record) for sheet, record in records(checked).items()}


def records(checked: Checked) -> dict[tuple[str, str, str], dict]:
    """All that is acted on by each sheet, by (machine, procedure, variant)."""
    return {sheet: found for sheet, (found, _) in _coded(checked, FORGETFUL).items()}


def _coded(checked: Checked, memory: Memory) -> dict[tuple[str, str, str], tuple[dict, str]]:
    """By (machine, procedure, variant) the record of a sheet and its code."""
    found = {}
    for key in checked.book.procedures:
        found |= memory.of(("records", key), checked.rests.pages(key), partial(_coded_of, checked, key))
    return found


def _coded_of(checked: Checked, key: tuple[str, str]) -> dict[tuple[str, str, str], tuple[dict, str]]:
    sheets = [(*key, variant) for variant in checked.derived[key].combinations]
    return {sheet: (found := record(checked, sheet), fingerprint(found)) for sheet in sheets}


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


@uncollected()
def render(checked: Checked, title: str, book_id: str, forge: Forge | None, paper: Paper = Paper(),
           mail: str = "", memory: Memory = FORGETFUL) -> SitePages:
    """Every page body and every finished file of the site. What `memory` holds of an earlier rendering is not set again."""
    coded = _coded(checked, memory)
    sheets, sheet_codes = ({sheet: both[part] for sheet, both in coded.items()} for part in (0, 1))
    since = since_files(checked.book, sheets, sheet_codes, procedure_url, sheet_url)
    settings = Settings(title, book_id, forge, WORKINGS, _manuals(), tuple(standard_gauges()), paper, mail,
                        old_sheets(since), bars(checked.book, sheets, sheet_codes))
    site = site_pages(checked.book, checked.derived, sheet_codes, settings, checked.rests, memory)
    files = {**site.files, **search_files(checked.book, checked.derived, checked.rests, memory),
             "book.json": book_json(checked.book, checked.derived, sheet_codes, checked.rests, memory), "book.schema.json": schema_json(),
             **since,
             f"{TOLD_IN}/editions.schema.json": schema_json("editions"), "schema/compare.schema.json": schema_json("compare"),
             **_source_schemas()}
    return SitePages(site.pages, files, site.about, site.binders)
