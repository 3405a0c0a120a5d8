"""Torques judged and set on the wrench, and the other results worked out in a procedure, ready to print."""

import json
from typing import NamedTuple

from ..core.figure import Spec
from ..core.working import Outcome
from . import words
from .address import result_anchor
from .cases import Told, told_apart
from .fill_template import Markup
from .lookup import Lookup
from .view_drawing import picture
from .view_press import with_converted
from .view_spec import wrench_text

_TORQUE = "tightening-torque"
_ASKED = ("torque", "adapter length", "adapter angle", "passes")


class Judgement(NamedTuple):
    """One torque in one case: what to set (with passes), what it pulls, or why not. `job` is what is asked of any wrench, for a
    reader's own; "" where nothing is set."""

    told: Told
    torque: str
    setting: str
    delivers: str
    passes: tuple[str, ...]
    facts: tuple[tuple[str, str], ...]
    warnings: tuple[str, ...]
    refusals: tuple
    job: str


class Torque(NamedTuple):
    spec: str
    label: str
    wrench: str
    cases: tuple[Judgement, ...]


class Gave(NamedTuple):
    """What a run gave, as much of it as the page needs; all of it stands on the page of workings."""

    values: tuple
    refusals: tuple
    warnings: tuple[str, ...]
    waits: tuple[str, ...]
    tables: tuple
    drawing: Markup | None


class Result(NamedTuple):
    """A computed result: each case tells a Gave. `title` is what it is, `working` by what it is worked out; `assumes` is what drives the band; `taken` when its values stand among the figures."""

    id: str
    anchor: str
    was: str
    title: str
    working: str
    assumes: tuple[str, ...]
    taken: bool
    cases: tuple[Told, ...]


def torques(lookup: Lookup, variant: str | None = None) -> tuple[Torque, ...]:
    found = []
    for spec in lookup.procedure.specs.values():
        if spec.kind != "torque":
            continue
        worked = [(combination, run) for combination, run in lookup.worked(spec.id, variant) if run.working == _TORQUE]
        runs = [(combination, run.outcome) for combination, run in worked]
        if runs:
            jobs = () if variant else tuple((run.outcome, _job(run.inputs)) for _, run in worked if run.outcome.has("setting") and "torque" in run.inputs)
            wrench = wrench_text(lookup.book, spec.wrench, spec.adapter) if spec.wrench else words.NONE
            found.append(Torque(spec.id, spec.label, wrench, tuple(_judgement(told, spec, jobs) for told in told_apart(lookup.machine, runs))))
    return tuple(found)


def _job(inputs) -> str:
    return json.dumps({name: inputs[name] for name in _ASKED if name in inputs}, ensure_ascii=False)


def _judgement(told: Told, spec: Spec, jobs=()) -> Judgement:
    outcome: Outcome = told.value
    asked = {job for out, job in jobs if out == outcome}
    value = {value.name: value for value in outcome.values}
    text = {name: with_converted(value) for name, value in value.items()}
    facts = [(word, text[name]) for word, name in ((words.CLAMP, "clamp"), (words.PRESS_SHARE, "worst share of press force")) if name in text]
    if "share of proof" in text:
        facts.append((words.PROOF, f"{text['share of proof']} ({text.get('worst share of proof', '')})"))
    passes = tuple(value[name].printed for name in (f"pass {n}" for n in range(1, 5)) if name in value)
    if not passes and "setting" in value and spec.adapter is None:      # torques of the author's own are settings only without an adapter
        passes = tuple(torque.typed() for torque in spec.passes)
    return Judgement(told, text.get("torque", ""), text.get("setting", ""), text.get("delivered torque", ""), passes,
                     tuple(facts), outcome.warnings, outcome.refusals, asked.pop() if len(asked) == 1 else "")


def results(lookup: Lookup, workings, variant: str | None = None) -> tuple[Result, ...]:
    found = []
    of_figures = {reference.name for spec in lookup.procedure.specs.values() for figure in spec.figures if figure.comes_from
                  for reference in figure.comes_from.values() if reference.owner is None}
    for computed in lookup.procedure.computed.values():
        runs = [(combination, run.outcome) for combination, run in lookup.worked(computed.id, variant)]
        known = workings.get(computed.working)
        taken, apart = computed.id in of_figures, told_apart(lookup.machine, runs)
        cases = tuple(told._replace(value=_gave(told.value, taken, len(apart) == 1)) for told in apart
                      if not taken or told.value.refusals or told.value.waits or told.value.warnings)
        found.append(Result(computed.id, result_anchor(computed.id), " ".join(computed.was), computed.label,
                            known.title if known else computed.working, known.assumes if known else (), taken, cases))
    return tuple(found)


def _gave(outcome: Outcome, taken: bool, alone: bool) -> Gave:
    """A drawing where there is one case to draw, a chart where a reading is still to come: a page of eight cases is not read at a bench."""
    return Gave(() if taken else outcome.values, outcome.refusals, outcome.warnings, outcome.waits,
                 outcome.told.tables if outcome.waits else (), picture(outcome.told.drawing) if alone and not taken else None)
