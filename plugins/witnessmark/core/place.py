"""Where in a source something stands."""

from typing import NamedTuple


class Place(NamedTuple):
    """A position in a source: path relative to the book, line and column counted from 1.

    A tuple, because a book of 1,000 procedures has a quarter of a million of them."""

    path: str
    line: int = 1
    column: int = 1

    def __str__(self) -> str:
        return f"{self.path}:{self.line}:{self.column}"
