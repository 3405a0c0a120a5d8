"""Steps ready to print, for the page (all variants) or for a sheet (one)."""

from typing import NamedTuple

from ..core.procedure import LooseEnd, Record, Step
from . import words
from .address import procedure_url, step_anchor
from .fill_template import Markup
from .left_words import left_words
from .lookup import FigureView, Lookup
from .prose import Prose
from .view_caution import CautionView, caution_views
from .view_picture import PictureView, picture_view
from .view_spec import place_words, role_word


class Target(NamedTuple):
    """Where a reader is sent: `text` such as "step 4" and a link."""

    text: str
    href: str


class RecordView(NamedTuple):
    """A value to write down at each place; `figures` are what it must be, shown small beside the blank."""

    label: str
    places: tuple[str, ...]
    figures: tuple[tuple[str, FigureView], ...]
    above: Markup | None
    below: Markup | None
    go_to: tuple[Target, ...]


class LooseView(NamedTuple):
    id: str
    state: Markup
    because: Markup
    if_forgotten: Markup
    never: tuple[str, ...]
    places: tuple[str, ...]
    closes_in: Target | None
    tag: str
    again: tuple[Markup | str, ...]


class StepView(NamedTuple):
    id: str
    anchor: str
    was: tuple[str, ...]
    number: int
    do: Markup
    check: Markup | None
    if_outside: Markup | None
    go_to: tuple[Target, ...]
    cautions: tuple[CautionView, ...]
    places: tuple[str, ...]
    group: str
    at: str
    only: str
    acts: tuple[str, ...]
    opens_up: tuple[str, ...]
    measures: tuple[str, ...]
    records: tuple[RecordView, ...]
    picture: PictureView | None
    hold: Markup | None
    leaves: tuple[LooseView, ...]
    closes: tuple[Markup | str, ...]
    second_person: bool
    note: Markup | None

    @property
    def boxes(self) -> int:
        """What is ticked on a sheet: one box for each place, one for a hold point."""
        return max(len(self.places), 1) + (self.hold is not None)


def step_views(lookup: Lookup, prose: Prose, root: str) -> tuple[StepView, ...]:
    """With a variant in `prose`, the steps that hold for it under the numbers they have on the page."""
    variant = prose.variant
    return tuple(_step(lookup, step, number, prose, root) for number, step in enumerate(lookup.procedure.steps, 1)
                 if variant is None or step.done_on(variant, lookup.machine.main.variants[variant].serials))


def _step(lookup: Lookup, step: Step, number: int, prose: Prose, root: str) -> StepView:
    """A step without figures or links is the same on the page and on every sheet, so it is made once."""
    if step.id in lookup.plain_steps:
        return lookup.plain_steps[step.id]
    view = _made(lookup, step, number, prose, root)
    if not (step.picture or step.records or step.go_to or step.leaves or step.closes or any(s.references() for s in step.sentences())):
        lookup.plain_steps[step.id] = view
    return view


def _made(lookup: Lookup, step: Step, number: int, prose: Prose, root: str) -> StepView:
    machine = lookup.machine
    group = step.each or ""
    if step.only:
        prose = prose.for_only(frozenset(v for v, each in machine.main.variants.items() if step.done_on(v, each.serials)))
    return StepView(
        step.id, step_anchor(step.id), step.was, number, prose(step.do), prose(step.check), prose(step.if_outside),
        _targets(lookup, step.go_to, prose, root), caution_views(lookup.book, step.cautions),
        machine.places_on(group, prose.variant), group, step.at or "", ", ".join(selector.text for selector in step.only),
        tuple(map(str, step.acts)), step.opens_up,
        tuple(machine.carriers[name].title for name in step.measures if name in machine.carriers), tuple(_record(lookup, record, step, prose, root) for record in step.records),
        picture_view(lookup.book, step.picture, root), prose(step.hold_point),
        tuple(loose_view(lookup, loose, prose, root) for loose in step.leaves),
        _all_closed(lookup, step.closes, prose), step.second_person, prose(step.note))


def target(lookup: Lookup, name: str, root: str) -> Target:
    """`clean` or `final-drive-build#shim`: a step of this procedure or of another one of the machine, by the number and
    title that stand on its sheet."""
    owner, _, step = name.rpartition("#")
    home = lookup.procedure
    there = lookup.book.procedures.get((home.machine, owner), home) if owner else home
    number = next((str(n) for n, known in enumerate(there.steps, 1) if known.id == step), step)
    if there is home:
        return Target(f"{words.STEP} {number}", f"#{step_anchor(step)}")
    return Target(f"{words.STEP} {number} {words.OF} {there.title}", f"{root}{procedure_url(home.machine, owner)}#{step_anchor(step)}")


def _targets(lookup: Lookup, names: tuple[str, ...], prose: Prose, root: str) -> tuple[Target, ...]:
    """A sheet sends nobody to a step that is not on it, as long as another one named is."""
    variant = prose.variant
    left_out = {step.id for step in lookup.procedure.steps
                if variant and not step.done_on(variant, lookup.machine.main.variants[variant].serials)}
    there = tuple(name for name in names if name not in left_out) or names
    return tuple(target(lookup, name, root) for name in there)


def _record(lookup: Lookup, record: Record, step: Step, prose: Prose, root: str) -> RecordView:
    places = place_words(lookup.machine, record.places or step.each, prose.variant)
    outside = record.if_outside
    return RecordView(record.label, places, _wanted(lookup, record, prose), prose(outside.above) if outside else None,
                      prose(outside.below) if outside else None,
                      _targets(lookup, outside.go_to, prose, root) if outside else ())


def _wanted(lookup: Lookup, record: Record, prose: Prose) -> tuple[tuple[str, FigureView], ...]:
    """What the measured value is held against: every role in force of its spec, or the figure it names."""
    if record.spec is None:
        return ()
    reference, home = record.spec, lookup.of(record.spec.owner)
    spec = lookup.book.target(reference, lookup.procedure)
    if reference.part is None and hasattr(spec, "figures"):
        variant = prose.variant if prose.variant in home.variants else None
        return tuple((role_word(figure.role, cases), FigureView(spec.id, figure.role, " ".join(figure.was), "", cases))
                     for figure in spec.figures if figure.in_force() or figure.in_doubt
                     if (cases := prose.narrowed(tuple(told for told in home.cases(spec, figure, variant) if told.value.state != "none"))))
    view = lookup.reference(reference, prose.variant)
    return ((role_word(view.role, view.cases) if view.role in words.ROLE else "", view),) if view else ()


def loose_view(lookup: Lookup, loose: LooseEnd, prose: Prose, root: str) -> LooseView:
    closes_in = None
    if loose.closes_in:
        there = lookup.book.procedures.get((lookup.machine.id, loose.closes_in))
        closes_in = Target(there.title if there else loose.closes_in, root + procedure_url(lookup.machine.id, loose.closes_in))
    return LooseView(loose.id, prose(loose.state), prose(loose.because), prose(loose.if_forgotten),
                     tuple(map(str, loose.never_while_open)), lookup.machine.places_on(loose.each, prose.variant), closes_in, loose.tag or "",
                     _all_closed(lookup, loose.again, prose))


def _all_closed(lookup: Lookup, names: tuple[str, ...], prose: Prose) -> tuple[Markup | str, ...]:
    """What a step closes, in the words of the step that left it; on a sheet only what its variant ever leaves."""
    ledger = lookup.book.ledgers[lookup.machine.id]
    found = [(name, ledger.named(lookup.procedure, name)) for name in names if ledger.is_left(lookup.procedure, name, prose.variant)]
    return tuple(left_words(lookup, left, prose) if left else name for name, left in found)
