"""A caution says what the hazard is, what it does and how to avoid it; without the last it only frightens.

right:
    avoid: Set up the guard and stand aside.
wrong:
    avoid: none
"""

from typing import Iterator

from ..core.book import Book
from ..core.finding import Finding

ID = "caution-incomplete"


def check(book: Book, derived) -> Iterator[Finding]:
    for caution in book.cautions.values():
        if not caution.avoid or any(sentence.text == "none" for sentence in caution.avoid):
            yield Finding(caution.place, ID, f"the caution {caution.id} does not say how to avoid the hazard",
                          "write under 'avoid:' what to do, such as: Stand clear")
        for key, sentence in (("hazard", caution.hazard), ("consequence", caution.consequence)):
            if sentence.text == "none":
                yield Finding(caution.place, ID, f"the caution {caution.id} has no {key}",
                              f"write the {key}, or take the caution away")
