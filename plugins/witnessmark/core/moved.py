"""Where a name went that is no longer where it was: renamed (`was`), or moved to another procedure of its machine."""

import re
from dataclasses import replace
from typing import Iterable, Iterator

from .book import Book
from .finding import Finding

_QUOTED = re.compile(r"'([^']+)'")
_A_FIGURE = re.compile("there is no (?:figure|spec) ")


def told_where(book: Book, unknown: Iterable[Finding]) -> Iterator[Finding]:
    """The findings of names that are not known, each with where that name went, where it went anywhere."""
    now = None
    for finding in unknown:
        now = _moved(book) if now is None else now            # only a book with a slip pays for it
        where = finding.place.path.split("/")
        machines = where[1:2] if where[0] == "procedures" else list(book.machines)
        went = [now[machine, name] for machine in machines for name in _QUOTED.findall(finding.message) if (machine, name) in now
                and (_A_FIGURE.match(finding.message) or now[machine, name].endswith(" now"))]
        yield replace(finding, mend=went[0]) if went else finding


def _moved(book: Book) -> dict[tuple[str, str], str]:
    """(machine, name) -> what to write now, for every old name of a machine, procedure, figure, step or loose end; and for every
    figure by its own name, which stands behind what another procedure lacks."""
    now: dict[tuple[str, str], str] = {}
    for machine in book.machines.values():
        now |= {(home, old): f"it is {machine.id} now" for home in book.machines for old in machine.was}
    for (machine, owner), procedure in book.procedures.items():
        for thing in (*procedure.specs.values(), *procedure.computed.values()):
            now.setdefault((machine, thing.id), f"it stands in '{owner}': write {owner}/{thing.id}")
    for (machine, owner), procedure in book.procedures.items():
        named = [(procedure.was, owner)]
        named += [(thing.was, f"{owner}/{thing.id}") for thing in (*procedure.specs.values(), *procedure.computed.values())]
        named += [(step.was, f"{owner}#{step.id}") for step in procedure.steps]
        named += [(end.was, f"{owner}/{end.id}") for step in procedure.steps for end in step.leaves]
        now |= {(machine, old): f"it is {new} now" for was, new in named for old in was}
    return now
