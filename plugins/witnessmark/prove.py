"""The first half of the pipeline: sources -> Book -> derived figures -> findings. Nothing here knows a page, so that a book is proved without them."""

import gc
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path

from .core.book import Book
from .core.derived import Derived
from .core.every_picture import pictures_of_book
from .core.finding import ERROR, Finding
from .core.memory import FORGETFUL, Memory
from .core.picture import PictureFile
from .core.resting import Resting
from .core.rests_on import ANYTHING, RestsOn, rests_on
from .loading.load_book import FOLDERS, UNREAD, load_book
from .loading.slips import CUT
from .loading.source_files import EDITIONS as ISSUED, Beside, SourceFile, beside_sources, picture_file, yaml_sources
from .loading.stray_files import pictures_of_pages, stray_findings
from .rules.table import check_book
from .workings.derive import derive_machine, derive_procedure, joined

#: Sources that are read by one machine's pages alone; editions by none but the page that is asked by an old code.
_OF_ONE_MACHINE = ("procedures/", "site_data/machines/", f"{ISSUED}/")


@dataclass(frozen=True)
class Checked:
    """A book, what was worked out from it, and everything wrong with it in the order of places."""

    book: Book
    derived: dict[tuple[str, str], Derived]
    findings: tuple[Finding, ...]
    left_out: int = 0                   # findings not told, because they rest on what could not be read
    texts: dict[str, str] = field(default_factory=dict)         # the sources by path, and the digests of pictures
    rests: RestsOn = ANYTHING           # on what its figures and pages rest, where a memory asks

    @property
    def errors(self) -> int:
        return sum(finding.severity == ERROR for finding in self.findings)


def check(folder: Path, memory: Memory = FORGETFUL) -> Checked:
    """Reads and proves the book in `folder`; nothing is rendered. What `memory` holds of an earlier check is not worked out again."""
    return proved(yaml_sources(folder, FOLDERS), beside_sources(folder), partial(picture_file, folder), memory)


@contextmanager
def uncollected() -> Iterator[None]:
    """Records and views hold no cycles: looking for some took a fifth of the time, and the first look afterwards as much again."""
    collected = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if collected:
            gc.freeze()
            gc.enable()


@uncollected()
def proved(files: list[SourceFile], beside: Beside, picture_of: Callable[[str], PictureFile], memory: Memory = FORGETFUL) -> Checked:
    """Proves a book from its sources, what lies beside them, and what is known of a picture by its path."""
    book, findings = load_book(files, memory)
    pages, others = beside
    by_page = pictures_of_pages(pages)
    named = {picture.path for picture in pictures_of_book(book)} | by_page.intersection(others)
    book.pictures.update({path: picture_of(path) for path in sorted(named)})
    findings += stray_findings(pages, others, by_page, book.pictures)
    rests = rests_on(book, ([file for file in files if not file.path.startswith(_OF_ONE_MACHINE)], book.pictures), memory)
    derived, worked_findings = joined(_derived(book, rests, memory))
    cut = {_line(finding) for finding in findings if finding.rule == CUT}          # half a figure is there misread, or missing
    slips = {finding for finding in findings if finding.rule != "unknown-reference" and not (finding.rule == "quantity" and _line(finding) in cut)}
    others = {*findings, *worked_findings, *check_book(book, derived)} - slips
    unread = Resting(book, findings)
    # Names that stand in a file nobody could read are not the mistakes of those who use them: first things first.
    told = set() if any(slip.rule in UNREAD for slip in slips) else {finding for finding in others if not unread(finding)}
    misnamed = {_line(finding) for finding in told if finding.rule == "unknown-reference"}
    told -= {finding for finding in told if _line(finding) in (cut if finding.rule == "quantity" else cut | misnamed if finding.rule == "no-figure" else ())}
    texts = {**{file.path: file.text for file in files}, **{path: picture.digest or "" for path, picture in book.pictures.items()}}
    return Checked(book, derived, tuple(sorted(slips | told)), len(others) - len(told), texts, rests)


def _line(finding: Finding) -> tuple[str, int]:
    return finding.place[:2]


def _derived(book: Book, rests: RestsOn, memory: Memory) -> Iterator[tuple[dict[tuple[str, str], Derived], list[Finding]]]:
    """Machine by machine; what is held of a procedure's figures is not worked out again."""
    for machine, names in book.procedure_ids.items():
        yield memory.of(("derived", machine), rests.machine(machine)[:2], partial(derive_machine, book, machine))
        for name in names:
            key = machine, name
            yield memory.of(("derived", key), rests.figures(key), partial(derive_procedure, book, key))
