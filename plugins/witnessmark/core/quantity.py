"""Reading what an author wrote: number, form and unit. Numbers are kept exactly; what could be read two ways is refused.

    57 lbf·ft | 1-1/2 in | .018 in | 0.018 to 0.030 in | 3.120 ± 0.030 in | 21.750 in +0.062 -0.000
    at least 0.047 in | at most … | over … | under … | 1:12
"""

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property, lru_cache

from .kinds import KINDS, Problem
from .units import Unit, find_unit


class QuantityProblem(Problem):
    """A text that is no quantity of its kind."""


@dataclass(frozen=True)
class Quantity:
    """`low` and `high` are in `unit`, exact; None where the form leaves that side open (at most, over…).

    form: exact, range, at least, at most, over, under, plus-minus, ratio. `decimals`: the most typed after a point.
    `whole`: no decimal point typed (a whole number or a fraction)."""

    text: str
    form: str
    low: Fraction | None
    high: Fraction | None
    unit: Unit
    kind: str
    decimals: int
    whole: bool

    @cached_property
    def si_low(self) -> float | None:
        return None if self.low is None else float(self.unit.to_si(self.low))

    @cached_property
    def si_high(self) -> float | None:
        return None if self.high is None else float(self.unit.to_si(self.high))

    def typed(self) -> str:
        """As the author wrote it."""
        return self.text


_DIGITS = r"(?:0|[1-9][0-9]{0,2}(?:,[0-9]{3})+|[1-9][0-9]*)"
_UNSIGNED = rf"(?:[1-9][0-9]{{0,3}}-)?[1-9][0-9]{{0,3}}/[1-9][0-9]{{0,3}}|{_DIGITS}(?:\.[0-9]+)?|\.[0-9]+"
_NUMBER = rf"(?:[-−] ?)?(?:{_UNSIGNED})"
_UNIT = r"(?![eE][0-9])[A-Za-zµμ°º˚%\"″”](?:[^0-9±+]|(?<=[A-Za-z^])[23](?![0-9]))*"    # the only figures in a unit are in² and cm³

_FORMS = tuple((form, re.compile(pattern)) for form, pattern in (
    ("ratio", rf"(?P<a>{_DIGITS}(?:\.[0-9]+)?) ?: ?(?P<b>{_DIGITS}(?:\.[0-9]+)?)(?P<u>)"),
    ("limit", rf"(?P<word>(?i:at least|at most|over|under)) (?P<a>{_NUMBER})(?P<u>(?: ?{_UNIT})?)"),
    ("range", rf"(?P<a>{_NUMBER})(?P<v>(?: ?{_UNIT}?)?) to (?P<b>{_NUMBER})(?P<u>(?: ?{_UNIT})?)"),
    ("plus-minus", rf"(?P<a>{_NUMBER})(?P<v>(?: ?{_UNIT}?)?) ?(?:±|\+/-) ?(?P<b>{_UNSIGNED})(?P<u>(?: ?{_UNIT})?)"),
    ("tolerance", rf"(?P<a>{_NUMBER})(?P<v>(?: ?{_UNIT}?)?) \+ ?(?P<b>{_UNSIGNED}) [-−] ?(?P<c>{_UNSIGNED})(?P<u>(?: ?{_UNIT})?)"),
    ("exact", rf"(?P<a>{_NUMBER})(?P<u>(?: ?{_UNIT})?)"),
))

# Looked for only when no form fits, so that each usual slip gets its own lesson.
_SLIPS = tuple((re.compile(pattern, re.IGNORECASE), message, mend) for pattern, message, mend in (
    (r"^[-+]?(nan|inf|infinity)\b|[∞]", "not a number that can be measured", "write the figure itself, such as 57 lbf·ft"),
    (r"[0-9.]e[-+]?[0-9]", "a number with an exponent", "write it out in full, such as 0.000012"),
    (r"[¼½¾⅐-⅞⁄]", "a fraction sign that is easily misread", "write the fraction out, such as 1-1/2"),
    (r"[0-9] [0-9]+/[0-9]", "a whole number and a fraction with a space between", "join them with a dash, such as 1-1/2"),
    (r"[0-9]\. [0-9]|[0-9] [0-9]{3}(?![0-9/])", "a space inside a number", "leave it out; a comma before each three digits of a whole number, such as 1,100"),
    (r"^(about|approx[a-z.]*|circa|ca\.|around|nominal[a-z]*|roughly|~)", "a figure with no bounds", "write the figure with its tolerance, such as 3.120 ± 0.030 in"),
    (r"^(±|\+/-|\+-)", "a tolerance without its figure", "write the figure before it, such as 3.120 ± 0.030 in, or the figure without ±"),
    (r"\+ ?-|- ?/? ?\+", "a tolerance in other signs", "write ± or +/-, such as 3.120 ± 0.030 in"),
    (r"^between|[0-9][^0-9]* (thru|through|and|till|until) |[0-9]\.[0-9]+ ?/ ?[0-9]*\.", "a range in other words or signs",
     "write “to” between the figures, such as 0.018 to 0.030 in"),
    (r"[0-9][^0-9]* ?[–—‒―~] ?\.?[0-9]|[0-9] ?\.\.\.? ?[0-9]", "a dash or dots for a range can be read as a minus",
     "write “to” between the figures, such as 0.018 to 0.030 in"),
    (r"[0-9]+ ?- ?\.?[0-9]+(?!.*/)", "a dash between two figures can be read as a minus or a fraction",
     "write “to” between the figures, such as 0.018 to 0.030 in"),
    (r"[0-9],(?![0-9]{3}(?![0-9]))|,.*,.*\.[0-9]*,|\.[0-9]*,|\b0[0-9,]*,", "a comma inside a number",
     "write a point for decimals; a comma only before each three digits of a whole number, such as 1,100"),
    (r"(^|[^0-9.,])0[0-9]", "a number that begins with a needless 0", "leave the 0 out"),
    (r"/ ?0(?![0-9.])", "a fraction over nothing", "write a fraction such as 1-1/2"),
    (r"^(min|max|minimum|maximum|>=|<=|>|<|≥|≤|not over|not under|up to|more than|less than)|[0-9][^0-9]* (min|max|minimum|maximum)\b", "a limit in other words",
     "begin with at least, at most, over or under"),
    (r"[0-9]\.(?![0-9])", "a point with no figure after it", "write the decimals, or leave the point out"),
    (r"[^\x00-\x7f±°·⋅²³µμ″”−]", "a sign that is not used in quantities", "write it in plain letters and figures"),
    (r"[0-9.][oli][0-9.]", "a letter inside a number", "write the figures 0 and 1, not the letters O and l"),
))

# What stands in the way of a unit. Looked for where no unit is known by those words.
_BEHIND = tuple((re.compile(pattern, re.IGNORECASE), message, mend) for pattern, message, mend in (
    (r"[0-9.][oli][0-9.]", "a letter inside a number", "write the figures 0 and 1, not the letters O and l"),
    (r" (min|max|minimum|maximum)\b", "a limit in other words", "begin with at least, at most, over or under"),
    (r"(±|\+/-)[^%]*%$", "a tolerance in per cent", "write it in the unit of the figure, such as 3.120 ± 0.030 in"),
    (r"\(", "words in brackets behind the figure", "write the figure alone; in a source what goes with it stands under 'condition:'"),
))

_EXAMPLE = "write a number and its unit, such as 57 lbf·ft"


@lru_cache(maxsize=65536)
def read_quantity(text: str, kind: str) -> Quantity | QuantityProblem:
    """A quantity as an author wrote it; `kind` is a name in KINDS. Never raises."""
    if kind not in KINDS or kind in ("thread", "none"):
        return QuantityProblem(f"“{kind}” is not measured by a quantity", "give the kind of figure that this is")
    text = " ".join(text[:200].split())
    if not text or len(text) > 100:
        return QuantityProblem("no quantity stands here" if not text else "far too long for a quantity", _EXAMPLE)
    for form, pattern in _FORMS:
        match = pattern.fullmatch(text)
        if match:
            return _quantity(text, form, match.groupdict(), kind)
    for slip, message, mend in _SLIPS:
        if slip.search(text):
            return QuantityProblem(f"“{text}”: {message}", mend)
    if not re.search(r"[0-9]", text):
        return QuantityProblem(f"“{text}” has no number", _EXAMPLE)
    return QuantityProblem(f"“{text}” cannot be read as a quantity", _EXAMPLE)


def _quantity(text: str, form: str, part: dict[str, str], kind: str) -> Quantity | QuantityProblem:
    typed = [part[name] for name in "abc" if part.get(name)]
    values = [_number(number, kind) for number in typed]
    if None in values:
        return QuantityProblem(f"“{text}”: a fraction that is a whole or more, or over nothing",
                               "write whole and fraction with a dash, such as 1-1/2")
    if form == "ratio" and not KINDS[kind].ratio:
        return QuantityProblem(f"“{text}”: a {kind} is not written as a ratio", _EXAMPLE)
    unit = _unit(part, kind)
    if isinstance(unit, Problem):
        slip = next(((message, mend) for pattern, message, mend in _BEHIND if pattern.search(text)), None)
        return QuantityProblem(f"“{text}”: {slip[0]}", slip[1]) if slip else QuantityProblem(unit.message, unit.mend)
    a, b = values[0], values[1] if len(values) > 1 else Fraction(0)
    match form:
        case "ratio":
            if not a or not b:
                return QuantityProblem(f"“{text}”: a ratio with nothing", "write it such as 1:12")
            low = high = a / b
        case "limit":
            form = part["word"].lower()
            low, high = (a, None) if form in ("at least", "over") else (None, a)
        case "range":
            low, high = a, b
        case "plus-minus":
            low, high = a - b, a + b
        case "tolerance":
            form, low, high = "plus-minus", a - values[2], a + b
        case _:
            low = high = a
    if low is not None and high is not None and (low > high or (low == high and form in ("range", "plus-minus"))):
        if low > high:
            return QuantityProblem(f"“{text}”: the range runs backwards", "write the smaller figure first")
        return QuantityProblem(f"“{text}”: a range with no width cannot be met", "write the figure once, or the room there is")
    if not KINDS[kind].signed and min(x for x in (low, high) if x is not None) < 0:
        return QuantityProblem(f"“{text}”: a {kind} cannot be under zero", "write it without a minus")
    if KINDS[kind].counted and any(value.denominator != 1 for value in values):
        return QuantityProblem(f"“{text}”: a {kind} is a whole number", "write how many, such as 6")
    decimals = max(len(number.partition(".")[2]) for number in typed)
    return Quantity(text, form, low, high, unit, kind, decimals, decimals == 0)


def _unit(part: dict[str, str], kind: str):
    """The unit after the last number; one between the numbers must be the same, and may stand alone."""
    last, first = part["u"].strip(), (part.get("v") or "").strip()
    unit = find_unit(last or first, kind)
    if first and last and not isinstance(unit, Problem) and find_unit(first, kind) != unit:
        return QuantityProblem(f"“{first}” and “{last}” in one quantity", "write both figures in one unit")
    return unit


def _number(typed: str, kind: str) -> Fraction | None:
    """None for a fraction that is no proper one: 11/2 is a lost dash more often than five and a half."""
    digits = typed.lstrip("-− ").replace(",", "")
    whole, dash, fraction = digits.rpartition("-")
    if "/" in fraction:
        top, bottom = fraction.split("/")
        if int(top) >= int(bottom) and not (KINDS[kind].ratio and not dash):
            return None
        value = Fraction(int(top), int(bottom)) + int(whole or 0)
    else:
        value = Fraction(digits)
    return -value if typed[0] in "-−" else value
