"""What the build worked out from a book: each figure resolved, each working run, per combination of carriers."""

from dataclasses import dataclass, field

from .figure import Figure, Worth
from .place import Place
from .working import Outcome

#: sorted (carrier, variant) pairs: one case that a sheet or card is for.
CombinationKey = tuple[tuple[str, str], ...]

#: Stands before the words of a figure that was checked against another which has changed since.
#: Why a working refuses where one of its figures may not be used; nothing is less safe for it.
NOT_TO_USE = "it is not known, in doubt, or has no case for this combination"
RECHECK = "RE-CHECK"


@dataclass(frozen=True, slots=True)
class Resolved:
    """A figure for one combination. `worth` is None where no case holds (the reason is a finding).

    `recheck` says which figure it was checked against and what that one is now; None while the check still holds."""

    figure: Figure
    worth: Worth | None
    place: Place
    recheck: str | None = None

    def in_force(self) -> bool:
        """True for a figure that marks, limits and settings may rest on in this combination."""
        return self.recheck is None and self.figure.in_force()


@dataclass(frozen=True, slots=True)
class Worked:
    """One run of a working: which, for what (`owner` is a spec or computed id), with which inputs."""

    working: str
    owner: str
    combination: CombinationKey
    inputs: dict[str, str]
    input_places: dict[str, Place]
    outcome: Outcome
    press: str | None = None
    gauge: str | None = None


@dataclass(frozen=True)
class Derived:
    """Of one procedure. `resolved` maps (combination, spec id) to its figures in source order;
    `worked` maps (combination, spec or computed id) to its runs: one a press for a press card."""

    combinations: dict[str, tuple[CombinationKey, ...]] = field(default_factory=dict)
    resolved: dict[tuple[CombinationKey, str], tuple[Resolved, ...]] = field(default_factory=dict)
    worked: dict[tuple[CombinationKey, str], tuple[Worked, ...]] = field(default_factory=dict)


def key_of(combination) -> CombinationKey:
    return tuple(sorted(combination.items()))
