"""The judgement of each torque that no author declares: what it means on its thread and surface, and what to set."""

from dataclasses import replace
from functools import lru_cache

from ..core.book import Book
from ..core.derived import NOT_TO_USE, CombinationKey, Derived, Worked, key_of
from ..core.display import shown
from ..core.figure import NoFigure, Spec
from ..core.kinds import Problem
from ..core.machine import Machine
from ..core.procedure import Procedure
from ..core.quantity import Quantity
from ..core.thread import Thread
from ..core.variation import Combination
from ..core.working import Outcome, Refusal
from . import tightening_torque
from .evaluation import Evaluation, pick
from .in_force import figure_in_force, recheck
from .press_runs import Texts
from .read_inputs import given_inputs


def torque_run(work: Evaluation, machine: Machine, procedure: Procedure, spec: Spec, derived: Derived,
               combination: Combination) -> Worked | None:
    """What the printed torque means on this thread and surface, and what to set; None where the spec names no thread."""
    key = key_of(combination)
    if spec.thread is None or spec.surface is None:
        return None
    unchecked = recheck(derived.resolved[key, spec.id])
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
        outcome = Outcome(refusals=(Refusal(f"{why} cannot be relied on: {NOT_TO_USE}", "do not tighten to a guess"),))
        return Worked("tightening-torque", spec.id, key, {}, {}, outcome)
    grade = pick(work, machine, spec.grade, combination, f"'{spec.id}' (grade)") if spec.grade else "none"
    texts = {"thread": thread.text, "grade": grade or "none", "nut factor": str(band),
             "torque": _worst_end(torque), **pressed}
    if torque.form != "range":                  # a window is judged at its top, and nobody sets a wrench there
        texts |= _wrench_texts(work.book, spec)
    if spec.pass_count:
        texts["passes"] = str(spec.pass_count)
    outcome, problems = _tightened(tuple(texts.items()))
    for problem in problems:
        work.error(spec.place, "working-input", f"'{spec.id}': {problem.message}", problem.mend)
    if unchecked:                               # no setting to act on; what it would pull is still told, as a warning
        outcome = replace(outcome, values=(), refusals=(unchecked, *outcome.refusals))
    places = {name: spec.key_places.get(name, spec.place) for name in ("thread", "grade", "surface", "wrench", "adapter")}
    return Worked("tightening-torque", spec.id, key, texts, places, outcome)


@lru_cache(maxsize=4096)
def _tightened(texts: Texts) -> tuple[Outcome, tuple[Problem, ...]]:
    """One torque judged, or why it cannot be. Kept, as a shop has few sorts of bolts."""
    given, problems = given_inputs(tightening_torque.WORKING, dict(texts))
    if problems:
        return Outcome(refusals=(Refusal("its inputs cannot be read", "mend the findings of its source"),)), tuple(problems)
    return tightening_torque.compute(given), ()


def _to_judge(derived: Derived, key: CombinationKey, spec: Spec):
    """The torque in force, or the one that waits for its check: it is judged, and then refused."""
    resolved = derived.resolved[key, spec.id]
    waiting = next((each.worth for each in resolved if each.recheck), None)
    role = "target" if any(figure.standing() for figure in spec.in_role("target")) else "window"
    return waiting or figure_in_force(resolved, role)


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
