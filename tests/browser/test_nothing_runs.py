"""A book with something that would run in every text, and pages written by hand full of it, in a real browser: nothing fires."""

import pytest
from hostile_book import EVIL, build_hostile
from test_hand_pages import ATTACKS, EXTENSIONS, FRONT
from test_mkdocs_plugin import build

PAGES = ["", "type-24/", "type-24/flycrank-press-on/", "type-24/flycrank-press-on/working/", "type-24/flycrank-press-on/sheet/",
         "type-24/flycrank-press-on/sheet/24-B/", "press/BP50/", "type-24/flycrank-press-on/bench/",
         "type-24/flycrank-press-on/correct/", "type-24/plan/correct/", "press/correct/", "corrections/", "source/shop-practice/", "source/", "press/", "caution/", "working/press-card/",
         "thornley-13/lathe-front-bearing-taper/"]
#: What a handler or script of the attacks would do, told to us instead of shown.
TELL = "window.__fired = []; window.alert = (...words) => window.__fired.push(words.join(' '));"


def fired(chromium, address: str, act=lambda page: None) -> list[str]:
    """What ran, opened or was fetched from elsewhere on a page, after every link was hovered and focused."""
    context = chromium.new_context(viewport={"width": 390, "height": 844})
    context.add_init_script(TELL)
    page = context.new_page()
    found: list[str] = []
    page.on("dialog", lambda dialog: (found.append(f"dialog {dialog.message}"), dialog.dismiss()))
    page.on("request", lambda request: None if request.url.startswith((address.split("/a/book/")[0], "data:", "blob:")) else found.append(request.url))
    page.goto(address, wait_until="networkidle")
    act(page)
    page.evaluate("""() => document.querySelectorAll('*').forEach(each => {
        for (const name of ['mouseover', 'focus', 'error', 'load', 'toggle', 'click'])
            if (!each.closest('a[href], form, label') || name !== 'click') each.dispatchEvent(new Event(name)); })""")
    found += page.evaluate("window.__fired")
    found += page.evaluate("[...document.querySelectorAll('[href^=\"javascript\" i], [src^=\"javascript\" i]')].map(each => each.outerHTML)")
    context.close()
    return found


@pytest.fixture(scope="module")
def address(tmp_path_factory, serve):
    return serve(build_hostile(tmp_path_factory.mktemp("hostile")), prefix="a/book/")


@pytest.mark.parametrize("path", PAGES)
def test_nothing_of_a_source_fires(chromium, address, path):
    assert fired(chromium, address + path) == []


def test_nothing_fires_in_what_the_search_finds(chromium, address):
    seen = []

    def search(page):
        page.locator("#wm-search-input").first.fill("alert script")
        page.wait_for_selector(".wm-search__hits li", timeout=15_000)
        seen.append(page.locator(".wm-search__hits").inner_text())

    assert fired(chromium, address, search) == [] and seen


def test_nothing_of_a_page_written_by_hand_fires(chromium, serve, tmp_path):
    (tmp_path / "procedures").mkdir()
    (tmp_path / "procedures/notes.md").write_text(f"{FRONT}# Notes\n\n" + "\n\n".join([*ATTACKS, EVIL]), encoding="utf-8")
    assert build(tmp_path, config=EXTENSIONS).returncode == 0
    assert fired(chromium, serve(tmp_path / "site", prefix="a/book/") + "notes/") == []


def test_these_tests_see_what_fires(chromium, serve, tmp_path):
    (tmp_path / "index.html").write_text(f"<!doctype html><p>{EVIL}</p><img src=//127.0.0.2/x.png>")
    found = fired(chromium, serve(tmp_path, prefix="a/book/"))
    assert {"1", "2", "3"} <= set(found) and any("127.0.0.2" in each for each in found) and any("javascript:alert(4)" in each for each in found)
