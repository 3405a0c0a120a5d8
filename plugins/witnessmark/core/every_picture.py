"""Every picture that a book names."""

from typing import Iterator

from .book import Book
from .picture import Picture
from .procedure import Need


def pictures_of_book(book: Book) -> Iterator[Picture]:
    """Those of made tools, of needs and of steps, in the order of the records."""
    for tool in book.made_tools.values():
        if tool.picture:
            yield tool.picture
    for procedure in book.procedures.values():
        for holder in (*procedure.needs.tools, *procedure.needs.supplies, *procedure.needs.parts, *procedure.steps):
            if holder.picture:
                yield holder.picture


def picture_of_need(book: Book, need: Need) -> Picture | None:
    """Its own picture, or that of the made tool it names."""
    made = book.made_tools.get(need.name) if need.sort == "made" else None
    return need.picture or (made.picture if made else None)
