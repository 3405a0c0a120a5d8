"""New editions: the sheets whose code is in none yet, with what stands on them."""

from collections.abc import Iterator, Mapping

from ..core.book import Book
from ..core.derived import Derived
from ..core.edition import Edition, Kept, edition_lines, editions_path
from ..core.finding import Finding
from ..core.procedure import Procedure
from ..core.record import fingerprint, given
from .procedures import labels_of, names_of
from .reach import Reach

RULE = "edition-missing"
Sheet = tuple[str, str, str]


def unissued(book: Book, records: Mapping[Sheet, dict]) -> Iterator[tuple[Sheet, str]]:
    """The sheets, with their codes, that no edition holds."""
    issued = {edition.code for editions in book.editions.values() for edition in editions}
    for sheet, record in records.items():
        if (code := fingerprint(record)) not in issued:
            yield sheet, code


def missing(book: Book, records: Mapping[Sheet, dict]) -> Iterator[Finding]:
    """What a release must not lack: paper printed from it could not be told from paper of a stranger."""
    for (machine, name, variant), code in unissued(book, records):
        yield Finding(book.procedures[machine, name].place, RULE, f"the sheet for {variant} has the code {code}, which is in no edition",
                      "run 'witnessmark edition' and commit what it writes")


def issue(book: Book, derived: Mapping[tuple[str, str], Derived], records: Mapping[Sheet, dict], on: str) -> dict[str, str]:
    """The files to write, by path: of each procedure that has a new code all its editions, the new ones dated `on`."""
    reach, labels = Reach(book), {machine: labels_of(book, machine) for machine in book.machines}
    found: dict[tuple[str, str], list[Edition]] = {}
    for (machine, name, variant), code in unissued(book, records):
        procedure, record = book.procedures[machine, name], records[machine, name, variant]
        kept = Kept(record, _names(procedure, record, labels[machine]), given(derived[machine, name], variant), reach.sheet(procedure))
        found.setdefault((machine, name), list(book.editions.get((machine, name), ()))).append(Edition(machine, name, variant, code, on, kept))
    return {editions_path(*key): edition_lines(editions) for key, editions in found.items()}


def _names(procedure: Procedure, record: dict, labels: Mapping[str, str]) -> dict[str, str]:
    """What the ids on this one sheet are called."""
    shown = {f"step {step['id']}" for step in record["steps"]} | {f"end {end[0]}" for step in record["steps"] for end in step["leaves"]}
    names = {name: words for name, words in names_of(procedure).items() if name in shown or not name.startswith(("step ", "end "))}
    elsewhere = {entry[0].partition(".")[0] for entry in record["from elsewhere"]}
    return names | {name: labels[name] for name in sorted(elsewhere & labels.keys())}
