"""A wrench can hold a torque window only where one of its graduations, with the wrench out either way, stays inside it.

right:
    wrench: TW1         # 1 lbf·ft a graduation, within 4 %
    role: window
    is: 50 to 60 lbf·ft
wrong:
    wrench: TW2         # 5 lbf·ft a graduation: 50 may be 48, 55 may be 57.2
    role: window
    is: 51 to 56 lbf·ft
"""

from math import ceil, cos, floor
from typing import Iterator

from ..core.book import Book
from ..core.equipment import Adapter, Wrench
from ..core.figure import Spec
from ..core.finding import Finding
from ..core.quantity import Quantity
from ..core.rounding import TOLERANCE

ID = "wrench-too-coarse"


def check(book: Book, derived) -> Iterator[Finding]:
    said = set()
    for (machine, procedure), result in derived.items():
        if not procedure:
            continue
        specs = book.procedures[machine, procedure].specs
        for (_, spec_id), resolved in result.resolved.items():
            spec = specs[spec_id]
            if spec.kind != "torque" or spec.wrench not in book.wrenches:
                continue
            target = next((each.worth for each in resolved if _holds(each, "target")), None)
            for each in resolved:
                if _holds(each, "window") and (each.place, each.worth) not in said:
                    said.add((each.place, each.worth))
                    yield from _cannot(book, spec, each, target)


def _holds(each, role: str) -> bool:
    return each.figure.role == role and each.figure.in_force() and isinstance(each.worth, Quantity)


def _cannot(book: Book, spec: Spec, each, target: Quantity | None) -> Iterator[Finding]:
    wrench, window = book.wrenches[spec.wrench], each.worth
    adapter = book.adapters.get(spec.adapter or "")
    ratio = _lever(wrench, adapter)
    if window.low is None or window.high is None or ratio is None:
        return
    low, high, out = window.si_low / ratio, window.si_high / ratio, min(wrench.accuracy.si_low, 0.99)      # out by all of it: never fine enough
    graduation = wrench.graduation.si_low
    slack = TOLERANCE * graduation
    through = f" through {adapter.title}" if adapter else ""
    least, most = max(low, wrench.lowest.si_low), min(high, wrench.highest.si_low)
    first, last = ceil((least - slack) / graduation), floor((most + slack) / graduation)
    if first > last:
        yield Finding(each.place, ID, f"{wrench.title}{through} has no graduation inside {window.typed()} for '{spec.id}'",
                      f"name a finer wrench that reaches it; this one goes from {wrench.lowest.typed()} to "
                      f"{wrench.highest.typed()} by {wrench.graduation.typed()}")
    elif (safe := max(first, ceil((low / (1 - out) - slack) / graduation))) > last or safe * graduation * (1 + out) > high + slack:
        yield Finding(each.place, ID, f"{wrench.title}{through}, {wrench.accuracy.typed()} out either way, cannot stay inside "
                                      f"{window.typed()} for '{spec.id}' at any graduation",
                      "name a finer or truer wrench, or ask for a wider window")
    elif target and target.form == "exact":
        setting = floor((target.si_low / ratio + slack) / graduation) * graduation
        if setting * (1 - out) < low - slack or setting * (1 + out) > high + slack:
            yield Finding(each.place, ID, f"{wrench.title}{through} set for {target.typed()}, {wrench.accuracy.typed()} out either way, may "
                                          f"leave the window of {window.typed()} for '{spec.id}'", "move the target nearer to the middle of the window")


def _lever(wrench: Wrench, adapter: Adapter | None) -> float | None:
    """Torque at the fastener over torque on the wrench, (L + a cos angle) / L; None where the length is not given."""
    if adapter is None:
        return 1.0
    if wrench.length is None:
        return None                               # the torque itself is refused for it
    length = wrench.length.si_low
    ratio = (length + adapter.offset.si_low * cos(adapter.angle.si_low if adapter.angle else 0.0)) / length
    return ratio if ratio > 0 else None
