"""A machine kept on the phone: all of it there with the server gone, a new build whole or not at all, nobody else's caches touched."""

import json
import re
import shutil
from hashlib import sha256

import pytest
from test_pages import DESK, PHONE
from watch import Watch

from witnessmark.pages.keep_list import keep_files

MACHINE, OTHER = "thornley-13", "type-24"
PROCEDURE = f"{MACHINE}/lathe-front-bearing-taper/"
LISTS = "assets/witnessmark/keep/lists/"


def new_lists(site):
    files = {path.relative_to(site).as_posix(): (sha256(path.read_bytes()).hexdigest(), path.stat().st_size) for path in site.rglob("*") if path.is_file()}
    for name, text in keep_files(files, {MACHINE: "Lathe", OTHER: "Locomotive"}, "2025-06-01").items():
        (site / name).write_text(text)


@pytest.fixture
def site(demo_site, tmp_path):
    shutil.copytree(demo_site, tmp_path / "site")
    return tmp_path / "site"


@pytest.fixture
def address(site, serve):
    return serve(site, prefix="deep/book/")


@pytest.fixture
def context(chromium):
    with chromium.new_context(viewport=PHONE) as context:
        yield context


def keep(page, address):
    page.goto(f"{address}{MACHINE}/")
    page.get_by_role("button", name=re.compile(r"Keep this machine on this phone \(\d+\.\d MB\)")).click()
    page.get_by_text(re.compile("Kept on this phone: the book of .*, fetched today")).wait_for()


def caches(page) -> list[str]:
    return page.evaluate("caches.keys()")


def test_with_the_server_gone_every_page_sheet_picture_and_search_of_the_machine_is_there(context, address, site, serve):
    page = context.new_page()
    keep(page, address)
    listed = json.loads((site / LISTS / f"{MACHINE}.json").read_text())["files"]
    serve.stop(address)
    for path in ("", f"{MACHINE}/", PROCEDURE, f"{PROCEDURE}bench/", f"{PROCEDURE}sheet/", f"{PROCEDURE}working/", f"{PROCEDURE}correct/", "press/", "press/correct/", "source/shop-practice/", "caution/"):
        watch = Watch(context, address)
        page.goto(address + path)
        assert page.locator("h1").first.text_content() and watch.faults() == [], path        # the bench view may just be hiding it
    wrong = page.evaluate("""async ([base, files]) => {
        const wrong = [];
        for (const [path, [hash]] of Object.entries(files)) {
            const answer = await fetch(base + path).catch(() => null);
            const sum = answer && answer.ok && [...new Uint8Array(await crypto.subtle.digest("SHA-256", await answer.arrayBuffer()))].map(b => b.toString(16).padStart(2, "0")).join("");
            if (sum !== hash) wrong.push(path);
        }
        return wrong; }""", [address, listed])
    assert wrong == []
    page.goto(f"{address}{MACHINE}/")
    page.fill("#wm-search-input", "cone temperature")
    page.locator(".wm-search__hit").first.wait_for()
    page.locator(".wm-search__hit").first.click()
    page.wait_for_url(f"**/{PROCEDURE}*")
    page.goto(f"{address}{PROCEDURE}bench/")
    page.wait_for_selector("html.stepping")
    wrong = page.locator("details", has_text="Something wrong here? Correct it").first
    page.goto(f"{address}{PROCEDURE}bench/#{wrong.locator('xpath=ancestor::section').get_attribute('id')}")
    page.get_by_text("Something wrong here? Correct it").locator("visible=true").click()
    wrong.get_by_role("link").first.click()
    page.wait_for_url(f"**/{PROCEDURE}correct/#*")
    page.get_by_role("button", name="Fill in the form").first.wait_for()
    page.goto(f"{address}{OTHER}/")
    assert "Not on this phone" in page.inner_text("h1")
    page.goto(f"{address}{MACHINE}")                            # a folder without its slash, as people type it
    assert page.url == f"{address}{MACHINE}/"


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_with_the_browsers_own_network_cut_work_goes_on_where_the_machine_is_kept(chromium, address, size):
    with chromium.new_context(viewport=size) as context:
        page = context.new_page()
        keep(page, address)
        page.goto(f"{address}{PROCEDURE}bench/#start")
        page.wait_for_selector("#start.current [data-marks-foot] > *")
        context.set_offline(True)
        watch = Watch(context, address)
        assert page.evaluate("navigator.onLine") is False
        page.fill("#serial", "2800")
        first = page.locator(".step").first.get_attribute("id")
        page.evaluate("where => { location.hash = where; }", f"#{first}")
        page.click(f"#{first}.current [data-mark^=tick]")
        page.wait_for_selector(f"#{first} [data-mark^=tick][aria-pressed=true]")
        page.reload()
        page.wait_for_selector(f"#{first}.current [data-mark^=tick][aria-pressed=true]")
        for path in ("", f"{MACHINE}/", PROCEDURE, f"{PROCEDURE}sheet/", "bench/"):
            page.goto(address + path)
            page.locator("h1").first.wait_for()
            assert "Not on this phone" not in page.inner_text("h1"), path
        page.goto(address)
        page.get_by_role("navigation", name="You stopped here").get_by_text("Serial 2800").wait_for()
        page.fill("#wm-search-input", "cone temperature")
        page.locator(".wm-search__hit").first.wait_for()
        page.goto(f"{address}{OTHER}/")
        assert "Not on this phone" in page.inner_text("h1")
        context.set_offline(False)
        page.goto(f"{address}{OTHER}/")
        page.get_by_role("button", name="Keep this machine").wait_for()
        assert [fault for fault in watch.faults() if "ERR_INTERNET_DISCONNECTED" not in fault] == []


def test_all_that_a_kept_page_links_to_is_kept(demo_site):
    listed = json.loads((demo_site / LISTS / f"{OTHER}.json").read_text())["files"]
    missing = set()
    for path in listed:
        if not path.endswith(".html"):
            continue
        folder = (demo_site / path).parent
        for target in re.findall(r'(?:href|src)="([^"#?]*)', (demo_site / path).read_text()):
            if target and not re.match(r"[a-z]+:|//", target):
                there = (folder / target).resolve()
                there = there / "index.html" if there.is_dir() else there
                missing.add(there.relative_to(demo_site).as_posix())
    assert {path for path in missing - set(listed) if not path.startswith(f"{MACHINE}/")} == set()


def test_a_build_that_is_half_uploaded_is_not_taken(context, address, site):
    page = context.new_page()
    (site / PROCEDURE / "index.html").write_text("half of ano")
    page.goto(f"{address}{MACHINE}/")
    page.get_by_role("button", name="Keep this machine").click()
    page.get_by_text("Nothing of it was taken").wait_for()
    assert not any(name.endswith(" chosen") for name in caches(page))
    page.reload()
    page.get_by_role("button", name="Keep this machine").wait_for()     # shown by the script, once it has asked what is kept
    assert "Kept on" not in page.inner_text("body")


def test_a_new_build_is_used_whole_when_the_reader_says_so_and_not_in_the_middle_of_a_step(context, address, site):
    page = context.new_page()
    keep(page, address)
    file = site / PROCEDURE / "index.html"
    file.write_text(file.read_text().replace("</h1>", " anew</h1>", 1))
    page.goto(address + PROCEDURE)                              # the page changed on the server, its list did not: an upload under way
    assert "anew" not in page.inner_text("h1")
    new_lists(site)
    whole = file.read_bytes()
    file.write_bytes(whole[:-100])
    page.goto(address + PROCEDURE)
    page.get_by_text("You still read the book of").wait_for()
    assert "anew" not in page.inner_text("h1")
    file.write_bytes(whole)
    step = context.new_page()
    step.goto(f"{address}{PROCEDURE}bench/")
    step.wait_for_selector("html.stepping")
    step.click(".thumb.on")
    step.wait_for_selector(".step.current")
    page.goto(address + PROCEDURE)
    page.get_by_text("A newer book, of 2025-06-01, is on this phone, whole").wait_for()
    assert "anew" not in page.inner_text("h1")
    page.get_by_role("button", name="Use the newer book now").click()
    page.get_by_text("in the middle of a step").wait_for()
    assert not step.locator("[data-wm-news]").is_visible()      # nothing comes between the reader and the step
    step.evaluate("location.hash = '#start'")
    step.wait_for_selector("#start.current")
    page.get_by_role("button", name="Use the newer book now").click()
    page.wait_for_function("() => document.querySelector('h1').textContent.includes('anew')")
    page.get_by_text("Kept on this phone: the book of 2025-06-01").wait_for()
    assert sum(f" keep {MACHINE} " in name for name in caches(page)) == 1


def test_only_caches_of_this_book_are_touched(context, address):
    page = context.new_page()
    page.goto(f"{address}{MACHINE}/")
    others = ["another book", "two-machines /deep/ chosen", "two-machines /deep/book2/ keep thornley-13 0123"]
    page.evaluate("names => Promise.all(names.map(name => caches.open(name)))", others)
    keep(page, address)
    mine = set(caches(page)) - set(others)
    assert mine and all(name.startswith("two-machines /deep/book/ ") for name in mine)
    page.get_by_role("button", name="Remove it from this phone").click()
    page.get_by_text("Marks are still here").wait_for()
    assert set(others) <= set(caches(page)) and not any(f"/deep/book/ keep {MACHINE}" in name for name in caches(page))


def test_a_fetch_that_was_cut_short_goes_on_where_it_stopped(context, address, site):
    page = context.new_page()
    page.goto(f"{address}{MACHINE}/")
    asked = []
    # what our script fetches: the browser asks for the tab's icon when it likes
    page.on("request", lambda request: asked.append(request.url) if request.resource_type == "fetch" else None)
    (site / "search/index.json").rename(site / "search/later")
    page.get_by_role("button", name="Keep this machine").click()
    page.get_by_text("Nothing of it was taken").wait_for()
    (site / "search/later").rename(site / "search/index.json")
    first = {url for url in asked if LISTS not in url}
    asked.clear()
    page.get_by_role("button", name="Keep this machine").click()
    page.get_by_text(re.compile("Kept on this phone")).wait_for()
    assert len(first) > 1 and first & set(asked) == {f"{address}search/index.json"}


def test_the_age_is_told_even_by_a_clock_set_back(context, address):
    page = context.new_page()
    keep(page, address)
    page.add_init_script("Date.now = () => new Date().getTime() - 40 * 86400000;")
    page.reload()
    page.get_by_text("by the clock of then").wait_for()
    page.add_init_script("Date.now = () => new Date().getTime() + 3 * 86400000;")
    page.reload()
    page.get_by_text("fetched 3 days ago").wait_for()


def test_where_the_browser_cannot_keep_it_is_said(context, address):
    page = context.new_page()
    page.add_init_script("delete Navigator.prototype.serviceWorker;")
    page.goto(f"{address}{MACHINE}/")
    page.get_by_text("This browser cannot keep pages here").wait_for()


def test_every_page_says_of_when_the_book_is_and_can_be_installed(context, address, demo_site):
    page = context.new_page()
    for path in ("", f"{MACHINE}/", PROCEDURE, f"{PROCEDURE}bench/"):
        page.goto(address + path)
        page.get_by_text(re.compile(r"This book is of \d{4}-\d\d-\d\d\.")).first.wait_for()    # the bench view comes when its script has arranged it
        manifest = page.evaluate("async () => { const link = document.querySelector('link[rel=manifest]'); return [link.href, await (await fetch(link.href)).json()]; }")
        assert manifest[0] == f"{address}manifest.webmanifest" and manifest[1]["display"] == "standalone"
    sizes = page.evaluate("""async ([base, icons]) => Promise.all(icons.map(async icon => { const image = new Image(); image.src = new URL(icon.src, base).href;
        await image.decode(); return [icon.sizes, `${image.naturalWidth}x${image.naturalHeight}`]; }))""", [address, manifest[1]["icons"]])
    assert [drawn for told, drawn in sizes if told != "any"] == [told for told, _ in sizes if told != "any"] and len(sizes) == 3


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_keeping_and_its_news_have_their_contrast(chromium, address, site, scheme):
    axe = pytest.importorskip("axe_playwright_python.sync_playwright", reason="axe-playwright-python is not installed").Axe()
    rules = {"runOnly": ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa", "best-practice"], "rules": {"color-contrast-enhanced": {"enabled": True}}}
    with chromium.new_context(viewport=PHONE, color_scheme=scheme) as context:
        page = context.new_page()
        keep(page, address)
        assert axe.run(page, ".wm-keep, .wm-book", options=rules).violations_count == 0
        file = site / PROCEDURE / "index.html"
        file.write_text(file.read_text().replace("</h1>", " anew</h1>", 1))
        new_lists(site)
        page.reload()
        page.get_by_text("A newer book").wait_for()
        found = axe.run(page, ".wm-news", options=rules)
        assert found.violations_count == 0, found.generate_report()[:2000]
