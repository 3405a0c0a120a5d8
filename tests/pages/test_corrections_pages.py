"""Corrections of a machine and of the book, and the page to be pinned up, as they are built."""

import json
from dataclasses import replace

import pytest
from test_procedure_page import words
from tiny_book import CODES, book, derived

from witnessmark.core.sentence import read_reference
from witnessmark.pages.old_sheets import old_sheets
from witnessmark.pages.site import Settings, site_pages

ONE = next(iter(book().corrections.values()))
SHEET = {"machine": "winch", "procedure": "hub", "variant": "A", "title": "Press the hub", "on": "2020-01-01", "state": "superseded",
         "corrections": [{"id": ONE.id}], "changes": [{"stop": True, "why": [ONE.id]}]}
FILES = {"index.json": json.dumps({"version": 1, "newest": None, "prefixes": ["0K"]}),
         "0K.json": json.dumps({"version": 1, "codes": {"0K7M-29QX": SHEET, "0KZZ-ZZZZ": {**SHEET, "state": "same"}}})}


def built(if_done: str, sheets=None, **more):
    one = book()
    one.corrections[ONE.id] = replace(ONE, if_already_done=if_done, **more)
    return site_pages(one, derived(), CODES, replace(Settings("Tiny book", "tiny"), old_sheets=sheets or {}))


def page(site, url: str) -> str:
    return next(page.html for page in site.pages if page.url == url)


def test_the_sheets_that_a_correction_made_untrue_are_read_from_the_editions():
    found = old_sheets(FILES)
    assert [(sheet.code, sheet.variant, sheet.stop) for sheet in found[ONE.id]] == [("0K7M-29QX", "A", True)]


def test_the_book_lists_it_and_its_machine_tells_it_whole():
    site = built("inspect")
    assert f'href="../winch/plan/corrections/#correction-{ONE.id}"' in page(site, "corrections/")
    html = page(site, "winch/plan/corrections/")
    assert f'id="correction-{ONE.id}"' in html and ONE.reason.text.split()[0] in words(html)
    assert "winch/plan/corrections/" in page(site, "winch/") or 'href="../winch/plan/corrections/"' in page(site, "winch/")


def test_a_page_to_pin_up_for_every_correction_that_hands_must_stop_for():
    at = f"corrections/{ONE.id}/index.html"
    assert at not in built("fine").files
    assert at in built("inspect").files and at in built("redo").files
    text = words(built("fine", old_sheets(FILES)).files[at])
    assert "STOP" in text and "0K7M-29QX" in text and "7QX2-M4" in text and "serials 1 to 99" in text and "0KZZ-ZZZZ" not in text


def test_a_correction_about_a_figure_of_the_machine_leads_to_the_machine():
    reference = read_reference("winch/load", ONE.place)
    site = built("redo", about=(reference,))
    assert 'href="../../../winch/#spec-load"' in page(site, "winch/plan/corrections/")


@pytest.mark.parametrize("name, there", [("hub", "../../../winch/hub/"), ("winch", "../../../winch/"), ("BP50", "../../../press/BP50/")])
def test_a_correction_about_a_whole_thing_is_listed_and_leads_to_it(name, there):
    site = built("redo", about=(read_reference(name, ONE.place),))
    html = page(site, "winch/plan/corrections/")
    assert f'id="correction-{ONE.id}"' in html and f'href="{there}"' in html


def test_a_book_without_corrections_says_so():
    one = book()
    one.corrections.clear()
    site = site_pages(one, derived(), CODES, Settings("Tiny book", "tiny"))
    assert "No correction has been made" in page(site, "corrections/") and not any(file.startswith("corrections/") for file in site.files)
