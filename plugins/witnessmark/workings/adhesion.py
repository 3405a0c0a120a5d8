"""The working 'slip-torque': the most a driving wheel can take before it slips, at the wheel and at the shaft that drives it."""
from __future__ import annotations

from collections.abc import Mapping

from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Working
from .printed import in_system, in_unit, spread, three_figures, value
from .reach import beyond_reach

GRAVITY = 9.80665
"""m/s², standard: what makes a pound-mass weigh a pound-force."""


def compute(given: Mapping[str, Given]) -> Outcome:
    """Pull and torque at slip over the band of adhesion."""
    refusal = beyond_reach(given)
    if refusal:
        return Outcome(refusals=(refusal,))
    weight, adhesion, radius = given["weight on the wheels"], given["adhesion"], given["wheel radius"]
    reduction = given["reduction"].likely if "reduction" in given else 1.0
    pulls = tuple(GRAVITY * mass * mu for mass, mu in ((weight.low, adhesion.low), (weight.likely, adhesion.likely), (weight.high, adhesion.high)))
    torques = tuple(pull * arm / reduction for pull, arm in zip(pulls, (radius.low, radius.likely, radius.high), strict=True))
    force, turn = in_system(weight, ("lbf", "1"), ("N", "1")), in_system(weight, ("lbf·ft", "1"), ("N·m", "1"))
    values = (value("pull at slip", "force", spread(*pulls), force[0], three_figures(pulls[1], "force", *force)),
              value("slip torque", "torque", spread(*torques), turn[0], three_figures(torques[1], "torque", *turn)))

    def details() -> Details:
        lines = [Line("Pull at the rim", "weight · adhesion", f"{weight.text} x {adhesion.text}", values[0].printed),
                 Line("Torque at the wheels", "pull · radius", f"{in_unit(pulls[1], 'force', *force)} x {radius.text}",
                      in_unit(torques[1] * reduction, "torque", *turn))]
        if "reduction" in given:
            lines.append(Line("Torque at the shaft", "torque / reduction", f"/ {given['reduction'].text}", in_unit(torques[1], "torque", *turn)))
        return Details(tuple(lines))

    return Outcome(values, details=details)


WORKING = Working(
    id="slip-torque",
    title="Torque at which the wheels slip",
    purpose="Gives the most torque a driven shaft can meet: more and the wheels slip. A joint that carries it needs no more.",
    formula=(Formula("pull = weight · adhesion", r"\text{pull} = \text{weight} \cdot \text{adhesion}"),
             Formula("torque = pull · radius / reduction", r"\text{torque} = \text{pull} \cdot \text{radius} / \text{reduction}")),
    inputs=(
        Input("weight on the wheels", "mass", "weight on the driven wheels together", ("100 lb", "500,000 lb"), "weight of the whole vehicle, or of one wheel?"),
        Input("adhesion", "friction", "grip of the wheels on rail or ground", ("0.10", "0.80"), "dry sanded rail is about 0.35, a tractor tyre on firm ground up to 0.80"),
        Input("wheel radius", "radius", "from the middle to the tread", ("3 in", "45 in"), "a diameter instead of a radius?"),
        Input("reduction", "gear ratio", "turns of the shaft for one turn of the wheel; 1 when not given", ("0.5", "100"), "turned upside down?", required=False)),
    outputs=(
        Output("pull at slip", "force", "nearest", "pull at the rim when the wheels slip"),
        Output("slip torque", "torque", "nearest", "torque at the shaft when the wheels slip")),
    source="statics; adhesive weight times coefficient of adhesion (railway engineering textbooks)",
    example=Example({"weight on the wheels": "5.5 long ton", "adhesion": "0.30", "wheel radius": "10.0 in"}, {"slip torque": "3080 lbf·ft", "pull at slip": "3696 lbf"},
                    "this project's demonstration book, by hand"),
    goes_wrong=("Weight on wheels that are not driven counted in.",
                "A wheel chained or scotched: then nothing slips, and the engine's own torque decides.",
                "Sand or a rack rail: more grip than the figure."),
    refuses=("Sizes no machine has.",),
    assumes=("The adhesion drives the band: it is a guess about rail or ground.",),
    compute=compute)
