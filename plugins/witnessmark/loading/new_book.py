"""The files of a first book, which `witnessmark new` lays down: those beside this package, under the names they bear in a book.

Here a name that a book hides, such as .github, begins with `dot-`: what builds packages leaves hidden files out in silence.
"""

from pathlib import Path

_HERE = Path(__file__).parent.parent / "new_book"


def new_book_files() -> dict[str, str]:
    """Text by path from the book's folder; the schemas, which are made and not kept, are not among them."""
    return {_in_book(file.relative_to(_HERE).as_posix()): file.read_text(encoding="utf-8") for file in sorted(_HERE.rglob("*")) if file.is_file()}


def _in_book(name: str) -> str:
    return "/".join(f".{part.removeprefix('dot-')}" if part.startswith("dot-") else part for part in name.split("/"))
