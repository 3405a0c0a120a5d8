"""What a value in a source must look like. A shape reads a node into a value, or reports why it cannot.

Every scalar is text until a shape says otherwise. A shape's read() gives None after it has reported; nothing is
raised for an author's mistake. Shapes are plain data: schema() says the same as JSON Schema, for an author's editor.
"""

from dataclasses import dataclass, field
from typing import Any, Iterator

from ..core.finding import close_to, nearest
from ..core.place import Place
from .key_words import words_of
from .report import Record, Report
from .yaml_tree import Mapping, Node, Scalar, Sequence

_KINDS_OF_NODE = {Sequence: "a list", Mapping: "a group of keys"}
NAME = "a name"                         # what the items of a list of names are


class Shape:
    wanted = "a value"
    prose = False                       # True for sentences, which a comma between [ ] would cut

    def read(self, node: Node, report: Report) -> Any:
        if type(node) is not Scalar:
            return wrong_shape(node, report, self.wanted)
        text = node.text.strip()
        if not text:
            report.error(node.place, "empty-value", "nothing stands here",
                         f"write {self.wanted}, or 'none' where nothing is needed")
            return None
        return self.of_text(text, node, report)

    def of_text(self, text: str, node: Scalar, report: Report) -> Any:
        return text

    def schema(self) -> dict:
        """JSON Schema (draft 7) of what read() takes. An editor types `0.15` before we see it, so numbers count as text;
        it is never stricter than read(), so that a right source is never underlined."""
        return text_schema()


def text_schema(pattern: str = r"\S", *types: str) -> dict:
    """A text that holds the pattern, or what an editor makes of 0.15 and true (or only the `types` named)."""
    return {"type": list(types) or ["string", "number", "boolean"], "pattern": pattern}


def any_schema(*schemas: dict) -> dict:
    return schemas[0] if len(schemas) == 1 else {"anyOf": list(schemas)}


NONE = {"const": "none"}


def wrong_shape(node: Node, report: Report, wanted: str) -> None:
    if type(node) is Mapping and node.flow and not node.entries:
        return                          # {bolt}: that braces open a group is said already
    if type(node) is Scalar and not node.text.strip():
        report.error(node.place, "empty-value", "nothing stands here", f"write {wanted}, or take the line away")
        return
    stands = f"'{_short(node.text)}'" if type(node) is Scalar else _KINDS_OF_NODE[type(node)]
    report.error(node.place, "wrong-shape", f"{stands} stands here", f"write {wanted}")


def _short(text: str) -> str:
    words = " ".join(text.split())
    return words if len(words) <= 40 else words[:40] + "..."


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
            for item in node.items[1:] if node.flow and self.item.prose else ():
                if type(item) is Scalar and item.text[:1].islower():
                    report.error(item.place, "text-cut", f"the comma cuts the sentence before '{item.text}' in two",
                                 "give each sentence a line of its own with a dash")
            values = [self.item.read(item, report) for item in node.items]
            return tuple([value for value in values if value is not None])
        if type(node) is Scalar and node.text.strip() == "none":
            return ()
        if self.single:
            if type(node) is Scalar and self.item.wanted == NAME and "," in node.text:
                report.error(node.place, "wrong-shape", f"'{_short(node.text)}' is read as one name", f"write several in brackets: [{_short(node.text)}]")
                return ()
            value = self.item.read(node, report)
            return () if value is None else (value,)
        joined = type(node) is Scalar and node.text[:1] == "-"
        return wrong_shape(node, report, "a list with a dash and a space before each entry" if joined else "a list with a dash before each entry, or 'none'")

    def schema(self):
        item = self.item.schema()
        return any_schema({"type": "array", "items": item, "minItems": 1}, NONE, *([item] if self.single else []))


@dataclass(frozen=True)
class Raw(Shape):
    """The node itself: its reader needs to know more first. `says` are the shapes it may then have, one of them;
    `varies` where there may be one for each variant."""

    says: tuple[Shape, ...] = (Shape(),)
    varies: bool = False

    def read(self, node, report):
        if type(node) is Scalar and not node.text.strip():
            return super().read(node, report)
        return node

    def schema(self):
        one = [shape.schema() for shape in self.says]
        if not self.varies:
            return any_schema(*one)
        deeper = {"type": "object", "minProperties": 1}          # a carrier in a carrier: read_varies knows how many
        cases = {"type": "object", "minProperties": 1, "additionalProperties": any_schema(*one, deeper)}
        return any_schema(*one, cases)


@dataclass(frozen=True)
class Fields(Shape):
    """A group of known keys. `brief` names the key that a plain text stands for."""

    what: str
    keys: dict[str, Shape]
    required: tuple[str, ...] = ()
    brief: str | None = None
    extra: Shape | None = None          # the shape of keys not listed, where any name is allowed
    known: frozenset = field(init=False, default=frozenset())
    needed: frozenset = field(init=False, default=frozenset())

    def __post_init__(self):
        object.__setattr__(self, "known", frozenset(self.keys))
        object.__setattr__(self, "needed", frozenset(self.required))

    def read(self, node, report) -> Record | None:
        if type(node) is Scalar and self.brief and node.text:
            value = self.keys[self.brief].read(node, report)
            return None if value is None else Record({self.brief: value}).read_from(node.place, {self.brief: node.place})
        if type(node) is not Mapping:
            return wrong_shape(node, report, f"the keys of {self.what}: {', '.join(list(self.keys)[:8])}")
        values = Record()
        places: dict[str, Place] = {}
        before, misspelt, again = len(report.findings), frozenset(), False
        for key, value_node in node.entries:
            name = key.text
            if name in places:
                if not again:             # where a dash is forgotten, every key of the next entry stands twice
                    report.error(key.place, "duplicate-key", f"'{name}' stands twice",
                                 "keep one of them" if self.brief or "id" not in self.keys else
                                 f"keep one of them, or write '- {name}:' where a new entry begins")
                again = True
                continue
            shape = self.keys.get(name) or self.extra
            if shape is None:
                misspelt |= close_to(name, self.known)
                report.error(key.place, "unknown-key", f"'{name}' is not a key of {self.what}",
                             nearest(name, self.known, most=12))
                continue
            places[name] = key.place
            value = shape.read(value_node, report)
            if value is not None:
                values[name] = value
        if misspelt or not self.needed <= values.keys():
            missing = [name for name in self.required if name not in places and name not in misspelt]
            if missing:
                report.error(node.place, "missing-key", f"{self.what} lacks {_listed(missing)}",
                             f"write '{missing[0]}:' and its value")
            if misspelt or missing or any(name not in values for name in self.required if name in places):
                report.not_whole.update(_ids_in(node))        # it is dropped, and all that stands in it
        whole = len(report.findings) == before
        if "id" in values and not whole:
            report.not_whole.add(values["id"])
        return values.read_from(node.place, places, whole, misspelt)

    def schema(self):
        keys = {name: {"description": words_of(self.what, name), **shape.schema()} for name, shape in self.keys.items()}
        group = {"type": "object", "properties": keys, "required": list(self.required),
                 "additionalProperties": self.extra.schema() if self.extra else False}
        return any_schema(self.keys[self.brief].schema(), group) if self.brief else group


@dataclass(frozen=True)
class NamesOf(Shape):
    """Names of the shape `name`, each with a value of one shape; gives a dict from name to (value, place)."""

    name: Shape
    value: Shape

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
            before = len(report.findings)
            value = self.value.read(value_node, report)
            if len(report.findings) > before:
                report.not_whole.add(name)
            if value is not None:
                found[name] = (value, key.place)
        return found

    def schema(self):
        return any_schema({"type": "object", "propertyNames": self.name.schema(),
                           "additionalProperties": self.value.schema()}, NONE)


def _listed(names: list[str]) -> str:
    return ", ".join(f"'{name}'" for name in names)


def _ids_in(node: Node) -> Iterator[str]:
    """Every id written inside, under a key that is `id` or near it."""
    waiting = [node]
    while waiting:
        one = waiting.pop()
        if type(one) is Sequence:
            waiting += one.items
        elif type(one) is Mapping:
            for key, value in one.entries:
                if type(value) is not Scalar:
                    waiting.append(value)
                elif close_to(key.text, ("id",)):
                    yield value.text.strip()
