"""The gate of WeasyPrint, which comes with the extra [pdf]: finished pages of ours as PDF, and many of them bound together."""

from typing import Callable, Iterable, NamedTuple

SIZES = {"A4": "A4", "Letter": "Letter"}
_BASE = "https://book.invalid/"           # a name that leads nowhere, by RFC 2606: what stands below it is read from the site
_KINDS = {"css": "text/css", "woff2": "font/woff2", "svg": "image/svg+xml", "png": "image/png", "jpg": "image/jpeg", "jpeg": "image/jpeg"}


class NoPdf(Exception):
    """Why there is no PDF here, and the one thing that is missing."""


class Bound(NamedTuple):
    """What lies in a binder: a title for its contents, and the page."""

    title: str
    html: str
    url: str


class Press:
    """Sets pages of one site in one paper size. `read` gives the bytes of a file by its address from the site's root."""

    def __init__(self, read: Callable[[str], bytes | None], size: str):
        try:
            import weasyprint
            from weasyprint.text.fonts import FontConfiguration
            from weasyprint.urls import URLFetcher, URLFetcherResponse
        except ImportError:
            raise NoPdf("PDF needs the extra [pdf]: pip install 'witnessmark[pdf]'") from None
        except OSError:
            raise NoPdf("PDF needs Pango from the system: on Debian or Ubuntu apt-get install libpangoft2-1.0-0") from None
        class OfTheSite(URLFetcher):
            """Nothing is fetched from anywhere else, whatever a page names."""

            def fetch(self, url, headers=None):
                data = read(url.removeprefix(_BASE)) if url.startswith(_BASE) else None
                if data is None:
                    raise ValueError(f"{url} is no file of this site")
                return URLFetcherResponse(url, data, {"Content-Type": _KINDS.get(url.rpartition(".")[2], "application/octet-stream")})

        self._print, self._fetcher = weasyprint, OfTheSite(allowed_protocols=(), fail_on_errors=True)
        self._fonts = FontConfiguration()
        self._size = weasyprint.CSS(string=f"@page {{ size: {SIZES[size]} }}")
        self._set: dict[str, object] = {}

    def pdf(self, html: str, url: str) -> bytes:
        """One page of ours as PDF: text to select, bookmarks, its fonts inside, tagged after PDF/UA."""
        return self._document(html, url).write_pdf(pdf_variant="pdf/ua-1")

    def count(self, html: str, url: str) -> int:
        return len(self._document(html, url).pages)

    def bound(self, parts: Iterable[Bound]) -> bytes:
        """Several pages one behind the other."""
        documents = [self._document(part.html, part.url) for part in parts]
        return documents[0].copy([page for document in documents for page in document.pages]).write_pdf(pdf_variant="pdf/ua-1")

    def _document(self, html: str, url: str):
        """Set once, however often it is wanted."""
        if url not in self._set:
            page = self._print.HTML(string=html, base_url=f"{_BASE}{url}", url_fetcher=self._fetcher)
            self._set[url] = page.render(stylesheets=[self._size], font_config=self._fonts)
        return self._set[url]
