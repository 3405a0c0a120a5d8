"""Every unit's factor against values from outside: scipy.constants (CODATA and the conversion factors it carries), and
NIST SP 811 (2008), Appendix B.8 and B.9, where the value stands in the table or is exact by definition. Pint is the
implementation, so it is never the oracle here."""

from fractions import Fraction

import pytest
from scipy import constants as si

from witnessmark.core.kinds import KINDS
from witnessmark.core.units import find_unit, units_of

F = Fraction
LBF = F("4.4482216152605")                     # NIST SP 811 B.8, pound-force, footnote 24: exact
KGF = F("9.80665")                             # NIST SP 811 B.8, kilogram-force: exact
INCH = F("0.0254")                             # NIST SP 811 B.8, inch: exact
LB = F("0.45359237")                           # NIST SP 811 B.8, pound (avoirdupois): exact

EXACT = {
    ("long ton", "press force"): 2240 * LBF, ("short ton", "press force"): 2000 * LBF, ("tonne", "press force"): 1000 * KGF,
    ("kN", "press force"): F(1000), ("lbf", "press force"): LBF, ("N", "press force"): F(1), ("kgf", "press force"): KGF,
    ("lbf·ft", "torque"): LBF * 12 * INCH, ("lbf·in", "torque"): LBF * INCH, ("N·m", "torque"): F(1), ("kgf·m", "torque"): KGF,
    ("lbf·ft", "energy"): LBF * 12 * INCH, ("lbf·in", "energy"): LBF * INCH, ("J", "energy"): F(1),
    ("in", "length"): INCH, ("mm", "length"): F(1, 1000), ("thou", "length"): INCH / 1000, ("µm", "length"): F(1, 10**6),
    ("cm", "length"): F(1, 100), ("m", "length"): F(1), ("ft", "length"): 12 * INCH,
    ("in/ft", "taper"): F(1, 12), ("", "taper"): F(1),
    ("in²", "area"): INCH**2, ("cm²", "area"): F(1, 10**4), ("mm²", "area"): F(1, 10**6),
    ("psi", "pressure"): LBF / INCH**2, ("bar", "pressure"): F(10**5), ("MPa", "pressure"): F(10**6), ("kPa", "pressure"): F(1000),
    ("kgf/cm²", "pressure"): KGF * 10**4, ("ksi", "stress"): 1000 * LBF / INCH**2, ("Mpsi", "stress"): 10**6 * LBF / INCH**2,
    ("GPa", "stress"): F(10**9), ("psi", "stress"): LBF / INCH**2, ("MPa", "stress"): F(10**6),
    ("°F", "temperature"): F(5, 9), ("°C", "temperature"): F(1),
    ("°F rise", "temperature rise"): F(5, 9), ("°C rise", "temperature rise"): F(1),
    ("turns", "turns"): F(1),
    ("imperial gallon", "volume"): F("4.54609e-3"), ("imperial quart", "volume"): F("4.54609e-3") / 4,
    ("imperial pint", "volume"): F("4.54609e-3") / 8, ("imperial fl oz", "volume"): F("4.54609e-3") / 160,
    ("US gallon", "volume"): 231 * INCH**3, ("US quart", "volume"): 231 * INCH**3 / 4, ("US pint", "volume"): 231 * INCH**3 / 8,
    ("US fl oz", "volume"): 231 * INCH**3 / 128, ("litre", "volume"): F(1, 1000), ("mL", "volume"): F(1, 10**6),
    ("in³", "volume"): INCH**3,
    ("lb", "mass"): LB, ("kg", "mass"): F(1), ("g", "mass"): F(1, 1000), ("oz", "mass"): LB / 16, ("long ton", "mass"): 2240 * LB,
    ("short ton", "mass"): 2000 * LB, ("tonne", "mass"): F(1000),
    ("lb/in³", "density"): LB / INCH**3, ("g/cm³", "density"): F(1000), ("kg/m³", "density"): F(1),
    ("s", "time"): F(1), ("min", "time"): F(60), ("h", "time"): F(3600), ("rpm", "speed"): F(1, 60), ("drops/min", "drip rate"): F(1, 60),
    ("mph", "road speed"): F("0.44704"), ("km/h", "road speed"): F(1000, 3600), ("ft/min", "road speed"): 12 * INCH / 60,
    ("m/min", "road speed"): F(1, 60), ("m/s", "road speed"): F(1),
    ("lbf/in", "spring rate"): LBF / INCH, ("N/mm", "spring rate"): F(1000), ("%", "share"): F(1, 100),
    ("ppm/°F", "expansion"): F(9, 5) / 10**6, ("ppm/°C", "expansion"): F(1, 10**6),
}

# Printed to seven figures in NIST SP 811 (2008), Appendix B.8, so that the exact column above is checked as well.
PRINTED = {
    ("long ton", "mass"): 1.016047e3, ("short ton", "mass"): 9.071847e2, ("short ton", "press force"): 8.896443e3,
    ("lbf·ft", "torque"): 1.355818, ("lbf·in", "torque"): 1.129848e-1, ("psi", "pressure"): 6.894757e3, ("ksi", "stress"): 6.894757e6,
    ("kgf/cm²", "pressure"): 9.80665e4, ("US gallon", "volume"): 3.785412e-3, ("US fl oz", "volume"): 2.957353e-5,
    ("US pint", "volume"): 4.731765e-4, ("US quart", "volume"): 9.463529e-4, ("imperial fl oz", "volume"): 2.841306e-5,
    ("lb/in³", "density"): 2.767990e4, ("lbf/in", "spring rate"): 1.751268e2, ("oz", "mass"): 2.834952e-2, ("in³", "volume"): 1.638706e-5,
    ("°", "angle"): 1.745329e-2, ("ft/min", "road speed"): 5.08e-3,
}

SCIPY = {
    ("lbf", "press force"): si.lbf, ("kgf", "press force"): si.kgf, ("in", "length"): si.inch, ("thou", "length"): si.mil,
    ("ft", "length"): si.foot, ("psi", "pressure"): si.psi, ("bar", "pressure"): si.bar, ("°", "angle"): si.degree,
    ("US gallon", "volume"): si.gallon_US, ("imperial gallon", "volume"): si.gallon_imp, ("US fl oz", "volume"): si.fluid_ounce_US,
    ("imperial fl oz", "volume"): si.fluid_ounce_imp, ("litre", "volume"): si.liter, ("lb", "mass"): si.pound, ("oz", "mass"): si.ounce,
    ("long ton", "mass"): si.long_ton, ("short ton", "mass"): si.short_ton, ("tonne", "mass"): si.metric_ton,
    ("mph", "road speed"): si.mph, ("km/h", "road speed"): si.kmh, ("°F", "temperature"): si.degree_Fahrenheit,
    ("long ton", "press force"): si.long_ton * si.g, ("short ton", "press force"): si.short_ton * si.g,
    ("tonne", "press force"): si.metric_ton * si.g, ("lbf·ft", "torque"): si.lbf * si.foot,
}


@pytest.mark.parametrize("where", EXACT, ids=" ".join)
def test_exact_by_definition(where):
    assert find_unit(*where).factor == EXACT[where]


@pytest.mark.parametrize("where", PRINTED, ids=" ".join)
def test_printed_in_the_tables(where):
    assert float(find_unit(*where).factor) == pytest.approx(PRINTED[where], rel=5e-7)


@pytest.mark.parametrize("where", SCIPY, ids=" ".join)
def test_general_constants(where):
    assert float(find_unit(*where).factor) == pytest.approx(SCIPY[where], rel=1e-12)


def test_no_unit_escapes_the_checks():
    checked = {find_unit(*where) for where in (*EXACT, *PRINTED)}
    for kind in KINDS:
        for unit in units_of(kind):
            assert any((unit.symbol, unit.size) == (other.symbol, other.size) for other in checked), f"{unit.symbol} ({kind})"


@pytest.mark.parametrize("reading, unit, scale", [(32, "°F", "Fahrenheit"), (212, "°F", "Fahrenheit"), (-40, "°C", "Celsius"), (0, "°C", "Celsius")])
def test_thermometers(reading, unit, scale):
    """NIST SP 811 B.8: T/K = (t/°F + 459.67)/1.8 and t/°C + 273.15; here by scipy.constants.convert_temperature."""
    kelvin = float(find_unit(unit, "temperature").to_si(F(reading)))
    assert kelvin == pytest.approx(si.convert_temperature(reading, scale, "Kelvin"), abs=1e-9)


def test_a_rise_has_no_zero_of_its_own():
    assert find_unit("°F", "temperature rise").to_si(F(60)) == F(100, 3)
