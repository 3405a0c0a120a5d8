"""What an author sees on every page while the book is served with a mistake in it: the findings, and that the page is old."""

from typing import Iterable

from ..core.finding import Finding
from .fill_template import fill, static_files
from .offline import offline_files
from .site import Page, SitePages


#: Stands in every page of the theme; what comes after it is the page.
_ABOVE = '<div class="wm-news" data-wm-news hidden></div>'


def notice_of(findings: Iterable[Finding], old: bool = True) -> str:
    return fill("notice", findings=[finding.line() for finding in findings], old=old)


def under_notice(html: str, notice: str) -> str:
    """A finished page of the site with a notice at its head."""
    return html.replace(_ABOVE, _ABOVE + notice, 1)


def with_notice(site: SitePages | None, findings: Iterable[Finding], title: str) -> SitePages:
    """The last good site with the findings on top of each page; a first page of findings alone where there was none."""
    if site is None:
        files = {f"assets/witnessmark/{path}": content for path, content in static_files().items()}
        files.update(offline_files(title))
        site = SitePages((Page("", title, ""),), files)
    notice = notice_of(findings, any(page.html for page in site.pages))
    return SitePages(tuple(Page(page.url, page.title, notice + page.html, page.toc, page.source_path, page.description)
                           for page in site.pages), site.files, site.about)
