"""A comparison as Markdown, for the summary that a forge shows beside a change.

The book is not to be trusted here: whoever sent the change wrote it. Every text of theirs stands in a code span, in which
a forge makes no link, no mark-up and no mention of anyone.
"""

import re
from collections.abc import Iterable, Iterator

from . import words
from .change import Change
from .compare import Comparison
from .lines import head, moved_by, plain, sheet_words, where, why, worth

#: What a forge takes as the summary of a job; a little is left for what stands around it.
MOST_BYTES = 1_000_000
_LONGEST = 300


def as_markdown(comparison: Comparison) -> str:
    """Never more than MOST_BYTES; what does not fit is counted."""
    found: list[str] = []
    size, left = 0, 0
    for line in _lines(comparison):
        size += len(line.encode()) + 1
        if size <= MOST_BYTES:
            found.append(line)
        else:
            left += line.startswith("|")
    if left:
        found += ["", f"{left} {words.MORE}."]
    return "\n".join(found) + "\n"


def code(text: str) -> str:
    """A text as a code span that is fit for a cell of a table."""
    text = " ".join(plain(text).split()).replace("|", "\\|")
    text = text if len(text) <= _LONGEST else f"{text[:_LONGEST - 1].rstrip(chr(92))}…"
    if not text:
        return ""
    fence = "`" * (1 + max(map(len, re.findall("`+", text)), default=0))
    pad = " " if text.startswith("`") or text.endswith("`") else ""
    return f"{fence}{pad}{text}{pad}{fence}"


def _lines(comparison: Comparison) -> Iterator[str]:
    yield f"## {head(comparison)}"
    yield from ("", f"{code(comparison.old)} → {code(comparison.new)}")
    if comparison.first:
        yield from ("", words.FIRST.format(code(comparison.old)))
    if comparison.findings:
        yield from ("", f"### {words.FINDINGS}", "", *_head(("where", "severity", "what", "rule")))
        yield from (_row((code(str(each.place)), each.severity, code(f"{each.message}, {each.mend}"), code(each.rule))) for each in comparison.findings)
    for severity in (words.STOP, words.LOOK, words.WORDING):
        yield from _table(words.HEADS[severity], [change for change in comparison.changes if change.severity == severity])
    yield from _table(words.MOVED, comparison.consequences)
    yield from _table(words.TOOL, comparison.by_tool)
    if comparison.sheets:
        yield from ("", f"### {words.SHEETS}", "", *_head(("sheet", "old", "new")))
        yield from (_row(map(code, sheet_words(sheet))) for sheet in comparison.sheets)
    elif comparison.changes:
        yield from ("", words.ALL_SHEETS_HOLD)
    if comparison.corrections:
        yield from ("", f"### {words.CORRECTIONS}", "", *_head(("id", "date", "reason", words.IF_DONE)))
        yield from (_row((code(each.id), code(each.on), code(each.reason.text), each.if_already_done)) for each in comparison.corrections)


def _table(head: str, changes: Iterable[Change]) -> Iterator[str]:
    changes = list(changes)
    if not changes:
        return
    yield from ("", f"### {head}", "", *_head(("where", "what", "case", "old", "new", "moved", "why")))
    for change in changes:
        yield _row((code(where(change)), code(change.what), code(change.case), code(worth(change.old, change.old_also)),
                    code(worth(change.new, change.new_also)), moved_by(change), code(why(change))))


def _head(names: tuple[str, ...]) -> tuple[str, str]:
    return _row(names), _row("---" for _ in names)


def _row(cells: Iterable[str]) -> str:
    return f"| {' | '.join(cells)} |"
