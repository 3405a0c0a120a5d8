"""Where a figure is corrected: every figure and result of a procedure or machine with its line in the source, and what it would move."""

from collections.abc import Iterable, Iterator

from ..core.figure import Figure, Spec
from ..core.machine import Carrier
from ..core.place import Place
from ..core.procedure import Computed
from . import words, words_correct
from .address import carrier_anchor, figure_anchor, machine_url, plan_url, procedure_url, result_anchor
from .cases import told_apart
from .forge_links import Forge
from .lookup import Lookup, shown
from .to_correct import Asking, CorrectView, LineView, ToCorrect, moved, not_too_many, rests_on
from .view_spec import role_word


def correct_view(lookup: Lookup, root: str, codes: dict[str, str], book_id: str, forge: Forge | None, mail: str) -> CorrectView:
    """`codes` maps variant to sheet code; empty for the figures of a machine."""
    home = lookup.procedure or lookup.machine
    owner = f"{lookup.machine.id}/{home.id}" if lookup.procedure else lookup.machine.id
    given = {"Book": book_id, "Sheet codes of the page": ", ".join(f"{variant} {code}" for variant, code in codes.items())}
    ask = Asking(forge, given)
    of_machine = () if lookup.procedure else (_carrier(ask, carrier, owner) for carrier in lookup.machine.carriers.values())
    results = lookup.procedure.computed.values() if lookup.procedure else ()
    specs = (*(_spec(lookup, ask, spec, owner, root) for spec in (home.specs if lookup.procedure else home.figures).values()),
             *(_result(lookup, ask, computed, owner, root) for computed in results), *of_machine)
    other = ToCorrect("else", owner, "", home.title, (ask.line("any", home.place),), ask.issue(owner, "", home.title, home.place))
    url = procedure_url(lookup.machine.id, home.id) if lookup.procedure else machine_url(home.id)
    return CorrectView(home.title, root + url, specs, other, tuple(codes.items()), ask.data(root, url if lookup.procedure else plan_url(home.id), mail))


def _spec(lookup: Lookup, ask: Asking, spec: Spec, owner: str, root: str) -> ToCorrect:
    lines = tuple(line for figure in spec.figures for line in _lines(lookup, ask, spec, figure))
    own = [words_correct.CARD] * bool(lookup.procedure and spec.kind == "press force" and lookup.procedure.needs.presses)
    own += [words_correct.SETTING] * bool(spec.kind == "torque" and spec.wrench)
    return ToCorrect(spec.id, owner, spec.id, spec.label, lines, ask.issue(owner, spec.id, spec.label, spec.place, lines),
                     *_round_about(lookup, f"{owner}/{spec.id}", root, own))


def _result(lookup: Lookup, ask: Asking, computed: Computed, owner: str, root: str) -> ToCorrect:
    anchor = result_anchor(computed.id)
    lines = tuple(ask.line(f"{anchor}.{number}", case.place, name, name, ", ".join(selector.text for selector in case.when), case.value)
                  for number, (name, case) in enumerate(((name, case) for name, varies in computed.inputs.items() for case in varies.cases), 1))
    return ToCorrect(anchor, owner, computed.id, computed.label, lines, ask.issue(owner, computed.id, computed.label, computed.place),
                     *_round_about(lookup, f"{owner}/{computed.id}", root), brief=True, worked=True)


def _carrier(ask: Asking, carrier: Carrier, owner: str) -> ToCorrect:
    """What tells its versions: serials, or a measure."""
    anchor = carrier_anchor(carrier.id)
    lines = tuple(ask.line(f"{anchor}.{variant.id}", variant.place, variant.id, variant.title, "",
                           str(variant.serials) if variant.serials else variant.measure.typed() if variant.measure else "") for variant in carrier.variants.values())
    return ToCorrect(anchor, owner, carrier.id, carrier.title, lines, ask.issue(owner, carrier.id, carrier.title, carrier.place, lines), (words_correct.VERSIONS,), brief=True)


def _round_about(lookup: Lookup, address: str, root: str, own: Iterable[str] = ()):
    """What of its `own` and of others rests on it, and what it rests on."""
    index = lookup.index
    in_all, moves = not_too_many(moved(lookup.book, lookup.procedure, index.moved_by(address), root))
    return ((*own, *in_all), moves,
            rests_on(lookup.book, lookup.procedure, index.rests_on.get(address, ()), root))


def _lines(lookup: Lookup, ask: Asking, spec: Spec, figure: Figure) -> Iterator[LineView]:
    """One for each line of the source, with the cases it holds for."""
    anchor, varies = figure_anchor(spec, figure), figure.comes_from or figure.worth
    found = []
    for _, combination in lookup.every():
        matching = varies.matching(combination, lookup.machine.serial_ranges)
        found += [(combination, (_printed(figure, case.value), case.place.path, case.place.line)) for case in matching]
    for number, told in enumerate(told_apart(lookup.machine, found)):
        printed, path, line = told.value
        word = words.STRUCK_ROLE if not figure.standing() else role_word(figure.role, lookup.cases(spec, figure) or ())
        yield ask.line(anchor if number == 0 else f"{anchor}.{number + 1}", Place(path, line), figure.role, word, told.label, printed)


def _printed(figure: Figure, value) -> str:
    if figure.in_doubt:
        return words.DO_NOT_USE
    return f"{words.STANDING['computed']}: {value}" if figure.comes_from else shown(value, figure.role).printed
