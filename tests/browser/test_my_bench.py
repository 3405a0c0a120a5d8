"""My bench in a real browser: a press typed in and believed or not, its card beside the built one, and nothing of it where anything fails."""

import json

import pypdfium2
import pytest
from test_pages import DESK, PHONE
from watch import Watch

from witnessmark.workings.press_card import WORKING
from witnessmark.workings.read_inputs import run

PROCEDURE = "type-24/flycrank-press-on/"
BP50 = {"name": "The old one", "area": "10.97", "rated-force": ("50", "short ton"), "rated-pressure": "9,100", "full-scale": "10,000", "division": "100", "accuracy": "1.5"}
COARSE = {**BP50, "name": "Coarse", "full-scale": "15,000", "division": "500", "accuracy": "2.5"}
RULES = {"runOnly": ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa", "best-practice"], "rules": {"color-contrast-enhanced": {"enabled": True}}}


@pytest.fixture(scope="module")
def address(demo_site, serve):
    return serve(demo_site, prefix="a/book/")


@pytest.fixture
def phone(chromium, address):
    """`phone(size=PHONE, **context)` -> (page at My bench, go) that is watched to the end; `go(path)` opens another page."""
    opened = []

    def start(size=PHONE, **options):
        context = chromium.new_context(viewport=size, **options)
        watch = Watch(context, address)
        page = context.new_page()
        opened.append((context, watch, options.get("java_script_enabled", True)))

        def go(path, wait=".wm-mine"):
            page.goto(address + path, wait_until="load")
            if wait:
                page.wait_for_selector(wait, state="attached")

        go("bench/", "[data-forms]:visible" if options.get("java_script_enabled", True) else None)
        return page, go

    yield start
    for context, watch, scripted in opened:
        assert not scripted or watch.faults() == []
        context.close()


def keep(page, press) -> str:
    """Types a press in and asks to keep it; what the page says to that."""
    for name, typed in press.items():
        text, unit = typed if isinstance(typed, tuple) else (typed, None)
        page.fill(f"#{name}", text)
        if unit:
            page.locator(f"#{name} + select").select_option(unit)
    page.get_by_role("button", name="Keep this press").click()
    return page.locator("[data-press] [data-said]").inner_text()


def inputs_of(press) -> dict[str, str]:
    """The same press as Python takes it."""
    return {"area": f"{press['area']} in²", "rated force": " ".join(press["rated-force"]), "rated pressure": f"{press['rated-pressure']} psi",
            "full scale": f"{press['full-scale']} psi", "division": f"{press['division']} psi", "accuracy": f"{press['accuracy']} %"}


def test_a_press_whose_area_agrees_with_its_nameplate_is_kept(phone):
    page, go = phone()
    assert "49.91 short ton" in keep(page, BP50) and "they agree" in page.locator("[data-press] [data-said]").inner_text()
    go("bench/", "[data-forms]:visible")
    assert page.input_value("#full-scale") == "10,000" and "10.97 in²" in page.locator("[data-kept-press]").inner_text()
    page.get_by_role("button", name="Forget this press").click()
    go("bench/", "[data-forms]:visible")
    assert page.locator("[data-kept-press]").inner_text() == ""


@pytest.mark.parametrize("change, said", [
    ({"area": "12.7"}, "16 % apart, more than 15 %"), ({"area": "12.5"}, None), ({"area": "9.5"}, None), ({"area": "9.2"}, "16 % apart"),
    ({"area": "1.70"}, "square inches and square centimetres"), ({"rated-pressure": ""}, "both needed"), ({"rated-force": ("50 ton", "short ton")}, "more than one unit"),
    ({"division": ""}, "needs 'division'"), ({"division": "12,000"}, "division is not smaller"), ({"area": ""}, "area is missing"), ({"area": "10,97"}, "a comma inside a number"),
])
def test_the_area_is_believed_within_15_per_cent_of_the_nameplate(phone, change, said):
    page, _ = phone()
    told = keep(page, {**BP50, **change})
    assert (said in told and "Not kept" in told) if said else "they agree" in told
    assert (page.locator("[data-kept-press] dl").count() == 0) is bool(said)


def test_a_radius_typed_for_the_bore_is_named(phone):
    """180 mm across is 254.47 cm² and 100 tonnes at 385.4 bar; its half is not."""
    page, _ = phone()
    frame = {"rated-force": ("100", "tonne"), "rated-pressure": ("385.4", "bar"), "full-scale": "400", "division": "5", "accuracy": "1.6"}
    page.check("input[value=bore]")
    page.select_option("#gauge-unit", "bar")
    assert "Was the radius measured?" in keep(page, {"bore": ("90", "mm"), **frame})
    assert "they agree" in keep(page, {"bore": ("180", "mm")})
    page.select_option("#side", "pull")
    assert "rod must be given" in keep(page, {})
    assert "more than 15 %" in keep(page, {"rod": ("100", "mm")})
    assert page.locator("[data-field=radius]").count() == 0 and page.locator("#area").is_hidden()


def marks(section) -> list[str]:
    return section.locator("[data-share]").evaluate_all("all => all.map(each => [...each.querySelectorAll('b')].at(-1).textContent)")


def test_the_readers_card_stands_beside_the_built_one_with_the_same_marks(phone):
    page, go = phone()
    keep(page, BP50)
    go(PROCEDURE)
    built = page.locator(".wm-card[data-press=BP50]")
    assert page.locator(".wm-cards > .wm-mine").count() == built.count() == 3
    for number in range(3):
        own = page.locator(".wm-cards > .wm-mine").nth(number)
        assert marks(own) == marks(built.nth(number)) and len(marks(own)) == 5
        assert own.evaluate("own => own.previousElementSibling.matches('.wm-card')")
        for words in ("Your own press: The old one", "Worked out on this phone", "What you gave", "10.97 in²", "100 psi", "Asked for by the book"):
            assert words in own.inner_text()


def test_each_donors_row_has_the_readers_own_card_with_the_same_marks(phone):
    page, go = phone()
    keep(page, BP50)
    go(PROCEDURE)
    rows = page.locator(".wm-donors[data-press=BP50] tr[data-job]")
    mine = page.locator(".wm-donors[data-press=BP50] ~ .wm-mine")
    assert rows.count() == mine.count() == 6
    refused = 0
    for row, own in zip(rows.all(), mine.all(), strict=True):
        built = row.locator("td").all_inner_texts()
        assert row.locator("th").inner_text() in own.locator(".wm-mine-for").inner_text()
        if "REFUSED" in built[0]:
            refused += 1
            assert "Your press cannot do it" in own.inner_text() and marks(own) == []
        else:
            assert all(mark in built[0] for mark in marks(own)[:-1]) and marks(own)[-1] in built[1] and len(marks(own)) == 5
    assert refused == 1


def test_with_a_donors_part_in_the_bench_view_its_own_card_alone_is_seen(phone):
    page, go = phone()
    keep(page, BP50)
    go(f"{PROCEDURE}bench/#start")
    page.fill("#serial", "1604")
    page.select_option("#part-fly-crank", "24-C")
    page.evaluate("location.hash = '#step-press-to-stops'")
    own = page.locator("#step-press-to-stops .wm-mine:visible")
    own.first.wait_for()
    assert own.count() == 1 and marks(own)[-1] == "5100 psi" and "24-B with fly-crank 24-C" in own.inner_text()


def test_another_press_refuses_in_the_words_of_python(phone):
    page, go = phone()
    assert "they agree" in keep(page, COARSE)
    go(PROCEDURE)
    jobs = [json.loads(text) for text in page.locator(".wm-card[data-press=BP50]").evaluate_all("all => all.map(each => each.dataset.job)")]
    refused = 0
    for own, job in zip(page.locator(".wm-cards > .wm-mine").all(), jobs, strict=True):
        outcome, _ = run(WORKING, {**inputs_of(COARSE), **job})
        for refusal in outcome.refusals:
            refused += 1
            assert refusal.message in own.inner_text() and refusal.instead in own.inner_text() and marks(own) == []
    assert refused > 0


def test_a_wrench_shows_its_setting_under_the_books(phone):
    page, go = phone()
    for name, text in {"wrench-name": "Long one", "wrench-lowest": "100", "wrench-highest": "600", "wrench-graduation": "20", "wrench-accuracy": "4", "wrench-length": "40"}.items():
        page.fill(f"#{name}", text)
    page.get_by_role("button", name="Keep this wrench").click()
    go(PROCEDURE)
    own = page.locator("section.wm-mine").first.inner_text()
    assert "Your own wrench: Long one" in own and "Set 320 lbf·ft" in own      # 360 x 40 / 43 = 334.9, down to 20
    go("bench/", "[data-forms]:visible")
    page.get_by_role("button", name="Forget Long one").click()
    assert "No wrench is kept yet" in page.locator("[data-kept-wrenches]").inner_text()


def test_a_wrench_without_a_graduation_is_not_kept(phone):
    page, _ = phone()
    page.fill("#wrench-lowest", "10")
    page.get_by_role("button", name="Keep this wrench").click()
    assert "One graduation is missing" in page.locator("[data-wrench] [data-said]").inner_text()


@pytest.mark.parametrize("spoil", ["press_card.js", "units_table.js", "my_cards.js", "mine.css later", "kept", "later"])
def test_on_any_error_the_readers_card_vanishes_and_the_built_one_stays(chromium, address, spoil):
    with chromium.new_context(viewport=PHONE) as context:
        page = context.new_page()
        page.goto(address + "bench/")
        page.wait_for_selector("[data-forms]:visible")
        keep(page, BP50)
        if spoil.endswith(".js"):
            page.route(f"**/{spoil}", lambda route: route.abort())
        elif spoil == "kept":
            page.evaluate("for (const name of Object.keys(localStorage)) localStorage[name] = JSON.stringify({ press: { name: 'x', texts: null }, wrenches: 3 })")
        page.goto(address + PROCEDURE, wait_until="networkidle")
        if "later" in spoil:
            page.wait_for_selector(".wm-mine")
            page.evaluate("setTimeout(() => { throw new Error('ours'); })")
            page.wait_for_selector(".wm-mine", state="detached")
        assert page.locator(".wm-mine").count() == 0
        assert len(marks(page.locator(".wm-card").first)) == 5


def test_preferred_units_come_first_and_the_books_own_stays_marked(phone):
    page, go = phone()
    page.select_option("#units", "metric")
    go(PROCEDURE, ".wm-mine-first")
    figure = page.locator(".wm-figure[data-role=ceiling]", has_text="18 long ton").first
    assert figure.locator(".wm-mine-first").inner_text().endswith("kN")
    assert figure.inner_text().replace("\n", " ").endswith("18 long ton as printed")
    assert marks(page.locator(".wm-card").first)[0] == "1500 psi"      # marks stay those of the gauge


@pytest.mark.parametrize("size", ["125", "150", "200"])
def test_text_size_is_kept_and_nothing_is_cut_off(phone, size):
    page, go = phone()
    page.select_option("#size", size)
    go(PROCEDURE, f"html.wm-text-{size}")
    page.wait_for_function("[...document.styleSheets].some(each => each.href && each.href.endsWith('mine.css'))")
    assert page.locator(".wm-do").first.evaluate("each => each.currentCSSZoom") == int(size) / 100
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]


def test_in_the_bench_view_the_own_card_goes_with_the_built_one(phone):
    page, go = phone()
    keep(page, BP50)
    go(f"{PROCEDURE}bench/#start")
    page.fill("#serial", "1604")
    page.evaluate("location.hash = '#step-press-to-stops'")
    page.wait_for_selector("#step-press-to-stops.current .wm-mine:visible")
    own = page.locator("#step-press-to-stops .wm-mine:visible")
    assert own.count() == 1 and marks(own)[-1] == "4300 psi"


def test_with_nothing_kept_a_procedure_page_fetches_nothing_of_it(phone):
    page, go = phone()
    asked = []
    page.on("request", lambda request: asked.append(request.url.rpartition("/")[2]))
    go(PROCEDURE, None)
    page.wait_for_load_state("networkidle")
    assert not {"my_cards.js", "units_table.js", "mine.css"} & set(asked) and page.locator(".wm-mine").count() == 0


def test_without_script_the_page_says_what_it_would_do(phone):
    page, _ = phone(java_script_enabled=False)
    assert "you would type in your press" in page.locator("main").inner_text() and page.locator("form").first.is_hidden()


def test_where_the_browser_keeps_nothing_it_is_said(chromium, address):
    with chromium.new_context(viewport=PHONE) as context:
        context.add_init_script("Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); }")
        page = context.new_page()
        page.goto(address + "bench/")
        page.wait_for_selector("[data-forms]:visible")
        assert "keeps nothing" in keep(page, BP50)


def test_what_is_kept_stands_under_this_books_name_alone(phone, address):
    page, _ = phone()
    keep(page, BP50)
    assert page.evaluate("Object.keys(localStorage)") == ["two-machines /a/book/ my bench"]


def test_by_keyboard_alone_a_press_is_kept(phone):
    page, _ = phone(DESK)
    typed = {"area": "10.97", "rated-force": "50", "rated-pressure": "9,100", "full-scale": "10,000", "division": "100", "accuracy": "1.5"}
    for _ in range(60):
        page.keyboard.press("Tab")
        at = page.evaluate("document.activeElement.id")
        if at in typed:
            page.keyboard.type(typed.pop(at) + (" kN" if at == "rated-force" else ""))
            if not typed:
                break
    page.keyboard.press("Enter")
    assert "Not kept" in page.locator("[data-press] [data-said]").inner_text()      # 444 kN is what the plate would say
    page.locator("#rated-force").focus()
    page.keyboard.press("Control+A")
    page.keyboard.type("50 short ton")
    page.keyboard.press("Enter")
    assert "they agree" in page.locator("[data-press] [data-said]").inner_text()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_barrier_on_my_bench_or_beside_the_built_cards(phone, scheme):
    axe = pytest.importorskip("axe_playwright_python.sync_playwright", reason="axe-playwright-python is not installed").Axe()
    page, go = phone(color_scheme=scheme)
    keep(page, BP50)
    found = [axe.run(page, options=RULES)]
    keep(page, {"area": "99"})
    found.append(axe.run(page, options=RULES))
    go(PROCEDURE)
    found.append(axe.run(page, context=".wm-mine", options=RULES))
    assert [each.generate_report()[:2000] for each in found if each.violations_count] == []


def test_what_is_tapped_on_my_bench_is_56_pixels_high_and_nothing_is_cut_off(phone):
    page, _ = phone()
    low = """() => [...document.querySelectorAll("a[href], button, select, input:not([type=radio])")].filter(each => each.checkVisibility())
      .map(each => [each.id || each.textContent.trim(), Math.round(each.getBoundingClientRect().height)]).filter(([, height]) => height < 56)"""
    assert page.evaluate(low) == []
    page.select_option("#size", "200")
    page.wait_for_selector("html.wm-text-200")
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]


def test_the_own_card_prints_as_a_leaf_with_its_inputs(phone):
    page, go = phone()
    keep(page, BP50)
    go(PROCEDURE)
    page.evaluate("window.print = () => {}")
    page.get_by_role("button", name="Print this card").nth(1).click()
    leaf = pypdfium2.PdfDocument(page.pdf(format="A4"))
    text = leaf[0].get_textpage().get_text_range()
    assert len(leaf) == 1
    for words in ("Press the fly-cranks on the jackshaft", "The old one", "3600 psi", "4300 psi", "10.97 in", "50 short ton", "18 long ton", "1.5 %"):
        assert words in text, words
    assert "Print this card" not in text and "Fly-crank nut" not in text
    page.evaluate("dispatchEvent(new Event('afterprint'))")
    assert page.locator(".wm-print-leaf, .wm-leaf").count() == 0
