"""What was called otherwise: an old record told in today's names, so that a rename is a rename and no change."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from ..core.book import Book
from ..core.sentence import read_reference
from ..core.place import Place

_NOWHERE = Place("")
_BRACED = re.compile(r"\{([^{}]*)\}")


@dataclass(frozen=True)
class Names:
    """Old id to new id, for what an old record of one procedure names; empty maps where nothing was renamed."""

    machine: str
    former: tuple[str, ...] = ()            # ids that the machine itself had
    procedures: Mapping[str, str] = field(default_factory=dict)
    figures: Mapping[tuple[str, str], str] = field(default_factory=dict)      # (old procedure id, old id) -> new id
    steps: Mapping[tuple[str, str], str] = field(default_factory=dict)
    ends: Mapping[tuple[str, str], str] = field(default_factory=dict)

    def figure(self, home: str, name: str) -> str:
        return self.figures.get((home, name), name)

    def step(self, home: str, text: str) -> str:
        owner, mark, name = text.rpartition("#")
        return f"{self.procedures.get(owner, owner)}{mark}{self.steps.get((owner or home, name), name)}"

    def end(self, home: str, text: str) -> str:
        owner, mark, name = text.rpartition("/")
        return f"{self.procedures.get(owner, owner)}{mark}{self.ends.get((owner or home, name), name)}"

    def reference(self, home: str, text: str) -> str:
        """`owner/name.part` in today's names; any other text as it is."""
        found = read_reference(text, _NOWHERE)
        if found is None or found.owner == self.machine:
            return text
        if found.owner in self.former:
            return f"{self.machine}/{found.name}" + (f".{found.part}" if found.part else "")
        owner = self.procedures.get(found.owner, found.owner) if found.owner else None
        return (f"{owner}/" if owner else "") + self.figure(found.owner or home, found.name) + (f".{found.part}" if found.part else "")

    def sentence(self, home: str, text: str) -> str:
        """A sentence whose references stand in braces."""
        return _BRACED.sub(lambda match: f"{{{self.reference(home, match[1])}}}", text)


def names_since(book: Book, machine: str) -> Names:
    """All that `was` says in a machine's procedures, by the names of old."""
    procedures: dict[str, str] = {}
    figures: dict[tuple[str, str], str] = {}
    steps: dict[tuple[str, str], str] = {}
    ends: dict[tuple[str, str], str] = {}
    taken = book.procedure_ids[machine]
    for procedure in (book.procedures[machine, name] for name in taken):
        former = [name for name in procedure.was if name not in taken]
        procedures.update(dict.fromkeys(former, procedure.id))
        for home in (procedure.id, *former):
            figures.update(_old(home, (*procedure.specs.values(), *procedure.computed.values())))
            steps.update(_old(home, procedure.steps))
            ends.update(_old(home, [end for step in procedure.steps for end in step.leaves]))
    return Names(machine, tuple(each for each in book.machines[machine].was if each not in book.machines), procedures, figures, steps, ends)


def _old(home: str, things: Iterable) -> dict[tuple[str, str], str]:
    things = list(things)
    taken = {thing.id for thing in things}
    return {(home, old): thing.id for thing in things for old in thing.was if old not in taken}


def in_todays_names(record: dict, names: Names) -> dict:
    """The record of a sheet with every id that was renamed since by its new one."""
    home = record["procedure"]

    def spoken(acted: list) -> list:
        return [names.sentence(home, each) for each in acted]

    def left(states: list) -> list:
        return [[names.end(home, each[0]), *spoken(each[1:])] for each in states]

    def step(old: dict) -> dict:
        return {**old, "id": names.step(home, old["id"]), "acted on": [spoken(each) for each in old["acted on"]],
                "specs": [names.reference(home, each) for each in old["specs"]], "go to": [names.step(home, each) for each in old["go to"]],
                "closes": [names.end(home, each) for each in old["closes"]],
                "leaves": [[names.end(home, end[0]), end[1], names.procedures.get(end[2], end[2]), end[3], spoken(end[4]), *(names.end(home, each) for each in end[5:])] for end in old["leaves"]],
                "records": [[names.reference(home, entry[0]), entry[1], *[
                    spoken(each) if isinstance(each, list) else names.step(home, each) for each in entry[2:]]] for entry in old["records"]],
                "how left": left(old["how left"])}

    return {**record, "machine": names.machine, "procedure": names.procedures.get(home, home), "after": [names.procedures.get(each, each) for each in record["after"]],
            "must be shut": [names.end(home, each) for each in record["must be shut"]],
            "open at start": [[names.end(home, each[0]), *each[1:]] for each in record["open at start"]],
            "to prove": [[names.end(home, each[0]), each[1], each[2] and names.step(home, each[2])] for each in record["to prove"]],
            "how left": left(record["how left"]),
            "specs": [{**spec, "id": names.figure(home, spec["id"])} for spec in record["specs"]],
            "from elsewhere": [[names.reference(home, entry[0]), *entry[1:]] for entry in record["from elsewhere"]],
            "worked": [[*run[:2], names.figure(home, run[2]), *run[3:]] for run in record["worked"]],
            "steps": [step(old) for old in record["steps"]]}
