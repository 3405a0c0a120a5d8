"""The working 'bush-closing-in': how much a pressed-in bush closes on its bore, and the size to turn it to before."""
from __future__ import annotations

from collections.abc import Mapping

from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Working
from .printed import in_system, in_unit, three_figures, value
from .reach import beyond_reach
from .thick_cylinder import Pair


def closing_in(pair: Pair, pressure: float) -> float:
    """How much the bore of the inner of two cylinders closes on the diameter under a pressure on its outside: 2 p d² b / (E (d² - b²))."""
    return 2 * pressure * pair.diameter**2 * pair.bore / (pair.shaft_modulus * (pair.diameter**2 - pair.bore**2))


def compute(given: Mapping[str, Given]) -> Outcome:
    """Pressure between bush and housing, and what it does to the bush's bore."""
    sizes = {name: given[name].likely for name in ("bush outside", "bush bore", "housing outside")}
    pair = Pair(sizes["bush outside"], sizes["housing outside"], sizes["bush bore"], given["housing modulus"].likely, given["housing poisson"].likely,
                given["bush modulus"].likely, given["bush poisson"].likely)
    refusal = beyond_reach(given)
    if not refusal and (wrong := pair.sense()):
        refusal = Refusal(wrong.replace("hub", "housing").replace("shaft", "bush"), "check the sizes and materials of bush and housing")
    if refusal:
        return Outcome(refusals=(refusal,))
    tight = given["interference"]
    pressures = tuple(pair.pressure(end) for end in (tight.low, tight.likely, tight.high))
    closes = tuple(closing_in(pair, pressure) for pressure in pressures)
    if closes[2] >= pair.bore / 10:
        return Outcome(refusals=(Refusal("an interference like this would crush the bush, not close it", "check interference and sizes"),))
    unit, step = in_system(given["bush outside"], ("in", "0.0001"), ("mm", "0.001"))
    psi, coarse = in_system(given["bush outside"], ("psi", "1"), ("MPa", "0.1"))
    values = [value("contact pressure", "stress", pressures[1], psi, three_figures(pressures[1], "stress", psi, coarse)),
              value("closes in", "clearance", closes[1] if closes[0] == closes[2] else closes, unit, step)]
    lines = [Line("Pressure between bush and housing", "p = delta / (d · give)", f"delta = {tight.text}, d = {given['bush outside'].text}", values[0].printed),
             Line("Bore of the bush closes in by", "2 p d² b / (E (d² - b²))", f"b = {given['bush bore'].text}, E = {given['bush modulus'].text}",
                  in_unit(closes[1], "clearance", unit, step)),
             Line("That is, of the interference", "", "", f"{closes[1] / tight.likely:.0%}")]
    if "finished bore" in given:
        before = given["finished bore"].likely + closes[1]
        values.append(value("bore before pressing", "diameter", before, unit, in_system(given["bush outside"], ("in", "0.001"), ("mm", "0.01"))[1]))
        lines.append(Line("Turned to this, it would close to the finished bore", "finished + closing in", given["finished bore"].text, values[-1].printed))
    return Outcome(tuple(values), details=lambda: Details(tuple(lines)))


WORKING = Working(
    id="bush-closing-in",
    title="How much a pressed-in bush closes in",
    purpose="Says how much the bore of a bush closes when it is pressed home, so that it is turned large enough and reamed once.",
    formula=(Formula("give = ((D² + d²) / (D² - d²) + nu) / E + ((d² + b²) / (d² - b²) - nu) / E",
                     r"\text{give} = ((D^2 + d^2) / (D^2 - d^2) + \nu) / E + ((d^2 + b^2) / (d^2 - b^2) - \nu) / E"),
             Formula("p = delta / (d · give)", r"p = \frac{\delta}{d \cdot \text{give}}"),
             Formula("closes in = 2 p d² b / (E (d² - b²))", r"\text{closes in} = \frac{2 p d^2 b}{E (d^2 - b^2)}")),
    inputs=(
        Input("bush outside", "diameter", "outside of the bush", ("0.1 in", "24 in"), "not a bush?"),
        Input("bush bore", "diameter", "bore of the bush before it is pressed", ("0.1 in", "24 in"), "not a bush?"),
        Input("housing outside", "diameter", "outside of the eye or boss around it; the thinnest way across", ("0.2 in", "60 in"), "a solid block: give the largest circle that fits in it"),
        Input("interference", "interference", "how much the bush is larger than its hole, on the diameter", ("0.0002 in", "0.020 in"), "on a side instead of on the diameter?"),
        Input("bush modulus", "stress", "stiffness of the bush: bush material: phosphor-bronze names it", ("5 Mpsi", "32 Mpsi"), "no metal's"),
        Input("bush poisson", "factor", "Poisson's ratio of the bush", ("0.20", "0.40"), "no metal's"),
        Input("housing modulus", "stress", "stiffness of the housing: housing material: steel names it", ("5 Mpsi", "32 Mpsi"), "no metal's"),
        Input("housing poisson", "factor", "Poisson's ratio of the housing", ("0.20", "0.40"), "no metal's"),
        Input("finished bore", "diameter", "bore wanted when it is in", required=False)),
    outputs=(
        Output("contact pressure", "stress", "nearest", "pressure between bush and housing"),
        Output("closes in", "clearance", "nearest", "how much the bore closes, on the diameter"),
        Output("bore before pressing", "diameter", "nearest", "turned to this, it would close to the finished bore")),
    source="Lamé's thick cylinders, two materials, plane stress (machine-design textbooks, press and shrink fits)",
    example=Example({"bush outside": "2.875 in", "bush bore": "2.262 in", "housing outside": "4.25 in", "interference": "0.0025 in",
                     "bush modulus": "16.1 Mpsi", "bush poisson": "0.349", "housing modulus": "30.0 Mpsi", "housing poisson": "0.292", "finished bore": "2.262 in"},
                    {"contact pressure": "2546 psi", "closes in": "0.0019 in", "bore before pressing": "2.264 in"}, "this project's demonstration book, by hand"),
    goes_wrong=("Reamed to size first and pressed after: the shaft will not enter.",
                "A bush longer than its boss: the ends outside do not close, and the bore is bell-mouthed.",
                "A dry or ragged hole: metal is scraped off and less interference is left."),
    refuses=("A bush as large as its housing, or a bore as large as the bush.", "An interference that would crush the bush."),
    assumes=("Elastic, and the housing round: a thin boss or a split one closes the bush less.",),
    compute=compute)
