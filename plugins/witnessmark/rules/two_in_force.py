"""Two figures in one role for one and the same case leave the hand to choose. Where sources disagree, say which one is
printed and keep the other for the record.

right:
    - {role: target, is: 360 lbf·ft, source: shop-practice p. 36}
    - {role: target, is: 1100 lbf·ft, source: shop-manual-1938 p. 51, kept for the record: CF-2}
wrong:
    - {role: target, is: 360 lbf·ft, source: shop-practice p. 36}
    - {role: target, is: 1100 lbf·ft, source: shop-manual-1938 p. 51}
"""

from typing import Iterator

from ..core.book import Book
from ..core.figure import NoFigure
from ..core.finding import Finding

ID = "two-in-force"


def check(book: Book, derived) -> Iterator[Finding]:
    explained = {(conflict.about.owner, conflict.about.name) for conflict in book.conflicts.values()}
    for (machine, procedure), result in derived.items():
        said = set()
        for (combination, spec_id), resolved in result.resolved.items():
            if len(resolved) < 2 or (procedure or machine, spec_id) in explained:
                continue
            first: dict = {}
            for each in resolved:
                figure = each.figure
                if not figure.in_force() or each.worth is None or isinstance(each.worth, NoFigure):
                    continue
                other = first.setdefault((figure.role, figure.when, figure.condition), each)
                if other.worth != each.worth and figure.place not in said:
                    said.add(figure.place)
                    variant = dict(combination).get(book.machines[machine].main.id)
                    yield Finding(figure.place, ID, f"'{spec_id}' has a second {figure.role} for {variant}, and nothing says "
                                                    "which of the two holds",
                                  "keep one 'for the record' with a conflict, or give each its own 'condition' or 'when'")
