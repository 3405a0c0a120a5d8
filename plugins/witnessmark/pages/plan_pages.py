"""The pages about a machine's whole work: its ledger, its needs, its lists, and the tags of each procedure."""

from typing import Iterator

from . import words
from .address import conflicts_url, holds_url, ledger_url, machine_url, needs_url, notes_url, root_from, tags_url
from .fill_template import fill
from .lookup import Lookup
from .view_ledger import ledger_view
from .view_lists import conflict_views, hold_views, note_views
from .view_rollup import assemblies, rollup_view
from .view_step import Target
from .view_tags import tags_view
from .view_torque import Torque

#: Address, title, body.
Body = tuple[str, str, str]


def plan_bodies(lookup: Lookup, book_id: str) -> Iterator[Body]:
    """Pages for the host's shell, about the machine of `lookup`; what a reader ticks is kept under the book's id."""
    url = ledger_url(lookup.machine.id)
    yield url, f"{words.LEDGER}, {lookup.machine.title}", fill("ledger", l=ledger_view(lookup, root_from(url)), book=book_id)
    root = root_from(holds_url(lookup.machine.id))
    machine = Target(lookup.machine.title, root + machine_url(lookup.machine.id))
    for url, title, template, name, views in (
            (holds_url, words.HOLDS, "holds", "holds", hold_views), (conflicts_url, words.CONFLICTS, "conflicts", "conflicts", conflict_views),
            (notes_url, words.NOTES, "notes", "kinds", note_views)):
        if found := views(lookup, root):
            yield url(lookup.machine.id), f"{title}, {lookup.machine.title}", fill(template, machine=machine, **{name: found})


def needs_files(lookup: Lookup, torques: dict[str, tuple[Torque, ...]]) -> dict[str, str]:
    """What the whole work needs, as a list to print, and what each assembly needs."""
    found = {}
    for assembly in (None, *assemblies(lookup)):
        url = needs_url(lookup.machine.id) + (f"{assembly}/" if assembly else "")
        view = rollup_view(lookup, torques, assembly)
        found[f"{url}index.html"] = fill("rollup", title=f"{words.ROLL_TITLE}: {view.title}", root=root_from(url), r=view)
    return found


def tag_file(lookup: Lookup) -> dict[str, str]:
    """The tags of the procedure of `lookup`, if it leaves anything loose."""
    if not any(step.leaves for step in lookup.procedure.steps):
        return {}
    url = tags_url(lookup.procedure)
    return {f"{url}index.html": fill("tags", title=f"{words.TAGS}: {lookup.procedure.title}", root=root_from(url), t=tags_view(lookup))}
