"""The bench view of a procedure: its steps with the figures, cards and settings each needs standing at it."""

from typing import NamedTuple

from ..core.figure import Spec
from ..core.procedure import Computed
from ..core.record import step_references
from .address import correct_url, machine_correct_url, procedure_url
from .bench_data import bench_data
from .lookup import Lookup
from .prose import Prose
from .view_press import PressCards
from .view_procedure import ProcedureView, procedure_view
from .view_spec import SpecView, spec_view
from .view_step import RecordView, StepView, Target
from .view_torque import Result, Torque


class BenchStep(NamedTuple):
    """A step; `variants` it is done on, joined by spaces; what it names in full; each value to write down under its lasting name."""

    view: StepView
    variants: str
    specs: tuple[SpecView, ...]
    cards: tuple[PressCards, ...]
    torques: tuple[Torque, ...]
    results: tuple[Result, ...]
    records: tuple[tuple[str, RecordView], ...]
    correct: tuple[Target, ...]         # where each figure and result that stands at it is corrected


class BenchView(NamedTuple):
    """`data` is what the scripts of the page are given, as plain data."""

    procedure: ProcedureView
    steps: tuple[BenchStep, ...]
    data: dict

    @property
    def meanings(self) -> dict[str, dict[str, str]]:
        """The fingerprint of each step on each variant it is done on."""
        return {step["id"]: step["meaning"] for step in self.data["steps"]}


def bench_view(lookup: Lookup, root: str, codes: dict[str, str], workings, book_id: str) -> BenchView:
    prose = Prose(lookup, linked=False)
    view = procedure_view(lookup, prose, root, codes, workings)
    steps = tuple(_step(lookup, step, shown, view, prose, root) for step, shown in zip(lookup.procedure.steps, view.steps))
    names = {step.view.id: [name for name, _ in step.records] for step in steps}
    data = bench_data(lookup, codes, names, view.title)
    return BenchView(view, steps, {"book": book_id, "root": root, "page": procedure_url(lookup.machine.id, lookup.procedure.id), **data})


def _step(lookup: Lookup, step, shown: StepView, view: ProcedureView, prose: Prose, root: str) -> BenchStep:
    specs, results, own, correct = [], [], set(), []
    for reference in step_references(step):
        target = lookup.book.target(reference, lookup.procedure)
        if isinstance(target, Computed):
            found = [result for result in view.results if result.id == target.id and not reference.owner and result not in results]
            results += found
            correct += [Target(result.title, f"../correct/#{result.anchor}") for result in found]
        elif isinstance(target, Spec):
            there = lookup.of(reference.owner)
            found = next((each for each in view.specs if each.id == target.id), None) if there is lookup else None
            found = found or spec_view(there, target, Prose(there, linked=False), root)
            found = found._replace(rows=tuple(row for row in found.rows if not row.struck and (row.view.role != "found" or row.in_doubt)))
            if found.rows and found not in specs:
                specs.append(found)
                at = "../correct/" if there is lookup else root + (correct_url(there.procedure) if there.procedure else machine_correct_url(lookup.machine.id))
                correct.append(Target(found.label, f"{at}#{found.id}"))
            if there is lookup:
                own.add(target.id)
    variants = " ".join(variant for variant in lookup.procedure.variants
                        if step.done_on(variant, lookup.machine.main.variants[variant].serials))
    return BenchStep(shown, variants, tuple(specs), tuple(cards for cards in view.cards if cards.spec in own),
                     tuple(torque for torque in view.torques if torque.spec in own), tuple(results),
                     tuple(zip(record_names(step), shown.records)), tuple(correct))


def record_names(step) -> tuple[str, ...]:
    """A name for each value written down that outlives a change of words: what it is held against, else its label."""
    names: list[str] = []
    for record in step.records:
        name = str(record.spec) if record.spec else record.label
        names.append(name if name not in names else f"{name} {record.label}")
    return tuple(names)
