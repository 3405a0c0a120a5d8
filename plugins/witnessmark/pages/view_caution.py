"""Cautions in four parts, ready to print."""

from typing import NamedTuple

from ..core.authority import Caution
from ..core.book import Book
from .address import caution_anchor
from .fill_template import Markup
from .prose import Cited, cited, plain


class CautionView(NamedTuple):
    """`word` is the signal word; a style of the same name only repeats what the word says."""

    id: str
    anchor: str
    word: str
    hazard: Markup
    consequence: Markup
    avoid: tuple[Markup, ...]
    source: Cited | None


def caution_view(book: Book, caution: Caution, root: str = "") -> CautionView:
    return CautionView(caution.id, caution_anchor(caution.id), caution.word, plain(caution.hazard), plain(caution.consequence),
                       tuple(plain(sentence) for sentence in caution.avoid), cited(book, caution.source, root))


def caution_views(book: Book, ids) -> tuple[CautionView, ...]:
    return tuple(caution_view(book, book.cautions[name]) for name in ids if name in book.cautions)
