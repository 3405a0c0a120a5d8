"""`witnessmark edition`: each new sheet code, with what stands on the sheet, for the day when old paper is asked about."""

import sys
from datetime import date

from ..build import missing_editions, new_editions
from ..core.finding_formats import as_text
from ..loading.source_files import is_book
from ..prove import check


def run(chosen) -> int:
    """Nothing is written for a book with mistakes: paper would be known by them for ever."""
    if not is_book(chosen.book):
        print(f"witnessmark: {chosen.book} is no book: it has neither procedures/ nor site_data/", file=sys.stderr)
        return 2
    checked = check(chosen.book)
    if chosen.check or checked.errors:
        found = (*checked.findings, *missing_editions(checked)) if chosen.check else checked.findings
        print(as_text(found, len(checked.book.procedures), checked.left_out))
        return 1 if found else 0
    files = new_editions(checked, chosen.on or date.today().isoformat())
    for path, text in files.items():
        (chosen.book / path).parent.mkdir(parents=True, exist_ok=True)
        (chosen.book / path).write_text(text, encoding="utf-8", newline="\n")
        print(f"written: {path}")
    print("every sheet was in an edition already" if not files else f"{len(files)} file{'s' * (len(files) != 1)} to commit together with the sources")
    return 0
