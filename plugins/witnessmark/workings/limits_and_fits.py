"""The working 'limits-and-fits': sizes to make and how tight they end after ISO 286. Declaration: see WORKING.

Exact: deviations are fractions of a micrometre until they are printed.
"""
from __future__ import annotations

import re
from collections.abc import Mapping
from fractions import Fraction

from ..core.drawing import Drawing, Label, Stroke
from ..core.units import Unit
from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Table, Value, Working
from .printed import in_unit, unit_of, value, window, words
from .tables.iso_286 import GRADES, LARGEST, LETTERS, hole_limits, shaft_limits, tolerance

_CLASS = re.compile(r"([A-Za-z]{1,2}) ?([0-9]{1,2})")
MICRO = Fraction(1, 10**6)
Deviations = tuple[Fraction, Fraction]


def compute(given: Mapping[str, Given]) -> Outcome:
    """Limits of whichever of hole and shaft is named; with both, how they fit."""
    quantity = given["size"].quantity
    if quantity.low != quantity.high or quantity.low is None:
        return Outcome(refusals=(Refusal(f"{given['size'].text} is no one size", "give the size the drawing names; the letters add the limits"),))
    size = quantity.unit.to_si(quantity.low)
    if size * 1000 > LARGEST:
        return Outcome(refusals=(Refusal(f"the table here ends at {LARGEST} mm", "look the limits up in ISO 286-2"),))
    zones: dict[str, Deviations] = {}
    for part in ("hole", "shaft"):
        if part in given:
            zone = _zone(part, given[part].text, size * 1000)
            if isinstance(zone, Refusal):
                return Outcome(refusals=(zone,))
            zones[part] = zone
    if not zones:
        return Outcome(refusals=(Refusal("neither hole nor shaft is named", "give hole: H7, shaft: p6, or both"),))
    unit, step = unit_of(given["size"]), _step(unit_of(given["size"]), zones)
    values = [window(f"{part} size", "diameter", float(size + low * MICRO), float(size + high * MICRO), unit, step)
              for part, (low, high) in zones.items()]
    if None in values:
        return Outcome(refusals=(Refusal(f"the limits lie closer than {step} {unit.symbol}", "give the size in mm"),))
    if len(zones) == 2:
        values += _fit(zones, unit, step)
    return Outcome(tuple(values), details=lambda: _details(given, size * 1000, zones))


def _zone(part: str, text: str, size: Fraction) -> Deviations | Refusal:
    """The deviations in µm of a tolerance class such as H7; a hole has capitals, a shaft small letters."""
    match = _CLASS.fullmatch(text.strip())
    example = "H7" if part == "hole" else "p6"
    if match is None:
        return Refusal(f"{part}: '{text}' is no tolerance class", f"write a letter and a grade, such as {example}")
    letter, grade = match[1], int(match[2])
    if (letter != letter.upper()) if part == "hole" else (letter != letter.lower()):
        return Refusal(f"{part}: {text} is written as one of a {'shaft' if part == 'hole' else 'hole'}",
                       f"a hole has capitals, a shaft small letters: write {text.upper() if part == 'hole' else text.lower()} if that is meant")
    if letter.lower() not in LETTERS or grade not in GRADES:
        known = ", ".join(letter.upper() if part == "hole" else letter for letter in LETTERS)
        return Refusal(f"{part}: {text} is not in the table here", f"the letters are {known}, the grades {GRADES[0]} to {GRADES[-1]}")
    zone = (hole_limits if part == "hole" else shaft_limits)(size, letter.lower(), grade)
    return zone or Refusal(f"{part}: ISO 286 has no {text} at this size", "choose a class it has: t begins over 24 mm, K ends at grade 8")


def _step(unit: Unit, zones: Mapping[str, Deviations]) -> str:
    if unit.symbol == "mm":
        return "0.001" if all(end.denominator == 1 for zone in zones.values() for end in zone) else "0.0005"
    return {"in": "0.0001", "thou": "0.1", "µm": "0.5", "cm": "0.0001"}.get(unit.symbol, "0.000001")


def _fit(zones: Mapping[str, Deviations], unit: Unit, step: str) -> list[Value]:
    (hole_low, hole_high), (shaft_low, shaft_high) = zones["hole"], zones["shaft"]
    least, most = (hole_low - shaft_high) * MICRO, (hole_high - shaft_low) * MICRO
    sort = "clearance: always free" if least >= 0 else "interference: always tight" if most <= 0 else "transition: free or tight, as the two turn out"
    made = [words("sort of fit", sort)]
    if most > 0:
        made.append(value("greatest clearance", "clearance", float(most), unit, step, "up"))
    if least >= 0:
        made.append(value("least clearance", "clearance", float(least), unit, step, "down"))
    if least < 0:
        made.append(value("greatest interference", "interference", float(-least), unit, step, "up"))
    if most <= 0:
        made.append(value("least interference", "interference", float(-most), unit, step, "down"))
    return made


def _micro(end: Fraction) -> str:
    return f"{'+' if end > 0 else '-' if end < 0 else ''}{float(abs(end)):g} µm"


def _details(given: Mapping[str, Given], size: Fraction, zones: Mapping[str, Deviations]) -> Details:
    lines, rows = [], []
    for part, (low, high) in zones.items():
        grade = int(_CLASS.fullmatch(given[part].text.strip())[2])
        lines.append(Line(f"Tolerance of the {part}, IT{grade}", "", f"{float(size):g} mm", f"{float(tolerance(size, grade)):g} µm"))
        ends = [in_unit(float((size / 1000) + end * MICRO), "diameter", "mm", "0.0001") for end in (low, high)]
        rows.append((f"{part} {given[part].text.strip()}", _micro(low), _micro(high), *ends))
    table = Table("Limits", ("", "lower", "upper", "smallest", "largest"), tuple(rows))
    return Details(tuple(lines), (table,), _drawing(given, zones))


def _drawing(given: Mapping[str, Given], zones: Mapping[str, Deviations]) -> Drawing:
    """The zones above and below the line of the size, to one scale."""
    reach = float(max(abs(end) for zone in zones.values() for end in zone))
    def y(end: Fraction) -> float:
        return 90 - 70 * float(end) / reach

    marks: list[Stroke | Label] = [Stroke(((20, 90), (300, 90)), "thick"), Label(22, 84, given["size"].text, "start")]
    for place, (part, (low, high)) in enumerate(zones.items()):
        left = 105.0 + 100 * place
        marks += [Stroke(((left, y(high)), (left + 60, y(high)), (left + 60, y(low)), (left, y(low))), "thin", "light", True),
                  Label(left + 30, (y(high) + y(low)) / 2 + 4, given[part].text.strip()),
                  Label(left + 64, _off_the_line(y(high) + 4, 85), _micro(high), "start"),
                  Label(left + 64, _off_the_line(max(y(low), y(high) + 10) + 4, 104), _micro(low), "start")]
    shows = f"Tolerance zones at {given['size'].text}: " + "; ".join(
        f"{part} {given[part].text.strip()} from {_micro(low)} to {_micro(high)}" for part, (low, high) in zones.items()) + "."
    return Drawing(330, 180, shows, tuple(marks))


def _off_the_line(baseline: float, instead: float) -> float:
    """Words that the line of the size would strike through stand on their own side of it."""
    return instead if 84 < baseline < 103 else baseline


WORKING = Working(
    id="limits-and-fits",
    title="Limits and fits after ISO 286",
    purpose="Gives the sizes between which a hole or shaft of a tolerance class such as H7 or p6 may be made, and how free or tight the two end.",
    formula=(Formula("greatest clearance = largest hole - smallest shaft", r"\text{greatest clearance} = \text{largest hole} - \text{smallest shaft}"),
             Formula("greatest interference = largest shaft - smallest hole", r"\text{greatest interference} = \text{largest shaft} - \text{smallest hole}")),
    inputs=(
        Input("size", "diameter", "the nominal size, as the drawing names it", ("1 mm", "250 mm"), "the table here ends at 250 mm"),
        Input("hole", "grade", "tolerance class of the hole, such as H7; capital letters", required=False),
        Input("shaft", "grade", "tolerance class of the shaft, such as p6; small letters", required=False)),
    outputs=(
        Output("hole size", "diameter", "inward", "between which the hole may be made"),
        Output("shaft size", "diameter", "inward", "between which the shaft may be made"),
        Output("sort of fit", "none", "nearest", "clearance, transition or interference"),
        Output("greatest clearance", "clearance", "up", "largest hole on smallest shaft"),
        Output("least clearance", "clearance", "down", "smallest hole on largest shaft"),
        Output("greatest interference", "interference", "up", "on the diameter: largest shaft in smallest hole"),
        Output("least interference", "interference", "down", "on the diameter: smallest shaft in largest hole")),
    source="ISO 286-1:2010, standard tolerances and fundamental deviations, as printed in handbooks of machine elements (the standard was not seen)",
    example=Example({"size": "50 mm", "hole": "H7", "shaft": "s6"},
                    {"hole size": "50.000 to 50.025 mm", "shaft size": "50.043 to 50.059 mm", "sort of fit": "interference: always tight",
                     "greatest interference": "0.059 mm", "least interference": "0.018 mm"},
                    "a textbook of machine design, manufacturing considerations, example of an H7/s6 fit at 50 mm"),
    goes_wrong=("A capital for a small letter: H7 is a hole, h7 a shaft.", "A size on a step, such as 50 mm: it belongs to the step that ends there.",
                "The fit of an old drawing in another system: the letters mean other sizes there.",
                "Limits measured on parts that are not at 20 °C."),
    refuses=("A size over 250 mm, a size given as a range.", "A letter or grade outside the table, and a class that ISO 286 does not have at that size.",
             "Small letters for a hole, capitals for a shaft.", "Neither hole nor shaft."),
    assumes=("Sizes are at 20 °C, the reference of ISO 1.",),
    compute=compute)
