"""Cases for the scripts that work at the bench: inputs as a reader types them, drawn with a fixed seed, a quarter on the edge of a graduation.

`cases(name)` gives the inputs alone; what must come out is worked out in Python by `expected`, and never reaches a browser.
"""

import random
from dataclasses import replace
from fractions import Fraction

from witnessmark.core.kinds import KINDS
from witnessmark.core.quantity import Quantity, read_quantity
from witnessmark.core.rounding import round_to
from witnessmark.core.thread import read_thread
from witnessmark.core.units import units_of
from witnessmark.core.working import Outcome, Refusal
from witnessmark.pages.script_tables import SETTING
from witnessmark.workings import backlash, disc_pack, end_play, press_card, shim_stack, taper_advance, tightening_torque, wrench, wrench_adapter
from witnessmark.workings.read_inputs import run
from witnessmark.workings.stress_area import stress_area

MANY = 560


def _plain(number: float | Fraction, places: int = 9) -> str:
    """In decimals, as many as it needs."""
    text = f"{float(number):.{places}f}".rstrip("0").rstrip(".")
    return text or "0"


def _set(given):
    """What `wrench-adapter` does with a torque, without asking for an adapter."""
    torque = given["torque"]
    if torque.low < torque.high:
        found = wrench_adapter._window(given, torque)
    else:
        found = wrench.setting_on(given, torque.likely)
    return Outcome(refusals=(found,)) if isinstance(found, Refusal) else Outcome(tuple(wrench_adapter._with_band(each, given) for each in found))


_TORQUE = tightening_torque.WORKING
SETTING_WORKING = replace(_TORQUE, id="wrench-setting", compute=_set, inputs=tuple(
    replace(_TORQUE.input(name), required=name in ("torque", "wrench graduation")) for name in SETTING))
WORKINGS = {"press-card": press_card.WORKING, "wrench-setting": SETTING_WORKING, "taper-advance": taper_advance.WORKING,
            "shim-stack": shim_stack.STACK, "backlash": backlash.BACKLASH, "gear-shift": backlash.SHIFT,
            "disc-pack": disc_pack.PACK, "bearing-shim": end_play.SHIM, "gasket-end-play": end_play.GASKET}
_TOLD_BY_SCRIPT = ("advance", "advance to accept", "reading", "friction it shows")


def expected(name: str, case):
    """What Python says, in the form in which the scripts are asked to answer."""
    if name == "rounding":
        value, step, side = case
        return str(round_to(float(value[1:]) if value.startswith("~") else Fraction(value), step, side))
    if name == "quantity":
        return _told_quantity(read_quantity(*case))
    outcome, problems = run(WORKINGS[name], case)
    if problems:
        return {"problems": [[each.message, each.mend] for each in problems]}
    values = [value for value in outcome.values if name != "taper-advance" or value.name in _TOLD_BY_SCRIPT]
    return {"problems": [], "values": [[value.name, value.printed, value.converted] for value in values],
            "refusals": [[each.message, each.instead] for each in outcome.refusals], "warnings": list(outcome.warnings)}


def _told_quantity(read):
    if not isinstance(read, Quantity):
        return [read.message, read.mend]
    return [read.form, *(None if end is None else str(end) for end in (read.low, read.high)), read.unit.symbol, read.decimals, read.whole]


def for_script(name: str, case):
    """The same inputs without what the build does for a script: it reads threads."""
    if name != "press-card" or "draw stud thread" not in case:
        return case
    section = stress_area(read_thread(case["draw stud thread"]))
    rest = {key: text for key, text in case.items() if key != "draw stud thread"}
    return {**rest, "draw stud section": {"text": case["draw stud thread"], "low": section, "likely": section, "high": section, "quantity": None, "several": []}}


def cases(name: str) -> list:
    draw = random.Random(f"bench {name}")
    return [_DRAWN[name](draw, number % 4 == 0) for number in range(MANY)] + _BY_HAND.get(name, [])


def _rounding(draw, on_edge):
    step = draw.choice(["0.1", "0.0005", "1", "5", "100", "0.25", "1/3", "0.02", "2.5"])
    side = draw.choice(["down", "up", "nearest"])
    steps = Fraction(draw.randint(-200, 20000))
    off = draw.choice([0, 0, Fraction(1, 10**9), Fraction(-1, 10**9), Fraction(3, 10**9), Fraction(-3, 10**9), Fraction(-4, 10**10), Fraction(1, 2)]) if on_edge else \
        Fraction(draw.random())
    value = (steps + off) * Fraction(step)
    return (f"~{float(value)!r}" if draw.random() < 0.6 else str(value), step, side)


_TYPED = ("57 {u}", "1-1/2 {u}", ".018 {u}", "0.018 to 0.030 {u}", "3.120 ± 0.030 {u}", "21.750 {u} +0.062 -0.000", "at least 0.047 {u}", "At most 1,100 {u}", "over 3 {u}",
          "under 12 {u}", "1:12", "15{u}", "-3 {u}", "− 0.5 {u}", "0 {u}", "3/8 {u}", "10,000 {u}", "7", "12 {u} to 14 {u}", "2 +/- 0.5 {u}")
_SLIPPED = ("57", "{u}", "", "  ", "1 1/2 {u}", "11/2 {u}", "5/0 {u}", "1e5 {u}", "nan {u}", "inf", "0,5 {u}", "1,10 {u}", "3–5 {u}", "3-5 {u}", "3...5 {u}", "½ {u}", "05 {u}",
            "max 5 {u}", "≤ 5 {u}", "5. {u}", "5 € ", "0.030 to 0.018 {u}", "0.018 to 0.018 {u}", "1:0", "5 {u} to 6 mph", "5 5 {u}", "about 5 {u}", "5 {u} {u}", "--5 {u}",
            "1,000,00 {u}", "9" * 120 + " {u}", "5 qwrt", "5 lbff", "5 Kn", "5 mPa", "5 tons", "5 gal", "5 mils", "5 inchs", "5 newtonmeter", "3 * 4 {u}", "±5 {u}",
            "0. 5 {u}", "5 000 {u}", "5 +- 1 {u}", "between 5 and 6 {u}", "5 thru 6 {u}", "0.5/0.6 {u}", "0.0O6 {u}", "0.0l2 {u}", "5 {u} max", "5 min 6 {u}", "5 {u} ± 10 %", "5 {u} (dry)")


def _quantity(draw, on_edge):
    kind = draw.choice([kind for kind in KINDS if kind not in ("thread", "none")])
    units = units_of(kind)
    unit = draw.choice(units)
    spelling = draw.choice([*unit.spellings, unit.symbol, unit.symbol.upper(), unit.symbol.lower()])
    if draw.random() < 0.1:
        spelling = draw.choice(units_of(draw.choice(["length", "torque", "pressure", "mass", "temperature"]))).symbol
    return (draw.choice(_SLIPPED if draw.random() < 0.45 else _TYPED).replace("{u}", spelling).strip(" ") if draw.random() < 0.97 else "", kind)


#: Gauge unit, unit of area and force in which force = reading x area without a factor or with ten.
_FAMILIES = (("psi", "in²", "lbf", 1), ("kgf/cm²", "cm²", "kgf", 1), ("bar", "cm²", "N", 10), ("MPa", "mm²", "N", 1))
_DIALS = {"psi": ((10000, 100), (5000, 50), (3000, 20), (15000, 200)), "bar": ((160, 2), (400, 5), (700, 10), (60, 1)),
          "kgf/cm²": ((700, 10), (400, 5), (250, 2)), "MPa": ((60, 1), (40, 0.5), (100, 2))}


def _press_card(draw, on_edge):
    gauge, area_unit, force, times = draw.choice(_FAMILIES)
    full, division = draw.choice(_DIALS[gauge])
    area = draw.choice([6, 8.5, 10.97, 16, 25.5]) if area_unit == "in²" else draw.choice([40, 50, 70.8, 254.5]) if area_unit == "cm²" else draw.choice([4000, 5000, 25447])
    case = {"full scale": f"{full} {gauge}", "division": f"{_plain(division)} {gauge}", "accuracy": draw.choice(["1.5 %", "1.0 %", "0.5 %", "2.5 %"])}
    case["rated pressure"] = f"{_plain(full * draw.choice([0.5, 0.91, 1, 1.2]))} {gauge}"
    if on_edge:
        case["area"] = f"{_plain(area)} {area_unit}"
        marks = draw.randint(2, int(full / division))
        off = draw.choice([0, 0, 0, Fraction(-5, 10**10), Fraction(-3, 10**9), Fraction(1, 10**9)])
        worth = Fraction(str(division)) * Fraction(str(area)) * times           # one division as a force
        case["accuracy"] = draw.choice([case["accuracy"], "0 %"])
        case["target"] = f"{_plain((marks + off) * worth, 12)} {force}"
        case["ceiling"] = f"{_plain((marks + draw.choice([Fraction(1, 2), 1, Fraction(3, 2), 4, 8])) * worth, 12)} {force}"
        if draw.random() < 0.6:
            case["floor"] = f"{_plain((marks - draw.choice([Fraction(1, 2), 1, 3, 6])) * worth, 12)} {force}"
        return case
    sort = draw.random()
    force = draw.choice(["long ton", "short ton", "tonne", "kN", "lbf"])
    size = area * full * times * {"lbf": 4.44822, "kgf": 9.80665, "N": 1}[_force_of(gauge)]
    unit = next(unit for unit in units_of("press force") if unit.symbol == force)
    whole = size / float(unit.factor)
    if sort < 0.5:
        case["area"] = f"{_plain(area)} {area_unit}"
    elif sort < 0.85:
        inch = area_unit == "in²"
        across = (area / 0.785 / (1 if inch else 100 if area_unit == "mm²" else 1)) ** 0.5 * (1 if inch else 1 if area_unit == "cm²" else 1)
        bore = round(across, 2)
        case["bore"] = f"{bore} {'in' if inch else 'cm'}"
        case["side"] = draw.choice(["push", "pull"])
        if case["side"] == "pull" and draw.random() < 0.85:
            case["rod"] = f"{_plain(round(bore * draw.choice([0.3, 0.5, 0.7, 1, 1.1]), 2))} {'in' if inch else 'cm'}"
    else:
        case["rated force"] = f"{_plain(round(whole * 0.9, 1))} {force}"
    if draw.random() < 0.15 and "rated force" not in case:
        del case["rated pressure"]
    if draw.random() < 0.15:
        case["gauge limit"] = f"{_plain(full * draw.choice([0.3, 0.75, 0.94]))} {gauge}"
    if draw.random() < 0.04:
        case["division"] = case["full scale"]
    target = whole * draw.choice([0.003, 0.05, 0.2, 0.35, 0.5, 0.7, 0.9, 1.1]) * draw.uniform(0.8, 1.1)
    if draw.random() < 0.9:
        case["target"] = f"{_plain(round(target, 2 if whole < 5000 else 0))} {force}"
    if draw.random() < 0.92:
        case["ceiling"] = f"{_plain(round(target * draw.choice([0.98, 1.01, 1.05, 1.2, 1.4]), 2 if whole < 5000 else 0))} {force}"
    if draw.random() < 0.6:
        case["floor"] = f"{_plain(round(target * draw.choice([0.7, 0.9, 0.97, 1.0, 1.02]), 2 if whole < 5000 else 0))} {force}"
    if draw.random() < 0.2:
        case["window"] = f"{_plain(round(target * draw.choice([0.8, 0.95, 0.99]), 2))} to {_plain(round(target * draw.choice([1.0, 1.05, 1.3]) + 0.05, 2))} {force}"
    if draw.random() < 0.2:
        case["draw stud thread"], case["draw stud yield"] = draw.choice([("1-1/2-8 UN", "105 ksi"), ("M36", "640 MPa"), ("3/4-10 UNC", "92 ksi"), ("M20", "240 MPa")])
        if draw.random() < 0.15:
            del case["draw stud yield"]
            case["draw stud thread"] = "1-1/2-8 UN"
    return case


def _force_of(gauge):
    return next(force for unit, _, force, _ in _FAMILIES if unit == gauge)


def _wrench_setting(draw, on_edge):
    unit, graduation, low, high = draw.choice([("lbf·ft", 5, 40, 250), ("lbf·ft", 1, 10, 80), ("lbf·ft", 10, 150, 600), ("N·m", 5, 40, 200), ("lbf·in", 2, 20, 200), ("N·m", 0.5, 5, 25)])
    case = {"wrench graduation": f"{_plain(graduation)} {unit}", "wrench lowest": f"{low} {unit}", "wrench highest": f"{high} {unit}"}
    ratio = Fraction(1)
    if draw.random() < 0.4:
        case["wrench length"], case["adapter length"] = draw.choice([("12 in", "3 in"), ("16 in", "4 in"), ("400 mm", "100 mm")])
        ratio = Fraction(5, 4)
        if not on_edge and draw.random() < 0.6:
            case["adapter angle"] = draw.choice(["0 °", "30 °", "45 °", "90 °", "135 °", "180 °"])
        if not on_edge and draw.random() < 0.1:
            case["adapter length"] = draw.choice(["20 in", "500 mm"])
    if not on_edge and draw.random() < 0.05:
        case.pop("wrench length", None)
    if draw.random() < 0.7:
        case["wrench accuracy"] = draw.choice(["4 %", "0 %", "6 %", "1 %", "100 %"] if draw.random() < 0.2 else ["4 %"])
    if draw.random() < 0.4:
        case["passes"] = str(draw.randint(1, 5))
    if draw.random() < 0.15:
        del case[draw.choice(["wrench lowest", "wrench highest"])]
    if on_edge:
        steps = draw.randint(1, int(high / graduation) + 1) + draw.choice([0, 0, 0, Fraction(-5, 10**10), Fraction(-3, 10**9)])
        case["torque"] = f"{_plain(steps * Fraction(str(graduation)) * ratio, 12)} {unit}"
        return case
    torque = draw.choice([graduation * 0.4, low * 0.8, low, (low + high) / 2, high, high * 1.2]) * draw.uniform(0.9, 1.1)
    other = draw.choice([unit, unit, "N·m", "lbf·ft"])
    case["torque"] = f"{_plain(round(torque, 1))} {other}"
    if draw.random() < 0.3:
        case["torque"] = f"{_plain(round(torque, 1))} to {_plain(round(torque * draw.choice([1.01, 1.1, 1.4]) + 0.1, 1))} {other}"
    return case


def _taper_advance(draw, on_edge):
    inch = draw.random() < 0.6
    d = draw.choice([2.0, 3.0, 3.5])
    taper = draw.choice(["1:12", "1:16", "1:10", "1.25 in/ft"])
    length = lambda inches: f"{inches:.3f} in" if inch else f"{inches * 25.4:.1f} mm"
    case = {"force": f"{draw.choice([12, 18, 21.5, 26])} {draw.choice(['long ton', 'short ton', 'tonne'])}", "taper": taper, "mean diameter": length(d),
            "length": length(draw.choice([3.0, 3.5, 5.0])), "hub diameter": length(d * draw.choice([1.5, 1.75, 2.0])),
            "friction": draw.choice(["0.12 / 0.15 / 0.20", "0.15", "0.10 to 0.16", "0.08 / 0.1 / 0.14"]),
            "hub modulus": draw.choice(["30.0 Mpsi", "100 GPa"]), "hub poisson": draw.choice(["0.292", "0.25"]), "shaft modulus": "30.0 Mpsi", "shaft poisson": "0.3"}
    if draw.random() < 0.3:
        case["shaft bore"] = length(d * draw.choice([0.3, 0.5, 1.0]) if draw.random() < 0.2 else d * 0.25)
    if draw.random() < 0.85 or on_edge:
        case["scale division"] = draw.choice(["0.0005 in", "0.001 in", "0.01 mm", "0.02 mm", "0.05 in"] if not on_edge else ["0.0005 in", "0.01 mm"])
    if draw.random() < 0.05:
        case |= draw.choice([{"hub diameter": length(d)}, {"hub poisson": "0.5"}, {"length": length(90)}, {"shaft bore": length(d * 1.01)}])
    if on_edge:
        outcome, _ = run(taper_advance.WORKING, case)
        if outcome.has("advance to accept"):
            band = outcome.value("advance to accept")
            division = 0.0000127 if "in" in case["scale division"] else 0.00001
            end = draw.choice([band.low, band.high, band.low - division, band.high + division, band.low * (1 - 1e-11)])
            case["measured advance"] = f"{_plain(end * 1000, 12)} mm" if "mm" in case["scale division"] else f"{_plain(end / 0.0254, 12)} in"
            return case
    if draw.random() < 0.8:
        case["measured advance"] = length(draw.choice([0.012, 0.02, 0.023, 0.03, 0.05]) * draw.uniform(0.8, 1.2)) if inch else f"{draw.uniform(0.2, 1.2):.2f} mm"
    return case


def _shim_stack(draw, on_edge):
    inch = draw.random() < 0.6
    sizes = ["0.003", "0.005", "0.010", "0.012", "0.020", "0.025", "0.0005"] if inch else ["0.05", "0.1", "0.15", "0.25", "0.5", "1", "0.03"]
    unit = "in" if inch else "mm"
    stock = draw.sample(sizes, draw.randint(1, 5))
    case = {"stock": ", ".join(f"{each} {unit}" for each in stock)}
    if draw.random() < 0.15:
        case["stock"] += ", 0.2 mm" if inch else ", 0.004 in"
    if draw.random() < 0.4:
        case["most pieces"] = str(draw.choice([1, 2, 3, 4, 5, 6, 11] if draw.random() < 0.3 else [4, 5]))
    if on_edge:
        total = sum(Fraction(draw.choice(stock)) for _ in range(draw.randint(1, 6)))
        case["thickness"] = f"{_plain(total + draw.choice([0, 0, Fraction(1, 10**4)]))} {unit}"
        if draw.random() < 0.3:
            case["thickness"] = f"{_plain(total)} to {_plain(total + Fraction(draw.choice(['0.0002', '0.001'])))} {unit}"
        return case
    low = draw.uniform(0.001, 0.09) * (1 if inch else 25.4)
    case["thickness"] = f"{low:.4f} {unit}"
    if draw.random() < 0.4:
        case["thickness"] = f"{low:.4f} to {low * draw.choice([1.01, 1.1, 1.4]) + 0.0002:.4f} {unit}"
    elif draw.random() < 0.3:
        case["thickness"] = f"{low * (25.4 if inch else 1 / 25.4):.3f} {'mm' if inch else 'in'}"
        if float(case["thickness"].split()[0]) == 0:
            case["thickness"] = "0.1 mm"
    return case


def _window(draw, inch):
    return draw.choice(["0.008 to 0.014 in", "0.006 to 0.012 in", "0.010 in"] if inch else ["0.20 to 0.36 mm", "0.15 to 0.30 mm"])


def _backlash(draw, on_edge):
    inch = draw.random() < 0.6
    length = lambda inches: f"{inches:.2f} in" if inch else f"{inches * 25.4:.1f} mm"
    pitch = draw.choice([6.5, 4.0, 8.25])
    case = {"pitch window": _window(draw, inch), "pitch radius": length(pitch), "dial radius": length(pitch * draw.choice([0.1, 0.5, 0.9, 1.1, 1.5, 6] if draw.random() < 0.2 else [0.9, 1.1]))}
    if on_edge:                                 # at twice the radius each end falls on a division
        case["dial radius"] = length(pitch * 2) if inch else f"{2 * float(case['pitch radius'].split()[0]):.1f} mm"
    if on_edge or draw.random() < 0.8:
        case["dial division"] = draw.choice(["0.0005 in", "0.001 in", "0.01 mm", "0.002 in", "0.05 mm"] if draw.random() < 0.9 else ["0.02 in", "0.5 mm"])
    return case


def _gear_shift(draw, on_edge):
    inch = draw.random() < 0.6
    length = lambda inches: f"{inches:.2f} in" if inch else f"{inches * 25.4:.1f} mm"
    pitch = draw.choice([6.5, 4.0, 8.25])
    gap = _window(draw, inch)
    case = {"pitch window": gap, "pitch radius": length(pitch), "dial radius": length(pitch * draw.choice([0.9, 1.0, 1.1154])), "pressure angle": draw.choice(["20 °", "14.5 °", "25 °"])}
    if draw.random() < 0.7:
        case |= {"gear teeth": str(draw.choice([52, 41, 37])), "pinion teeth": str(draw.choice([13, 11, 17]))}
        if draw.random() < 0.05:
            del case["pinion teeth"]
    else:
        case["pitch angle"] = draw.choice(["60 °", "75.96 °", "45 °", "90 °"])
    if draw.random() < 0.3:
        case["spiral angle"] = draw.choice(["35 °", "30 °", "0 °", "70 °"])
    middle = 0.011 if inch else 0.28
    unit = "in" if inch else "mm"
    if on_edge:                                 # readings on the ends of the window, the dial on the pitch circle
        case["dial radius"] = case["pitch radius"]
        ends = [part.split()[0] for part in gap.split(" to ")]
        case["readings"] = ", ".join(f"{draw.choice(ends)} {unit}" for _ in range(4))
    elif draw.random() < 0.9:
        about = middle * draw.choice([0.4, 0.8, 1, 1.5, 2.2])
        apart = draw.choice([0.01, 0.02, 0.3]) * middle
        case["readings"] = ", ".join(f"{max(about + draw.uniform(-apart, apart), 0.0001):.4f} {unit}" for _ in range(draw.choice([1, 4, 4])))
    if draw.random() < 0.4:
        case["shim step"] = draw.choice(["0.002 in", "0.05 mm", "0.001 in"])
    if draw.random() < 0.2:
        case["move"] = draw.choice(["0.004 in", "0.1 mm", "0.02 in"])
    return case


def _disc_pack(draw, on_edge):
    inch = draw.random() < 0.6
    length = lambda inches: f"{inches:.3f} in" if inch else f"{inches * 25.4:.2f} mm"
    disc = draw.choice([0.170, 0.125, 0.500, 0.0937, 1.2])
    thick = lambda inches: length(inches) + draw.choice(["", f" +{'0.002' if inch else '0.05'} -{'0.001' if inch else '0.02'}"]) if draw.random() < 0.5 else \
        length(inches).replace(" ", " ± 0.003 " if inch else " ± 0.08 ")
    case = {"friction discs": str(draw.randint(1, 9)), "friction disc": thick(disc)}
    if draw.random() < 0.6:
        case |= {"steel plates": str(draw.randint(0, 9)), "steel plate": thick(draw.choice([0.125, 0.118, 0.062]))}
        if draw.random() < 0.08:
            del case["steel plate"]
    sort = draw.random()
    if sort < 0.45:
        case["worn friction disc"] = length(disc * draw.choice([0.7, 0.8, 0.9, 1.05]))
        if draw.random() < 0.5:
            case["worn steel plate"] = length(draw.choice([0.055, 0.110]))
    elif sort < 0.85:
        case["least pack"] = length(disc * int(case["friction discs"]) * draw.choice([0.5, 0.8, 0.84, 1.01]))
    if on_edge:                                 # the wear left on a whole or half per cent: a pack of discs alone, in round figures
        case = {"friction discs": str(discs := draw.randint(1, 8)), "friction disc": "0.500 in" if inch else "12 mm", "least pack": f"{_plain(discs * 0.4)} in" if inch else f"{discs * 10} mm"}
        part = Fraction(draw.randint(-4, 204), 200) + draw.choice([0, 0, 0, Fraction(1, 10**9), Fraction(-1, 10**9)])
        case["pack now"] = f"{_plain(discs * (Fraction(4, 10) + part / 10), 12)} in" if inch else f"{_plain(discs * (10 + part * 2), 12)} mm"
    elif draw.random() < 0.8:
        case["pack now"] = length(draw.choice([0.4, 0.8, 0.9, 1.0, 1.1]) * draw.uniform(0.9, 1.1) * disc * int(case["friction discs"]) + draw.choice([0, 0.3]))
    return case


def _bearing_shim(draw, on_edge):
    inch = draw.random() < 0.6
    length = lambda inches: f"{inches:.4f} in" if inch else f"{inches * 25.4:.3f} mm"
    low = draw.choice([0.001, 0.002, 0.004, 0.0004])
    case = {"setting": draw.choice(["end play", "preload"]), "wanted": f"{length(low).split()[0]} to {length(low * draw.choice([1.6, 2.5]))}" if draw.random() < 0.7 else length(low),
            "more shim": draw.choice(["loosens", "tightens"])}
    unit, step = ("in", Fraction(1, 10**4)) if inch else ("mm", Fraction(1, 10**3))
    read = f"{_plain(step * (draw.randint(0, 300) + draw.choice([0, Fraction(1, 2), Fraction(1, 2) + Fraction(1, 10**7)])), 12)} {unit}" if on_edge else \
        length(draw.uniform(0, 0.012)) if draw.random() < 0.85 else f"{length(draw.uniform(0, 0.004)).split()[0]} to {length(draw.uniform(0.0045, 0.012))}"
    if draw.random() < 0.35:
        case["gap"] = read
    else:
        case |= {"shim now": length(draw.choice([0.012, 0.004, 0.0205])), "play read": read}
        if draw.random() < 0.06:
            case["gap"] = read
        elif draw.random() < 0.06:
            del case["play read"]
    if draw.random() < 0.4:
        case["shim made"] = length(draw.choice([0.0105, 0.005, 0.012]))
    return case


def _gasket_end_play(draw, on_edge):
    inch = draw.random() < 0.6
    length = lambda inches: f"{inches:.4f} in" if inch else f"{inches * 25.4:.3f} mm"
    case = {"old gasket": length(draw.choice([0.006, 0.010, 0.015, 0.031, 0.250])), "new gasket": length(draw.choice([0.006, 0.010, 0.015, 0.031, 0.003]))}
    for name in ("old squeeze", "new squeeze"):
        if draw.random() < 0.6:
            case[name] = draw.choice(["10 / 15 / 20 %", "25 / 30 / 40 %", "15 %", "0 %", "50 %", "100 %" if draw.random() < 0.3 else "12 %"])
    if draw.random() < 0.85:
        case["end play now"] = length(draw.uniform(0, 0.02))
    if draw.random() < 0.75:
        case["wanted"] = f"{length(0.004).split()[0]} to {length(draw.choice([0.008, 0.012]))}"
    if on_edge:                                 # the play that is left on an end of what is wanted
        change = {"0.006 in": 0, "0.010 in": 4, "0.015 in": 9}
        old, new = (draw.choice(list(change)) for _ in range(2))
        end, unit, each = draw.choice([(8, "in", 1), (16, "in", 1)])[0], *(("in", Fraction(1, 1000)) if inch else ("mm", Fraction(1, 40)))
        off = draw.choice([0, 0, Fraction(1, 10**9), Fraction(-1, 10**9)])
        now = (end + 10 - (change[new] - change[old]) + off) * each
        case = {"old gasket": old if inch else f"{_plain(float(old.split()[0]) * 25)} mm", "new gasket": new if inch else f"{_plain(float(new.split()[0]) * 25)} mm",
                "end play now": f"{_plain(now, 15)} {unit}", "wanted": f"{_plain(18 * each)} to {_plain(26 * each)} {unit}"}
    return case


_DRAWN = {"rounding": _rounding, "quantity": _quantity, "press-card": _press_card, "wrench-setting": _wrench_setting, "taper-advance": _taper_advance,
          "shim-stack": _shim_stack, "backlash": _backlash, "gear-shift": _gear_shift,
          "disc-pack": _disc_pack, "bearing-shim": _bearing_shim, "gasket-end-play": _gasket_end_play}
_BP50 = {"area": "10.97 in2", "rated pressure": "9100 psi", "full scale": "10000 psi", "division": "100 psi", "accuracy": "1.5 %"}
_STOCK = ", ".join(f"0.0{n:02d} in" for n in range(1, 12))

#: What chance seldom meets: each is here for one reason to refuse, or one slip in the inputs.
_BY_HAND = {
    "press-card": [
        {**_BP50, "target": "18 long ton", "floor": "14.9 long ton", "ceiling": "22 long ton"},
        {**_BP50, "ceiling": "0.7 long ton"}, {**_BP50, "target": "0.4 long ton", "ceiling": "2 long ton"}, {**_BP50, "target": "18 ton", "ceiling": "22 long ton"},
        {**_BP50, "target": "18 long ton", "ceiling": "22 long ton", "gauge limit": "3000 psi"}, {**_BP50, "target": "60 long ton", "ceiling": "70 long ton"},
        {**_BP50, "accuracy": "-1 %", "ceiling": "22 long ton"}, {**_BP50, "target": "18 lbf·ft", "ceiling": "22 long ton"}, {**_BP50, "diameter": "3 in", "ceiling": "22 long ton"},
        {**_BP50, "side": "sideways", "ceiling": "22 long ton"}, {key: text for key, text in _BP50.items() if key != "division"}, {**_BP50, "area": "0 in2", "ceiling": "9 kN"},
        {**_BP50, "window": "17.9 to 18 long ton", "ceiling": "40 long ton"}, {**_BP50, "target": "10 to 12 long ton", "ceiling": "at least 15 long ton"},
        {**_BP50, "area": "9999999999999999999 in2", "ceiling": "9 kN"}],
    "wrench-setting": [{"torque": "100 lbf·ft"}, {"torque": "10 to 9 lbf·ft", "wrench graduation": "1 lbf·ft"}, {"torque": "57 N·m", "wrench graduation": "1 lbf·ft"},
                       {"torque": "50 to 60 lbf·ft", "wrench graduation": "5 lbf·ft", "wrench accuracy": "100 %"},
                       {"torque": "60 lbf·ft", "wrench graduation": "5 lbf·ft", "adapter length": "3 in"},
                       {"torque": "60 lbf·ft", "wrench graduation": "5 lbf·ft", "wrench length": "12 in", "adapter length": "14 in", "adapter angle": "180 °"},
                       {"torque": "60 lbf·ft", "wrench graduation": "5 lbf·ft", "wrench length": "12 in", "adapter length": "4 in", "adapter angle": "-5 °"}],
    "quantity": [("1:0", "taper"), ("1:12", "length"), ("5 in to 6 mm", "length"), ("5 in to 6 in", "length"), ("5 in to 6 ″", "length")],
    "shim-stack": [{"thickness": "0.044 in", "stock": _STOCK}, {"thickness": "0.044 in", "stock": "0.003 in, 5"}, {"thickness": "0.001 in", "stock": "0.003 in", "most pieces": "0"},
                   {"thickness": "0.0007 in", "stock": "0.003 in"}, {"thickness": "0.5 in", "stock": "0.0005 in, 0.0007 in"},
                   {"thickness": "0.044 in", "stock": "0.003 in", "most pieces": "12"}],
    "bearing-shim": [{"setting": "end play", "wanted": "0.001 in", "more shim": "loosens"}, {"setting": "slack", "wanted": "0.001 in", "more shim": "loosens", "gap": "0.01 in"},
                     {"setting": "end play", "wanted": "0.0010 to 0.0016 in", "more shim": "loosens", "shim now": "0.012 in", "play read": "0.0029 in", "shim made": "0.0105 in"},
                     {"setting": "end play", "wanted": "0.002 in", "more shim": "loosens", "shim now": "0.012 in", "play read": "0.002 in"},
                     {"setting": "preload", "wanted": "0.100 in", "more shim": "loosens", "gap": "0.2 in"}],
    "disc-pack": [{"friction discs": "6", "friction disc": "0.170 ± 0.003 in", "steel plates": "7", "steel plate": "0.125 ± 0.003 in", "worn friction disc": "0.130 in",
                   "worn steel plate": "0.118 in", "pack now": "1.700 in"}, {"friction discs": "1", "friction disc": "2 in"}, {"friction disc": "0.5 in"}],
    "gasket-end-play": [{"old gasket": "0.006 in", "old squeeze": "10 / 15 / 20 %", "new gasket": "0.015 in", "new squeeze": "10 / 15 / 20 %"}],
    "gear-shift": [{"pitch window": "0.008 to 0.014 in", "pitch radius": "6.50 in", "dial radius": "7.25 in", "pressure angle": "20 °", "readings": "0.02 in"},
                   {"pitch window": "0.008 to 0.014 in", "pitch radius": "6.50 in", "dial radius": "7.25 in", "pressure angle": "50 °", "pitch angle": "60 °"}],
}

#: Each must be met by at least one case, or the vectors leave something out.
REASONS = {
    "press-card": ["the ram's area is not known", "the rod is as thick as the bore", "the ram's rating is not given", "the division is not smaller", "no ceiling is given",
                   "the floor of .* is over the ceiling", "the target of .* is over the ceiling", "is under the floor of", "nameplate$", "end of the gauge$",
                   "limit set for the gauge$", "as large as the ceiling itself", "one division is more than the target", "its low edge is under", "its high edge is over",
                   "no mark is sure to lie between", "draw stud would stand at", "has no input", "needs 'division'", "is no choice here", "cannot be under zero", "is not over zero", "beyond anything measured"],
    "wrench-setting": ["length is not given", "takes all the leverage away", "says nothing", "no graduation of this wrench", "lie outside the range", "less than one graduation",
                       "is outside its range,", "is outside its range$", "needs 'wrench graduation'", "is under zero"],
    "taper-advance": ["runs to a point", "no larger outside than the large end", "bore of the shaft is as large", "Poisson's ratio of a half"],
    "shim-stack": ["are not tried", "nor in any number", "a quantity|unit is missing"],
    "backlash": ["does not read a gear", "divisions cannot show"],
    "disc-pack": ["how thick a steel plate", "not thinner than the new one", "pack is worn out", "thicker than a new pack", "not a usual disc", "needs 'friction discs'"],
    "bearing-shim": ["nothing is measured yet", "two ways to the same shim", "less than none", "a shim of .* leaves .* end play, outside", "leaves .* preload, outside",
                     "thousandths misread", "is no choice here"],
    "gasket-end-play": ["squeezed to nothing", "is outside .*another gasket", "may be outside", "not a usual gasket", "paper 10 to 20 %"],
    "gear-shift": ["pitch angle of the gear is not known", "of no bevel gear"],
    "quantity": ["not a number that can", "exponent", "fraction sign", "space between", "range can be read", "between two figures", "comma inside", "needless 0", "over nothing", "other words",
                 "no figure after", "not used in quantities", "has no number", "cannot be read", "no quantity stands", "far too long", "runs backwards", "no width", "under zero",
                 "whole number", "not written as a ratio", "a ratio with nothing", "in one quantity", "space inside", "no bounds", "without its figure", "in other signs", "a range in other words", "letter inside", "tolerance in per cent", "in brackets behind", "unit is missing", "more than one unit", "measures .*, not", "is no unit for"],
}
