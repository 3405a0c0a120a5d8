"""`witnessmark sheets`: every sheet as PDF, a binder for each machine and one for each variant."""

import os
import re
import sys
from pathlib import Path

from ..build import paper_of, paper_press, render
from ..core.book import Book
from ..core.finding import nearest
from ..core.finding_formats import as_text
from ..core.variation import Serials
from ..loading.source_files import is_book
from ..pages.binding import how_many, only, printed
from ..pages.pdf import NoPdf
from ..prove import check


def run(chosen) -> int:
    """Nothing is printed of a book with errors: a sheet on a clipboard is believed."""
    if not is_book(chosen.book):
        print(f"witnessmark: {chosen.book} is no book: it has neither procedures/ nor site_data/", file=sys.stderr)
        return 2
    checked = check(chosen.book)
    if checked.errors:
        print(as_text(checked.findings, len(checked.book.procedures), checked.left_out))
        return 1
    front = {key: _front(chosen.book, key) for key in ("site_name", "site_url")}
    site = render(checked, front["site_name"], front["site_name"], None, paper_of(chosen.book, checked, front["site_url"], dict(os.environ)))
    if chosen.of:
        if (mine := _meant(chosen.of, checked.book)) is None:
            return 2
        site = only(site, *mine)
    try:
        press = paper_press(chosen.book, checked, site, chosen.paper)
        for done, one in enumerate(printed(site, press), 1):
            file = chosen.out / one.name
            file.parent.mkdir(parents=True, exist_ok=True)
            file.write_bytes(one.data)
            print(f"{done} of {how_many(site)}: {file}", flush=True)
    except NoPdf as problem:
        print(f"witnessmark: {problem}", file=sys.stderr)
        return 2
    except OSError as problem:
        print(f"witnessmark: {problem.filename} cannot be written: {problem.strerror}", file=sys.stderr)
        return 2
    return 0


def _meant(text: str, book: Book) -> tuple[str, str] | None:
    """(machine, variant) of `type-24`, `type-24/24-B` or `type-24/1604`; None, and said why, where there is no such thing."""
    machine, _, version = text.partition("/")
    if machine not in book.machines:
        print(f"witnessmark: there is no machine '{machine}', {nearest(machine, book.machines)}", file=sys.stderr)
        return None
    variants = book.machines[machine].main.variants
    serial = Serials(int(version), int(version)) if version.isdecimal() else None
    found = [name for name, one in variants.items() if version == name or (serial and one.serials and one.serials.covers(serial))]
    if version and not found:
        print(f"witnessmark: {machine} has no variant or serial '{version}', {nearest(version, variants)}", file=sys.stderr)
        return None
    return machine, found[0] if version else ""


def _front(book: Path, key: str) -> str:
    """A plain word of mkdocs.yml; '' where it is not there."""
    front = book / "mkdocs.yml"
    found = re.search(rf"^{key}:[ \t]*[\"']?(.*?)[\"']?[ \t]*$", front.read_text(encoding="utf-8"), re.MULTILINE) if front.is_file() else None
    return found[1] if found else ""
