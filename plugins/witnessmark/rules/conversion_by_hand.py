"""Write a figure once, in the unit of its source: the page shows the other unit beside it, rounded to the safe side.

right:
    do: Press to 18 long ton.
wrong:
    do: Press to 18 long ton (179 kN).
"""

import re
from typing import Iterable, Iterator

from ..core.book import Book
from ..core.every_sentence import sentences_but_of_procedures, sentences_of_procedure
from ..core.finding import WARNING, Finding
from ..core.quantity import Quantity, read_quantity
from ..core.sentence import Sentence

ID = "conversion-by-hand"
_ONE = r"(?:\d{1,3}(?:,\d{3})+(?:\.\d+)?|(?:\d+-)?\d+/\d+|\d*\.?\d+)"
_NUMBER = rf"{_ONE}(?: to {_ONE})?"
_UNIT = r"[^\W\d_°][^\d\W]*[²³]?(?:[·/ -]?[^\W\d_]+[²³]?)?|°[CF]"
_PAIR = re.compile(rf"(?<![\d.,/-])({_NUMBER}) ?({_UNIT}) ?(?:\(|=|/|, or |or ) ?({_NUMBER}) ?({_UNIT})\)?")
_KINDS = ("press force", "torque", "length", "pressure", "temperature", "mass", "volume", "area", "stress", "spring rate", "road speed")
#: Two figures this close are one figure in two units, rounded by hand.
_CLOSE = 0.04


def check(book: Book, derived) -> Iterator[Finding]:
    yield from _pairs(sentences_but_of_procedures(book))
    for key, procedure in book.procedures.items():
        if _may_hold_figures(book.words[key]):
            yield from _pairs(sentences_of_procedure(procedure))


def _may_hold_figures(text: str) -> bool:
    """False for most texts, sooner than any pattern says it."""
    return any([digit in text for digit in "123456789"])


def _pairs(sentences: Iterable[Sentence]) -> Iterator[Finding]:
    for sentence in sentences:
        for pair in _PAIR.finditer(sentence.text) if _may_hold_figures(sentence.text) and ("(" in sentence.text or "=" in sentence.text or "or " in sentence.text \
                or "/" in sentence.text) else ():
            if _same(f"{pair[1]} {pair[2]}", f"{pair[3]} {pair[4]}"):
                yield Finding(sentence.place, ID, f"'{pair[0].strip()}' says one figure in two units",
                              f"write {pair[1]} {pair[2]} alone; give it as a spec and the page shows the other unit", WARNING)


def _same(one: str, other: str) -> bool:
    for kind in _KINDS:
        first, second = read_quantity(one, kind), read_quantity(other, kind)
        if isinstance(first, Quantity) and isinstance(second, Quantity) and first.unit != second.unit:
            a, b = first.si_low, second.si_low
            return abs(a - b) <= _CLOSE * max(abs(a), abs(b)) if kind != "temperature" else abs(a - b) < 1
    return False
