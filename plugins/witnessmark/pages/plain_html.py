"""What a hand-written page may hold once it is HTML: marks of text, tables, lists, pictures of the book, links.

All else is printed as the text it was typed as. Every tag that comes out is written anew from closed lists, so that it
does not matter how a browser would have read what went in.
"""

import re
from html import escape
from html.parser import HTMLParser

_TAGS = frozenset(
    "a abbr b blockquote br caption cite code col colgroup dd del details dfn div dl dt em figcaption figure h1 h2 h3 h4 h5 h6 hr i img "
    "input ins kbd li mark ol p pre q s samp section small span strong sub summary sup table tbody td tfoot th thead tr u ul var wbr".split())
_ANYWHERE = frozenset(("class", "id", "title", "lang", "dir", "role", "aria-hidden", "aria-label"))
_OF_TAG = {"a": {"href", "rel"}, "img": {"src", "alt", "width", "height", "loading"}, "ol": {"start", "type"}, "li": {"value"},
           "td": {"colspan", "rowspan", "align", "style"}, "th": {"colspan", "rowspan", "align", "scope", "style"},
           "details": {"open"}, "input": {"type", "disabled", "checked"}}
_ALIGNED = re.compile(r"text-align: ?(?:left|right|center);?")
_SCHEME = re.compile(r"[a-z][a-z0-9+.-]*:|[/\\\\]{2}", re.IGNORECASE)
_LEADS_OUT = ("http:", "https:", "mailto:", "tel:")
_UNSEEN = re.compile(r"[\x00-\x20\x7f-\xa0\u2028\u2029]")


def plain_html(html: str) -> str:
    """The same page with nothing in it that runs, calls out by itself, or stands over the page."""
    reader = _Reader()
    reader.feed(html)
    reader.close()
    return "".join(reader.parts)


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=False)
        self.parts: list[str] = []

    def handle_starttag(self, tag, attrs):
        if tag not in _TAGS or (tag == "input" and ("type", "checkbox") not in attrs):
            self.parts.append(escape(self.get_starttag_text() or f"<{tag}>"))
            return
        kept = "".join(f' {name}="{escape(value or "")}"' for name, value in attrs if _may_stand(tag, name, value or ""))
        self.parts.append(f"<{tag}{kept}>")

    def handle_endtag(self, tag):
        self.parts.append(f"</{tag}>" if tag in _TAGS else escape(f"</{tag}>"))

    def handle_data(self, data):
        self.parts.append(escape(data, quote=False))

    def handle_entityref(self, name):
        self.parts.append(f"&{name};")

    def handle_charref(self, name):
        self.parts.append(f"&#{name};")

    def handle_decl(self, decl):
        self.parts.append(escape(f"<!{decl}>"))

    def handle_pi(self, data):
        self.parts.append(escape(f"<?{data}>"))

    unknown_decl = handle_decl


def _may_stand(tag: str, name: str, value: str) -> bool:
    if name not in _ANYWHERE and name not in _OF_TAG.get(tag, ()):
        return False
    if name == "style":
        return _ALIGNED.fullmatch(value) is not None
    if name in ("href", "src"):
        scheme = _SCHEME.match(_UNSEEN.sub("", value))
        return scheme is None or (name == "href" and scheme[0].lower() in _LEADS_OUT)
    return True
