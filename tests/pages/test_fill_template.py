"""Text is escaped wherever a template prints it, and markup is not escaped twice."""

import pytest
from markupsafe import Markup, escape

from witnessmark.pages.fill_template import fill, part, quick_escape


class Loud(str):
    """A text that is told apart from str by its class alone."""


class Drawn:
    def __html__(self):
        return "<i>"


@pytest.mark.parametrize("given", ["<b>", Markup("<b>"), "<b>", Loud("<b>"), Markup(""), "", 3, None, Drawn(), "'\"&"])
def test_what_is_printed_is_what_markupsafe_gives(given):
    """Also after an equal text of the other kind went before."""
    assert str(quick_escape(given)) == str(escape(given))


def test_templates_and_macros_escape_text_and_leave_markup():
    class Target:
        href, text = "x?a&b", "<script>"

    assert part("link")(Target) == '<a href="x?a&amp;b">&lt;script&gt;</a>'
    Target.text = Markup("<em>so</em>")
    assert part("link")(Target) == '<a href="x?a&amp;b"><em>so</em></a>'
    assert "&lt;script&gt;" in fill("list", title="<script>", targets=()) and "<script>" not in fill("list", title="<script>", targets=())
