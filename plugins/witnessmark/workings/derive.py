"""A book to everything worked out from it, one Derived for each procedure and each machine."""

from collections.abc import Iterable

from ..core.book import Book
from ..core.derived import Derived, key_of
from ..core.finding import Finding
from ..core.machine import Machine
from ..core.procedure import Procedure
from ..core.working import Outcome
from .evaluate import cards_of, resolve_spec, run_computed
from .evaluation import Evaluation, carriers_that_matter
from .torque_run import torque_run


def derive_book(book: Book) -> tuple[dict[tuple[str, str], Derived], list[Finding]]:
    """Keyed by (machine, procedure); a machine's own figures stand under (machine, "")."""
    return joined(part for machine, names in book.procedure_ids.items()
                  for part in (derive_machine(book, machine), *(derive_procedure(book, (machine, name)) for name in names)))


def joined(parts: Iterable[tuple[dict[tuple[str, str], Derived], list[Finding]]]) -> tuple[dict[tuple[str, str], Derived], list[Finding]]:
    """What was derived part by part, as one."""
    derived, findings = {}, {}                  # two parts may find the same of one thing
    for part, found in parts:
        derived.update(part)
        findings.update(dict.fromkeys(found))
    return derived, list(findings)


def derive_machine(book: Book, machine: str) -> tuple[dict[tuple[str, str], Derived], list[Finding]]:
    """The same for the figures of a machine itself."""
    work = Evaluation(book)
    return {(machine, ""): _of_machine(work, book.machines[machine])}, list(work.findings)


def derive_procedure(book: Book, key: tuple[str, str]) -> tuple[dict[tuple[str, str], Derived], list[Finding]]:
    """The same for one procedure; nothing is looked at but its machine, the shop, and the procedures that it names."""
    work = Evaluation(book)
    return {key: _of_procedure(work, book.machines[key[0]], book.procedures[key])}, list(work.findings)


def _of_machine(work: Evaluation, machine: Machine) -> Derived:
    derived = Derived()
    for variant in machine.main.variants:
        combination = machine.own(variant)
        derived.combinations[variant] = (key_of(combination),)
        for spec in machine.figures.values():
            derived.resolved[key_of(combination), spec.id] = resolve_spec(work, machine, None, spec, combination)
    return derived


def _of_procedure(work: Evaluation, machine: Machine, procedure: Procedure) -> Derived:
    derived = Derived()
    swapped = carriers_that_matter(machine, procedure)
    for variant in procedure.variants:
        if variant not in machine.main.variants:
            continue                                            # an unknown variant is a rule's finding
        combinations = list(machine.combinations(variant, swapped))
        derived.combinations[variant] = tuple(map(key_of, combinations))
        for combination in combinations:
            key = key_of(combination)
            for spec in procedure.specs.values():
                derived.resolved[key, spec.id] = resolve_spec(work, machine, procedure, spec, combination)
            for computed in procedure.computed.values():
                run = run_computed(work, machine, procedure, computed, combination)
                if run.outcome != Outcome():                    # nothing to show where an input is deliberately none
                    derived.worked[key, computed.id] = (run,)
            for spec in procedure.specs.values():
                if cards := cards_of(work, machine, procedure, spec, combination):
                    derived.worked[key, spec.id] = cards
            for spec in procedure.specs.values():
                if spec.kind == "torque" and (run := torque_run(work, machine, procedure, spec, derived, combination)):
                    derived.worked[key, spec.id] = (run,)
    return derived
