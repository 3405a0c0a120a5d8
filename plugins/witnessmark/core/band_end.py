"""One end of a result's band, by name and as text: `crank-advance.advance low` is 0.0180 in of '0.0227 in (0.0180 to 0.0269)'."""
from __future__ import annotations

import re

_BANDED = re.compile(r"(?P<likely>-?[\d,.]*\d)(?P<unit>[^()]*?) \((?P<low>\S+) to (?P<high>\S+)\)")
_WINDOW = re.compile(r"(?P<low>\S+) to (?P<high>\S+)(?P<unit> [^,]*|)")


def end_named(name: str) -> tuple[str, str]:
    """'advance low' to ('advance', 'low'); the second is '' for a name that asks for no end of a band."""
    whole, _, which = name.rpartition(" ")
    return (whole, which) if which in ("low", "high") and whole else (name, "")


def end_text(text: str, which: str) -> str:
    """The 'low' or 'high' end of a band or a window, or the 'likely' of a band, with its unit; one number stays as it is."""
    return (_BANDED if "(" in text else _WINDOW).sub(lambda found: found[which] + found["unit"], text)
