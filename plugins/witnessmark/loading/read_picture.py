"""Reads the picture of a step, part, tool or made tool."""

from ..core.picture import Picture
from .scalars import Text
from .shape import Fields, Record

PICTURE = Fields("a picture", {"file": Text(), "shows": Text()}, ("file", "shows"))


def read_picture(record: Record) -> Picture | None:
    """The picture under the key `picture` of a record, with what it lacks left empty (reported)."""
    found = record.get("picture")
    return Picture(found.get("file", ""), found.get("shows", ""), found.place) if found else None
