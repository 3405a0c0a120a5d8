"""The workings 'gasket-end-play' and 'bearing-shim': end play changed by a gasket, and a bearing set by shim from what is measured. See GASKET and SHIM."""
from __future__ import annotations

from collections.abc import Mapping

from ..core.working import Details, Example, Formula, Given, Input, Line, Outcome, Output, Refusal, Table, Value, Working
from .printed import Band, banded, in_unit, span, spread, unit_of, value, words

_FINE = {"in": "0.0001", "mm": "0.001"}
LOOSENS, TIGHTENS = "loosens", "tightens"


def _unit(given: Given) -> str:
    return "mm" if unit_of(given).system == "metric" else "in"


def in_place(thickness: Given, squeeze: Given | None) -> Band:
    """Thickness of a gasket squeezed by a share of itself: least, likely, most."""
    if squeeze is None:
        return thickness.low, thickness.likely, thickness.high
    return thickness.low * (1 - squeeze.high), thickness.likely * (1 - squeeze.likely), thickness.high * (1 - squeeze.low)


def _compute_gasket(given: Mapping[str, Given]) -> Outcome:
    """How the end play changes from the old gasket to the new one, the ends of both squeezes kept apart."""
    squeezes = given.get("old squeeze"), given.get("new squeeze")
    if any(squeeze and squeeze.high >= 1 for squeeze in squeezes):
        return Outcome(refusals=(Refusal("a gasket cannot be squeezed to nothing", "give the share of its thickness that it loses: paper 10 to 20 %, cork and rubber 25 to 40 %"),))
    old, new = in_place(given["old gasket"], squeezes[0]), in_place(given["new gasket"], squeezes[1])
    change = (new[0] - old[2], new[1] - old[1], new[2] - old[0])
    unit = _unit(given["new gasket"])
    values: list[Value] = [value("old gasket in place", "length", spread(*old), unit, _FINE[unit]), value("new gasket in place", "length", spread(*new), unit, _FINE[unit]),
                           value("change of end play", "clearance", spread(*change), unit, _FINE[unit])]
    warnings: tuple[str, ...] = ()
    if "end play now" in given:
        now = given["end play now"]
        after = (now.low + change[0], now.likely + change[1], now.high + change[2])
        values.append(value("end play after", "clearance", spread(*after), unit, _FINE[unit]))
        warnings = _judged(after, given, unit)
    return Outcome(tuple(values), warnings=warnings, details=lambda: Details(_gasket_lines(given, values), (_gasket_table(given, change, unit),)))


def _judged(after: Band, given: Mapping[str, Given], unit: str) -> tuple[str, ...]:
    if "wanted" not in given:
        return ()
    wanted = given["wanted"]
    if after[0] >= wanted.low * (1 - 1e-9) and after[2] <= wanted.high * (1 + 1e-9):
        return ()
    told = banded(after, "clearance", unit, _FINE[unit])
    if after[2] < wanted.low or after[0] > wanted.high:
        return (f"end play of {told} is outside {wanted.text}: another gasket, or shims",)
    return (f"end play of {told} may be outside {wanted.text}: measure it with the new gasket pulled down",)


def _gasket_lines(given: Mapping[str, Given], values: list[Value]) -> tuple[Line, ...]:
    lines = [Line(f"The {name} gasket in place", "thickness (1 - squeeze)", f"{given[f'{name} gasket'].text}, squeezed {given[f'{name} squeeze'].text if f'{name} squeeze' in given else '0 %'}",
                  each.printed) for name, each in zip(("old", "new"), values, strict=False)]
    lines.append(Line("Change of end play", "new in place - old in place", f"{values[1].printed} - {values[0].printed}", values[2].printed))
    if len(values) > 3:
        lines.append(Line("End play with the new gasket", "end play now + change", f"{given['end play now'].text} + {values[2].printed}", values[3].printed))
    return tuple(lines)


def _gasket_table(given: Mapping[str, Given], change: Band, unit: str) -> Table:
    step, rows = (25.4e-6 if unit == "in" else 2e-5), []
    for part in range(2, 14, 2):
        rows.append((in_unit(part * step, "clearance", unit, _FINE[unit]), banded(tuple(part * step + each for each in change), "clearance", unit, _FINE[unit])))
    return Table("End play read with the old gasket, and with the new one", ("now", "after"), tuple(rows))


def _compute_shim(given: Mapping[str, Given]) -> Outcome:
    """The shim for the setting wanted, from a gap with no shim in or from the play with a known shim."""
    unit = _unit(given["wanted"])
    table = _shim_table(given, unit)
    if "gap" not in given and not ("shim now" in given and "play read" in given):
        return Outcome(refusals=(Refusal("nothing is measured yet", "give the gap with the bearing snug and no shim, or the shim now in and the play read with it"),),
                       details=lambda: Details(tables=table))
    if "gap" in given and "play read" in given:
        return Outcome(refusals=(Refusal("a gap and a play are two ways to the same shim", "give one of them"),))
    low, likely, high = _needed(given, given["gap"] if "gap" in given else given["play read"])
    if low < 0:
        return Outcome(refusals=(Refusal(f"this setting would need {in_unit(low, 'length', unit, _FINE[unit])} of shim: less than none",
                                         "measure again; if it is so, metal must come off the face that carries the shim"),))
    values: list[Value] = [span("shim", "length", low, high, unit, _FINE[unit])]
    if "shim now" in given:
        difference = likely - given["shim now"].likely
        values.append(words("to do", "leave it" if abs(difference) < 1e-7 else f"{'put in' if difference > 0 else 'take out'} {in_unit(abs(difference), 'length', unit, _FINE[unit])}"))
    warnings: tuple[str, ...] = ()
    if "shim made" in given:
        left = _left(given)
        values.append(value("leaves", "clearance", abs(left), unit, _FINE[unit]))
        values.append(words("that is", "end play" if left >= 0 else "preload"))
        signed = [_sign(given) * end for end in (given["wanted"].low, given["wanted"].high)]
        if not min(signed) - 1e-9 <= left <= max(signed) + 1e-9:
            warnings = (f"a shim of {given['shim made'].text} leaves {in_unit(abs(left), 'clearance', unit, _FINE[unit])} {'end play' if left >= 0 else 'preload'}, outside {given['wanted'].text}",)
    return Outcome(tuple(values), warnings=warnings, details=lambda: Details(_shim_lines(given, values), table))


def _sign(given: Mapping[str, Given]) -> int:
    return 1 if given["setting"].text == "end play" else -1


def _needed(given: Mapping[str, Given], measured: Given) -> Band:
    """Least, likely and most shim. A gap is a play of minus itself with no shim in."""
    wanted, way = given["wanted"], 1 if given["more shim"].text == LOOSENS else -1
    if "gap" in given:
        start, read = 0.0, (-way * measured.low, -way * measured.likely, -way * measured.high)
    else:
        start, read = given["shim now"].likely, (measured.low, measured.likely, measured.high)
    likely = start + way * (_sign(given) * wanted.likely - read[1])
    ends = [start + way * (_sign(given) * end - at) for end in (wanted.low, wanted.high) for at in (read[0], read[2])]
    # A window is met from any reading; a reading with a band narrows nothing and widens what may be needed.
    return min(ends), min(max(likely, min(ends)), max(ends)), max(ends)


def _left(given: Mapping[str, Given]) -> float:
    """Play over zero, preload under it, with the shim that was made."""
    way = 1 if given["more shim"].text == LOOSENS else -1
    if "gap" in given:
        return way * (given["shim made"].likely - given["gap"].likely)
    return given["play read"].likely + way * (given["shim made"].likely - given["shim now"].likely)


def _shim_lines(given: Mapping[str, Given], values: list[Value]) -> tuple[Line, ...]:
    loosens, play = given["more shim"].text == LOOSENS, given["setting"].text == "end play"
    if "gap" in given:
        sign = "+" if loosens == play else "-"
        lines = [Line("Shim", f"gap {sign} {given['setting'].text} wanted", f"{given['gap'].text} {sign} {given['wanted'].text}", values[0].printed)]
    else:
        rule = "shim now - play read" if loosens else "shim now + play read"
        sign = "+" if loosens == play else "-"
        lines = [Line("Shim", f"{rule} {sign} {given['setting'].text} wanted",
                      f"{given['shim now'].text} {'-' if loosens else '+'} {given['play read'].text} {sign} {given['wanted'].text}", values[0].printed)]
    lines += [Line("With the shim that was made", "", given["shim made"].text, each.printed) for each in values if each.name == "leaves"]
    return tuple(lines)


def _shim_table(given: Mapping[str, Given], unit: str) -> tuple[Table, ...]:
    """For the bench: the play read with the shim now in, and the shim it asks for."""
    if "shim now" not in given or "gap" in given:
        return ()
    rows, step = [], (12.7e-6 if unit == "in" else 1e-5)
    for part in range(0, 13):
        low, likely, high = _needed(given, Given("", part * step, part * step, part * step))
        if low >= 0:
            rows.append((in_unit(part * step, "clearance", unit, _FINE[unit]), banded((low, likely, high), "length", unit, _FINE[unit])))
    return (Table(f"Play read with {given['shim now'].text} of shim in, and the shim for {given['setting'].text} of {given['wanted'].text}", ("play read", "shim"), tuple(rows)),) if rows else ()


GASKET = Working(
    id="gasket-end-play",
    title="End play changed by a gasket",
    purpose="Says how much the end play changes when a gasket of another thickness goes under an end cover, both gaskets squeezed.",
    formula=(Formula("change = new (1 - new squeeze) - old (1 - old squeeze)", r"\text{change} = \text{new} (1 - \text{new squeeze}) - \text{old} (1 - \text{old squeeze})"),),
    inputs=(
        Input("old gasket", "length", "thickness of the old gasket, free; or in place, with no squeeze given", ("0.004 in", "0.188 in"), "not a usual gasket"),
        Input("old squeeze", "share", "share of its thickness that it loses when pulled down; none when not said", ("0 %", "45 %"), "paper 10 to 20 %, cork and rubber 25 to 40 %", required=False),
        Input("new gasket", "length", "thickness of the new gasket, free", ("0.004 in", "0.188 in"), "not a usual gasket"),
        Input("new squeeze", "share", "share of its thickness that it loses when pulled down; none when not said", ("0 %", "45 %"), "paper 10 to 20 %, cork and rubber 25 to 40 %", required=False),
        Input("end play now", "clearance", "read with the old gasket pulled down", required=False, sign="zero or over"),
        Input("wanted", "clearance", "end play to accept", required=False, sign="zero or over")),
    outputs=(
        Output("old gasket in place", "length", "nearest", "squeezed"), Output("new gasket in place", "length", "nearest", "squeezed"),
        Output("change of end play", "clearance", "nearest", "over zero: the play grows"),
        Output("end play after", "clearance", "nearest", "with the new gasket")),
    source="geometry; squeeze of gasket materials: common practice, no source",
    example=Example({"old gasket": "0.006 in", "old squeeze": "10 / 15 / 20 %", "new gasket": "0.015 in", "new squeeze": "10 / 15 / 20 %"},
                    {"old gasket in place": "0.0051 in (0.0048 to 0.0054)", "new gasket in place": "0.0128 in (0.0120 to 0.0135)", "change of end play": "0.0077 in (0.0066 to 0.0087)"},
                    "by hand"),
    goes_wrong=("Cork under a bearing cap: it goes on settling and the bearing with it.", "The old gasket measured after it was torn off: it has swollen.",
                "Two gaskets where one belongs.", "A cover that bears on the bearing the other way: then a thicker gasket tightens."),
    refuses=("A gasket squeezed to nothing.",),
    assumes=("The squeeze drives the band.", "A thicker gasket lets the cover stand further off: the play grows with it."),
    compute=_compute_gasket)

SHIM = Working(
    id="bearing-shim",
    title="Bearing set by shim",
    purpose="Gives the shim for an end play or a preload, from the gap measured with no shim in or from the play read with a known shim.",
    formula=(Formula("shim = shim now + (play wanted - play read), where more shim loosens", r"\text{shim} = \text{shim now} + (\text{play wanted} - \text{play read}) \text{, where more shim loosens}"),
             Formula("shim = shim now + (play read - play wanted), where more shim tightens", r"\text{shim} = \text{shim now} + (\text{play read} - \text{play wanted}) \text{, where more shim tightens}"),
             Formula("preload = - play", r"\text{preload} = - \text{play}")),
    inputs=(
        Input("setting", "choice", "what is wanted", choices=("end play", "preload")),
        Input("wanted", "clearance", "how much of it, a window or one figure", ("0.0005 in", "0.030 in"), "thousandths misread?", sign="zero or over"),
        Input("more shim", "choice", "what more shim does: under a cap or cover it loosens, behind a bearing ring it tightens", choices=(LOOSENS, TIGHTENS)),
        Input("gap", "length", "for the shim, with the bearing snug and no shim in", required=False, sign="zero or over"),
        Input("shim now", "length", "shim in place when the play was read", required=False, sign="zero or over"),
        Input("play read", "clearance", "play read with that shim", required=False, sign="zero or over"),
        Input("shim made", "length", "the stack that could be made: what it leaves", required=False, sign="zero or over")),
    outputs=(
        Output("shim", "length", "nearest", "for the setting wanted; with a window, the least and the most"),
        Output("to do", "none", "nearest", "put in or take out"),
        Output("leaves", "clearance", "nearest", "with the shim that was made"),
        Output("that is", "none", "nearest", "end play or preload")),
    source="geometry; shim selection tables of public workshop manuals: shim = measuring shim + end float, less play or plus preload",
    example=Example({"setting": "end play", "wanted": "0.0010 to 0.0016 in", "more shim": LOOSENS, "shim now": "0.012 in", "play read": "0.0029 in", "shim made": "0.0105 in"},
                    {"shim": "0.0101 to 0.0107 in", "to do": "take out 0.0016 in", "leaves": "0.0014 in", "that is": "end play"}, "this project's demonstration book, by hand"),
    goes_wrong=("Play read with the bearing dry, the cap slack or the shims dirty.", "Preload taken for play: the sign turns round.",
                "The bearing not seated: turn it while the cap is drawn up."),
    refuses=("Neither a gap nor a play measured, or both.", "A setting that would need less than no shim."),
    assumes=("The parts are rigid: a bearing under preload gives a little.",),
    compute=_compute_shim)
