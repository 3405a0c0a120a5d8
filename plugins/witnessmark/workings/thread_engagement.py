"""The working 'thread-engagement': how deep a bolt or stud must be in for it to break before a thread strips. Declaration: see WORKING.

Both threads are taken at their worst limits. Shear strength is half the tensile strength, as the source has it.
"""
from __future__ import annotations

from collections.abc import Mapping

from ..core.units import find_unit
from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Value, Working
from .printed import in_unit, unit_of, value, words
from .stress_area import stress_area
from .tables.bolt_strengths import GRADES, KSI, MPA, Strength, StrengthProblem, strength_of
from .thread_limits import ThreadLimits, thread_limits

FORCE_STEPS = {"lbf": "10", "kN": "0.1", "long ton": "0.1", "short ton": "0.1", "tonne": "0.1"}


def compute(given: Mapping[str, Given]) -> Outcome:
    """Length needed; with an engagement, what fails first and at what pull."""
    thread, tapped = given["thread"].thread, given["tapped ultimate"].low
    limits = thread_limits(thread)
    if limits is None:
        return Outcome(refusals=(Refusal(f"{thread.text} is no thread that the tolerance formulas know", "check size and pitch"),))
    tensile = _tensile(given)
    if isinstance(tensile, Refusal):
        return Outcome(refusals=(tensile,))
    area, unified = stress_area(thread), thread.family == "unified"
    by_bolt, by_hole = (2 * area / limits.bolt_shear(), 2 * area * tensile / (tapped * limits.hole_shear()))
    needed = max(by_bolt, by_hole)
    unit, step = ("in", "0.01") if unified else ("mm", "0.1")
    force = find_unit(given["force in"].text if "force in" in given else "lbf" if unified else "kN", "force")
    values: list[Value] = [
        value("length needed", "length", needed, unit, step, "up"),
        value("in diameters", "factor", needed / thread.nominal_si, "", "0.01", "up"),
        value("bolt breaks at", "force", area * tensile, force, FORCE_STEPS[force.symbol])]
    warnings = []
    if "engagement" in given:
        depth = given["engagement"].low
        strips = {"the tapped thread strips": depth * limits.hole_shear() * tapped / 2, "the bolt's own thread strips": depth * limits.bolt_shear() * tensile / 2}
        first, pull = min(strips.items(), key=lambda each: each[1])
        values += [value("a thread strips at", "force", pull, force, FORCE_STEPS[force.symbol], "down"),
                   words("fails first", "the bolt breaks" if pull >= area * tensile * (1 - 1e-9) else first)]
        if pull < area * tensile * (1 - 1e-9):
            warnings.append(f"at {given['engagement'].text} {first} before the bolt breaks, and the casting is lost with it" if "tapped" in first else
                            f"at {given['engagement'].text} {first} before it breaks")
    return Outcome(tuple(values), (), tuple(warnings), details=lambda: Details(_lines(given, limits, tensile, by_bolt, by_hole, unit)))


def _tensile(given: Mapping[str, Given]) -> float | Refusal:
    """Tensile strength of the bolt, the highest that is believed: a stronger bolt needs more thread."""
    if "bolt ultimate" in given:
        return given["bolt ultimate"].high
    if "grade" not in given or given["grade"].text == "none":
        return Refusal("nothing says how strong the bolt is", "give its grade, or its tensile strength")
    strength = strength_of(given["grade"].text, given["thread"].thread)
    if isinstance(strength, StrengthProblem):
        return Refusal(strength.message, strength.mend)
    return _pascals(strength)


def _pascals(strength: Strength) -> float:
    return strength.tensile_printed * (KSI if strength.family == "unified" else MPA)


def _lines(given: Mapping[str, Given], limits: ThreadLimits, tensile: float, by_bolt: float, by_hole: float, unit: str) -> tuple[Line, ...]:
    fine, square = ("0.0001", ("in²", "0.0001")) if unit == "in" else ("0.001", ("mm²", "0.1"))
    def length(si: float) -> str:
        return in_unit(si, "length", unit, fine)

    ultimate = unit_of(given["tapped ultimate"])
    area = in_unit(stress_area(given["thread"].thread), "area", *square)
    strong = in_unit(tensile, "stress", ultimate, "0.1")
    sort = given["tapped ultimate is"].text if "tapped ultimate is" in given else "assumed"
    return (
        Line("Worst limits of the bolt (2A or 6g)", "", given["thread"].text, f"outside {length(limits.bolt_major)}, pitch diameter {length(limits.bolt_pitch)}"),
        Line("Worst limits of the tapped hole (2B or 6H)", "", "", f"pitch diameter {length(limits.hole_pitch)}, minor {length(limits.hole_minor)}"),
        Line("For the bolt's own thread", "Le = 2 As / (pi K (1/2 + 0.57735 n (E - K)))", f"2 x {area} / sheared area for each length", length(by_bolt)),
        Line(f"For the tapped thread, strength {sort}", "Le J, J = bolt shear x bolt ultimate / (tapped shear x tapped ultimate)",
             f"{strong} in {given['tapped ultimate'].text}", length(by_hole)),
        Line("The longer of the two", "", "", length(max(by_bolt, by_hole))))


WORKING = Working(
    id="thread-engagement",
    title="How deep a thread must be in",
    purpose="Says how much thread must be engaged for the bolt or stud to break before a thread strips, in a tapped material weaker than the bolt.",
    formula=(Formula("Le = 2 As / (pi K (1/2 + 0.57735 n (E - K)))", r"L_e = \frac{2 A_s}{\pi K \left( 1/2 + 0.57735 n (E - K) \right)}"),
             Formula("J = bolt shear · bolt ultimate / (tapped shear · tapped ultimate)",
                     r"J = \frac{\text{bolt shear} \cdot \text{bolt ultimate}}{\text{tapped shear} \cdot \text{tapped ultimate}}"),
             Formula("length needed = Le, or Le J when J is over 1", r"\text{length needed} = L_e \text{, or } L_e J \text{ when } J \text{ is over } 1")),
    inputs=(
        Input("thread", "thread", "thread of the bolt or stud"),
        Input("grade", "grade", "strength grade of the bolt, when it has one", required=False, choices=("none", *GRADES)),
        Input("bolt ultimate", "stress", "tensile strength of a bolt with no grade", ("50 ksi", "190 ksi"), "not a usual bolt", required=False),
        Input("tapped ultimate", "stress", "tensile strength of what it is screwed into", ("15 ksi", "160 ksi"), "not a usual casting or plate"),
        Input("tapped ultimate is", "choice", "where that strength is from; assumed when not said", required=False, choices=("assumed", "published")),
        Input("engagement", "length", "full thread that is engaged, to see what fails first", ("0.1 in", "4 in"), "count only full thread: no lead, no countersink", required=False),
        Input("force in", "choice", "unit of the pulls; lbf, or kN for a metric thread, when not said", required=False, choices=tuple(FORCE_STEPS))),
    outputs=(
        Output("length needed", "length", "up", "full thread for the bolt to break first"),
        Output("in diameters", "factor", "up", "the same over the bolt's diameter"),
        Output("bolt breaks at", "force", "nearest", "tensile strength on the stress area"),
        Output("a thread strips at", "force", "down", "pull at which the weaker of the two threads shears"),
        Output("fails first", "none", "nearest", "the bolt, its own thread or the tapped thread")),
    source="FED-STD-H28/2B and machinery handbooks, length of engagement; limits after ASME B1.1 (2A, 2B) and ISO 965-1 (6g, 6H). 1.5 diameters in iron: common practice, no source",
    example=Example({"thread": "1/2-13 UNC", "grade": "5", "tapped ultimate": "25 ksi", "engagement": "0.75 in"},
                    {"length needed": "1.22 in", "fails first": "the tapped thread strips"},
                    "by hand from the formulas: Le 0.362 in (a published table prints 0.36), J 3.34"),
    goes_wrong=("Lead of the bolt, countersink and the cut-back end of a tap counted as thread.",
                "A worn or torn thread: the limits here are those of a new one.",
                "An insert: it has the larger outside thread, and its maker's own length."),
    refuses=("A bolt of no known strength, or a grade outside its sizes.", "A thread the tolerance formulas do not know."),
    assumes=("Classes 2A in 2B, or 6g in 6H, at their worst limits; shear strength half of tensile strength for both, for iron the safe side.",
             "The strength of a casting is assumed unless it says published."),
    compute=compute)
