"""The whole book as data, `book.json`: every figure with its place and source, every result with its inputs.

Deterministic: sorted keys, no clock. Numbers are SI floats as Python prints them shortest."""

import json

from ..core.authority import STANDING
from ..core.book import Book
from ..core.dependency import dependencies
from ..core.derived import Derived, Resolved, Worked
from ..core.figure import Citation, Spec
from ..core.kinds import KINDS
from ..core.memory import FORGETFUL, Memory
from ..core.procedure import Procedure, Step
from ..core.quantity import Quantity
from ..core.record import worth_text
from ..core.rests_on import ANYTHING, RestsOn
from ..core.sentence import Sentence
from .fill_template import static_files
from .shelf_json import shelves

VERSION = 1


def schema_json(name: str = "book") -> str:
    """The schema of what this package writes for programs: book, compare or editions."""
    return static_files()[f"{name}.schema.json"].decode()


def book_json(book: Book, derived: dict[tuple[str, str], Derived], codes: dict[tuple[str, str, str], str],
              rests: RestsOn = ANYTHING, memory: Memory = FORGETFUL) -> str:
    """The text of book.json. That of a procedure is put together apart, so that `memory` may hold it."""
    procedures = [memory.of(("book.json", key), rests.pages(key), lambda: _json(_procedure(book, procedure, derived[key], codes)))
                  for key, procedure in sorted(book.procedures.items())]
    data = {
        "schema": "book.schema.json", "version": VERSION,
        "machines": [_machine(book, machine, derived[machine.id, ""]) for _, machine in sorted(book.machines.items())],
        "sources": [{"id": s.id, "title": s.title, "kind": s.kind, "standing": s.standing, "edition": s.edition}
                    for _, s in sorted(book.sources.items())],
        "shelves": shelves(book),
        "dependencies": [{"of": edge.of, "on": edge.on, "for": list(edge.when)} for edge in dependencies(book)],
        "conflicts": [{"id": c.id, "about": str(c.about), "printed": _text(c.printed), "why": _text(c.why), "real": c.real,
                       "sides": [{"says": _text(side.says), "source": _cited(side.source)} for side in c.sides],
                       "place": str(c.place)} for _, c in sorted(book.conflicts.items())],
        "corrections": [{"id": c.id, "on": c.on, "about": [str(r) for r in c.about], "old": _text(c.old), "new": _text(c.new),
                         "reason": _text(c.reason), "if already done": c.if_already_done, "place": str(c.place)}
                        for _, c in sorted(book.corrections.items())],
    }
    parts = {**{name: _json(part) for name, part in data.items()}, "procedures": f"[{', '.join(procedures)}]"}
    return "{" + ", ".join(f'"{name}": {part}' for name, part in sorted(parts.items())) + "}\n"


def _json(part) -> str:
    return json.dumps(part, ensure_ascii=False, sort_keys=True)


def _machine(book: Book, machine, derived: Derived) -> dict:
    return {
        "id": machine.id, "title": machine.title, "viewpoint": _text(machine.viewpoint), "hand-over": machine.hand_over, "was": list(machine.was),
        "carriers": [{"id": c.id, "title": c.title, "told by": c.told_by, "variants": [
            {"id": v.id, "serials": str(v.serials) if v.serials else None, "measure": v.measure and v.measure.typed()}
            for v in c.variants.values()]} for c in machine.carriers.values()],
        "places": {name: list(places) for name, places in machine.places.items()},
        "places of some": [{"group": group, "place": name, "variants": list(variants)} for (group, name), variants in machine.only.items()],
        "figures": [_spec(book, spec, derived) for spec in machine.figures.values()],
    }


def _procedure(book: Book, procedure: Procedure, derived: Derived, codes) -> dict:
    key = (procedure.machine, procedure.id)
    return {
        "id": procedure.id, "machine": procedure.machine, "title": procedure.title, "place": str(procedure.place),
        "assembly": procedure.assembly, "after": list(procedure.after), "must be shut": list(procedure.must_be_shut), "variants": list(procedure.variants), "each": procedure.each, "was": list(procedure.was),
        "people": procedure.people, "tried": {"serial": procedure.tried.serial, "on": procedure.tried.on},
        "sheets": {variant: codes[*key, variant] for variant in derived.combinations},
        "needs": {
            "presses": [{"press": n.press, "gauge": n.gauge} for n in procedure.needs.presses],
            **{name: [{"sort": n.sort, "name": n.name, "number": n.number, "count": n.count, "one use": n.one_use,
                       "fate": n.fate, "adapter": n.adapter, "counted": n.counted, "picture": n.picture and {"file": n.picture.file, "shows": n.picture.shows}} for n in getattr(procedure.needs, name)]
               for name in ("tools", "supplies", "parts")}},
        "specs": [_spec(book, spec, derived) for spec in procedure.specs.values()],
        "worked": [_worked(run) for _, runs in derived.worked.items() for run in runs],
        "steps": [_step(step) for step in procedure.steps],
        "notes": [{"id": n.id, "kind": n.kind, "says": _text(n.says), "review": n.review} for n in procedure.notes],
    }


def _spec(book: Book, spec: Spec, derived: Derived) -> dict:
    return {
        "id": spec.id, "label": spec.label, "kind": spec.kind, "si unit": KINDS[spec.kind].si_symbol, "was": list(spec.was),
        "condition": spec.condition, "places": spec.places, "place": str(spec.place), "wrench": spec.wrench,
        "adapter": spec.adapter, "must not out-pull": spec.must_not_outpull and str(spec.must_not_outpull),
        "checked against": spec.checked_against and [[[s.text for s in case.when], worth_text(case.value)]
                                                     for case in spec.checked_against.cases],
        "figures": [{"for": dict(combination), **_figure(book, each)}
                    for (combination, owner), resolved in derived.resolved.items() if owner == spec.id for each in resolved],
    }


def _figure(book: Book, resolved: Resolved) -> dict:
    figure, worth = resolved.figure, resolved.worth
    quantity = worth if isinstance(worth, Quantity) else None
    return {
        "role": figure.role, "as written": worth_text(worth), "in force": resolved.in_force(),
        "si": [quantity.si_low, quantity.si_high] if quantity and resolved.in_force() else None,
        "unit": quantity and quantity.unit.symbol, "from": [str(c.value) for c in figure.comes_from.cases] if figure.comes_from else None,
        "sources": [_cited(citation) for citation in figure.sources],
        "standing": list(dict.fromkeys(STANDING[book.sources[c.source].kind] for c in figure.sources if c.source in book.sources)),
        "condition": figure.condition, "when": figure.when, "kept for the record": figure.kept_for_record,
        "superseded by": figure.superseded_by, "in doubt": figure.in_doubt and _text(figure.in_doubt),
        "re-check": resolved.recheck,
        "to be found by": figure.to_be_found_by and _text(figure.to_be_found_by), "was": list(figure.was), "place": str(figure.place),
    }


def _worked(run: Worked) -> dict:
    return {
        "working": run.working, "owner": run.owner, "for": dict(run.combination), "press": run.press, "gauge": run.gauge,
        "inputs": run.inputs, "values": [{"name": v.name, "kind": v.kind, "si": [v.low, v.likely, v.high],
                                          "shown": v.printed, "converted": v.converted} for v in run.outcome.values],
        "refused": [{"why": r.message, "instead": r.instead} for r in run.outcome.refusals], "warnings": list(run.outcome.warnings),
        "waits for": list(run.outcome.waits),
    }


def _step(step: Step) -> dict:
    return {
        "id": step.id, "do": _text(step.do), "check": _text(step.check), "if outside": _text(step.if_outside),
        "go to": list(step.go_to), "cautions": list(step.cautions), "specs": [str(spec) for spec in step.specs],
        "each": step.each, "at": step.at, "only": [selector.text for selector in step.only], "was": list(step.was),
        "acts": [str(act) for act in step.acts], "opens up": list(step.opens_up), "measures": list(step.measures), "hold point": _text(step.hold_point),
        "second person": step.second_person, "closes": list(step.closes), "place": str(step.place),
        "picture": step.picture and {"file": step.picture.file, "shows": step.picture.shows},
        "records": [{"label": r.label, "spec": r.spec and str(r.spec), "places": r.places} for r in step.records],
        "leaves": [{"id": e.id, "state": _text(e.state), "because": _text(e.because), "if forgotten": _text(e.if_forgotten),
                    "never while open": [str(act) for act in e.never_while_open], "each": e.each, "closes in": e.closes_in, "opens again": list(e.again)}
                   for e in step.leaves],
    }


def _text(sentence: Sentence | None) -> str | None:
    return sentence.text if sentence else None


def _cited(citation: Citation | None) -> dict | None:
    return citation and {"source": citation.source, "where": citation.where}
