"""'Snug' is another torque in every hand: a tightness is a figure, or a thing that can be seen and checked.

right:
    do: Tighten the cover bolts to {cover-bolts}.
wrong:
    do: Snug the cover bolts down.
"""

import re
from typing import Iterator

from ..core.book import Book
from ..core.finding import Finding
from ..core.sentence import Reference

ID = "tight-without-figure"
#: 'Finger-tight' is not here: it says how far a nut is run down before its torque, or how it is left with a tag.
_VAGUE = re.compile(r"\b(?:snug(?:ly|ged)?|hand[- ]tight(?:en(?:ed)?)?|good and tight|tight enough|nice and tight|"
                    r"(?:to|per|within) (?:the )?(?:maker's |factory |manufacturer's )?spec(?:s|ification|ifications)?)\b",
                    re.IGNORECASE)
#: A quick look first: most procedures have none of them. Each is part of all that the pattern may find.
_HINTS = ("snug", "hand-tight", "hand tight", "and tight", "tight enough", " spec")
_DIGIT = re.compile(r"\d")


def check(book: Book, derived) -> Iterator[Finding]:
    for key, procedure in book.procedures.items():
        if not any(hint in book.words[key] for hint in _HINTS):
            continue
        for step in procedure.steps:
            for sentence in (step.do, step.check, step.hold_point):
                vague = sentence and _VAGUE.search(sentence.text)
                if vague and not _DIGIT.search(sentence.text) and not any(isinstance(p, Reference) for p in sentence.parts):
                    yield Finding(sentence.place, ID, f"'{vague[0]}' is no figure",
                                  "write the spec in braces, such as {cover-bolts}, or a number with its unit")
