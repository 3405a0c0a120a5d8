"""Sentences as markup: words escaped, emphasis, and each reference replaced by its figure."""

from functools import lru_cache
from typing import NamedTuple

from ..core.book import Book
from ..core.figure import Citation
from ..core.sentence import Emphasis, Sentence, Words
from . import words
from .address import source_url
from .fill_template import Markup, escape, part
from .lookup import Lookup

_EM = Markup("<em>{}</em>")


@lru_cache(maxsize=65536)
def _escaped(text: str) -> Markup:
    return escape(text)


class Prose:
    """Turns the sentences of one procedure into markup. `linked` makes figures links to where they are explained;
    `only` are the variants that a step is for, where it is not for all."""

    def __init__(self, lookup: Lookup, linked: bool, variant: str | None = None, only: frozenset[str] = frozenset()):
        self.lookup, self.linked, self.variant, self.only = lookup, linked, variant, only

    def for_only(self, variants: frozenset[str]) -> "Prose":
        return Prose(self.lookup, self.linked, self.variant, variants)

    def narrowed(self, cases: tuple) -> tuple:
        """A step for some variants says nothing of the others."""
        return tuple(told for told in cases if self.only & set(told.variants.split())) or cases

    def __call__(self, sentence: Sentence | None) -> Markup | None:
        if sentence is None:
            return None
        if len(sentence.parts) == 1 and isinstance(sentence.parts[0], Words):
            return _escaped(sentence.text)
        return Markup("").join(self._part(piece) for piece in sentence.parts)

    def all(self, sentences) -> tuple[Markup, ...]:
        return tuple(self(sentence) for sentence in sentences)

    def _part(self, piece) -> Markup:
        if isinstance(piece, Words):
            return _escaped(piece.text)
        if isinstance(piece, Emphasis):
            return _EM.format(piece.text)
        view = self.lookup.reference(piece, self.variant)
        return part("figure")(view._replace(cases=self.narrowed(view.cases)), self.linked) if view else _escaped(f"{{{piece}}}")


def plain(sentence: Sentence | None) -> Markup | None:
    """A sentence that stands where no figure can be looked up: references stay as written."""
    if sentence is None:
        return None
    return Markup("").join(_EM.format(p.text) if isinstance(p, Emphasis) else
                           _escaped(p.text if isinstance(p, Words) else f"{{{p}}}") for p in sentence.parts)


class Cited(NamedTuple):
    """A citation ready to print: whose (`standing`, and in words), which source, where in it, its page."""

    standing: str
    whose: str
    title: str
    where: str
    href: str


def cited(book: Book, citation: Citation | None, root: str = "") -> Cited | None:
    if citation is None:
        return None
    source = book.sources.get(citation.source)
    standing = source.standing if source else "computed"
    return Cited(standing, words.STANDING[standing], source.title if source else citation.source, citation.where,
                 root + source_url(citation.source))
