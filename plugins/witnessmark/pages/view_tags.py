"""Tags to print, cut and hang: one for each loose end a procedure leaves, at each of its places."""

from typing import NamedTuple

from . import words
from .fill_template import Markup
from .lookup import Lookup
from .prose import Prose
from .view_step import Target


class Tag(NamedTuple):
    name: str
    words: str
    state: Markup
    place: str
    variants: str
    never: tuple[str, ...]
    if_forgotten: Markup
    shut: tuple[str, ...]


class TagsView(NamedTuple):
    title: str
    machine: str
    viewpoint: Markup
    tags: tuple[Tag, ...]
    back: Target


def tags_view(lookup: Lookup) -> TagsView:
    procedure, ledger, prose = lookup.procedure, lookup.book.ledgers[lookup.machine.id], Prose(lookup, linked=False)
    every = list(lookup.machine.main.variants)
    tags = []
    for step in procedure.steps:
        for end in step.leaves:
            left = ledger.left[f"{procedure.id}/{end.id}"]
            on = ledger.variants(left)
            shut = dict.fromkeys(f"{tie.procedure.title}, {words.STEP} {tie.at + 1}" for tie in ledger.ties[left.name] if ledger.follows(tie, left))
            tags += [Tag(left.name, end.tag or "", prose(end.state), place, "" if on == every else f"{words.ONLY} {', '.join(on)}",
                         tuple(map(str, end.never_while_open)), prose(end.if_forgotten), tuple(shut)) for place in ledger.places(left)]
    return TagsView(procedure.title, lookup.machine.title, prose(lookup.machine.viewpoint), tuple(tags), Target(procedure.title, "../"))
