"""A copy of the finished site that reads from a stick: no server stands behind `file://`, so a folder is no page, no module loads and nothing is fetched."""

import re

from ..core.edition import TOLD_IN
from . import keep_words
from .classic_script import classic
from .fill_template import static_files

#: Folders whose data pages fetch, and from a stick take as scripts.
DATA_FOLDERS = ("search", TOLD_IN)
_LINK = re.compile(r'(<a\b[^>]*?\shref=")([^"#?]+)((?:[?#][^"]*)?")')
_SCHEME = re.compile(r"[A-Za-z][A-Za-z0-9+.-]*:|//")
_NEEDS_A_SERVER = re.compile(r'<script type="module"[^>]*></script>\s*|<link rel="manifest"[^>]*>\s*|(?<=<main) data-coming')
#: The page that is asked by an old sheet's code answers from a stick too: whoever has no network has old paper.
_ASKS = re.compile(r'<script type="module" src="([^"]*assets/witnessmark/ask/)ask\.js"></script>')
_POLICY = re.compile(r'<meta http-equiv="Content-Security-Policy" content="[^"]*">')
_BOOK_LINE = re.compile(r"(<p\b[^>]*\sdata-wm-book>)(.*?)(</p>)", re.DOTALL)


def for_stick(html: str) -> str:
    """A page with links to files, without what needs a server, and with words that say so."""
    html = _NEEDS_A_SERVER.sub("", _ASKS.sub(r'<script src="\1stick.js" defer></script>', _LINK.sub(_to_file, html)))
    html = _POLICY.sub(lambda found: found[0].replace("&#39;self&#39;", "'self'").replace("'self'", "'self' file:"), html)
    return _BOOK_LINE.sub(lambda found: f"{found[1]}{found[2]} {keep_words.STICK}{found[3]}", html)


def _to_file(found: re.Match) -> str:
    before, target, after = found.groups()
    if _SCHEME.match(target):
        return found[0]
    if target.split("/")[-1] in (".", ".."):
        target += "/"
    return f"{before}{target}{'index.html' if target.endswith('/') else ''}{after}"


def data_script(path: str, text: str) -> tuple[str, str]:
    """Data as a script, since a page from a file may not fetch: its path and text."""
    return f"{path.removesuffix('.json')}.js", f'(window.witnessmarkSearchData ??= {{}})["{path}"] = {text.rstrip()};\n'


def asking_script() -> tuple[str, str]:
    """The script of the page that is asked by a sheet's code, in one piece: its path and text."""
    files = static_files()
    return "assets/witnessmark/ask/stick.js", classic("ask/ask.js", lambda path: files[path].decode())
