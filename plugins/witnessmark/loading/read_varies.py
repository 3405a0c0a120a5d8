"""Reads a value that may differ by variant or serials."""

from typing import Any, Callable

from ..core.variation import Case, Selector, Varies, read_serials
from .shape import Report, wrong_shape
from .yaml_tree import Mapping, Node, Scalar, Sequence


def read_selector(key: Scalar) -> Selector:
    text = " ".join(key.text.split())
    return Selector(text, read_serials(text), key.place)


def read_varies(node: Node, by: tuple[str, ...], read: Callable[[Node, Report], Any], report: Report) -> Varies | None:
    """One value, or a map from selector to value, nested once for each carrier in `by`.

    `read` reads one value and gives None after it has reported. None when nothing could be read.
    """
    if type(node) is Sequence and node.flow and node.items and all(type(item) is Mapping for item in node.items):
        return wrong_shape(node, report, "{ and } for the brackets [ and ]: these are cases, not a list")
    if type(node) is not Mapping:
        value = read(node, report)
        return None if value is None else Varies((), (Case((), value, node.place),), node.place)
    cases: list[Case] = []
    _descend(node, by, (), read, report, cases)
    return Varies(by, tuple(cases), node.place) if cases else None


def _descend(node: Node, by, when, read, report: Report, cases: list[Case]) -> None:
    depth = len(when)
    if depth == len(by) or type(node) is Scalar:
        if depth < len(by):
            report.error(node.place, "wrong-shape", f"this case does not say which {by[depth]}",
                         f"write one value for each variant of the {by[depth]} below it")
            return
        if type(node) is Mapping:
            wrong_shape(node, report, f"one value; this figure differs by {' and '.join(by)} only, see 'by:'")
            return
        value = read(node, report)
        if value is not None:
            cases.append(Case(when, value, node.place))
        return
    if type(node) is not Mapping:
        wrong_shape(node, report, "one value for each variant")
        return
    seen = set()
    for key, below in node.entries:
        selector = read_selector(key)
        if selector.text in seen:
            report.error(key.place, "duplicate-key", f"'{selector.text}' stands twice", "keep one of them")
            continue
        seen.add(selector.text)
        _descend(below, by, (*when, selector), read, report, cases)
