"""Sources to a Book, with every finding of shape on the way."""

from typing import Iterable

from ..core.book import Book
from ..core.finding import Finding, nearest
from ..core.place import Place
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


def load_book(files: Iterable[SourceFile]) -> tuple[Book, list[Finding]]:
    """The book that the files spell, as far as they can be read, and what is wrong with them."""
    report = Report()
    site_data: list[tuple[str, Node]] = []
    machines: list[tuple[str, Node]] = []
    procedures: list[tuple[str, Node]] = []
    editions: list[SourceFile] = []
    for file in files:
        if file.path.startswith(f"{EDITIONS}/") and file.path.endswith(".jsonl") and file.path.count("/") == 3:
            editions.append(file)
            continue
        parts = file.path.removesuffix(".yml").removesuffix(".yaml").split("/")
        place = _room(parts, site_data, machines, procedures)
        if place is None:
            report.error(Place(file.path), "unknown-file", "no one reads a file of this name here",
                         "use procedures/MACHINE/PROCEDURE.yaml, site_data/machines/MACHINE.yaml, or one of site_data/"
                         + ", ".join(f"{name}.yaml" for name in sorted({**EQUIPMENT, **AUTHORITY})))
            continue
        node = _tree(file, report)
        if node is not None:
            place.append(("/".join(parts), node))
    book = Book()
    for path, node in site_data:
        name = path.rpartition("/")[2]
        reader = read_equipment if name in EQUIPMENT else read_authority
        getattr(book, name).update(reader(name, node, report))
    for path, node in machines:
        name = _id(path, node, report)
        if name and (machine := read_machine(name, node, report)):
            book.machines[name] = machine
        else:
            report.not_whole.add(path.rpartition("/")[2])
    for path, node in procedures:
        _into(book, path, node, report)
    for file in editions:
        machine, procedure = file.path.removesuffix(".jsonl").split("/")[2:]
        if _readable(file, report):
            book.editions[machine, procedure] = tuple(read_editions(machine, procedure, file.path, file.text, report))
    twice_issued(book.editions, report)
    book.not_whole.update(report.not_whole)
    return book, report.findings


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


def _id(path: str, node: Node, report: Report) -> str | None:
    name = path.rpartition("/")[2]
    return Identifier(page=True).of_text(name, node, report)


def _into(book: Book, path: str, node: Node, report: Report) -> None:
    name = _id(path, node, report)
    procedure = read_procedure(name, node, book.machines, report) if name else None
    if procedure is None:
        report.not_whole.add(path.rpartition("/")[2])
        return
    folder = path.split("/")[1]
    if folder != procedure.machine:
        report.error(procedure.key_places.get("machine", procedure.place), "wrong-folder",
                     f"the file stands in the folder '{folder}' but is for '{procedure.machine}'",
                     f"move the file to procedures/{procedure.machine}/, or {nearest(folder, book.machines)}")
    book.procedures[procedure.machine, name] = procedure
