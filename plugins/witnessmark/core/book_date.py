"""The date a book may be told by: the newest that its sources name. No clock: the same sources have the same date."""

from .book import Book


def book_date(book: Book) -> str:
    """YYYY-MM-DD of the newest correction, edition or trial on a machine; empty where the sources name none."""
    tried = (procedure.tried.on for procedure in book.procedures.values() if procedure.tried.on)
    issued = (edition.on for editions in book.editions.values() for edition in editions)
    return max((*(correction.on for correction in book.corrections.values()), *tried, *issued), default="")
