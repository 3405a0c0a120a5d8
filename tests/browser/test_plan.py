"""The plan of a rebuild in a real browser: the order as a drawing, the ledger that answers, the tags on paper."""

import re

import pypdfium2
import pytest

PHONE, DESK = {"width": 390, "height": 844}, {"width": 1280, "height": 800}
KINDS = {"machine": "type-24/", "ledger": "type-24/plan/ledger/", "tags": "type-24/hornways-and-springs/tags/",
         "start-up": "type-24/fill-and-engine-test/", "hand-over": "type-24/close-up-and-hand-over/",
         "needs": "type-24/plan/needs/", "conflicts": "type-24/plan/conflicts/", "hold points": "type-24/plan/hold-points/", "notes": "type-24/plan/notes/",
         "sheet": "type-24/flycrank-press-on/sheet/24-B/", "donors": "type-24/flycrank-press-on/", "lathe": "thornley-13/plan/ledger/"}


@pytest.fixture(scope="module")
def address(demo_site, serve):
    return serve(demo_site, prefix="a/book/")


@pytest.fixture
def opened(chromium, address):
    contexts = []

    def open_page(path, size=PHONE, scheme="light", **more):
        context = chromium.new_context(viewport=size, color_scheme=scheme, **more)
        contexts.append(context)
        page = context.new_page()
        page.goto(address + path, wait_until="networkidle")
        return page

    yield open_page
    for context in contexts:
        context.close()


@pytest.mark.parametrize("path", KINDS.values(), ids=KINDS)
@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_no_sideways_scroll(opened, path, size):
    assert opened(path, size).evaluate("document.documentElement.scrollWidth") <= size["width"]


def test_the_machine_s_page_is_a_plan_on_paper(opened):
    """Leaves of A4: what leads elsewhere in a browser stays off, and the drawing stands whole on one."""
    leaves = [leaf.get_textpage().get_text_bounded() for leaf in pypdfium2.PdfDocument(opened(KINDS["machine"], DESK).pdf(format="A4"))]
    assert len(leaves) < 20 and "What the whole work needs" not in "".join(leaves)
    drawing = next(leaf for leaf in leaves if "nothing before it" in leaf)
    assert "16 Trial, close" in drawing and "10 Set the drive" in drawing


@pytest.mark.parametrize("path", KINDS.values(), ids=KINDS)
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_no_barrier(opened, path, scheme):
    axe = pytest.importorskip("axe_playwright_python.sync_playwright", reason="axe-playwright-python is not installed").Axe()
    found = axe.run(opened(path, scheme=scheme), options={"runOnly": ["wcag2a", "wcag2aa", "wcag2aaa", "wcag21aa", "wcag22aa", "best-practice"],
                                                          "rules": {"target-size": {"enabled": True}}})
    assert found.violations_count == 0, found.generate_report()[:3000]


def test_every_box_of_the_order_is_a_link_a_thumb_can_hit(opened):
    page = opened(KINDS["machine"])
    boxes = page.locator(".wm-order-map a")
    assert boxes.count() == 16
    for box in boxes.all():
        assert box.bounding_box()["height"] >= 48 and box.bounding_box()["width"] >= 48
    heights = page.evaluate("""[...document.querySelectorAll('.wm-order-map a')].flatMap(a => {
        const box = a.querySelector('rect').getBoundingClientRect();
        return [...a.querySelectorAll('text')].map(t => t.getBoundingClientRect()).filter(
            t => t.left < box.left || t.right > box.right || t.top < box.top || t.bottom > box.bottom).map(t => a.textContent)})""")
    assert heights == [], "words stand out of their box"
    boxes.first.click()
    page.wait_for_url("**/type-24/strip-and-as-found/")


def test_the_lines_of_the_drawing_end_inside_it_and_do_not_cross_a_box(opened):
    page = opened(KINDS["machine"])
    crossing = page.evaluate("""(() => {
        const map = document.querySelector('.wm-order-map').getBoundingClientRect();
        const boxes = [...document.querySelectorAll('.wm-box')].map(b => b.getBoundingClientRect());
        return [...document.querySelectorAll('.wm-span, .wm-ring, .wm-block')].map(s => s.getBoundingClientRect()).filter(
            s => s.right > map.right + 1 || boxes.some(b => s.left < b.right - 1 && s.right > b.left + 1 && s.top < b.bottom && s.bottom > b.top)).length })()""")
    assert crossing == 0


def test_q24_what_is_open_after_cranks_and_springs_before_the_quartering_is_proved(opened):
    """The answer is the scenario's own: thirteen ticks, engine work not begun."""
    page = opened(KINDS["ledger"])
    now = page.locator("#now")
    now.get_by_label("24-B", exact=True).check()
    now.get_by_label("Press the fly-cranks on the jackshaft").check()
    now.get_by_label("Fit axleboxes, springs and horn keeps").check()
    said = {(link.get_attribute("href").removeprefix("#loose-")): int(item.get_attribute("data-ticks"))
            for item in now.locator(".wm-open li").all() for link in item.locator("a").all()}
    assert said == {"flycrank-press-on-tab-washer-flat": 2, "final-drive-build-drain-plug-finger-tight": 1, "hornways-and-springs-keeps-nipped": 2,
                    "hornways-and-springs-spring-clamps-on": 2, "strip-and-as-found-brake-rod-out": 1, "hornways-and-springs-pads-dry": 2,
                    "strip-and-as-found-guards-off": 1, "strip-and-as-found-chocks-and-board": 1, "strip-and-as-found-isolator-and-fuel-cock": 1}
    assert now.locator(".wm-count").inner_text() == "13 to shut"
    assert set(re.split(r", |: |\.", now.locator(".wm-never-now").inner_text())) >= {"lift (frame)", "fill (final drive)", "run", "turn by power"}


def test_unticking_a_procedure_unticks_what_comes_after_it(opened):
    now = opened(KINDS["ledger"]).locator("#now")
    now.get_by_label("Fit axleboxes, springs and horn keeps").check()
    now.get_by_label("Clean, measure, decide").uncheck()
    assert not now.get_by_label("Fit axleboxes, springs and horn keeps").is_checked()
    assert now.get_by_label("Strip to the frame").is_checked()
    assert now.locator(".wm-count").inner_text() == "4 to shut"


def test_what_was_ticked_is_there_again_on_the_same_device(opened):
    page = opened(KINDS["ledger"])
    page.locator("#now").get_by_label("24-C", exact=True).check()
    page.locator("#now").get_by_label("Clean, measure, decide").check()
    page.reload(wait_until="networkidle")
    now = page.locator("#now")
    assert now.get_by_label("24-C", exact=True).is_checked() and now.get_by_label("Strip to the frame").is_checked()
    assert now.locator(".wm-count").inner_text() == "4 to shut"
    assert page.evaluate("Object.keys(localStorage).filter(name => name.includes('ledger'))") == ["two-machines ledger /a/book/type-24/plan/ledger/"]


def test_the_ledger_is_whole_without_script(opened):
    page = opened(KINDS["ledger"], java_script_enabled=False)
    assert not page.locator("#now").is_visible()
    assert page.locator(".wm-ledger-row").count() >= 18


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_a_tag_for_each_side_and_none_cut_in_two(opened, paper):
    page = opened(KINDS["tags"], DESK)
    assert page.locator(".tag").count() == 6
    texts = [leaf.get_textpage().get_text_bounded() for leaf in pypdfium2.PdfDocument(page.pdf(format=paper))]
    for text in texts:                              # a tag begun on a page ends on it
        assert text.count("LEFT LOOSE") == text.count("Tied on")
    assert sum(text.count("LEFT LOOSE") for text in texts) == 6


def test_a_note_of_each_kind_is_found_by_the_search(opened):
    page = opened(KINDS["machine"])
    page.fill("#wm-search-input", "axlebox runs hot")
    page.locator(".wm-search__hits a").first.wait_for()
    assert "close-up-and-hand-over" in page.locator(".wm-search__hits").inner_html()


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_list_of_needs_prints_and_sums(opened, paper):
    page = opened(KINDS["needs"], DESK)
    item = page.locator("li", has=page.get_by_text("Rod bushes", exact=True))
    assert re.search(r"\b(?:6|1 per pin)\b", item.inner_text())
    text = "".join(leaf.get_textpage().get_text_bounded() for leaf in pypdfium2.PdfDocument(page.pdf(format=paper)))
    assert "Clamp rods" in text and "counted in again" in text


def test_the_order_answers_before_and_next(opened):
    """What comes next: the neighbours on a page are those of the order for one pair of hands."""
    page = opened(KINDS["machine"])
    row = [link.get_attribute("href") for link in page.locator(".wm-order > li > a").all()]
    page.goto(page.url + row[4].removeprefix("../type-24/"))
    assert page.locator("a[rel=prev]").get_attribute("href").endswith(row[3].removeprefix("../")) and \
        page.locator("a[rel=next]").get_attribute("href").endswith(row[5].removeprefix("../"))
