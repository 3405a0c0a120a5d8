"""The page that is asked by a sheet's code, in a real browser: what it says, and that it never says too much."""

import json
import shutil

import pytest
from test_pages import DESK, PHONE
from watch import Watch

SAME = {"machine": "type-24", "procedure": "flycrank-press-on", "variant": "24-A", "title": "Press the fly-cranks on the jackshaft",
        "page": "type-24/flycrank-press-on/", "sheet": "type-24/flycrank-press-on/sheet/24-A/", "on": "2024-01-27", "now": "0K7M-29QX",
        "now on": "2024-01-27", "state": "same", "already done": None, "changes": [], "left out": 0, "corrections": []}
EVIL = "<img src=x onerror='window.ran = true'><script>window.ran = true</script>"
CHANGE = {"sort": "figure", "what": f"Fly-crank press force, never more than {EVIL}", "for": "fly-crank 24-A", "old": "20 long ton", "new": "18 long ton",
          "old also": "199.2 kN", "new also": "179.3 kN", "per cent": -10.0, "stop": True, "why": ["COR-1"]}
CORRECTION = {"id": "COR-1", "on": "2023-03-18", "old": f"20 long tons {EVIL}", "new": "18 long tons", "reason": "A third hub cracked.",
              "evidence": None, "touches": "Cranks pressed above 18 long tons.", "if already done": "inspect"}
OLD = {**SAME, "on": "2022-05-01", "state": "superseded", "already done": "inspect", "left out": 2, "corrections": [CORRECTION], "changes": [
    CHANGE, {**CHANGE, "sort": "caution", "what": "A caution", "for": "", "old": None, "old also": "", "new": "HZ-02", "new also": "", "per cent": None, "stop": False, "why": []}]}
GONE = {**SAME, "state": "gone", "now": None, "now on": None, "sheet": None, "page": None, "already done": "inspect"}
FORGOTTEN = {**OLD, "changes": [], "left out": None}
CODES = {"0K": {"0K7M-29QX": SAME, "0KAA-AAAA": OLD}, "3V": {"3VAA-AAAA": GONE, "3VBB-BBBB": FORGOTTEN}}


@pytest.fixture(scope="module")
def site(demo_site, tmp_path_factory):
    """The demonstration with editions of our own, so that every answer there is can be asked for."""
    folder = tmp_path_factory.mktemp("asked") / "site"
    shutil.copytree(demo_site, folder)
    at = folder / "assets/witnessmark/editions"
    shutil.rmtree(at, ignore_errors=True)
    at.mkdir()
    head = {"version": 1, "newest": "2024-01-27"}
    (at / "index.json").write_text(json.dumps({**head, "prefixes": [*CODES, "ZZ"]}))
    for prefix, codes in CODES.items():
        (at / f"{prefix}.json").write_text(json.dumps({**head, "codes": codes}))
    return folder


@pytest.fixture(scope="module")
def address(site, serve):
    return serve(site, prefix="a/book/")


@pytest.fixture
def asked(chromium, address):
    contexts = []

    def ask(code, size=PHONE, **more):
        context = chromium.new_context(viewport=size, **more)
        contexts.append(context)
        page = context.new_page()
        page.goto(f"{address}s/#{code}", wait_until="networkidle")
        return page

    yield ask
    for context in contexts:
        context.close()


def answer(page) -> str:
    page.wait_for_function("!document.querySelector('[data-answer]').textContent.startsWith('Looking')")
    return page.locator("[data-answer]").inner_text()


def test_not_changed_is_said_with_the_book_and_the_day_it_was_fetched(asked):
    page = asked("0K7M-29QX")
    said = answer(page)
    day = max("2024-01-27", page.locator("main").get_attribute("data-date"))      # that of the sources where git knows it
    assert f"Not changed in the book of {day}, which this phone last fetched today." in said
    assert "With signal, ask again" in said and "current" not in said.lower()


def test_superseded_tells_each_change_old_and_new_why_and_what_of_work_done(asked):
    page = asked("0KAA-AAAA")
    said = answer(page)
    for told in ("SUPERSEDED", "INSPECT IT", "20 long ton (199.2 kN)", "18 long ton (179.3 kN)", "-10 %", "fly-crank 24-A", "STOP: grave",
                 "not on the old sheet", "And 2 more", "COR-1, 2023-03-18", "A third hub cracked.", "sheet code 0K7M-29QX"):
        assert told in said, told
    links = [link.get_attribute("href") for link in page.locator("[data-answer] a").all()]
    assert [link.rpartition("/a/book/")[2] for link in links] == [OLD["sheet"], OLD["page"]]
    assert page.locator("[data-answer] h2.grave").count() == 1


def test_words_from_the_data_stay_words(asked):
    page = asked("0KAA-AAAA")
    assert EVIL in answer(page)
    assert page.evaluate("window.ran") is None and page.locator("[data-answer] img, [data-answer] script").count() == 0


def test_gone_and_no_longer_kept(asked):
    assert "GONE" in answer(asked("3VAA-AAAA"))
    assert "no longer kept" in answer(asked("3VBB-BBBB"))


@pytest.mark.parametrize("code", ["0KAA-AAAB", "9ZZZ-9999", "ZZAA-AAAA"])
def test_what_is_not_known_is_unknown_here(asked, code):
    page = asked(code)
    said = answer(page)
    assert ("Unknown here: this sheet may be newer than this phone." if code[:2] != "ZZ" else "could not read") in said
    assert "do not take the sheet for true" in said


@pytest.mark.parametrize("typed", ["0k7m29qx", "OK7M-29QX", " 0k7m 29qx ", "https://forge.example/s/#0K7M-29QX"])
def test_typing_the_code_works(asked, typed):
    page = asked("")
    page.get_by_label("Sheet code").fill(typed)
    page.get_by_role("button", name="Ask").click()
    page.locator("[data-answer] h2").wait_for()
    assert "Not changed in the book of" in answer(page)
    assert page.url.endswith("/s/#0K7M-29QX") and page.get_by_label("Sheet code").input_value() == "0K7M-29QX"


@pytest.mark.parametrize("typed", [EVIL, "%3Cimg src=x onerror=alert(1)%3E", "%", "__proto__", "../../secret", "0K7M-29Q", "constructor", "javascript:alert(1)"])
def test_a_hostile_code_cannot_run_or_ask_elsewhere(chromium, address, typed):
    with chromium.new_context(viewport=PHONE) as context:
        watch = Watch(context, address)
        page = context.new_page()
        page.goto(f"{address}s/#{typed}", wait_until="networkidle")
        assert "That is no sheet code" in answer(page)
        page.get_by_label("Sheet code").fill(typed)
        page.get_by_role("button", name="Ask").click()
        assert "That is no sheet code" in answer(page)
        assert page.evaluate("window.ran") is None and watch.faults() == []


def test_the_days_since_it_was_fetched_are_counted(asked):
    page = asked("")
    words = page.evaluate("""async () => {
        const { ago } = await import(new URL('../assets/witnessmark/ask/answer.js', location.href).href);
        const say = JSON.parse(document.getElementById('ask-words').textContent);
        const now = Date.UTC(2026, 0, 15, 1);
        return [0, 2, 2 * 24, 40 * 24, -30].map(hours => ago(now - hours * 3600e3, now, say)).concat(ago(null, now, say));
    }""")
    assert words == ["today", "yesterday", "2 days ago", "40 days ago", "after the day this phone's clock now shows: set its clock", "at a time it did not note"]


def test_without_network_and_without_editions_nothing_is_called_true(asked):
    page = asked("")
    page.context.set_offline(True)
    page.get_by_label("Sheet code").fill("0K7M-29QX")
    page.get_by_role("button", name="Ask").click()
    page.locator("[data-answer] h2").wait_for()
    assert "could not read" in answer(page) and "Not changed" not in answer(page)


def test_without_script_it_says_what_to_do(asked):
    page = asked("0K7M-29QX", java_script_enabled=False)
    assert not page.get_by_label("Sheet code").is_visible()
    assert page.locator("[data-without] li:visible").count() == 4 and "superseded" in page.locator("main").inner_text()


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_barrier_and_no_sideways_scroll(asked, size, scheme):
    axe = pytest.importorskip("axe_playwright_python.sync_playwright", reason="axe-playwright-python is not installed").Axe()
    for code in ("", "0KAA-AAAA"):
        page = asked(code, size, color_scheme=scheme)
        assert page.evaluate("document.documentElement.scrollWidth") <= size["width"]
        found = axe.run(page, options={"runOnly": ["wcag2a", "wcag2aa", "wcag2aaa", "wcag21aa", "wcag22aa", "best-practice"]})
        assert found.violations_count == 0, found.generate_report()[:3000]


def test_a_kept_book_answers_with_the_server_gone_and_names_the_day_it_was_fetched(chromium, demo_site, tmp_path, serve):
    shutil.copytree(demo_site, tmp_path / "site")
    codes = {code: sheet for file in (tmp_path / "site/assets/witnessmark/editions").glob("??.json")
             for code, sheet in json.loads(file.read_text())["codes"].items()}
    address = serve(tmp_path / "site", prefix="deep/book/")
    with chromium.new_context(viewport=PHONE) as context:
        page = context.new_page()
        page.goto(f"{address}thornley-13/")
        page.get_by_role("button", name="Keep this machine on this phone").click()
        page.get_by_text("Kept on this phone: the book of").wait_for()
        page.evaluate("""async () => {
            const cache = await caches.open((await caches.keys()).find(name => name.endsWith(' chosen')));
            for (const key of await cache.keys()) {
                const one = await (await cache.match(key)).json();
                one.fetched = new Date(Date.now() - 3 * 86400e3).toISOString();
                await cache.put(key, new Response(JSON.stringify(one)));
            } }""")
        serve.stop(address)
        code = next(code for code, sheet in codes.items() if sheet["state"] == "same")
        page.goto(f"{address}s/#{code}")
        page.locator("[data-answer] h2").wait_for()
        assert "Not changed in the book of" in answer(page) and "which this phone last fetched 3 days ago." in answer(page)
        page.goto(f"{address}s/#9ZZZ-9999")
        page.locator("[data-answer] h2").wait_for()
        assert "Unknown here" in answer(page) and "3 days ago" in answer(page)
