"""`witnessmark correct`: the line to change for a correction that a reader sent as plain text."""

import sys

from ..changes.from_text import answer_to
from ..core.correction_text import read_correction
from ..loading.source_files import is_book
from ..prove import check


def run(chosen) -> int:
    """Ends with 1 where the text cannot be taken over as it is."""
    text = chosen.text.read_text(encoding="utf-8", errors="replace") if chosen.text.is_file() else ""
    if (told := read_correction(text)) is None or not is_book(chosen.book):
        print(f"witnessmark: {chosen.text} tells no figure, or {chosen.book} is no book", file=sys.stderr)
        return 2
    checked = check(chosen.book)
    answer = answer_to(told, checked.book, checked.texts)
    print("\n".join(answer.lines))
    return 0 if answer.sure else 1
