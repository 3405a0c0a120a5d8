"""The canonical record of one sheet, and its fingerprint.

The record holds all that is acted on: figures as written, marks, settings, order, cautions, places, loose ends.
It leaves out the words: a wording fix must keep the sheet code. Numbers typed inside a sentence are acted on,
so they are kept. Not in it: the reader's own press or units, paper size, edition.
"""

import hashlib
from collections.abc import Iterator, Mapping
from types import MappingProxyType

from .book import Book
from .canonical import canonical, digest
from .derived import CombinationKey, Derived, Resolved, Worked
from .figure import NoFigure, NotKnown, Spec, Worth
from .machine import Machine
from .procedure import Computed, Procedure, Step
from .quantity import Quantity
from .record_parts import acted_in, caution_record, how_left, if_outside, left_elsewhere, needs_record, numbers_in, step_record
from .sentence import Reference
from .thread import Thread
from .used_results import of_others
from .variation import Varies

VERSION = 1
#: Without I, L, O and U: a code is read aloud and copied by hand.
_ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"


def sheet_record(book: Book, procedure: Procedure, every: Mapping[tuple[str, str], Derived], variant: str,
                 formulas: Mapping[str, str]) -> dict:
    """Everything that is acted on for one procedure and variant, as plain data in a fixed order.

    `every` holds what was worked out, by (machine, procedure or ''); `formulas` the digest of each working's formula.
    What belongs to another variant alone is not in it: a change there leaves this sheet true.
    """
    machine, derived, ledger = book.machines[procedure.machine], every[procedure.machine, procedure.id], book.ledgers[procedure.machine]
    combinations, version = derived.combinations[variant], machine.main.variants[variant]
    steps = [step for step in procedure.steps if step.done_on(variant, version.serials)]
    shut = [name for name in procedure.must_be_shut if ledger.is_left(procedure, name, variant)]
    opened, proved = _open(book, procedure, variant), _to_prove(book, procedure, variant)
    elsewhere = [_elsewhere(book, procedure, every, variant, reference) for reference in _others(book, procedure, steps, variant)]
    return {
        "record": VERSION, "machine": machine.id, "procedure": procedure.id, "variant": variant,
        "serials": str(version.serials) if version.serials else None, "measure": version.measure and version.measure.typed(),
        "part to mark": _parts(machine, [*map(dict, combinations), *(case for _, _, cases in elsewhere for case, _ in cases)]),
        "viewpoint": machine.viewpoint.text, "defer": [acted for sentence in machine.defer if (acted := acted_in(sentence))],
        "after": [name for name in procedure.after if (procedure.machine, name) not in book.procedures
                  or variant in book.procedures[procedure.machine, name].variants],
        "must be shut": shut,
        "open at start": opened, "to prove": proved, "how left": [
            state for name in dict.fromkeys((*shut, *(each[0] for each in (*opened, *proved)))) if (state := how_left(book, procedure, name))],
        "each": [procedure.each, *machine.places_on(procedure.each, variant)], "people": procedure.people,
        "conditions": [acted_in(sentence) for sentence in procedure.conditions],
        "cautions": [caution_record(book, name) for name in procedure.cautions], "needs": needs_record(book, procedure.needs),
        "specs": [spec_record(machine, derived, spec, combinations, variant) for spec in procedure.specs.values()],
        "from elsewhere": elsewhere, "worked": results(machine, procedure, derived, variant, formulas),
        "steps": [step_record(book, procedure, variant, step) for step in steps],
    }


def fingerprint(record: dict) -> str:
    """Eight signs in two groups, from the SHA-256 of the record in canonical JSON."""
    number = int.from_bytes(hashlib.sha256(canonical(record).encode()).digest()[:5], "big")
    signs = "".join(_ALPHABET[number >> shift & 31] for shift in range(35, -1, -5))
    return f"{signs[:4]}-{signs[4:]}"


def step_meanings(book: Book, procedure: Procedure, derived: Derived, variant: str) -> dict[str, str]:
    """Fingerprint of each step done on this variant: of the step and of every figure it names, whatever words stand round them.

    A mark made at the bench is kept with it, so that a later build can tell work done by an older figure."""
    combinations = derived.combinations.get(variant, ())
    serials = book.machines[procedure.machine].main.variants[variant].serials
    steps = [step for step in procedure.steps if step.done_on(variant, serials)]
    names = {step.id: {str(reference): reference for reference in step_references(step)} for step in steps}
    named = {text: _named(book, procedure, derived, variant, reference) for every in names.values() for text, reference in every.items()}
    return {step.id: fingerprint({"step": step_record(book, procedure, variant, step), "named": [named[text] for text in names[step.id]]}) for step in steps}


def step_references(step: Step) -> tuple[Reference, ...]:
    """What a step names: in its sentences, in its list of specs, and as what is written down; each once, in that order."""
    found = [*(reference for sentence in step.sentences() for reference in sentence.references()), *step.specs,
             *(record.spec for record in step.records if record.spec)]
    return tuple({str(reference): reference for reference in found}.values())


def _named(book: Book, procedure: Procedure, derived: Derived, variant: str, reference: Reference) -> list:
    """A spec of another procedure counts as it is written: its machine's cases are resolved over there."""
    target, combinations = book.target(reference, procedure), derived.combinations.get(variant, ())
    worked = [_worked(run, {}) for combination in combinations for run in derived.worked.get((combination, reference.name), ())]
    if not isinstance(target, Spec):
        return [str(reference), worked]
    if reference.owner is None:
        return [str(reference), spec_record(book.machines[procedure.machine], derived, target, combinations, variant), worked]
    return [str(reference), [[figure.role, *(worth_text(case.value) for case in figure.worth.cases)] if figure.worth else [figure.role]
                             for figure in target.figures]]


def worth_text(worth: Worth | None) -> str | None:
    """How a figure stands in the record and in book.json."""
    if isinstance(worth, Quantity):
        return worth.typed()
    if isinstance(worth, NotKnown):
        return "not known yet"
    return "none" if isinstance(worth, NoFigure) else worth.text if worth else None


def _runs(derived: Derived, combinations: tuple[CombinationKey, ...]) -> Iterator[Worked]:
    return (run for combination in combinations for (key, _), runs in derived.worked.items() if key == combination for run in runs)


def results(machine: Machine, procedure: Procedure, derived: Derived, variant: str, formulas: Mapping[str, str] = MappingProxyType({})) -> list:
    """What was worked out for a sheet, as its record holds it."""
    others = of_others(procedure, variant, machine.main.variants[variant].serials)
    return [_worked(run, formulas) for run in _runs(derived, derived.combinations[variant]) if run.owner not in others]


def given(derived: Derived, variant: str) -> str:
    """A digest of all that the workings of a sheet were given: where it is the same, the tool moved what differs."""
    return digest([[run.working, run.owner, dict(run.combination), run.press, run.gauge, run.inputs]
                   for run in _runs(derived, derived.combinations[variant])])


def _others(book: Book, procedure: Procedure, steps: list[Step], variant: str) -> tuple[Reference, ...]:
    """What the sheet shows of other procedures and of the machine, once each."""
    found: dict[str, Reference] = {}
    spoken = list(procedure.conditions)
    for step in steps:
        outside = [sentence for reading in step.records for sentence in if_outside(reading)]
        spoken += [*step.sentences(), *outside, *(end.state for end in step.leaves)]
        found.update((str(each), each) for each in step.specs if each.owner)
    found.update((str(each), each) for sentence in spoken for each in sentence.references() if each.owner)
    found.update((str(each), each) for each in left_elsewhere(book, procedure, steps, variant))
    return tuple(found.values())


def _elsewhere(book: Book, procedure: Procedure, every: Mapping[tuple[str, str], Derived], variant: str, reference: Reference) -> list:
    """A figure of another procedure or of the machine, and what was worked out there, as this sheet shows them."""
    there = every.get((procedure.machine, "" if reference.owner == procedure.machine else reference.owner), Derived())
    target = book.target(reference, procedure)
    keys = there.combinations.get(variant, ())
    figures = [[dict(key), [_figure(each) for each in there.resolved.get((key, reference.name), ())
                            if reference.part in (None, each.figure.role)]] for key in keys]
    values = [[dict(key), [[value.name, value.printed] for run in there.worked.get((key, reference.name), ())
                           for value in run.outcome.values if reference.part in (None, value.name)]] for key in keys]
    if isinstance(target, Computed):
        return [str(reference), "", values]
    return [str(reference), target.kind if target else "", figures]


def spec_record(machine: Machine, derived: Derived, spec: Spec, combinations: tuple[CombinationKey, ...], variant: str | None) -> dict:
    """One spec in the cases that a sheet is for; with no variant, of all."""
    return {
        "id": spec.id, "kind": spec.kind, "numbers": numbers_in(spec.label), "condition": spec.condition,
        "places": spec.places and [spec.places, *machine.places_on(spec.places, variant)], "viewpoint": spec.viewpoint,
        "at radius": spec.at_radius and spec.at_radius.typed(), "wrench": spec.wrench, "adapter": spec.adapter,
        "passes": [torque.typed() for torque in spec.passes] or spec.pass_count,
        "fastener": [_told(machine, varies, combinations) for varies in (spec.thread, spec.grade, spec.surface)],
        "figures": [[dict(combination), [_figure(each) for each in derived.resolved[combination, spec.id]]]
                    for combination in combinations],
    }


def _open(book: Book, procedure: Procedure, variant: str) -> list:
    """A loose end more or fewer that is open for sure makes the list on old paper wrong."""
    return [[each.left.name, each.where[variant]] for each in book.open_ends[procedure.machine].at_start(procedure, (variant,))]


def _to_prove(book: Book, procedure: Procedure, variant: str) -> list:
    """What is ticked off as shut before the machine runs or is handed over: a box that old paper lacks is a hand in a belt."""
    return [[proof.left.name, proof.where[variant], None if proof.at is None else procedure.steps[proof.at].id]
            for proof in book.open_ends[procedure.machine].to_prove(procedure, (variant,))]


def _parts(machine: Machine, cases: list[dict]) -> list:
    """The parts that may come from a donor and decide a figure of the sheet, and how each version of them is told."""
    return [[carrier.id, [[one.id, one.measure.typed() if one.measure else str(one.serials or "")] for one in carrier.variants.values()]]
            for carrier in machine.carriers.values() if len({case[carrier.id] for case in cases if carrier.id in case}) > 1]


def _told(machine: Machine, varies: Varies | None, combinations: tuple[CombinationKey, ...]) -> list[str]:
    """A thread, grade or surface in each case."""
    found = [case.value for key in combinations for case in (varies.matching(dict(key), machine.serial_ranges) if varies else ())]
    return list(dict.fromkeys(value.text if isinstance(value, Thread) else str(value) for value in found))


def _figure(resolved: Resolved) -> list:
    figure = resolved.figure
    return [figure.role, worth_text(resolved.worth), figure.condition, figure.when, figure.kept_for_record,
            figure.superseded_by, figure.in_doubt is not None, *([resolved.recheck] if resolved.recheck else [])]


def _worked(run: Worked, formulas: Mapping[str, str]) -> list:
    return [run.working, formulas.get(run.working), run.owner, dict(run.combination), run.press, run.gauge,
            [[value.name, value.printed] for value in run.outcome.values],
            [refusal.message for refusal in run.outcome.refusals]]
