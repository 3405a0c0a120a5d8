"""The page that is asked by a sheet's code, as it is built."""

from tiny_book import site

from witnessmark.loading.scalars import RESERVED


def test_the_page_stands_at_the_shortest_address_and_is_the_same_for_any_number_of_sheets():
    html = site().files["s/index.html"]
    assert 'data-root="../"' in html and '<script type="module" src="../assets/witnessmark/ask/ask.js">' in html
    assert 'data-book="tiny"' in html and "7QX2-M4" not in html


def test_no_machine_takes_its_address():
    assert {"s", "corrections"} <= RESERVED
