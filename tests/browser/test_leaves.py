"""The single leaves of a sheet: all on one page of the site, each on pages of its own when printed, alone when its address is asked for."""

import pytest
from playwright.sync_api import expect

pdfium = pytest.importorskip("pypdfium2")

AT = "type-24/flycrank-press-on/leaves/24-B/"
LEAVES = ("night", "cards", "torques")
HEADS = {"night": "The night before", "cards": "Press card", "torques": "Torque card"}


@pytest.fixture
def page(chromium, serve, demo_site):
    address, page = serve(demo_site, prefix="a/book/"), chromium.new_page()
    page.goto(f"{address}{AT}")
    yield page
    page.close()


def printed(page) -> list[str]:
    """For each printed page the leaf that its head names."""
    document = pdfium.PdfDocument(page.pdf(format="A4"))
    texts = [sheet.get_textpage().get_text_range() for sheet in document]
    return [next(leaf for leaf, head in HEADS.items() if f"{head} ·" in text) for text in texts]


def test_all_print_one_after_the_other_on_pages_of_their_own(page):
    for leaf in LEAVES:
        expect(page.locator(f"#{leaf}")).to_be_visible()
    order = printed(page)
    assert list(dict.fromkeys(order)) == list(LEAVES) and sorted(order, key=LEAVES.index) == order


@pytest.mark.parametrize("leaf", LEAVES)
def test_a_leaf_is_shown_and_printed_alone_by_its_address(page, leaf):
    every = printed(page)
    page.locator(f'.offer a[href="#{leaf}"]').click()
    expect(page.locator(f"#{leaf}")).to_be_visible()
    for other in set(LEAVES) - {leaf}:
        expect(page.locator(f"#{other}")).to_be_hidden()
    assert printed(page) == [leaf] * every.count(leaf)
    page.locator('.offer a[href="#all"]').click()
    for other in LEAVES:
        expect(page.locator(f"#{other}")).to_be_visible()
