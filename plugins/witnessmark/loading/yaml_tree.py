"""Text to a tree of nodes that know their place. The only module that knows yaml.

Nothing is typed here: YAML's own idea of numbers, dates and NO corrupts what a shop writes, so every scalar
stays as it was written. Events are read one by one without recursion: a file of 20,000 brackets is a finding.
"""

from itertools import islice

import yaml
from yaml.events import AliasEvent, DocumentStartEvent, MappingEndEvent, MappingStartEvent, ScalarEvent, SequenceEndEvent, SequenceStartEvent

from ..core.finding import Finding
from ..core.place import Place
from . import slips
from .markup import markup, may_hold_markup

DEEPEST = 40
MOST_NODES = 40_000
MOST_SIGNS = 10_000      # in one text; a long paragraph has a thousand
MOST_SLIPS = 200
RULE = "yaml"
_LOADER = getattr(yaml, "CBaseLoader", yaml.BaseLoader)


class Node:
    __slots__ = ("place",)


class Scalar(Node):
    """`text` as written, before anyone decides what it means."""

    __slots__ = ("text",)


class Sequence(Node):
    """`flow` is True inside [ ]."""

    __slots__ = ("items", "flow")


class Mapping(Node):
    """`entries` in order, duplicates kept; `flow` is True inside { }."""

    __slots__ = ("entries", "flow", "pending", "key_end")


class _Refused(Exception):
    def __init__(self, line: int, column: int, message: str, mend: str):
        super().__init__(message)
        self.finding = (line, column, message, mend)


class _Notices:
    """What is seen on the way: slips that leave a tree, and where texts stand when a # may have cut one or HTML be in one."""

    def __init__(self, path: str, text: str):
        self.path, self.text = path, text
        self.found: list[Finding] = []
        self.marked_up = may_hold_markup(text)
        self.joined = slips.may_join_keys(text)
        self.scalars: list[tuple[int, int, str, str]] | None = [] if self.marked_up or self.joined or slips.may_hold_notes(text) else None

    def add(self, place: Place, rule: str, message: str, mend: str) -> None:
        if len(self.found) < MOST_SLIPS:
            self.found.append(Finding(place, rule, message, mend))

    def all(self) -> list[Finding]:
        lost = slips.lost_to_notes(self.path, self.text, self.scalars) if self.scalars else ()
        written = markup(self.path, self.text, self.scalars or ()) if self.marked_up else ()
        joined = slips.joined_keys(self.path, self.text, self.scalars or ()) if self.joined else ()
        return [*self.found, *islice(joined, MOST_SLIPS), *islice(lost, MOST_SLIPS), *islice(written, MOST_SLIPS)]


def read_tree(path: str, text: str) -> tuple[Node | None, list[Finding]]:
    """The tree of one document with the slips that leave one; or None, and the one finding that says why."""
    if deceiving := slips.unseen(path, text):
        return None, [deceiving]
    notices = _Notices(path, text)
    try:
        return _build(path, text, notices), notices.all()
    except _Refused as refused:
        line, column, message, mend = refused.finding
    except yaml.MarkedYAMLError as error:
        key_line = error.context_mark if "simple key" in (error.context or "") else None      # where the line begins, not where it was noticed
        at = _at(key_line or error.problem_mark or error.context_mark)
        within = "flow" in (error.context or "") or "quoted" in (error.context or "")
        problem = f"{error.context if within else ''} {error.problem}"
        (line, column), message, mend = slips.lesson(text, at, problem, _at(error.context_mark) if within else None)
    except (yaml.YAMLError, RecursionError, ValueError):
        line, column, message, mend = 1, 1, "the file holds a character that is not text", "save it again as plain UTF-8"
    return None, [Finding(Place(path, line, column), RULE, message, mend)]


def _build(path: str, text: str, notices: _Notices) -> Node | None:
    root: Node | None = None
    owner: Node | None = None                  # the innermost list or group that is still open, the last of `stack`
    stack: list[Node] = []
    count = 0
    may_be_named = "&" in text or "!" in text
    looked_at = notices.scalars is not None
    next_event = _LOADER(text).get_event
    while (event := next_event()) is not None:
        kind = type(event)
        if kind is ScalarEvent:
            node = Scalar()
            node.text = event.value
            if len(node.text) > MOST_SIGNS:
                raise _refuse(event, f"a text of over {MOST_SIGNS:,} letters begins here",
                              "shorten it; if that was not meant, a quote or bracket before it is not closed")
        elif kind is MappingStartEvent:
            node = Mapping()
            node.entries, node.flow, node.pending, node.key_end = [], bool(event.flow_style), None, None
        elif kind is MappingEndEvent or kind is SequenceEndEvent:
            ended = stack.pop()
            owner = stack[-1] if stack else None
            if type(ended) is Mapping and ended.key_end is None:
                notices.add(ended.place, "empty-value", "nothing stands between the braces", "write what belongs there, or 'none'")
            continue
        elif kind is SequenceStartEvent:
            node = Sequence()
            node.items, node.flow = [], bool(event.flow_style)
        elif kind is AliasEvent:
            raise _refuse(event, f"'*{event.anchor}' would be replaced by something else",
                          "put quotes around the words, or write them out")
        elif kind is DocumentStartEvent and root is not None:
            raise _refuse(event, "a second document begins here", "keep one procedure a file; take the '---' away")
        else:
            continue
        mark = event.start_mark
        node.place = Place(path, mark.line + 1, mark.column + 1)
        if may_be_named:
            if event.anchor is not None:
                raise _refuse(event, f"'&{event.anchor}' names a piece of text for copying", "put quotes around the words")
            if event.tag is not None:
                raise _refuse(event, f"'{event.tag}' is a tag", "take it away, or put quotes around the words")
        if type(owner) is Mapping:
            if owner.pending is None:
                _as_key(owner, node, event)
            elif kind is ScalarEvent and node.text:        # nearly always
                owner.entries.append((owner.pending, node))
                owner.pending = None
            else:
                _as_value(owner, node, event, notices)
        elif owner is not None:
            owner.items.append(node)
        else:
            root = node
        count += 1
        if count > MOST_NODES:
            raise _refuse(event, f"the file has over {MOST_NODES:,} entries", "split it into several files")
        if kind is ScalarEvent:
            if looked_at or event.style == '"' or event.end_mark.line > mark.line:
                _notice(event, node, stack, notices)
        else:
            if len(stack) >= DEEPEST:
                raise _refuse(event, f"the nesting is over {DEEPEST} deep", "check the brackets and the indent")
            stack.append(node)
            owner = node
    return root


def _as_key(owner: Mapping, node: Node, event) -> None:
    if type(node) is not Scalar:
        raise _refuse(event, "a list or group stands where a name should",
                      "put quotes around a text that begins with { or [")
    if node.text == "<<":
        raise _refuse(event, "'<<' would copy entries from elsewhere", "write the entries out")
    owner.pending, owner.key_end = node, event.end_mark.index


def _as_value(owner: Mapping, node: Node, event, notices: _Notices) -> None:
    key, owner.pending = owner.pending, None
    if owner.flow and type(node) is Scalar and not node.text and event.start_mark.index == owner.key_end:
        before = owner.entries[-1][1] if owner.entries else None
        alone = before is None and notices.text.startswith("}", owner.key_end)
        notices.add(key.place, slips.CUT, *slips.stray(key.text, alone, before.text if type(before) is Scalar else "", before is None))
    else:
        owner.entries.append((key, node))


def _notice(event, node: Scalar, stack: list[Node], notices: _Notices) -> None:
    """Looks at one text for what its quotes bend, and keeps where it stands."""
    start, end = event.start_mark.index, event.end_mark.index
    if event.style == '"' and (bent := slips.bent_escape(notices.text[start:end])):
        notices.add(node.place, slips.BENT, *bent)
    if event.end_mark.line > event.start_mark.line and (taken := slips.swallowed(notices.text[start:end])):
        at = slips.place_of(node.place.path, notices.text, start + taken[0])
        notices.add(at, slips.SWALLOWED, *taken[1:])
    if notices.scalars is not None:
        owner = next((group for group in reversed(stack) if type(group) is Mapping), None)
        key = (owner.pending or owner.entries[-1][0]).text if owner and (owner.pending or owner.entries) else ""
        notices.scalars.append((start, end, event.style or "", key))


def _refuse(event, message: str, mend: str) -> _Refused:
    return _Refused(event.start_mark.line + 1, event.start_mark.column + 1, message, mend)


def _at(mark) -> tuple[int, int]:
    return (mark.line + 1, mark.column + 1) if mark else (1, 1)
