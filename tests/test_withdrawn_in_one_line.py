"""Any one figure of the demonstration is withdrawn by one line more, and the book still builds under --strict.

Whoever doubts a figure at night must not have to mend a warning elsewhere before the site can say DO NOT USE."""

import os
import re
import shutil
import subprocess
import sys
from collections import Counter
from pathlib import Path

import pytest

from witnessmark.loading.load_book import FOLDERS, load_book
from witnessmark.loading.source_files import SourceFile, yaml_sources
from witnessmark.rules.table import check_book
from witnessmark.workings.derive import derive_book

ROOT = Path(__file__).parent.parent
DEMO = tuple(yaml_sources(ROOT, FOLDERS))
DOUBT = "in doubt: Two leaves differ."
FIGURES = re.compile(r"(?P<indent> *)(?:is|from): .*|.*[{,] ?(?:is|from): .*\}")
#: What presses, and the shop and machines it rests on.
PRESSED = tuple(file for file in DEMO if "/machines/" in file.path or not file.path.startswith("procedures/") or "kind: press force" in file.text)


def doubted(line: str) -> list[str]:
    """The line with its figure withdrawn, where it is the line of one."""
    match = FIGURES.fullmatch(line)
    if match is None:
        return [line]
    return [f"{match['indent']}{DOUBT}", line] if match["indent"] is not None else [f"{line[:-1]}, {DOUBT}}}"]


def withdrawals(text: str) -> list[str]:
    """The text once for each figure in it, with that figure withdrawn."""
    lines = text.split("\n")
    return ["\n".join([*lines[:at], *doubted(line), *lines[at + 1:]]) for at, line in enumerate(lines) if FIGURES.fullmatch(line)]


def said(files) -> Counter:
    """How many findings of each rule."""
    book, found = load_book(files)
    derived, more = derive_book(book)
    return Counter(finding.rule for finding in (*found, *more, *check_book(book, derived)))


@pytest.mark.parametrize("path", [file.path for file in DEMO if withdrawals(file.text)])
def test_a_files_figures_withdrawn_together_give_no_finding(path):
    text = "\n".join(line for file in DEMO if file.path == path for known in file.text.split("\n") for line in doubted(known))
    assert text.count(DOUBT) and said(SourceFile(path, text) if file.path == path else file for file in DEMO) == {}


@pytest.fixture(scope="module")
def before():
    return said(PRESSED)


@pytest.mark.parametrize("path", [file.path for file in PRESSED if withdrawals(file.text)])
def test_every_figure_that_marks_may_rest_on_is_withdrawn_alone_without_a_finding(path, before):
    """One alone: a target in doubt would hide what a floor in doubt says. Only what presses, and what it rests on, is read:
    what the procedures left out would have been asked for is no finding of the withdrawal."""
    text = next(file.text for file in PRESSED if file.path == path)
    for withdrawn in withdrawals(text):
        after = said(SourceFile(path, withdrawn) if file.path == path else file for file in PRESSED)
        assert after - before == {}, set(withdrawn.split("\n")) - set(text.split("\n"))


def test_a_figure_of_the_machine_withdrawn_leaves_a_strict_build_green_and_its_marks_gone(tmp_path):
    for name in (*FOLDERS, "mkdocs.yml"):
        (shutil.copytree if (ROOT / name).is_dir() else shutil.copy)(ROOT / name, tmp_path / name)
    machine = tmp_path / "site_data/machines/type-24.yaml"
    text = machine.read_text(encoding="utf-8")
    label = "    label: Slip torque at the jackshaft\n"
    assert text.count(label) == 1
    machine.write_text(text.replace(label, f"{label}    {DOUBT}\n"), encoding="utf-8")
    built = subprocess.run([sys.executable, "-m", "mkdocs", "build", "--quiet", "--strict"], cwd=tmp_path, capture_output=True, text=True,
                           env={**os.environ, "NO_MKDOCS_2_WARNING": "1"})
    assert built.returncode == 0, built.stderr
    page = (tmp_path / "site/type-24/flycrank-press-on/index.html").read_text(encoding="utf-8")
    assert 'data-share="never"' not in page and "REFUSED" in page
