"""The sheet of one procedure for one variant: the procedure's view with what paper needs besides."""

from typing import NamedTuple

from . import words
from .lookup import Lookup
from .prose import Prose
from .view_needs import NeedView, counted_in
from .view_open import OpenView
from .view_procedure import ProcedureView, VariantView, procedure_view
from .view_spec import Conflict, FigureRow
from .view_step import Target


class Footnote(NamedTuple):
    mark: str
    conflict: Conflict


class SheetView(NamedTuple):
    """`boxes` counts what is ticked; `left` are the loose ends that it leaves open when it is done."""

    procedure: ProcedureView
    variant: VariantView
    code: str
    places: tuple[str, ...]
    boxes: int
    left: tuple[OpenView, ...]
    left_words: str
    counted: tuple[NeedView, ...]
    skipped: str
    footnotes: tuple[Footnote, ...]
    back: Target


def sheet_view(lookup: Lookup, variant: str, root: str, code: str, workings) -> SheetView:
    prose = Prose(lookup, linked=False, variant=variant)
    view = procedure_view(lookup, prose, root, {variant: code}, workings)
    view = view._replace(specs=tuple(spec for spec in view.specs if any(map(_acted_on, spec.rows))))
    left = tuple(end for end in view.open.stop if end.left is None)
    proved = view.open.banner.ends if view.open.banner else ()
    shown = {step.number for step in view.steps}
    skipped = ", ".join(str(number) for number in range(1, len(lookup.procedure.steps) + 1) if number not in shown)
    conflicts = dict.fromkeys(conflict for spec in view.specs for conflict in spec.conflicts)
    footnotes = tuple(Footnote(conflict.id, conflict) for conflict in conflicts)
    mine = next(v for v in view.variants if v.id == variant)
    ready = sum(len(needs.lines) for needs in view.needs)
    counted = counted_in(lookup.book, lookup.procedure)
    places = lookup.machine.places_on(lookup.procedure.each, variant)
    return SheetView(view, mine, code, places, ready + len(view.must_be_shut) + sum(len(end.ticks) for end in proved) + sum(step.boxes for step in view.steps) + len(counted), left,
                     f"{words.SHEET_LEFT}: " + "; ".join(end.state.striptags().rstrip(".") for end in left) if left else words.SHEET_NOTHING_LEFT, counted,
                     skipped, footnotes, Target(view.title, "../../"))


def _acted_on(row: FigureRow) -> bool:
    """A figure that only informs stays on the page; paper holds what is worked to, and what must not be used."""
    return row.view.role != "found" or bool(row.struck) or row.in_doubt is not None
