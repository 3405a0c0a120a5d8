"""Who says so, where they disagree, what was corrected, and what can hurt you."""

from dataclasses import dataclass

from .figure import Citation
from .place import Place
from .sentence import Reference, Sentence

#: kind of source -> standing shown beside a figure ("whose figure")
STANDING = {"factory": "factory", "field": "field", "field rule": "field", "shop": "shop",
            "standard": "standard", "computed": "computed"}
SIGNAL_WORDS = ("DANGER", "WARNING", "CAUTION", "NOTICE")
IF_ALREADY_DONE = ("fine", "inspect", "redo")


@dataclass(frozen=True, slots=True)
class Source:
    id: str
    title: str
    kind: str
    edition: str | None
    weight: Sentence | None
    date: str | None
    place: Place

    @property
    def standing(self) -> str:
        return STANDING[self.kind]


@dataclass(frozen=True, slots=True)
class Caution:
    """A caution in the four parts of ANSI Z535.6. `word` is one of SIGNAL_WORDS; NOTICE is damage only."""

    id: str
    word: str
    hazard: Sentence
    consequence: Sentence
    avoid: tuple[Sentence, ...]
    source: Citation | None
    place: Place


@dataclass(frozen=True, slots=True)
class Side:
    says: Sentence
    source: Citation | None


@dataclass(frozen=True, slots=True)
class Conflict:
    """Authorities that disagree about one spec: each side kept, and which one the sheet prints and why."""

    id: str
    about: Reference
    printed: Sentence
    why: Sentence
    sides: tuple[Side, ...]
    real: bool
    place: Place


@dataclass(frozen=True, slots=True)
class Correction:
    """A dated record of why figures changed, and what it means for work already done."""

    id: str
    on: str
    about: tuple[Reference, ...]
    old: Sentence
    new: Sentence
    reason: Sentence
    evidence: Sentence | None
    by: str | None
    sources: tuple[Citation, ...]
    if_already_done: str
    touches: Sentence | None
    place: Place
