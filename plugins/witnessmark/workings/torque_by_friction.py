"""The working 'torque-by-friction': torque from the friction of thread and head, apart. Declaration: see WORKING.

For reading only: a procedure prints one torque, and that rests on a nut factor. This form shows where the torque
goes, and what another friction would do.
"""
from __future__ import annotations

import math
from collections.abc import Mapping

from ..core.units import Unit, find_unit
from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Table, Working
from .printed import Band, banded, in_unit, spread, unit_of, value
from .stress_area import stress_area
from .tables.bolt_strengths import GRADES, StrengthProblem, strength_of
from .taper_steps import friction_text

FORCE_STEPS = {"lbf": "10", "kN": "0.1", "long ton": "0.1", "short ton": "0.1", "tonne": "0.1"}
# Half the pitch's slope, and friction on the 60° flank: 1 / (2 pi) and 1 / (2 cos 30°), as the guideline rounds them.
PITCH_SHARE, FLANK_SHARE = 0.16, 0.58


def torque(force: float, pitch: float, pitch_diameter: float, thread_friction: float, head_diameter: float, head_friction: float) -> float:
    """M = F (0.16 P + 0.58 d2 mu thread + Dk / 2 mu head), in N·m from N and m."""
    return force * (PITCH_SHARE * pitch + FLANK_SHARE * pitch_diameter * thread_friction + head_diameter / 2 * head_friction)


def compute(given: Mapping[str, Given]) -> Outcome:
    """Torque over both frictions, the three parts of it, and the nut factor it comes to."""
    thread = given["thread"].thread
    pull = _pull(given)
    if isinstance(pull, Refusal):
        return Outcome(refusals=(pull,))
    head = _head(given)
    if isinstance(head, Refusal):
        return Outcome(refusals=(head,))
    pitch, pitch_diameter = thread.pitch_si, thread.nominal_si - 0.75 * math.sqrt(3) / 2 * thread.pitch_si
    if pitch_diameter <= 0:
        return Outcome(refusals=(Refusal(f"{thread.text} has no thread left at its pitch diameter", "check size and pitch"),))
    frictions = tuple(zip(*((given[name].low, given[name].likely, given[name].high) for name in ("thread friction", "head friction")), strict=True))
    made: Band = tuple(torque(pull, pitch, pitch_diameter, mu, head, under) for mu, under in frictions)
    unit = find_unit("lbf·ft" if thread.family == "unified" else "N·m", "torque")
    force = _force_unit(given)
    parts = _parts(pull, pitch, pitch_diameter, head, frictions[1])
    values = (value("clamp", "force", pull, force, FORCE_STEPS.get(force.symbol, "10")),
              value("torque", "torque", spread(*made), unit, "0.1" if made[1] / float(unit.factor) < 100 else "1"),
              value("share that pulls", "share", parts[0] / made[1], "%", "1"),
              value("nut factor", "factor", spread(*(each / (pull * thread.nominal_si) for each in made)), "", "0.001"))
    return Outcome(values, details=lambda: _details(given, parts, made, head, pitch_diameter, pull, unit))


def _pull(given: Mapping[str, Given]) -> float | Refusal:
    if "clamp" in given:
        return given["clamp"].likely
    if "grade" not in given or "share of proof" not in given or given["grade"].text == "none":
        return Refusal("nothing says how hard the bolt is to pull", "give the clamp, or a grade and a share of its proof load")
    strength = strength_of(given["grade"].text, given["thread"].thread)
    if isinstance(strength, StrengthProblem):
        return Refusal(strength.message, strength.mend)
    pull = given["share of proof"].likely * strength.proof * stress_area(given["thread"].thread)
    return pull if pull > 0 else Refusal("a share of nothing pulls nothing", "give a share of proof such as 75 %")


def _head(given: Mapping[str, Given]) -> float | Refusal:
    """Mean diameter of the face that rubs: half of its outside and its hole together."""
    outside, hole = given["head diameter"].likely, given["hole diameter"].likely if "hole diameter" in given else given["thread"].thread.nominal_si
    return (outside + hole) / 2 if outside > hole else Refusal("the face under the head is no larger than its hole", "measure the face of head, nut or washer that turns")


def _force_unit(given: Mapping[str, Given]) -> Unit:
    return unit_of(given["clamp"]) if "clamp" in given else find_unit("lbf" if given["thread"].thread.family == "unified" else "kN", "force")


def _parts(pull: float, pitch: float, pitch_diameter: float, head: float, friction: tuple[float, float]) -> Band:
    return pull * PITCH_SHARE * pitch, pull * FLANK_SHARE * pitch_diameter * friction[0], pull * head / 2 * friction[1]


def _details(given: Mapping[str, Given], parts: Band, made: Band, head: float, pitch_diameter: float, pull: float, unit: Unit) -> Details:
    length = ("in", "0.001") if unit.symbol == "lbf·ft" else ("mm", "0.01")
    def moment(si: float) -> str:
        return in_unit(si, "torque", unit, "0.1")

    thread, under = (friction_text(given[name].likely) for name in ("thread friction", "head friction"))
    lines = (Line("To pull the bolt", "0.16 P F", in_unit(pull, "force", _force_unit(given), FORCE_STEPS.get(_force_unit(given).symbol, "10")), moment(parts[0])),
             Line("Lost in the thread", "0.58 d2 mu F", f"pitch diameter {in_unit(pitch_diameter, 'length', *length)}, friction {thread}", moment(parts[1])),
             Line("Lost under the head", "Dk / 2 mu F", f"mean diameter {in_unit(head, 'length', *length)}, friction {under}", moment(parts[2])),
             Line("Together", "", "", moment(made[1])), Line("Over both frictions", "", "", banded(made, "torque", unit, "0.1")))
    rows = tuple((f"{100 * share:.0f} % of the clamp", *(moment(each * share) for each in made)) for share in (0.5, 0.75, 1.0))
    return Details(lines, (Table("Torque by friction", ("", "lowest friction", "likely", "highest"), rows),))


WORKING = Working(
    id="torque-by-friction",
    title="Where a tightening torque goes",
    purpose="Splits a torque into what pulls the bolt, what the thread and what the head lose, and shows the nut factor it comes to. "
            "For reading only: a procedure prints one torque.",
    formula=(Formula("M = F (0.16 P + 0.58 d2 mu thread + Dk / 2 mu head)",
                     r"M = F \left( 0.16 P + 0.58 d_2 \mu_\text{thread} + \frac{D_k}{2} \mu_\text{head} \right)"),
             Formula("Dk = (head + hole) / 2", r"D_k = \frac{\text{head} + \text{hole}}{2}"),
             Formula("K = M / (F d)", r"K = \frac{M}{F d}")),
    inputs=(
        Input("thread", "thread", "thread of the bolt or nut"),
        Input("clamp", "force", "pull that is wanted", ("50 lbf", "100000 lbf"), "not the pull of a usual bolt", required=False),
        Input("grade", "grade", "strength grade, for a share of its proof load", required=False, choices=("none", *GRADES)),
        Input("share of proof", "share", "share of proof load to pull to, when no clamp is given", ("25 %", "90 %"), "reusable joints take about 75 %", required=False),
        Input("thread friction", "friction", "friction in the thread: low / likely / high", ("0.06", "0.25"), "not a friction of a thread: was a nut factor given?"),
        Input("head friction", "friction", "friction under what turns: low / likely / high", ("0.06", "0.25"), "not a friction of a face: was a nut factor given?"),
        Input("head diameter", "diameter", "outside of the face that turns: washer face of the head or nut", ("0.2 in", "4 in"), "not a usual face"),
        Input("hole diameter", "diameter", "hole under it; the thread's size when not said", required=False)),
    outputs=(
        Output("clamp", "force", "nearest", "pull it is worked out for"),
        Output("torque", "torque", "nearest", "over both frictions, low with low and high with high"),
        Output("share that pulls", "share", "nearest", "share of the likely torque that is not lost to friction"),
        Output("nut factor", "factor", "nearest", "K of the plain formula T = K D F that it comes to")),
    source="VDI 2230, tightening torque from pitch, thread friction and head friction; the same split in machine-design textbooks",
    example=Example(
        {"thread": "M20 x 1.5", "clamp": "148 kN", "thread friction": "0.12", "head friction": "0.12", "head diameter": "28.19 mm", "hole diameter": "22 mm"},
        {"torque": "454 N·m", "share that pulls": "8 %"},
        "VDI 2230 (2001), fine threads, 8.8 at friction 0.12: 148 kN and 454 N·m; face of a hexagon head"),
    goes_wrong=("A nut factor written as a friction: 0.15 of one is not 0.15 of the other.", "The head's width across flats taken for its face, or the hole forgotten.",
                "One friction for both, where the head is dry and the thread oiled.", "A locking nut: its own drag comes on top."),
    refuses=("No clamp, and no grade with a share of proof.", "A grade outside its sizes.", "A face no larger than its hole."),
    assumes=("Friction drives the band: both frictions are low together and high together.", "60° threads, and a flat face that rubs all over."),
    compute=compute, for_reading_only=True)
