"""A result that waits for a reading names the step that takes it, and that step has a blank to write it in.

right:
    present gap: measured at read-gap         # step 'read-gap' has a 'record:'
wrong:
    present gap: measured at raed-gap         # no step of this name
    present gap: measured at wipe             # a step without a record
"""

from typing import Iterator

from ..core.book import Book
from ..core.finding import Finding, nearest
from ..core.working import measured_at

ID = "reading-never-taken"


def check(book: Book, derived) -> Iterator[Finding]:
    for procedure in book.procedures.values():
        steps = {step.id: step for step in procedure.steps}
        for computed in procedure.computed.values():
            for name, varies in computed.inputs.items():
                for case in varies.cases:
                    wanted = measured_at(case.value)
                    if wanted is None or (wanted in steps and steps[wanted].records):
                        continue
                    if wanted in steps:
                        yield Finding(case.place, ID, f"'{name}' is measured at '{wanted}', and that step has no blank to write it in",
                                      f"add a 'record:' to the step '{wanted}'")
                    else:
                        yield Finding(case.place, ID, f"'{name}' is measured at '{wanted}', and there is no such step",
                                      nearest(wanted, steps))
