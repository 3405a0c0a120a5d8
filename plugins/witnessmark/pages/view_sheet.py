"""The sheet of one procedure for one variant: the procedure's view with what paper needs besides."""

from itertools import groupby
from typing import NamedTuple

from ..core.used_results import of_others
from . import words
from .address import ask_url
from .cases import told_apart
from .fill_template import Markup
from .lookup import FigureView, Lookup
from .prose import Prose
from .qr_code import qr_code
from .view_caution import CautionView
from .view_drawing import picture
from .view_needs import NeedView, counted_in
from .view_open import OpenView
from .view_press_paper import EmptyCard, PaperPress, empty_cards, paper_presses
from .view_procedure import ProcedureView, VariantView, procedure_view
from .view_spec import Conflict, FigureRow, SpecView
from .view_step import StepView, Target
from .view_torque import Torque

#: A box over several steps is printed again where a page ends between them; a browser does so only while it is small.
_MOST_WORDS = 700
_ORDER = "tightening-order"
#: What the torque table tells of a torque: one of which nothing more is told needs no line among the figures.
_IN_TABLE = (words.THREAD, words.GRADE, words.SURFACE)
_BESIDE_TABLE = (*_IN_TABLE, words.EACH, words.WRENCH, words.PASSES)


class Footnote(NamedTuple):
    mark: str
    conflict: Conflict


class Run(NamedTuple):
    """Steps one after another with the same cautions, which stand before them once; `says` for which steps, where several."""

    cautions: tuple[CautionView, ...]
    says: str
    steps: tuple[StepView, ...]


class FirstReading(NamedTuple):
    """A reading of the first side, copied to the sheet of the second; `figures` as on a record."""

    label: str
    figures: tuple[tuple[str, FigureView], ...]


class TorqueRow(NamedTuple):
    """One torque in one case. `passes` as many as the table has columns: the last is the setting."""

    spec: str
    label: str
    details: tuple[tuple[str, object], ...]
    condition: str
    torque: str
    wrench: str
    passes: tuple[str, ...]
    refusals: tuple


class Order(NamedTuple):
    """In which order bolts are tightened; `case` says for which part, '' where there is one order."""

    case: str
    drawing: Markup


class Paper(NamedTuple):
    """What the whole site tells its sheets: where it stands, '' where that is not known, and the day of its sources;
    `pdf` where each sheet is there as a file too."""

    site_url: str = ""
    sources: str = ""
    pdf: bool = False


class SheetView(NamedTuple):
    """`boxes` counts what is ticked; `left` are the loose ends that it leaves open itself, `still` those that stay open
    from before; `legend` where there are signal words to explain."""

    procedure: ProcedureView
    variant: VariantView
    code: str
    qr: Markup | None
    ask: str
    sources: str
    places: tuple[str, ...]
    boxes: int
    counted: tuple[NeedView, ...]
    tools: bool
    presses: tuple[PaperPress, ...]
    empty: tuple[EmptyCard, ...]
    pass_heads: tuple[str, ...]
    torques: tuple[TorqueRow, ...]
    orders: tuple[Order, ...]
    runs: tuple[Run, ...]
    firsts: tuple[FirstReading, ...]
    left: tuple[OpenView, ...]
    still: tuple[OpenView, ...]
    legend: bool
    left_words: str
    skipped: str
    footnotes: tuple[Footnote, ...]
    back: Target


def sheet_view(lookup: Lookup, variant: str, root: str, code: str, workings, paper: Paper = Paper()) -> SheetView:
    prose = Prose(lookup, linked=False, variant=variant)
    view = procedure_view(lookup, prose, root, {variant: code}, workings)
    wet = condition_words(lookup)
    view = view._replace(specs=tuple(capitals(spec, wet) for spec in map(_to_work_to, view.specs) if spec.rows))
    left = tuple(end for end in view.open.stop if end.left is None)
    proved = view.open.banner.ends if view.open.banner else ()
    shown = {step.number for step in view.steps}
    skipped = ", ".join(str(number) for number in range(1, len(lookup.procedure.steps) + 1) if number not in shown)
    conflicts = dict.fromkeys(conflict for spec in view.specs for conflict in spec.conflicts)
    counted, tools = counted_in(lookup.book, lookup.procedure), bool(lookup.procedure.needs.tools)
    boxes = (sum(len(needs.lines) for needs in view.needs) + len(counted) + tools + len(view.must_be_shut) + sum(len(end.ticks) for end in proved)
             + sum(step.boxes for step in view.steps) + sum(len(end.ticks) for end in left))
    carded = {cards.spec for cards in view.cards}
    heads, rows = torque_rows(view.torques, {spec.id: spec for spec in view.specs})
    view = view._replace(specs=tuple(spec for spec in view.specs if not _all_in_table(spec, rows)))
    places = lookup.machine.places_on(lookup.procedure.each, variant)
    address = ask_url(paper.site_url, code)
    return SheetView(
        view, next(v for v in view.variants if v.id == variant), code, qr_code(address) if address else None, address.partition("#")[0],
        words.SHEET_SOURCES.format(date=paper.sources) if paper.sources else words.SHEET_SOURCES_OPEN, places, boxes, counted, tools,
        paper_presses(lookup, view.cards, variant), tuple(card for card in empty_cards(lookup, view.specs, variant) if card.spec not in carded and card.rows),
        heads, rows, tightening_orders(lookup, variant),
        runs(view.steps), first_readings(view.steps, places), left,
        tuple(end for end in view.open.stop if end.left is not None), bool(view.cautions or any(step.cautions for step in view.steps)),
        f"{words.SHEET_LEFT}: " + "; ".join(end.state.striptags().rstrip(".") for end in left) if left else words.SHEET_NOTHING_LEFT,
        skipped, tuple(Footnote(conflict.id, conflict) for conflict in conflicts), Target(view.title, "../../"))


def first_readings(steps: tuple[StepView, ...], places: tuple[str, ...]) -> tuple[FirstReading, ...]:
    """What the first side's sheet gives to compare with: each reading taken once a side. A window is told where there is one, not one for each part."""
    return tuple(FirstReading(record.label, tuple(figure for figure in record.figures if len(figure[1].cases) == 1))
                 for step in steps for record in step.records if places and record.places in ((), places))


def runs(steps: tuple[StepView, ...]) -> tuple[Run, ...]:
    """Steps with the same cautions, one after another, under one box; a step without any stands alone."""
    found: list[Run] = []
    for cautions, group in groupby(steps, lambda step: step.cautions):
        alike = tuple(group)
        if not cautions or sum(len(part) for view in cautions for part in (view.hazard, view.consequence, *view.avoid)) > _MOST_WORDS:
            found += [Run(cautions, "", (step,)) for step in alike]
        else:
            found.append(Run(cautions, words.for_steps([step.number for step in alike]), alike))
    return tuple(found)


def torque_rows(torques: tuple[Torque, ...], specs: dict[str, SpecView]) -> tuple[tuple[str, ...], tuple[TorqueRow, ...]]:
    """Heads of the pass columns, and a row for each torque in each case."""
    most = max((len(case.passes) for torque in torques for case in torque.cases), default=1) or 1
    heads = (*(f"{words.PASS} {n}" for n in range(1, most)), words.PASS_LAST if most > 1 else words.SETTING)
    rows = []
    for torque in torques:
        for case in torque.cases:
            early = case.passes[:-1]
            label = f"{torque.label}, {case.told.label}" if case.told.label else torque.label
            spec = specs.get(torque.spec)
            rows.append(TorqueRow(torque.spec, label, tuple(pair for pair in spec.details if pair[0] in _IN_TABLE) if spec else (),
                                  spec.condition if spec else "", case.torque, torque.wrench,
                                  (*early, *[""] * (most - 1 - len(early)), case.setting or case.torque), case.refusals))
    return heads, tuple(rows)


def tightening_orders(lookup: Lookup, variant: str) -> tuple[Order, ...]:
    """The drawing of each order in which bolts are tightened on this variant, once; which part it is for where that decides."""
    procedure, found = lookup.procedure, []
    others = of_others(procedure, variant, lookup.machine.main.variants[variant].serials)
    for computed in procedure.computed.values():
        if computed.working == _ORDER and computed.id not in others:
            drawn = [(case, drawing) for case, run in lookup.worked(computed.id, variant) if (drawing := picture(run.outcome.told.drawing))]
            found += [Order(told.label, told.value) for told in told_apart(lookup.machine, drawn)]
    return tuple(dict.fromkeys(found))


def condition_words(lookup: Lookup) -> frozenset[str]:
    """How a surface may be prepared, in the words of the shop's surfaces: oiled against dry is half the clamp."""
    return frozenset(word for surface in lookup.book.surfaces.values() for word in (*surface.condition_words, surface.title.lower()))


def capitals(spec: SpecView, wet: frozenset[str]) -> SpecView:
    """The surface's condition in capitals, as it stands in the label's line and in its details."""
    details = tuple((word, text if word != words.SURFACE else tuple(told._replace(value=told.value.upper()) for told in text)) for word, text in spec.details)
    condition = ", ".join(_loud(piece, wet) for piece in spec.condition.split(", "))
    return spec._replace(condition=condition, details=details)


def _loud(piece: str, wet: frozenset[str]) -> str:
    return piece.upper() if piece in wet or piece == "clean" else " ".join(word.upper() if word in wet else word for word in piece.split(" "))


def _all_in_table(spec: SpecView, rows: tuple[TorqueRow, ...]) -> bool:
    """Whether the torque table alone says all there is to do: a figure struck, in doubt, refused or with a condition of its own stays in sight."""
    mine = [row for row in rows if row.spec == spec.id]
    return bool(mine) and not any(row.refusals or not row.torque for row in mine) and all(word in _BESIDE_TABLE for word, _ in spec.details) and all(
        row.view.role == "target" and not (row.struck or row.in_doubt or row.condition) and all(not told.value.state for told in row.view.cases)
        for row in spec.rows)


def _to_work_to(spec: SpecView) -> SpecView:
    return spec._replace(rows=tuple(filter(_acted_on, spec.rows)))


def _acted_on(row: FigureRow) -> bool:
    """A figure that only informs stays on the page; paper holds what is worked to, and what must not be used."""
    return row.view.role != "found" or bool(row.struck) or row.in_doubt is not None
