"""How each derived figure of a procedure was worked out, ready to print."""

from typing import NamedTuple

from ..core.book import Book
from ..core.derived import Worked
from .address import result_anchor, working_url
from .cases import Told, told_apart
from .fill_template import Markup
from .forge_links import Forge
from .lookup import Lookup
from .view_drawing import picture


#: Inputs of a press card that the gauge gives; what else has no place of its own the press gives.
_OF_GAUGE = ("full scale", "division", "accuracy", "gauge limit")


class RunView(NamedTuple):
    """One run for one case: inputs as (name, text, place, link), then lines, values, refusals."""

    title: str
    told: Told
    press: str
    gauge: str
    inputs: tuple[tuple[str, str, str, str], ...]
    lines: tuple
    values: tuple
    refusals: tuple
    warnings: tuple[str, ...]
    waits: tuple[str, ...]
    tables: tuple
    drawing: Markup | None


class OwnerView(NamedTuple):
    """All runs of one working for one spec or computed result."""

    id: str
    anchor: str
    label: str
    working: str
    manual: str
    source: str
    assumes: tuple[str, ...]
    runs: tuple[RunView, ...]


def owner_views(lookup: Lookup, workings, root: str, forge: Forge | None) -> tuple[OwnerView, ...]:
    procedure = lookup.procedure
    labels = {**{spec.id: spec.label for spec in procedure.specs.values()}, **{computed.id: computed.label for computed in procedure.computed.values()}}
    return tuple(view for owner, label in labels.items() for view in _of(lookup, owner, label, workings, root, forge))


def _of(lookup: Lookup, owner: str, label: str, workings, root: str, forge: Forge | None):
    groups: dict[tuple[str, str, str], list[tuple[dict, Worked]]] = {}
    for combination, run in lookup.worked(owner):
        groups.setdefault((run.working, run.press or "", run.gauge or ""), []).append((combination, run))
    by_working: dict[str, list[RunView]] = {}
    for (working, press, gauge), runs in groups.items():
        title = _press_title(lookup.book, press, gauge)
        told = told_apart(lookup.machine, [(combination, _Run(run)) for combination, run in runs])
        by_working.setdefault(working, []).extend(_run(one, title or label, forge) for one in told)
    for working, views in by_working.items():
        known = workings.get(working)
        anchor = owner if owner in lookup.procedure.specs else result_anchor(owner)      # on the page where it is corrected
        yield OwnerView(owner, anchor, label, known.title if known else working, root + working_url(working), known.source if known else "",
                        known.assumes if known else (), tuple(views))


def _press_title(book: Book, press_id: str, gauge: str) -> str:
    press = book.presses.get(press_id)
    named = press.gauges[gauge].title if press and gauge in press.gauges else gauge
    return ", ".join(filter(None, [press.title if press else press_id, named]))


class _Run:
    """Equal when inputs and outcome are: the combination a run was made for does not count."""

    def __init__(self, run: Worked):
        self.run = run

    def __eq__(self, other) -> bool:
        return self.run.inputs == other.run.inputs and self.run.outcome == other.run.outcome


def _run(told: Told, title: str, forge: Forge | None) -> RunView:
    run = told.value.run
    inputs = []
    for name, text in run.inputs.items():
        place = run.input_places.get(name) or run.input_places.get("gauge" if name in _OF_GAUGE else "press")
        href = forge.edit(place.path, place.line) if place and forge else ""
        inputs.append((name, text, f"{place.path}:{place.line}" if place else "", href))
    return RunView(": ".join(filter(None, [title, told.label])), told, run.press or "", run.gauge or "", tuple(inputs), run.outcome.lines,
                   run.outcome.values, run.outcome.refusals, run.outcome.warnings, run.outcome.waits, run.outcome.told.tables,
                   picture(run.outcome.told.drawing))
