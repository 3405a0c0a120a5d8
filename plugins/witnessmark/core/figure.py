"""What a figure and a spec are: a quantity in a role, with the authority it rests on."""

from dataclasses import dataclass, field

from .place import Place
from .quantity import Quantity
from .sentence import Reference, Sentence
from .thread import Thread
from .variation import Varies

ROLES = ("target", "window", "floor", "ceiling", "reject", "stop", "found")
#: In this order a reference that names no role takes a spec's figure.
FIRST = ("target", "window", "floor", "ceiling", "stop", "reject", "found")


@dataclass(frozen=True, slots=True)
class Citation:
    """A source and where in it: `shop-practice p. 35`."""

    source: str
    where: str
    place: Place


@dataclass(frozen=True, slots=True)
class Plain:
    """A figure that is words: a thread, a count of nothing, a name."""

    text: str


@dataclass(frozen=True, slots=True)
class NotKnown:
    """No one knows the figure yet; it prints NOT KNOWN, DO NOT GUESS, and every dependant refuses."""


@dataclass(frozen=True, slots=True)
class NoFigure:
    """Deliberately no figure for this case (`none`)."""


Worth = Quantity | Plain | NotKnown | NoFigure


@dataclass(frozen=True, slots=True)
class Figure:
    """One quantity of a spec in one role. Taken from a result (`comes_from`), `worth` holds no more than the cases with none.

    `by_said`: the source says itself which carrier decides."""

    role: str
    worth: Varies[Worth] | None
    comes_from: Varies[Reference] | None
    sources: tuple[Citation, ...]
    because: Sentence | None
    condition: str | None
    when: str | None
    kept_for_record: str | None
    superseded_by: str | None
    in_doubt: Sentence | None
    to_be_found_by: Sentence | None
    was: tuple[str, ...]
    place: Place
    by_said: bool = field(default=True, compare=False)

    def standing(self) -> bool:
        """False for a figure that is printed struck through. One in doubt still stands: nothing else may take its place."""
        return self.kept_for_record is None and self.superseded_by is None

    def in_force(self) -> bool:
        """False for a figure that is printed struck through or withdrawn: no mark or limit may rest on it."""
        return self.standing() and self.in_doubt is None


@dataclass(frozen=True, slots=True)
class Spec:
    """One requirement of a procedure or machine: a kind, a condition, figures in roles."""

    id: str
    label: str
    kind: str
    condition: str | None
    figures: tuple[Figure, ...]
    place: Place
    places: str | None = None
    at_radius: Quantity | None = None
    viewpoint: str | None = None
    thread: Varies[Thread | None] | None = None
    grade: Varies[str] | None = None
    surface: Varies[str] | None = None
    wrench: str | None = None
    adapter: str | None = None
    passes: tuple[Quantity, ...] = ()
    pass_count: int | None = None
    limited_by: Sentence | None = None
    must_not_outpull: Reference | None = None
    checked_against: Varies[Worth] | None = None
    note: Sentence | None = None
    was: tuple[str, ...] = ()
    key_places: dict[str, Place] = field(default_factory=dict)

    def meant(self, role: str | None) -> Figure | None:
        """The figure a reference means: of the role named, or of the first role that has one standing; in force before in doubt."""
        for wanted in (role,) if role else FIRST:
            standing = [figure for figure in self.figures if figure.role == wanted and figure.standing()]
            if standing:
                return next((figure for figure in standing if figure.in_force()), standing[0])
        return None

    def in_role(self, role: str) -> tuple[Figure, ...]:
        return tuple(figure for figure in self.figures if figure.role == role)
