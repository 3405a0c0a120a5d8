"""Every kind of page of the demonstration book in a real browser, on a phone and at a desk, and its sheets as printed pages."""

import re

import pypdfium2
import pytest

KINDS = {
    "home": "", "machine": "type-24/", "procedure": "type-24/flycrank-press-on/", "worked": "type-24/flycrank-press-on/working/",
    "bench": "type-24/flycrank-press-on/bench/", "sheets": "type-24/flycrank-press-on/sheet/", "sheet": "type-24/flycrank-press-on/sheet/24-B/",
    "leaves": "type-24/flycrank-press-on/leaves/24-B/", "press": "press/BP50/", "source": "source/shop-practice/", "caution": "caution/", "working": "working/press-card/", "presses": "press/", "my bench": "bench/",
    "correct": "type-24/final-drive-build/correct/", "shop": "press/correct/", "versions": "type-24/plan/correct/",
}
PHONE, DESK = {"width": 390, "height": 844}, {"width": 1280, "height": 800}


@pytest.fixture(scope="module")
def address(demo_site, serve):
    return serve(demo_site, prefix="a/book/")


@pytest.fixture(params=["light", "dark"])
def scheme(request):
    return request.param


def opened(chromium, address, path, size, scheme="light"):
    context = chromium.new_context(viewport=size, color_scheme=scheme)
    page = context.new_page()
    asked, failed = [], []
    page.on("request", lambda request: asked.append(request.url))
    page.on("requestfailed", lambda request: failed.append(request.url))
    page.on("response", lambda response: failed.append(response.url) if response.status >= 400 else None)
    page.on("pageerror", lambda error: failed.append(str(error)))
    page.goto(address + path, wait_until="networkidle")
    return context, page, asked, failed


@pytest.mark.parametrize("path", KINDS.values(), ids=KINDS)
@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_no_sideways_scroll_no_outside_request_nothing_missing(chromium, address, path, size):
    context, page, asked, failed = opened(chromium, address, path, size)
    assert page.evaluate("document.documentElement.scrollWidth") <= size["width"]
    outside = [url for url in asked if not url.startswith((address, "data:", "blob:"))]
    assert (outside, failed) == ([], [])
    context.close()


@pytest.mark.parametrize("path", KINDS.values(), ids=KINDS)
def test_axe_finds_no_barrier(chromium, address, path, scheme):
    axe = pytest.importorskip("axe_playwright_python.sync_playwright", reason="axe-playwright-python is not installed").Axe()
    context, page, _, _ = opened(chromium, address, path, PHONE, scheme)
    found = axe.run(page, options={"runOnly": ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa", "best-practice"]})
    assert found.violations_count == 0, found.generate_report()[:3000]
    context.close()


def test_every_link_inside_the_book_leads_somewhere(demo_site):
    for file in demo_site.rglob("*.html"):
        text = file.read_text()
        for target in re.findall(r'(?:href|src)="([^"]*)"', text):
            if re.match(r"[a-z]+:|//", target) or not target or file.name == "404.html":
                continue
            path, _, anchor = target.partition("#")
            there = (file.parent / path).resolve() if path else file
            there = there / "index.html" if there.is_dir() else there
            assert there.is_file(), f"{file.relative_to(demo_site)} -> {target}"
            if anchor and there.suffix == ".html":
                assert f'id="{anchor}"' in there.read_text() or anchor.startswith("__"), f"{file.relative_to(demo_site)} -> {target}"


def test_script_off_the_page_is_complete(chromium, address):
    context = chromium.new_context(java_script_enabled=False, viewport=PHONE)
    page = context.new_page()
    page.goto(address + KINDS["procedure"])
    for words in ("Never", "3600 psi", "4300 psi", "460 lbf·ft", "DANGER", "kept for the record"):
        assert page.get_by_text(words).first.is_visible(), words
    context.close()


def test_a_value_is_read_in_the_element_of_its_spec_and_variant(chromium, address):
    context, page, _, _ = opened(chromium, address, KINDS["procedure"], PHONE)
    for hub, ceiling in (("24-A", "18 long ton"), ("24-B", "22 long ton"), ("24-C", "26 long ton")):
        figure = page.locator(f'[data-spec="press-force"][data-role="ceiling"][data-case~="fly-crank:{hub}"]')
        assert ceiling in figure.first.inner_text()
    for variant, torque in (("24-A", "360 lbf·ft (488 N·m)"), ("24-B", "460 lbf·ft (624 N·m)"), ("24-C", "530 lbf·ft (719 N·m)")):
        figure = page.locator(f'[data-spec="nut"][data-role="target"][data-case~="locomotive:{variant},fly-crank:{variant}"]')
        assert torque in figure.first.inner_text()
    context.close()


@pytest.mark.parametrize("asked, other", [("light", "dark"), ("dark", "light")])
def test_light_and_dark_follow_the_device_until_the_reader_chooses(chromium, address, asked, other):
    body = {"light": "body[data-md-color-scheme=default]", "dark": "body[data-md-color-scheme=slate]"}
    with chromium.new_context(viewport=PHONE, color_scheme=asked) as context:
        page = context.new_page()
        page.goto(address)
        page.wait_for_selector(body[asked])
        page.emulate_media(color_scheme=other)
        page.wait_for_selector(body[other])
        page.emulate_media(color_scheme=asked)
        page.wait_for_selector(body[asked])
        page.get_by_role("button", name=f"Switch to {other}").press("Enter")
        page.wait_for_selector(body[other])
        assert page.locator("[data-wm-schemes] button:visible").get_attribute("title") == f"Switch to {asked}"
        page.goto(address + KINDS["procedure"])
        page.wait_for_selector(body[other])
        page.get_by_role("button", name=f"Switch to {asked}").click()
        page.wait_for_selector(body[asked])


SHEETS = [f"type-24/{procedure}/sheet/{variant}/" for procedure in ("final-drive-build", "flycrank-press-on", "quartering-check")
          for variant in ("24-A", "24-B", "24-C")] + ["thornley-13/lathe-front-bearing-taper/sheet/taper/"]


@pytest.mark.parametrize("path", SHEETS)
@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_a_sheet_prints_with_its_identity_on_every_page(chromium, address, demo_site, path, paper):
    context, page, _, _ = opened(chromium, address, path, DESK)
    pdf = pypdfium2.PdfDocument(page.pdf(format=paper, prefer_css_page_size=False, print_background=False))
    code = re.search(r"[0-9A-HJKMNP-TV-Z]{4}-[0-9A-HJKMNP-TV-Z]{4}", (demo_site / path / "index.html").read_text())[0]
    texts = [leaf.get_textpage().get_text_bounded() for leaf in pdf]
    assert len(texts) >= 1
    for number, text in enumerate(texts, 1):
        assert code in text, f"page {number} of {len(texts)} does not carry {code}"
    assert "End of checklist" in texts[-1]
    context.close()


SMALL = """() => [...document.querySelectorAll("a[href], button, summary, input, select, label[for]")].filter(each => each.checkVisibility({ visibilityProperty: true })
  && !each.closest("p, li, td, dd, dt, svg, .wm-spec, .md-overlay, .md-nav") && !each.matches(".md-toggle, .md-option, .wm-search__label")).map(each => {
    const box = each.getBoundingClientRect();
    return [each.textContent.trim().slice(0, 40) || each.className, Math.round(box.width), Math.round(box.height)];
  }).filter(([, width, height]) => width < 48 || height < 48)"""


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_what_is_tapped_outside_running_text_is_48_pixels_the_hosts_own_buttons_too(chromium, address, size):
    for name in ("home", "machine", "procedure", "sheet"):
        context, page, _, _ = opened(chromium, address, KINDS[name], size)
        page.locator("body").press("Tab")                       # brings the link over the menu into sight
        assert page.evaluate(SMALL) == [], name
        context.close()
