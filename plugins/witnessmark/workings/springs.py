"""The working 'spring': rate, load, coil bind and stored energy of a round-wire compression spring."""
from __future__ import annotations

import math
from collections.abc import Mapping

from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Value, Working
from .printed import Band, in_system, in_unit, spread, three_figures, unit_of, value
from .reach import beyond_reach

#: Least travel still free at the working height, over the travel used: a fractional overrun of 0.15 (machine-design textbooks).
OVERRUN = 0.15


def spring_rate(wire: float, mean: float, coils: float, shear: float) -> float:
    """k = G d^4 / (8 D^3 Na), in N/m from m and Pa."""
    return shear * wire**4 / (8 * mean**3 * coils)


def curvature_factor(wire: float, mean: float) -> float:
    """Wahl's factor for the inside of the coil, from the index C = D / d over 1."""
    index = mean / wire
    return (4 * index - 1) / (4 * index - 4) + 0.615 / index


def coil_stress(load: float, wire: float, mean: float) -> float:
    """Shear stress at the inside of the coil, in Pa."""
    return curvature_factor(wire, mean) * 8 * load * mean / (math.pi * wire**3)


def _rates(given: Mapping[str, Given]) -> Band:
    """Lowest from the thinnest wire, widest coil, most coils and softest steel together."""
    wire, mean, coils, shear = (given[name] for name in ("wire", "mean diameter", "active coils", "shear modulus"))
    return (spring_rate(wire.low, mean.high, coils.high, shear.low), spring_rate(wire.likely, mean.likely, coils.likely, shear.likely),
            spring_rate(wire.high, mean.low, coils.low, shear.high))


def _solid_height(given: Mapping[str, Given]) -> float | None:
    if "solid height" in given:
        return given["solid height"].high
    return given["total coils"].high * given["wire"].high if "total coils" in given else None


def _nonsense(given: Mapping[str, Given], solid: float | None) -> Refusal | None:
    if given["wire"].high >= given["mean diameter"].low:
        return Refusal("the wire is as thick as the coil is wide", "give the wire's own diameter, and the coil from middle of wire to middle of wire")
    if "free height" not in given:
        missing = next((name for name in ("height", "load") if name in given), None)
        return Refusal(f"with a {missing} the free height is needed too", "measure the spring with nothing on it") if missing else None
    free = given["free height"].low
    if solid is not None and free <= solid:
        return Refusal(f"the free height {given['free height'].text} leaves no travel above the solid height", "check free height and number of coils")
    if "height" in given and given["height"].high >= free:
        return Refusal(f"at {given['height'].text} the spring is not squeezed", "give a height under the free height")
    if "height" in given and solid is not None and given["height"].low <= solid:
        return Refusal(f"at {given['height'].text} the coils would already be bound", "use a greater height, or a spring of fewer coils or thinner wire")
    return None


def compute(given: Mapping[str, Given]) -> Outcome:
    """The rate; with heights the load, stress and energy there and with the coils bound."""
    solid = _solid_height(given)
    refusal = beyond_reach(given) or _nonsense(given, solid)
    if refusal:
        return Outcome(refusals=(refusal,))
    rates = _rates(given)
    rate_unit, step = in_system(given["wire"], ("lbf/in", "1"), ("N/mm", "1"))
    values = [value("spring rate", "spring rate", spread(*rates), rate_unit, three_figures(rates[1], "spring rate", rate_unit, step))]
    warnings: list[str] = []
    squeezes = _squeeze(given, "height")
    if squeezes:
        values += _loaded(given, "at height", rates, squeezes)
    if "load" in given:
        load = given["load"]
        under = (load.low / rates[2], load.likely / rates[1], load.high / rates[0])
        if solid is not None and under[2] >= given["free height"].low - solid:
            return Outcome(refusals=(Refusal(f"under {load.text} the coils would be bound", "use a stiffer spring"),))
        if under[2] >= given["free height"].low:
            return Outcome(refusals=(Refusal(f"under {load.text} nothing of the height would be left", "use a stiffer spring"),))
        unit, fine = in_system(given["wire"], ("in", "0.01"), ("mm", "0.1"))
        values += [value("squeeze under load", "length", spread(*under), unit, fine),
                   value("height under load", "length", given["free height"].likely - under[1], unit, fine)]
        values += _loaded(given, "under load", (load.low / under[0], load.likely / under[1], load.high / under[2]), under)[1:]
    if solid is not None and "free height" in given:
        travel = given["free height"].likely - solid
        values += _loaded(given, "when solid", rates, (travel, travel, travel))
        if squeezes and travel < (1 + OVERRUN) * squeezes[2]:
            warnings.append("less than 15 % of the travel used is left before the coils bind")
    return Outcome(tuple(values), (), tuple(warnings), details=lambda: Details(_lines(given, rates, squeezes, solid)))


def _squeeze(given: Mapping[str, Given], name: str) -> Band | None:
    if name not in given:
        return None
    free, height = given["free height"], given[name]
    return free.low - height.high, free.likely - height.likely, free.high - height.low


def _loaded(given: Mapping[str, Given], where: str, rates: Band, squeezes: Band) -> list[Value]:
    """Load, stress and stored energy at one squeeze."""
    loads = tuple(rate * squeeze for rate, squeeze in zip(rates, squeezes, strict=True))
    energies = tuple(rate * squeeze**2 / 2 for rate, squeeze in zip(rates, squeezes, strict=True))
    stress = coil_stress(loads[1], given["wire"].likely, given["mean diameter"].likely)
    force, energy, stressed = (in_system(given["wire"], *pair) for pair in (
        (("lbf", "1"), ("N", "1")), (("lbf·ft", "1"), ("J", "1")), (("ksi", "1"), ("MPa", "1"))))
    return [value(f"load {where}", "force", spread(*loads), force[0], three_figures(loads[1], "force", *force)),
            value(f"stored energy {where}", "energy", spread(*energies), energy[0], three_figures(energies[1], "energy", *energy)),
            value(f"stress {where}", "stress", stress, *stressed)]


def _lines(given: Mapping[str, Given], rates: Band, squeezes: Band | None, solid: float | None) -> tuple[Line, ...]:
    wire, mean = given["wire"], given["mean diameter"]
    rate_unit, force, length = ("N/mm", "N", "mm") if unit_of(wire).system == "metric" else ("lbf/in", "lbf", "in")
    rate = in_unit(rates[1], "spring rate", rate_unit, "0.1")
    lines = [Line("Rate", "k = G d^4 / (8 D^3 Na)", f"{given['shear modulus'].text} x ({wire.text})^4 / (8 x ({mean.text})^3 x {given['active coils'].text})", rate),
             Line("Wire 2 % thicker would make it stiffer by", "1.02^4 - 1", "", f"{1.02**4 - 1:.0%}"),
             Line("Factor for the bend of the coil (Wahl)", "(4 C - 1) / (4 C - 4) + 0.615 / C", f"C = {mean.likely / wire.likely:.2f}",
                  f"{curvature_factor(wire.likely, mean.likely):.3f}")]
    if squeezes:
        squeeze = in_unit(squeezes[1], "length", length, "0.01")
        lines.append(Line("Load at the height", "F = k (free - height)", f"{rate} x {squeeze}", in_unit(rates[1] * squeezes[1], "force", force, "1")))
    if solid is not None:
        bound = "as given" if "solid height" in given else f"{given['total coils'].text} x {wire.text}"
        lines.append(Line("Height with the coils bound", "coils x wire", bound,
                          in_unit(solid, "length", length, "0.01")))
    if solid is not None and "free height" in given:
        travel = given["free height"].likely - solid
        lines.append(Line("Load with the coils bound", "F = k (free - solid)", f"{rate} x {in_unit(travel, 'length', length, '0.01')}",
                          in_unit(rates[1] * travel, "force", force, "1")))
    return tuple(lines)


WORKING = Working(
    id="spring",
    title="Rate, load and stored energy of a coil spring",
    purpose="Says what a round-wire compression spring should carry at a height, whether its coils bind, and what it would let go with.",
    formula=(Formula("k = G d^4 / (8 D^3 Na)", r"k = \frac{G d^4}{8 D^3 N_a}"),
             Formula("F = k (free - height)", r"F = k \, (\text{free} - \text{height})"),
             Formula("stored energy = k (free - height)² / 2", r"\text{stored energy} = \frac{k \, (\text{free} - \text{height})^2}{2}"),
             Formula("stress = Kw · 8 F D / (pi d³)", r"\text{stress} = K_w \cdot \frac{8 F D}{\pi d^3}"),
             Formula("Kw = (4 C - 1) / (4 C - 4) + 0.615 / C", r"K_w = \frac{4 C - 1}{4 C - 4} + \frac{0.615}{C}")),
    inputs=(
        Input("wire", "diameter", "thickness of the wire", ("0.01 in", "2 in"), "the wire, not the coil?"),
        Input("mean diameter", "diameter", "coil from middle of wire to middle of wire", ("0.05 in", "16 in"), "outside or inside diameter instead of the mean?"),
        Input("active coils", "turns", "coils that give; two less than all of them when both ends are closed", ("2 turns", "30 turns"), "half coils counted, or dead ends not taken off?"),
        Input("shear modulus", "stress", "stiffness of the wire in shear", ("9 Mpsi", "12 Mpsi"), "no spring steel; Young's modulus instead?"),
        Input("free height", "length", "height with nothing on it", required=False),
        Input("height", "length", "height at which the load is wanted", required=False),
        Input("load", "force", "load for which the height is wanted", required=False),
        Input("total coils", "turns", "all coils of a spring with closed and ground ends, for the solid height", required=False),
        Input("solid height", "length", "height with the coils bound, if known better than from the coils", required=False)),
    outputs=(
        Output("spring rate", "spring rate", "nearest", "load for each unit of squeeze"),
        Output("load at height", "force", "nearest", "load at the height given"),
        Output("stored energy at height", "energy", "nearest", "what it would let go with at the height given"),
        Output("stress at height", "stress", "nearest", "shear stress at the inside of the coil at the height given"),
        Output("squeeze under load", "length", "nearest", "how far the load given squeezes it"),
        Output("height under load", "length", "nearest", "height under the load given"),
        Output("stored energy under load", "energy", "nearest", "what it would let go with under the load given"),
        Output("stress under load", "stress", "nearest", "shear stress at the inside of the coil under the load given"),
        Output("load when solid", "force", "nearest", "load with the coils bound: what clamps must hold"),
        Output("stored energy when solid", "energy", "nearest", "what it would let go with when bound"),
        Output("stress when solid", "stress", "nearest", "shear stress with the coils bound")),
    source="machine-design textbooks, helical compression springs: deflection by Castigliano's theorem, Wahl's factor for the curvature",
    example=Example(
        {"wire": "0.875 in", "mean diameter": "4.00 in", "active coils": "6 turns", "shear modulus": "11.5 Mpsi", "free height": "9.00 in",
         "height": "7.86 in", "total coils": "8 turns"},
        {"spring rate": "2194 lbf/in", "load at height": "2502 lbf", "stored energy when solid": "366 lbf·ft", "load when solid": "4389 lbf"},
        "this project's demonstration book, by hand"),
    goes_wrong=("Wire 2 % thicker makes the spring 8 % stiffer: measure the load, do not trust the rate.",
                "Dead end coils counted as active, or the outside diameter taken for the mean.",
                "A spring that has set: free height and load are both down while the rate is as it was."),
    refuses=("Wire as thick as the coil is wide.", "A height above the free height, or one at which the coils would be bound.",
             "A load that would bind the coils."),
    assumes=("The ends of the band are the thinnest wire, widest coil and softest steel together, and their opposites.",),
    compute=compute)
