"""A comparison as text for a terminal. Texts of the book are shown without anything that a terminal would obey."""

import unicodedata
from collections.abc import Iterable, Iterator
from itertools import groupby

from . import words
from .change import Change
from .compare import Comparison, SheetCode


def as_lines(comparison: Comparison) -> str:
    """Everything, the gravest first; a last line says how grave it is as a whole."""
    return "".join(f"{plain(line)}\n" for line in _lines(comparison))


def plain(text: str) -> str:
    """The text on one line, with a ? for each sign that is none to be seen."""
    return "".join("?" if unicodedata.category(sign).startswith("C") else sign for sign in text)


def worth(text: str | None, also: str) -> str:
    """A figure as written, with the same in the other system."""
    return words.NOTHING if text is None else f"{text} ({also})" if also else text


def head(comparison: Comparison) -> str:
    """How grave it is as a whole, and whether each stop has its correction."""
    return words.HEADS[comparison.verdict] + (f". {words.ALL_ANSWERED}" if comparison.stops and comparison.passes else "")


def moved_by(change: Change) -> str:
    return "" if not change.per_cent else f"{change.per_cent:+g} %"


def where(change: Change) -> str:
    return "/".join(filter(None, (change.machine, change.procedure)))


def why(change: Change) -> str:
    second = (words.SECOND_READER,) if change.severity == words.STOP and change.corrections else ()
    return "; ".join((*change.reasons, *change.corrections, *second))


def sheet_words(sheet: SheetCode) -> tuple[str, str, str]:
    """Which sheet, its old code, its new one."""
    return (f"{sheet.machine}/{sheet.procedure}, {sheet.variant}", sheet.old or words.NEW_SHEET, sheet.new or words.GONE_SHEET)


def _lines(comparison: Comparison) -> Iterator[str]:
    yield f"{comparison.old} -> {comparison.new}"
    if comparison.first:
        yield words.FIRST.format(comparison.old)
    for severity, changes in groupby(comparison.changes, key=lambda change: change.severity):
        yield from ("", words.HEADS[severity])
        yield from _changes(changes)
    for title, changes in ((words.MOVED, comparison.consequences), (words.TOOL, comparison.by_tool)):
        if changes:
            yield from ("", title)
            yield from _changes(changes)
    if comparison.sheets:
        yield from ("", words.SHEETS)
        for sheet in comparison.sheets:
            yield "  {}: {} -> {}".format(*sheet_words(sheet))
    if comparison.corrections:
        yield from ("", words.CORRECTIONS)
        yield from (f"  {each.id}, {each.on}: {each.reason.text} {words.IF_DONE}: {each.if_already_done}" for each in comparison.corrections)
    if comparison.findings:
        yield from ("", words.FINDINGS)
        yield from (f"  {finding.line()}" for finding in comparison.findings)
    yield ""
    yield head(comparison) + ("" if comparison.sheets else f". {words.ALL_SHEETS_HOLD}")


def _changes(changes: Iterable[Change]) -> Iterator[str]:
    for change in changes:
        grave = "! " if change.severity == words.STOP else "  "
        yield f"{grave}{where(change)}: {change.what}{f' [{change.case}]' if change.case else ''}".replace("  : ", "  ").replace("! : ", "! ")
        rest = ", ".join(filter(None, (moved_by(change), why(change))))
        yield f"      {worth(change.old, change.old_also)} -> {worth(change.new, change.new_also)}{f', {rest}' if rest else ''}"
