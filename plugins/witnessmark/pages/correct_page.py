"""The pages on which the figures of a procedure, of a machine itself and of the shop are corrected."""

from . import words_correct
from .address import SHOP_CORRECT_URL, correct_url, machine_correct_url, root_from
from .book_index import BookIndex
from .fill_template import fill
from .forge_links import Forge
from .lookup import Lookup
from .paper_pages import SLIP_URL
from .to_correct import CorrectView
from .view_correct import correct_view
from .view_correct_shop import shop_view
from ..core.book import Book
from ..core.correction_text import ASKED


def correct_file(lookup: Lookup, codes: dict[str, str], book_id: str, forge: Forge | None, mail: str) -> dict[str, str]:
    """The page of a procedure, or with none that of its machine, by its path."""
    url = correct_url(lookup.procedure) if lookup.procedure else machine_correct_url(lookup.machine.id)
    return _page(url, correct_view(lookup, root_from(url), codes, book_id, forge, mail))


def shop_correct_file(book: Book, index: BookIndex, book_id: str, forge: Forge | None, mail: str) -> dict[str, str]:
    return _page(SHOP_CORRECT_URL, shop_view(book, index, root_from(SHOP_CORRECT_URL), book_id, forge, mail))


def _page(url: str, view: CorrectView) -> dict[str, str]:
    root = root_from(url)
    return {f"{url}index.html": fill("correct", title=f"{words_correct.TITLE}: {view.title}", root=root, c=view, words_c=words_correct, asked=ASKED, slip=root + SLIP_URL)}
