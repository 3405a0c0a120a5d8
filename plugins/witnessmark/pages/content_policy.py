"""The Content-Security-Policy of a page: nothing from elsewhere, and no script but files of the site.

The host's own inline scripts differ with the depth of a page, so each is let in by the hash of what the finished page holds.
"""

import re
from base64 import b64encode
from hashlib import sha256

#: A page of our own shell, which holds no script of its own.
PLAIN = ("default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; connect-src 'self'; "
         "manifest-src 'self'; worker-src 'self'; form-action 'none'; base-uri 'none'")

# Spelled without IGNORECASE so that each is searched for by its first sign: every page is looked through.
_SCRIPT = re.compile(r"<[sS][cC][rR][iI][pP][tT](?P<attributes>[^>]*)>(?P<text>.*?)</[sS][cC][rR][iI][pP][tT]>", re.DOTALL)
_NOT_RUN = re.compile(r"""\bsrc\s*=|\btype\s*=\s*["']?application/json\b""", re.IGNORECASE)
_STYLE = re.compile(r"style\s*=")
_STYLED = re.compile(r"<[a-z][^>]*\sstyle\s*=", re.IGNORECASE)
_META = '<meta http-equiv="Content-Security-Policy" content="{}">'
_FIRST = re.compile(r"<meta charset=[^>]*>", re.IGNORECASE)


def policy(html: str) -> str:
    """PLAIN, with the scripts that stand in the page; styles on elements (aligned cells of a hand-written table) where there are any."""
    hashes = dict.fromkeys(f"'sha256-{b64encode(sha256(found['text'].encode()).digest()).decode()}'"
                           for found in _SCRIPT.finditer(html) if not _NOT_RUN.search(found["attributes"]))
    text = PLAIN.replace("script-src 'self'", " ".join(["script-src 'self'", *hashes]))
    return f"{text}; style-src-attr 'unsafe-inline'" if _STYLE.search(html.lower()) and _STYLED.search(html) else text


def with_policy(html: str) -> str:
    """The finished page with its policy before the first script; a page that names no character set is not ours and stays."""
    return _FIRST.sub(lambda found: found[0] + _META.format(policy(html)), html, count=1)
