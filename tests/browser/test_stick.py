"""The copy for a stick, opened from a folder with no server: every link leads to a file, the search finds, and it says what it does not do."""

import json
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest
from test_pages import KINDS, PHONE

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def stick(tmp_path_factory):
    folder = tmp_path_factory.mktemp("stick") / "usb"
    environment = {**os.environ, "NO_MKDOCS_2_WARNING": "1", "PYTHONPATH": str(ROOT / "plugins"), "WITNESSMARK_STICK": "1"}
    built = subprocess.run([sys.executable, "-m", "mkdocs", "build", "--quiet", "--site-dir", str(folder)], cwd=ROOT, env=environment, capture_output=True, text=True)
    assert built.returncode == 0, built.stderr
    return folder


def test_every_link_leads_to_a_file(stick):
    for file in stick.rglob("*.html"):
        for target in re.findall(r'<a\b[^>]*?\shref="([^"#?]+)', file.read_text()):
            if not re.match(r"[a-z]+:|//|/", target):
                assert (file.parent / target).is_file(), f"{file.relative_to(stick)} -> {target}"


def test_pages_read_and_search_from_a_folder(chromium, stick):
    with chromium.new_context(viewport=PHONE) as context:
        context.add_init_script('addEventListener("securitypolicyviolation", event => (window.breaches ??= []).push(event.blockedURI));')
        page = context.new_page()
        errors = []
        page.on("console", lambda said: errors.append(said.text) if said.type == "error" else None)
        page.on("pageerror", lambda error: errors.append(str(error)))
        for path in KINDS.values():
            page.goto(f"file://{stick}/{path}index.html")
            assert page.locator("h1").first.inner_text() and page.evaluate("window.breaches ?? []") == [] and errors == [], path
        page.goto(f"file://{stick}/index.html")
        page.fill("#wm-search-input", "460 lb-ft")
        page.locator(".wm-search__hit").first.click()
        page.wait_for_url(re.compile(r"flycrank-press-on/index\.html"))
        assert "flycrank-press-on/index.html#" in page.url and errors == []


def test_an_old_sheet_is_asked_for_with_no_server(chromium, stick):
    """The codes of the demonstration's first edition, of today's, and of nobody: from the same data as on the web."""
    editions = json.loads((stick / "assets/witnessmark/editions/index.json").read_text(encoding="utf-8"))
    told = {code: sheet for prefix in editions["prefixes"] for code, sheet in json.loads((stick / f"assets/witnessmark/editions/{prefix}.json").read_text(encoding="utf-8"))["codes"].items()}
    old = next(code for code, sheet in told.items() if sheet["state"] == "superseded" and sheet["already done"] == "inspect" and sheet["changes"])
    now = next(code for code, sheet in told.items() if sheet["state"] == "same" and sheet["now"] == code)
    page = chromium.new_page(viewport=PHONE)
    errors = []
    page.on("console", lambda said: errors.append(said.text) if said.type in ("error", "warning") else None)
    page.on("pageerror", lambda error: errors.append(str(error)))
    page.goto(f"file://{stick}/s/index.html#{old}")
    page.get_by_text("SUPERSEDED. Do not work by this sheet.").wait_for()
    answer = page.locator("[data-answer]").inner_text()
    assert "INSPECT IT" in answer and told[old]["changes"][0]["what"] in answer
    page.get_by_label("Sheet code").fill(now.lower().replace("-", ""))
    page.get_by_role("button", name="Ask").click()
    page.get_by_text(re.compile("Not changed in the book of .*when this copy for a stick was made")).wait_for()
    page.locator("[data-answer]").get_by_role("link").first.click()
    page.wait_for_url(re.compile(r"sheet/.*/index\.html"))
    page.goto(f"file://{stick}/s/index.html#0000-0000")
    page.get_by_text("Unknown here").wait_for()
    assert errors == []
    page.close()


def test_it_says_what_is_not_promised(chromium, stick):
    page = chromium.new_page()
    for path in ("type-24/flycrank-press-on/", "type-24/flycrank-press-on/bench/"):
        page.goto(f"file://{stick}/{path}index.html")
        assert "not promised here" in page.locator("[data-wm-book]").inner_text()
    assert page.locator(".step:visible").count() == page.locator(".step").count() > 8
    page.close()
