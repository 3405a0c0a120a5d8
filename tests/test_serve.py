"""`mkdocs serve` while its author writes: a mistake shows on the page, the last good page stays, a mend takes it away."""

import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from contextlib import contextmanager

import pytest
from small_book import PROCEDURE, sources
from test_mkdocs_plugin import CONFIG, ENVIRONMENT

BROKEN = PROCEDURE.replace("cautions: [HZ-1]", "cautions: [HZ-7]")


@pytest.fixture
def folder(tmp_path):
    for file in sources():
        path = tmp_path / file.path
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(file.text, encoding="utf-8")
    (tmp_path / "mkdocs.yml").write_text(CONFIG.replace("https://forge.example/shop/book", "https://forge.example/book"))
    return tmp_path


@contextmanager
def served(folder):
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    command = [sys.executable, "-m", "mkdocs", "serve", "--quiet", "-a", f"127.0.0.1:{port}"]
    with subprocess.Popen(command, cwd=folder, env=ENVIRONMENT, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL) as server:
        try:
            yield f"http://127.0.0.1:{port}/"
        finally:
            server.terminate()


def page_when(address: str, holds) -> str:
    """The page once `holds` is true of it; the last one seen when that never comes."""
    text = ""
    for _ in range(120):
        try:
            with urllib.request.urlopen(address) as answer:
                text = answer.read().decode()
        except (urllib.error.URLError, ConnectionError):
            text = ""
        if holds(text):
            return text
        time.sleep(0.25)
    return text


def test_a_mistake_shows_on_the_page_and_a_mend_takes_it_away(folder):
    source = folder / "procedures/hoist/drum.yaml"
    with served(folder) as address:
        drum = address + "hoist/drum/"
        good = page_when(drum, lambda text: "Drum press force" in text)
        assert "Drum press force" in good and "This book has findings" not in good
        source.write_text(BROKEN, encoding="utf-8")
        broken = page_when(drum, lambda text: "This book has findings" in text)
        assert "drum.yaml:34:5: error: there is no caution" in broken and "Drum press force" in broken
        source.write_text(PROCEDURE, encoding="utf-8")
        mended = page_when(drum, lambda text: text and "This book has findings" not in text)
        assert "Drum press force" in mended and "This book has findings" not in mended


def test_a_book_that_is_broken_from_the_start_is_served_with_its_findings(folder):
    (folder / "procedures/hoist/drum.yaml").write_text(BROKEN, encoding="utf-8")
    with served(folder) as address:
        assert "there is no caution" in page_when(address, lambda text: "This book has findings" in text)
