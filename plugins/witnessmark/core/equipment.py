"""What the shop owns: presses and gauges, wrenches, scales, surfaces, materials, shim stocks, made tools."""

from dataclasses import dataclass

from .figure import Citation
from .picture import Picture
from .place import Place
from .quantity import Quantity
from .sentence import Sentence
from .thread import Thread


@dataclass(frozen=True, slots=True)
class Gauge:
    """`limit` is the highest reading the gauge may see, where that is less than its full scale."""

    id: str
    title: str
    full_scale: Quantity
    division: Quantity
    accuracy: Quantity
    limit: Quantity | None
    checked: str | None
    place: Place
    notes: tuple[Sentence, ...] = ()


@dataclass(frozen=True, slots=True)
class DrawStud:
    """The stud through which a hollow ram pulls: it carries the whole press force."""

    thread: Thread
    yield_stress: Quantity
    engagement: Quantity | None
    source: Citation | None


@dataclass(frozen=True, slots=True)
class Press:
    """`area` from the nameplate, or `bore` (and `rod`) with the `side` that works: push or pull."""

    id: str
    title: str
    area: Quantity | None
    bore: Quantity | None
    rod: Quantity | None
    side: str | None
    rated_force: Quantity | None
    rated_pressure: Quantity | None
    gauges: dict[str, Gauge]
    draw_stud: DrawStud | None
    notes: tuple[Sentence, ...]
    source: Citation | None
    place: Place


@dataclass(frozen=True, slots=True)
class Wrench:
    id: str
    title: str
    lowest: Quantity
    highest: Quantity
    graduation: Quantity
    accuracy: Quantity
    length: Quantity | None
    checked: str | None
    place: Place


@dataclass(frozen=True, slots=True)
class Adapter:
    """Moves the nut `offset` from the wrench's drive; `angle` 0 is in line with the handle."""

    id: str
    title: str
    offset: Quantity
    angle: Quantity | None
    place: Place


@dataclass(frozen=True, slots=True)
class Scale:
    """A scale or tester: what it reads, how far, how finely."""

    id: str
    title: str
    kind: str
    highest: Quantity
    division: Quantity
    accuracy: Quantity | None
    checked: str | None
    place: Place


@dataclass(frozen=True, slots=True)
class Band:
    """A friction band as typed plain numbers, worst to worst, with whose it is."""

    low: str
    likely: str
    high: str
    source: Citation | None

    def __str__(self) -> str:
        return f"{self.low} / {self.likely} / {self.high}"


@dataclass(frozen=True, slots=True)
class Surface:
    id: str
    title: str
    nut_factor: Band | None
    taper_friction: Band | None
    place: Place
    condition_words: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Material:
    id: str
    title: str
    modulus: Quantity | None
    poisson: str | None
    expansion: str | None
    ultimate: Quantity | None
    assumed: bool
    source: Citation | None
    place: Place


@dataclass(frozen=True, slots=True)
class ShimStock:
    id: str
    title: str
    pieces: tuple[Quantity, ...]
    most_pieces: int
    variants: tuple[str, ...]
    source: Citation | None
    place: Place


@dataclass(frozen=True, slots=True)
class MadeTool:
    id: str
    title: str
    purpose: Sentence | None
    features: tuple[Sentence, ...]
    drawing: str | None
    place: Place
    picture: Picture | None = None
