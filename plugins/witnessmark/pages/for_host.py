"""An author's words for the host's templates, which do not escape and even unescape: no angle bracket reaches them."""

import re
from html import escape, unescape


def for_host(text: str) -> str:
    return escape(text.replace("<", "‹").replace(">", "›"))


def plain_contents(links) -> None:
    """The same for the host's contents list of a page written by hand, whose ids may be an author's too."""
    for link in links:
        link.title = for_host(unescape(link.title))
        link.id = re.sub(r"[^\w.:-]", "", link.id)
        plain_contents(link.children)
