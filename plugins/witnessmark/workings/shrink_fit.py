"""The working 'shrink-fit': how warm the outer part, or how cold the inner, for the two to slip together. Declaration: see WORKING.

Growth is on the diameter. Heated, the coefficient given holds; steel cooled shrinks by a published table, less and
less for each degree, unless a coefficient of its own is given for the cold.
"""
from __future__ import annotations

from collections.abc import Callable, Mapping

from ..core.units import Unit, find_unit
from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Table, Working
from .printed import in_unit, unit_of, value, words
from .tables.steel_contraction import COLDEST, WARMEST, steel_growth

WAYS = ("heat the outer", "cool the inner")


def compute(given: Mapping[str, Given]) -> Outcome:
    """The temperature at which interference and clearance are both there; refused past the part's limit."""
    cold = given["way"].text == "cool the inner"
    room, limit, diameter = given["room temperature"].likely, given["never pass"], given["diameter"].likely
    growth = _growth(given, cold)
    if isinstance(growth, Refusal):
        return Outcome(refusals=(growth,))
    if cold and limit.high >= room or not cold and limit.low <= room:
        return Outcome(refusals=(Refusal(f"the limit of {given['never pass'].text} is on the wrong side of the room temperature of {given['room temperature'].text}",
                                         "give the coldest the part may be when it is cooled, the hottest when it is heated"),))
    end = limit.high if cold else limit.low
    want = (given["interference"].high + given["clearance"].likely) / diameter
    need, grips = (_reach(growth, room, end, amount) for amount in (want, given["interference"].high / diameter))
    unit, length = _unit(given), unit_of(given["diameter"])
    step = {"in": "0.001", "mm": "0.01"}.get(length.symbol, "0.001")
    there = growth(room, end) * diameter
    if need is None:
        return Outcome(refusals=(Refusal(
            f"at the limit of {limit.text} it {'shrinks' if cold else 'grows'} {in_unit(there, 'length', length, step, 'down')}, not the "
            f"{in_unit(want * diameter, 'length', length, step, 'up')} of interference and clearance together",
            "heat one and cool the other, accept less clearance, or press it" if cold else "cool the inner part as well, accept less clearance, or press it"),))
    rise = "°F rise" if unit.symbol == "°F" else "°C rise"
    spare = there - given["interference"].high
    values = [value("change of temperature", "temperature rise", abs(need - room), rise, "1"),
              value("bring it to", "temperature", need, unit, "1"),
              value("grips at", "temperature", grips, unit, "1"),
              value("clearance at the limit", "clearance", spare, length, step, "down"),
              words("do not pass", f"{limit.text}: {'no colder' if cold else 'no hotter'}")]
    warnings = []
    if "modulus" in given:
        values.append(value("ring stress", "stress", given["modulus"].likely * given["interference"].high / diameter,
                            "ksi" if unit.symbol == "°F" else "MPa", "1"))
    if cold and "cold expansion" not in given:
        warnings.append("shrinkage is that of carbon steel: another metal needs its own expansion for the cold")
    return Outcome(tuple(values), (), tuple(warnings), details=lambda: _details(given, growth, need, unit))


Growth = Callable[[float, float], float]
"""Change of size, as a share of it, between two temperatures in K; never under zero."""


def _growth(given: Mapping[str, Given], cold: bool) -> Growth | Refusal:
    if not cold:
        if "expansion" not in given:
            return Refusal("nothing says how the outer part expands", "name its material, or give its expansion")
        return lambda start, end: given["expansion"].low * abs(end - start)
    if "cold expansion" in given:
        return lambda start, end: given["cold expansion"].low * abs(end - start)
    if given["never pass"].high < COLDEST or given["room temperature"].likely > WARMEST:
        return Refusal("the table of steel in the cold runs from -325 °F to 200 °F (-198 °C to 93 °C)", "give the part's own expansion for the cold")
    return lambda start, end: steel_growth(start) - steel_growth(end)


def _reach(growth: Growth, room: float, end: float, amount: float) -> float | None:
    """The temperature between room and limit where the growth is `amount`, by halving; None when it is not reached."""
    if growth(room, end) < amount * (1 - 1e-9):
        return None
    near, far = room, end
    for _ in range(80):
        middle = (near + far) / 2
        near, far = (middle, far) if growth(room, middle) < amount else (near, middle)
    return far


def _unit(given: Mapping[str, Given]) -> Unit:
    """The scale of the limit; the results stand in both anyway."""
    return find_unit(unit_of(given["never pass"]).symbol, "temperature")


def _details(given: Mapping[str, Given], growth: Growth, need: float, unit: Unit) -> Details:
    room, length, diameter = given["room temperature"].likely, unit_of(given["diameter"]), given["diameter"].likely
    step = {"in": "0.0001", "mm": "0.001"}.get(length.symbol, "0.0001")
    want = given["interference"].high + given["clearance"].likely
    mean = growth(room, need) / abs(need - room)
    per = in_unit(mean, "expansion", "ppm/°F" if unit.symbol == "°F" else "ppm/°C", "0.01")
    change = in_unit(abs(need - room), "temperature rise", "°F rise" if unit.symbol == "°F" else "°C rise", "1")
    lines = (Line("Change of diameter wanted", "interference + clearance", f"{given['interference'].text} + {given['clearance'].text}",
                  in_unit(want, "length", length, step)),
             Line("Change of temperature", "dT = change / (alpha d)", f"{in_unit(want, 'length', length, step)} / ({per} x {given['diameter'].text})", change),
             Line("Temperature", "room and change", f"{given['room temperature'].text} {'+' if need > room else '-'} {change}", in_unit(need, "temperature", unit, "1")))
    rows = []
    for part in range(1, 6):
        at = room + (given["never pass"].likely - room) * part / 5
        free = growth(room, at) * diameter - given["interference"].high
        rows.append((in_unit(at, "temperature", unit, "1"), in_unit(at, "temperature", "°C" if unit.symbol == "°F" else "°F", "1"),
                     in_unit(growth(room, at) * diameter, "length", length, step), in_unit(free, "clearance", length, step)))
    return Details(lines, (Table("On the way to the limit", ("at", "", "change of diameter", "free (minus: still tight)"), tuple(rows)),))


WORKING = Working(
    id="shrink-fit",
    title="Heat or cold for a shrink fit",
    purpose="Says how far to heat the outer part or cool the inner, so that interference and a clearance to slip it on are both there.",
    formula=(Formula("dT = (delta + clearance) / (alpha d)", r"dT = \frac{\delta + \text{clearance}}{\alpha d}"),
             Formula("bring it to = room temperature + dT, or less dT when cooling",
                     r"\text{bring it to} = \text{room temperature} + dT \text{, or less } dT \text{ when cooling}"),
             Formula("ring stress = E delta / d, a thin ring on something that does not give",
                     r"\text{ring stress} = \frac{E \delta}{d} \text{, a thin ring on something that does not give}")),
    inputs=(
        Input("way", "choice", "what is done", choices=WAYS),
        Input("diameter", "diameter", "diameter of the fit", ("0.5 in", "60 in"), "not a usual shrink fit"),
        Input("interference", "interference", "on the diameter, cold", ("0.0005 in", "0.06 in"), "not a usual shrink fit"),
        Input("clearance", "clearance", "on the diameter, to slip it on before it grips", ("0.001 in", "0.03 in"), "too little grips half-way, too much is heat for nothing"),
        Input("expansion", "expansion", "of the part that is heated", ("5 ppm/°F", "14 ppm/°F"), "not a usual metal", required=False),
        Input("cold expansion", "expansion", "mean expansion of the part that is cooled; steel by its table when not said", ("3 ppm/°F", "12 ppm/°F"),
              "not a usual metal", required=False),
        Input("room temperature", "temperature", "of both parts when they were measured", ("30 °F", "110 °F"), "were both parts measured at this temperature?"),
        Input("never pass", "temperature", "hottest the part may be when it is heated, coldest when it is cooled", ("-325 °F", "700 °F"), "not a limit of an oven or a coolant"),
        Input("modulus", "stress", "stiffness of the ring, to see its stress", required=False)),
    outputs=(
        Output("change of temperature", "temperature rise", "nearest", "a difference: converts by 5/9 alone"),
        Output("bring it to", "temperature", "nearest", "what the thermometer must show on the part"),
        Output("grips at", "temperature", "nearest", "temperature at which the clearance is gone"),
        Output("clearance at the limit", "clearance", "down", "the most room there can be"),
        Output("do not pass", "none", "nearest", "the limit, as given"),
        Output("ring stress", "stress", "nearest", "hoop stress in a thin ring when it is cold again, at most")),
    source="linear expansion: textbooks of physics; steel in the cold: published expansion of carbon steel from 70 °F, inches in 100 feet (the table of ASME B31 as reprinted)",
    example=Example(
        {"way": "heat the outer", "diameter": "15.750 in", "interference": "0.018 in", "clearance": "0.012 in", "expansion": "6.5 ppm/°F",
         "room temperature": "65 °F", "never pass": "450 °F", "modulus": "30 Mpsi"},
        {"bring it to": "358 °F", "change of temperature": "293 °F rise", "ring stress": "34 ksi"},
        "this project's demonstration book, by hand"),
    goes_wrong=("A rise taken for a temperature: 293 °F of rise is 163 °C of rise, not 145 °C.",
                "Clearance forgotten: the part grips half-way and stays there.",
                "Temperature guessed from colour, or read on the oven instead of the part.",
                "Cooled steel reckoned with the coefficient of warm steel: it shrinks an eighth less in dry ice, a quarter less in liquid nitrogen."),
    refuses=("A part that does not grow or shrink enough before its limit.", "A limit on the wrong side of the room temperature.",
             "Heating a part whose expansion nobody gave; cold beyond the table of steel."),
    assumes=("The whole part is at one temperature, the other at room temperature.",
             "The lowest expansion and the tightest interference of the bands given decide."),
    compute=compute)
