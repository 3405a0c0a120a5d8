"""The press cards that no author declares: one for each press and gauge in the needs, for each force to press to."""

from collections.abc import Mapping
from functools import lru_cache

from ..core.book import Book
from ..core.derived import NOT_TO_USE, CombinationKey, Resolved, Worked
from ..core.equipment import Gauge, Press
from ..core.figure import NoFigure, Spec
from ..core.procedure import Procedure
from ..core.quantity import Quantity
from ..core.working import Outcome, Refusal, Value
from . import press_card
from .in_force import figure_in_force, recheck
from .read_inputs import given_inputs

#: The inputs of one run, by name, as they are typed.
Texts = tuple[tuple[str, str], ...]
#: The roles that a card rests on.
LIMITS = ("target", "floor", "ceiling", "window")


def press_cards(book: Book, procedure: Procedure, spec: Spec, resolved: tuple[Resolved, ...],
                key: CombinationKey) -> tuple[Worked, ...]:
    """One card for each press and gauge in the needs; none where the spec asks for no force to reach or keep under."""
    roles = [role for role in LIMITS if spec.in_role(role)]
    if not {"target", "ceiling", "window"} & set(roles):
        return ()
    texts, refused = {}, None
    for role in roles:
        worth = figure_in_force(resolved, role)
        if isinstance(worth, Quantity):
            texts[role] = worth.typed()
        elif isinstance(worth, NoFigure):
            return ()                                           # deliberately none for this combination
        elif any(figure.kept_for_record is None for figure in spec.in_role(role)):
            refused = Outcome(refusals=(recheck(resolved) or Refusal(f"no {role} can be relied on: {NOT_TO_USE}", "do not press"),))
    pairs = [(need.press, need.gauge) for need in procedure.needs.presses]
    cards = []
    for name, gauge_name in pairs:
        press = book.presses.get(name)
        gauge = press and press.gauges.get(gauge_name)
        if gauge is None:
            continue                                            # an unknown press is a rule's finding
        inputs = {**press_texts(press, gauge), **texts}
        outcome = refused or _card(book, inputs, (name, gauge_name), pairs)
        places = {role: figure.place for role in texts for figure in spec.in_role(role) if figure.in_force()}
        places |= {"press": press.place, "gauge": gauge.place}
        cards.append(Worked("press-card", spec.id, key, inputs, places, outcome, name, gauge_name))
    return tuple(cards)


def at_last_mark(cards: tuple[Worked, ...], mark: tuple[str, str]) -> Value | NoFigure | None:
    """What the needle means there, without the gauge's own uncertainty; None where that card is refused."""
    if not cards:
        return NoFigure()
    outcome = next((card.outcome for card in cards if (card.press, card.gauge) == mark), Outcome())
    return outcome.value("force at the last mark").end("likely") if outcome.has("force at the last mark") and not outcome.refusals else None


def press_texts(press: Press, gauge: Gauge) -> dict[str, str]:
    """The inputs of a press card that belong to the press and its gauge."""
    texts = {"area": press.area, "bore": press.bore, "rod": press.rod, "rated pressure": press.rated_pressure,
             "rated force": press.rated_force, "full scale": gauge.full_scale, "division": gauge.division,
             "accuracy": gauge.accuracy, "gauge limit": gauge.limit}
    found = {name: quantity.typed() for name, quantity in texts.items() if quantity is not None}
    if press.side:
        found["side"] = press.side
    if press.draw_stud:
        found |= {"draw stud thread": press.draw_stud.thread.text, "draw stud yield": press.draw_stud.yield_stress.typed()}
    return found


def _card(book: Book, inputs: Mapping[str, str], own: tuple[str, str], pairs) -> Outcome:
    outcome, asks_others = _card_alone(tuple(inputs.items()))
    if not asks_others:
        return outcome
    return press_card.compute(given_inputs(press_card.WORKING, inputs)[0], lambda: _others(book, own, pairs))


@lru_cache(maxsize=4096)
def _card_alone(inputs: Texts) -> tuple[Outcome, bool]:
    """The card as this press alone makes it, and whether it asks for the shop's other presses. Kept, as a shop has few presses."""
    given, problems = given_inputs(press_card.WORKING, dict(inputs))
    if problems:
        return Outcome(refusals=(Refusal(problems[0].message, problems[0].mend),)), False
    asked = []

    def others() -> press_card.Others:
        asked.append(True)
        return ()

    outcome = press_card.compute(given, others)
    return outcome, bool(asked)


def _others(book: Book, own: tuple[str, str], pairs) -> press_card.Others:
    """The shop's other presses and gauges, those in the needs first."""
    rest = [(press.id, gauge) for press in book.presses.values() for gauge in press.gauges
            if (press.id, gauge) not in pairs]
    others = []
    for name, gauge in [*pairs, *rest]:
        press = book.presses.get(name)
        if (name, gauge) == own or press is None or gauge not in press.gauges:
            continue
        texts = given_inputs(press_card.WORKING, press_texts(press, press.gauges[gauge]))[0]
        others.append((f"{name}, {press.gauges[gauge].title}", texts))
    return others
