"""A figure is named in braces: without them its name is printed, and no figure.

right:
    do: Press to {press-force.target}.
wrong:
    do: Press to (press-force.target).
    do: Press to [press-force].
"""

import re
from typing import Iterator

from ..core.book import Book
from ..core.every_sentence import sentences_of_procedure
from ..core.figure import ROLES
from ..core.finding import Finding
from ..core.procedure import Procedure
from ..core.sentence import Sentence, Words

ID = "reference-without-braces"
_NAMED = re.compile(r"(?<![\w/.{-])([\w-]+)\.([a-z][\w-]*)|\[([\w-]+)\]")


def check(book: Book, derived) -> Iterator[Finding]:
    for key, procedure in book.procedures.items():
        if _may_name_one(book.words[key], procedure):
            for sentence in sentences_of_procedure(procedure):
                yield from _named(procedure, sentence)


def _may_name_one(words: str, procedure: Procedure) -> bool:
    """False for most procedures, sooner than the pattern says it of each sentence. `words` are in small letters."""
    names = [name.casefold() for name in (*procedure.specs, *procedure.computed)]
    return "[" in words or any([_stands_bare(words, f"{name}.") for name in names])


def _stands_bare(words: str, named: str) -> bool:
    at = words.find(named)
    while at >= 0 and words[max(at - 1, 0):at] in ("{", "/", "-"):
        at = words.find(named, at + 1)
    return at >= 0


def _named(procedure: Procedure, sentence: Sentence) -> Iterator[Finding]:
    for part in sentence.parts:
        for match in _NAMED.finditer(part.text) if type(part) is Words else ():
            name = match[1] or match[3]
            if name in procedure.computed or (name in procedure.specs and (match[3] or match[2] in ROLES)):
                found = match[0].strip("[]")
                yield Finding(sentence.place, ID, f"'{found}' is printed here as a word, and not as a figure", f"write it in braces: {{{found}}}")
