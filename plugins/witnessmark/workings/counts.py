"""The working 'counts': what came off is put back or set aside, and every place is filled. In equals out."""
from __future__ import annotations

from collections.abc import Mapping

from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Working
from .printed import value, words
from .reach import beyond_reach

AGREES = "in equals out"


def compute(given: Mapping[str, Given]) -> Outcome:
    """Missing: came off, and is neither put back nor set aside. Open: places with nothing in them."""
    refusal = beyond_reach(given)
    if refusal:
        return Outcome(refusals=(refusal,))
    number = {name: round(each.likely) for name, each in given.items()}
    off, back, aside, new = number["taken off"], number["put back"], number.get("set aside", 0), number.get("new", 0)
    needed = number["places"] * number["in each place"]
    missing, still_open = off - back - aside, needed - back - new
    values = (value("needed", "count", float(needed), "", "1"),
              words("off the machine", _verdict(missing, "not accounted for: find it before anything is closed", "more than came off: count again")),
              words("on the machine", _verdict(still_open, "still to fit", "more than there are places: count again")),
              words("verdict", AGREES if not missing and not still_open else "does not agree"))
    lines = (Line("Places to fill", "places · in each", f"{number['places']} x {number['in each place']}", str(needed)),
             Line("Off, and neither back nor set aside", "taken off - put back - set aside", f"{off} - {back} - {aside}", str(missing)),
             Line("Places still open", "needed - put back - new", f"{needed} - {back} - {new}", str(still_open)))
    return Outcome(values, details=lambda: Details(lines))


def _verdict(left: int, short: str, over: str) -> str:
    return "agrees" if not left else f"{left} {short}" if left > 0 else f"{-left} {over}"


WORKING = Working(
    id="counts",
    title="Small parts counted out and in",
    purpose="Checks that all that came off is put back or set aside, and that every place is filled.",
    formula=(Formula("taken off = put back + set aside", r"\text{taken off} = \text{put back} + \text{set aside}"),
             Formula("places · in each = put back + new", r"\text{places} \cdot \text{in each} = \text{put back} + \text{new}")),
    inputs=(
        Input("places", "count", "places there are", ("1", "500"), "not places on one machine?"),
        Input("in each place", "count", "parts that belong in each"),
        Input("taken off", "count", "parts that came off", sign="zero or over"),
        Input("put back", "count", "of those, put back", sign="zero or over"),
        Input("set aside", "count", "of those, scrapped or kept back; one-use parts among them", required=False, sign="zero or over"),
        Input("new", "count", "new ones fitted", required=False, sign="zero or over")),
    outputs=(
        Output("needed", "count", "nearest", "parts needed to fill every place"),
        Output("off the machine", "none", "nearest", "whether all that came off is accounted for"),
        Output("on the machine", "none", "nearest", "whether every place is filled"),
        Output("verdict", "none", "nearest", "in equals out, or not")),
    source="counting",
    example=Example({"places": "2", "in each place": "6", "taken off": "12", "put back": "9", "set aside": "2", "new": "3"},
                    {"needed": "12", "off the machine": "1 not accounted for: find it before anything is closed", "on the machine": "agrees", "verdict": "does not agree"},
                    "by hand"),
    goes_wrong=("A new part fitted for one that lies lost inside: the places are full and the count is not.",
                "A one-use part put back because there was no new one."),
    refuses=("Sizes no machine has.",),
    compute=compute)
