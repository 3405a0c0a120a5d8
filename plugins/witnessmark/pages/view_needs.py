"""What must lie ready: presses, tools, supplies and parts, each list with an explicit none."""

from typing import Iterator, NamedTuple

from ..core.book import Book
from ..core.every_picture import picture_of_need
from ..core.procedure import Need, Procedure
from . import words
from .address import press_url
from .fill_template import Markup
from .prose import Prose, plain
from .view_picture import PictureView, picture_view
from .view_spec import wrench_text


class NeedView(NamedTuple):
    """One line: how many, what, what is to be known of it."""

    name: str
    href: str
    quantity: str
    about: tuple[str, ...]
    note: Markup | None
    picture: PictureView | None
    lines: tuple[Markup | str, ...] = ()


class NeedList(NamedTuple):
    heading: str
    lines: tuple[NeedView, ...]


def need_lists(book: Book, procedure: Procedure, prose: Prose, root: str) -> tuple[NeedList, ...]:
    needs = procedure.needs
    presses = tuple(_press(book, need, root) for need in needs.presses or ())
    return (NeedList(words.NEED["presses"], presses),
            *(NeedList(words.NEED[name], tuple(_need(book, need, prose, root) for need in getattr(needs, name) or ()))
              for name in ("tools", "supplies", "parts")))


def _press(book: Book, need, root: str) -> NeedView:
    press = book.presses.get(need.press)
    gauge = press.gauges.get(need.gauge) if press else None
    return NeedView(press.title if press else need.press, root + press_url(need.press), "",
                    (gauge.title if gauge else need.gauge,), None, None)


def _need(book: Book, need: Need, prose: Prose, root: str) -> NeedView:
    about = [text for text in (words.COUNTED.get(need.counted or ""), need.number, words.FATE.get(need.fate or ""),
                               words.ONE_USE if need.one_use and need.fate != "one-use" else None) if text]
    return NeedView(need_name(book, need), "", need.count or "", tuple(about), prose(need.note),
                    picture_view(book, picture_of_need(book, need), root), tuple(_made(book, need)))


def _made(book: Book, need: Need) -> Iterator[Markup | str]:
    """What about a tool of the shop's own must be right, and where its drawing is."""
    tool = book.made_tools.get(need.name) if need.sort == "made" else None
    if tool:
        yield from map(plain, tool.features)
        if tool.drawing:
            yield f"{words.DRAWING}: {tool.drawing}"


def need_name(book: Book, need: Need) -> str:
    if need.sort == "wrench":
        return wrench_text(book, need.name, need.adapter)
    known = {"scale": book.scales, "made": book.made_tools}.get(need.sort, {}).get(need.name)
    return known.title if known else need.name


def counted_in(book: Book, procedure: Procedure) -> tuple[NeedView, ...]:
    """What is counted in again when the work is done: the last boxes of a sheet."""
    needs = (*procedure.needs.tools, *procedure.needs.supplies, *procedure.needs.parts)
    return tuple(NeedView(need_name(book, need), "", need.count or "", (), None, None) for need in needs if need.counted in ("in", "out and in"))
