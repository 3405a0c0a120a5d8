"""Where the data of presses, gauges, wrenches, surfaces and materials is corrected: press cards and results rest on it."""

from collections.abc import Iterator

from ..core.book import Book
from ..core.dependency import resting_of
from ..core.shop_facts import SHELVES, shop_facts
from . import words_correct
from .address import SHOP_CORRECT_URL, shop_anchor
from .book_index import BookIndex
from .forge_links import Forge
from .to_correct import Asking, CorrectView, ToCorrect, moved, not_too_many


def shop_view(book: Book, index: BookIndex, root: str, book_id: str, forge: Forge | None, mail: str) -> CorrectView:
    ask = Asking(forge, {"Book": book_id})
    specs = tuple(_thing(book, index, ask, shelf, name, record, root) for shelf in SHELVES for name, record in _things(book, shelf))
    return CorrectView(words_correct.SHOP, f"{root}press/", specs, None, (), ask.data(root, SHOP_CORRECT_URL.removesuffix("correct/"), mail))


def _things(book: Book, shelf: str) -> Iterator[tuple[str, object]]:
    """Each record by its id; a press is followed by its gauges, as `BP50/main`."""
    for name, record in getattr(book, shelf).items():
        yield name, record
        yield from ((f"{name}/{gauge.id}", gauge) for gauge in (record.gauges.values() if shelf == "presses" else ()))


def _thing(book: Book, index: BookIndex, ask: Asking, shelf: str, name: str, record, root: str) -> ToCorrect:
    anchor, home = shop_anchor(SHELVES[shelf], name), f"site_data/{shelf}"
    owner = name.partition("/")[0]
    label = record.title if owner == name else f"{book.presses[owner].title}, {record.title}"
    lines = tuple(ask.line(f"{anchor}.{number}", record.place, key, key, "", text) for number, (key, text) in enumerate(shop_facts(record), 1))
    address = f"{SHELVES[shelf].split()[-1]}/{name}"
    users = [address] if owner != name or shelf != "presses" else [f"{address}/{gauge}" for gauge in record.gauges]
    in_all, moves = not_too_many(tuple(dict.fromkeys(target for user in users for target in moved(book, None, resting_of(index.resting, user), root))))
    return ToCorrect(anchor, home, name, label, lines, ask.issue(home, name, label, record.place), in_all, moves, brief=True)
