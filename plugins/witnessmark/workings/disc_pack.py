"""The workings 'disc-pack' and 'clutch-capacity': height, tolerance and wear of a pack of discs, and the torque it holds. See PACK and CAPACITY."""
from __future__ import annotations

from collections.abc import Mapping
from math import hypot, sqrt

from ..core.drawing import Drawing, Label, Stroke
from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Table, Value, Working
from .printed import in_unit, spread, unit_of, value

_FINE = {"in": "0.001", "mm": "0.01"}
NEW, RUN_IN = "new", "run in"


def _unit(given: Given) -> str:
    return "mm" if unit_of(given).system == "metric" else "in"


def _half(given: Given | None) -> float:
    return (given.high - given.low) / 2 if given else 0.0


def _compute_pack(given: Mapping[str, Given]) -> Outcome:
    """Height, likely and worst tolerance, wear allowed and wear left."""
    discs, plates = given["friction discs"].likely, given["steel plates"].likely if "steel plates" in given else 0.0
    disc, plate = given["friction disc"], given.get("steel plate")
    if plates and plate is None:
        return Outcome(refusals=(Refusal("how thick a steel plate is, is not given", "measure one, or give no plates"),))
    unit = _unit(disc)
    height = discs * disc.likely + plates * (plate.likely if plate else 0.0)
    values: list[Value] = [value("height", "length", height, unit, _FINE[unit])]
    if _half(disc) or _half(plate):
        values += [value("likely tolerance", "length", hypot(sqrt(discs) * _half(disc), sqrt(plates) * _half(plate)), unit, _FINE[unit]),
                   value("worst tolerance", "length", discs * _half(disc) + plates * _half(plate), unit, _FINE[unit], "up")]
    least = _least(given, discs, plates)
    warnings: tuple[str, ...] = ()
    if least is not None:
        if least >= height:
            return Outcome(refusals=(Refusal("the worn pack is not thinner than the new one", "check which figures are new and which are worn"),))
        values += [value("least height", "length", least, unit, _FINE[unit], "up"), value("wear allowed", "length", height - least, unit, _FINE[unit], "down")]
        if "pack now" in given:
            now = given["pack now"].likely
            left = (now - least) / (height - least)
            values.append(value("wear left", "share", min(max(left, 0.0), 1.0), "%", "1"))
            warnings = _judged(given, now, least, height, discs * _half(disc) + plates * _half(plate))
    return Outcome(tuple(values), warnings=warnings, details=lambda: Details(_pack_lines(given, values), _pack_table(height, least, unit), _pack_drawing(round(discs), round(plates), values)))


def _least(given: Mapping[str, Given], discs: float, plates: float) -> float | None:
    """Height at which the pack is worn out: as given, or from each part's own limit; a plate without one does not wear."""
    if "least pack" in given:
        return given["least pack"].likely
    if "worn friction disc" not in given:
        return None
    plate = given.get("worn steel plate") or given.get("steel plate")
    return discs * given["worn friction disc"].likely + plates * (plate.likely if plate else 0.0)


def _judged(given: Mapping[str, Given], now: float, least: float, height: float, worst: float) -> tuple[str, ...]:
    if now < least * (1 - 1e-9):
        return (f"{given['pack now'].text} is under the least height: the pack is worn out",)
    if now > height + worst + 1e-9:
        return (f"{given['pack now'].text} is thicker than a new pack: dirt, oil, a warped plate or a disc too many",)
    return ()


def _pack_lines(given: Mapping[str, Given], values: list[Value]) -> tuple[Line, ...]:
    printed = {each.name: each.printed for each in values}
    plates = f" + {given['steel plates'].text} x {given['steel plate'].text}" if given.get("steel plates") and given.get("steel plate") else ""
    lines = [Line("Height", "discs x thickness + plates x thickness", f"{given['friction discs'].text} x {given['friction disc'].text}{plates}", printed["height"])]
    if "worst tolerance" in printed:
        lines += [Line("Likely tolerance, either way", "square root of the sum of squares", "", printed["likely tolerance"]),
                  Line("Worst tolerance, either way", "sum", "", printed["worst tolerance"])]
    if "wear allowed" in printed:
        lines.append(Line("Wear allowed", "height - least height", f"{printed['height']} - {printed['least height']}", printed["wear allowed"]))
    if "wear left" in printed:
        lines.append(Line("Wear left", "(pack now - least) / (height - least)", f"({given['pack now'].text} - {printed['least height']}) / {printed['wear allowed']}", printed["wear left"]))
    return tuple(lines)


def _pack_table(height: float, least: float | None, unit: str) -> tuple[Table, ...]:
    if least is None:
        return ()
    rows = tuple((in_unit(least + (height - least) * part / 5, "length", unit, _FINE[unit]), f"{20 * part} %") for part in range(5, -1, -1))
    return (Table("Pack as measured, and wear left", ("pack", "left"), rows),)


def _pack_drawing(discs: int, plates: int, values: list[Value]) -> Drawing | None:
    if discs + plates > 24:
        return None
    marks: list[Stroke | Label] = []
    x, order = 30.0, []
    first, second = (("steel", plates), ("friction", discs)) if plates > discs else (("friction", discs), ("steel", plates))
    for n in range(max(discs, plates)):
        order += [first[0]] * (n < first[1]) + [second[0]] * (n < second[1])
    wide = min(18.0, 240 / len(order))
    for sort in order:
        marks.append(Stroke(((x, 30), (x + wide, 30), (x + wide, 130), (x, 130)), "thin", "dark" if sort == "steel" else "light", True))
        x += wide + 1
    marks += [Stroke(((30, 145), (x - 1, 145)), "thick"), Label((30 + x) / 2, 168, values[0].printed, big=True)]
    return Drawing(320, 180, f"{discs} friction discs and {plates} steel plates, {values[0].printed} together", tuple(marks))


def mean_radius(outer: float, inner: float, facing: str) -> float:
    """Radius at which the force may be thought to act. New: even pressure; run in: even wear."""
    if facing == RUN_IN or outer == inner:
        return (outer + inner) / 2
    return 2 / 3 * (outer**3 - inner**3) / (outer**2 - inner**2)


def _compute_capacity(given: Mapping[str, Given]) -> Outcome:
    """Torque at which it slips over the band of friction, and how often that covers the engine."""
    outer, inner = given["outer diameter"].likely / 2, given["inner diameter"].likely / 2
    if inner >= outer:
        return Outcome(refusals=(Refusal("the facing is wider inside than outside", "check the two diameters"),))
    springs = given["springs"].likely if "springs" in given else 1.0
    radius = mean_radius(outer, inner, given["facing"].text if "facing" in given else NEW)
    lever, friction, force = given["faces"].likely * radius * springs, given["friction"], given["force"]
    ends = (friction.low * force.low * lever, friction.likely * force.likely * lever, friction.high * force.high * lever)
    metric = unit_of(force).system == "metric"
    values: list[Value] = [value("mean radius", "radius", radius, "mm" if metric else "in", "0.1" if metric else "0.01"),
                           value("capacity", "torque", spread(*ends), "N·m" if metric else "lbf·ft", "1")]
    warnings: tuple[str, ...] = ()
    if "engine torque" in given:
        engine = given["engine torque"]
        cover = (ends[0] / engine.high, ends[1] / engine.likely, ends[2] / engine.low)
        values.append(value("cover", "gear ratio", spread(*cover), "", "0.01"))
        if cover[0] < 1:
            warnings = ("at the lowest friction it slips before the engine's torque is reached",)
    return Outcome(tuple(values), warnings=warnings, details=lambda: Details(_capacity_lines(given, values), (_capacity_table(given, lever, metric),)))


def _capacity_lines(given: Mapping[str, Given], values: list[Value]) -> tuple[Line, ...]:
    printed = {each.name: each.printed for each in values}
    run_in = "facing" in given and given["facing"].text == RUN_IN
    springs = f"{given['springs'].text} x " if "springs" in given else ""
    lines = [Line("Mean radius, " + ("facing run in: even wear" if run_in else "facing new: even pressure"), "(ro + ri) / 2" if run_in else "2/3 (ro³ - ri³) / (ro² - ri²)",
                  f"diameters {given['outer diameter'].text} and {given['inner diameter'].text}", printed["mean radius"]),
             Line("Torque at which it slips", "faces x friction x force x mean radius", f"{given['faces'].text} x {given['friction'].text} x {springs}{given['force'].text} x {printed['mean radius']}",
                  printed["capacity"])]
    if "cover" in printed:
        lines.append(Line("How often it covers the engine", "capacity / engine torque", given["engine torque"].text, printed["cover"]))
    return tuple(lines)


def _capacity_table(given: Mapping[str, Given], lever: float, metric: bool) -> Table:
    rows, friction = [], given["friction"]
    for mu in sorted({friction.low, friction.likely, friction.high, (friction.low + friction.likely) / 2, (friction.likely + friction.high) / 2}):
        rows.append((f"{mu:g}", in_unit(mu * given["force"].likely * lever, "torque", "N·m" if metric else "lbf·ft", "1")))
    return Table("Capacity over the friction", ("friction", "capacity"), tuple(rows))


PACK = Working(
    id="disc-pack",
    title="Height and wear of a disc pack",
    purpose="Adds up a pack of friction discs and steel plates, says how far its height may be out, likely and at worst, and how much wear is left.",
    formula=(Formula("height = discs · disc + plates · plate", r"\text{height} = \text{discs} · \text{disc} + \text{plates} · \text{plate}"),
             Formula("likely = sqrt(sum of tolerance²)", r"\text{likely} = \sqrt{\text{sum of tolerance}^2}"),
             Formula("worst = sum of tolerance", r"\text{worst} = \text{sum of tolerance}"),
             Formula("wear left = (pack now - least) / (height - least)", r"\text{wear left} = \frac{\text{pack now} - \text{least}}{\text{height} - \text{least}}")),
    inputs=(
        Input("friction discs", "count", "discs with facings", ("1", "30"), "count again"),
        Input("friction disc", "length", "thickness of a new one, with its tolerance: 0.170 ± 0.003 in", ("0.03 in", "1 in"), "not a usual disc"),
        Input("steel plates", "count", "plain plates between them; none when not said", required=False, sign="zero or over"),
        Input("steel plate", "length", "thickness of a new plate, with its tolerance", ("0.03 in", "1 in"), "not a usual plate", required=False),
        Input("worn friction disc", "length", "thinnest disc to use", required=False), Input("worn steel plate", "length", "thinnest plate to use", required=False),
        Input("least pack", "length", "thinnest pack to use, instead of those two", required=False),
        Input("pack now", "length", "measured, squeezed together by hand", required=False)),
    outputs=(
        Output("height", "length", "nearest", "of the new pack"),
        Output("likely tolerance", "length", "nearest", "either way: parts differ by chance"), Output("worst tolerance", "length", "up", "either way: every part at the same end"),
        Output("least height", "length", "up", "of the worn pack"), Output("wear allowed", "length", "down", "from new to worn out"),
        Output("wear left", "share", "nearest", "of what is measured; no promise of hours")),
    source="sum and root sum of squares: F. Scholz, Tolerance Stack Analysis Methods, 1995; wear: common practice, no source",
    example=Example({"friction discs": "6", "friction disc": "0.170 ± 0.003 in", "steel plates": "7", "steel plate": "0.125 ± 0.003 in", "worn friction disc": "0.130 in",
                     "worn steel plate": "0.118 in", "pack now": "1.700 in"},
                    {"height": "1.895 in", "likely tolerance": "0.011 in", "worst tolerance": "0.039 in", "wear allowed": "0.289 in", "wear left": "33 %"}, "by hand"),
    goes_wrong=("Discs of two makes in one pack.", "Plates ground thin to clean them up.", "Oil on the facings: thick enough and still slipping.",
                "The likely tolerance trusted where one lot of discs is all at one end."),
    refuses=("A worn pack that is not thinner than the new one.", "Plates without a thickness."),
    assumes=("The likely tolerance takes each part's thickness for chance, none leaning on another.",),
    compute=_compute_pack)

CAPACITY = Working(
    id="clutch-capacity",
    title="Torque a disc clutch holds",
    purpose="Gives the torque at which a plate clutch slips over the band of its friction, and how often that covers the engine.",
    formula=(Formula("T = faces · mu · F · R", r"T = \text{faces} · \mu · F · R"),
             Formula("R = 2/3 (ro³ - ri³) / (ro² - ri²), facing new", r"R = \frac{2}{3} \cdot \frac{ro^3 - ri^3}{ro^2 - ri^2} \text{, facing new}"),
             Formula("R = (ro + ri) / 2, facing run in", r"R = \frac{ro + ri}{2} \text{, facing run in}")),
    inputs=(
        Input("faces", "count", "pairs of faces that rub: 2 for one disc", ("1", "60"), "count the faces, not the discs"),
        Input("friction", "friction", "of the facing: low / likely / high", ("0.05", "0.5"), "not a friction of a clutch"),
        Input("force", "force", "that presses the pack together; of one spring where their number is given"),
        Input("springs", "count", "how many springs", ("1", "40"), "count again", required=False),
        Input("outer diameter", "diameter", "of the facing", ("2 in", "40 in"), "not a usual clutch"), Input("inner diameter", "diameter", "of the facing", ("1 in", "38 in"), "not a usual clutch"),
        Input("facing", "choice", "new, or run in; new when not said", required=False, choices=(NEW, RUN_IN)),
        Input("engine torque", "torque", "most torque it must carry", required=False)),
    outputs=(
        Output("mean radius", "radius", "nearest", "where the force may be thought to act"),
        Output("capacity", "torque", "nearest", "torque at which it slips, over the friction band"),
        Output("cover", "gear ratio", "nearest", "capacity over engine torque")),
    source="plate clutches, even pressure and even wear: machine-design textbooks",
    example=Example({"faces": "2", "friction": "0.25 / 0.30 / 0.35", "force": "165 lbf", "springs": "9", "outer diameter": "12 in", "inner diameter": "8 in", "engine torque": "158 lbf·ft"},
                    {"mean radius": "5.07 in", "capacity": "376 lbf·ft (314 to 439)", "cover": "2.38 (1.98 to 2.78)"}, "this project's demonstration book, by hand"),
    goes_wrong=("Oil or grease on the facing: a third of the friction is left.", "Weak springs: measure them at their working height.", "Discs counted for faces."),
    refuses=("A facing wider inside than outside.",),
    assumes=("The friction of the facing drives the band: it is assumed, not measured.",),
    compute=_compute_capacity)
