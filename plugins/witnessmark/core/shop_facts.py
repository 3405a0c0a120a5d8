"""What a record of the shop says of a press, wrench or material, by the keys of its source."""

from collections.abc import Iterator
from dataclasses import fields

from .book import Book
from .equipment import Band, DrawStud
from .quantity import Quantity
from .thread import Thread

#: Field of Book -> how one of it is called, in the order in which a shop is shown.
SHELVES = {"presses": "press", "wrenches": "wrench", "adapters": "adapter", "scales": "scale", "surfaces": "surface", "materials": "material",
           "shim_stocks": "shim stock"}
_KEYS = {"limit": "range used", "yield_stress": "yield"}
_NOT_FACTS = ("id", "title")


def shop_facts(record) -> Iterator[tuple[str, str]]:
    """(key, value as typed) of each key that holds a number, a date or a plain word; sentences and sources are none."""
    for field in fields(record):
        key, held = _KEYS.get(field.name, field.name.replace("_", " ")), getattr(record, field.name)
        if field.name in _NOT_FACTS:
            continue
        match held:
            case Quantity():
                yield key, held.typed()
            case Thread():
                yield key, held.text
            case Band():
                yield key, str(held)
            case DrawStud():
                yield from ((f"{key} {name}", text) for name, text in shop_facts(held))
            case str() | int() if held and held is not True:
                yield key, str(held)
            case tuple() if held and isinstance(held[0], Quantity):
                yield key, ", ".join(quantity.typed() for quantity in held)


def thing_of(book: Book, shelf: str, name: str):
    """A record by its file's name and its id, `BP50`, or a gauge by `BP50/main`; None where there is none."""
    if shelf not in SHELVES:
        return None
    owner, _, gauge = name.partition("/")
    record = getattr(book, shelf).get(owner)
    return record.gauges.get(gauge) if record and gauge and shelf == "presses" else record if not gauge else None
