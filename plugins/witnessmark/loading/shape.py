"""What a value in a source must look like. A shape reads a node into a value, or reports why it cannot.

Every scalar is text until a shape says otherwise. A shape's read() gives None after it has reported; nothing is
raised for an author's mistake. Shapes are plain data, so that the manual of the format can be made from them.
"""

import re
from dataclasses import dataclass, field
from typing import Any

from ..core.figure import Citation
from ..core.finding import Finding, nearest
from ..core.place import Place
from ..core.quantity import Quantity, read_quantity
from ..core.sentence import Reference, Sentence, read_reference, read_sentence
from ..core.thread import Thread, read_thread
from .yaml_tree import Mapping, Node, Scalar, Sequence

RESERVED = frozenset({"sheet", "press", "source", "working", "assets", "index", "search", "caution"})
_IDENTIFIER = re.compile(r"[A-Za-z0-9][A-Za-z0-9-]{0,63}")
_CITATION = re.compile(r"([\w-]+)(?:\s+(.*))?", re.DOTALL)
_KINDS_OF_NODE = {Scalar: "a text", Sequence: "a list", Mapping: "a group of keys"}


class Report:
    """Gathers findings while a source is read."""

    def __init__(self) -> None:
        self.findings: list[Finding] = []

    def error(self, place: Place, rule: str, message: str, mend: str) -> None:
        self.findings.append(Finding(place, rule, message, mend))


class Shape:
    wanted = "a value"

    def read(self, node: Node, report: Report) -> Any:
        if type(node) is not Scalar:
            return wrong_shape(node, report, self.wanted)
        if node.text == "" and node.bare:
            report.error(node.place, "empty-value", "nothing stands here",
                         f"write {self.wanted}, or 'none' where nothing is needed")
            return None
        return self.of_text(node.text.strip(), node, report)

    def of_text(self, text: str, node: Scalar, report: Report) -> Any:
        return text


def wrong_shape(node: Node, report: Report, wanted: str) -> None:
    report.error(node.place, "wrong-shape", f"{_KINDS_OF_NODE[type(node)]} stands here", f"write {wanted}")


@dataclass(frozen=True)
class Text(Shape):
    """Words as they are; `choices` closes the list of them."""

    wanted: str = "a text"
    choices: tuple[str, ...] = ()

    def of_text(self, text, node, report):
        if self.choices and text not in self.choices:
            report.error(node.place, "unknown-word", f"'{text}' is not known here", nearest(text, self.choices))
            return None
        return text


@dataclass(frozen=True)
class Identifier(Shape):
    wanted: str = "a short name of letters, digits and dashes"

    def of_text(self, text, node, report):
        if not _IDENTIFIER.fullmatch(text):
            report.error(node.place, "bad-id", f"'{text}' cannot be a name", f"write {self.wanted}")
            return None
        if text in RESERVED:
            report.error(node.place, "reserved-id", f"'{text}' is kept for the site's own pages", "choose another name")
            return None
        return text


@dataclass(frozen=True)
class Number(Shape):
    """A whole number (`whole`) or a plain decimal, kept as text."""

    whole: bool = True
    most: int = 1000

    @property
    def wanted(self) -> str:
        return f"a whole number up to {self.most}" if self.whole else "a plain decimal such as 0.15"

    def of_text(self, text, node, report):
        if self.whole and re.fullmatch(r"\d{1,9}", text) and int(text) <= self.most:
            return int(text)
        if not self.whole and re.fullmatch(r"\d{0,6}(\.\d{1,9})?", text) and text:
            return text
        report.error(node.place, "bad-number", f"'{text}' is not what is wanted here", f"write {self.wanted}")
        return None


@dataclass(frozen=True)
class YesNo(Shape):
    wanted: str = "yes or no"

    def of_text(self, text, node, report):
        if text in ("yes", "no"):
            return text == "yes"
        report.error(node.place, "unknown-word", f"'{text}' is not known here", "write yes or no")
        return None


@dataclass(frozen=True)
class Date(Shape):
    wanted: str = "a date such as 2024-05-11"

    def of_text(self, text, node, report):
        match = re.fullmatch(r"(\d{4})-(\d\d)-(\d\d)", text)
        if match and 1 <= int(match[2]) <= 12 and 1 <= int(match[3]) <= 31:
            return text
        report.error(node.place, "bad-date", f"'{text}' is not a date", f"write {self.wanted}")
        return None


@dataclass(frozen=True)
class Says(Shape):
    """A sentence."""

    wanted: str = "a sentence"

    def of_text(self, text, node, report) -> Sentence:
        sentence, bad = read_sentence(text, node.place)
        for brace in bad:
            report.error(node.place, "bad-reference", f"'{brace}' names no figure",
                         "write {spec} or {spec.role}, or take the braces away")
        return sentence


@dataclass(frozen=True)
class Measure(Shape):
    """A quantity of a kind."""

    kind: str

    @property
    def wanted(self) -> str:
        return f"a {self.kind} with its unit"

    def of_text(self, text, node, report) -> Quantity | None:
        quantity = read_quantity(text, self.kind)
        if isinstance(quantity, Quantity):
            return quantity
        report.error(node.place, "quantity", quantity.message, quantity.mend)
        return None


@dataclass(frozen=True)
class ThreadText(Shape):
    wanted: str = "a thread such as 1/2-13 UNC or M12 x 1.25"

    def of_text(self, text, node, report) -> Thread | None:
        thread = read_thread(text)
        if isinstance(thread, Thread):
            return thread
        report.error(node.place, "thread", thread.message, thread.mend)
        return None


@dataclass(frozen=True)
class Cites(Shape):
    """A citation: the id of a source, then where in it."""

    wanted: str = "a source and where in it, such as shop-practice p. 35"

    def of_text(self, text, node, report) -> Citation | None:
        match = _CITATION.fullmatch(text)
        if match:
            return Citation(match[1], (match[2] or "").strip(), node.place)
        report.error(node.place, "bad-id", f"'{text}' begins with no source", f"write {self.wanted}")
        return None


@dataclass(frozen=True)
class Refers(Shape):
    wanted: str = "a reference such as crank-press.target or type-24/slip-torque"

    def of_text(self, text, node, report) -> Reference | None:
        reference = read_reference(text.strip("{}"), node.place)
        if reference is None:
            report.error(node.place, "bad-reference", f"'{text}' is no reference", f"write {self.wanted}")
        return reference


@dataclass(frozen=True)
class ListOf(Shape):
    """A list; `none` gives an empty one; `single` also takes one item without a list."""

    item: Shape
    single: bool = False

    def read(self, node, report):
        if type(node) is Sequence:
            if not node.items:
                report.error(node.place, "empty-list", "an empty list may be a forgotten one",
                             "write 'none' where nothing is needed")
            values = (self.item.read(item, report) for item in node.items)
            return tuple(value for value in values if value is not None)
        if type(node) is Scalar and node.text.strip() == "none":
            return ()
        if self.single:
            value = self.item.read(node, report)
            return () if value is None else (value,)
        return wrong_shape(node, report, "a list with a dash before each entry, or 'none'")


@dataclass(frozen=True)
class Raw(Shape):
    """The node itself: its reader needs to know more first."""

    def read(self, node, report):
        if type(node) is Scalar and node.text == "" and node.bare:
            return super().read(node, report)
        return node


class Record(dict):
    """Values by key; `at(key)` is where the key stands, `place` where the record does."""

    __slots__ = ("place", "key_places")

    def at(self, key: str) -> Place:
        return self.key_places.get(key, self.place)


@dataclass(frozen=True)
class Fields(Shape):
    """A group of known keys. `brief` names the key that a plain text stands for."""

    what: str
    keys: dict[str, Shape]
    required: tuple[str, ...] = ()
    brief: str | None = None
    extra: Shape | None = None          # the shape of keys not listed, where any name is allowed
    known: frozenset = field(init=False, default=frozenset())

    def __post_init__(self):
        object.__setattr__(self, "known", frozenset(self.keys))

    def read(self, node, report) -> Record | None:
        if type(node) is Scalar and self.brief and node.text:
            value = self.keys[self.brief].read(node, report)
            return None if value is None else self._record(node, {self.brief: value}, {self.brief: node.place})
        if type(node) is not Mapping:
            return wrong_shape(node, report, f"the keys of {self.what}: {', '.join(list(self.keys)[:8])}")
        values: dict = {}
        places: dict[str, Place] = {}
        for key, value_node in node.entries:
            name = key.text
            if name in places:
                report.error(key.place, "duplicate-key", f"'{name}' stands twice", "keep one of them")
                continue
            shape = self.keys.get(name) or self.extra
            if shape is None:
                report.error(key.place, "unknown-key", f"'{name}' is not a key of {self.what}",
                             nearest(name, self.known, most=12))
                continue
            places[name] = key.place
            value = shape.read(value_node, report)
            if value is not None:
                values[name] = value
        missing = [name for name in self.required if name not in places]
        if missing:
            report.error(node.place, "missing-key", f"{self.what} lacks {_listed(missing)}",
                         f"write '{missing[0]}:' and its value")
        return self._record(node, values, places)

    def _record(self, node, values, places) -> Record:
        record = Record(values)
        record.place, record.key_places = node.place, places
        return record


@dataclass(frozen=True)
class MapOf(Shape):
    """Any names (ids) to values of one shape; gives a dict from id to (value, place)."""

    value: Shape
    name: Shape = Identifier()

    def read(self, node, report) -> dict | None:
        if type(node) is Scalar and node.text.strip() == "none":
            return {}
        if type(node) is not Mapping:
            return wrong_shape(node, report, "a group of names, each with its own keys below it")
        found: dict = {}
        seen: set = set()
        for key, value_node in node.entries:
            name = self.name.read(key, report)
            if name is None:
                continue
            if name in seen:
                report.error(key.place, "duplicate-id", f"'{name}' is defined twice", "give one of them another name")
                continue
            seen.add(name)
            value = self.value.read(value_node, report)
            if value is not None:
                found[name] = (value, key.place)
        return found


def _listed(names: list[str]) -> str:
    return ", ".join(f"'{name}'" for name in names)
