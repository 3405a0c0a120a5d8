"""Text to a tree of nodes that know their place. The only module that knows yaml.

Nothing is typed here: YAML's own idea of numbers, dates and NO corrupts what a shop writes, so every scalar
stays as it was written. Events are read one by one without recursion: a file of 20,000 brackets is a finding.
"""

import yaml

from ..core.finding import Finding
from ..core.place import Place

DEEPEST = 40
RULE = "yaml"
_LOADER = getattr(yaml, "CBaseLoader", yaml.BaseLoader)


class Node:
    __slots__ = ("path", "line", "column")

    @property
    def place(self) -> Place:
        return Place(self.path, self.line, self.column)


class Scalar(Node):
    """`text` as written, before anyone decides what it means."""

    __slots__ = ("text",)


class Sequence(Node):
    __slots__ = ("items",)


class Mapping(Node):
    """`entries` in order, duplicates kept; `flow` is True inside { }."""

    __slots__ = ("entries", "flow", "pending")


class _Refused(Exception):
    def __init__(self, line: int, column: int, message: str, mend: str):
        super().__init__(message)
        self.finding = (line, column, message, mend)


def read_tree(path: str, text: str) -> tuple[Node | None, Finding | None]:
    """The tree of one document, or the one finding that says why there is none."""
    try:
        return _build(path, text), None
    except _Refused as refused:
        line, column, message, mend = refused.finding
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        line, column = (mark.line + 1, mark.column + 1) if mark else (1, 1)
        message, mend = _lesson(text, line, str(error.problem or "the text cannot be read"))
    except (yaml.YAMLError, RecursionError, ValueError):
        line, column, message, mend = 1, 1, "the file holds a character that is not text", "save it again as plain UTF-8"
    return None, Finding(Place(path, line, column), RULE, message, mend)


def _build(path: str, text: str) -> Node | None:
    root: Node | None = None
    stack: list[Node] = []
    for event in yaml.parse(text, Loader=_LOADER):
        kind = type(event)
        if kind is yaml.ScalarEvent:
            node = Scalar()
            node.text = event.value
        elif kind is yaml.MappingStartEvent:
            node = Mapping()
            node.entries, node.flow, node.pending = [], bool(event.flow_style), None
        elif kind is yaml.SequenceStartEvent:
            node = Sequence()
            node.items = []
        elif kind in (yaml.MappingEndEvent, yaml.SequenceEndEvent):
            stack.pop()
            continue
        elif kind is yaml.AliasEvent:
            raise _refuse(event, f"'*{event.anchor}' would be replaced by something else",
                          "put quotes around the words, or write them out")
        elif kind is yaml.DocumentStartEvent and root is not None:
            raise _refuse(event, "a second document begins here", "keep one procedure a file; take the '---' away")
        else:
            continue
        mark = event.start_mark
        node.path, node.line, node.column = path, mark.line + 1, mark.column + 1
        if event.anchor is not None:
            raise _refuse(event, f"'&{event.anchor}' names a piece of text for copying", "put quotes around the words")
        if event.tag is not None and event.tag != "!":
            raise _refuse(event, f"'{event.tag}' is a tag", "take it away, or put quotes around the words")
        if not stack:
            root = node
        elif type(stack[-1]) is Sequence:
            stack[-1].items.append(node)
        else:
            _into_mapping(stack[-1], node, event)
        if kind is not yaml.ScalarEvent:
            if len(stack) >= DEEPEST:
                raise _refuse(event, f"the nesting is over {DEEPEST} deep", "check the brackets and the indent")
            stack.append(node)
    return root


def _into_mapping(owner: Mapping, node: Node, event) -> None:
    if owner.pending is None:
        if type(node) is not Scalar:
            raise _refuse(event, "a list or group stands where a name should",
                          "put quotes around a text that begins with { or [")
        owner.pending = node
    else:
        owner.entries.append((owner.pending, node))
        owner.pending = None


def _refuse(event, message: str, mend: str) -> _Refused:
    return _Refused(event.start_mark.line + 1, event.start_mark.column + 1, message, mend)


def _lesson(text: str, line: int, problem: str) -> tuple[str, str]:
    """What went wrong in a mechanic's words: the slips that YAML reports in its own jargon."""
    lines = text.split("\n")
    here = lines[line - 1] if line <= len(lines) else ""
    value = here.partition(": ")[2].strip() if ": " in here else here.strip().removeprefix("- ")
    if "\t" in here[: len(here) - len(here.lstrip())]:
        return "the line is indented with a tab", "use spaces"
    if value[:1] in ("{", "[") and problem != "could not find expected ':'":
        return "a text that begins with { or [ is taken for a list", "put quotes around the whole text"
    if value[:1] in ("*", "&", "!", "%", "@", "`"):
        return f"a text may not begin with '{value[:1]}'", "put quotes around the whole text"
    if value[:1] in (">", "|"):
        return f"'{value[:1]}' at the start of a text opens a block", "put quotes around the whole text"
    if "mapping values" in problem:
        return "a colon inside the text cuts it in two", "put quotes around the whole text"
    if value[:1] in ("'", '"'):
        return "a quote is opened and not closed, or closed too early", "quote the whole text, or none of it"
    return "the indent or the brackets do not fit here", "line the entry up with the one above it"
