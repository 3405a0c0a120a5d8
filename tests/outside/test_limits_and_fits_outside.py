"""ISO 286 against printed limits, worked textbook fits and an independent package that carries the table."""

from fractions import Fraction

import pressfit
import pytest

from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS
from witnessmark.workings.tables.iso_286 import hole_limits, shaft_limits

# size mm, class, lower, upper in µm
PRINTED = [
    # Bhandari, Design of Machine Elements, chapter 3, examples 3.2 and 3.3
    (20, "H7", 0, 21), (20, "s6", 35, 48), (50, "H7", 0, 25), (50, "s6", 43, 59),
    # ISO 286-2 limits as the package isofits 1.0 transcribes them. Of all its 2,144 limits that ours has, two are others: f6 over
    # 120 to 180 mm (-48 for -68) and K6 over 6 to 10 mm (-6 for -7), where IT6 is 25 and 9 as everybody prints it.
    (40, "n6", 17, 33), (60, "k6", 2, 21), (200, "f6", -79, -50), (150, "f6", -68, -43), (120, "g6", -34, -12), (25, "h7", -21, 0),
    (8, "K6", -7, 2), (50, "P7", -42, -17), (50, "N7", -33, -8), (50, "M7", -25, 0), (50, "K7", -18, 7), (80, "N9", -74, 0), (80, "E8", 60, 106),
    (100, "E8", 72, 126), (250, "F8", 50, 122), (125, "R7", -88, -48), (30, "G7", 7, 28), (225, "C11", 260, 550), (226, "C11", 280, 570),
    # sizes to 3 mm, from memory
    (2, "N7", -14, -4), (2, "K7", -10, 0)]


@pytest.mark.parametrize(("size", "name", "lower", "upper"), PRINTED)
def test_printed_limits(size, name, lower, upper):
    """Whole micrometres: no tolerance. 100 E8 is +126 by the corrigendum of 2006; the first print of 1988 had +125."""
    letter, grade = name.rstrip("0123456789"), int(name.lstrip("CDEFGHKMNPRScdefghkmnprs"))
    assert (hole_limits if letter.isupper() else shaft_limits)(Fraction(size), letter.lower(), grade) == (lower, upper)


@pytest.mark.parametrize(("grade", "row"), [(6, (13, 16, 19, 22, 25)), (7, (21, 25, 30, 35, 40))])
def test_printed_tolerances(grade, row):
    """IT6 and IT7, over 18 to 30, 30 to 50, 50 to 80, 80 to 120, 120 to 180 mm."""
    assert tuple(shaft_limits(Fraction(size), "h", grade)[0] * -1 for size in (30, 50, 80, 120, 180)) == row


@pytest.mark.parametrize("shaft", sorted(f"{letter}{grade}" for letter in ("c", "d", "e", "f", "g", "h", "js", "k", "m", "n", "p", "s", "u") for grade in range(5, 12)))
def test_every_hole_basis_fit_of_an_independent_package(shaft):
    """pressfit 0.1.0 carries the table, entered and checked apart from ours: each step's both ends, exact."""
    for size in (1, 3, 3.5, 6, 10, 14, 18, 24, 30, 40, 40.5, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250):
        for hole in (6, 8, 11):
            theirs = pressfit.fit(f"H{hole}/{shaft}", size)
            letter, grade = shaft.rstrip("0123456789"), int(shaft.lstrip("cdefghjkmnpsu"))
            assert shaft_limits(Fraction(size), letter, grade) == (Fraction(theirs.shaft_ei_um), Fraction(theirs.shaft_es_um))
            assert hole_limits(Fraction(size), "h", hole) == (theirs.hole_ei_um, theirs.hole_es_um)


@pytest.mark.parametrize(("size", "most", "least"), [("20 mm", "0.048 mm", "0.014 mm"), ("50 mm", "0.059 mm", "0.018 mm")])
def test_textbook_press_fits(size, most, least):
    """Bhandari, examples 3.2 and 3.3: greatest and least interference of H7/s6."""
    outcome, _ = run(WORKINGS["limits-and-fits"], {"size": size, "hole": "H7", "shaft": "s6"})
    assert (outcome.value("greatest interference").printed, outcome.value("least interference").printed) == (most, least)
