"""`witnessmark check`: every mistake of a book, with its line and what to write instead."""

import sys

from ..core.finding_formats import as_annotations, as_json, as_text
from ..loading.source_files import is_book
from ..prove import check, uncollected


@uncollected()                          # until the book is let go of, or all of it would be walked for cycles once
def run(chosen) -> int:
    if not is_book(chosen.book):
        print(f"witnessmark: {chosen.book} is no book: it has neither procedures/ nor site_data/", file=sys.stderr)
        return 2
    checked = check(chosen.book)
    if chosen.format == "json":
        print(as_json(checked.findings))
    elif chosen.format == "annotations":
        print(as_annotations(checked.findings), end="\n" * bool(checked.findings))
    else:
        print(as_text(checked.findings, len(checked.book.procedures), checked.left_out))
    return 1 if checked.findings else 0
