"""The working 'tightening-torque': what a torque pulls, and what to set on the wrench. Declaration: see WORKING."""
from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from ..core.rounding import round_to
from ..core.units import Unit, find_unit
from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Value, Working
from .printed import in_unit, unit_of, value
from .stress_area import stress_area
from .tables.bolt_strengths import GRADES, Strength, StrengthProblem, strength_of
from .wrench import setting_on

CLAMP_STEPS = {"lbf": "1", "kN": "0.1", "long ton": "0.1", "short ton": "0.1", "tonne": "0.1", "N": "10", "kgf": "1"}
Band = tuple[float, float, float]


def compute(given: Mapping[str, Given]) -> Outcome:
    """Clamp, share of proof and wrench setting. A printed torque is judged and never changed."""
    thread = given["thread"].thread
    strength = None if given["grade"].text == "none" else strength_of(given["grade"].text, thread)
    if isinstance(strength, StrengthProblem):
        return Outcome(refusals=(Refusal(strength.message, strength.mend),))
    unit = _torque_unit(given)
    if "torque" in given:
        exact = torque = given["torque"].likely
    elif "share of proof" not in given or strength is None:
        return Outcome(refusals=(Refusal("there is no torque to judge and nothing to work one out from",
                                         "give the torque, or a graded bolt and a share of its proof load"),))
    else:
        pull = given["share of proof"].likely * strength.proof * stress_area(thread)
        exact = given["nut factor"].likely * thread.nominal_si * pull
        step = given["wrench graduation"].quantity.low if _has_wrench(given) and "adapter length" not in given else Fraction(1)
        torque = float(round_to(unit.from_si(exact), step, "down") * unit.factor)
        if torque <= 0:
            return Outcome(refusals=(Refusal("the torque is less than one graduation", "use a finer wrench"),))
    clamp = _clamp(given, torque)
    values = [*_torque_values(given, exact, torque, unit), value("clamp", "force", clamp, *_clamp_unit(given, unit))]
    if strength:
        values += _shares(strength, clamp, stress_area(thread))
    values, refusals, warnings = _judge_press(given, values, clamp)
    warnings += _judge_proof(strength, clamp, stress_area(thread))
    if _has_wrench(given):
        made = setting_on(given, torque)
        if isinstance(made, Refusal):
            refusals.append(made)
        else:
            values += made
    def details() -> Details:
        return Details(_lines(given, exact, torque, unit, clamp, strength))

    return Outcome(() if refusals else tuple(values), tuple(refusals), tuple(warnings), details=details)


def _has_wrench(given: Mapping[str, Given]) -> bool:
    return "wrench graduation" in given


def _torque_unit(given: Mapping[str, Given]) -> Unit:
    for name in ("torque", "wrench graduation"):
        if name in given:
            return unit_of(given[name])
    return find_unit("lbf·ft" if given["thread"].thread.family == "unified" else "N·m", "torque")


def _clamp_unit(given: Mapping[str, Given], torque_unit: Unit) -> tuple[Unit, str]:
    symbol = given["force in"].text if "force in" in given else "kN" if torque_unit.system == "metric" else "lbf"
    return find_unit(symbol, "force"), CLAMP_STEPS[symbol]


def _clamp(given: Mapping[str, Given], torque: float) -> Band:
    """F = T / (K D): low at the highest K with the wrench low, high at the lowest K with it high."""
    diameter, nut = given["thread"].thread.nominal_si, given["nut factor"]
    accuracy = given["wrench accuracy"].likely if "wrench accuracy" in given else 0.0
    return (torque * (1 - accuracy) / (nut.high * diameter), torque / (nut.likely * diameter),
            torque * (1 + accuracy) / (nut.low * diameter))


def _torque_values(given: Mapping[str, Given], exact: float, torque: float, unit: Unit) -> list[Value]:
    if "torque" in given:
        text = given["torque"].text
        shown = value("torque", "torque", torque, unit, Fraction(1, 10**given["torque"].quantity.decimals))
        return [replace(shown, texts=lambda: (text, shown.converted))]
    step = Fraction(1, 10)
    return [value("exact torque", "torque", exact, unit, step), value("torque", "torque", torque, unit, _plain_step(torque, unit), "down")]


def _plain_step(si: float, unit: Unit) -> Fraction:
    """1, or finer where the graduation is."""
    exact = unit.from_si(si)
    return Fraction(1) if abs(exact - round(exact)) < Fraction(1, 10**6) else Fraction(1, 100)


def _shares(strength: Strength, clamp: Band, area: float) -> list[Value]:
    proof = strength.proof * area
    return [value("share of proof", "share", clamp[1] / proof, "%", "1"),
            value("worst share of proof", "share", clamp[2] / proof, "%", "1", "up")]


def _judge_proof(strength: Strength | None, clamp: Band, area: float) -> list[str]:
    """Words for a torque outside sense; the number stays as its source prints it."""
    if strength is None:
        return []
    likely, worst = (pull / (strength.proof * area) for pull in clamp[1:])
    if likely > 1:
        return [f"pulls the bolt past its proof load ({likely:.0%})".replace("%", " %")]
    if worst > 0.9 + 1e-9:
        return [f"at the lowest nut factor and the wrench high it reaches {worst:.0%} of proof, over 90 %".replace("%)", " %)").replace("% of", " % of")]
    if likely < 0.25:
        return [f"uses only {likely:.0%} of proof: nuts this slack work loose unless something else locks them".replace("% of", " % of")]
    return []


def _judge_press(given: Mapping[str, Given], values: list[Value], clamp: Band) -> tuple[list[Value], list[Refusal], list[str]]:
    """Does the nut out-pull the press? Over 75 % of the force used is warned about, over the ceiling refused."""
    refusals, warnings = [], []
    if "press force" in given:
        share = clamp[2] / given["press force"].likely
        values = [*values, value("worst share of press force", "share", share, "%", "0.1")]
        if share > 0.75 + 1e-9:
            warnings.append(f"may clamp up to {share * 100:.1f} % of the press force: over 75 % it begins to press, not to hold")
    if "press ceiling" in given and clamp[2] > given["press ceiling"].low:
        unit = unit_of(given["press ceiling"])
        refusals.append(Refusal(f"may clamp up to {in_unit(clamp[2], 'press force', unit, '0.1')}, over the press ceiling of {given['press ceiling'].text}",
                                "use a torque whose worst clamp stays under 75 % of the press force"))
    return values, refusals, warnings


def _lines(given: Mapping[str, Given], exact: float, torque: float, unit: Unit, clamp: Band,
           strength: Strength | None) -> tuple[Line, ...]:
    thread, nut = given["thread"].thread, given["nut factor"]
    clamp_unit, step = _clamp_unit(given, unit)
    accuracy = given["wrench accuracy"].text if "wrench accuracy" in given else "0 %"
    inches = thread.family == "unified"
    area = in_unit(stress_area(thread), "area", "in²" if inches else "mm²", "0.0001" if inches else "0.1")
    lines = [Line("Section that carries the pull", "As, by ASME B1.1 or ISO 898-1", thread.text, area)]
    if strength:
        lines.append(Line(f"Proof load, {strength.source} grade {strength.grade}", "proof strength x As",
                          f"{strength.proof_printed:g} {strength.unit} x {area}", in_unit(strength.proof * stress_area(thread), "force", clamp_unit, step)))
    if "torque" not in given:
        lines.append(Line("Torque for the share of proof asked", "T = K D F", f"K {nut.likely:g}, {given['share of proof'].text} of proof",
                          in_unit(exact, "torque", unit, "0.1")))
    printed = in_unit(torque, "torque", unit, _plain_step(torque, unit))
    for words, factor, sign, pull in (("Likely", nut.likely, "", clamp[1]), ("Lowest", nut.high, f" less {accuracy}", clamp[0]),
                                      ("Highest", nut.low, f" plus {accuracy}", clamp[2])):
        lines.append(Line(f"{words} clamp", "F = T / (K D)", f"{printed}{sign}, K {factor:g}", in_unit(pull, "force", clamp_unit, step)))
    return tuple(lines)


WORKING = Working(
    id="tightening-torque",
    title="Tightening torque, clamp and wrench setting",
    purpose="Says what a torque pulls on this thread and surface, how much of the bolt that uses, and what to set on the wrench.",
    formula=(Formula("As = 0.7854 (D - 0.9743/n)² inch; pi/4 (d - 0.938194 p)² metric",
                     r"A_s = 0.7854 \left(D - \frac{0.9743}{n}\right)^2 \text{ inch; } \frac{\pi}{4} (d - 0.938194 p)^2 \text{ metric}"),
             Formula("T = K D F", r"T = K D F"),
             Formula("F low = T (1 - wrench) / (K high D); F high = T (1 + wrench) / (K low D)",
                     r"F_\text{low} = \frac{T (1 - \text{wrench})}{K_\text{high} D}, \quad F_\text{high} = \frac{T (1 + \text{wrench})}{K_\text{low} D}"),
             Formula("setting = T L / (L + a cos angle), down to a graduation",
                     r"\text{setting} = \frac{T L}{L + a \cos \text{angle}} \text{, down to a graduation}")),
    inputs=(
        Input("thread", "thread", "thread of the bolt, stud or nut"),
        Input("grade", "grade", "strength grade, or none when it has none: then only the clamp is judged", choices=("none", *GRADES)),
        Input("nut factor", "friction", "K for the surface: low / likely / high", ("0.08", "0.35"), "not a nut factor: was a friction given?"),
        Input("torque", "torque", "torque a source prints; it is judged, never changed", ("5 lbf·in", "2000 lbf·ft"), "pound-inches and pound-feet mixed up?", required=False),
        Input("share of proof", "share", "share of proof load to work the torque out from, when none is printed", ("25 %", "90 %"), "reusable joints take about 75 %", required=False),
        Input("wrench lowest", "torque", "lowest setting of the wrench", required=False),
        Input("wrench highest", "torque", "highest setting of the wrench", required=False),
        Input("wrench graduation", "torque", "one graduation of the wrench; without it no setting is given", required=False),
        Input("wrench accuracy", "share", "how far the wrench may be out, either way", ("1 %", "10 %"), "have the wrench checked", required=False),
        Input("wrench length", "length", "from the drive square to the middle of the hand", ("4 in", "60 in"), "not a hand wrench", required=False),
        Input("adapter length", "length", "from the drive square to the middle of the fastener", ("0.5 in", "24 in"), "not a usual adapter", required=False),
        Input("adapter angle", "angle", "between wrench and adapter: 0° straight on, 90° no correction", ("0 °", "180 °"), "turn it into 0 to 180°", required=False),
        Input("passes", "count", "in how many rounds to come up to the torque: 1, 2, 3 or 4", ("1", "4"), "1 to 4 rounds", required=False),
        Input("press force", "press force", "force the hub was pressed with, when a nut holds it", required=False),
        Input("press ceiling", "press force", "press force never to pass", required=False),
        Input("force in", "choice", "unit of the clamp; lbf, or kN for a metric wrench, when not said", required=False, choices=tuple(CLAMP_STEPS))),
    outputs=(
        Output("exact torque", "torque", "nearest", "torque for the share of proof, before rounding"),
        Output("torque", "torque", "down", "torque at the fastener"),
        Output("clamp", "force", "nearest", "pull: likely, and with friction and wrench at their worst both ways"),
        Output("share of proof", "share", "nearest", "likely pull over proof load"),
        Output("worst share of proof", "share", "up", "highest pull over proof load"),
        Output("worst share of press force", "share", "nearest", "highest pull over the press force used"),
        Output("setting", "torque", "down", "what to set on the wrench"),
        Output("delivered torque", "torque", "nearest", "what that setting gives at the fastener"),
        *(Output(f"pass {n}", "torque", "down", "setting of this round") for n in range(1, 5))),
    source="T = K D F and nut factors: machine-design textbooks; stress area ASME B1.1, ISO 898-1; strengths SAE J429, ISO 898-1, ASTM A574; adapter: US military maintenance manuals (TM 1-1500-204-23-9, figure 8-16)",
    example=Example(
        {"thread": "3/4-16 UNF", "grade": "5", "nut factor": "0.13 / 0.15 / 0.17", "torque": "220 lbf·ft", "wrench lowest": "40 lbf·ft",
         "wrench highest": "250 lbf·ft", "wrench graduation": "5 lbf·ft", "wrench accuracy": "4 %"},
        {"clamp": "23,467 lbf (19,878 to 28,160)", "share of proof": "74 %", "setting": "220 lbf·ft"},
        "75 % of proof at K 0.15 in a published torque table: 223 lbf·ft, 23,776 lbf"),
    goes_wrong=("A dry figure on an oiled stud: a third more pull.", "An unmarked head taken for grade 5.",
                "75 % of yield read as 75 % of proof.", "Hand not on the grip: the wrench length is then another.",
                "A gasket or soft casting that limits the joint long before the bolt."),
    refuses=("A grade outside its sizes, or of the other thread family.", "A setting outside the wrench.",
             "A clamp that may pass the press ceiling.", "No torque and no grade with a share of proof."),
    compute=compute)
