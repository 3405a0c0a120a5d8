"""The working 'spring-test': the reject limit of a spring and the line from which a tester proves it good."""
from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from math import hypot

from ..core.drawing import Drawing, Label, Stroke
from ..core.rounding import round_to
from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Value, Working
from .printed import in_unit, three_figures, unit_of, value, words
from .reach import beyond_reach

GOOD, UNPROVED, REJECT = "good", "not proved good", "reject"


def uncertainty(highest: float, division: float, accuracy: float) -> float:
    """Share of the highest reading and half a division, added as squares."""
    return hypot(accuracy * highest, division / 2)


def verdict(reading: float, limit: float, line: float) -> str:
    """Under the limit a spring is out; between limit and line the tester cannot tell."""
    return REJECT if reading < limit else GOOD if reading >= line * (1 - 1e-12) else UNPROVED


def compute(given: Mapping[str, Given]) -> Outcome:
    """Limit, uncertainty and accept line, all in the unit of the tester; with a reading its verdict."""
    refusal = beyond_reach(given)
    if refusal:
        return Outcome(refusals=(refusal,))
    if "reject limit" not in given and not ("load" in given and "share" in given):
        return Outcome(refusals=(Refusal("nothing says from which load on the spring is out", "give the reject limit, or the load and the share of it to keep"),))
    division, highest = given["scale division"], given["scale highest"].likely
    unit, step = unit_of(division), division.quantity.low
    limit = given["reject limit"].likely if "reject limit" in given else given["load"].likely * given["share"].likely
    doubt = uncertainty(highest, division.likely, given["scale accuracy"].likely if "scale accuracy" in given else 0.0)
    line = float(unit.to_si(round_to(unit.from_si(limit + doubt), step, "up")))
    if line > highest * (1 + 1e-9):
        return Outcome(refusals=(Refusal(f"the accept line, {in_unit(line, 'force', unit, step)}, is past the end of the tester, {given['scale highest'].text}",
                                         "use a tester that reads further"),))
    if "load" in given and line > given["load"].high:
        return Outcome(refusals=(Refusal(f"this tester could not even prove a new spring good: its accept line is {in_unit(line, 'force', unit, step)}, "
                                         f"a new spring carries {given['load'].text}", "use a finer tester"),))
    values = [_under(value("reject limit", "force", limit, unit, three_figures(limit, "force", unit.symbol, "1"))),
              value("uncertainty", "force", doubt, unit, three_figures(doubt, "force", unit.symbol, "1") * 10),
              value("accept line", "force", line, unit, step, "up")]
    if "reading" in given:
        values.append(words("verdict", verdict(given["reading"].likely, limit, line)))

    def details() -> Details:
        fine = three_figures(limit, "force", unit.symbol, "1") / 10
        shown = [in_unit(each, "force", unit, fine) for each in (limit, doubt, limit + doubt)]
        accuracy = given["scale accuracy"].text if "scale accuracy" in given else "0 %"
        share = "as given" if "reject limit" in given else f"{given['share'].text} x {given['load'].text}"
        return Details((
            Line("Reject limit", "share x load", share, shown[0]),
            Line("Uncertainty of the tester", "sqrt((accuracy x highest)^2 + (division / 2)^2)",
                 f"{accuracy} of {given['scale highest'].text}, division {division.text}", shown[1]),
            Line("Limit and uncertainty together", "", f"{shown[0]} + {shown[1]}", shown[2]),
            Line("Accept line, up to a division", "", shown[2], in_unit(line, "force", unit, step, "up"))),
            drawing=_scale(given, limit, line))

    return Outcome(tuple(values), details=details)


def _under(limit: Value) -> Value:
    """The limit as a reject figure is written: under it the spring is out."""
    return replace(limit, texts=lambda: (f"under {limit.printed}", f"under {limit.converted}"))


def _scale(given: Mapping[str, Given], limit: float, line: float) -> Drawing:
    """A stretch of the tester's scale: out, not proved, good; with the reading."""
    unit, step = unit_of(given["scale division"]), given["scale division"].quantity.low
    ends = [limit, line] + [given[name].likely for name in ("load", "reading") if name in given]
    room = max(0.4 * (max(ends) - min(ends)), given["scale division"].likely)
    first, last = max(min(ends) - room, 0.0), max(ends) + room

    def x(force: float) -> float:
        return 10 + 300 * (force - first) / (last - first)

    def box(start: float, end: float, fill: str) -> Stroke:
        return Stroke(((x(start), 40), (x(end), 40), (x(end), 60), (x(start), 60)), "thin", fill, True)

    limit_text = in_unit(limit, "force", unit, three_figures(limit, "force", unit.symbol, "1"))
    line_text = in_unit(line, "force", unit, step)
    marks = [box(first, limit, "dark"), box(limit, line, "light"), box(line, last, "none")]
    # The nearer label stands clear of the tick of the further one.
    left = x(line) < 190
    marks += [Stroke(((x(limit), 60), (x(limit), 102 if left else 72))), Stroke(((x(line), 60), (x(line), 72 if left else 102))),
              Label(x(limit), 114 if left else 86, f"under {limit_text}: {REJECT}", "start" if left else "end"),
              Label(x(line), 86 if left else 114, f"from {line_text}: {GOOD}", "start" if left else "end")]
    shows = f"Scale of the tester: under {limit_text} reject, from {line_text} good, between them not proved good."
    if "reading" in given:
        at, text = x(given["reading"].likely), given["reading"].text
        marks += [Stroke(((at, 24), (at, 66)), "thick"), Label(at, 18, text, "middle" if 40 < at < 280 else "start" if at < 160 else "end", big=True)]
        shows += f" The reading {text} is marked: {verdict(given['reading'].likely, limit, line)}."
    return Drawing(320, 122, shows, tuple(marks))


WORKING = Working(
    id="spring-test",
    title="Reject limit of a spring on the tester in hand",
    purpose="Gives the load under which a spring is out, and the line on the tester from which it is proved good.",
    formula=(Formula("limit = share · load", r"\text{limit} = \text{share} \cdot \text{load}"),
             Formula("u = sqrt((accuracy · highest)² + (division / 2)²)", r"u = \sqrt{(\text{accuracy} \cdot \text{highest})^2 + (\text{division} / 2)^2}"),
             Formula("accept line = limit + u", r"\text{accept line} = \text{limit} + u")),
    inputs=(
        Input("load", "force", "load a new spring carries at the test height", required=False),
        Input("share", "share", "share of that load under which it is out", ("70 %", "98 %"), "the share lost instead of the share kept?", required=False),
        Input("reject limit", "force", "load under which it is out, if that is known instead", required=False),
        Input("scale division", "force", "smallest division of the tester"),
        Input("scale highest", "force", "highest reading of the tester"),
        Input("scale accuracy", "share", "accuracy of the tester, share of its highest reading", required=False),
        Input("reading", "force", "what the spring showed, for its verdict", required=False)),
    outputs=(
        Output("reject limit", "force", "nearest", "under this the spring is out"),
        Output("uncertainty", "force", "nearest", "of a reading on this tester"),
        Output("accept line", "force", "up", "from this reading on, up to a division, the spring is proved good"),
        Output("verdict", "none", "nearest", "good, not proved good, or reject")),
    source="ISO 14253-1, decision rules: conformity is proved only when the limit is met with the uncertainty of the reading inside; "
           "90 % of the new load as limit is common practice, no source",
    example=Example(
        {"load": "2502 lbf", "share": "90 %", "scale highest": "3,000 lbf", "scale division": "20 lbf", "scale accuracy": "1 %", "reading": "2,280 lbf"},
        {"accept line": "2300 lbf", "uncertainty": "32 lbf", "verdict": "not proved good"},
        "this project's demonstration book, by hand"),
    goes_wrong=("A spring between limit and line taken for good because it is over the limit.",
                "The height set with the spring's own seat, cup or rust under it.",
                "The clamps taken off because the spring is weak: bound, it stores as much as a good one."),
    refuses=("An accept line past the end of the tester.", "A tester so coarse that a new spring would not be proved good.",
             "No limit, and no load with a share."),
    assumes=("Share of the full scale and half a division are taken as independent, and added as squares.",),
    compute=compute)
