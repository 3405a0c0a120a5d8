"""The ledger of a machine: each loose end, who leaves it, who shuts it, what it forbids; and what is open once some work is done."""

import json
from typing import NamedTuple

from ..core.ledger_table import open_table
from ..core.loose_ends import Left, Ledger
from . import words
from .address import loose_anchor, procedure_url, step_anchor, tags_url
from .fill_template import Markup
from .left_words import left_words
from .lookup import Lookup
from .prose import Prose
from .view_step import Target


class LedgerRow(NamedTuple):
    """`again` names the loose end that this one opens again."""

    anchor: str
    name: str
    state: Markup
    places: str
    variants: str
    left: Target
    shut: tuple[Target, ...]
    because: Markup
    if_forgotten: Markup
    never: tuple[str, ...]
    tag: str
    again: tuple[Target, ...]


class LedgerView(NamedTuple):
    """`table` is what the page's script asks: procedures in order, and for each loose end where it is shut by whom."""

    machine: Target
    rows: tuple[LedgerRow, ...]
    variants: tuple[str, ...]
    procedures: tuple[tuple[str, str], ...]
    tags: tuple[Target, ...]
    hand_over: Target | None
    table: str


def ledger_view(lookup: Lookup, root: str) -> LedgerView:
    ledger, machine = lookup.book.ledgers[lookup.machine.id], lookup.machine
    prose = Prose(lookup, linked=False)
    order = lookup.index.order[machine.id]
    rank = {procedure.id: number for number, procedure in enumerate(order)}
    ends = sorted(ledger.left.values(), key=lambda left: (rank[left.procedure.id], left.at))
    leaving = [procedure for procedure in order if any(step.leaves for step in procedure.steps)]
    final = ledger.order.procedures.get(machine.hand_over or "")
    return LedgerView(Target(machine.title, f"{root}{machine.id}/"), tuple(_row(lookup, ledger, left, prose, root) for left in ends), tuple(machine.main.variants),
                      tuple((procedure.id, procedure.title) for procedure in order),
                      tuple(Target(procedure.title, root + tags_url(procedure)) for procedure in leaving),
                      Target(final.title, root + procedure_url(machine.id, final.id)) if final else None, _table(ledger, ends, order))


def _row(lookup: Lookup, ledger: Ledger, left: Left, prose: Prose, root: str) -> LedgerRow:
    def step(procedure, at, one) -> Target:
        return Target(f"{procedure.title}, {words.STEP} {at + 1}", f"{root}{procedure_url(procedure.machine, procedure.id)}#{step_anchor(one.id)}")

    on, every = ledger.variants(left), list(lookup.machine.main.variants)
    told = [_told(lookup, left, sentence, prose) for sentence in (left.end.because, left.end.if_forgotten)]
    return LedgerRow(loose_anchor(left.name), left.name, left_words(lookup, left, prose), ", ".join(filter(None, ledger.places(left))),
                     "" if on == every else f"{words.ONLY} {', '.join(on)}", step(*left[:3]),
                     tuple(step(*tie) for tie in ledger.ties[left.name] if ledger.follows(tie, left)), *told,
                     tuple(map(str, left.end.never_while_open)), left.end.tag or "",
                     tuple(Target(other.end.state.text.rstrip("."), f"#{loose_anchor(other.name)}") for name in left.end.again
                           if (other := ledger.named(left.procedure, name))))


def _told(lookup: Lookup, left: Left, sentence, prose: Prose) -> Markup:
    home = Prose(lookup.of(left.procedure.id), False) if sentence.references() else prose
    return home(sentence)


def _table(ledger: Ledger, ends: list[Left], order) -> str:
    """Read by static/ledger.js."""
    data = {"after": {procedure.id: list(ledger.order.nearest(procedure.id)) for procedure in order},
            "on": {procedure.id: list(procedure.variants) for procedure in order},
            "ends": [{"id": loose_anchor(left.name), "left": left.procedure.id, "never": [str(act) for act in left.end.never_while_open],
                      "open": open_table(ledger, left)} for left in ends]}
    return json.dumps(data, ensure_ascii=False, sort_keys=True)
