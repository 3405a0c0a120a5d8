"""What is named by an id instead of being given number by number: a tool, a material, a stock of shims.

    hub material: cast-steel   stands for   hub modulus, hub poisson, hub expansion, hub ultimate, hub ultimate is
    scale: scale-30            stands for   scale highest, scale division, scale accuracy
"""
from __future__ import annotations

from collections.abc import Mapping

from ..core.book import Book
from ..core.finding import nearest
from ..core.kinds import Problem
from ..core.quantity import Quantity
from ..core.working import Given, Working
from .tables.materials import MATERIALS

#: sort of thing -> id -> name of the input -> its text
Shelf = Mapping[str, Mapping[str, Mapping[str, str]]]

#: What the command line knows without a book.
PUBLISHED: Shelf = {"material": MATERIALS}


def shelf_of(book: Book) -> Shelf:
    """Everything of the shop that a working may be given by its id."""
    return {
        "material": {key: _typed({"modulus": each.modulus, "poisson": each.poisson, "ultimate": each.ultimate,
                                  "expansion": each.expansion and f"{each.expansion} ppm/°F",
                                  "ultimate is": "assumed" if each.assumed else "published"})
                     for key, each in book.materials.items()},
        "wrench": {key: _typed({"wrench lowest": each.lowest, "wrench highest": each.highest, "wrench graduation": each.graduation,
                                "wrench accuracy": each.accuracy, "wrench length": each.length})
                   for key, each in book.wrenches.items()},
        "adapter": {key: _typed({"adapter length": each.offset, "adapter angle": each.angle}) for key, each in book.adapters.items()},
        "scale": {key: _typed({"scale highest": each.highest, "scale division": each.division, "scale accuracy": each.accuracy})
                  for key, each in book.scales.items()},
        "stock": {key: {"stock": ", ".join(piece.typed() for piece in each.pieces), "most pieces": str(each.most_pieces)}
                  for key, each in book.shim_stocks.items()},
    }


def from_shelf(working: Working, texts: Mapping[str, str | Given], shelf: Shelf) -> tuple[dict[str, str | Given], list[Problem]]:
    """The inputs with every id replaced by what it stands for; what is given outright comes before what the id says."""
    declared = {each.name for each in working.inputs}
    found: dict[str, str | Given] = {}
    problems = []
    for name, text in texts.items():
        prefix, _, sort = name.rpartition(" ")
        records = shelf.get(sort)
        if records is None or (name in declared and text not in records):
            found[name] = text
        elif text not in records:
            problems.append(Problem(f"there is no {sort} '{text}'", nearest(str(text), records)))
        else:
            fields = {f"{prefix} {field}".strip(): value for field, value in records[text].items()}
            found.update({field: value for field, value in fields.items() if field in declared and field not in texts or field == name})
    return found, problems


def _typed(fields: Mapping[str, Quantity | str | None]) -> dict[str, str]:
    return {name: value.typed() if isinstance(value, Quantity) else value for name, value in fields.items() if value is not None}
