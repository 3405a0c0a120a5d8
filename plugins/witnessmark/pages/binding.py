"""Sheets as PDF: one file for each, and binders for a machine and for each variant of it."""

from dataclasses import replace
from typing import Iterator, NamedTuple

from . import words
from .address import binder_url, root_from
from .fill_template import fill
from .paper_pages import Binder
from .pdf import Bound, Press
from .site import SitePages

_SHEET = "/sheet/"


class Printed(NamedTuple):
    """A finished file: `name` for a folder of its own, `url` its place in the site."""

    name: str
    url: str
    data: bytes


def how_many(site: SitePages) -> int:
    return len(_sheets(site)) + len(site.binders)


def printed(site: SitePages, press: Press) -> Iterator[Printed]:
    """Every sheet, then every binder, one after another: long work tells how far it is."""
    for machine, procedure, variant, url in _sheets(site):
        yield Printed(f"{machine}/{procedure}-{variant}.pdf", f"{url}sheet.pdf", press.pdf(_page(site, url), url))
    for binder in site.binders:
        name = f"binder-{binder.variant}" if binder.variant else "binder"
        yield Printed(f"{binder.machine}/{name}.pdf", binder_url(binder.machine, binder.variant), press.bound(_bound(site, press, binder)))


def only(site: SitePages, machine: str, variant: str = "") -> SitePages:
    """The same site with nothing to print but what is of this machine; with a variant, of that alone."""
    return replace(site, binders=tuple(binder for binder in site.binders if binder.machine == machine and variant in ("", binder.variant)))


def _sheets(site: SitePages) -> list[tuple[str, str, str, str]]:
    """Machine, procedure, variant and address of each sheet, each once."""
    urls = dict.fromkeys(leaf.url for binder in site.binders for leaf in binder.leaves if _SHEET in leaf.url)
    return [(*url.split("/")[:2], url.split("/")[3], url) for url in urls]


def _bound(site: SitePages, press: Press, binder: Binder) -> Iterator[Bound]:
    """Contents and legend before the rest; what is filled in by hand lies last."""
    rows = [(leaf.title, leaf.code, words.pages(press.count(_page(site, leaf.url), leaf.url))) for leaf in binder.leaves]
    url = f"{binder_url(binder.machine, binder.variant).removesuffix('.pdf')}/"
    title = f"{words.BINDER}: {binder.title}, {binder.variant or words.EVERY_VARIANT}"
    yield Bound(words.BINDER, fill("binder", title=title, root=root_from(url), b=binder, rows=rows), url)
    for leaf in binder.leaves:
        yield Bound(leaf.title, _page(site, leaf.url), leaf.url)


def _page(site: SitePages, url: str) -> str:
    return site.files[f"{url}index.html"]
