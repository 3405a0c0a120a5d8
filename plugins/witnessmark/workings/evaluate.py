"""Works out a whole book: every figure for every combination of carriers, every working that rests on them.

The order follows from the references: a computed result is worked out when it is first asked for, and one that
asks for itself is a finding. Nothing here stops at a mistake; what depends on it refuses.
"""

from dataclasses import replace

from ..core.band_end import end_named
from ..core.derived import Resolved, Worked, key_of
from ..core.figure import FIRST, Figure, NoFigure, NotKnown, Plain, Spec, Worth
from ..core.last_mark import read_last_mark
from ..core.machine import Machine
from ..core.procedure import Computed, Procedure
from ..core.quantity import Quantity, read_quantity
from ..core.sentence import Reference, read_input_reference
from ..core.variation import Combination
from ..core.working import MEASURED, Given, Outcome, Refusal, Value, Working
from .evaluation import Evaluation, pick
from .in_force import figure_in_force, leading_role
from .press_runs import LIMITS, at_last_mark, press_cards
from .read_inputs import given_of, run
from .registry import WORKINGS

#: The roles that a check against another figure vouches for.
_CHECKED = ("target", "window")
#: A figure taken from a figure taken from a figure: nobody can follow further than this.
_DEEPEST = 40


def resolve_spec(work: Evaluation, machine: Machine, procedure: Procedure | None, spec: Spec,
                 combination: Combination, role: str | None = None) -> tuple[Resolved, ...]:
    """Each figure of the spec (of one role, where asked) for this combination, in the order of the source.

    By the role, so that a target may be worked out from the window beside it."""
    key = (machine.id, procedure.id if procedure else "", spec.id, role, key_of(combination))
    if key not in work.figures:
        work.figures[key] = tuple(
            Resolved(figure, _worth(work, machine, procedure, spec, figure, combination), figure.place)
            for figure in spec.figures if role in (None, figure.role))
        recheck = _recheck(work, machine, procedure, spec, combination) if spec.checked_against else None
        if recheck:
            work.figures[key] = tuple(
                replace(each, recheck=recheck) if each.figure.role in _CHECKED and each.in_force()
                and not isinstance(each.worth, NoFigure) else each for each in work.figures[key])
    return work.figures[key]


def _recheck(work, machine, procedure, spec: Spec, combination) -> str | None:
    """Why the spec must be checked anew: what it was checked against is no longer what it was."""
    reference = spec.must_not_outpull
    if reference is None or procedure is None:
        return None                                             # nothing to compare with is a rule's finding
    then = pick(work, machine, spec.checked_against, combination, f"'{spec.id}' (checked against)")
    if not isinstance(then, Plain | NotKnown):
        return None
    now = text_of(work, machine, procedure, reference, combination)
    name = f"the {reference.part}" if reference.part else reference.name
    if isinstance(then, NotKnown):
        return f"was not yet checked against {name}, which is {now or 'not known'}"
    target = work.book.target(reference, procedure)
    kind = target.kind if isinstance(target, Spec) else ""
    if now is not None and (now == then.text or _same(now, then.text, kind)):
        return None
    return f"was checked against {then.text}, {name} is now {now}" if now is not None else \
        f"was checked against {then.text}, {name} can no longer be relied on"


def _same(one: str, other: str, kind: str) -> bool:
    if kind in ("", "thread", "none"):
        return False
    first, second = read_quantity(one, kind), read_quantity(other, kind)
    return isinstance(first, Quantity) and isinstance(second, Quantity) and \
        (first.form, first.si_low, first.si_high) == (second.form, second.si_low, second.si_high)


def _worth(work, machine, procedure, spec: Spec, figure: Figure, combination) -> Worth | None:
    what = f"'{spec.id}' ({figure.role})"
    if figure.worth is not None and (figure.comes_from is None or figure.worth.matching(combination, machine.serial_ranges)):
        return pick(work, machine, figure.worth, combination, what)
    reference = pick(work, machine, figure.comes_from, combination, what)
    if reference is None:
        return None
    key = (machine.id, procedure.id if procedure else "", spec.id, figure.role, key_of(combination))
    if key in work.busy or len(work.busy) > _DEEPEST:
        work.error(reference.place, "loop", f"{what} is taken from {reference}, which rests on it in the end"
                   if key in work.busy else f"{what} is the end of more than {_DEEPEST} figures, each taken from the next",
                   "write the figure itself with 'is:'")
        return None
    work.busy.append(key)
    text = text_of(work, machine, procedure, reference, combination)
    work.busy.pop()
    if text and text.startswith(MEASURED):
        work.error(reference.place, "working-input", f"{what} is taken from {reference}, which waits for a reading at the bench",
                   "record the reading against the result itself, or write the figure with 'is:'")
        return None
    if text is None and _none_here(work, machine, procedure, reference, combination):
        return NoFigure()
    quantity = read_quantity(text, spec.kind) if text else None
    if quantity is not None and not isinstance(quantity, Quantity):
        work.error(reference.place, "unit-of-another-kind", f"{reference} gives {text}, which is no {spec.kind}",
                   "take the figure from a result of the same kind")
        return None
    return quantity


def text_of(work: Evaluation, machine: Machine, procedure: Procedure | None, reference: Reference,
            combination: Combination) -> str | None:
    """The text of the figure or result that a reference names, for this combination; None where there is none."""
    found = found_at(work, machine, procedure, reference, combination)
    return found.printed.partition(" (")[0] if isinstance(found, Value) else found if isinstance(found, str) else None


def _none_here(work, machine, procedure, reference: Reference, combination) -> bool:
    """Whether the reference names a result that this combination deliberately has none of."""
    home = _home(work, machine, procedure, reference)
    computed = home and home.computed.get(reference.name)
    return bool(computed) and run_computed(work, machine, home, computed, combination).outcome == Outcome()


def _home(work, machine, procedure, reference: Reference) -> Procedure | None:
    """The procedure in which a reference's name stands; None where it is the machine's, or nobody's."""
    if reference.owner == machine.id:
        return None
    return work.book.procedures.get((machine.id, reference.owner)) if reference.owner else procedure


def found_at(work: Evaluation, machine: Machine, procedure: Procedure | None, reference: Reference,
             combination: Combination) -> Value | str | NoFigure | None:
    """What a reference names: a result with its band, or the text of a figure; None where it cannot be relied on.

    A result that waits for a reading is a text that begins with MEASURED."""
    home = _home(work, machine, procedure, reference)
    if reference.owner == machine.id:
        target = machine.figures.get(reference.name)
    else:
        target = home and (home.specs.get(reference.name) or home.computed.get(reference.name))
    if isinstance(target, Computed):
        return _result(work, machine, home, target, reference, combination)
    if target is None:
        return None                                             # an unknown reference is a rule's finding
    if home and (mark := read_last_mark(reference.part)):
        return at_last_mark(cards_of(work, machine, home, target, combination), mark)
    role = reference.part or leading_role(target)
    worth = figure_in_force(resolve_spec(work, machine, home, target, combination, role), role) if role else None
    return worth.typed() if isinstance(worth, Quantity) else worth.text if isinstance(worth, Plain) else \
        worth if isinstance(worth, NoFigure) else None


def cards_of(work: Evaluation, machine: Machine, procedure: Procedure, spec: Spec, combination: Combination) -> tuple[Worked, ...]:
    """The press cards of a force to press to, one for each press and gauge in the needs, worked out once."""
    key = (machine.id, procedure.id, spec.id, key_of(combination))
    if key not in work.cards:
        roles = [role for role in LIMITS if spec.in_role(role)] if spec.kind == "press force" else ()     # others may rest on the card
        resolved = tuple(each for role in roles for each in resolve_spec(work, machine, procedure, spec, combination, role))
        work.cards[key] = press_cards(work.book, procedure, spec, resolved, key[-1]) if roles else ()
    return work.cards[key]


def _result(work, machine, procedure, computed: Computed, reference: Reference, combination) -> Value | str | NoFigure | None:
    outcome = run_computed(work, machine, procedure, computed, combination).outcome
    working = WORKINGS.get(computed.working)
    if working is None or outcome.refusals:
        return None
    names = [output.name for output in working.outputs]
    if reference.part not in names and end_named(reference.part or "")[0] not in names:
        work.error(reference.place, "unknown-reference", f"'{reference}' names no result of {working.id}",
                   f"write one of: {', '.join(f'{computed.id}.{name}' for name in names[:6])}")
        return None
    if outcome == Outcome():
        return NoFigure()
    if outcome.waits:
        return MEASURED + ", ".join(outcome.waits)
    return outcome.value(reference.part) if outcome.has(reference.part) else None


def run_computed(work: Evaluation, machine: Machine, procedure: Procedure, computed: Computed,
                 combination: Combination) -> Worked:
    """One computed result for one combination, worked out once; an empty outcome where an input is deliberately none there."""
    key = (machine.id, procedure.id, computed.id, key_of(combination))
    if key in work.runs:
        return work.runs[key]
    if key in work.busy or len(work.busy) > _DEEPEST:
        work.error(computed.place, "loop", f"'{computed.id}' is worked out from itself", "break the circle of references")
        return _worked(computed, combination, {}, {}, _refused("it is worked out from itself", "break the circle"))
    work.busy.append(key)
    texts: dict[str, str | Given] = {}
    places = {}
    missing: list[str] = []
    none_here = False
    working = WORKINGS.get(computed.working)
    for name, varies in computed.inputs.items():
        text = pick(work, machine, varies, combination, f"'{computed.id}' ({name})")
        text = text and _input(work, machine, procedure, working, name, text, varies.place, combination)
        if isinstance(text, NoFigure):
            none_here = True
        elif text is None:
            missing.append(name)
        else:
            texts[name], places[name] = text, varies.place
    outcome = Outcome() if none_here else _outcome(work, computed, working, texts, missing)
    work.busy.pop()
    told = {name: text.text if isinstance(text, Given) else text for name, text in texts.items()}
    work.runs[key] = _worked(computed, combination, told, places, outcome)
    return work.runs[key]


def _outcome(work, computed, working: Working | None, texts, missing) -> Outcome:
    if working is None:
        return _refused(f"there is no working '{computed.working}'", "name one that exists")
    if working.for_reading_only:
        mend = "take the figure from a source, or from a working made for procedures"
        work.error(computed.place, "working-for-reading", f"'{computed.id}' is worked out by {working.id}, which only explains: "
                   "a procedure prints one figure", mend)
        return _refused(f"{working.id} only explains", mend)
    if missing:
        return _refused(f"{', '.join(missing)} is not known", "give it, or find it out")
    outcome, problems = run(working, texts, work.shelf)
    for problem in problems:
        work.error(computed.place, "working-input", f"'{computed.id}': {problem.message}", problem.mend)
    return outcome or _refused("its inputs cannot be read", "mend the findings of its source")


def _input(work, machine, procedure, working, name, text, place, combination) -> str | Given | NoFigure | None:
    """A quantity as it stands; a surface as its band; a reference as the figure or result it names, with its band.
    Where `none` is written for something measured, this case has none: there is nothing to work out."""
    if text == "none" and working is not None and any(each.name == name and each.kind not in ("grade", "choice") for each in working.inputs):
        return NoFigure()
    surface = work.book.surfaces.get(text)
    if surface is not None and working is not None:
        band = surface.nut_factor if name == "nut factor" else surface.taper_friction
        return str(band) if band else None
    reference = read_input_reference(text, place)
    if reference is None:
        return text
    found = found_at(work, machine, procedure, reference, combination)
    return given_of(found) if isinstance(found, Value) else found


def _worked(computed: Computed, combination, texts, places, outcome) -> Worked:
    return Worked(computed.working, computed.id, key_of(combination), texts, places, outcome)


def _refused(message: str, instead: str) -> Outcome:
    return Outcome(refusals=(Refusal(message, instead),))
