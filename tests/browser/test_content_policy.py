"""Every kind of page keeps its own Content-Security-Policy, and the policy keeps out what a page did not bring."""

import pytest
from test_pages import DESK, KINDS, PHONE
from watch import Watch


@pytest.fixture(scope="module")
def address(demo_site, serve):
    return serve(demo_site, prefix="a/book/")


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_no_page_breaks_its_policy(chromium, address, size):
    with chromium.new_context(viewport=size) as context:
        watch = Watch(context, address)
        page = context.new_page()
        for path in KINDS.values():
            page.goto(address + path, wait_until="networkidle")
            assert page.locator('meta[http-equiv="Content-Security-Policy"]').count() == 1, path
            toggle = page.locator("[data-wm-schemes] button:visible")
            if toggle.count():                                  # as a reader does first
                toggle.first.click()
            assert watch.faults() == [], path


def test_the_page_that_is_not_there_keeps_it_too(chromium, demo_site):
    text = (demo_site / "404.html").read_text()
    assert "Content-Security-Policy" in text and text.index("Content-Security-Policy") < text.index("<script")


def test_a_script_that_the_build_did_not_put_there_does_not_run(chromium, address):
    with chromium.new_context() as context:
        page = context.new_page()
        Watch(context, address)
        for path in ("", KINDS["sheet"]):
            page.goto(address + path)
            page.evaluate("""() => { const script = document.createElement('script'); script.textContent = 'window.ran = true';
                document.body.append(script); document.body.insertAdjacentHTML('beforeend', '<b onclick="window.ran = true">x</b>');
                document.body.lastElementChild.click(); }""")
            assert page.evaluate("window.ran") is None
            assert len(page.evaluate("window.breaches")) == 2
            assert page.evaluate("fetch('https://elsewhere.example/').then(() => 'went', () => 'kept')") == "kept"
