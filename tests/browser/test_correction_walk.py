"""One figure corrected, from a phone at the bench to the sheet that is stale: the page, its text, the command that reads it, the edit, the
comparison that stops it and lets it pass, the merge in a real repository, the site built again, and what old paper is told.
Each command and what it printed is shown with -s."""

import re
import subprocess

import pytest
from test_pages import PHONE
from workflow_run import environment, git, tools

from witnessmark.build import first_book

SOURCE = "procedures/saw-bench/pulley-press-on.yaml"
PAGE = "saw-bench/pulley-press-on/"


@pytest.fixture
def shop(tmp_path):
    """`shop("witnessmark check")` types a command in the book's folder; gives what it printed, and ends as it must."""
    book = tmp_path / "our-machines"
    given = environment(tools(tmp_path / "tools"))

    def typed(command: str, ends: int = 0) -> str:
        done = subprocess.run(command, shell=True, cwd=book, env=given, capture_output=True, text=True)
        print(f"$ {command}\n{done.stdout}{done.stderr}[ends with {done.returncode}]\n")
        assert done.returncode == ends, done.stdout + done.stderr
        return done.stdout + done.stderr

    for path, text in first_book().items():
        (book / path).parent.mkdir(parents=True, exist_ok=True)
        (book / path).write_text(text, encoding="utf-8")
    git(book, "init", "-q", "-b", "main")
    typed("witnessmark edition --on 2026-01-10")
    git(book, "add", ".")
    git(book, "commit", "-qm", "First edition")
    typed("mkdocs build --strict --quiet")
    typed.book = book
    return typed


def test_from_the_phone_to_the_stale_sheet(chromium, serve, shop):
    book = shop.book
    address = serve(book / "site", prefix="a/book/")
    with chromium.new_context(viewport=PHONE, permissions=["clipboard-read", "clipboard-write"]) as phone:
        page = phone.new_page()
        page.goto(f"{address}{PAGE}sheet/late/", wait_until="networkidle")
        old_code = re.search(r"[0-9A-Z]{4}-[0-9A-Z]{4}", page.inner_text("body"))[0]

        page.goto(f"{address}{PAGE}", wait_until="networkidle")
        page.locator("#spec-press-force .wm-role-ceiling a.wm-correct").first.click()
        page.wait_for_url("**/correct/#press-force.ceiling*")
        late = page.locator(".figures", has_text="14 short ton").first
        if not late.locator("form").count():
            late.get_by_role("button", name="Fill in the form").click()
        page.get_by_label("New figure and unit").fill("13 short ton")
        page.get_by_label("Condition").fill("clean and dry")
        page.get_by_label("Source and page, or how measured").fill("Notebook p. 9.")
        page.get_by_label("Serial", exact=True).fill("52")
        page.get_by_label("What happened").fill("A late hub cracked at 13.5 short tons.")
        page.get_by_label("Sheet code on the paper").fill(old_code)
        page.get_by_label("By whom").fill("fitter")
        late.get_by_role("button", name="Copy the text").click()
        page.get_by_text("Copied.").wait_for()
        letter = page.evaluate("navigator.clipboard.readText()")
        print(f"--- the text that leaves the phone\n{letter}---\n")

    (book.parent / "mail.txt").write_text(letter, encoding="utf-8")
    told = shop("witnessmark correct ../mail.txt")
    path, line = re.search(rf"({SOURCE}):(\d+):", told).groups()
    assert "It asks for: 13 short ton" in told and "It would move:" in told

    git(book, "switch", "-qc", "late-ceiling")
    lines = (book / path).read_text(encoding="utf-8").splitlines(keepends=True)
    lines[int(line) - 1] = lines[int(line) - 1].replace("14 short ton", "13 short ton")
    (book / path).write_text("".join(lines), encoding="utf-8")
    git(book, "commit", "-qam", "Late ceiling 13 short tons")
    stopped = shop("witnessmark compare main late-ceiling", ends=1)
    assert "'pulley-press-on/press-force' is another figure now and no correction says why" in stopped

    record = told.partition("In site_data/corrections.yaml:\n")[2]
    record = record.replace("(the day of the change)", "2026-01-31").replace("(fine, inspect or redo)", "inspect")
    (book / "site_data/corrections.yaml").write_text(record, encoding="utf-8")
    print(f"--- site_data/corrections.yaml, as it was printed and finished by hand\n{record}---\n")
    git(book, "add", ".")
    git(book, "commit", "-qm", "Say why")
    passed = shop("witnessmark compare main late-ceiling")
    assert "14 short ton (124 kN) -> 13 short ton (115 kN), -7.1 %, COR-1" in passed and f"late: {old_code} -> " in passed
    new_code = re.search(rf"late: {old_code} -> ([0-9A-Z-]+)", passed)[1]

    git(book, "switch", "-q", "main")
    print(f"$ git merge --no-ff late-ceiling\n{git(book, 'merge', '--no-ff', '-m', 'Take over the late ceiling', 'late-ceiling')}\n")
    shop("witnessmark check")
    shop("witnessmark edition --on 2026-02-01")
    git(book, "add", ".")
    git(book, "commit", "-qm", "Edition of 2026-02-01")
    shop("witnessmark edition --check")
    shop("mkdocs build --strict --quiet")

    with chromium.new_context(viewport=PHONE) as phone:
        page = phone.new_page()
        page.goto(f"{address}s/#{old_code}")
        page.get_by_text("SUPERSEDED. Do not work by this sheet.").wait_for()
        answer = page.locator("[data-answer]").inner_text()
        print(f"--- what {old_code} is told\n{answer}\n---\n")
        assert "INSPECT IT" in answer and "14 short ton" in answer and "13 short ton" in answer and "COR-1" in answer and new_code in answer
        page.get_by_role("link", name="The sheet that holds now").click()
        page.wait_for_url(f"**/{PAGE}sheet/late/")
        assert new_code in page.inner_text("body") and old_code not in page.inner_text("body")
        page.goto(f"{address}{PAGE}", wait_until="networkidle")
        assert "13 short ton" in page.locator("#spec-press-force .wm-role-ceiling").first.inner_text()
        assert "changed since 2026-01-10" in page.locator("#spec-press-force").inner_text()
        page.goto(f"{address}corrections/COR-1/")
        assert old_code in page.inner_text("body") and new_code in page.inner_text("body")
        page.goto(f"{address}s/#{new_code}")
        page.get_by_text(re.compile("Not changed in the book of")).wait_for()
