"""The lists under the drawing of a machine's order: a row for one pair of hands, and what may go side by side."""

from typing import NamedTuple

from ..core.lone_order import Turn
from ..core.loose_ends import Ledger
from . import words
from .address import ledger_url, loose_anchor, procedure_url
from .view_order import Drawing, order_drawing
from .view_step import Target


class TurnView(NamedTuple):
    """One procedure in the row: what it waits for, why it stands here, what it ties up."""

    here: Target
    variants: str
    after: tuple[Target, ...]
    why: str
    ties: tuple[Target, ...]


class PlanView(NamedTuple):
    drawing: Drawing
    turns: tuple[TurnView, ...]
    stages: tuple[tuple[Target, ...], ...]


def plan_view(ledger: Ledger, turns: list[Turn], root: str) -> PlanView:
    def there(name: str) -> Target:
        return Target(ledger.order.procedures[name].title, root + procedure_url(ledger.machine.id, name))

    def end(name: str) -> Target:
        return Target(ledger.left[name].end.state.text.rstrip("."), f"{root}{ledger_url(ledger.machine.id)}#{loose_anchor(name)}")

    every = len(ledger.machine.main.variants)
    rows = tuple(TurnView(there(turn.procedure.id), "" if len(turn.procedure.variants) == every else f"{words.ONLY} {', '.join(turn.procedure.variants)}",
                          tuple(map(there, ledger.order.nearest(turn.procedure.id))), words.WHY_HERE[turn.why], tuple(map(end, turn.ties)))
                 for turn in turns)
    return PlanView(order_drawing(ledger, turns, root), rows, tuple(tuple(there(one.id) for one in stage) for stage in ledger.order.stages()))
