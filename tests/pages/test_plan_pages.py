"""What the plan puts on pages, sheets and book.json, on the small plan."""

import json
import re

from plan_book import PROCEDURES, read

from witnessmark.build import Checked, codes, render


def site():
    book, derived, found = read()
    return render(Checked(book, derived, tuple(found)), "Hoist", "hoist", None)


def words(html: str) -> str:
    return " ".join(re.sub(r"<[^>]+>", " ", html).split())


def page(url: str) -> str:
    return next(page.html for page in site().pages if page.url == url)


def test_the_page_says_what_must_be_shut_before_starting_and_where_it_was_left():
    html = page("hoist/try/")
    assert "Must be shut before you start Pawl wedged. Left in Strip the hoist" in words(html)
    assert 'href="../../hoist/strip/#loose-pawl-wedged"' in html


def test_the_sheet_has_a_box_for_what_must_be_shut():
    html = site().files["hoist/try/sheet/early/index.html"]
    item = html[html.index("Must be shut before you start"):].split("</td>")[0]
    assert "Pawl wedged. Left in Strip the hoist." in words(item) and item.count('class="box"') == 1


def test_what_must_be_shut_is_in_the_book_as_data():
    procedures = {p["id"]: p for p in json.loads(site().files["book.json"])["procedures"]}
    assert procedures["try"]["must be shut"] == ["strip/pawl-wedged"] and procedures["build"]["must be shut"] == []


def test_what_must_be_shut_is_part_of_the_sheet_code():

    book, derived, _ = read(**{"try": PROCEDURES["try"].replace("must be shut: [strip/pawl-wedged]\n", "")})
    with_it, *_ = read()
    key = ("hoist", "try", "early")
    assert codes(Checked(book, derived, ()))[key] != codes(Checked(with_it, read()[1], ()))[key]
