"""Chromium and a static server for the tests that need a browser.

Without Chromium or Playwright these tests are skipped with the reason; where CI is set they fail, so that a machine
that is meant to run them cannot pass by having nothing to run them with.
"""

import os
import shutil
import subprocess
import sys
import threading
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(Path(__file__).parent))  # the books the tests share stand beside them (search_book.py)

QUIET = [
    "--no-sandbox",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-default-apps",
    "--disable-extensions",
    "--disable-sync",
    "--no-first-run",
]


def _cannot(reason: str):
    (pytest.fail if os.environ.get("CI") else pytest.skip)(reason)


@pytest.fixture(scope="session")
def chromium():
    """The system's Chromium as a Playwright browser. CHROMIUM names another one."""
    path = os.environ.get("CHROMIUM") or next(filter(None, map(shutil.which, ["chromium", "chromium-browser", "google-chrome"])), None)
    if not path or not Path(path).exists():
        _cannot("no Chromium on this machine (on Debian: apt-get install chromium; or set CHROMIUM to its path)")
    try:
        from playwright.sync_api import sync_playwright
    except ImportError:
        _cannot("Playwright is not installed (pip install playwright)")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=path, args=QUIET)
        yield browser
        browser.close()


class _Handler(SimpleHTTPRequestHandler):
    """Serves one folder under one prefix and nothing beside it, with the headers given."""

    prefix = ""
    headers_sent: dict = {}

    def translate_path(self, path):
        inside = path.split("?")[0].split("#")[0]
        if not inside.startswith("/" + self.prefix):
            return os.path.join(self.directory, "no such place")
        return super().translate_path("/" + path[len(self.prefix) + 1 :])

    def end_headers(self):
        for name, value in self.headers_sent.items():
            self.send_header(name, value)
        self.send_header("Cache-Control", "no-store")
        super().end_headers()

    def log_message(self, *_):
        pass


@pytest.fixture(scope="session")
def serve():
    """`serve(folder, prefix="book/", headers={})` -> the address of the folder, ending in the prefix, on loopback.

    `serve.stop(address)` takes the server away, as a phone loses its network."""
    servers = {}

    def start(folder, prefix: str = "book/", headers: dict | None = None) -> str:
        handler = type("Handler", (_Handler,), {"prefix": prefix, "headers_sent": headers or {}})
        server = ThreadingHTTPServer(("127.0.0.1", 0), partial(handler, directory=str(folder)))
        threading.Thread(target=server.serve_forever, daemon=True).start()
        address = f"http://127.0.0.1:{server.server_port}/{prefix}"
        servers[address] = server
        return address

    def stop(address: str) -> None:
        server = servers.pop(address)
        server.shutdown()
        server.server_close()

    start.stop = stop
    yield start
    for address in list(servers):
        stop(address)


@pytest.fixture(scope="session")
def demo_site(tmp_path_factory) -> Path:
    """The demo book of this repository, built once into a folder of its own."""
    if not (ROOT / "mkdocs.yml").exists():
        pytest.skip("the repository has no mkdocs.yml yet")
    folder = tmp_path_factory.mktemp("demo") / "site"
    command = [sys.executable, "-m", "mkdocs", "build", "--quiet", "--site-dir", str(folder)]
    environment = {**os.environ, "NO_MKDOCS_2_WARNING": "1", "PYTHONPATH": str(ROOT / "plugins")}
    built = subprocess.run(command, cwd=ROOT, env=environment, capture_output=True, text=True)
    assert built.returncode == 0, built.stdout + built.stderr
    return folder
