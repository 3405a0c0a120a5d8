"""What of a page a browser would run, fetch or lay over it: read with Python's own HTML parser, which knows nothing of ours."""

import re
from html.parser import HTMLParser
from pathlib import Path

_ADDRESSES = ("href", "src", "action", "formaction", "data", "poster", "srcset", "xlink:href", "background", "cite", "ping", "srcdoc")


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.found: set[str] = set()
        self._script: list[str] | None = None

    def handle_starttag(self, tag, attrs):
        self.found.add(f"<{tag}>")
        for name, value in attrs:
            value = re.sub(r"[\x00-\x20]", "", value or "")
            if name.startswith("on") or name == "srcdoc":
                self.found.add(f"{tag} {name}={value}")
            if name in _ADDRESSES and re.match(r"(?!https?:|data:image/|mailto:|tel:|data:,)[a-z][a-z0-9+.-]*:", value, re.IGNORECASE):
                self.found.add(f"{tag} {name}={value}")
            if (tag, name) in (("script", "src"), ("img", "src"), ("link", "href"), ("iframe", "src"), ("form", "action")) and re.match("https?:|//", value):
                self.found.add(f"{tag} {name}={value}")
            if tag == "meta" and name == "http-equiv":
                self.found.add(f"meta http-equiv={value}")
        if tag == "script" and ("type", "application/json") not in attrs:          # data is read, and never run
            self._script = [re.sub(r"^(\.\./)+", "", dict(attrs).get("src") or "")]

    def handle_data(self, data):
        if self._script is not None:
            self._script.append(data)

    def handle_endtag(self, tag):
        if tag == "script" and self._script is not None:
            # The host writes how deep a page lies, and its own settings, into its scripts.
            self.found.add("script " + re.sub(r'"(?:\.\./?)*\.?"|(?<=base": ")[^"]*', '"."', "".join(self._script)))
            self._script = None


def what_runs(html: str) -> set[str]:
    """Tags, scripts with their text, handlers and addresses that run or fetch, each as a line."""
    reader = _Reader()
    reader.feed(html)
    reader.close()
    return reader.found


def what_runs_in(site: Path) -> set[str]:
    """Of every page of a built site."""
    return set().union(*(what_runs(page.read_text(encoding="utf-8")) for page in site.rglob("*.html")))
