"""The lists of corrections and the page to be pinned up, in a real browser and on paper."""

import pypdfium2
import pytest
from test_pages import DESK, PHONE

PAGES = ["corrections/", "corrections/COR-1/", "type-24/plan/corrections/", "type-24/flycrank-press-on/"]


@pytest.fixture(scope="module")
def address(demo_site, serve):
    return serve(demo_site, prefix="a/book/")


@pytest.fixture
def opened(chromium, address):
    contexts = []

    def open_page(path, size=PHONE, **more):
        context = chromium.new_context(viewport=size, **more)
        contexts.append(context)
        page = context.new_page()
        page.goto(address + path, wait_until="networkidle")
        return page

    yield open_page
    for context in contexts:
        context.close()


@pytest.mark.parametrize("path", PAGES)
@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_no_barrier_and_no_sideways_scroll(opened, path, size):
    axe = pytest.importorskip("axe_playwright_python.sync_playwright", reason="axe-playwright-python is not installed").Axe()
    page = opened(path, size)
    assert page.evaluate("document.documentElement.scrollWidth") <= size["width"]
    found = axe.run(page, options={"runOnly": ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa", "best-practice"]})
    assert found.violations_count == 0, found.generate_report()[:3000]


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("correction", ["COR-1", "COR-2", "COR-3"])
def test_a_stop_prints_as_one_page(opened, paper, correction):
    page = opened(f"corrections/{correction}/", DESK)
    leaves = pypdfium2.PdfDocument(page.pdf(format=paper, prefer_css_page_size=False))
    assert len(leaves) == 1
    text = leaves[0].get_textpage().get_text_bounded()
    codes = page.locator(".codes .code").all_inner_texts()
    assert "STOP" in text and len(codes) > 3 and all(code in text for code in codes)
    assert "Serial, inspected or done again by, date" in text


def test_a_bar_stands_beside_what_changed_and_says_so(opened):
    page = opened("type-24/flycrank-press-on/")
    changed = page.locator("#spec-press-force.wm-changed")
    assert changed.count() == 1 and "changed since 2022-10-15" in changed.inner_text()
    assert page.evaluate("parseFloat(getComputedStyle(document.querySelector('#spec-press-force')).borderLeftWidth)") >= 3
    assert page.locator(".wm-bars").count() == 1
