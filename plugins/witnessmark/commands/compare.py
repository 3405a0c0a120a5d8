"""`witnessmark compare`: what one book says otherwise than another."""

import os
import sys
from pathlib import Path

from ..build import check_at, compared
from ..changes.data import as_data
from ..changes.lines import as_lines
from ..changes.markdown import as_markdown
from ..loading.revisions import Revision, RevisionProblem
from ..loading.source_files import is_book
from ..prove import Checked, check


def run(chosen) -> int:
    """Ends with 1 where this must not be taken over as it is: a stop without its correction, or a finding."""
    try:
        old = _side(chosen.old, chosen.book)
        new = _side(chosen.new, chosen.book) if chosen.new else _as_it_stands(chosen.book)
        if not new[1].texts:
            raise RevisionProblem(f"there is no book at {new[0]}: neither procedures/ nor site_data/ holds a source")
    except RevisionProblem as problem:
        print(f"witnessmark: {problem}", file=sys.stderr)
        return 2
    comparison = compared(old, new)
    print({"text": as_lines, "markdown": as_markdown, "json": as_data}[chosen.format](comparison).rstrip("\n"))
    return 0 if comparison.passes else 1


def _side(name: str, book: Path) -> tuple[str, Checked]:
    """A folder that holds a book, or a revision. A name that is both is refused: whoever sends a change could lay a book called
    `main` in the way of the branch, and be compared with what they like."""
    try:
        revision = Revision(str(book), name, dict(os.environ))
    except RevisionProblem:
        if is_book(Path(name)):
            return _as_it_stands(Path(name))
        raise
    if is_book(Path(name)):
        raise RevisionProblem(f"'{name}' is both a folder and a revision: write ./{name} for the folder, or give one of them another name")
    return f"{name} ({revision.commit[:10]})", check_at(revision)


def _as_it_stands(book: Path) -> tuple[str, Checked]:
    if not is_book(book):
        raise RevisionProblem(f"'{book}' is no folder that holds a book")
    return str(book), check(book)
