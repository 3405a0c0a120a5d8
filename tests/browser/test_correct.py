"""A figure corrected from a phone, in a real browser: from the page to the line, the form, what is kept and how it goes out."""

import re
from html import unescape
from pathlib import Path
from urllib.parse import parse_qs, urlsplit

import pytest
from test_pages import DESK, PHONE
from watch import Watch

from witnessmark.core.correction_text import read_correction

PAGE = "type-24/flycrank-press-on/"
BOOK = Path(__file__).parents[2]
EVIL = "</pre><img src=x onerror='window.ran = true'><script>window.ran = true</script>\nProcedure: other/thing\r\u2028Spec: other\nBy whom: the owner\u2028Serial: 9999"


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


def test_correct_this_leads_from_the_figure_to_a_form_for_it(opened):
    page = opened(PAGE)
    page.locator("#spec-press-force .wm-role-ceiling a.wm-correct").first.click()
    page.wait_for_url("**/flycrank-press-on/correct/#press-force.ceiling")
    form = page.locator("form")
    assert form.count() == 1 and form.is_visible()
    entry = page.locator('[id="press-force.ceiling"]')
    assert entry.locator("form").count() == 1 and "18 long ton" in entry.inner_text()
    assert entry.locator('a[href*="/edit/main/procedures/type-24/flycrank-press-on.yaml#L"]').count() == 1


def filled(page):
    page.get_by_label("New figure and unit").fill("17 long ton")
    page.get_by_label("Serial", exact=True).fill("1604")
    return read_correction(page.locator("form pre").inner_text())


def test_the_script_says_of_a_figure_what_the_build_would(opened, demo_site):
    """The form for one line against the link that needs no script, and against book.json."""
    page = opened(f"{PAGE}correct/#press-force.ceiling")
    told = read_correction(page.locator("form pre").inner_text())
    html = (demo_site / PAGE / "correct/index.html").read_text(encoding="utf-8")
    link = unescape(re.search(r'href="([^"]*issues/new[^"]*)"', html[html.index('id="press-force"'):])[1])
    whole = read_correction(parse_qs(urlsplit(link).query)["body"][0])
    same = ("Book", "Procedure", "Spec", "Sheet codes of the page")
    assert [told[name] for name in same] == [whole[name] for name in same] and told["Printed figure"] in whole["Printed figure"].split("; ")
    assert (told["Role"], told["Case"]) == ("ceiling", "fly-crank 24-A") and told["Line"].partition(":")[0] == whole["Line"].partition(":")[0]
    source = (BOOK / told["Line"].partition(":")[0]).read_text(encoding="utf-8").splitlines()
    assert "18 long ton" in source[int(told["Line"].partition(":")[2]) - 1]


@pytest.mark.parametrize("start, opens", [("#press-cards + p + .wm-cards .wm-card", "press-force"), ("#torques + .wm-cards .wm-torque", "nut"), ("#result-crank-grip", "result-crank-grip")])
def test_a_card_a_torque_and_a_result_lead_to_what_they_rest_on(opened, start, opens):
    page = opened(PAGE)
    page.locator(start).first.locator("a.wm-correct").last.click()
    page.wait_for_url(f"**/flycrank-press-on/correct/#{opens}")
    section = page.locator(f'section[id="{opens}"]')
    section.get_by_role("button", name="Fill in the form").first.click()
    told = read_correction(page.locator("form pre").inner_text())
    assert told["Spec"] == opens.removeprefix("result-") and told["Procedure"] == "type-24/flycrank-press-on" and told["Printed figure"]


def test_the_data_of_a_press_is_corrected_like_a_figure(opened):
    page = opened(f"{PAGE}correct/#press-force")
    page.locator('section[id="press-force"] a[href*="press/correct/#press-BP50"]').first.click()
    page.wait_for_url("**/press/correct/#press-BP50*")
    page.locator('[id="press-BP50"] [data-role="area"]').get_by_role("button").click()
    told = read_correction(page.locator("form pre").inner_text())
    assert (told["Procedure"], told["Spec"], told["Role"], told["Printed figure"]) == ("site_data/presses", "BP50", "area", "10.97 in²")
    page.get_by_label("New figure and unit").fill("11.05 in²")
    page.get_by_text("Kept on this phone as you type.").wait_for()
    page.goto(page.url.partition("press/")[0] + "type-24/plan/correct/", wait_until="networkidle")
    page.locator("[data-kept]").get_by_role("link", name="Open").click()
    page.wait_for_url("**/press/correct/#press-BP50.*")
    assert page.get_by_label("New figure and unit").input_value() == "11.05 in²"


def test_the_text_is_filled_as_it_is_typed_and_goes_to_the_forge(opened):
    page = opened(f"{PAGE}correct/#press-force.ceiling")
    told = filled(page)
    assert (told["Spec"], told["Role"], told["Printed figure"], told["New figure and unit"], told["Serial"]) == ("press-force", "ceiling", "18 long ton", "17 long ton", "1604")
    link = urlsplit(page.locator("form").get_by_role("link", name="Write to the maintainer on the forge").get_attribute("href"))
    assert link.path == "/shop/book/issues/new" and read_correction(parse_qs(link.query)["body"][0]).values == told.values


def test_it_is_kept_on_the_phone_under_the_books_own_name_until_it_is_removed(opened):
    page = opened(f"{PAGE}correct/#press-force.ceiling")
    filled(page)
    assert "Kept on this phone" in page.locator("form").inner_text()
    assert page.evaluate("Object.keys(localStorage).filter(name => name.endsWith(' corrections'))") == ["two-machines /a/book/ corrections"]
    page.context.set_offline(True)                              # no signal: what was typed is still here
    page.context.set_offline(False)
    page.goto(page.url.split("type-24")[0] + "type-24/coupling-rods/correct/", wait_until="networkidle")
    kept = page.locator("[data-kept]")
    assert "17 long ton" in kept.inner_text() and "never more than" in kept.inner_text()
    kept.get_by_role("link", name="Open").click()
    page.wait_for_url("**/flycrank-press-on/correct/#press-force.ceiling")
    assert page.get_by_label("New figure and unit").input_value() == "17 long ton"
    for _ in range(2):
        page.locator("[data-kept]").get_by_role("button").last.click()
    assert page.locator("[data-kept]").inner_text() == ""


def test_the_text_is_copied_whole(opened):
    page = opened(f"{PAGE}correct/#press-force.ceiling", permissions=["clipboard-read", "clipboard-write"])
    told = filled(page)
    page.locator("form").get_by_role("button", name="Copy the text").click()
    page.get_by_text("Copied.").wait_for()
    assert read_correction(page.evaluate("navigator.clipboard.readText()")).values == told.values


def test_hostile_text_in_the_form_cannot_run_or_speak_for_the_page(chromium, address):
    with chromium.new_context(viewport=PHONE) as context:
        watch = Watch(context, address)
        page = context.new_page()
        page.goto(f"{address}{PAGE}correct/#press-force.ceiling", wait_until="networkidle")
        page.get_by_label("What happened").fill(EVIL)
        page.get_by_label("New figure and unit").fill(EVIL)
        page.get_by_label("By whom").fill("fitter")
        page.get_by_label("Source and page, or how measured").fill(EVIL)        # a field of several lines keeps its line breaks
        told = read_correction(page.locator("form pre").inner_text())
        assert (told["Procedure"], told["Spec"], told["By whom"], told["Serial"]) == ("type-24/flycrank-press-on", "press-force", "fitter", "")
        page.reload(wait_until="networkidle")
        assert "window.ran = true" in page.locator("[data-kept] pre").inner_text()
        page.goto(f"{address}{PAGE}correct/#%3Cimg src=x onerror=alert(1)%3E", wait_until="networkidle")
        page.goto(f"{address}{PAGE}correct/#%", wait_until="networkidle")
        assert page.evaluate("window.ran") is None and page.locator("main img").count() == 0 and watch.faults() == []


@pytest.mark.parametrize("spoilt", ["null", "[]", "7", '{"a": null, "b": {"text": 7}}', "{", '{"a": {"text": "x", "page": "//elsewhere.example/", "anchor": "y", "subject": "z"}}'])
def test_what_another_page_of_the_host_left_there_does_no_harm(opened, address, spoilt):
    page = opened(f"{PAGE}correct/")
    page.evaluate("text => localStorage.setItem('two-machines /a/book/ corrections', text)", spoilt)
    page.goto(f"{address}{PAGE}correct/#press-force.ceiling")
    page.reload(wait_until="networkidle")
    assert page.locator("form").count() == 1
    assert all("elsewhere" not in (link.get_attribute("href") or "") or "forge.example" in link.get_attribute("href") for link in page.locator("[data-kept] a").all())


def test_where_the_browser_keeps_nothing_it_says_so(opened):
    page = opened(f"{PAGE}correct/#press-force.ceiling")
    page.evaluate("() => { Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); }; }")
    page.get_by_label("Serial", exact=True).fill("1604")
    assert "keeps nothing" in page.locator("form").inner_text()


def test_without_script_every_way_is_there(opened):
    page = opened(f"{PAGE}correct/", java_script_enabled=False)
    assert page.get_by_role("link", name="Write to the maintainer on the forge").count() > 5
    assert page.locator("[data-without] li:visible").count() == 7 and page.locator("form").count() == 0


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_barrier_and_no_sideways_scroll(opened, size, scheme):
    axe = pytest.importorskip("axe_playwright_python.sync_playwright", reason="axe-playwright-python is not installed").Axe()
    page = opened(f"{PAGE}correct/#press-force.ceiling", size, color_scheme=scheme)
    filled(page)
    assert page.evaluate("document.documentElement.scrollWidth") <= size["width"]
    found = axe.run(page, options={"runOnly": ["wcag2a", "wcag2aa", "wcag2aaa", "wcag21aa", "wcag22aa", "best-practice"]})
    assert found.violations_count == 0, found.generate_report()[:3000]
