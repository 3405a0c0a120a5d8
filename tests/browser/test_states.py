"""Every state a reader can bring the bench view into, one after another in one browser: contrast and barriers, size of what is tapped, nothing cut off or wider than the screen."""

import json

import pytest
from test_bench_view import TARGETS
from test_marks_rules import BASE
from test_my_bench import BP50, RULES, keep
from test_pages import DESK, PHONE, SMALL

BENCH = "type-24/flycrank-press-on/bench/"
GEARBOX = "type-24/final-drive-build/bench/"
KEY, PRESS, LAY, BACKLASH = "#step-set-key", "#step-press-to-stops", "#step-lay-tab-washer", "#step-measure-backlash"
VIEWS = {"phone": (PHONE, "light", 1), "phone in the dark": (PHONE, "dark", 1), "desk": (DESK, "light", 1), "twice the text": (PHONE, "light", 2)}
#: What is tapped is measured here, and larger; what axe adds is only whether the bar at the foot lies over it at this scroll.
AXE = {**RULES, "rules": {**RULES["rules"], "target-size": {"enabled": False}}}
CUT = """() => [...document.querySelectorAll(".current *, .bar *, .thumbs *")].filter(each => each.checkVisibility() && getComputedStyle(each).overflowX !== "auto"
  && each.scrollWidth > each.clientWidth + 1 && each.clientWidth > 0).map(each => each.outerHTML.slice(0, 80))"""
BROKEN = r"""() => {
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT), found = [];
  while (texts.nextNode()) {
    const text = texts.currentNode;
    for (const number of text.parentElement.checkVisibility() ? text.data.matchAll(/[0-9][0-9.,]*[0-9]/g) : []) {
      const range = document.createRange();
      range.setStart(text, number.index);
      range.setEnd(text, number.index + number[0].length);
      if (new Set([...range.getClientRects()].map(each => Math.round(each.top))).size > 1) found.push(text.data.trim().slice(0, 60));
    }
  }
  return found; }"""
FOREIGN = {"what": "witnessmark marks", "version": 1, "book": "two-machines", "machine": "type-24", "entries": [
    {**BASE, "id": "from-another-phone", "book": "two-machines", "machine": "type-24", "procedure": "flycrank-press-on", "serial": "1604", "place": "left", "step": "set-key",
     "slot": "value key-gap", "value": "0.011", "unit": "in", "variant": "24-B"}]}


@pytest.fixture(scope="module")
def address(demo_site, serve):
    return serve(demo_site, prefix="a/book/")


def at(page, leaf):
    page.evaluate("where => { location.hash = where; }", leaf)
    page.wait_for_selector(f"{leaf}.current")


def states(page, address):
    """Goes through them and yields the name of each."""
    page.goto(address + "bench/")
    page.wait_for_selector("[data-forms]:visible")
    keep(page, BP50)
    page.goto(address + BENCH)
    page.wait_for_selector("#start.current [data-marks-foot] > *")
    yield "nothing given"
    at(page, KEY)
    page.get_by_text("Give the serial first").wait_for()
    yield "a step without a serial"
    at(page, "#start")
    page.fill("#serial", "9999")
    page.get_by_text("stands in no range").wait_for()
    yield "a serial of no range"
    page.fill("#serial", "1604")
    page.check("input[value=left]")
    page.locator("details.paper summary").click()
    yield "paper to be typed in"
    at(page, KEY)
    page.click(f"{KEY} .tick")
    page.wait_for_selector(f"{KEY} .tick[aria-pressed=true]")
    page.click(f"{KEY} details.note summary")
    page.fill(f"{KEY} .reading input", "0,01")
    page.get_by_text("This is no number").wait_for()
    yield "ticked, a note begun, no number"
    page.fill(f"{KEY} .reading input", "0.014")
    page.locator(f"{KEY} .reading input").blur()
    page.get_by_text("OUTSIDE, over").wait_for()
    yield "a reading outside"
    at(page, "#start")
    page.set_input_files("#start #marks-file", {"name": "m.json", "mimeType": "application/json", "buffer": json.dumps(FOREIGN).encode()})
    page.get_by_text("1 marks were new").wait_for()
    yield "marks joined"
    at(page, KEY)
    page.get_by_text("2 values for one reading").wait_for()
    yield "two values"
    at(page, LAY)
    page.click(f"{LAY} .tick")
    page.locator(".loose-now").click()
    page.wait_for_selector("#loose-now .wm-loose")
    yield "something loose"
    page.select_option("#part-fly-crank", "24-C")
    at(page, PRESS)
    page.wait_for_selector(f"{PRESS} .wm-mine:visible")
    page.click(f"{PRESS} [data-mark='tick left']")
    page.wait_for_selector(f"{PRESS} [data-mark='tick left'][aria-pressed=true]")
    yield "a donor's part, with the reader's own card"
    at(page, "#start")
    page.select_option("#part-fly-crank", "")
    at(page, PRESS)
    page.get_by_text("Done with another part fitted").wait_for()
    page.locator(f"{PRESS} details.reason summary").first.click()
    yield "done with another part, a reason open"
    at(page, "#end")
    page.wait_for_selector("#end.current pre")
    yield "the record"
    at(page, "#start")
    page.check("input[value=right]")
    at(page, KEY)
    page.wait_for_selector(f"{KEY} .other-side")
    yield "the other side's readings"
    page.goto(address + GEARBOX + BACKLASH)
    fields = page.locator(f"{BACKLASH} .reading input")
    fields.first.wait_for()
    for number in range(fields.count()):
        fields.nth(number).fill("0.0200")
        fields.nth(number).blur()
    page.locator(".follows").wait_for()
    yield "what follows from readings"
    page.evaluate("setTimeout(() => { throw new Error('ours'); })")
    page.wait_for_selector("[data-broken]:visible")
    yield "an error in a script of ours"
    page.goto(address)
    page.locator("[data-wm-stopped] a").wait_for()
    yield "home, where work stopped"
    page.goto(address + "type-24/")
    page.locator("[data-wm-stopped] a").wait_for()
    yield "the machine, where work stopped"


@pytest.mark.parametrize("view", VIEWS)
def test_every_state_can_be_read_and_tapped(chromium, address, view):
    axe = pytest.importorskip("axe_playwright_python.sync_playwright", reason="axe-playwright-python is not installed").Axe()
    size, scheme, text = VIEWS[view]
    with chromium.new_context(viewport=size, color_scheme=scheme) as context:
        context.add_init_script(f"addEventListener('DOMContentLoaded', () => {{ document.documentElement.style.fontSize = '{text * 100}%'; }})" if text > 1 else "")
        page = context.new_page()
        for state in states(page, address):
            ours = page.locator(".thumbs").count() > 0
            assert page.evaluate("document.documentElement.scrollWidth") <= size["width"], state
            if text > 1:
                assert not ours or page.evaluate(CUT) == [] == page.evaluate(BROKEN), state
                continue
            assert page.evaluate(TARGETS if ours else SMALL) == [], state
            found = axe.run(page, options=AXE if ours else {"runOnly": RULES["runOnly"]})
            assert found.violations_count == 0, f"{state}: {found.generate_report()[:3000]}"


def test_where_storage_is_refused_each_page_can_still_be_read_and_tapped(chromium, address):
    axe = pytest.importorskip("axe_playwright_python.sync_playwright", reason="axe-playwright-python is not installed").Axe()
    refused = "{ get() { throw new DOMException('no', 'SecurityError'); } }"
    with chromium.new_context(viewport=PHONE) as context:
        context.add_init_script(f"for (const name of ['indexedDB', 'localStorage', 'caches']) Object.defineProperty(window, name, {refused});")
        page = context.new_page()
        errors = []                                             # of ours: the host's own script trips over storage too
        page.on("pageerror", lambda error: errors.append(error.stack) if "/witnessmark/" in (error.stack or "") else None)
        page.goto(f"{address}{BENCH}#start")
        page.get_by_text("This browser keeps nothing here").wait_for()
        page.fill("#serial", "1604")
        page.check("input[value=left]")
        at(page, KEY)
        page.click(f"{KEY} .tick")
        page.wait_for_selector(f"{KEY} .tick[aria-pressed=true]")
        assert axe.run(page, options=AXE).violations_count == 0 and page.evaluate(TARGETS) == []
        page.goto(f"{address}type-24/")
        page.get_by_text("This browser cannot keep pages here").wait_for()
        assert errors == []
