"""Press cards as they stand on paper: with the nameplate to compare, a drawn dial, and an empty card for any other press."""

from math import pi
from typing import NamedTuple

from ..core.display import shown
from ..core.equipment import Gauge, Press
from ..core.quantity import Quantity, read_quantity
from . import words
from .fill_template import Markup
from .lookup import Lookup, shown as of_figure
from .view_dial import Needle, dial, empty_dial
from .view_drawing import picture
from .view_press import Card, PressCards
from .view_spec import FigureRow, SpecView, places_of


#: What is not acted on at the press stays on the page.
_ON_THE_PAGE = (words.EXACT, words.STUD_TARGET, words.STUD_CEILING)


class PaperCard(NamedTuple):
    card: Card
    dial: Markup | None
    facts: tuple[tuple[str, str], ...]


class PaperPress(NamedTuple):
    """The cards of one spec on one press with one gauge; `plate` are the nameplate's figures, each with a blank to write one's own."""

    cards: PressCards
    plate: tuple[tuple[str, str], ...]
    own: tuple[PaperCard, ...]
    places: tuple[str, ...]


class EmptyCard(NamedTuple):
    """A card for a press that is not in the book: the force, and blanks. `condition` as on the sheet."""

    spec: str
    label: str
    condition: str
    rows: tuple[FigureRow, ...]
    dial: Markup | None
    places: tuple[str, ...]


def paper_presses(lookup: Lookup, cards: tuple[PressCards, ...], variant: str) -> tuple[PaperPress, ...]:
    found = []
    for one in cards:
        press = lookup.book.presses.get(one.press_id)
        gauge = press.gauges.get(one.gauge_id) if press else None
        plate = _plate(press, gauge) if press and gauge else ()
        own = tuple(PaperCard(card, _dial(card, gauge) if gauge and not card.refusals else None,
                              tuple(fact for fact in card.facts if fact[0] not in _ON_THE_PAGE)) for card in one.own)
        found.append(PaperPress(one, plate, own, places_of(lookup, one.spec, variant)))
    return tuple(found)


def empty_cards(lookup: Lookup, specs: tuple[SpecView, ...], variant: str) -> tuple[EmptyCard, ...]:
    """One for each press force that is worked to."""
    drawn = picture(empty_dial(words.DIAL_EMPTY))
    return tuple(EmptyCard(spec.id, spec.label, spec.condition, tuple(row for row in spec.rows if not row.struck and row.view.role != "found"),
                           drawn, places_of(lookup, spec.id, variant))
                 for spec in specs if lookup.procedure.specs[spec.id].kind == "press force")


def _plate(press: Press, gauge: Gauge) -> tuple[tuple[str, str], ...]:
    ram = (words.RAM_AREA, _both(press.area)) if press.area else (words.RAM_BORE, f"{_both(press.bore)}, {_area(press)}") if press.bore else None
    return (*([ram] if ram else []), (words.FULL_SCALE, _both(gauge.full_scale)), (words.DIVISION, _both(gauge.division)))


def _area(press: Press) -> str:
    across, rod = (float(each.unit.to_si(each.low)) if each else 0.0 for each in (press.bore, press.rod if press.side == "pull" else None))
    square = pi / 4 * (across**2 - rod**2)
    return f"{words.AREA.lower()} {shown(square, 'area', 'cm²', digits=4)} ({shown(square, 'area', 'in²', digits=4)})"


def _both(quantity: Quantity) -> str:
    printed, other, _ = of_figure(quantity, "found")
    return f"{printed} ({other})" if other else printed


def _dial(card: Card, gauge: Gauge) -> Markup | None:
    """Drawn from the marks as printed, so that needle and number cannot differ."""
    if card.never is None:
        return None
    stops = tuple(Needle(str(n), _share(mark.printed, gauge)) for n, mark in enumerate(card.marks, 1))
    told = words.DIAL_SHOWS if stops else words.DIAL_SHOWS_NEVER
    says = told.format(full=gauge.full_scale.typed(), stops=", ".join(mark.printed for mark in card.marks), never=card.never.printed)
    unit = gauge.full_scale.unit
    return picture(dial(float(gauge.full_scale.low), float(unit.from_si(gauge.division.unit.to_si(gauge.division.low))), unit.symbol,
                        stops, _share(card.never.printed, gauge), says))


def _share(printed: str, gauge: Gauge) -> float:
    mark, full = read_quantity(printed, "pressure"), gauge.full_scale
    return float(mark.unit.to_si(mark.low) / full.unit.to_si(full.low))
