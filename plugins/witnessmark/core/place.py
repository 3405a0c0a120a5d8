"""Where in a source something stands."""

from dataclasses import dataclass


@dataclass(frozen=True, order=True, slots=True)
class Place:
    """A position in a source: path relative to the book, line and column counted from 1."""

    path: str
    line: int = 1
    column: int = 1

    def __str__(self) -> str:
        return f"{self.path}:{self.line}:{self.column}"
