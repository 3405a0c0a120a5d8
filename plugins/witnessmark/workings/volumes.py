"""The working 'volumes': a fill in litres and in both kinds of pint, quart and gallon, and what the wrong jug would do."""
from __future__ import annotations

from collections.abc import Mapping

from ..core.units import find_unit
from ..core.working import Details, Example, Formula, Given, Input, Outcome, Output, Table, Working
from .printed import in_unit, spread, three_figures, unit_of, value, words
from .reach import beyond_reach

SIZES = ("pint", "quart", "gallon", "fl oz")
KINDS_OF = ("imperial", "US")


def _size(symbol: str) -> str:
    """Which size the figure was written in; a metric one is shown in pints."""
    return next((size for size in SIZES if symbol.endswith(size)), "pint")


def other_kind(symbol: str) -> str | None:
    """'US pint' for 'imperial pint' and the reverse; None for what has no twin."""
    for kind, other in (KINDS_OF, KINDS_OF[::-1]):
        if symbol.startswith(f"{kind} "):
            return symbol.replace(kind, other, 1)
    return None


def compute(given: Mapping[str, Given]) -> Outcome:
    """The volume in each system; with a pint, quart or gallon also what it is when the other kind of jug is used."""
    refusal = beyond_reach(given)
    if refusal:
        return Outcome(refusals=(refusal,))
    volume = given["volume"]
    size, symbol = _size(unit_of(volume).symbol), unit_of(volume).symbol

    def shown(name: str, low: float, likely: float, high: float, unit: str):
        return value(name, "volume", spread(low, likely, high), unit, three_figures(likely, "volume", unit, "0.1"))

    values = [shown("litres", volume.low, volume.likely, volume.high, "litre")]
    values += [shown(f"in {kind} measure", volume.low, volume.likely, volume.high, f"{kind} {size}") for kind in KINDS_OF]
    twin = other_kind(symbol)
    if twin:
        change = float(find_unit(twin, "volume").factor / unit_of(volume).factor)
        values.append(shown("by the wrong jug", volume.low * change, volume.likely * change, volume.high * change, "litre"))
        values.append(words("the wrong jug gives", f"{abs(1 - change) * 100:.1f} % too {'little' if change < 1 else 'much'}"))

    def details() -> Details:
        rows = [(unit, in_unit(volume.likely, "volume", unit, three_figures(volume.likely, "volume", unit, "0.1")))
                for unit in ("litre", *(f"{kind} {each}" for each in SIZES[:3] for kind in KINDS_OF))]
        return Details(tables=(Table("The same in every measure", ("measure", "volume"), tuple(rows)),))

    return Outcome(tuple(values), details=details)


WORKING = Working(
    id="volumes",
    title="A fill in litres and both kinds of pint and gallon",
    purpose="Shows one volume in litres, imperial and US measure together, and how far out the other country's jug would be.",
    formula=(Formula("imperial gallon = 4.54609 litre", r"\text{imperial gallon} = 4.54609 \, \text{litre}"),
             Formula("US gallon = 3.785411784 litre", r"\text{US gallon} = 3.785411784 \, \text{litre}"),
             Formula("gallon = 4 quart = 8 pint", r"\text{gallon} = 4 \, \text{quart} = 8 \, \text{pint}")),
    inputs=(Input("volume", "volume", "the fill, with the kind of its pint, quart or gallon", ("0.001 litre", "1,000 litre"), "not a fill of a machine?"),),
    outputs=(
        Output("litres", "volume", "nearest", "in litres"),
        Output("in imperial measure", "volume", "nearest", "in imperial measure"),
        Output("in US measure", "volume", "nearest", "in US measure"),
        Output("by the wrong jug", "volume", "nearest", "what goes in when the same count is poured by the other kind of jug"),
        Output("the wrong jug gives", "none", "nearest", "how far out that is")),
    source="NIST SP 811, Appendix B; NIST Handbook 44, Appendix C: imperial gallon 4.546 09 L, US gallon 231 in³, both exact",
    example=Example({"volume": "14 imperial pint"},
                    {"litres": "7.96 litre", "in US measure": "16.8 US pint", "by the wrong jug": "6.62 litre", "the wrong jug gives": "16.7 % too little"},
                    "this project's demonstration book, by hand"),
    goes_wrong=("A US jug for imperial pints: one sixth short, and a bearing dry.",
                "An imperial jug for US pints: one fifth too much, and seals blown.",
                "The quantity believed over the level plug: the plug outranks it."),
    refuses=("A pint, quart or gallon without its kind: it could be either.",),
    compute=compute)
