"""What a phone keeps of a machine: every file it takes to read, search and look up that machine with no network, each by its hash.

A static host replaces files one by one. A build is whole only when every file is the one the list names.
"""

import json
from hashlib import sha256
from typing import Iterable, Mapping

KEEP = "assets/witnessmark/keep"
#: Shown where a page is neither kept nor to be had.
AWAY = f"{KEEP}/away.html"
_LEFT_OUT_FOLDERS = ("schema/", f"{KEEP}/lists/", "assets/javascripts/lunr/", "assets/javascripts/workers/")
_LEFT_OUT_FILES = ("book.json", "sw.js", "404.html", "sitemap.xml", "sitemap.xml.gz")
#: What is for printing only is kept as pages, not again as files: they are many times as heavy.
_LEFT_OUT_ENDS = (".map", ".schema.json", ".LICENSE.txt", ".VERSION.txt", ".pdf")


def is_kept(path: str) -> bool:
    """Whether a file of the site is ever needed to read it."""
    return not (path.startswith(_LEFT_OUT_FOLDERS) or path in _LEFT_OUT_FILES or path.endswith(_LEFT_OUT_ENDS))


def keep_files(files: Mapping[str, tuple[str, int]], machines: Mapping[str, str], date: str) -> dict[str, str]:
    """`files`: path -> (SHA-256 in hex, bytes) of the finished site; `machines`: id -> title. One list a machine, and an index of them."""
    kept = {path: files[path] for path in sorted(files) if is_kept(path)}
    made, index = {}, {}
    for machine, title in machines.items():
        others = tuple(f"{other}/" for other in machines if other != machine)
        mine = {path: entry for path, entry in kept.items() if not path.startswith(others)}
        text = _json({"machine": machine, "title": title, "date": date, "files": mine})
        made[f"{KEEP}/lists/{machine}.json"] = text
        index[machine] = {"title": title, "date": date, "files": len(mine), "bytes": sum(size for _, size in mine.values()),
                          "list": sha256(text.encode()).hexdigest()}
    return {**made, f"{KEEP}/lists/index.json": _json(index)}


def _json(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


def web_manifest(title: str, icons: Iterable[tuple[str, str, str]]) -> str:
    """What a browser asks for to install the book. `icons`: (path, type, sizes)."""
    return _json({"name": title, "short_name": title[:12].strip(), "id": "./", "start_url": "./", "scope": "./", "display": "standalone",
                  "background_color": "#ffffff", "theme_color": "#000000",
                  "icons": [{"src": path, "type": kind, "sizes": sizes, "purpose": "any maskable"} for path, kind, sizes in icons]})
