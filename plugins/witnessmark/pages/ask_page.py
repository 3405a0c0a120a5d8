"""The page `s/`, which is asked whether a printed sheet still holds. It has no host: it must open offline, from a code on paper."""

from . import words_ask
from .address import ASK_URL, root_from
from .fill_template import fill
from .offline import About


def ask_file(title: str, about: About) -> dict[str, str]:
    """The page by its path. What has changed since a sheet was printed is in the files of the editions, not in it."""
    return {f"{ASK_URL}index.html": fill("ask", title=words_ask.TITLE, root=root_from(ASK_URL), book_title=title, about=about, ask=words_ask)}
