"""A pull, a spring load or a drag that is written down is read on a scale that reaches it and is fine enough for it.

right:
    needs: {tools: [{scale: scale-30}], ...}    # 0 to 30 lbf by 0.25 lbf
    pinion-pull: {kind: force, role: window, is: 7.25 to 11.00 lbf, ...}
wrong:
    needs: {tools: [Spring scale], ...}         # how far does it reach, how fine is it?
    needs: {tools: [{scale: winch-scale}], ...} # 0 to 1,000 lbf by 10 lbf, 11 lbf uncertain
"""

from math import ceil, floor, hypot
from typing import Iterator

from ..core.book import Book
from ..core.equipment import Scale
from ..core.figure import Spec
from ..core.finding import WARNING, Finding
from ..core.procedure import Procedure
from ..core.quantity import Quantity
from ..core.rounding import TOLERANCE

ID = "reading-without-scale"
_KINDS = ("force", "rolling drag")
_ROLES = ("window", "floor", "ceiling", "reject")


def check(book: Book, derived) -> Iterator[Finding]:
    for (machine, name), result in derived.items():
        if not name:
            continue
        procedure = book.procedures[machine, name]
        named = [need.name for need in procedure.needs.tools if need.sort == "scale"]
        if any(name not in book.scales for name in named):
            continue                                  # an unknown scale is another rule's finding
        scales = [book.scales[name] for name in named]
        for spec in _read_here(procedure):
            fitting = [scale for scale in scales if scale.kind in (spec.kind, "force")]
            limits = [each for (_, owner), resolved in result.resolved.items() if owner == spec.id for each in resolved
                      if each.figure.role in _ROLES and each.figure.in_force() and isinstance(each.worth, Quantity)]
            if limits and not fitting:
                yield Finding(spec.place, ID, f"'{spec.id}' is written down and no scale or tester is among the tools",
                              "add {scale: ...} with one of site_data/scales.yaml to the tools of the needs", WARNING)
            elif fitting:
                yield from _cannot(spec, limits, fitting)


def _read_here(procedure: Procedure) -> list[Spec]:
    """The forces and drags that some step of the procedure writes down, each once."""
    read = {record.spec.name: None for step in procedure.steps for record in step.records
            if record.spec and record.spec.owner is None}
    return [procedure.specs[name] for name in read if name in procedure.specs and procedure.specs[name].kind in _KINDS]


def _cannot(spec: Spec, limits, scales: list[Scale]) -> Iterator[Finding]:
    said = set()
    for each in limits:
        if (each.place, each.worth) in said:
            continue
        said.add((each.place, each.worth))
        why = [_refusal(spec, each.worth, scale) for scale in scales]
        if all(why):
            yield Finding(each.place, ID, f"'{spec.id}' cannot be read as {each.worth.typed()}: {'; '.join(why)}",
                          "name a scale among the tools that reaches it and is finer")


def _refusal(spec: Spec, wanted: Quantity, scale: Scale) -> str:
    """Why this scale will not do, or nothing. Uncertainty as root of squares: class share of the full scale, half a division."""
    arm = spec.at_radius.si_low if spec.kind == "rolling drag" and scale.kind == "force" and spec.at_radius else None
    if spec.kind == "rolling drag" and scale.kind == "force" and arm is None:
        return ""                                 # without a radius there is no pull to judge
    low, high = (end if end is None or arm is None else end / arm for end in (wanted.si_low, wanted.si_high))
    division, full = scale.division.si_low, scale.highest.si_low
    slack = TOLERANCE * division
    if max(end for end in (low, high) if end is not None) > full + slack:
        return f"{scale.title} ends at {scale.highest.typed()}"
    uncertain = hypot((scale.accuracy.si_low if scale.accuracy else 0.0) * full, division / 2)
    if low is not None and high is not None and low != high and (
            ceil((low + uncertain - slack) / division) > floor((high - uncertain + slack) / division)):
        return f"{scale.title} is too coarse by its {scale.division.typed()} division" + (f" and {scale.accuracy.typed()}" if scale.accuracy else "")
    return ""
