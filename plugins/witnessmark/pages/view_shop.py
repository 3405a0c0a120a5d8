"""The pages of presses and sources, ready to print."""

from typing import NamedTuple

from ..core.authority import Source
from ..core.book import Book
from ..core.display import converted
from ..core.equipment import Press
from ..core.quantity import Quantity
from . import words
from .address import shop_anchor
from .book_index import Rest
from .fill_template import Markup
from .prose import Cited, cited, plain
from .view_step import Target


class GaugeView(NamedTuple):
    """`anchor` is where it is corrected, on the page for that; so for the press."""

    id: str
    anchor: str
    title: str
    facts: tuple[tuple[str, str], ...]
    notes: tuple[Markup, ...]


class PressView(NamedTuple):
    title: str
    anchor: str
    facts: tuple[tuple[str, str], ...]
    source: Cited | None
    notes: tuple[Markup, ...]
    gauges: tuple[GaugeView, ...]
    users: tuple[Target, ...]


class SourceView(NamedTuple):
    title: str
    facts: tuple[tuple[str, str | Markup], ...]
    rests: tuple[Rest, ...]


def press_view(book: Book, press: Press, users: tuple[Target, ...], root: str) -> PressView:
    facts = [(word, _both(quantity)) for word, quantity in (
        (words.AREA, press.area), (words.BORE, press.bore), (words.ROD, press.rod), (words.RATED_FORCE, press.rated_force),
        (words.RATED_PRESSURE, press.rated_pressure)) if quantity]
    if press.side:
        facts.append((words.SIDE, press.side))
    if press.draw_stud:
        stud = press.draw_stud
        reach = f", {words.ENGAGEMENT} {_both(stud.engagement)}" if stud.engagement else ""
        facts.append((words.DRAW_STUD, f"{stud.thread.text}, {words.YIELD} {_both(stud.yield_stress)}{reach}"))
    gauges = tuple(GaugeView(gauge.id, shop_anchor("press", f"{press.id}/{gauge.id}"), gauge.title, tuple((word, text) for word, text in (
        (words.FULL_SCALE, _both(gauge.full_scale)), (words.DIVISION, _both(gauge.division)), (words.ACCURACY, gauge.accuracy.typed()),
        (words.GAUGE_LIMIT, _both(gauge.limit) if gauge.limit else None),
        (words.CHECKED_ON, gauge.checked)) if text), tuple(map(plain, gauge.notes))) for gauge in press.gauges.values())
    return PressView(press.title, shop_anchor("press", press.id), tuple(facts), cited(book, press.source, root), tuple(map(plain, press.notes)), gauges, users)


def source_view(source: Source, rests: tuple[Rest, ...]) -> SourceView:
    facts = [(words.KIND, f"{source.kind} ({words.STANDING[source.standing]})"), (words.EDITION, source.edition), (words.DATE, source.date),
             (words.WEIGHT, plain(source.weight))]
    return SourceView(source.title, tuple((word, text) for word, text in facts if text), rests)


def _both(quantity: Quantity) -> str:
    other = converted(quantity, "found")
    return f"{quantity.typed()} ({other})" if other else quantity.typed()
