"""A procedure: one bench session, its needs, specs, computed results and steps."""

from dataclasses import dataclass, field

from .figure import Spec
from .picture import Picture
from .place import Place
from .quantity import Quantity
from .sentence import Reference, Sentence
from .variation import Selector, Serials, Varies


@dataclass(frozen=True, slots=True)
class Act:
    """A dangerous thing a step does: run, turn by power, or lift, press, fill with the thing named."""

    verb: str
    thing: str | None
    place: Place

    def __str__(self) -> str:
        return f"{self.verb} ({self.thing})" if self.thing else self.verb


@dataclass(frozen=True, slots=True)
class LooseEnd:
    """Something left unfinished on purpose until a named later step closes it."""

    id: str
    state: Sentence
    because: Sentence
    if_forgotten: Sentence
    never_while_open: tuple[Act, ...]
    each: str | None
    closes_in: str | None
    tag: str | None
    was: tuple[str, ...]
    place: Place
    again: tuple[str, ...] = ()             # loose ends, shut by then, that this one opens again


@dataclass(frozen=True, slots=True)
class IfOutside:
    above: Sentence | None
    below: Sentence | None
    go_to: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Record:
    """A value written down at a step, at each place of a group where `places` names one."""

    label: str
    spec: Reference | None
    kind: str | None
    places: str | None
    if_outside: IfOutside | None
    place: Place


@dataclass(frozen=True, slots=True)
class Step:
    id: str
    do: Sentence
    check: Sentence | None
    if_outside: Sentence | None
    go_to: tuple[str, ...]
    cautions: tuple[str, ...]
    specs: tuple[Reference, ...]
    each: str | None
    at: str | None
    only: tuple[Selector, ...]
    acts: tuple[Act, ...]
    opens_up: tuple[str, ...]
    records: tuple[Record, ...]
    picture: Picture | None
    hold_point: Sentence | None
    leaves: tuple[LooseEnd, ...]
    closes: tuple[str, ...]
    second_person: bool
    note: Sentence | None
    was: tuple[str, ...]
    place: Place
    key_places: dict[str, Place] = field(default_factory=dict)
    measures: tuple[str, ...] = ()          # carriers whose variant it finds out

    def done_on(self, variant: str, serials: Serials | None) -> bool:
        """True where the step is done on this variant, whose serials these are: on page, sheet and sheet code alike."""
        return not self.only or any(selector.holds(variant, serials) for selector in self.only)

    def sentences(self) -> tuple[Sentence, ...]:
        found = (self.do, self.check, self.if_outside, self.hold_point, self.note)
        return tuple([sentence for sentence in found if sentence is not None])


@dataclass(frozen=True, slots=True)
class Need:
    """A tool, supply or part. `sort` says which list and which shape: words, wrench, scale, made, part, supply."""

    sort: str
    name: str
    number: str | None
    count: str | None
    one_use: bool
    fate: str | None
    adapter: str | None
    note: Sentence | None
    place: Place
    picture: Picture | None = None
    counted: str | None = None              # out, in, or out and in


@dataclass(frozen=True, slots=True)
class PressNeed:
    press: str
    gauge: str
    place: Place


@dataclass(frozen=True, slots=True)
class Needs:
    """Each list is None when the author forgot it, empty when they wrote `none`."""

    presses: tuple[PressNeed, ...]
    tools: tuple[Need, ...]
    supplies: tuple[Need, ...]
    parts: tuple[Need, ...]


@dataclass(frozen=True, slots=True)
class Computed:
    """A result derived here: the working and what it is given, each input a text that may vary."""

    id: str
    label: str
    working: str
    inputs: dict[str, Varies[str]]
    place: Place
    was: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Tried:
    """Tried on a machine (`serial`, `on`), or at the desk when both are None."""

    serial: str | None = None
    on: str | None = None


@dataclass(frozen=True, slots=True)
class Note:
    id: str
    kind: str
    says: Sentence
    review: str | None
    causes: tuple[Sentence, ...]
    leads_to: tuple[str, ...]
    place: Place


@dataclass(frozen=True, slots=True)
class Procedure:
    """`variants` are those of the machine's main carrier that it applies to; `must_be_shut` names loose ends of others."""

    id: str
    machine: str
    title: str
    summary: Sentence | None
    after: tuple[str, ...]
    must_be_shut: tuple[str, ...]
    variants: tuple[str, ...]
    each: str | None
    people: int
    skill: Sentence | None
    time: Quantity | None
    tried: Tried
    conditions: tuple[Sentence, ...]
    cautions: tuple[str, ...]
    needs: Needs
    specs: dict[str, Spec]
    computed: dict[str, Computed]
    steps: tuple[Step, ...]
    notes: tuple[Note, ...]
    was: tuple[str, ...]
    place: Place
    key_places: dict[str, Place] = field(default_factory=dict)
    assembly: str | None = None             # what of the machine it is work on, such as engine
