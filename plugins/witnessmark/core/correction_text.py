"""The plain text in which a reader sends a correction: one `Name: value` a line, further lines of a value indented.

The page writes it, mail and paper carry it, `witnessmark correct` reads it. The names of its lines are part of that contract."""

from typing import NamedTuple

HEAD = "Correction for a Witnessmark book"
#: Filled in by the page; what the reader answers.
GIVEN = ("Book", "Procedure", "Spec", "Role", "Case", "Line", "Printed figure", "Sheet codes of the page")
ASKED = ("New figure and unit", "Condition", "Source and page, or how measured", "Serial", "What happened", "Sheet code on the paper", "By whom")
#: The lines of the slip that is filled in by hand: no file and no id is known there.
ON_PAPER = ("Procedure", "Case", "Spec", "Printed figure", *ASKED)
#: Between the figures that a page prints of one spec, where a text was begun for all of them.
SEVERAL = "; "
_LONGEST = 20_000


class CorrectionText(NamedTuple):
    """What the lines say, '' where a line is empty or missing."""

    values: dict[str, str]

    def __getitem__(self, name: str) -> str:
        return self.values.get(name, "")


def written(given: dict[str, str]) -> str:
    """The text with the questions open; a line break in a value cannot begin a line of its own."""
    lines = [HEAD, *(f"{name}: {_indented(given[name])}".rstrip() for name in GIVEN if given.get(name)), "", *(f"{name}:" for name in ASKED)]
    return "\n".join(lines) + "\n"


def read_correction(text: str) -> CorrectionText | None:
    """Each line by its name, the first of a name counts, without what a terminal would obey; None where the text holds neither procedure nor spec."""
    values: dict[str, list[str]] = {}
    open_line: list[str] = []
    for line in text[:_LONGEST].splitlines():
        line = line.lstrip("> ") if line.startswith(">") else line           # a mail that quotes
        name, colon, value = line.partition(":")
        if colon and name in (*GIVEN, *ASKED) and name not in values:
            open_line = values[name] = [value.strip()]
        elif open_line:
            open_line.append(line.strip())
    found = {name: "".join(filter(str.isprintable, " ".join(" ".join(lines).split()))) for name, lines in values.items()}
    return CorrectionText(found) if found.get("Procedure") or found.get("Spec") else None


def _indented(value: str) -> str:
    return "\n  ".join(value.splitlines())
