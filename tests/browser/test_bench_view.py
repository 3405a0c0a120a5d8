"""The bench view in a real browser: complete without script, one step at a time with it, for the machine on the bench."""

import pytest
from test_pages import DESK, PHONE
from watch import Watch

PATH = "type-24/flycrank-press-on/bench/"
MODULE = "assets/witnessmark/bench/"


@pytest.fixture(scope="module")
def address(demo_site, serve):
    return serve(demo_site, prefix="a/book/")


@pytest.fixture
def bench(chromium, address):
    """`bench(size=PHONE, path=PATH, **context)` -> an opened page that is watched to the end."""
    opened = []

    def start(size=PHONE, path=PATH, **options):
        context = chromium.new_context(viewport=size, **options)
        watch = Watch(context, address)
        page = context.new_page()
        page.goto(address + path, wait_until="load")
        if options.get("java_script_enabled", True):
            page.wait_for_selector("html.stepping main:not([data-coming])")
        opened.append((context, watch if options.get("java_script_enabled", True) else None))
        return page

    yield start
    for context, watch in opened:
        assert watch is None or watch.faults() == []
        context.close()


def visible_steps(page) -> list[str]:
    return page.locator(".step:visible").evaluate_all("all => all.map(each => each.dataset.step)")


def test_without_script_every_step_stands_there_one_after_another(bench):
    page = bench(java_script_enabled=False)
    assert len(visible_steps(page)) == page.locator(".step").count() > 8
    for words in ("18 long ton", "4300 psi", "460 lbf·ft", "DANGER", "Leaves loose"):
        assert page.get_by_text(words).first.is_visible(), words
    assert not page.locator("[data-asks], [data-thumbs]").first.is_visible()


def test_the_serial_picks_the_variant_and_stays_in_sight(bench):
    page = bench()
    page.fill("#serial", "1604")
    page.check("input[value=left]")
    for leaf in ("#start", "#step-press-to-stops", "#end"):
        page.evaluate("where => { location.hash = where; }", leaf)
        page.wait_for_selector(f"{leaf}.current")
        assert page.locator("[data-whose]").inner_text() == "Serial 1604 · 24-B · left"
        assert page.locator("[data-whose]").bounding_box()["y"] < 60


def test_a_step_shows_only_what_holds_for_this_machine_and_this_hub(bench):
    page = bench(path=PATH + "#step-press-to-stops")
    text = lambda: page.locator("#step-press-to-stops").inner_text()
    page.evaluate("location.hash = '#start'")
    page.fill("#serial", "1604")
    page.evaluate("location.hash = '#step-press-to-stops'")
    page.wait_for_selector("#step-press-to-stops.current")
    assert "18 long ton" in text() and "4300 psi" in text() and "26 long ton" not in text() and "15 long ton" not in text()
    page.evaluate("location.hash = '#start'")
    page.select_option("#part-fly-crank", "24-A")
    page.evaluate("location.hash = '#step-press-to-stops'")
    page.wait_for_selector("#step-press-to-stops.current")
    assert "16.45 long ton" in text() and "3500 psi" in text() and "4300 psi" not in text()


def test_a_wrench_setting_is_that_of_this_machine_with_this_part(bench):
    page = bench()
    page.fill("#serial", "1604")
    set_to = lambda: page.locator("#step-tighten-nut .wm-set b:visible").all_inner_texts()
    for part, setting in (("", "Set 420 lbf·ft (569 N·m)"), ("24-A", "Set 390 lbf·ft (528 N·m)")):
        page.evaluate("location.hash = '#start'")
        page.wait_for_selector("#start.current")
        page.select_option("#part-fly-crank", part)
        page.evaluate("location.hash = '#step-tighten-nut'")
        page.wait_for_selector("#step-tighten-nut.current")
        assert set_to() == [setting]


def test_a_serial_of_no_range_shows_every_variant_and_says_so(bench):
    page = bench()
    page.fill("#serial", "9999")
    assert "stands in no range" in page.locator(".asks").inner_text()
    page.evaluate("location.hash = '#step-press-to-stops'")
    page.wait_for_selector("#step-press-to-stops.current")
    assert all(words in page.locator("#step-press-to-stops").inner_text() for words in ("15 long ton", "18 long ton", "21.5 long ton"))


def test_one_step_at_a_time_by_thumb_by_key_and_by_the_browsers_own_button(bench):
    page = bench()
    page.fill("#serial", "1604")
    page.click(".thumb.on")
    first = visible_steps(page)
    assert len(first) == 1
    page.keyboard.press("ArrowRight")
    page.wait_for_function("first => document.querySelector('.leaf.current').dataset.step !== first", arg=first[0])
    assert len(visible_steps(page)) == 1 and visible_steps(page) != first
    page.go_back()
    page.wait_for_function("first => document.querySelector('.leaf.current').dataset.step === first", arg=first[0])
    left, right = (page.locator(thumb).bounding_box() for thumb in (".thumb.back", ".thumb.on"))
    assert left["x"] < 10 and right["x"] + right["width"] > PHONE["width"] - 10 and min(left["height"], right["height"]) >= 56


def test_by_keyboard_alone_a_reader_gets_from_the_serial_to_the_reason_of_a_figure(bench):
    page = bench(DESK)
    for _ in range(12):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.id") == "serial":
            break
    page.keyboard.type("1604")
    page.evaluate("location.hash = '#step-press-to-stops'")
    page.wait_for_selector("#step-press-to-stops.current")
    for _ in range(20):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.localName") == "summary":
            break
    page.keyboard.press("Enter")
    assert page.locator("#step-press-to-stops details[open]").count() == 1


def test_the_caution_stands_before_its_step_and_is_never_folded(bench):
    page = bench(path=PATH + "#step-press-to-stops")
    caution, do = (page.locator(f"#step-press-to-stops {part}").first.bounding_box()["y"] for part in (".wm-caution", ".do"))
    assert caution < do and page.locator("details .wm-caution").count() == 0


@pytest.mark.parametrize("leaf", ["start", "step-press-to-stops", "step-tighten-nut", "end"])
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_contrast_and_barriers_on_every_sort_of_leaf(bench, leaf, scheme):
    axe = pytest.importorskip("axe_playwright_python.sync_playwright", reason="axe-playwright-python is not installed").Axe()
    page = bench(path=f"{PATH}#{leaf}", color_scheme=scheme)
    rules = {"runOnly": ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa", "best-practice"], "rules": {"color-contrast-enhanced": {"enabled": True}}}
    found = axe.run(page, options=rules)
    assert found.violations_count == 0, found.generate_report()[:3000]


TARGETS = """() => [...document.querySelectorAll("a[href], button, summary, input, select")].filter(each => each.checkVisibility()
  && !each.closest("p:not(.bar p), li, .choice")).map(each => [each.textContent.trim().slice(0, 30) || each.id, Math.round(each.getBoundingClientRect().height)])
  .filter(([, height]) => height < 56)"""


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_what_is_tapped_is_56_pixels_high(bench, size):
    page = bench(size)
    for leaf in ("start", "step-press-to-stops", "end"):
        page.evaluate("where => { location.hash = where; }", f"#{leaf}")
        page.wait_for_selector(f"#{leaf}.current")
        assert page.evaluate(TARGETS) == []


def test_at_twice_the_text_size_nothing_is_cut_off(bench):
    page = bench()
    page.evaluate("document.documentElement.style.fontSize = '200%'")
    for leaf in ("start", "step-press-to-stops", "step-compare-advance", "end"):
        page.evaluate("where => { location.hash = where; }", f"#{leaf}")
        page.wait_for_selector(f"#{leaf}.current")
        assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"], leaf
        clipped = page.evaluate("""() => [...document.querySelectorAll(".current *, .bar *, .thumbs *")].filter(each => each.checkVisibility()
            && getComputedStyle(each).overflowX !== "auto" && each.scrollWidth > each.clientWidth + 1 && each.clientWidth > 0).map(each => each.outerHTML.slice(0, 80))""")
        assert clipped == [], leaf


def test_an_error_in_our_script_gives_the_plain_page_back(chromium, address):
    with chromium.new_context(viewport=PHONE) as context:
        page = context.new_page()
        page.goto(address + PATH)
        page.wait_for_selector("html.stepping")
        page.fill("#serial", "1604")
        page.evaluate("setTimeout(() => { throw new Error('ours'); })")
        page.wait_for_selector("[data-broken]:visible")
        assert len(visible_steps(page)) == page.locator(".step").count()
        assert page.locator("#step-press-to-stops").get_by_text("26 long ton").first.is_visible()


def test_a_script_that_never_arrives_leaves_the_plain_page(chromium, address):
    with chromium.new_context(viewport=PHONE) as context:
        page = context.new_page()
        page.route("**/bench/asks.js", lambda route: route.abort())
        page.goto(address + PATH)
        page.locator(".step").last.wait_for()               # out of sight until the script has come, or has had its time
        assert len(visible_steps(page)) == page.locator(".step").count()


def test_the_screen_is_kept_on_or_the_refusal_is_said(bench):
    page = bench()
    page.evaluate("Object.defineProperty(navigator, 'wakeLock', { configurable: true, value: { request: () => Promise.reject(new Error('no')) } })")
    page.get_by_role("button", name="Keep the screen on").click()
    page.get_by_text("The browser refused").wait_for()
    page.evaluate("Object.defineProperty(navigator, 'wakeLock', { configurable: true, value: undefined })")
    page.get_by_role("button", name="Keep the screen on").click()
    page.get_by_text("cannot keep the screen on").wait_for()


def test_the_variant_of_a_serial(chromium, address):
    """The ranges of the machine's source: 24-A 1001 to 1389, 24-B 1390 to 2215, 24-C 2216 to 2980; an open end is open."""
    page = chromium.new_page()
    page.goto(address + PATH)
    told = page.evaluate("""async where => {
        const { variantOf } = await import(where);
        const carrier = { variants: [{ id: "A", first: 1001, last: 1389, ranged: true }, { id: "B", first: 1390, last: null, ranged: true },
                                     { id: "C", first: null, last: null, ranged: false }] };
        return ["1001", "1389", "1390", "99999", " 1200 ", "1000", "", "12a", "-1200", "1e3", "1200.0", "9999999999"].map(each => variantOf(each, carrier));
    }""", address + MODULE + "whose.js")
    assert told == ["A", "A", "B", "B", "A", None, None, None, None, None, None, None]
    page.close()


def test_a_part_s_name_stands_before_its_figure_and_nearer_to_it_than_to_the_one_above(bench):
    page = bench()
    page.evaluate("location.hash = '#step-press-to-stops'")
    page.wait_for_selector("#step-press-to-stops.current")
    figures = page.evaluate("""[...document.querySelectorAll("#step-press-to-stops .limit .wm-figure")].filter(each => each.querySelector(".wm-case")).map(figure =>
        [".wm-case", ".wm-printed"].map(name => figure.querySelector(name).getBoundingClientRect()).flatMap(box => [box.left, box.top, box.bottom]))""")
    assert len(figures) > 9
    for left, top, bottom, figure_left, figure_top, figure_bottom in figures:
        assert left < figure_left or bottom <= figure_top + 8
    for (*_, above), (_, top, bottom, _, figure_top, _) in zip(figures, figures[1:]):
        assert max(figure_top - bottom, 0) < top - above
