"""A picture lies beside the source that names it, is a picture indeed, opens on a phone and says in words what it shows.

right:
    picture: {file: cup-on-shaft.jpg, shows: The far shaft end backed on the anvil cup.}
wrong:
    picture: {file: ../../photos/IMG_2041.HEIC, shows: none}
"""

from typing import Iterator

from ..core.book import Book
from ..core.every_picture import pictures_of_book
from ..core.finding import WARNING, Finding

ID = "picture-will-do"
HEAVY = 500_000
#: Past this a phone runs short of memory and shows nothing, whatever the file weighs.
MANY_PIXELS = 40_000_000


def check(book: Book, derived) -> Iterator[Finding]:
    for picture in pictures_of_book(book):
        if picture.shows.strip(". ").lower() in ("", "none", "picture", "photo"):
            yield Finding(picture.place, ID, f"the picture '{picture.file}' does not say what it shows",
                          "write under 'shows:' what is to be seen, for those who cannot see it")
        known = book.pictures.get(picture.path)
        if known is None:
            continue
        if known.problem:
            yield Finding(picture.place, ID, f"the picture '{picture.file}': {known.problem[0]}", known.problem[1])
        elif known.width * known.height > MANY_PIXELS:
            yield Finding(picture.place, ID, f"the picture '{picture.file}' is {known.width} by {known.height} pixels",
                          "save it smaller: 1,600 pixels across show everything")
        elif known.weight > HEAVY:
            yield Finding(picture.place, ID, f"the picture '{picture.file}' weighs {known.weight / 1000:,.0f} kB",
                          f"save it smaller, under {HEAVY // 1000} kB: a phone in the yard waits for it", WARNING)
