"""A torque means nothing without its thread and surface: the same figure pulls a third more on an oiled stud.

right:
    kind: torque
    thread: 1/2-13 UNC
    grade: 5
    surface: oiled
wrong:
    kind: torque
"""

from typing import Iterator

from ..core.book import Book
from ..core.finding import Finding

ID = "torque-without-surface"


def check(book: Book, derived) -> Iterator[Finding]:
    for procedure in book.procedures.values():
        for spec in procedure.specs.values():
            if spec.kind != "torque" or not (spec.in_role("target") or spec.in_role("window")):
                continue
            for key, value, mend in (("surface", spec.surface, "write 'surface:' and a surface of site_data/surfaces.yaml"),
                                     ("thread", spec.thread, "write 'thread:' such as 1/2-13 UNC")):
                if value is None:
                    yield Finding(spec.place, ID, f"the torque '{spec.id}' names no {key}", mend)
            if spec.thread is not None and spec.grade is None:
                yield Finding(spec.place, ID, f"the torque '{spec.id}' names no grade",
                              "write 'grade:' such as 5 or 10.9, or 'grade: none' where the bolt has none")
