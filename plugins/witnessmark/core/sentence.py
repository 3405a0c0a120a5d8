"""A sentence of a source: plain words, a little emphasis, references to figures."""

import re
from dataclasses import dataclass

from .place import Place
from .thread import Thread, read_thread

_PART = re.compile(r"\{([^{}]*)\}|\*([^*\s](?:[^*]*[^*\s])?)\*")
_REFERENCE = re.compile(r"(?:(?P<owner>[\w-]+)/)?(?P<name>[\w-]+)(?:\.(?P<part>[\w][\w %-]*))?")


@dataclass(frozen=True, slots=True)
class Reference:
    """`{owner/name.part}`: a figure of this procedure, of another procedure, or of the machine.

    `part` is a role of a spec or an output of a computed result.
    """

    owner: str | None
    name: str
    part: str | None
    place: Place

    def __str__(self) -> str:
        return (f"{self.owner}/" if self.owner else "") + self.name + (f".{self.part}" if self.part else "")


@dataclass(frozen=True, slots=True)
class Words:
    text: str


@dataclass(frozen=True, slots=True)
class Emphasis:
    text: str


@dataclass(frozen=True, slots=True)
class Sentence:
    """`parts` in order: Words, Emphasis, Reference. `text` is what the author typed, on one line."""

    text: str
    parts: tuple[Words | Emphasis | Reference, ...]
    place: Place

    def references(self) -> tuple[Reference, ...]:
        return tuple([part for part in self.parts if type(part) is Reference])


def read_reference(text: str, place: Place) -> Reference | None:
    """The reference that `text` spells (no braces), or None when it spells none."""
    match = _REFERENCE.fullmatch(text.strip())
    return Reference(match["owner"], match["name"], match["part"], place) if match else None


def read_input_reference(text: str, place: Place) -> Reference | None:
    """The reference that an input of a result names; None for a quantity, a thread (M14x1.5 is spelled like one) or a name alone."""
    reference = read_reference(text, place) if text[:1].isalpha() and ("/" in text or "." in text) else None
    return None if reference is None or isinstance(read_thread(text), Thread) else reference


def read_sentence(text: str, place: Place) -> tuple[Sentence, tuple[str, ...]]:
    """The sentence, and the braces in it that hold no reference (a problem for the author)."""
    words = " ".join(text.split())
    if "{" not in words and "*" not in words:
        return Sentence(words, (Words(words),), place), ()
    parts: list = []
    bad: list[str] = []
    end = 0
    for match in _PART.finditer(words):
        if match.start() > end:
            parts.append(Words(words[end:match.start()]))
        end = match.end()
        if match[2] is not None:
            parts.append(Emphasis(match[2]))
            continue
        reference = read_reference(match[1], place)
        if reference is None:
            bad.append(match[0])
            parts.append(Words(match[0]))
        else:
            parts.append(reference)
    if end < len(words):
        parts.append(Words(words[end:]))
    known = set(bad)
    leftover = "".join(part.text for part in parts if isinstance(part, Words) and part.text not in known)
    bad += [brace for brace in "{}" if brace in leftover]
    return Sentence(words, tuple(parts), place), tuple(dict.fromkeys(bad))
