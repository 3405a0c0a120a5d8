"""What must never be done while a loose end is open is done only after it is surely closed, in whatever order the work is taken.

right:
    - id: guard-on
      do: Fit the guard.
      closes: [strip/guard-off]   # never while open: [run]
    - id: start
      do: Start the engine.
      acts: [run]
wrong:
    - id: start
      do: Start the engine.
      acts: [run]
    - id: guard-on
      do: Fit the guard.
      closes: [strip/guard-off]
"""

from difflib import get_close_matches
from typing import Iterator

from ..core.book import Book
from ..core.finding import Finding
from ..core.loose_ends import Ledger, Left
from ..core.procedure import Act

ID = "act-while-open"


def check(book: Book, derived) -> Iterator[Finding]:
    for ledger in book.ledgers.values():
        for left in ledger.left.values() if not ledger.order.loops else ():
            told: set[str] = set()                  # the first step of a procedure is enough to say so
            for act in left.end.never_while_open:
                yield from _met(ledger, left, act, told)
                yield from _misnamed(ledger, act)


def _met(ledger: Ledger, left: Left, act: Act, told: set[str]) -> Iterator[Finding]:
    for name, (step, still) in ledger.first_while_open(left, act).items():
        if name not in told:
            told.add(name)
            yield Finding(step.key_places.get("acts", step.place), ID,
                          f"'{step.id}' does {act} while '{left.name}', left at {left.end.place}, may be open{ledger.where(left, still)}",
                          "close it in an earlier step, or let this procedure come after the one that closes it")


def _misnamed(ledger: Ledger, act: Act) -> Iterator[Finding]:
    """A thing that no step ever lifts, presses or fills guards nothing; nearly the same word elsewhere is taken for a slip."""
    if act.thing is None or (act.verb, act.thing) in ledger.acting:
        return
    things = [thing for verb, thing in ledger.acting if verb == act.verb and thing]
    if alike := get_close_matches(act.thing.lower(), [thing.lower() for thing in things], 1, 0.8):
        meant = next(thing for thing in things if thing.lower() == alike[0])
        yield Finding(act.place, ID, f"no step does {act}, so that nothing is forbidden by it", f"did you mean {{{act.verb}: {meant}}}?")
