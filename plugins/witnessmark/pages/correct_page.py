"""The page on which the figures of a procedure, or of a machine itself, are corrected."""

from ..core.correction_text import ASKED
from . import words_correct
from .address import correct_url, machine_correct_url, root_from
from .fill_template import fill
from .forge_links import Forge
from .lookup import Lookup
from .paper_pages import SLIP_URL
from .view_correct import correct_view


def correct_file(lookup: Lookup, codes: dict[str, str], book_id: str, forge: Forge | None, mail: str) -> dict[str, str]:
    """The page by its path; none for a machine without figures of its own."""
    if lookup.procedure is None and not lookup.machine.figures:
        return {}
    url = correct_url(lookup.procedure) if lookup.procedure else machine_correct_url(lookup.machine.id)
    view = correct_view(lookup, root_from(url), codes, book_id, forge, mail)
    return {f"{url}index.html": fill("correct", title=f"{words_correct.TITLE}: {view.title}", root=root_from(url), c=view, words_c=words_correct, asked=ASKED,
                                     slip=root_from(url) + SLIP_URL)}
