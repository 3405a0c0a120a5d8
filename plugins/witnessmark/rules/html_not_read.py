"""A sentence is plain words, *emphasis* and {figures}. HTML and Markdown links are printed as they stand, never followed.

right:
    note: Read the *whole* card first.
wrong:
    note: Read the <b>whole</b> card first.
"""

import re
from typing import Iterator

from ..core.book import Book
from ..core.every_sentence import texts_of_book
from ..core.finding import WARNING, Finding

ID = "html-not-read"
_TAG = re.compile(r"</?[a-z][\w-]*(?:\s[^<>]*)?/?>|<!--|<(?:script|img|svg|iframe|style|a|object)\b", re.IGNORECASE)
_LINK = re.compile(r"\[[^\[\]]+\]\([^()\s]+\)")


def check(book: Book, derived) -> Iterator[Finding]:
    for place, text in texts_of_book(book):
        if "<" in text and (tag := _TAG.search(text)):
            yield Finding(place, ID, f"'{tag[0][:40]}' stands here, and HTML is not read here",
                          "write plain words, with *stars* round what is to stand out", WARNING)
        if "](" in text and (link := _LINK.search(text)):
            yield Finding(place, ID, f"'{link[0][:40]}' is a Markdown link, which is not read here",
                          "write the name and the address one after the other", WARNING)
