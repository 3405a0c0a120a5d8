"""A book: everything its sources say, before anything is worked out."""

from dataclasses import dataclass, field
from functools import cached_property

from .authority import Caution, Conflict, Correction, Source
from .edition import Edition
from .equipment import Adapter, MadeTool, Material, Press, Scale, ShimStock, Surface, Wrench
from .every_sentence import sentences_of_procedure
from .figure import Spec
from .loose_ends import Ledger
from .machine import Machine
from .open_ends import OpenEnds
from .order import Order
from .picture import PictureFile
from .procedure import Computed, Procedure
from .sentence import Reference


@dataclass(frozen=True)
class Book:
    """Every map is from id to record; procedures are keyed by (machine id, procedure id)."""

    machines: dict[str, Machine] = field(default_factory=dict)
    sources: dict[str, Source] = field(default_factory=dict)
    presses: dict[str, Press] = field(default_factory=dict)
    wrenches: dict[str, Wrench] = field(default_factory=dict)
    adapters: dict[str, Adapter] = field(default_factory=dict)
    scales: dict[str, Scale] = field(default_factory=dict)
    surfaces: dict[str, Surface] = field(default_factory=dict)
    materials: dict[str, Material] = field(default_factory=dict)
    shim_stocks: dict[str, ShimStock] = field(default_factory=dict)
    made_tools: dict[str, MadeTool] = field(default_factory=dict)
    cautions: dict[str, Caution] = field(default_factory=dict)
    conflicts: dict[str, Conflict] = field(default_factory=dict)
    corrections: dict[str, Correction] = field(default_factory=dict)
    procedures: dict[tuple[str, str], Procedure] = field(default_factory=dict)
    editions: dict[tuple[str, str], tuple[Edition, ...]] = field(default_factory=dict)      # by (machine, procedure), in the order of issue
    pictures: dict[str, PictureFile] = field(default_factory=dict)      # by path from the book
    not_whole: set[str] = field(default_factory=set)      # names of records, and paths of files, of which something could not be read

    @cached_property
    def procedure_ids(self) -> dict[str, tuple[str, ...]]:
        """Machine id -> its procedures' ids, once the book is whole."""
        found: dict[str, list[str]] = {machine: [] for machine in self.machines}
        for machine, name in self.procedures:
            found[machine].append(name)
        return {machine: tuple(names) for machine, names in found.items()}

    @cached_property
    def orders(self) -> dict[str, Order]:
        """Machine id -> the order of its procedures, once the book is whole."""
        return {machine: Order(self.procedures[machine, name] for name in names) for machine, names in self.procedure_ids.items()}

    @cached_property
    def ledgers(self) -> dict[str, Ledger]:
        """Machine id -> its loose ends, once the book is whole."""
        return {machine: Ledger(self.machines[machine], order) for machine, order in self.orders.items()}

    @cached_property
    def open_ends(self) -> dict[str, OpenEnds]:
        """Machine id -> what is open when each procedure starts and stops, once the book is whole."""
        return {machine: OpenEnds(ledger) for machine, ledger in self.ledgers.items()}

    @cached_property
    def words(self) -> dict[tuple[str, str], str]:
        """Every sentence of each procedure, one a line and in small letters: a rule that looks for a word asks here before it asks
        each sentence."""
        return {key: "\n".join([sentence.text for sentence in sentences_of_procedure(procedure)]).casefold()
                for key, procedure in self.procedures.items()}

    def machine_of(self, name: str) -> str:
        """The id that a machine has now, by it or by one that it had; any other name as it is."""
        return name if name in self.machines else next((machine.id for machine in self.machines.values() if name in machine.was), name)

    def target(self, reference: Reference, home: Procedure) -> Spec | Computed | None:
        """What a reference made in `home` points at: a spec, a computed result, a figure of the machine, or None."""
        if reference.owner is None:
            return home.specs.get(reference.name) or home.computed.get(reference.name)
        if reference.owner == home.machine and reference.owner in self.machines:
            return self.machines[reference.owner].figures.get(reference.name)
        other = self.procedures.get((home.machine, reference.owner))
        return (other.specs.get(reference.name) or other.computed.get(reference.name)) if other else None
