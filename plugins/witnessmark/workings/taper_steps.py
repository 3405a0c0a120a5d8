"""How a taper fit was worked out: the steps, the table over the friction band, and the units they are shown in."""
from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from ..core.units import Unit
from ..core.working import Details, Given, Line, Table
from .printed import FORCE_STEPS, Band, banded, in_unit, unit_of
from .taper_drawing import Curve, taper_drawing
from .taper_fit import Fit, Taper


@dataclass(frozen=True)
class Units:
    """The units a result is shown in, after those of the inputs, with their steps."""
    force: Unit
    length: Unit
    length_step: str
    stress: str
    stress_step: str
    pressure: str
    pressure_step: str
    torque: str


def units_of_fit(given: Mapping[str, Given]) -> Units:
    force, length = unit_of(given["force"]), unit_of(given["mean diameter"])
    inch = length.system == "inch"
    return Units(force, length, {"in": "0.0001", "thou": "0.1", "mm": "0.001", "µm": "1"}.get(length.symbol, "0.000001"),
                 *(("ksi", "0.1", "psi", "10", "lbf·ft") if inch else ("MPa", "1", "MPa", "0.1", "N·m")))


def off_step(unit: Unit) -> str:
    return "0.1" if "ton" in unit.symbol else FORCE_STEPS[unit.symbol]


def keyway_factor(given: Mapping[str, Given]) -> Band:
    factor = given.get("keyway factor")
    return (factor.low, factor.likely, factor.high) if factor else (1.0, 1.0, 1.0)


def sort_of_strength(given: Mapping[str, Given]) -> str:
    return given["hub ultimate is"].text if "hub ultimate is" in given else "assumed"


def details(given: Mapping[str, Given], joint: Taper, units: Units) -> Details:
    force, friction = given["force"], given["friction"]
    frictions = {f"friction {friction_text(mu)}": mu for mu in (friction.high, friction.likely, friction.low)}
    if "oiled friction" in given:
        frictions[f"oiled, {friction_text(given['oiled friction'].likely)}"] = given["oiled friction"].likely
    fits = [joint.fit(force.likely, mu) for mu in frictions.values()]
    curves = [Curve(name, fit.stress) for name, fit in zip(frictions, fits, strict=True)]
    at = f"at {in_unit(force.likely, 'press force', units.force, FORCE_STEPS[units.force.symbol])}"
    drawing = taper_drawing(given, curves, in_unit(force.likely, "press force", units.force, FORCE_STEPS[units.force.symbol]),
                            lambda stress: in_unit(stress, "stress", units.stress, units.stress_step))
    return Details(_lines(given, joint, units, at), (_table(given, frictions, fits, units, at),), drawing)


def _table(given: Mapping[str, Given], frictions: Mapping[str, float], fits: list[Fit], units: Units, at: str) -> Table:
    def row(name: str, cell) -> tuple[str, ...]:
        return (name, *(cell(fit) for fit in fits))

    rows = [row("Contact pressure", lambda fit: in_unit(fit.pressure, "stress", units.pressure, units.pressure_step)),
            row("Hub stress at the bore", lambda fit: in_unit(fit.stress, "stress", units.stress, units.stress_step)),
            row("Advance", lambda fit: in_unit(fit.advance, "length", units.length, units.length_step)),
            row("Interference on diameter", lambda fit: in_unit(fit.interference, "length", units.length, units.length_step)),
            row("Interference per side", lambda fit: in_unit(fit.interference / 2, "length", units.length, units.length_step)),
            row("Grip", lambda fit: in_unit(fit.grip, "torque", units.torque, "1")),
            row("Push-off", lambda fit: in_unit(fit.off, "press force", units.force, off_step(units.force))),
            row("Holds itself", lambda fit: "yes" if fit.friction > given["taper"].likely / 2 else "no")]
    if "proud by hand" in given:
        rows.append(row("Proud after", lambda fit: in_unit(given["proud by hand"].likely - fit.advance, "length", units.length, units.length_step)))
    if "hub ultimate" in given:
        ultimate, (low, _, high) = given["hub ultimate"].likely, keyway_factor(given)
        rows.append(row(f"Ultimate ({sort_of_strength(given)}) over stress", lambda fit: f"{ultimate / (high * fit.stress):.2f}" + (
            f" to {ultimate / (low * fit.stress):.2f}" if low < high else "")))
    return Table(f"Over the friction band, {at}", ("", *frictions), tuple(rows))


def _lines(given: Mapping[str, Given], joint: Taper, units: Units, at: str) -> tuple[Line, ...]:
    force, friction, pair = given["force"], given["friction"], joint.pair
    fit = joint.fit(force.likely, friction.likely)
    pressure, unit = in_unit(fit.pressure, "stress", units.pressure, units.pressure_step), float(units.force.factor)
    lines = [
        Line("Half the taper", "T / 2 = tan a", f"{given['taper'].text} / 2", f"{joint.taper / 2:.4f}"),
        Line("Contact pressure at the likely friction", "p = F / (pi d L (mu + T/2))", f"{at}, friction {friction_text(friction.likely)}", pressure),
        Line("Hoop stress at the hub's bore", "s = p (D² + d²) / (D² - d²)", f"{pressure} x {pair.hub_ratio:.3f}",
             in_unit(fit.stress, "stress", units.stress, units.stress_step)),
        Line("Interference, on the diameter", "delta = p d (a + c)",
             f"{pressure} x {given['mean diameter'].text} x (({pair.hub_ratio:.3f} + {pair.hub_poisson:g}) / {given['hub modulus'].text} "
             f"+ ({pair.shaft_ratio:.3f} - {pair.shaft_poisson:g}) / {given['shaft modulus'].text})",
             in_unit(fit.interference, "length", units.length, units.length_step)),
        Line("The same, per side", "delta / 2", "", in_unit(fit.interference / 2, "length", units.length, units.length_step)),
        Line("Advance along the shaft", "delta / T", "", in_unit(fit.advance, "length", units.length, units.length_step)),
        Line(f"Advance for each {units.force.symbol} at the likely friction, a straight line", "advance / F", "",
             in_unit(fit.advance / force.likely * unit, "length", units.length, "0.00001" if units.length.symbol == "in" else units.length_step))]
    if "hub ultimate" in given:
        low, _, high = keyway_factor(given)
        lines.append(Line(f"Ultimate strength of the hub, {sort_of_strength(given)}: an illustration, never permission",
                          "ultimate / (keyway factor x s)", f"keyway factor {low:g} to {high:g}, assumed" if low < high else f"keyway factor {low:g}, assumed",
                          banded(tuple(given["hub ultimate"].likely / (k * fit.stress) for k in reversed(keyway_factor(given))), "factor", "", "0.01")))
    return tuple(lines)


def friction_text(friction: float) -> str:
    """Two decimals, as bands of friction are written, and more where there are more."""
    return f"{friction:.2f}" if abs(friction * 100 - round(friction * 100)) < 1e-9 else f"{friction:g}"
