"""What an author sees on every page while the book is served with a mistake in it: the findings, and that the page is old."""

from typing import Iterable

from ..core.finding import Finding
from .fill_template import fill, static_files
from .offline import offline_files
from .site import Page, SitePages


def with_notice(site: SitePages | None, findings: Iterable[Finding], title: str) -> SitePages:
    """The last good site with the findings on top of each page; a first page of findings alone where there was none."""
    if site is None:
        files = {f"assets/witnessmark/{path}": content for path, content in static_files().items()}
        files.update(offline_files(title))
        site = SitePages((Page("", title, ""),), files)
    notice = fill("notice", findings=[finding.line() for finding in findings], old=any(page.html for page in site.pages))
    return SitePages(tuple(Page(page.url, page.title, notice + page.html, page.toc, page.source_path, page.description)
                           for page in site.pages), site.files, site.about)
