"""What a working is: the declaration that is at once its manual and its contract.

A working turns given inputs into values. Its declaration carries everything a page, the command
line and the tests need to say about it; `compute` is a pure function of the inputs.
All numbers here are floats in SI units; the text beside them is ready to print.
"""
from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from .quantity import Quantity
    from .thread import Thread

SIDES = ("down", "up", "inward", "nearest")


@dataclass(frozen=True)
class Input:
    """One input: plain words for a name, a kind of core.kinds, 'thread' or 'choice'.

    `usual` is a pair of quantity texts; a value outside it is warned about in the words of
    `outside`, never refused: the range is what shops meet, not what nature allows.
    """
    name: str
    kind: str
    doc: str
    usual: tuple[str, str] | None = None
    outside: str = ""
    required: bool = True
    choices: tuple[str, ...] = ()


@dataclass(frozen=True)
class Output:
    """One result and the side it is rounded to: 'down', 'up', 'inward' or 'nearest'."""
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

    `low` or `high` is infinite for 'at most' and 'at least'. A choice or a thread has no numbers.
    """
    text: str
    low: float = 0.0
    likely: float = 0.0
    high: float = 0.0
    quantity: Quantity | None = None
    thread: Thread | None = None


@dataclass(frozen=True)
class Value:
    """One result in SI with its band, as printed and as converted to the other system."""
    name: str
    kind: str
    low: float
    likely: float
    high: float
    printed: str
    converted: str
    side: str


@dataclass(frozen=True)
class Line:
    """One step of 'how it was worked out': words, formula, this case's numbers, result."""
    text: str
    formula: str
    substituted: str
    value: str


@dataclass(frozen=True)
class Refusal:
    """Why there is no number, and what would do instead."""
    message: str
    instead: str


@dataclass(frozen=True)
class Outcome:
    """Everything one run of a working gave. With a refusal there are no values to act on."""
    values: tuple[Value, ...] = ()
    lines: tuple[Line, ...] = ()
    refusals: tuple[Refusal, ...] = ()
    warnings: tuple[str, ...] = ()

    def value(self, name: str) -> Value:
        """The value called `name`; KeyError when this run did not give it."""
        for value in self.values:
            if value.name == name:
                return value
        raise KeyError(name)

    def has(self, name: str) -> bool:
        return any(value.name == name for value in self.values)


@dataclass(frozen=True)
class Working:
    """A kind of computation: manual, inputs, outputs, worked example and the function itself."""
    id: str
    title: str
    purpose: str
    formula: tuple[str, ...]
    inputs: tuple[Input, ...]
    outputs: tuple[Output, ...]
    source: str
    example: Example
    goes_wrong: tuple[str, ...]
    refuses: tuple[str, ...]
    compute: Callable[[Mapping[str, Given]], Outcome] = field(repr=False)

    def input(self, name: str) -> Input:
        """The declared input called `name`; KeyError when there is none."""
        for declared in self.inputs:
            if declared.name == name:
                return declared
        raise KeyError(name)
