"""The pages that list corrections: of the whole book, of each machine, and one for each that is pinned up."""

from collections.abc import Iterator, Mapping

from . import words_corrections
from .address import CORRECTIONS_URL, corrections_url, pin_url, root_from
from .fill_template import fill
from .lookup import Lookup
from .old_sheets import OldSheet
from .view_corrections import brief, is_pinned, machine_back, pin_view, views


def corrections_bodies(lookups: list[Lookup], sheets: Mapping[str, list[OldSheet]]) -> Iterator[tuple[str, str, str]]:
    """Address, title and body of each list, for the host's shell; a machine without corrections has none."""
    root = root_from(CORRECTIONS_URL)
    found = [brief(lookup, correction, sheets, root) for lookup in lookups for correction in lookup.index.corrections_of(lookup.machine.id)]
    found.sort(key=lambda each: (each.on, each.id), reverse=True)
    yield CORRECTIONS_URL, words_corrections.TITLE, fill("corrections_book", words_c=words_corrections, corrections=found)
    for lookup in lookups:
        url = corrections_url(lookup.machine.id)
        if lists := views(lookup, root_from(url)):
            pins = {each.id: root_from(url) + pin_url(each.id) for each in lookup.index.corrections_of(lookup.machine.id) if is_pinned(each, sheets)}
            yield url, f"{words_corrections.TITLE}, {lookup.machine.title}", fill(
                "corrections", words_c=words_corrections, machine=machine_back(lookup.machine, root_from(url)),
                corrections=[(view, pins.get(view.id, "")) for view in lists])


def pin_files(lookups: list[Lookup], sheets: Mapping[str, list[OldSheet]], codes: Mapping[tuple[str, str, str], str]) -> dict[str, str]:
    """One page a correction for which hands must stop. One about two machines is told for the first."""
    found: dict[str, str] = {}
    for lookup in lookups:
        for correction in lookup.index.corrections_of(lookup.machine.id):
            url = pin_url(correction.id)
            if is_pinned(correction, sheets) and f"{url}index.html" not in found:
                view = pin_view(lookup, correction, sheets, codes, root_from(url))
                found[f"{url}index.html"] = fill("pin", title=f"{correction.id}, {correction.on}", root=root_from(url), pin=view, words_c=words_corrections)
    return found
