"""Words that the file format drops or bends in silence, and what to say of them in a mechanic's words. Pure text.

    do: Tighten stud #3 first        loads as "Tighten stud"
    {because: Stop, then wait}       gains a key "then wait"
    do: > ... hold point: ...        a key indented too far is read as more of the text
    do: Tighten it note:then wait    a key without its space is read as more of the text
    do: {nut} to the mark            is taken for a group of keys
"""

import re
import unicodedata
from typing import Iterable

from ..core.finding import ERROR, WARNING, Finding
from ..core.place import Place
from .key_words import KEYS

LOST = "text-lost"
CUT = "text-cut"
BENT = "text-bent"
SWALLOWED = "key-swallowed"
DECEIVING = "deceiving-sign"

# Signs that are not seen, change the direction of reading, or end a line for one program and not for another.
_UNSEEN = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u00ad\u034f\u061c\u115f\u1160\u17b4\u17b5\u180b-\u180f\u200b-\u200f"
                     "\u2028-\u202e\u2060-\u206f\u3164\ufe00-\ufe0f\ufeff\uffa0\ufff9-\uffff\U000e0000-\U000e0fff]|\r(?!\n)")
_NOTE = re.compile(r"#.*")
_AFTER_WORDS = re.compile(r"(?<=\S)[ \t]+#")
_COMMENTED_NUMBER = re.compile(r"^[ \t]*#[0-9]", re.MULTILINE)
_KEY_LINE = re.compile(r"\n[ \t]*(?:- )?([^:\n]{1,40}):")
# A letter and a colon joined to what follows: no time (10:30), no ratio (1:12), no address (https://).
_JOINED = re.compile(r":(?<=[a-z]:)[^\W_]")
_JOINED_KEY = re.compile(r"(?<=\S)[ \t]+((?:[a-z-]+ ){0,3}[a-z-]+):(?=[^\W_])")
_ENTRIES = re.compile(r"\(?[\w-]+: [^,:]+(?:,\s*[\w-]+: [^,:]+)+\)?")
_ESCAPE = re.compile(r"\\(.)", re.DOTALL)
#: Keys whose value is words: a note behind them may be the rest of the sentence.
PROSE = frozenset((
    "do", "check", "if outside", "hold point", "note", "notes", "state", "because", "if forgotten", "says", "causes", "shows",
    "above", "below", "summary", "skill", "conditions", "title", "label", "condition", "in doubt", "to be found by", "limited by",
    "tools", "supplies", "parts", "tool", "item", "number", "count", "tag", "hazard", "consequence", "avoid", "weight", "printed",
    "why", "about", "old", "new", "reason", "evidence", "touches", "viewpoint", "for", "critical features", "not permission",
    "range used", "opens up", "defer", "serial plate", "told by"))
_QUOTE_ALL = "put quotes around the whole text"


def unseen(path: str, text: str) -> Finding | None:
    """The first sign in the text that makes a line read otherwise than it is, or None."""
    match = None if _surely_seen(text) else _UNSEEN.search(text)
    if match is None:
        return None
    sign = match[0]
    if sign == "\0":
        message, mend = "a NUL character stands here", "delete it; the file may be damaged or not a text file"
    elif sign == "\r":
        message, mend = "a line ends here for one program and not for another", "save the file with plain line ends"
    else:
        name = unicodedata.name(sign, "a control character").lower()
        message = f"an invisible character (U+{ord(sign):04X}, {name}) stands here"
        mend = "delete it: it makes the line read otherwise than it is"
    return Finding(place_of(path, text, match.start()), DECEIVING, message, mend)


def _surely_seen(text: str) -> bool:
    """True for most files: printable signs of western languages and plain line ends, four times sooner than the search says it."""
    try:
        text.encode("latin-1")                           # further on, signs count as printable that nobody sees
    except UnicodeEncodeError:
        return False
    return text.replace("\n", "").isprintable()


def may_hold_notes(text: str) -> bool:
    """False where no `#` can have taken words away, which spares the search for them."""
    return "#" in text and (_AFTER_WORDS.search(text) is not None or _COMMENTED_NUMBER.search(text) is not None)


def may_join_keys(text: str) -> bool:
    """False where no key can be joined to words, which spares the search for one."""
    return _JOINED.search(text) is not None


def joined_keys(path: str, text: str, scalars: list[tuple[int, int, str, str]]) -> Iterable[Finding]:
    """Keys behind words in a text without quotes: what stands between quotes is meant as it stands."""
    for start, end, style, _ in scalars:
        for match in _JOINED_KEY.finditer(text, start, end) if style not in ("'", '"') else ():
            words = match[1].split(" ")
            key = next((key for at in range(len(words)) if (key := " ".join(words[at:])) in KEYS), None)
            if key:
                yield Finding(place_of(path, text, match.end(1) - len(key)), SWALLOWED, f"'{key}:' is read as more of the text before it",
                              "put a space after its colon and give it a line of its own (between { } a comma before it), or put quotes around the whole text")


def lost_to_notes(path: str, text: str, scalars: list[tuple[int, int, str, str]]) -> Iterable[Finding]:
    """Words that `#` took from the text before it.

    `scalars` in the order of the text: where each begins and ends, its style ('' plain, quotes, > or |) and the key it is for.
    """
    held = list(_held(text, scalars))
    at = 0
    ends: list[tuple[int, str]] = [(end, key) for _, end, _, key in scalars]
    last = 0
    starts = sorted([match.end() - 1 for match in _AFTER_WORDS.finditer(text)]
                    + [match.end() - 2 for match in _COMMENTED_NUMBER.finditer(text)])
    done = -1
    for start in starts:
        while at < len(held) and held[at][1] <= start:
            at += 1
        if start < done or (at < len(held) and held[at][0] <= start):
            continue                                             # within a note, or within a quoted text or block
        while last + 1 < len(ends) and ends[last + 1][0] <= start:
            last += 1
        note = _NOTE.match(text, start)[0].rstrip()
        done = start + len(note)
        if severity := _severity(note, ends[last][1] if ends else ""):
            shown = note if len(note) <= 40 else note[:40] + "..."
            yield Finding(place_of(path, text, start), LOST, f"'{shown}' is left out: a space and a # begin a note that nobody sees",
                          _QUOTE_ALL + ", or put the note on a line of its own", severity)


def _held(text: str, scalars) -> Iterable[tuple[int, int]]:
    """Stretches in which a # is only a sign: quoted texts, and blocks below their first line."""
    for start, end, style, _ in scalars:
        if style in (">", "|"):
            first = text.find("\n", start)
            yield (end if first < 0 else first), end
        elif style:
            yield start, end


def _severity(note: str, key: str) -> str | None:
    """`#3 first` is part of a text; `# a note` is one, and doubtful only behind words, unless a number opens it."""
    rest = note.lstrip("#")
    if rest[:1].strip() or (key in PROSE and rest.strip()[:1].isdigit()):
        return ERROR
    return WARNING if key in PROSE else None


def stray(key: str, whole_group: bool, before: str, first: bool = False) -> tuple[str, str]:
    """Message and mend for words between { } that have no value. `before` is the value before them; the `first` have none."""
    if whole_group:
        return f"braces at the start of a text open a group of keys: '{{{key}}}'", _QUOTE_ALL
    if ":" in key:
        return f"'{key}' has no value of its own", "put a space after the colon"
    if first:
        name, _, value = key.partition(" ")
        return f"'{key}' has no value of its own", f"write '{name}: {value}'" if value else f"write '{name}:' and its value"
    if before[-1:].isdigit() and re.match(r"[0-9]{3}(?![0-9])", key):
        return f"the comma cuts '{before},{key}' in two", "put quotes around the number with its unit"
    return (f"the comma cuts the text before '{key}' in two",
            "put quotes around the text, or give the sentence a line of its own outside the braces")


def bent_escape(raw: str) -> tuple[str, str] | None:
    """A backslash inside double quotes that writes another sign than the one seen."""
    for match in _ESCAPE.finditer(raw):
        if match[1] not in '"\\':
            seen = match[0] if match[1].strip() else "\\"
            return f"'{seen}' in double quotes becomes another sign", "write the sign itself, or use single quotes"
    return None


def swallowed(raw: str) -> tuple[int, str, str] | None:
    """How far into a text of several lines a line begins with a key, with message and mend; None where none does."""
    match = ":" in raw and next((match for match in _KEY_LINE.finditer(raw) if match[1] in KEYS), None)
    return match and (match.start(1), f"'{match[1]}:' is read as more of the text above it",
                      f"put '{match[1]}:' straight under the key above, with a space after its colon")


def lesson(text: str, at: tuple[int, int], problem: str, opened: tuple[int, int] | None) -> tuple[tuple[int, int], str, str]:
    """Place, message and mend for a fault of the format at line and column `at`, in a mechanic's words.

    `opened` is where the bracket or quote begins that the fault was found in."""
    lines = text.split("\n")
    if "nesting" in problem:
        return at, "the brackets stand too deep in one another", "close each { with } and each [ with ]"
    if opened and "quote" in problem:
        return opened, "a quote is opened here and not closed", "close it, or take it away"
    if opened and "expected ',' or" in problem:
        here = lines[opened[0] - 1]
        if note := _AFTER_WORDS.search(here, opened[1]):
            return (opened[0], note.end()), f"'{here[note.end() - 1:][:40]}' is left out, and the closing bracket with it", _QUOTE_ALL
        if _line(lines, at[0])[at[1] - 1:at[1]] == ":" and at[0] == opened[0]:
            return at, "a colon inside the text cuts it in two", \
                "put a comma where the next entry begins, or quotes around that text, or give it a line of its own"
        return opened, "a bracket is opened here and not closed, or a comma is missing in it", \
            "close each { with } and each [ with ], and put quotes around a text that begins with one"
    return at, *_of_line(_line(lines, at[0]), at[1], problem)


def _line(lines: list[str], number: int) -> str:
    return lines[number - 1] if 1 <= number <= len(lines) else ""


def _of_line(here: str, column: int, problem: str) -> tuple[str, str]:
    value = here.partition(": ")[2].strip() if ": " in here else here.strip().removeprefix("- ")
    if "\t" in here[: len(here) - len(here.lstrip())]:
        return "the line is indented with a tab", "use spaces"
    if "expected ':'" in problem:
        if match := re.match(r"\s*(?:- )?([a-z][a-z -]*):(\S|\u00a0)", here):
            if match[2] == "\u00a0":
                return f"a space that is no plain one stands after '{match[1]}:'", "delete it and type a space"
            return f"no space stands after '{match[1]}:'", "put a space after the colon"
        if (match := re.match(r"\s*(?:- )?([a-z][a-z -]*?) ?[;=—–-]", here)) and match[1] in KEYS:
            return f"no colon stands after '{match[1]}'", f"write '{match[1]}:' and a space"
        return "a line stands here that is neither a key with its value nor the rest of a text", \
            "indent it further than the key above, or give it a key"
    if re.match(r"[>|] ?[0-9.]", value):
        return f"'{value[0]}' at the start of a text opens a block", "write 'over' or 'under' before a figure, or quotes around the text"
    if value[:1] in ("{", "["):
        return f"a text that begins with {value[0]} is taken for a list or a group", _QUOTE_ALL
    if here.strip()[:2] in ("* ", "• ", "– ", "+ "):
        return f"an entry of a list begins with a dash, not with '{here.strip()[0]}'", "write '- ' in its place"
    if value[:1] in ("*", "&", "!", "%", "@", "`", ","):
        return f"a text may not begin with '{value[:1]}'", _QUOTE_ALL
    if value[:1] in (">", "|"):
        return f"'{value[:1]}' at the start of a text opens a block", _QUOTE_ALL
    if value in ("-", "?"):
        return f"'{value}' alone says nothing", "write 'not known yet' for a figure that nobody knows, 'none' where nothing is needed"
    if value[:1] in ("“", "”", "‘", "’", "„"):
        return f"'{value[:1]}' is a quote of a word processor, and no quote here", "write the straight quotes ' or \" around the whole text"
    if "mapping values" in problem and _ENTRIES.fullmatch(value) and any(map(str.isdigit, value)):
        return "several entries stand here without braces", "put { before the first and } behind the last"
    if value[:2] in ("- ", "? "):
        return f"'{value[0]}' and a space at the start of a text begin something else", _QUOTE_ALL
    if "mapping values" in problem and ": " in here[:column - 1]:
        return "a colon inside the text cuts it in two", _QUOTE_ALL
    if value[:1] in ("'", '"'):
        return "a quote is closed too early", "quote the whole text, or none of it"
    return "the indent does not fit here", "line the entry up with the one above it"


def place_of(path: str, text: str, index: int) -> Place:
    return Place(path, text.count("\n", 0, index) + 1, index - text.rfind("\n", 0, index))
