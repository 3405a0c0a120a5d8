"""An outside address is written out, with http or https. Nothing that a browser would run is taken.

right:
    note: The standard is sold at https://standards.example/b1-1.
wrong:
    note: See javascript:alert(1).
"""

import re
from typing import Iterator

from ..core.book import Book
from ..core.every_sentence import texts_of_book
from ..core.finding import Finding

ID = "outside-link"
_OTHER = re.compile(r"\b(?!https?:)[a-z][a-z0-9+.-]{1,20}://\S|\b(?:javascript|vbscript|data|file|blob):(?=[^\s\d])", re.IGNORECASE)


def check(book: Book, derived) -> Iterator[Finding]:
    for place, text in texts_of_book(book):
        if ":" in text and (other := _OTHER.search(text)):
            yield Finding(place, ID, f"'{other[0].partition(':')[0]}:' is no address that may stand in a book",
                          "write an address that begins with https:// or http://, or the name of the document")
