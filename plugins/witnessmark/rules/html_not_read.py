"""A sentence is plain words, *emphasis* and {figures}. HTML and Markdown links are printed as they stand, never followed.

right:
    note: Read the *whole* card first.
wrong:
    note: Read the <b>whole</b> card first.
"""

import re
from typing import Iterator

from ..core.book import Book
from ..core.every_sentence import sentences_of_book
from ..core.finding import WARNING, Finding

ID = "html-not-read"
_TAG = re.compile(r"</?[a-z][\w-]*(?:\s[^<>]*)?/?>|<!--|<(?:script|img|svg|iframe|style|a|object)\b", re.IGNORECASE)
_LINK = re.compile(r"\[[^\[\]]+\]\([^()\s]+\)")


def check(book: Book, derived) -> Iterator[Finding]:
    for sentence in sentences_of_book(book):
        if "<" in sentence.text and (tag := _TAG.search(sentence.text)):
            yield Finding(sentence.place, ID, f"'{tag[0][:40]}' stands here, and HTML is not read here",
                          "write plain words, with *stars* round what is to stand out", WARNING)
        if "](" in sentence.text and (link := _LINK.search(sentence.text)):
            yield Finding(sentence.place, ID, f"'{link[0][:40]}' is a Markdown link, which is not read here",
                          "write the name and the address one after the other", WARNING)
