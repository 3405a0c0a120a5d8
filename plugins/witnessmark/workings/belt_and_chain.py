"""The workings 'belt-sag', 'chain-sag', 'chain-wear' and 'chain-length': what a rule shows of a belt or a chain."""
from __future__ import annotations

import math
from collections.abc import Mapping

from ..core.rounding import round_to
from ..core.working import Details, Given, Line, Outcome, Refusal, Value
from .printed import in_system, in_unit, unit_of, value, window, words
from .reach import beyond_reach
from .timing_arc import SIXTY_FOURTH, on_inch_tape

NOT_WORN, WORN = "in order", "renew"
_FINE = (("in", "0.01"), ("mm", "0.1"))


def straight_span(centres: float, large: float, small: float) -> float | None:
    """Length of belt or chain between the points where it leaves two wheels; None when the wheels overlap."""
    across = (large - small) / 2
    return math.sqrt(centres**2 - across**2) if centres > (large + small) / 2 else None


def links(teeth: float, other: float, centres: float) -> float:
    """Links of a chain round two sprockets, centres in pitches: 2 C + (N + n) / 2 + ((N - n) / 2 pi)² / C."""
    return 2 * centres + (teeth + other) / 2 + ((teeth - other) / (2 * math.pi)) ** 2 / centres


def centres_for(count: float, teeth: float, other: float) -> float | None:
    """Centres in pitches at which `count` links are taut; None when they do not reach round."""
    slack = 2 * count - teeth - other
    inside = slack**2 - 8 * ((teeth - other) / math.pi) ** 2
    return (slack + math.sqrt(inside)) / 8 if slack > 0 and inside >= 0 else None


def pitch_diameter(pitch: float, teeth: float) -> float:
    """Across the circle on which the chain's pins lie."""
    return pitch / math.sin(math.pi / teeth)


def _span(given: Mapping[str, Given]) -> tuple[float, str] | Refusal:
    """The span and the numbers it came from."""
    if "span" in given:
        return given["span"].likely, given["span"].text
    if not all(name in given for name in ("centres", "large diameter", "small diameter")):
        return Refusal("nothing says how long the free span is", "give the span, or centres and both diameters")
    ends = [given[name].likely for name in ("centres", "large diameter", "small diameter")]
    span = straight_span(ends[0], max(ends[1:]), min(ends[1:]))
    if span is None:
        return Refusal("wheels of these sizes overlap at these centres", "check centres and diameters")
    return span, f"sqrt({given['centres'].text}² - (({given['large diameter'].text} - {given['small diameter'].text}) / 2)²)"


def _measured(given: Mapping[str, Given]) -> Given:
    return given["span"] if "span" in given else given["centres"]


def belt_sag(given: Mapping[str, Given]) -> Outcome:
    refusal = beyond_reach(given)
    found = refusal or _span(given)
    if isinstance(found, Refusal):
        return Outcome(refusals=(found,))
    span, how = found
    unit, step = in_system(_measured(given), *_FINE)
    push = span / 64
    tape = round_to(push / 0.0254, SIXTY_FOURTH, "nearest")
    values: list[Value] = [value("span", "length", span, unit, step), value("push in", "length", push, unit, step), words("push in on a tape", on_inch_tape(tape))]
    lines = [Line("Free span", "sqrt(C² - ((D - d) / 2)²)" if "span" not in given else "", how, in_unit(span, "length", unit, step)),
             Line("A sixty-fourth of it", "span / 64", in_unit(span, "length", unit, step) + " / 64", in_unit(push, "length", unit, step))]
    if "tension" in given:
        force = 4 * given["tension"].likely * push / math.hypot(span, 2 * push)
        values.append(value("push with", "force", force, unit_of(given["tension"]), "0.1"))
        lines.append(Line("Force at the middle that does it", "4 T s / sqrt(span² + 4 s²)", f"T = {given['tension'].text}", values[-1].printed))
    return Outcome(tuple(values), details=lambda: Details(tuple(lines)))


def chain_sag(given: Mapping[str, Given]) -> Outcome:
    refusal = beyond_reach(given)
    found = refusal or _span(given)
    if isinstance(found, Refusal):
        return Outcome(refusals=(found,))
    span, how = found
    unit, step = in_system(_measured(given), *_FINE)
    share = given["share"]
    band = window("movement", "length", span * share.low, span * share.high, unit, step)
    if band is None:
        return Outcome(refusals=(Refusal("nothing is left between least and most movement", "give the share as a range, such as 2 to 3 %"),))
    lines = (Line("Free span", "sqrt(C² - ((D - d) / 2)²)" if "span" not in given else "", how, in_unit(span, "length", unit, step)),
             Line("All the movement up and down at its middle", "share · span", f"{share.text} of {in_unit(span, 'length', unit, step)}", band.printed))
    return Outcome((value("span", "length", span, unit, step), band), details=lambda: Details(lines))


def chain_wear(given: Mapping[str, Given]) -> Outcome:
    refusal = beyond_reach(given)
    if refusal:
        return Outcome(refusals=(refusal,))
    new = given["pitch"].likely * given["pitches"].likely
    unit, step = in_system(given["pitch"], *_FINE)
    most = new * (1 + given["limit"].likely)
    values = [value("length new", "length", new, unit, step), value("renew over", "length", most, unit, step, "down")]
    lines = [Line("New", "pitches · pitch", f"{given['pitches'].text} x {given['pitch'].text}", in_unit(new, "length", unit, step)),
             Line("Renew over", "new · (1 + limit)", f"{in_unit(new, 'length', unit, step)} and {given['limit'].text}", values[1].printed)]
    if "reading" in given:
        growth = given["reading"].likely / new - 1
        values.append(words("growth", f"{growth * 100:.1f} %"))
        values.append(words("verdict", WORN if given["reading"].high > values[1].likely * (1 + 1e-9) else NOT_WORN))
        lines.append(Line("Grown by", "reading / new - 1", f"{given['reading'].text} / {in_unit(new, 'length', unit, step)} - 1", values[2].printed))
    return Outcome(tuple(values), details=lambda: Details(tuple(lines)))


def chain_length(given: Mapping[str, Given]) -> Outcome:
    refusal = beyond_reach(given)
    pitch, one, two = given["pitch"], given["teeth"].likely, given["other teeth"].likely
    if not refusal and min(one, two) < 5:
        refusal = Refusal("a sprocket of fewer than five teeth carries no roller chain", "check the teeth")
    if refusal:
        return Outcome(refusals=(refusal,))
    across = tuple(pitch_diameter(pitch.likely, teeth) for teeth in (one, two))
    wanted = given["centres"].likely / pitch.likely
    if straight_span(given["centres"].likely, max(across), min(across)) is None:
        return Outcome(refusals=(Refusal("sprockets of these sizes overlap at these centres", "check centres and teeth"),))
    exact = links(one, two, wanted)
    count = 2 * round(exact / 2)
    centres = centres_for(count, one, two)
    if centres is None:
        return Outcome(refusals=(Refusal("no even number of links goes round these sprockets near these centres", "give other centres"),))
    unit, step = in_system(pitch, *_FINE)
    fine = in_system(pitch, ("in", "0.001"), ("mm", "0.01"))
    values = (value("links", "count", float(count), "", "1"), value("centres then", "length", centres * pitch.likely, unit, step),
              value("pitch diameter", "diameter", across[0], *fine), value("other pitch diameter", "diameter", across[1], *fine))
    lines = (Line("Links, exactly", "2 C + (N + n) / 2 + ((N - n) / (2 pi))² / C", f"C = {given['centres'].text} / {pitch.text}", f"{exact:.2f}"),
             Line("The nearest even number", "", f"{exact:.2f}", str(count)),
             Line("Centres at which it is taut", "p (s + sqrt(s² - 8 ((N - n) / pi)²)) / 8", f"s = 2 x {count} - {one:.0f} - {two:.0f}", values[1].printed),
             Line("Pitch diameters", "p / sin(180° / N)", pitch.text, f"{values[2].printed}, {values[3].printed}"))
    return Outcome(values, details=lambda: Details(lines))
