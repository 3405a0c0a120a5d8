"""What the phone needs besides the pages: who the book is, the service worker, what makes it installable, and the page for what is not there."""

from dataclasses import dataclass, field

from ..core.book import Book
from ..core.book_date import book_date
from . import keep_words
from .fill_template import fill, static_files
from .icon import SIZES, icon_png, icon_svg
from .keep_list import AWAY, web_manifest

ICONS = "assets/witnessmark/icon"
MANIFEST = "manifest.webmanifest"


@dataclass(frozen=True)
class About:
    """Whose pages these are: the book's id, its date, its machines with their titles."""

    book: str = ""
    date: str = ""
    machines: dict[str, str] = field(default_factory=dict)

    def script_data(self, root: str) -> dict:
        """What keep/keep.js is given on a page at `root`."""
        return {"book": self.book, "root": root, "machines": self.machines, "say": keep_words.SCRIPT}

    @property
    def line(self) -> str:
        return keep_words.BOOK_OF.format(self.date) if self.date else keep_words.NO_DATE


def about_book(book: Book, book_id: str) -> About:
    return About(book_id, book_date(book), {machine.id: machine.title for machine in book.machines.values()})


def offline_files(title: str) -> dict[str, str | bytes]:
    """The service worker stands at the root: it answers for its own folder and below."""
    pngs = {f"{ICONS}/icon-{side}.png": icon_png(side) for side in SIZES}
    icons = [(f"{ICONS}/icon.svg", "image/svg+xml", "any"), *((path, "image/png", f"{side}x{side}") for path, side in zip(pngs, SIZES))]
    return {"sw.js": static_files()["keep/sw.js"], f"{ICONS}/icon.svg": icon_svg(), **pngs, MANIFEST: web_manifest(title, icons), AWAY: fill("away")}
