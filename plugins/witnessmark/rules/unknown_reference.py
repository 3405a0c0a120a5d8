"""Every name that is used must be defined.

right:
    do: Press to {press-force.target}.
    cautions: [HZ-02]
wrong:
    do: Press to {pres-force.target}.
    cautions: [HZ-99]
"""

from typing import Collection, Iterable, Iterator

from ..core.about import looked_up
from ..core.authority import Conflict
from ..core.book import Book
from ..core.figure import ROLES, Citation, Spec
from ..core.finding import Finding, nearest
from ..core.loose_ends import left_by
from ..core.machine import Machine
from ..core.moved import told_where
from ..core.place import Place
from ..core.procedure import Computed, Procedure, Step
from ..core.sentence import Reference, Sentence
from ..core.variation import Varies

ID = "unknown-reference"


def check(book: Book, derived) -> Iterator[Finding]:
    return told_where(book, _unknown(book))


def _unknown(book: Book) -> Iterator[Finding]:
    for machine in book.machines.values():
        for spec in machine.figures.values():
            yield from _spec(book, machine, None, spec)
        for sentence in (machine.summary, machine.viewpoint, machine.serial_plate, *machine.defer):
            yield from _sentence(book, machine, None, sentence)
        if machine.hand_over:
            yield from _name(machine.place, machine.hand_over, book.procedure_ids[machine.id], "procedure")
    for procedure in book.procedures.values():
        yield from _procedure(book, book.machines[procedure.machine], procedure)
    yield from _shop(book)


def _name(place: Place, word: str, known: Collection[str], what: str) -> Iterator[Finding]:
    if word not in known:
        yield Finding(place, ID, f"there is no {what} '{word}'", nearest(word, known))


def _cites(book: Book, citations: Iterable[Citation | None]) -> Iterator[Finding]:
    for citation in citations:
        if citation is not None:
            yield from _name(citation.place, citation.source, book.sources, "source")


def _shop(book: Book) -> Iterator[Finding]:
    yield from _cites(book, (press.source for press in book.presses.values()))
    yield from _cites(book, (band.source for surface in book.surfaces.values()
                             for band in (surface.nut_factor, surface.taper_friction) if band))
    yield from _cites(book, (thing.source for things in (book.materials, book.shim_stocks, book.cautions)
                             for thing in things.values()))
    for record in (*book.conflicts.values(), *book.corrections.values()):
        about = (record.about,) if isinstance(record, Conflict) else record.about
        sources = (side.source for side in record.sides) if isinstance(record, Conflict) else record.sources
        yield from _cites(book, sources)
        for reference in about:
            yield from _name(reference.place, *looked_up(book, reference, whole=not isinstance(record, Conflict)))


def _procedure(book: Book, machine: Machine, procedure: Procedure) -> Iterator[Finding]:
    at = procedure.key_places.get
    place = procedure.place
    siblings = book.procedure_ids[machine.id]
    for name in procedure.after:
        yield from _name(at("after", place), name, siblings, "procedure")
    for name in procedure.must_be_shut:
        yield from _loose_end(book, machine, procedure, name, at("must be shut", place), everywhere=True)
    for name in procedure.variants:
        yield from _name(at("applies to", place), name, machine.main.variants, f"variant of the {machine.main.title}")
    if procedure.each:
        yield from _name(at("each", place), procedure.each, machine.places, "group of places")
    for name in procedure.cautions:
        yield from _name(at("cautions", place), name, book.cautions, "caution")
    for sentence in (procedure.summary, procedure.skill, *procedure.conditions, *(n.says for n in procedure.notes)):
        yield from _sentence(book, machine, procedure, sentence)
    yield from _needs(book, procedure)
    for spec in procedure.specs.values():
        yield from _spec(book, machine, procedure, spec)
    for computed in procedure.computed.values():
        for varies in computed.inputs.values():
            yield from _varies(machine, varies)
    steps = {step.id for step in procedure.steps}
    for note in procedure.notes:
        yield from _jumps(book, procedure, note.leads_to, note.place, steps)
    for step in procedure.steps:
        yield from _step(book, machine, procedure, step, steps)


def _needs(book: Book, procedure: Procedure) -> Iterator[Finding]:
    for need in procedure.needs.presses:
        yield from _name(need.place, need.press, book.presses, "press")
        if need.press in book.presses:
            yield from _name(need.place, need.gauge, book.presses[need.press].gauges, f"gauge of {need.press}:")
    shelves = {"wrench": book.wrenches, "scale": book.scales, "made": book.made_tools}
    for need in procedure.needs.tools:
        if need.sort in shelves:
            yield from _name(need.place, need.name, shelves[need.sort], f"{need.sort}" if need.sort != "made" else "made tool")
        if need.adapter:
            yield from _name(need.place, need.adapter, book.adapters, "adapter")


def _spec(book: Book, machine: Machine, procedure: Procedure | None, spec: Spec) -> Iterator[Finding]:
    at = spec.key_places.get
    for key, word, known in (("wrench", spec.wrench, book.wrenches), ("adapter", spec.adapter, book.adapters),
                             ("places", spec.places, machine.places)):
        if word:
            yield from _name(at(key, spec.place), word, known, "group of places" if key == "places" else key)
    for varies in (spec.thread, spec.grade, spec.surface, spec.checked_against):
        if varies:
            yield from _varies(machine, varies)
    for case in spec.surface.cases if spec.surface else ():
        yield from _name(case.place, case.value, book.surfaces, "surface")
    for reference in (spec.must_not_outpull,):
        if reference and procedure:
            yield from of_reference(book, machine, procedure, reference)
    for sentence in (spec.note, spec.limited_by):
        yield from _sentence(book, machine, procedure, sentence)
    for figure in spec.figures:
        yield from _cites(book, figure.sources)
        for varies in (figure.worth, figure.comes_from):
            if varies:
                yield from _varies(machine, varies)
        for case in figure.comes_from.cases if figure.comes_from else ():
            if procedure:
                yield from of_reference(book, machine, procedure, case.value)
        for word, known, what in ((figure.kept_for_record, book.conflicts, "conflict"),
                                  (figure.superseded_by, book.corrections, "correction")):
            if word:
                yield from _name(figure.place, word, known, what)
        for sentence in (figure.because, figure.in_doubt, figure.to_be_found_by):
            yield from _sentence(book, machine, procedure, sentence)


def _varies(machine: Machine, varies: Varies) -> Iterator[Finding]:
    for carrier in varies.by:
        yield from _name(varies.place, carrier, machine.carriers, "carrier")
    seen = set()
    for case in varies.cases:
        for carrier, selector in zip(varies.by, case.when):
            if selector.serials is None and carrier in machine.carriers and selector.place not in seen:
                seen.add(selector.place)
                yield from _name(selector.place, selector.text, machine.carriers[carrier].variants,
                                 f"variant of the {machine.carriers[carrier].title}")


def _step(book: Book, machine: Machine, procedure: Procedure, step: Step, steps: set[str]) -> Iterator[Finding]:
    at = step.key_places.get
    for sentence in step.sentences():
        if "{" in sentence.text:
            yield from _sentence(book, machine, procedure, sentence)
    for name in step.cautions:
        yield from _name(at("cautions", step.place), name, book.cautions, "caution")
    for name in step.measures:
        yield from _name(at("measures", step.place), name, machine.carriers, "carrier")
    if step.each and step.each != procedure.each:         # one that a step has from its procedure is told there
        yield from _name(at("each", step.place), step.each, machine.places, "group of places")
    for reference in step.specs:
        yield from of_reference(book, machine, procedure, reference)
    for record in step.records:
        if record.places:
            yield from _name(record.place, record.places, machine.places, "group of places")
        if record.spec:
            yield from of_reference(book, machine, procedure, record.spec)
    if step.go_to or step.records:
        jumps = (*step.go_to, *(name for record in step.records if record.if_outside for name in record.if_outside.go_to))
        yield from _jumps(book, procedure, jumps, at("go to", step.place), steps)
    for name in step.closes:
        yield from _loose_end(book, machine, procedure, name, at("closes", step.place))
    for end in step.leaves:
        for name in end.again:
            yield from _loose_end(book, machine, procedure, name, end.place, everywhere=True)
        if end.each:
            yield from _name(end.place, end.each, machine.places, "group of places")
        for sentence in (end.state, end.because, end.if_forgotten):
            yield from _sentence(book, machine, procedure, sentence)


def _jumps(book: Book, procedure: Procedure, jumps: Iterable[str], place: Place, steps: set[str]) -> Iterator[Finding]:
    """`step`, or `procedure#step` of the same machine."""
    for name in jumps:
        owner, _, target = name.rpartition("#")
        home = book.procedures.get((procedure.machine, owner)) if owner else procedure
        if home is None:
            yield from _name(place, owner, book.procedure_ids[procedure.machine], "procedure")
        elif target.isdigit():
            yield Finding(place, ID, f"'{target}' is a number, and numbers change when a step comes in between", "write the id of the step")
        else:
            yield from _name(place, target, {step.id for step in home.steps} if owner else steps, f"step in '{owner}' that is called" if owner else "step")


def _loose_end(book: Book, machine: Machine, home: Procedure, name: str, place: Place, everywhere: bool = False) -> Iterator[Finding]:
    """`procedure/end`; a bare `end` is the procedure's own, or with `everywhere` the only one of that name on the machine."""
    owner, _, end = name.rpartition("/")
    if owner and owner not in book.procedure_ids[machine.id]:
        yield from _name(place, owner, book.procedure_ids[machine.id], "procedure")
    elif owner or not everywhere:
        there = book.procedures[machine.id, owner] if owner else home
        yield from _name(place, end, {left.end.id for left in left_by(there)}, f"loose end in {owner}:" if owner else "loose end")
    elif book.ledgers[machine.id].named(home, name) is None:
        yield Finding(place, ID, f"there is no one loose end '{name}'", nearest(name, book.ledgers[machine.id].left))


def _sentence(book, machine, procedure: Procedure | None, sentence: Sentence | None) -> Iterator[Finding]:
    for reference in sentence.references() if sentence else ():
        if procedure:
            yield from of_reference(book, machine, procedure, reference)
        else:
            yield from _name(reference.place, reference.name, machine.figures, "figure of the machine")


def of_reference(book: Book, machine: Machine, procedure: Procedure, reference: Reference) -> Iterator[Finding]:
    """What of the reference points nowhere: its owner, its name, or its part."""
    target = book.target(reference, procedure)
    if target is None:
        owners = [machine.id, *book.procedure_ids[machine.id]]
        if reference.owner is not None and reference.owner not in owners:
            yield from _name(reference.place, reference.owner, owners, "procedure or machine")
            return
        home = procedure if reference.owner is None else book.procedures.get((machine.id, reference.owner))
        known = {**home.specs, **home.computed} if home else machine.figures
        yield from _name(reference.place, reference.name, known, "figure")
    elif isinstance(target, Spec) and reference.part is not None:
        if reference.part not in ROLES:
            yield from _name(reference.place, reference.part, ROLES, "role")
        elif not target.in_role(reference.part):
            yield from _name(reference.place, reference.part, {figure.role for figure in target.figures},
                             f"figure in '{reference.name}' with the role")
    elif isinstance(target, Computed) and reference.part is None:
        yield Finding(reference.place, ID, f"'{reference}' names a computed result but not which number of it",
                      f"write {reference}. and the name of the number")
