"""The size of each unit as Pint knows it. The only module that knows Pint.

Pint never sees an author's text (it would read "45 Nm" as a textile unit and hang on "9**9**9"): it is asked for names
that stand in `units.py`. Its answers stand in `unit_answers.py`, as nothing in them changes from one day to the next and
to ask again takes a third of a second of every command. A test asks Pint again for each of them.
"""

from fractions import Fraction
from functools import cache

from .unit_answers import ANSWERS


@cache
def size_and_zero(name: str) -> tuple[Fraction, Fraction]:
    """SI value = value * size + zero, exactly; `zero` is not 0 only for a temperature: the kelvins at its own zero."""
    if name not in ANSWERS:                    # a unit just added to the table
        return asked(name)
    size, _, zero = ANSWERS[name].partition(" + ")
    return Fraction(size), Fraction(zero or 0)


def asked(name: str) -> tuple[Fraction, Fraction]:
    """The same, from Pint."""
    shifted = name.startswith("degree_")
    return _magnitude(1, f"delta_{name}" if shifted else name), _magnitude(0, name) if shifted else Fraction(0)


def answers(names) -> str:
    """The text of `unit_answers.py` for these names, in their order."""
    told = ((name, *asked(name)) for name in dict.fromkeys(names))
    lines = [f'    "{name}": "{size}{f" + {zero}" if zero else ""}",\n' for name, size, zero in told]
    return f'"""What Pint answers, written by the tests (make test ARGS=--update-golden): SI value = value * size + zero."""\n\nANSWERS = {{\n{"".join(lines)}}}\n'


@cache
def _registry():
    from pint import UnitRegistry              # late: only a unit that is not among the answers needs it
    return UnitRegistry(non_int_type=Fraction)


def _magnitude(value: int, name: str) -> Fraction:
    return Fraction(_registry().Quantity(Fraction(value), name).to_base_units().magnitude)
