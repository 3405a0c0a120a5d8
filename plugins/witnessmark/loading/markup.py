"""Texts that look like HTML or a Markdown link, and addresses that a browser might run. Pure text.

It looks at the texts as they stand in the file, so that no field of any source, present or to come, can be forgotten.
"""

import re
from typing import Iterable, Iterator

from ..core.finding import ERROR, WARNING, Finding
from .slips import place_of

HTML = "html-not-read"
OUTSIDE = "outside-link"
_TAG = re.compile(r"</?[a-z][\w-]*(?:[\s/][^<>]*)?>|<!--|<!?[a-z][\w-]*(?=[\s/])(?=[^<>]*=)|<(?:script|img|svg|iframe|style|a|object)\b", re.IGNORECASE)
_LINK = re.compile(r"\[[^\[\]]+\]\([^()\s]+\)")
_OTHER = re.compile(r"\b(?!https?:)[a-z][a-z0-9+.-]{1,20}://\S|\b(?:javascript|vbscript|data|file|blob):(?=[^\s\d])", re.IGNORECASE)
_LEADS_OUT = re.compile(r"(?:javascript|vbscript|data|file|blob):\S")
_JOINED = re.compile(r":\S")


def may_hold_markup(text: str) -> bool:
    """False for nearly every file, which spares the search of its texts one by one."""
    return bool("<" in text and _TAG.search(text) or "](" in text and _LINK.search(text) or "://" in text
                or _JOINED.search(text) and _LEADS_OUT.search(text.lower()))


def markup(path: str, text: str, scalars: Iterable[tuple[int, int, str, str]]) -> Iterator[Finding]:
    """The first of each sort in each text, at its place. `scalars` tell where the texts of the file begin and end."""
    for start, end, *_ in scalars:
        if found := _TAG.search(text, start, end):
            yield Finding(place_of(path, text, found.start()), HTML, f"'{_short(found)}' stands here, and HTML is not read here",
                          "write plain words, with *stars* round what is to stand out", ERROR)
        if found := _LINK.search(text, start, end):
            yield Finding(place_of(path, text, found.start()), HTML, f"'{_short(found)}' is a Markdown link, which is not read here",
                          "write the name and the address one after the other", WARNING)
        if found := _OTHER.search(text, start, end):
            yield Finding(place_of(path, text, found.start()), OUTSIDE, f"'{found[0].partition(':')[0]}:' is no address that may stand in a book",
                          "write an address that begins with https:// or http://, or the name of the document")


def _short(found: re.Match) -> str:
    return " ".join(found[0][:40].split())
