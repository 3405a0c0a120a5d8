"""Sources to a Book, with every finding of shape on the way."""

from functools import partial
from typing import Iterable

from ..core.book import Book
from ..core.edition import Edition
from ..core.finding import Finding, nearest
from ..core.memory import FORGETFUL, Memory
from ..core.machine import Machine
from ..core.place import Place
from ..core.procedure import Procedure
from .read_authority import AUTHORITY, read_authority
from .read_editions import read_editions, twice_issued
from .read_equipment import EQUIPMENT, read_equipment
from .read_machine import read_machine
from .read_procedure import read_procedure
from .scalars import Identifier
from .shape import Report
from .slips import DECEIVING
from .source_files import EDITIONS, SourceFile
from .yaml_tree import RULE, Node, Scalar, read_tree

FOLDERS = ("procedures", "site_data")
#: Rules of a file of which nothing could be read.
UNREAD = frozenset((RULE, DECEIVING, "unreadable"))


def load_book(files: Iterable[SourceFile], memory: Memory = FORGETFUL) -> tuple[Book, list[Finding]]:
    """The book that the files spell, as far as they can be read, and what is wrong with them. What `memory` holds is not read again."""
    report, book = Report(), Book()
    site_data: list[SourceFile] = []
    machines: list[SourceFile] = []
    procedures: list[SourceFile] = []
    editions: list[SourceFile] = []
    for file in files:
        if file.path.startswith(f"{EDITIONS}/") and file.path.endswith(".jsonl") and file.path.count("/") == 3:
            editions.append(file)
        elif (place := _room(_parts(file), site_data, machines, procedures)) is not None:
            place.append(file)
        else:
            report.error(Place(file.path), "unknown-file", "no one reads a file of this name here",
                         "use procedures/MACHINE/PROCEDURE.yaml, site_data/machines/MACHINE.yaml, or one of site_data/"
                         + ", ".join(f"{name}.yaml" for name in sorted({**EQUIPMENT, **AUTHORITY})))
    for file in site_data:
        name = _parts(file)[-1]
        reader = read_equipment if name in EQUIPMENT else read_authority
        if (node := _tree(file, report)) is not None:
            getattr(book, name).update(reader(name, node, report))
    for file in machines:
        if (node := _tree(file, report)) is not None:
            name = _id(file, node, report)
            if name and (machine := read_machine(name, node, report)):
                book.machines[name] = machine
            else:
                report.not_whole.add(_parts(file)[-1])
    for file in procedures:
        procedure, found = memory.of(("read", file.path), (file, machines), partial(_procedure, file, book.machines))
        report.add(found)
        if procedure is not None:
            book.procedures[procedure.machine, procedure.id] = procedure
    for file in editions:
        issued, found = memory.of(("read", file.path), file, partial(_editions, file))
        report.add(found)
        book.editions.update(issued)
    twice_issued(book.editions, report)
    book.not_whole.update(report.not_whole)
    return book, report.findings


def _parts(file: SourceFile) -> list[str]:
    return file.path.removesuffix(".yml").removesuffix(".yaml").split("/")


def _room(parts: list[str], site_data, machines, procedures) -> list | None:
    match parts:
        case ["site_data", name] if name in EQUIPMENT or name in AUTHORITY:
            return site_data
        case ["site_data", "machines", _]:
            return machines
        case ["procedures", _, _]:
            return procedures
    return None


def _tree(file: SourceFile, report: Report) -> Node | None:
    if not _readable(file, report):
        return None
    node, found = read_tree(file.path, file.text)
    report.findings += found
    if not found and (node is None or (type(node) is Scalar and not node.text)):
        report.error(Place(file.path), "empty-value", "the file is empty", "write its keys, or delete the file")
        return None
    return node


def _readable(file: SourceFile, report: Report) -> bool:
    if file.problem:
        message, mend, line = file.problem
        report.error(Place(file.path, line), "unreadable", message, mend)
    return not file.problem


def _id(file: SourceFile, node: Node, report: Report) -> str | None:
    return Identifier(page=True).of_text(_parts(file)[-1], node, report)


def _procedure(file: SourceFile, machines: dict[str, Machine]) -> tuple[Procedure | None, Report]:
    """The procedure of one file; it rests on the file and on what the files of the machines spell."""
    report = Report()
    node = _tree(file, report)
    if node is None:
        return None, report
    name = _id(file, node, report)
    procedure = read_procedure(name, node, machines, report) if name else None
    if procedure is None:
        report.not_whole.add(_parts(file)[-1])
    elif (folder := _parts(file)[1]) != procedure.machine:
        report.error(procedure.key_places.get("machine", procedure.place), "wrong-folder",
                     f"the file stands in the folder '{folder}' but is for '{procedure.machine}'",
                     f"move the file to procedures/{procedure.machine}/, or {nearest(folder, machines)}")
    return procedure, report


def _editions(file: SourceFile) -> tuple[dict[tuple[str, str], tuple[Edition, ...]], Report]:
    report = Report()
    if not _readable(file, report):
        return {}, report
    machine, procedure = file.path.removesuffix(".jsonl").split("/")[2:]
    return {(machine, procedure): tuple(read_editions(machine, procedure, file.path, file.text, report))}, report
