"""What the scripts of a bench page are given: serial ranges, places, meanings of steps, limits of readings, as plain data."""

from ..core.figure import Spec
from ..core.machine import Machine
from ..core.quantity import Quantity
from ..core.record import step_meanings, step_references
from ..core.units import Unit, counterpart, units_of
from ..core.working import measured_at
from .cases import Told, told_apart
from .lookup import Lookup, shown
from .view_spec import role_word

#: Workings that static/bench/follows.js runs.
_IN_THE_BROWSER = ("bearing-shim", "disc-pack", "gasket-end-play", "gear-shift", "shim-stack", "taper-advance")
#: What a reading is held against. A single aim is no limit.
_LIMITS = ("window", "floor", "ceiling", "reject", "stop", "target")


def bench_data(lookup: Lookup, codes: dict[str, str], names: dict[str, list[str]], title: str) -> dict:
    """`names` gives the lasting names of each step's readings; numbers are in SI, units as [symbol, factor, offset]."""
    machine, procedure = lookup.machine, lookup.procedure
    meanings = {variant: step_meanings(lookup.book, procedure, lookup.derived, variant) for variant in procedure.variants}
    return {
        "machine": machine.id, "machine title": machine.title, "procedure": procedure.id, "title": title, "codes": codes,
        "was": list(procedure.was), "variants": list(procedure.variants), "carriers": _carriers(lookup),
        "places": _places(machine, procedure.each), "group": procedure.each or "",
        "steps": [{
            "id": step.id, "was": list(step.was), "number": number, "hold": step.hold_point is not None, "second": step.second_person,
            "places": _places(machine, step.each) if step.each != procedure.each else [], "at": step.at or "",
            "meaning": {variant: meanings[variant][step.id] for variant in procedure.variants if step.id in meanings[variant]},
            "records": [_record(lookup, record, step, name) for record, name in zip(step.records, names[step.id])],
            "corrections": _corrections(lookup, step), "follows": _follows(lookup, step),
        } for number, step in enumerate(procedure.steps, 1)],
    }


def _carriers(lookup: Lookup) -> list[dict]:
    """The machine itself first; of the others those that may come from a donor."""
    swapped = lookup.swapped()
    return [{"id": carrier.id, "title": carrier.title, "told by": carrier.told_by,
             "variants": [{"id": variant.id, "title": variant.title, "first": variant.serials and variant.serials.first,
                           "last": variant.serials and variant.serials.last, "ranged": variant.serials is not None,
                           "measure": variant.measure.typed() if variant.measure else ""} for variant in carrier.variants.values()]}
            for carrier in lookup.machine.carriers.values() if carrier.id in swapped or carrier is lookup.machine.main]


def _places(machine: Machine, group: str | None) -> list[dict]:
    return [{"name": name, "only": list(machine.only.get((group, name), ()))} for name in machine.places.get(group or "", ())]


def _record(lookup: Lookup, record, step, name: str) -> dict:
    """A reading with the limits of every case; without a spec or a kind it is taken down as words."""
    target = lookup.book.target(record.spec, lookup.procedure) if record.spec else None
    cases, first, kind = (), None, record.kind
    if isinstance(target, Spec):
        there = lookup.of(record.spec.owner)
        figures = [figure for figure in target.figures if figure.in_force() and figure.role in _LIMITS
                   and record.spec.part in (None, figure.role)]
        every = [(combination, tuple(filter(None, (_limit(there, target, figure, key, combination) for figure in figures))))
                 for key, combination in there.every()]
        cases = told_apart(lookup.machine, every)
        kind = target.kind
        worths = (there.worth(target, figure, key, combination) for key, combination in there.every() for figure in figures)
        first = next((worth.unit for worth in worths if isinstance(worth, Quantity)), None)
    elif record.spec and target is not None:
        runs = [(combination, run.outcome) for combination, run in lookup.of(record.spec.owner).worked(record.spec.name)]
        values = [(combination, value) for combination, outcome in runs for value in outcome.values
                  if value.unit and record.spec.part in (None, value.name)]
        cases = told_apart(lookup.machine, [(combination, (_band(value),)) for combination, value in values])
        first, kind = (values[0][1].unit, values[0][1].kind) if values else (None, kind)
    places = record.places if record.places and record.places != step.each else None
    return {"name": name, "label": record.label, "kind": kind or "", "units": _units(first, kind),
            "places": _places(lookup.machine, places) if places and places != lookup.procedure.each else [],
            "cases": [{"variants": told.variants, "case": told.case, "limits": [dict(limit) for limit in told.value]} for told in cases]}


def _limit(there: Lookup, spec: Spec, figure, key, combination) -> tuple | None:
    """As pairs, so that equal limits are told apart by nothing."""
    worth = there.worth(spec, figure, key, combination)
    if not isinstance(worth, Quantity) or there.recheck(spec, key, figure) or (figure.role == "target" and worth.si_low == worth.si_high):
        return None
    text = shown(worth, figure.role)
    return (("role", figure.role), ("word", "" if figure.role == "window" else role_word(figure.role, (Told("", "", "", text),))), ("low", worth.si_low), ("high", worth.si_high),
            ("open", worth.form in ("over", "under")), ("text", f"{text.printed} ({text.converted})" if text.converted else text.printed))


def _band(value) -> tuple:
    return (("role", "window" if value.low < value.high else "target"), ("word", ""), ("low", value.low), ("high", value.high), ("open", False),
            ("text", f"{value.printed} = {value.converted}" if value.converted else value.printed))


def _units(first: Unit | None, kind: str | None) -> list:
    """The figure's own unit, what the other system shows it in, then what else the kind is read in."""
    if not kind or kind in ("none", "thread"):
        return []
    units = dict.fromkeys([*((first, *counterpart(first, kind)) if first else ()), *units_of(kind)[:4]])
    return [[unit.symbol, float(unit.factor), float(unit.offset)] for unit in units][:5]


def _follows(lookup: Lookup, step) -> list[dict]:
    """The results that wait for this step's reading and that a browser can work out: their other inputs in each case, as typed."""
    found = []
    for computed in lookup.procedure.computed.values() if step.records else ():
        runs = [(combination, run) for combination, run in lookup.worked(computed.id) if run.working in _IN_THE_BROWSER]
        read = {name for _, run in runs for name, text in run.inputs.items() if measured_at(text) == step.id}
        if len(read) == 1:
            name = read.pop()
            cases = told_apart(lookup.machine, [(combination, tuple(sorted((key, text) for key, text in run.inputs.items() if key != name)))
                                                for combination, run in runs])
            found.append({"working": computed.working, "title": computed.label, "input": name,
                          "cases": [{"variants": told.variants, "case": told.case, "inputs": dict(told.value)} for told in cases]})
    return found


def _corrections(lookup: Lookup, step) -> list[dict]:
    """Those about a figure the step names, newest first: what an older mark is answered by."""
    named = {(reference.owner or lookup.procedure.id, reference.name) for reference in step_references(step)}
    found = [correction for correction in lookup.book.corrections.values()
             if any((about.owner, about.name) in named for about in correction.about)]
    return [{"id": each.id, "on": each.on, "old": each.old.text, "new": each.new.text, "done": each.if_already_done}
            for each in sorted(found, key=lambda each: (each.on, each.id), reverse=True)]
