"""Press cards ready to print: one for each press, gauge and machine with its own parts; donors as rows beneath."""

import json
from functools import lru_cache
from typing import NamedTuple

from ..core.display import five_forces
from ..core.working import Outcome
from . import words
from .address import press_url
from .cases import Told, told_apart
from .fill_template import Markup
from .lookup import Lookup
from .prose import plain

_SHARES = (50, 75, 90, 100)
_CARD = "press-card"
_ASKED = ("target", "floor", "ceiling", "window")


@lru_cache(maxsize=4096)
def _five(newtons: float) -> tuple[str, ...]:
    return tuple(five_forces(newtons, "nearest"))


class Mark(NamedTuple):
    share: int
    printed: str
    converted: str


class Card(NamedTuple):
    """The needle marks for one case, or with `refusals` why there are none. `facts` are (words, text); `accept` is the band
    of the last reading, which a donor's row must show too. `job` is what is asked of any press, for a reader's own; "" where it is
    not one and the same, or a figure is not to be relied on."""

    told: Told
    marks: tuple[Mark, ...]
    never: Mark | None
    accept: str
    facts: tuple[tuple[str, str], ...]
    forces: tuple[str, ...]
    warnings: tuple[str, ...]
    refusals: tuple
    job: str = ""


class PressCards(NamedTuple):
    """Everything for one spec on one press with one gauge. `notes` are those of the gauge: what it must be spared stands beside its marks."""

    spec: str
    label: str
    press: str
    press_id: str
    gauge: str
    gauge_id: str
    href: str
    notes: tuple[Markup, ...]
    own: tuple[Card, ...]
    donors: tuple[Card, ...]         # each names every part that may be swapped: a row must not be taken for another


def press_cards(lookup: Lookup, root: str, variant: str | None = None) -> tuple[PressCards, ...]:
    found = []
    for spec in lookup.procedure.specs.values():
        if spec.kind != "press force":
            continue
        own, donors = (_by_gauge(lookup, spec.id, variant, own) for own in (True, False))
        jobs = ((), ()) if variant else (_jobs(lookup, spec, True), _jobs(lookup, spec, False))
        for gauge in {**own, **donors}:
            found.append(_cards(lookup, spec, gauge, own.get(gauge, []), donors.get(gauge, []), root, variant, jobs))
    return tuple(found)


def _by_gauge(lookup: Lookup, spec: str, variant: str | None, own: bool) -> dict[tuple[str, str], list]:
    runs: dict[tuple[str, str], list] = {}
    for combination, run in lookup.worked(spec, variant, own):
        if run.working == _CARD:
            runs.setdefault((run.press or "", run.gauge or ""), []).append((combination, run.outcome))
    return runs


def _jobs(lookup: Lookup, spec, own: bool) -> tuple[tuple[str, Outcome, str], ...]:
    """Gauge, outcome and what was asked, for each run whose figures all may be relied on: of machines with their own parts, or with a donor's."""
    asked = [role for role in _ASKED if any(figure.kept_for_record is None for figure in spec.in_role(role))]
    return tuple((run.gauge, run.outcome, json.dumps({role: run.inputs[role] for role in asked}, ensure_ascii=False))
                 for _, run in lookup.worked(spec.id, None, own) if run.working == _CARD and all(role in run.inputs for role in asked))


def _with_job(card: Card, gauge: str, jobs) -> Card:
    asked = {job for at, outcome, job in jobs if at == gauge and outcome == card.told.value}
    return card._replace(job=asked.pop()) if len(asked) == 1 else card


def _cards(lookup: Lookup, spec, gauge: tuple[str, str], own: list, donors: list, root: str, variant: str | None, jobs) -> PressCards:
    press = lookup.book.presses.get(gauge[0])
    read = press.gauges.get(gauge[1]) if press else None
    title = read.title if read else gauge[1]
    swapped = lookup.swapped()
    always = tuple(c for c in lookup.machine.carriers if c in swapped or (c == lookup.machine.main.id and not variant))
    return PressCards(spec.id, spec.label, press.title if press else gauge[0], gauge[0], title, gauge[1], root + press_url(gauge[0]),
                      tuple(map(plain, read.notes)) if read else (),
                      tuple(_with_job(_card(told), gauge[1], jobs[0]) for told in told_apart(lookup.machine, own)),
                      tuple(_with_job(_card(told), gauge[1], jobs[1]) for told in (told_apart(lookup.machine, donors, always) if donors else ())))


def _card(told: Told) -> Card:
    outcome: Outcome = told.value
    if outcome.refusals:
        return Card(told, (), None, "", (), (), outcome.warnings, outcome.refusals)
    value = {value.name: value for value in outcome.values}
    marks = tuple(Mark(share, mark.printed, mark.converted) for share in _SHARES if (mark := value.get(f"mark at {share} %")))
    never = value.get("never-pass mark")
    facts = []
    for word, name in ((words.EXACT, "exact reading"), (words.LAST_FORCE, "force at the last mark"),
                       (words.STUD_TARGET, "draw stud stress at target"), (words.STUD_CEILING, "draw stud stress at ceiling")):
        if name in value:
            facts.append((word, with_converted(value[name])))
    if "uncertainty" in value:
        force = f", {value['uncertainty as force'].printed}" if "uncertainty as force" in value else ""
        facts.insert(1, (words.UNCERTAIN, value["uncertainty"].printed + force))
    accept = f"{value['accept band low'].printed} to {value['accept band high'].printed}" if "accept band low" in value else ""
    if accept:
        facts.append((words.ACCEPT, accept))
    last = value.get("force at the last mark")
    return Card(told, marks, Mark(0, never.printed, never.converted) if never else None, accept, tuple(facts),
                _five(last.likely) if last else (), outcome.warnings, ())


def with_converted(value) -> str:
    """Both texts; a band has brackets of its own."""
    if not value.converted:
        return value.printed
    return f"{value.printed} = {value.converted}" if "(" in value.printed else f"{value.printed} ({value.converted})"

