"""A picture ready to print."""

from typing import NamedTuple

from ..core.book import Book
from ..core.picture import Picture, PictureFile
from .address import picture_url


class PictureView(NamedTuple):
    """`width` and `height` keep its room on the page before it has come; 0 where they are not known."""

    src: str
    shows: str
    width: int
    height: int


def picture_view(book: Book, picture: Picture | None, root: str) -> PictureView | None:
    if picture is None:
        return None
    known = book.pictures.get(picture.path) or PictureFile()
    return PictureView(root + picture_url(picture.path), picture.shows, known.width, known.height)
