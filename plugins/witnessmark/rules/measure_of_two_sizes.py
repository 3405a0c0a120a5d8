"""A ton, a gallon, a quart, a pint and a mil each have two sizes or more: in a step, too, the word says which.

right:
    check: The gauge stands at 18 long tons.
wrong:
    check: The gauge stands at 18 tons.
"""

import re
from typing import Iterator

from ..core.book import Book
from ..core.finding import Finding
from ..core.units import AMBIGUOUS

ID = "measure-of-two-sizes"
_WORDS = sorted((word.replace("·", " ") for word in AMBIGUOUS if len(word) > 2), key=len, reverse=True)
#: A quick look first: with these each of the words begins.
_BEGIN = ("ton", "pint", "pts", "quart", "qts", "gal", "fl oz", "floz", "fluid", "mil")
_BARE = re.compile(rf"[0-9] ({'|'.join(map(re.escape, _WORDS))})\b", re.IGNORECASE)


def check(book: Book, derived) -> Iterator[Finding]:
    for key, procedure in book.procedures.items():
        words = book.words[key]
        if not (any([digit in words for digit in "0123456789"]) and any([f" {word}" in words for word in _BEGIN])):
            continue
        for step in procedure.steps:                     # what is acted on: a note may quote an old book word for word
            for sentence in (step.do, step.check, step.if_outside, step.hold_point):
                if sentence and (bare := _BARE.search(sentence.text)):
                    yield Finding(sentence.place, ID, f"'{bare[1]}' could be more than one size",
                                  f"write {AMBIGUOUS[bare[1].casefold().replace(' ', '·')]}")
