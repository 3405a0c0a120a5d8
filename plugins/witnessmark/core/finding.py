"""What is wrong with a source, said so that its author can act on it."""

from dataclasses import dataclass
from difflib import get_close_matches
from typing import Iterable

from .place import Place

ERROR = "error"
WARNING = "warning"
LONGEST = 400


@dataclass(frozen=True, order=True, slots=True)
class Finding:
    """One mistake at one place. `mend` tells what to write instead; `rule` names the rule it breaks."""

    place: Place
    rule: str
    message: str
    mend: str
    severity: str = ERROR

    def __post_init__(self):
        for part in ("message", "mend"):                 # they quote the author, who may have written a million digits
            text = getattr(self, part)
            if len(text) > LONGEST:
                object.__setattr__(self, part, f"{text[:LONGEST // 2]} ... {text[-LONGEST // 4:]}")

    def line(self) -> str:
        """`path:line:col: severity: message, what to write instead [rule]`."""
        said = f"{self.message}, {self.mend}"
        if "\n" in said:                                 # a name may be quoted that the author wrote over two lines
            said = " ".join(said.split())
        return f"{self.place}: {self.severity}: {said} [{self.rule}]"


def close_to(word: str, known: Iterable[str]) -> set[str]:
    """The known word that this one may be a slip for, alone in a set; none where nothing is near."""
    names = sorted(known)
    alike = [name for name in names if name.casefold() == word.casefold()]      # capitals are the commonest slip
    return set(alike[:1] or get_close_matches(word[:80], names, n=1, cutoff=0.6))


def nearest(word: str, known: Iterable[str], most: int = 6) -> str:
    """The part of a sentence that helps after an unknown word: the nearest known one, or the list of them."""
    names = sorted(known)
    for close in close_to(word, names):
        return f"did you mean '{close}'?"
    if not names:
        return "none is defined yet"
    listed = ", ".join(names[:most]) + (", ..." if len(names) > most else "")
    return f"use one of: {listed}"
