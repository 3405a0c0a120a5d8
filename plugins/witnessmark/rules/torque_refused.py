"""A torque that its own bolt, wrench or press cannot bear is not printed as if it could.

right:
    thread: 1/2-13 UNC
    grade: 5
    wrench: TW1
wrong:
    thread: 1-1/4-12 UNF
    grade: 5.2          # grade 5.2 ends at 1 in
"""

from typing import Iterator

from ..core.book import Book
from ..core.derived import RECHECK
from ..core.finding import WARNING, Finding

ID = "torque-refused"


def check(book: Book, derived) -> Iterator[Finding]:
    said = set()
    for (machine, procedure), result in derived.items():
        for (combination, owner), runs in result.worked.items():
            for run in runs:
                if run.working != "tightening-torque" or not run.inputs:
                    continue
                place = book.procedures[machine, procedure].specs[owner].place
                found = [Finding(place, ID, f"'{owner}': {refusal.message}", refusal.instead)
                         for refusal in run.outcome.refusals if not refusal.message.startswith(RECHECK)]
                found += [Finding(place, ID, f"'{owner}': {warning}", "check the torque, or say why in 'limited by:'", WARNING)
                          for warning in run.outcome.warnings
                          if book.procedures[machine, procedure].specs[owner].limited_by is None]
                for finding in found:
                    if finding not in said:
                        said.add(finding)
                        yield finding
