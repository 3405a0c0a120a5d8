"""Which figure of a spec marks, limits and settings may rest on in one combination."""

from ..core.derived import RECHECK, Resolved
from ..core.figure import FIRST, Spec, Worth
from ..core.working import Refusal


def figure_in_force(resolved: tuple[Resolved, ...], role: str) -> Worth | None:
    """The figure in a role; None when there is none to rest on.

    Where that figure is in doubt, none of another role takes its place: a floor is no target."""
    return next((each.worth for each in resolved if each.figure.role == role and each.figure.when is None and each.in_force()), None)


def leading_role(spec: Spec) -> str | None:
    """The first role that has a figure standing: the only one worked out, for another may rest on what asks here."""
    standing = {figure.role for figure in spec.figures if figure.standing() and figure.when is None}
    return next((role for role in FIRST if role in standing), None)


def recheck(resolved: tuple[Resolved, ...]) -> Refusal | None:
    """Why nothing may rest on the spec until it has been checked again; None while its check holds."""
    why = next((each.recheck for each in resolved if each.recheck), None)
    return Refusal(f"{RECHECK}: {why}", "do not use it until it has been checked again") if why else None
