"""What each finding of working out means, for `witnessmark explain`: a right and a wrong source, alike but for the slip."""

from ..core.lesson import Lesson

MANUAL: dict[str, Lesson] = {
    "no-figure": Lesson(
        "Each variant has its figure, or none written for it: a gap is never filled from a neighbour.",
        "is: {early: 8 short ton, late: 10 short ton}", "is: {late: 10 short ton}"),
    "two-figures": Lesson(
        "Two cases that both hold give two figures for one machine, and nobody says which.",
        "is: {early: 8 short ton, late: 10 short ton}",
        "is: {early: 8 short ton, up to 600: 9 short ton, late: 10 short ton}"),
    "working-input": Lesson(
        "A working takes its inputs by name, each with a unit of its kind and inside what it can be.",
        "mean diameter: 3.000 in", "mean diameter: 3.000 psi"),
    "working-for-reading": Lesson(
        "A working that only explains stands on its manual page and at the command line; a procedure prints one torque.",
        "working: taper-grip", "working: torque-by-friction"),
    "unit-of-another-kind": Lesson(
        "A figure taken from a result must be of the same kind: a torque is no length.",
        "from: grip.force needed", "from: grip.contact pressure"),
    "loop": Lesson(
        "A result that rests on itself has no beginning.",
        "torque to carry: 400 lbf·ft", "torque to carry: grip.force needed"),
}
