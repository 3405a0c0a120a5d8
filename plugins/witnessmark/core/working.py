"""What a working is: the declaration that is at once its manual and its contract.

A working turns given inputs into values. Its declaration carries everything a page, the command
line and the tests need to say about it; `compute` is a pure function of the inputs.
All numbers here are floats in SI units. Words and drawings are made when somebody asks for them:
proving a book needs the numbers only.
"""
from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import TYPE_CHECKING

from .band_end import end_named, end_text

if TYPE_CHECKING:
    from .drawing import Drawing
    from .quantity import Quantity
    from .thread import Thread
    from .units import Unit

#: Begins an input that is read at the bench: `measured at read-gap, 0.030 to 0.050 in` names the step, and the range to expect.
MEASURED = "measured at "
#: A thing of the shop named by its id stands for inputs whose names end so: `hub material: cast-steel` for `hub modulus` and others.
SHELF = {
    "material": ("modulus", "poisson", "expansion", "ultimate", "ultimate is"),
    "wrench": ("wrench lowest", "wrench highest", "wrench graduation", "wrench accuracy", "wrench length"),
    "adapter": ("adapter length", "adapter angle"),
    "scale": ("scale highest", "scale division", "scale accuracy"),
    "stock": ("stock", "most pieces"),
}
SIDES = ("down", "up", "inward", "nearest")
#: What an input may be: most things measured are over zero.
SIGNS = ("over zero", "zero or over", "signed")


def measured_at(text: str) -> str | None:
    """The step that reads an input; None where the input is no reading."""
    return text.removeprefix(MEASURED).partition(",")[0].strip() if text.startswith(MEASURED) else None


@dataclass(frozen=True)
class Formula:
    """One formula twice: as a line of text for a terminal, and in LaTeX for a page that sets it properly."""
    text: str
    latex: str


@dataclass(frozen=True)
class Input:
    """One input: plain words for a name, a kind of core.kinds, 'thread', 'grade' or 'choice'.

    `usual` is a pair of quantity texts; a value outside it is warned about in the words of
    `outside`, never refused: the range is what shops meet, not what nature allows.
    `many`: several, separated by commas (a stock of shims, the steps of a chart).
    """
    name: str
    kind: str
    doc: str
    usual: tuple[str, str] | None = None
    outside: str = ""
    required: bool = True
    choices: tuple[str, ...] = ()
    many: bool = False
    sign: str = "over zero"


@dataclass(frozen=True)
class Output:
    """One result and the side it is rounded to: 'down', 'up', 'inward' or 'nearest'. Kind 'none' is a result in words."""
    name: str
    kind: str
    side: str
    doc: str


@dataclass(frozen=True)
class Example:
    """Inputs as an author types them, and the printed text each named output must show."""
    inputs: Mapping[str, str]
    outputs: Mapping[str, str]
    source: str


@dataclass(frozen=True)
class Given:
    """An input as read: its own text and a band in SI. One number has low = likely = high.

    'at most' and 'at least' have all three at their limit. A choice or a thread has no numbers.
    `several` holds each of an input that may be many.
    """
    text: str
    low: float = 0.0
    likely: float = 0.0
    high: float = 0.0
    quantity: Quantity | None = None
    thread: Thread | None = None
    several: tuple[Given, ...] = ()


@dataclass(frozen=True)
class Value:
    """One result in SI with its band. `texts` makes the two texts a reader sees: as printed, and in the other system.

    `unit` is that of the printed text; None where the result is words."""
    name: str
    kind: str
    low: float
    likely: float
    high: float
    side: str
    unit: Unit | None
    texts: Callable[[], tuple[str, str]] = field(compare=False, repr=False)

    @cached_property
    def _texts(self) -> tuple[str, str]:
        return self.texts()

    def end(self, which: str) -> Value:
        """The 'low', 'likely' or 'high' of the band as a value of its own, printed as it stands in the band."""
        si = {"low": self.low, "likely": self.likely, "high": self.high}[which]
        return replace(self, name=f"{self.name} {which}", low=si, likely=si, high=si,
                       texts=lambda: (end_text(self.printed, which), end_text(self.converted, which)))

    @property
    def printed(self) -> str:
        return self._texts[0]

    @property
    def converted(self) -> str:
        return self._texts[1]


@dataclass(frozen=True)
class Line:
    """One step of 'how it was worked out': words, formula, this case's numbers, result."""
    text: str
    formula: str
    substituted: str
    value: str


@dataclass(frozen=True)
class Table:
    """Rows of ready words under heads; the first cell of a row names it."""
    title: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True)
class Refusal:
    """Why there is no number, and what would do instead."""
    message: str
    instead: str


@dataclass(frozen=True)
class Details:
    """What a reader may ask for behind the values: the steps, tables over a band, a drawing of this case."""
    lines: tuple[Line, ...] = ()
    tables: tuple[Table, ...] = ()
    drawing: Drawing | None = None


@dataclass(frozen=True)
class Outcome:
    """Everything one run of a working gave. With a refusal there are no values to act on.

    `waits` names inputs that are read at the bench: until then there is neither value nor refusal.
    `details` is called once, when first asked for."""
    values: tuple[Value, ...] = ()
    refusals: tuple[Refusal, ...] = ()
    warnings: tuple[str, ...] = ()
    waits: tuple[str, ...] = ()
    details: Callable[[], Details] = field(default=Details, compare=False, repr=False)

    @cached_property
    def told(self) -> Details:
        return self.details()

    @property
    def lines(self) -> tuple[Line, ...]:
        return self.told.lines

    def value(self, name: str) -> Value:
        """The value called `name`, or an end of one: 'advance low'. KeyError when this run did not give it."""
        found = self._named(name)
        if found is None:
            raise KeyError(name)
        return found

    def has(self, name: str) -> bool:
        return self._named(name) is not None

    def _named(self, name: str) -> Value | None:
        whole, which = end_named(name)
        for value in self.values:
            if value.name == name:
                return value
            if which and value.name == whole:
                return value.end(which)
        return None


@dataclass(frozen=True)
class Working:
    """A kind of computation: manual, inputs, outputs, worked example and the function itself.

    `assumes` names what drives the band or limits the use of the result; a page prints it beside the number.
    `for_reading_only`: it explains on its manual page and at the command line; no procedure rests on it."""
    id: str
    title: str
    purpose: str
    formula: tuple[Formula, ...]
    inputs: tuple[Input, ...]
    outputs: tuple[Output, ...]
    source: str
    example: Example
    goes_wrong: tuple[str, ...]
    refuses: tuple[str, ...]
    compute: Callable[[Mapping[str, Given]], Outcome] = field(repr=False)
    assumes: tuple[str, ...] = ()
    for_reading_only: bool = False

    def by_id(self) -> dict[str, tuple[str, ...]]:
        """Names under which a thing of the shop may be given by its id, each with the inputs it stands for."""
        found: dict[str, list[str]] = {}
        for declared in self.inputs:
            for sort, fields in SHELF.items():
                for ending in fields:
                    if declared.name == ending or declared.name.endswith(f" {ending}"):
                        found.setdefault(declared.name.removesuffix(ending) + sort, []).append(declared.name)
        return {name: tuple(inputs) for name, inputs in found.items()}

    def input(self, name: str) -> Input:
        """The declared input called `name`; KeyError when there is none."""
        for declared in self.inputs:
            if declared.name == name:
                return declared
        raise KeyError(name)
