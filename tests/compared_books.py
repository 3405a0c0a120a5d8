"""The smallest book twice, one of them changed, and what a comparison says of the two."""

from small_book import PROCEDURE, sources

from witnessmark.build import compared
from witnessmark.prove import Checked, proved
from witnessmark.changes.compare import Comparison
from witnessmark.core.picture import PictureFile
from witnessmark.loading.source_files import SourceFile


def proved_book(procedure: str = PROCEDURE, extra: dict[str, str] | None = None, **changed: str) -> Checked:
    """The smallest book with its procedure or files of site_data replaced; `extra` are further files by path."""
    files = [*sources(procedure, **changed), *(SourceFile(path, text) for path, text in (extra or {}).items())]
    return proved(sorted(files, key=lambda file: file.path), ([], []), lambda path: PictureFile())


def comparison(new: str = PROCEDURE, old: str = PROCEDURE, extra: dict[str, str] | None = None, **changed: str) -> Comparison:
    """The smallest book against itself with another procedure, or other files in the new one."""
    return compared(("old", proved_book(old)), ("new", proved_book(new, extra, **changed)))


def replaced(old: str, new: str, text: str = PROCEDURE) -> str:
    assert text.count(old) == 1, (old, text.count(old))
    return text.replace(old, new)
