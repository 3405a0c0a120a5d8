"""The canonical record of one sheet, and its fingerprint.

The record holds all that is acted on: figures as written, marks, settings, order, cautions, places, loose ends.
It leaves out the words: a wording fix must keep the sheet code. Numbers typed inside a sentence are acted on,
so they are kept. Not in it: the reader's own press or units, paper size, edition.
"""

import hashlib
import re
from collections.abc import Iterator, Mapping

from .book import Book
from .canonical import canonical, digest
from .derived import CombinationKey, Derived, Resolved, Worked
from .every_picture import picture_of_need
from .figure import NoFigure, NotKnown, Spec, Worth
from .machine import Machine
from .picture import Picture
from .procedure import Computed, LooseEnd, Need, PressNeed, Procedure, Step
from .procedure import Record as Reading
from .quantity import Quantity
from .sentence import Emphasis, Reference, Sentence, Words
from .thread import Thread
from .variation import Varies

VERSION = 1
#: Without I, L, O and U: a code is read aloud and copied by hand.
_ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"
_NUMBER = re.compile(r"\d[\d.,/:-]*\d|\d")


def sheet_record(book: Book, procedure: Procedure, every: Mapping[tuple[str, str], Derived], variant: str,
                 formulas: Mapping[str, str]) -> dict:
    """Everything that is acted on for one procedure and variant, as plain data in a fixed order.

    `every` holds what was worked out, by (machine, procedure or ''); `formulas` the digest of each working's formula.
    """
    machine, derived = book.machines[procedure.machine], every[procedure.machine, procedure.id]
    combinations = derived.combinations[variant]
    places = {group: machine.places_on(group, variant) for group in machine.places}
    serials = machine.main.variants[variant].serials
    return {
        "record": VERSION, "machine": machine.id, "procedure": procedure.id, "variant": variant,
        "serials": str(serials) if serials else None, "viewpoint": acted_in(machine.viewpoint),
        "after": list(procedure.after), "must be shut": list(procedure.must_be_shut), "open at start": _open(book, procedure, variant),
        "each": procedure.each, "people": procedure.people, "conditions": [acted_in(sentence) for sentence in procedure.conditions],
        "cautions": [_caution(book, name) for name in procedure.cautions],
        "needs": [[need.press, need.gauge, *_of_gauge(book, need)] for need in procedure.needs.presses]
                 + [[need.sort, need.name, need.adapter, *_shown(book, need), *_counted(need)] for need in procedure.needs.tools]
                 + [[need.sort, need.name, need.number, need.count, need.one_use, need.fate, *_shown(book, need), *_counted(need)]
                    for need in (*procedure.needs.supplies, *procedure.needs.parts)],
        "specs": [spec_record(machine, derived, spec, combinations) for spec in procedure.specs.values()],
        "from elsewhere": [_elsewhere(book, procedure, every, variant, reference) for reference in _others(procedure, variant, serials)],
        "worked": [_worked(run, formulas) for run in _runs(derived, combinations)],
        "steps": [_step(book, places, step) for step in procedure.steps if step.done_on(variant, serials)],
    }


def fingerprint(record: dict) -> str:
    """Eight signs in two groups, from the SHA-256 of the record in canonical JSON."""
    number = int.from_bytes(hashlib.sha256(canonical(record).encode()).digest()[:5], "big")
    signs = "".join(_ALPHABET[number >> shift & 31] for shift in range(35, -1, -5))
    return f"{signs[:4]}-{signs[4:]}"


def step_meanings(book: Book, procedure: Procedure, derived: Derived, variant: str) -> dict[str, str]:
    """Fingerprint of each step done on this variant: of the step and of every figure it names, whatever words stand round them.

    A mark made at the bench is kept with it, so that a later build can tell work done by an older figure."""
    machine = book.machines[procedure.machine]
    places = {group: machine.places_on(group, variant) for group in machine.places}
    combinations = derived.combinations.get(variant, ())
    serials = machine.main.variants[variant].serials
    steps = [step for step in procedure.steps if step.done_on(variant, serials)]
    every = {str(reference): reference for step in steps for reference in step_references(step)}
    named = {text: _named(book, procedure, derived, combinations, reference) for text, reference in every.items()}
    return {step.id: fingerprint({"step": _step(book, places, step), "named": [named[str(reference)] for reference in step_references(step)]})
            for step in steps}


def step_references(step: Step) -> tuple[Reference, ...]:
    """What a step names: in its sentences, in its list of specs, and as what is written down; each once, in that order."""
    found = [*(reference for sentence in step.sentences() for reference in sentence.references()), *step.specs,
             *(record.spec for record in step.records if record.spec)]
    return tuple({str(reference): reference for reference in found}.values())


def _named(book: Book, procedure: Procedure, derived: Derived, combinations, reference: Reference) -> list:
    """A spec of another procedure counts as it is written: its machine's cases are resolved over there."""
    target = book.target(reference, procedure)
    worked = [_worked(run, {}) for combination in combinations for run in derived.worked.get((combination, reference.name), ())]
    if not isinstance(target, Spec):
        return [str(reference), worked]
    if reference.owner is None:
        return [str(reference), spec_record(book.machines[procedure.machine], derived, target, combinations), worked]
    return [str(reference), [[figure.role, *(worth_text(case.value) for case in figure.worth.cases)] if figure.worth else [figure.role]
                             for figure in target.figures]]


def worth_text(worth: Worth | None) -> str | None:
    """How a figure stands in the record and in book.json."""
    if isinstance(worth, Quantity):
        return worth.typed()
    if isinstance(worth, NotKnown):
        return "not known yet"
    return "none" if isinstance(worth, NoFigure) else worth.text if worth else None


def _of_gauge(book: Book, need: PressNeed) -> list:
    """What the notes of the gauge in use say to do: they stand beside the marks."""
    press = book.presses.get(need.press)
    gauge = press.gauges.get(need.gauge) if press else None
    return [acted for note in (gauge.notes if gauge else ()) if (acted := acted_in(note))]


def _shown(book: Book, need: Need) -> list:
    picture = picture_of_need(book, need)
    return [_picture(book, picture)] if picture else []


def _picture(book: Book, picture: Picture | None) -> list | None:
    """The bytes that are seen, whatever the file is called, and the numbers in the words below them."""
    known = book.pictures.get(picture.path) if picture else None
    return picture and [known.digest if known else None, *_NUMBER.findall(picture.shows)]


def _runs(derived: Derived, combinations: tuple[CombinationKey, ...]) -> Iterator[Worked]:
    return (run for combination in combinations for (key, _), runs in derived.worked.items() if key == combination for run in runs)


def results(derived: Derived, variant: str) -> list:
    """What was worked out for a sheet, as its record holds it but for the formulas."""
    return [_worked(run, {}) for run in _runs(derived, derived.combinations[variant])]


def given(derived: Derived, variant: str) -> str:
    """A digest of all that the workings of a sheet were given: where it is the same, the tool moved what differs."""
    return digest([[run.working, run.owner, dict(run.combination), run.press, run.gauge, run.inputs]
                   for run in _runs(derived, derived.combinations[variant])])


def _others(procedure: Procedure, variant: str, serials) -> tuple[Reference, ...]:
    """What the sheet shows of other procedures and of the machine, once each."""
    found: dict[str, Reference] = {}
    for step in procedure.steps:
        if step.done_on(variant, serials):
            outside = [sentence for reading in step.records for sentence in _if_outside(reading)]
            spoken = [reference for sentence in (*step.sentences(), *outside) for reference in sentence.references()]
            found.update((str(each), each) for each in (*step.specs, *spoken) if each.owner)
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


def spec_record(machine: Machine, derived: Derived, spec: Spec, combinations: tuple[CombinationKey, ...]) -> dict:
    """One spec in the cases that a sheet is for."""
    return {
        "id": spec.id, "kind": spec.kind, "condition": spec.condition, "places": spec.places, "viewpoint": spec.viewpoint,
        "at radius": spec.at_radius and spec.at_radius.typed(), "wrench": spec.wrench, "adapter": spec.adapter,
        "passes": [torque.typed() for torque in spec.passes] or spec.pass_count,
        "fastener": [_told(machine, varies, combinations) for varies in (spec.thread, spec.grade, spec.surface)],
        "figures": [[dict(combination), [_figure(each) for each in derived.resolved[combination, spec.id]]]
                    for combination in combinations],
    }


def _open(book: Book, procedure: Procedure, variant: str) -> list:
    """A loose end more or fewer that is open for sure makes the list on old paper wrong."""
    return [[each.left.name, each.where[variant]] for each in book.open_ends[procedure.machine].at_start(procedure, (variant,))]


def _counted(need: Need) -> list:
    return [need.count, need.counted] if need.counted else []


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


def _step(book: Book, places, step: Step) -> dict:
    return {
        "id": step.id, "acted on": [acted_in(sentence) for sentence in step.sentences()],
        "cautions": [_caution(book, name) for name in step.cautions], "specs": [str(spec) for spec in step.specs],
        "each": [step.each, list(places.get(step.each, ()))], "at": step.at, "acts": [str(act) for act in step.acts],
        "opens up": list(step.opens_up), "hold point": step.hold_point is not None, "second person": step.second_person,
        "go to": list(step.go_to), "closes": list(step.closes), "leaves": [_loose_end(end) for end in step.leaves],
        "records": [[str(record.spec) if record.spec else record.label, record.places, *[acted_in(sentence) for sentence in _if_outside(record)],
                     *(record.if_outside.go_to if record.if_outside else ())] for record in step.records],
        "picture": _picture(book, step.picture),
    }


def _loose_end(end: LooseEnd) -> list:
    return [end.id, end.each, end.closes_in, [str(act) for act in end.never_while_open], *end.again]


def _if_outside(record: Reading) -> tuple[Sentence, ...]:
    outside = record.if_outside
    return tuple(sentence for sentence in (outside.above, outside.below) if sentence is not None) if outside else ()


def _caution(book: Book, name: str) -> list:
    """Its signal word, and what it says to do: how many things, and the numbers in each."""
    caution = book.cautions.get(name)
    return [name, caution.word, *[acted_in(sentence) for sentence in caution.avoid]] if caution else [name, None]


def acted_in(sentence: Sentence) -> list[str]:
    """The references and the numbers of a sentence, in order: what a hand does by it."""
    found: list[str] = []
    for part in sentence.parts:
        if isinstance(part, (Words, Emphasis)):
            found += _NUMBER.findall(part.text)
        else:
            found.append(f"{{{part}}}")
    return found
