"""What lies in procedures/ beside the sources: pages written by hand, their pictures, and what nobody names."""

import posixpath
import re
from typing import Collection, Iterable, Iterator

from ..core.finding import ERROR, WARNING, Finding
from ..core.picture import PictureFile
from ..core.place import Place
from .source_files import SourceFile

RULE = "stray-file"
_PICTURE = re.compile(r"[\w%./ -]+\.(?:png|jpe?g|webp)\b", re.IGNORECASE)


def pictures_of_pages(pages: Iterable[SourceFile]) -> set[str]:
    """Paths, from the book, of the pictures that pages written by hand name."""
    found = set()
    for page in pages:
        for name in _PICTURE.findall(page.text):
            path = posixpath.normpath(posixpath.join(posixpath.dirname(page.path), name.strip().replace("%20", " ")))
            if path.startswith("procedures/"):
                found.add(path)
    return found


def stray_findings(pages: Iterable[SourceFile], others: Iterable[str], by_page: Collection[str],
                   pictures: dict[str, PictureFile]) -> Iterator[Finding]:
    """Pages that cannot be read, their pictures that cannot be shown, and files that do not come into the site."""
    for page in pages:
        if page.problem:
            yield Finding(Place(page.path, page.problem[2]), "unreadable", page.problem[0], page.problem[1])
    for path in others:
        known = pictures.get(path)
        if known is None:
            mend = "name it under 'picture:', or take it away" if _PICTURE.fullmatch(path) else \
                "take it away; a drawing is saved as PNG and named under 'picture:'"
            yield Finding(Place(path), RULE, "no source names this file, so the site does not hold it", mend, WARNING)
        elif known.problem and path in by_page:
            yield Finding(Place(path), RULE, f"a page shows this picture, but {known.problem[0]}", known.problem[1], ERROR)
