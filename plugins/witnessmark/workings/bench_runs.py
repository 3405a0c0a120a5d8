"""The workings that no author declares: a press card for each press in the needs, a judgement for each torque."""

from collections.abc import Mapping
from dataclasses import replace

from ..core.book import Book
from ..core.derived import RECHECK, CombinationKey, Derived, Worked, key_of
from ..core.display import shown
from ..core.equipment import Gauge, Press
from ..core.figure import NoFigure, Spec
from ..core.machine import Machine
from ..core.procedure import Procedure
from ..core.quantity import Quantity
from ..core.thread import Thread
from ..core.variation import Combination
from ..core.working import Outcome, Refusal
from . import press_card, tightening_torque
from .evaluate import figure_in_force
from .evaluation import Evaluation, pick
from .read_inputs import given_inputs

_LIMITS = ("target", "floor", "ceiling", "window")
_NOT_TO_USE = "it is not known, in doubt, or has no case for this combination"


def press_cards(work: Evaluation, procedure: Procedure, spec: Spec, derived: Derived,
                key: CombinationKey) -> tuple[Worked, ...]:
    """One card for each press and gauge in the needs; none where the spec asks for no force to reach or keep under."""
    roles = [role for role in _LIMITS if spec.in_role(role)]
    if not {"target", "ceiling", "window"} & set(roles):
        return ()
    texts, refused = {}, None
    for role in roles:
        worth = figure_in_force(derived.resolved[key, spec.id], role)
        if isinstance(worth, Quantity):
            texts[role] = worth.typed()
        elif isinstance(worth, NoFigure):
            return ()                                           # deliberately none for this combination
        elif any(figure.kept_for_record is None for figure in spec.in_role(role)):
            recheck = _recheck(derived, key, spec)
            refused = Outcome(refusals=(recheck or Refusal(f"no {role} can be relied on: {_NOT_TO_USE}", "do not press"),))
    pairs = [(need.press, need.gauge) for need in procedure.needs.presses]
    cards = []
    for name, gauge_name in pairs:
        press = work.book.presses.get(name)
        gauge = press and press.gauges.get(gauge_name)
        if gauge is None:
            continue                                            # an unknown press is a rule's finding
        inputs = {**press_texts(press, gauge), **texts}
        outcome = refused or _card(work.book, inputs, (name, gauge_name), pairs)
        places = {role: figure.place for role in texts for figure in spec.in_role(role) if figure.in_force()}
        places |= {"press": press.place, "gauge": gauge.place}
        cards.append(Worked("press-card", spec.id, key, inputs, places, outcome, name, gauge_name))
    return tuple(cards)


def press_texts(press: Press, gauge: Gauge) -> dict[str, str]:
    """The inputs of a press card that belong to the press and its gauge."""
    texts = {"area": press.area, "bore": press.bore, "rod": press.rod, "rated pressure": press.rated_pressure,
             "rated force": press.rated_force, "full scale": gauge.full_scale, "division": gauge.division,
             "accuracy": gauge.accuracy, "gauge limit": gauge.limit}
    found = {name: quantity.typed() for name, quantity in texts.items() if quantity is not None}
    if press.side:
        found["side"] = press.side
    if press.draw_stud:
        found |= {"draw stud thread": press.draw_stud.thread.text, "draw stud yield": press.draw_stud.yield_stress.typed()}
    return found


def _card(book: Book, inputs: Mapping[str, str], own: tuple[str, str], pairs) -> Outcome:
    given, problems = given_inputs(press_card.WORKING, inputs)
    if problems:
        return Outcome(refusals=(Refusal(problems[0].message, problems[0].mend),))
    return press_card.compute(given, lambda: _others(book, own, pairs))


def _others(book: Book, own: tuple[str, str], pairs) -> press_card.Others:
    """The shop's other presses and gauges, those in the needs first."""
    rest = [(press.id, gauge) for press in book.presses.values() for gauge in press.gauges
            if (press.id, gauge) not in pairs]
    others = []
    for name, gauge in [*pairs, *rest]:
        press = book.presses.get(name)
        if (name, gauge) == own or press is None or gauge not in press.gauges:
            continue
        texts = given_inputs(press_card.WORKING, press_texts(press, press.gauges[gauge]))[0]
        others.append((f"{name}, {press.gauges[gauge].title}", texts))
    return others


def torque_run(work: Evaluation, machine: Machine, procedure: Procedure, spec: Spec, derived: Derived,
               combination: Combination) -> Worked | None:
    """What the printed torque means on this thread and surface, and what to set; None where the spec names no thread."""
    key = key_of(combination)
    if spec.thread is None or spec.surface is None:
        return None
    recheck = _recheck(derived, key, spec)
    torque = _to_judge(derived, key, spec)
    thread = pick(work, machine, spec.thread, combination, f"'{spec.id}' (thread)")
    surface = pick(work, machine, spec.surface, combination, f"'{spec.id}' (surface)")
    band = work.book.surfaces[surface].nut_factor if surface in work.book.surfaces else None
    if isinstance(torque, NoFigure) or not isinstance(thread, Thread):
        return None
    pressed = _press_texts(spec, derived, key)
    if not isinstance(torque, Quantity) or band is None or pressed is None:
        why = "the torque" if not isinstance(torque, Quantity) else f"the nut factor of '{surface}'" if band is None \
            else f"'{spec.must_not_outpull}', which it must not out-pull,"
        outcome = Outcome(refusals=(Refusal(f"{why} cannot be relied on: {_NOT_TO_USE}", "do not tighten to a guess"),))
        return Worked("tightening-torque", spec.id, key, {}, {}, outcome)
    grade = pick(work, machine, spec.grade, combination, f"'{spec.id}' (grade)") if spec.grade else "none"
    texts = {"thread": thread.text, "grade": grade or "none", "nut factor": str(band),
             "torque": _worst_end(torque), **pressed}
    if torque.form != "range":                  # a window is judged at its top, and nobody sets a wrench there
        texts |= _wrench_texts(work.book, spec)
    if spec.pass_count:
        texts["passes"] = str(spec.pass_count)
    given, problems = given_inputs(tightening_torque.WORKING, texts)
    for problem in problems:
        work.error(spec.place, "working-input", f"'{spec.id}': {problem.message}", problem.mend)
    outcome = tightening_torque.compute(given) if not problems else Outcome(
        refusals=(Refusal("its inputs cannot be read", "mend the findings of its source"),))
    if recheck:                                 # no setting to act on; what it would pull is still told, as a warning
        outcome = replace(outcome, values=(), refusals=(recheck, *outcome.refusals))
    places = {name: spec.key_places.get(name, spec.place) for name in ("thread", "grade", "surface", "wrench", "adapter")}
    return Worked("tightening-torque", spec.id, key, texts, places, outcome)


def _to_judge(derived: Derived, key: CombinationKey, spec: Spec):
    """The torque in force, or the one that waits for its check: it is judged, and then refused."""
    resolved = derived.resolved[key, spec.id]
    waiting = next((each.worth for each in resolved if each.recheck), None)
    role = "target" if any(figure.standing() for figure in spec.in_role("target")) else "window"
    return waiting or figure_in_force(resolved, role)


def _recheck(derived: Derived, key: CombinationKey, spec: Spec) -> Refusal | None:
    why = next((each.recheck for each in derived.resolved[key, spec.id] if each.recheck), None)
    return Refusal(f"{RECHECK}: {why}", "do not use it until it has been checked again") if why else None


def _worst_end(torque: Quantity) -> str:
    """A window is judged at its upper end: that is where the bolt stands most."""
    return f"{torque.typed().rpartition(' to ')[2]}" if torque.form == "range" else torque.typed()


def _wrench_texts(book: Book, spec: Spec) -> dict[str, str]:
    wrench = book.wrenches.get(spec.wrench or "")
    if wrench is None:
        return {}
    texts = {"wrench lowest": wrench.lowest.typed(), "wrench highest": wrench.highest.typed(),
             "wrench graduation": wrench.graduation.typed(), "wrench accuracy": wrench.accuracy.typed()}
    adapter = book.adapters.get(spec.adapter or "")
    if adapter:
        texts["adapter length"] = adapter.offset.typed()
        if wrench.length:
            texts["wrench length"] = wrench.length.typed()
        if adapter.angle:
            texts["adapter angle"] = adapter.angle.typed()
    return texts


def _press_texts(spec: Spec, derived: Derived, key: CombinationKey) -> dict[str, str] | None:
    """The force really reached on the gauge that gives least, and the ceiling, of the press spec this nut may not out-pull.

    None where no press reaches one: the nut cannot be judged, and may not be set as if it had been."""
    pressed = spec.must_not_outpull
    if pressed is None:
        return {}
    ceiling = figure_in_force(derived.resolved.get((key, pressed.name), ()), "ceiling")
    reached = [card.outcome.value("force at the last mark") for card in derived.worked.get((key, pressed.name), ())
               if not card.outcome.refusals and card.outcome.has("force at the last mark")]
    if pressed.owner is not None or not reached:
        return None
    texts = {}
    if isinstance(ceiling, Quantity):
        texts = {"press ceiling": ceiling.typed()}
        if ceiling.unit.symbol in tightening_torque.CLAMP_STEPS:
            texts["force in"] = ceiling.unit.symbol
    least = min(reached, key=lambda value: value.likely).likely          # unrounded: 81.4 % is not 81.3 %
    texts["press force"] = shown(least, "press force", "N", digits=9)
    return texts
