"""The working 'taper-grip': how hard a taper must be pressed to carry a torque. Declaration: see WORKING.

Thin-cone statics with friction along the whole length and no key: half-taper tan a = T/2 stands for
sin a / cos a, exact in the ratio of grip to force but for 1/cos a (under 0.4 % to 1:6), left out to the safe side.
"""
from __future__ import annotations

import math
from collections.abc import Mapping

from ..core.units import Unit, find_unit
from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Working
from .printed import Band, banded, in_unit, unit_of, value

FORCE_UNITS = ("long ton", "short ton", "tonne", "kN", "lbf")
_FLOOR_STEPS = {"lbf": "100", "kN": "1"}
"""Step of the floor: 0.1 of a ton; coarser for small units, still on the safe side."""


def force_for_torque(torque: float, diameter: float, taper: float, friction: float) -> float:
    """F = (2 T / d) (mu + T/2) / mu, in N from N·m and m."""
    return 2 * torque / diameter * (friction + taper / 2) / friction


def torque_for_force(force: float, diameter: float, taper: float, friction: float) -> float:
    """T = (F d / 2) mu / (mu + T/2), in N·m."""
    return force * diameter / 2 * friction / (friction + taper / 2)


def contact_pressure(force: float, diameter: float, length: float, taper: float, friction: float) -> float:
    """p = F / (pi d L (mu + T/2)), in Pa."""
    return force / (math.pi * diameter * length * (friction + taper / 2))


def push_off(force: float, taper: float, friction: float) -> float:
    """F off = F (mu - T/2) / (mu + T/2), in N; not over zero when the taper will not hold itself."""
    return force * (friction - taper / 2) / (friction + taper / 2)


def compute(given: Mapping[str, Given]) -> Outcome:
    """The floor at the lowest friction; with a force, grip, push-off and contact pressure over the band."""
    torque, taper = given["torque to carry"], given["taper"].likely
    diameter, length, friction = given["mean diameter"].likely, given["length"].likely, given["friction"]
    if length * taper / 2 >= diameter:
        return Outcome(refusals=(Refusal("a taper this steep runs to a point within its length", "check taper, length and mean diameter"),))
    if friction.low <= taper / 2:
        return Outcome(refusals=(Refusal(
            f"friction may be as low as {friction.low:g}, not over half the taper ({taper / 2:.4f}): the taper would not hold itself",
            "find a surface with more friction, or another way of holding the part"),))
    unit = _force_unit(given)
    bands = [force_for_torque(torque.high, diameter, taper, mu) for mu in (friction.high, friction.likely, friction.low)]
    floor = value("force needed", "press force", bands[2], unit, _FLOOR_STEPS.get(unit.symbol, "0.1"), "up")
    values = [floor]
    psi, step = ("psi", "10") if unit_of(given["mean diameter"]).system == "inch" else ("MPa", "0.1")
    pressed = given["force"].likely if "force" in given else bands[2]
    # The lowest friction of the band gives the highest pressure and the least grip.
    spread = (friction.low, friction.likely, friction.high)
    pressures = tuple(contact_pressure(pressed, diameter, length, taper, mu) for mu in reversed(spread))
    values.append(value("contact pressure", "stress", pressures, psi, step))
    if "force" in given:
        torque_unit = unit_of(torque)
        grips = tuple(torque_for_force(pressed, diameter, taper, mu) for mu in spread)
        values.append(value("grip", "torque", grips, torque_unit, "1"))
        values.append(value("push-off force", "press force", tuple(push_off(pressed, taper, mu) for mu in spread), unit,
                            "0.1" if "ton" in unit.symbol else "1"))
    def details() -> Details:
        return Details(_lines(given, pressed, (bands[0], bands[1], bands[2]), pressures, unit, psi, step))

    warnings = ()
    if "force" in given and pressed < bands[2]:
        warnings = ("at the lowest friction this force does not carry the torque",)
    return Outcome(tuple(values), (), warnings, details=details)


def _lines(given: Mapping[str, Given], pressed: float, forces: Band, pressures: Band, unit: Unit, psi: str, step: str) -> tuple[Line, ...]:
    torque, taper, friction = given["torque to carry"], given["taper"].likely, given["friction"]
    fine, coarse = ("0.01", "0.1") if "ton" in unit.symbol else ("1", "1")
    return (
        Line("Half the taper", "T / 2 = tan a", f"{given['taper'].text} / 2", f"{taper / 2:.4f}"),
        Line("Force needed at the lowest friction, before rounding up", "F = (2 Tq / d) (mu + T/2) / mu",
             f"2 x {torque.text} / {given['mean diameter'].text} x ({friction.low:g} + {taper / 2:.4f}) / {friction.low:g}",
             in_unit(forces[2], "press force", unit, fine, "up")),
        Line("The same over the friction band", "", f"friction {friction.high:g} / {friction.likely:g} / {friction.low:g}",
             banded(forces, "press force", unit, coarse)),
        Line("Contact pressure", "p = F / (pi d L (mu + T/2))",
             f"at {in_unit(pressed, 'press force', unit, fine)}", banded(pressures, "stress", psi, step)))


def _force_unit(given: Mapping[str, Given]) -> Unit:
    if "force in" in given:
        return find_unit(given["force in"].text, "press force")
    if "force" in given:
        return unit_of(given["force"])
    return find_unit("kN" if unit_of(given["torque to carry"]).system == "metric" else "long ton", "press force")


WORKING = Working(
    id="taper-grip",
    title="Force that makes a taper carry a torque",
    purpose="Gives the floor of a press force: the least that holds the torque at the lowest friction of the band, key ignored.",
    formula=(Formula("F = (2 Tq / d) (mu + T/2) / mu", r"F = \frac{2 T_q}{d} \cdot \frac{\mu + T/2}{\mu}"),
             Formula("p = F / (pi d L (mu + T/2))", r"p = \frac{F}{\pi d L (\mu + T/2)}"),
             Formula("grip = (F d / 2) mu / (mu + T/2)", r"\text{grip} = \frac{F d}{2} \cdot \frac{\mu}{\mu + T/2}"),
             Formula("push-off = F (mu - T/2) / (mu + T/2)", r"\text{push-off} = F \cdot \frac{\mu - T/2}{\mu + T/2}")),
    inputs=(
        Input("torque to carry", "torque", "torque the joint must hold without its key", ("20 lbf·ft", "20000 lbf·ft"), "pound-inches and pound-feet mixed up?"),
        Input("taper", "taper", "taper on the diameter", ("1:24", "1:6"), "per side instead of on the diameter?"),
        Input("mean diameter", "diameter", "middle of the large and small end", ("0.5 in", "8 in"), "not a usual shaft taper"),
        Input("length", "length", "length in contact", ("0.5 in", "12 in"), "not a usual hub"),
        Input("friction", "friction", "friction of the surfaces: low / likely / high", ("0.05", "0.25"), "not a friction of steel on steel"),
        Input("force", "press force", "force it is pressed with, to see what that holds", required=False),
        Input("force in", "choice", "unit of the floor; long ton, or kN for a metric torque, when not said", required=False, choices=FORCE_UNITS)),
    outputs=(
        Output("force needed", "press force", "up", "floor of the press force, at the lowest friction"),
        Output("contact pressure", "stress", "nearest", "pressure between hub and shaft, over the friction band"),
        Output("grip", "torque", "nearest", "torque the given force holds, over the friction band"),
        Output("push-off force", "press force", "nearest", "force to push it off again while the fit is fresh")),
    source="statics of a self-holding cone: textbook treatment of cone clutches, engaging force N (sin a + mu cos a), torque mu N d / 2",
    example=Example(
        {"torque to carry": "3080 lbf·ft", "taper": "1:12", "mean diameter": "3.000 in", "length": "3.50 in", "friction": "0.12 / 0.15 / 0.20"},
        {"force needed": "14.9 long ton"},
        "this project's demonstration book, by hand"),
    goes_wrong=("An oiled taper: the same force grips nearly as well but stresses the hub half as much again or more.",
                "A key that bottoms, or a worn taper with no draw left: force without grip.",
                "Serrated or splined tapers: the area is unknown and the result only a trend."),
    refuses=("Friction that may be no more than half the taper: it would not hold itself.",),
    compute=compute)
