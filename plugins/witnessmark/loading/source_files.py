"""Opens files: the only module that does. Everything else is given text and names."""

import os
import re
from dataclasses import dataclass
from pathlib import Path

MOST_BYTES = 1_000_000

#: Invisible or direction-changing characters that make a line read otherwise than it is.
_DECEIVING = re.compile("[\0\u200b-\u200f\u202a-\u202e\u2060\u2066-\u2069\ufeff]")


@dataclass(frozen=True, slots=True)
class SourceFile:
    """A source of the book: its path relative to the book, and its text, or why it cannot be read."""

    path: str
    text: str
    problem: tuple[str, str, int] | None = None       # message, mend, line


def yaml_sources(book: Path, folders: tuple[str, ...]) -> list[SourceFile]:
    """Every .yaml file below the named folders, in the order of their paths; links are not followed out."""
    root = book.resolve()
    found = []
    for folder in folders:
        for path, below, names in os.walk(root / folder):
            below.sort()
            for name in sorted(names):
                if name.endswith((".yaml", ".yml")):
                    found.append(_read(root, Path(path) / name))
    return found


def _read(root: Path, path: Path) -> SourceFile:
    shown = path.relative_to(root).as_posix()
    if not path.resolve().is_relative_to(root):
        return SourceFile(shown, "", ("this file is a link that leaves the book", "put the file itself here", 1))
    try:
        with open(path, "rb") as file:
            data = file.read(MOST_BYTES + 1)
    except OSError as error:
        return SourceFile(shown, "", (f"the file cannot be opened: {error.strerror}", "check its name and rights", 1))
    if len(data) > MOST_BYTES:
        return SourceFile(shown, "", ("the file is over 1 MB", "split it into several procedures", 1))
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as error:
        return SourceFile(shown, "", ("a character here is not UTF-8", "save the file as UTF-8 in your editor",
                                      data.count(b"\n", 0, error.start) + 1))
    return SourceFile(shown, text, _deceiving(text))


def _deceiving(text: str) -> tuple[str, str, int] | None:
    match = _DECEIVING.search(text)
    if match is None:
        return None
    line = text.count("\n", 0, match.start()) + 1
    if match[0] == "\0":
        return "a NUL character stands here", "delete it; the file may be damaged or not a text file", line
    return (f"an invisible character (U+{ord(match[0]):04X}) stands here",
            "delete it: it makes the line read otherwise than it is", line)


def is_book(book: Path) -> bool:
    """True where the folder holds procedures or site_data."""
    return (book / "procedures").is_dir() or (book / "site_data").is_dir()
