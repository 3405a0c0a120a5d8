"""The closed table of units: what an author's spelling means under a kind.

An author's spelling is looked up under its kind, so that "long ton" is a force for a press and a mass for a casting.
The size of a unit is Pint's (`unit_sizes.py`), by a name written here.
"""

import re
from dataclasses import dataclass, field
from difflib import get_close_matches
from fractions import Fraction
from functools import cache, cached_property, lru_cache

from .kinds import KINDS, Problem
from .unit_sizes import size_and_zero


class UnitProblem(Problem):
    """A spelling that names no unit, more than one, or one of another kind."""


@dataclass(frozen=True)
class Unit:
    """SI value = value * factor + offset, exactly. `size` is Pint's name for the unit, or its factor."""

    symbol: str
    kinds: frozenset[str] = field(repr=False)
    size: str | Fraction
    system: str                                # 'inch', 'metric' or 'both'
    spellings: tuple[str, ...] = field(repr=False, compare=False)

    @cached_property
    def factor(self) -> Fraction:
        return self.size if isinstance(self.size, Fraction) else size_and_zero(self.size)[0]

    @cached_property
    def offset(self) -> Fraction:
        """Not zero only for a temperature: the kelvins at its own zero."""
        return Fraction(0) if isinstance(self.size, Fraction) else size_and_zero(self.size)[1]

    @cached_property
    def doubles(self) -> tuple[float, float]:   # for numbers that are doubles already
        return float(self.factor), float(self.offset)

    def to_si(self, value: Fraction) -> Fraction:
        return value * self.factor + self.offset

    def from_si(self, si: float | Fraction) -> Fraction:
        return (Fraction(si) - self.offset) / self.factor


FORCES = "press force, force"
TORQUES = "torque, rolling drag"
LENGTHS = "length, clearance, interference, interference per side, radius, diameter"
PLAIN = "taper, gear ratio, friction, factor, count"

# symbol | kinds | size | system | other spellings. In a spelling a space, dash, dot or · stand for each other,
# `per` for /, 2 for ². The first units of a kind are the ones offered in a mend.
_TABLE = (
    ("long ton", FORCES, "force_long_ton", "inch", "long tons, UK ton, UK tons, imperial ton, imperial tons,"
     "long tonf, long ton force, long tons force, UK ton force"),
    ("short ton", FORCES, "force_ton", "inch", "short tons, US ton, US tons, short tonf, short ton force, short tons force,"
     "US ton force"),
    ("tonne", FORCES, "force_metric_ton", "metric", "tonnes, metric ton, metric tons, tonne force, tonnes force"),
    ("kN", FORCES, "kilonewton", "metric", "kilonewton, kilonewtons"),
    ("lbf", FORCES, "pound_force", "inch", "lb, lbs, pound, pounds, pound force, pounds force, lb f"),
    ("N", FORCES, "newton", "metric", "newton, newtons"),
    ("kgf", FORCES, "kilogram_force", "metric", "kilogram force"),
    ("lbf·ft", TORQUES, "pound_force*foot", "inch", "lbfft, ft·lbf, ftlbf, lb·ft, lbft, ft·lb, ftlb, lbs·ft, ft·lbs,"
     "foot pound, foot pounds, pound foot, pound feet"),
    ("lbf·in", TORQUES, "pound_force*inch", "inch", "lbfin, in·lbf, inlbf, lb·in, lbin, in·lb, inlb, lbs·in, in·lbs,"
     "inch pound, inch pounds, pound inch, pound inches"),
    ("N·m", TORQUES, "newton*meter", "metric", "Nm, newton metre, newton metres, newton meter, newton meters"),
    ("kgf·m", TORQUES, "kilogram_force*meter", "metric", "kgfm, kg·m, kgm, m·kg, m·kgf"),
    ("lbf·ft", "energy", "pound_force*foot", "inch", "ft·lbf, lb·ft, ft·lb, ft·lbs, foot pound, foot pounds"),
    ("lbf·in", "energy", "pound_force*inch", "inch", "in·lbf, lb·in, in·lb, in·lbs, inch pound, inch pounds"),
    ("J", "energy", "joule", "metric", "joule, joules"),
    ("in", LENGTHS, "inch", "inch", "inch, inches, ins, \", ″, ”"),
    ("mm", LENGTHS, "millimeter", "metric", "millimetre, millimetres, millimeter, millimeters"),
    ("thou", LENGTHS, "thou", "inch", "thous, thousandth, thousandths"),
    ("µm", LENGTHS, "micrometer", "metric", "μm, um, micrometre, micrometres, micrometer, micrometers"),
    ("cm", LENGTHS, "centimeter", "metric", "centimetre, centimetres, centimeter, centimeters"),
    ("m", LENGTHS, "meter", "metric", "metre, metres, meter, meters"),
    ("ft", LENGTHS, "foot", "inch", "foot, feet"),
    ("in/ft", "taper", "inch/foot", "inch", "inch/foot, inches/foot"),
    ("", PLAIN, Fraction(1), "both", ""),
    ("in²", "area", "inch**2", "inch", "in^2, sq in, sq inch, sq inches, square inch, square inches, inch2"),
    ("cm²", "area", "centimeter**2", "metric", "cm^2, sq cm, square centimetre, square centimetres"),
    ("mm²", "area", "millimeter**2", "metric", "mm^2, sq mm, square millimetre, square millimetres"),
    ("psi", "pressure, stress", "psi", "inch", "lb/in2, lbf/in2, lb/sq in, lbf/sq in, psig"),
    ("bar", "pressure", "bar", "metric", "bars"),
    ("MPa", "pressure, stress", "megapascal", "metric", "megapascal, megapascals, N/mm2"),
    ("kgf/cm²", "pressure", "kilogram_force/centimeter**2", "metric", "kg/cm2, kgf/cm^2, kg/cm^2, kg/sq cm, kgf/sq cm"),
    ("kPa", "pressure", "kilopascal", "metric", "kilopascal, kilopascals"),
    ("ksi", "stress", "ksi", "inch", "kip/in2, kips/in2"),
    ("Mpsi", "stress", "megapsi", "inch", ""),
    ("GPa", "stress", "gigapascal", "metric", "gigapascal, gigapascals"),
    ("°F", "temperature", "degree_Fahrenheit", "inch", "F, deg F, degF, degrees F, degree F, Fahrenheit,"
     "degrees Fahrenheit"),
    ("°C", "temperature", "degree_Celsius", "metric", "C, deg C, degC, degrees C, degree C, Celsius, degrees Celsius"),
    ("°F rise", "temperature rise", "delta_degree_Fahrenheit", "inch", "F rise, deg F rise, degF rise, °F, F, deg F, degF,"
     "degrees F, degrees Fahrenheit"),
    ("°C rise", "temperature rise", "delta_degree_Celsius", "metric", "C rise, deg C rise, degC rise, °C, C, deg C, degC,"
     "degrees C, degrees Celsius, K"),
    ("°", "angle", "degree", "both", "deg, degs, degree, degrees"),
    ("turns", "turns", Fraction(1), "both", "turn, rev, revs, revolution, revolutions"),
    ("imperial pint", "volume", "imperial_pint", "inch", "imperial pints, imp pint, imp pints, imp pt, UK pint, UK pints"),
    ("US pint", "volume", "pint", "inch", "US pints, US pt, US liquid pint"),
    ("litre", "volume", "liter", "metric", "litres, liter, liters, L, l"),
    ("mL", "volume", "milliliter", "metric", "ml, cc, cm3, cm³, cm^3, millilitre, millilitres, milliliter, milliliters"),
    ("imperial gallon", "volume", "imperial_gallon", "inch", "imperial gallons, imp gallon, imp gallons, imp gal, UK gallon,"
     "UK gallons"),
    ("US gallon", "volume", "gallon", "inch", "US gallons, US gal, US gals"),
    ("imperial quart", "volume", "imperial_quart", "inch", "imperial quarts, imp quart, imp quarts, imp qt, UK quart,"
     "UK quarts"),
    ("US quart", "volume", "quart", "inch", "US quarts, US qt, US qts"),
    ("imperial fl oz", "volume", "imperial_fluid_ounce", "inch", "imp fl oz, UK fl oz, imperial fluid ounce,"
     "imperial fluid ounces"),
    ("US fl oz", "volume", "fluid_ounce", "inch", "US fluid ounce, US fluid ounces"),
    ("in³", "volume", "inch**3", "inch", "in3, in^3, cu in, cubic inch, cubic inches"),
    ("lb", "mass", "pound", "inch", "lbs, pound, pounds, lbm"),
    ("kg", "mass", "kilogram", "metric", "kilogram, kilograms"),
    ("g", "mass", "gram", "metric", "gram, grams"),
    ("oz", "mass", "ounce", "inch", "ounce, ounces"),
    ("long ton", "mass", "long_ton", "inch", "long tons, UK ton, UK tons, imperial ton, imperial tons"),
    ("short ton", "mass", "short_ton", "inch", "short tons, US ton, US tons"),
    ("tonne", "mass", "metric_ton", "metric", "tonnes, metric ton, metric tons"),
    ("lb/in³", "density", "pound/inch**3", "inch", "lb/in3, lb/in^3, lb/cu in"),
    ("g/cm³", "density", "gram/centimeter**3", "metric", "g/cm3, g/cm^3, g/cc"),
    ("kg/m³", "density", "kilogram/meter**3", "metric", "kg/m3, kg/m^3"),
    ("s", "time", "second", "both", "sec, secs, second, seconds"),
    ("min", "time", "minute", "both", "mins, minute, minutes"),
    ("h", "time", "hour", "both", "hr, hrs, hour, hours"),
    ("rpm", "speed", "minute**-1", "both", "rev/min, revs/min, r/min, turns/min, revolutions/minute"),
    ("mph", "road speed", "mile/hour", "inch", "mile/hour, miles/hour, mi/h"),
    ("km/h", "road speed", "kilometer/hour", "metric", "kph, kmh, km/hour"),
    ("ft/min", "road speed", "foot/minute", "inch", "feet/minute, fpm, ft/minute"),
    ("m/min", "road speed", "meter/minute", "metric", "metres/minute"),
    ("m/s", "road speed", "meter/second", "metric", "metres/second"),
    ("drops/min", "drip rate", "minute**-1", "both", "drop/min, drops/minute, drop/minute"),
    ("lbf/in", "spring rate", "pound_force/inch", "inch", "lb/in, lbs/in, lbf/inch, lb/inch, pounds/inch"),
    ("N/mm", "spring rate", "newton/millimeter", "metric", "newtons/millimetre"),
    ("%", "share", Fraction(1, 100), "both", "percent, per cent, pct"),
    ("ppm/°F", "expansion", "ppm/delta_degree_Fahrenheit", "inch", "ppm/F, ppm/deg F, millionths/°F, millionths/deg F,"
     "µin/in·°F, µin/in/°F"),
    ("ppm/°C", "expansion", "ppm/delta_degree_Celsius", "metric", "ppm/C, ppm/deg C, ppm/K, millionths/°C, millionths/deg C,"
     "µm/m·°C, µm/m·K, µm/m/°C"),
)

_COUNTERPARTS = {
    "long ton": "kN", "short ton": "kN", "tonne": "long ton, short ton", "kN": "long ton, short ton", "lbf": "N", "N": "lbf",
    "kgf": "lbf", "lbf·ft": "N·m", "lbf·in": "N·m", "N·m": "lbf·ft", "kgf·m": "lbf·ft", "J": "lbf·ft", "in": "mm",
    "mm": "in", "thou": "mm", "µm": "thou", "cm": "in", "m": "ft", "ft": "m", "in²": "cm²", "cm²": "in²", "mm²": "in²",
    "psi": "bar", "bar": "psi", "MPa": "psi", "kgf/cm²": "psi", "kPa": "psi", "ksi": "MPa", "Mpsi": "GPa", "GPa": "Mpsi",
    "°F": "°C", "°C": "°F", "°F rise": "°C rise", "°C rise": "°F rise", "imperial pint": "US pint, litre",
    "US pint": "imperial pint, litre", "litre": "US quart, imperial quart", "mL": "US fl oz, imperial fl oz",
    "imperial gallon": "US gallon, litre", "US gallon": "imperial gallon, litre", "imperial quart": "US quart, litre",
    "US quart": "imperial quart, litre", "imperial fl oz": "US fl oz, mL", "US fl oz": "imperial fl oz, mL", "in³": "mL",
    "lb": "kg", "kg": "lb", "g": "oz", "oz": "g", "lb/in³": "g/cm³", "g/cm³": "lb/in³", "kg/m³": "lb/in³", "mph": "km/h",
    "km/h": "mph", "ft/min": "m/min", "m/min": "ft/min", "m/s": "mph", "lbf/in": "N/mm", "N/mm": "lbf/in",
    "ppm/°F": "ppm/°C", "ppm/°C": "ppm/°F",
    # where the kind asks for another one than the unit alone would
    "force kN": "lbf", "rolling drag N·m": "lbf·in", "energy lbf·ft": "J", "energy lbf·in": "J", "stress psi": "MPa",
    "stress MPa": "ksi", "mass long ton": "tonne", "mass short ton": "tonne",
}

_TON = ("ton", "tons", "t", "tonf", "tf", "ton·force", "tons·force")
AMBIGUOUS = {
    **dict.fromkeys(_TON, "long ton (2,240 lb), short ton (2,000 lb) or tonne (1,000 kg)"),
    **dict.fromkeys(("pint", "pints", "pt", "pts"), "imperial pint, US pint or litre"),
    **dict.fromkeys(("quart", "quarts", "qt", "qts"), "imperial quart, US quart or litre"),
    **dict.fromkeys(("gallon", "gallons", "gal", "gals"), "imperial gallon, US gallon or litre"),
    **dict.fromkeys(("fl·oz", "fluid·ounce", "fluid·ounces", "floz"), "imperial fl oz, US fl oz or mL"),
    **dict.fromkeys(("mil", "mils"), "thou for 0.001 in, or mm"),
}

_SEPARATORS = re.compile(r"[ \-·⋅∙•*.]+")
_PER = re.compile(r"·?/·?|·per·")
_SAME = str.maketrans({"²": "2", "³": "3", "º": "°", "˚": "°", "μ": "µ", "^": None})


def _key(spelling: str) -> str:
    return _PER.sub("/", _SEPARATORS.sub("·", spelling.translate(_SAME))).strip("·")


def _index() -> dict[str, dict[str, Unit]]:
    """kind -> key -> unit. The letters' case is free except in metric symbols: MPa is not mPa."""
    index: dict[str, dict[str, Unit]] = {kind: {} for kind in KINDS}
    for symbol, kinds, size, system, more in _TABLE:
        spellings = (symbol, *filter(None, (word.strip() for word in more.split(","))))
        unit = Unit(symbol, frozenset(kinds.split(", ")), size, system, spellings)
        for kind in unit.kinds:
            for spelling in spellings:
                key = _key(spelling)
                index[kind].setdefault(key, unit)
                if system != "metric" or len(key) > 4:
                    index[kind].setdefault(key.casefold(), unit)
    return index


SPELLINGS = _index()


@cache
def units_of(kind: str) -> tuple[Unit, ...]:
    """The units a kind may be written in, the usual ones first."""
    return tuple(dict.fromkeys(SPELLINGS[kind].values()))


@lru_cache(maxsize=8192)
def find_unit(spelling: str, kind: str) -> Unit | UnitProblem:
    """The unit an author means under a kind; refuses what could be two units, such as a bare ton."""
    key = _key(spelling)
    units = SPELLINGS[kind]
    found = units.get(key) or units.get(key.casefold())
    if found is not None and (key in units or found.system != "metric" or len(key) > 4):
        return found
    symbols = [unit.symbol for unit in units_of(kind)[:6] if unit.symbol]
    offers = "write " + " or ".join(filter(None, (", ".join(symbols[:-1]), *symbols[-1:]))) if symbols else "write a plain number"
    if not key:
        return UnitProblem(f"the unit is missing ({kind})", f"{offers} after the number")
    if key.casefold() in AMBIGUOUS:
        return UnitProblem(f"“{spelling}” could be more than one unit", f"write {AMBIGUOUS[key.casefold()]}")
    others = [name for name, table in SPELLINGS.items() if key in table]
    if others:
        return UnitProblem(f"“{spelling}” measures {others[0]}, not {kind}", offers)
    near = [name for name in units if name.casefold() == key.casefold()]
    near = near or (get_close_matches(key, units, 1) if 2 < len(key) <= 40 else [])
    if near and units[near[0]].symbol:
        offers = f"write {units[near[0]].symbol} if that is meant"
    return UnitProblem(f"“{spelling[:40]}” is no unit for {kind}", offers)


@cache
def counterpart(unit: Unit, kind: str) -> tuple[Unit, ...]:
    """The unit or units in which the other system shows this one; two where one word names two sizes; often none."""
    symbols = _COUNTERPARTS.get(f"{kind} {unit.symbol}") or _COUNTERPARTS.get(unit.symbol)
    return tuple(SPELLINGS[kind][_key(symbol)] for symbol in symbols.split(", ")) if symbols else ()
