"""Measures the demonstration as a phone meets it for the first time: Lighthouse on a throttled phone, the middle of five runs a page.

    python benchmarks/phone.py
    python benchmarks/phone.py --repeat 1 --pages bench --keep reports/

Needs npx (Node.js) and Chromium; where one of them is missing it says so and measures nothing. The site is served
from a sub-directory with gzip, as hosts serve it, and the bytes told are the bodies this server sent.
"""

import argparse
import gzip
import json
import mimetypes
import os
import shutil
import statistics
import subprocess
import sys
import tempfile
import threading
from functools import partial
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

ROOT = Path(__file__).parents[1]
LIGHTHOUSE = "lighthouse@12.8.2"               # the last that runs on Node.js 18 and 20
PAGES = {"home": "", "procedure": "type-24/flycrank-press-on/", "bench": "type-24/flycrank-press-on/bench/"}
QUIET = "--headless=new --no-sandbox --disable-background-networking --disable-component-update --disable-sync --no-first-run"
GOAL = {"performance": 0.95, "accessibility": 1.0}
HEAVIEST = 150.0                               # kB sent for the first visit of a procedure
TEXT = {"text/html", "text/css", "text/javascript", "application/javascript", "application/json", "image/svg+xml", "application/manifest+json"}


class Packed(BaseHTTPRequestHandler):
    """Files of one folder under /book/, text compressed, kept for a day as hosts say; `server.sent` counts the bodies."""

    protocol_version = "HTTP/1.1"

    def __init__(self, *given, folder: Path):
        self.folder = folder
        super().__init__(*given)

    def do_GET(self):
        inside = self.path.split("?")[0].removeprefix("/book/")
        file = (self.folder / inside).resolve()
        file = file / "index.html" if file.is_dir() else file
        if not self.path.startswith("/book/") or not file.is_relative_to(self.folder) or not file.is_file():
            self.send_error(404)
            return
        kind = "application/manifest+json" if file.suffix == ".webmanifest" else mimetypes.guess_type(file.name)[0] or "application/octet-stream"
        body = file.read_bytes()
        packs = kind in TEXT and "gzip" in self.headers.get("Accept-Encoding", "")
        body = gzip.compress(body, 6, mtime=0) if packs else body
        self.send_response(200)
        self.send_header("Content-Type", f"{kind}; charset=utf-8" if kind in TEXT else kind)
        self.send_header("Content-Length", str(len(body)))
        self.send_header("Cache-Control", "max-age=86400")
        if packs:
            self.send_header("Content-Encoding", "gzip")
        self.end_headers()
        self.wfile.write(body)
        if file.suffix != ".map":              # the map of a script is asked for by whoever takes it apart, never by a reader's phone
            with self.server.counting:
                self.server.sent += len(body)

    def log_message(self, *_):
        pass


def served(folder: Path) -> ThreadingHTTPServer:
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(Packed, folder=folder.resolve()))
    server.sent, server.counting = 0, threading.Lock()
    threading.Thread(target=server.serve_forever, daemon=True).start()
    return server


def built(folder: Path) -> Path:
    """The demonstration book of this repository, built into the folder."""
    command = [sys.executable, "-m", "mkdocs", "build", "--quiet", "--site-dir", str(folder)]
    done = subprocess.run(command, cwd=ROOT, env={**os.environ, "NO_MKDOCS_2_WARNING": "1"}, capture_output=True, text=True)
    if done.returncode:
        sys.exit(f"The book could not be built:\n{done.stdout}{done.stderr}")
    return folder


def report(address: str, chromium: str, into: Path) -> dict:
    """One run of Lighthouse, with its own picture of a slow phone, as the JSON it writes."""
    command = ["npx", "--yes", LIGHTHOUSE, address, "--quiet", "--no-enable-error-reporting", "--only-categories=performance,accessibility",
               "--form-factor=mobile", "--throttling-method=simulate", "--output=json", f"--output-path={into}", f"--chrome-flags={QUIET}"]
    done = subprocess.run(command, env={**os.environ, "CHROME_PATH": chromium}, capture_output=True, text=True)
    if done.returncode:
        sys.exit(f"{LIGHTHOUSE} failed:\n{(done.stdout + done.stderr)[-2000:]}")
    return json.loads(into.read_text())


def shown(name: str, runs: list[dict], sent: list[int]) -> None:
    middle = {goal: statistics.median(run["categories"][goal]["score"] for run in runs) for goal in GOAL}
    timed = [statistics.median(run["audits"][each]["numericValue"] for run in runs) for each in
             ("first-contentful-paint", "largest-contentful-paint", "total-blocking-time", "cumulative-layout-shift")]
    weight = statistics.median(sent) / 1e3
    missed = [goal for goal, least in GOAL.items() if middle[goal] < least] + (["weight"] if name == "procedure" and weight > HEAVIEST else [])
    least = min(run["categories"]["performance"]["score"] for run in runs)
    print(f"  {name:10} {middle['performance']:11.2f} {least:6.2f} {middle['accessibility']:13.2f} {timed[0] / 1e3:8.2f} {timed[1] / 1e3:8.2f} {timed[2]:9.0f} "
          f"{timed[3]:6.3f} {weight:8.1f}   {'MISSED: ' + ', '.join(missed) if missed else 'met'}", flush=True)


def main() -> None:
    asked = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    asked.add_argument("--repeat", type=int, default=5, help="runs a page; the middle one is told")
    asked.add_argument("--pages", nargs="+", choices=PAGES, default=list(PAGES))
    asked.add_argument("--keep", type=Path, help="leave the reports in this folder")
    given = asked.parse_args()
    chromium = os.environ.get("CHROMIUM") or next(filter(None, map(shutil.which, ["chromium", "chromium-browser", "google-chrome"])), None)
    if not shutil.which("npx") or not chromium:
        print(f"\nNot measured on a phone: no {'Chromium' if shutil.which('npx') else 'npx'} on this machine.")
        return
    with tempfile.TemporaryDirectory() as passing:
        server = served(built(Path(passing) / "site"))
        reports = given.keep or Path(passing)
        reports.mkdir(parents=True, exist_ok=True)
        print(f"\nOn a throttled phone, {LIGHTHOUSE}, the middle of {given.repeat}; asked: performance {GOAL['performance']}, accessibility 1, procedure at most {HEAVIEST:.0f} kB")
        print(f"  {'':10} {'performance':>11} {'least':>6} {'accessibility':>13} {'first s':>8} {'large s':>8} {'block ms':>9} {'shift':>6} {'kB sent':>8}")
        for name in given.pages:
            runs, sent = [], []
            for number in range(given.repeat):
                before = server.sent
                runs.append(report(f"http://127.0.0.1:{server.server_port}/book/{PAGES[name]}", chromium, reports / f"{name}-{number + 1}.json"))
                sent.append(server.sent - before)
            shown(name, runs, sent)
        server.shutdown()


if __name__ == "__main__":
    main()
