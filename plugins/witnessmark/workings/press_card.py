"""The working 'press-card': how one press, with one gauge, reaches a force. Declaration: see WORKING."""
from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence

from ..core.units import find_unit
from ..core.working import Details, Example, Formula, Given, Input, Outcome, Output, Refusal, Working
from .press_figures import card_lines, card_values
from .press_gauge import SHARES, Job, Press, judge, judge_job, standard_that_would_do
from .printed import force, in_unit, unit_of
from .stress_area import stress_area

PRESS_INPUTS = ("area", "bore", "rod", "side", "rated pressure", "rated force",
                "full scale", "division", "accuracy", "gauge limit")
"""Inputs that belong to the press and gauge; the rest belong to the job."""


Others = Sequence[tuple[str, Mapping[str, Given]]]


def compute(given: Mapping[str, Given], others: Callable[[], Others] = tuple) -> Outcome:
    """The card, or the refusal. `others` gives (name, press inputs) of other presses and gauges of the shop:
    when this one refuses, or reads in its bottom quarter, those that would do are named."""
    job = _job(given)
    press = _press(given)
    if isinstance(press, Refusal):
        return Outcome(refusals=(press,))
    wrong = judge_job(job) or _stud_refusal(given, job)
    if wrong:
        return Outcome(refusals=(wrong,))
    verdict = judge(press, job)
    def details() -> Details:
        return Details(card_lines(given, press, job))

    if verdict.refusal:
        return Outcome(refusals=(Refusal(verdict.refusal.message, _instead(press, job, others())),), details=details)
    warnings = verdict.warnings
    if verdict.in_bottom_quarter:
        better = _offers(others(), job, clear=True) or standard_that_would_do(press, job)
        warnings = tuple(f"{warning}; better: {' or '.join(better)}" if better and "bottom quarter" in warning else warning
                         for warning in warnings)
    if "draw stud thread" in given and "draw stud yield" not in given:
        warnings += ("no yield is given for the draw stud, so its stress is not judged",)
    return Outcome(card_values(given, press, job, verdict), (), warnings, details=details)


def _instead(press: Press, job: Job, others: Others) -> str:
    """What would do where this press refused."""
    would_do = _offers(others, job) or standard_that_would_do(press, job)
    if would_do:
        return "use " + " or ".join(would_do)
    wanted = job.ceiling if job.target is None else job.target
    if press.reading(wanted) > press.rated:
        return f"use a press rated for {force(wanted, job.unit)} or more"
    return "no standard gauge fits inside this floor and ceiling on this ram: do not press with it"


def _press(given: Mapping[str, Given]) -> Press | Refusal:
    area = _area(given)
    if area is None:
        return Refusal("the ram's area is not known", "give the nameplate area, or the bore, or both rated force and rated pressure")
    if area <= 0:
        return Refusal("the rod is as thick as the bore", "measure both again")
    limits = [given[name].likely / by for name, by in (("rated pressure", 1), ("rated force", area)) if name in given]
    if not limits:
        return Refusal("the ram's rating is not given, so nothing says when a mark is over it",
                       "give the rated pressure or the rated force from the nameplate")
    unit = unit_of(given["full scale"])
    pascals = float(unit.factor)
    full_scale, division = (given[name].quantity.low * unit_of(given[name]).factor / unit.factor
                            for name in ("full scale", "division"))
    if not 0 < division < full_scale:
        return Refusal("the division is not smaller than the full scale", "read both off the dial again")
    gauge_limit = min(given["gauge limit"].low / pascals, float(full_scale)) if "gauge limit" in given else float(full_scale)
    return Press(area, unit, full_scale, division, given["accuracy"].likely, min(limits) / pascals, gauge_limit)


def _area(given: Mapping[str, Given]) -> float | None:
    """Nameplate area first: a hollow ram's ring cannot be told from its bore."""
    if "area" in given:
        return given["area"].likely
    if "bore" in given:
        pulling = "side" in given and given["side"].text == "pull"
        if pulling and "rod" not in given:
            return None
        rod = given["rod"].likely if pulling else 0.0
        return math.pi / 4 * (given["bore"].likely**2 - rod**2)
    if "rated force" in given and "rated pressure" in given:
        return given["rated force"].likely / given["rated pressure"].likely
    return None


def _job(given: Mapping[str, Given]) -> Job:
    """The forces asked for, each at the end of its band that is the safer to believe."""
    first = next((given[name] for name in ("target", "ceiling", "window", "floor") if name in given), None)
    window = (given["window"].low, given["window"].high) if "window" in given else None
    ceiling = given["ceiling"].low if "ceiling" in given else window[1] if window else None
    return Job(unit_of(first) if first else find_unit("kN", "press force"),
               given["target"].likely if "target" in given else None,
               given["floor"].high if "floor" in given else None, ceiling, window)


def _stud_refusal(given: Mapping[str, Given], job: Job) -> Refusal | None:
    if "draw stud thread" not in given or "draw stud yield" not in given:
        return None
    stress = job.ceiling / stress_area(given["draw stud thread"].thread)
    if stress < given["draw stud yield"].low:
        return None
    unit = unit_of(given["draw stud yield"])
    return Refusal(f"at the ceiling the draw stud would stand at {in_unit(stress, 'stress', unit, '0.1', 'up')}, "
                   f"not under its yield of {given['draw stud yield'].text}", "use a larger stud, or push instead of pulling")


def _offers(others: Others, job: Job, clear: bool = False) -> tuple[str, ...]:
    """Which of the other presses accept the job, with their own marks; `clear`: outside their bottom quarter."""
    offers = []
    for name, inputs in others:
        press = _press(inputs)
        if isinstance(press, Refusal):
            continue
        verdict = judge(press, job)
        if verdict.refusal or (clear and verdict.in_bottom_quarter):
            continue
        last = f"last mark {press.shown(verdict.marks[-1])}, " if verdict.marks else ""
        offers.append(f"{name} ({last}never pass {press.shown(verdict.never_pass)})")
    return tuple(offers)


WORKING = Working(
    id="press-card",
    title="Press gauge marks for one ram and one gauge",
    purpose="Turns a press force into needle marks on the gauge in hand: four stops, the mark never to pass, or a refusal.",
    formula=(Formula("p = F / A", r"p = \frac{F}{A}"),
             Formula("A = pi/4 D² pushing, pi/4 (D² - d²) on the rod side, or from the nameplate",
                     r"A = \frac{\pi}{4} D^2 \text{ pushing, } \frac{\pi}{4} (D^2 - d^2) \text{ on the rod side, or from the nameplate}"),
             Formula("U = sqrt((class · full scale)² + (division / 2)²)",
                     r"U = \sqrt{(\text{class} \cdot \text{full scale})^2 + \left(\frac{\text{division}}{2}\right)^2}"),
             Formula("marks: 50, 75, 90, 100 % of p, each down to a full division",
                     r"\text{marks: 50, 75, 90, 100 % of } p \text{, each down to a full division}"),
             Formula("never pass: ceiling / A - U, down to a full division",
                     r"\text{never pass: } \frac{\text{ceiling}}{A} - U \text{, down to a full division}"),
             Formula("accepted: floor / A <= mark - U, mark + U <= ceiling / A",
                     r"\text{accepted: } \frac{\text{floor}}{A} \le \text{mark} - U, \quad \text{mark} + U \le \frac{\text{ceiling}}{A}")),
    inputs=(
        Input("area", "area", "effective area from the nameplate; a hollow ram's ring, hole taken off", ("1 in²", "120 in²"),
              "not the size of a bench or frame press: square inches and square centimetres mixed up?", required=False),
        Input("bore", "diameter", "bore of a solid ram, when no area is known", ("1 in", "12 in"), "not the bore of a shop press", required=False),
        Input("rod", "diameter", "rod, needed on the pulling side", ("0.25 in", "8 in"), "not the rod of a shop press", required=False),
        Input("side", "choice", "which side the oil works on", required=False, choices=("push", "pull")),
        Input("rated pressure", "pressure", "highest pressure on the nameplate", ("500 psi", "15000 psi"), "not a usual rating", required=False),
        Input("rated force", "press force", "highest force on the nameplate", ("1 short ton", "500 short ton"), "not a usual rating", required=False),
        Input("full scale", "pressure", "last figure of the dial; its unit is the unit of the marks", ("100 psi", "25000 psi"), "not a usual gauge"),
        Input("division", "pressure", "smallest division of the dial", ("0.1 psi", "1000 psi"), "not a usual division"),
        Input("accuracy", "share", "accuracy class, share of full scale", ("0.1 %", "4 %"), "not a class of EN 837-1"),
        Input("gauge limit", "pressure", "highest reading the gauge may see, if less than full scale", required=False),
        Input("target", "press force", "force to reach; without it only the never-pass mark is given", required=False),
        Input("floor", "press force", "force under which the joint does not hold", required=False),
        Input("ceiling", "press force", "force never to pass; the top of the window stands in for it", required=False),
        Input("window", "press force", "accept band of the last reading, read inward with the uncertainty", required=False),
        Input("draw stud thread", "thread", "thread that carries the whole press when the ram is hollow", required=False),
        Input("draw stud yield", "stress", "its yield strength", ("30 ksi", "160 ksi"), "not a usual stud", required=False)),
    outputs=(
        Output("exact reading", "pressure", "nearest", "what the gauge would show at the target"),
        *(Output(f"mark at {share} %", "pressure", "down", "where to stop, hold and measure") for share in SHARES),
        Output("uncertainty", "pressure", "nearest", "how far the needle may be wrong"),
        Output("uncertainty as force", "press force", "nearest", "the same as a force"),
        Output("never-pass mark", "pressure", "down", "the mark the needle may not pass"),
        Output("force at the last mark", "press force", "nearest", "what the 100 % mark means, with both edges"),
        Output("accept band low", "pressure", "up", "lowest reading to accept"),
        Output("accept band high", "pressure", "down", "highest reading to accept"),
        Output("draw stud stress at target", "stress", "nearest", "pull on the stud's section"),
        Output("draw stud stress at ceiling", "stress", "nearest", "the same at the ceiling")),
    source="Pascal's law, F = p A; uncertainty as root sum of squares (JCGM 100:2008, 5.1.2); class as share of full scale (EN 837-1)",
    example=Example(
        {"area": "10.97 in2", "rated pressure": "9100 psi", "full scale": "10000 psi", "division": "100 psi", "accuracy": "1.5 %",
         "target": "18 long ton", "floor": "14.9 long ton", "ceiling": "22 long ton"},
        {"exact reading": "3675 psi", "mark at 50 %": "1800 psi", "mark at 100 %": "3600 psi", "never-pass mark": "4300 psi",
         "force at the last mark": "17.63 long ton (16.86 to 18.40)"},
        "this project's demonstration book, by hand"),
    goes_wrong=("The rod side taken for the bore side.", "A ram named by tons whose true area is another.",
                "A gauge marked in tons moved to another ram.", "Reading while pumping instead of after a pause of five seconds.",
                "A gauge in its bottom quarter: its class is a share of full scale, not of the reading."),
    refuses=("No ceiling, no rating or no area.", "The force is over the nameplate or off the gauge.",
             "With the uncertainty the last mark may lie under the floor or over the ceiling.",
             "The draw stud would yield before the ceiling."),
    compute=compute)
