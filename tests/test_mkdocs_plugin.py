"""The plugin inside MkDocs: a book built as its author would build it."""

import json
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest
from small_book import PROCEDURE, sources

CONFIG = """\
site_name: Small
docs_dir: procedures
repo_url: https://forge.example/shop/book
edit_uri: edit/main/
theme: {name: material, font: false, features: [content.action.edit]}
plugins: [witnessmark]
"""
#: The code that is tested, wherever it lies, and nothing else of this machine's settings.
ENVIRONMENT = {"NO_MKDOCS_2_WARNING": "1", "PATH": "/usr/bin:/bin", "LC_ALL": "C.UTF-8", "PYTHONPATH": os.pathsep.join(sys.path)}


def build(folder: Path, procedure: str = PROCEDURE, *flags: str, config: str = "", settings: str = "[witnessmark]", **changed: str) -> subprocess.CompletedProcess:
    for file in sources(procedure, **changed):
        path = folder / file.path
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(file.text, encoding="utf-8")
    (folder / "mkdocs.yml").write_text(CONFIG.replace("[witnessmark]", settings) + config)
    return subprocess.run([sys.executable, "-m", "mkdocs", "build", *flags], cwd=folder, capture_output=True, text=True,
                          env=ENVIRONMENT)


def build_with_pdf(folder: Path, size: str = "A4") -> subprocess.CompletedProcess:
    return build(folder, PROCEDURE, settings=f"[{{witnessmark: {{pdf: {size}}}}}]")


def test_each_source_has_its_page_sheets_and_edit_link(tmp_path):
    assert build(tmp_path, PROCEDURE, "--strict").returncode == 0
    site = tmp_path / "site"
    page = (site / "hoist/drum/index.html").read_text()
    assert "https://forge.example/shop/book/edit/main/procedures/hoist/drum.yaml" in page
    for variant in ("early", "late"):
        assert (site / f"hoist/drum/sheet/{variant}/index.html").is_file()
    assert (site / "book.json").is_file() and not list(site.rglob("*.yaml"))


def test_the_settings_may_be_named_as_a_reader_of_mkdocs_would(tmp_path):
    """With -f the host hands the path on as it was typed: relative."""
    done = build(tmp_path, PROCEDURE, "-f", "mkdocs.yml")
    assert done.returncode == 0 and "Traceback" not in done.stderr
    assert (tmp_path / "site/hoist/drum/sheet/late/index.html").is_file()


def test_an_error_ends_the_build_with_its_line_and_no_traceback(tmp_path):
    done = build(tmp_path, PROCEDURE.replace("HZ-1", "HZ-7"))
    assert done.returncode == 1
    assert "procedures/hoist/drum.yaml:34:5: error: there is no caution 'HZ-7'" in done.stderr
    assert "Traceback" not in done.stderr and not (tmp_path / "site/hoist/drum/index.html").exists()


def test_a_warning_fails_only_a_strict_build(tmp_path):
    slack = PROCEDURE.replace("grade: 5", "grade: 8").replace("55 lbf·ft", "20 lbf·ft")
    done = build(tmp_path, slack)
    assert done.returncode == 0 and "warning: 'bolt'" in done.stderr
    assert build(tmp_path, slack, "--strict").returncode == 1


def test_the_setting_puts_each_sheet_and_a_binder_into_the_site_as_pdf(tmp_path):
    pytest.importorskip("pypdf")
    done = build_with_pdf(tmp_path)
    if "Pango" in done.stderr or "extra [pdf]" in done.stderr:
        pytest.skip(done.stderr.strip().splitlines()[-1])
    assert done.returncode == 0, done.stderr
    for name in ("hoist/drum/sheet/early/sheet.pdf", "hoist/drum/sheet/late/sheet.pdf", "hoist/plan/hand-over/late/binder.pdf"):
        assert (tmp_path / "site" / name).read_bytes().startswith(b"%PDF-")
    assert 'href="late/sheet.pdf"' in (tmp_path / "site/hoist/drum/sheet/index.html").read_text()
    offered = re.findall(r'href="([^"]*binder\.pdf)"', (tmp_path / "site/hoist/index.html").read_text())
    assert len(offered) == 3 and all((tmp_path / "site/hoist" / link).is_file() for link in offered), offered
    kept = json.loads((tmp_path / "site/assets/witnessmark/keep/lists/hoist.json").read_text())["files"]
    assert not [path for path in kept if path.endswith(".pdf")] and "hoist/drum/leaves/late/index.html" in kept


def test_the_setting_takes_the_sizes_of_paper_only(tmp_path):
    done = build_with_pdf(tmp_path, "A5")
    assert done.returncode == 1 and "A4" in done.stderr and "Traceback" not in done.stderr
