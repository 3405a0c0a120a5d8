"""The shop's shelves as data for book.json: presses, wrenches, surfaces, cautions and the rest, key by key.

Every field of a record goes out under its own name, so that a new field cannot be forgotten here."""

from dataclasses import fields, is_dataclass

from ..core.book import Book
from ..core.figure import Citation
from ..core.place import Place
from ..core.quantity import Quantity
from ..core.sentence import Sentence
from ..core.thread import Thread

SHELVES = ("presses", "wrenches", "adapters", "scales", "surfaces", "materials", "shim_stocks", "made_tools", "cautions")


def shelves(book: Book) -> dict[str, list]:
    """Shelf name -> its records in the order of their ids."""
    return {shelf.replace("_", " "): [_plain(record) for _, record in sorted(getattr(book, shelf).items())]
            for shelf in SHELVES}


def _plain(value):
    """Quantities and threads as typed, sentences as text, places as path:line:col, records as maps."""
    match value:
        case Quantity() | Thread() | Sentence():
            return value.text
        case Place():
            return str(value)
        case Citation():
            return {"source": value.source, "where": value.where}
        case dict():
            return [_plain(entry) for entry in value.values()]
        case tuple():
            return [_plain(entry) for entry in value]
    if is_dataclass(value):
        return {field.name.replace("_", " "): _plain(getattr(value, field.name)) for field in fields(value)}
    return value
