"""What is open when a procedure starts and stops, and what must be proved shut before it runs anything: ready to print."""

from typing import NamedTuple

from ..core.loose_ends import Left, Tie
from ..core.open_ends import Open, OpenEnds
from . import words
from .address import ledger_url, loose_anchor, procedure_url, step_anchor
from .fill_template import Markup
from .left_words import left_words
from .lookup import Lookup
from .prose import Prose
from .view_step import Target


class OpenView(NamedTuple):
    """A loose end that is open: `where` says places and variants if it is not so everywhere, `left` who left it, `by` before which step it must be shut."""

    name: str
    state: Markup
    where: str
    left: Target | None
    unless: tuple[Target, ...]
    shut: tuple[Target, ...]
    never: tuple[str, ...]
    ticks: tuple[str, ...]
    by: str = ""


class Banner(NamedTuple):
    says: str
    ends: tuple[OpenView, ...]


class OpenViews(NamedTuple):
    """`more` says that others may be open which are not named; `banner` is None where nothing is run or handed over."""

    start: tuple[OpenView, ...]
    maybe: tuple[OpenView, ...]
    more: bool
    stop: tuple[OpenView, ...]
    banner: Banner | None
    ledger: Target


def open_views(lookup: Lookup, prose: Prose, root: str) -> OpenViews:
    """For one variant where `prose` has one, else for all that the procedure is for."""
    ends, procedure = lookup.book.open_ends[lookup.machine.id], lookup.procedure
    variants = (prose.variant,) if prose.variant else procedure.variants
    view = _Viewer(lookup, ends, prose, root, variants)
    return OpenViews(tuple(map(view.open, ends.at_start(procedure, variants))), tuple(map(view.open, ends.maybe_at_start(procedure, variants))),
                     bool(ends.more & ends.ledger.order.bit(procedure.id)), tuple(map(view.open, ends.at_stop(procedure, variants))), view.banner(),
                     Target(words.IN_LEDGER, root + ledger_url(lookup.machine.id)))


class _Viewer:
    def __init__(self, lookup: Lookup, ends: OpenEnds, prose: Prose, root: str, variants: tuple[str, ...]):
        self.lookup, self.ends, self.prose, self.root, self.variants = lookup, ends, prose, root, variants

    def open(self, each: Open) -> OpenView:
        unless = tuple(self._procedure(name) for name in each.unless)
        return self._view(each.left, self._where(each.left, each.where), each.where, unless)

    def banner(self) -> Banner | None:
        """Of the procedure that ends the work, and of one that runs the machine."""
        proofs, ends = self.ends.to_prove(self.lookup.procedure, self.variants), self.lookup.procedure.id == self.lookup.machine.hand_over
        if not proofs and not ends:
            return None
        return Banner(words.HANDS_OVER if ends else words.STARTS_UP, tuple(
            self._view(proof.left, self._where(proof.left, proof.where), proof.where, ())._replace(
                by="" if proof.at is None else f"{words.BEFORE_STEP} {proof.at + 1}") for proof in proofs))

    def _view(self, left: Left, where: str, places: dict[str, list[str]], unless: tuple[Target, ...]) -> OpenView:
        mine = left.procedure is self.lookup.procedure
        left_in = None if mine else self._procedure(left.procedure.id, loose_anchor(left.end.id))
        shut = tuple(self._step(tie) for tie in self.ends.closers(left)
                     if any(self.ends.ledger.done_on(tie.procedure, tie.step, variant) for variant in self.variants))
        ticks = tuple(dict.fromkeys(place for there in places.values() for place in there))
        return OpenView(left.name, left_words(self.lookup, left, self.prose), where, left_in, unless, tuple(dict.fromkeys(shut)),
                        tuple(map(str, left.end.never_while_open)), ticks)

    def _step(self, tie: Tie) -> Target:
        if tie.procedure is self.lookup.procedure:
            return Target(f"{words.STEP} {tie.at + 1}", f"#{step_anchor(tie.step.id)}")
        return self._procedure(tie.procedure.id, step_anchor(tie.step.id))

    def _where(self, left: Left, where: dict[str, list[str]]) -> str:
        """`left and right; 24-A` as far as it is not so on every variant of the page and has places."""
        told: dict[str, list[str]] = {}
        for variant, places in where.items():
            told.setdefault(words.and_places([place for place in places if place]), []).append(variant)
        every = len(where) == len(self.variants) and len(told) == 1
        return "; ".join(", ".join([*filter(None, [places]), *([] if every else on)]) for places, on in told.items())

    def _procedure(self, name: str, anchor: str = "") -> Target:
        title = self.lookup.book.procedures[self.lookup.machine.id, name].title
        if self.lookup.procedure and name == self.lookup.procedure.id:
            return Target(title, f"#{anchor}")
        return Target(title, f"{self.root}{procedure_url(self.lookup.machine.id, name)}" + (f"#{anchor}" if anchor else ""))
