"""A floor lies under the target, the target under the ceiling, for every combination of carriers.

right:
    floor 14.9, target 18, ceiling 22 long ton
wrong:
    floor 14.9, target 18, ceiling 17 long ton
"""

from typing import Iterator

from ..core.book import Book
from ..core.figure import Spec
from ..core.finding import Finding
from ..core.quantity import Quantity

ID = "limits-in-order"
_ORDER = ("floor", "target", "ceiling")


def check(book: Book, derived) -> Iterator[Finding]:
    said = set()
    for (machine, procedure), result in derived.items():
        specs = book.procedures[machine, procedure].specs if procedure else book.machines[machine].figures
        for (combination, spec_id), resolved in result.resolved.items():
            for finding in _in_order(specs[spec_id], resolved, combination):
                if (finding.place, finding.mend) not in said:
                    said.add((finding.place, finding.mend))
                    yield finding


def _in_order(spec: Spec, resolved, combination) -> Iterator[Finding]:
    limits = [(each.figure, each.worth) for role in _ORDER for each in resolved
              if each.figure.role == role and each.figure.in_force() and isinstance(each.worth, Quantity)]
    for (lower, low), (upper, high) in ((a, b) for i, a in enumerate(limits) for b in limits[i + 1:]):
        if lower.role == upper.role:
            continue
        least = low.si_low if low.si_low is not None else low.si_high
        most = high.si_high if high.si_high is not None else high.si_low
        if least > most * (1 + 1e-12):
            yield Finding(upper.place, ID, f"the {lower.role} of '{spec.id}' ({low.typed()}) is over its {upper.role} "
                                           f"({high.typed()}) for {_words(lower, upper, combination)}",
                          f"check which of the two is wrong; the {lower.role} must be the smaller")


def _words(lower, upper, combination) -> str:
    """The case in the carriers that decide either figure."""
    decide = {carrier for figure in (lower, upper) for varies in (figure.worth, figure.comes_from) if varies for carrier in varies.by}
    return ", ".join(f"{carrier} {variant}" for carrier, variant in combination if carrier in decide) or combination[0][1]
