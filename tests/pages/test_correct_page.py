"""The page for corrections, as it is built: each figure with its line, its ways to the forge, what it moves."""

import re
from dataclasses import replace
from html import unescape
from urllib.parse import parse_qs, urlsplit

from test_procedure_page import words
from tiny_book import CODES, book, derived, page

from witnessmark.core.correction_text import ASKED, read_correction
from witnessmark.pages.forge_links import forge_of
from witnessmark.pages.site import Settings, site_pages


def correct(repo: str | None = "https://forge.example/shop/book", edit_uri: str | None = "edit/main/", mail: str = "", one=None) -> str:
    settings = replace(Settings("Tiny book", "tiny"), forge=forge_of(repo, edit_uri), mail=mail)
    return site_pages(one or book(), derived(), CODES, settings).files["winch/hub/correct/index.html"]


def test_each_figure_of_the_page_leads_to_its_own_entry():
    anchors = re.findall(r'class="wm-correct" href="correct/#([^"]+)"', page())
    html = correct()
    assert {"press-force.target", "press-force.ceiling", "press-force.target-2", "nut.target", "gap.window"} <= set(anchors)
    assert len(set(anchors)) == len(anchors) and all(f'id="{anchor}"' in html for anchor in anchors)


def test_editor_and_issue_form_are_filled_with_what_the_page_knows():
    html = correct()
    assert '<a class="wide" href="https://forge.example/shop/book/edit/main/procedures/winch/hub.yaml#L7"' in html
    links = [unescape(link) for link in re.findall(r'href="(https://forge.example/shop/book/issues/new[^"]*)"', html)]
    bodies = [read_correction(parse_qs(urlsplit(link).query)["body"][0]) for link in links]
    ceiling = next(body for body in bodies if body["Role"] == "ceiling" and "A" in body["Case"])
    assert (ceiling["Procedure"], ceiling["Spec"], ceiling["Printed figure"]) == ("winch/hub", "press-force", "18 long ton")
    assert ceiling["Line"] == "procedures/winch/hub.yaml:7" and "A 7QX2-M4" in ceiling["Sheet codes of the page"]
    assert all(name in ceiling.values for name in ASKED)


def test_without_a_forge_nothing_leads_anywhere_and_the_page_says_so():
    html = correct(repo=None)
    assert "forge.example" not in html and "names no forge" in words(html)
    assert '"issue": null' in html


def test_what_a_figure_moves_and_how_it_is_withdrawn():
    text = words(correct())
    assert "the marks of its press card" in text and "its wrench setting" in text
    assert "in doubt: Tell here in a sentence" in text and "7QX2-M4" in text


def test_without_script_the_questions_stand_there():
    assert all(question in words(correct()) for question in ASKED)
    assert 'href="../../../sheet/correction-slip/"' in correct()
