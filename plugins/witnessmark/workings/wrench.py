"""Setting a torque wrench: graduations, its range, an adapter in the way, and rounds.

Source of the adapter rule: US military maintenance manuals, setting = T L / (L + a cos angle).
Rounds: 70 % then full is army practice; the shares for three and four rounds are common practice, no source.
"""
from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from math import cos

from ..core.rounding import TOLERANCE, round_to
from ..core.units import Unit
from ..core.working import Given, Refusal, Value
from .printed import in_unit, unit_of, value

PASS_SHARES = {1: (), 2: (70,), 3: (50, 75), 4: (25, 50, 75)}


def lever(given: Mapping[str, Given]) -> float | Refusal:
    """Torque at the fastener over torque on the wrench: 1 without an adapter."""
    if "adapter length" not in given:
        return 1.0
    if "wrench length" not in given:
        return Refusal("the adapter changes the torque and the wrench's length is not given",
                       "measure from the drive square to the middle of the hand")
    angle = given["adapter angle"].likely if "adapter angle" in given else 0.0
    length = given["wrench length"].likely
    effective = length + given["adapter length"].likely * cos(angle)
    if effective <= 0 or length <= 0:
        return Refusal("turned back this far the adapter takes all the leverage away", "turn the adapter in line or square to the wrench")
    return effective / length


def _end(given: Given, unit: Unit) -> Fraction:
    """One end of the wrench's range in `unit`, exactly: a setting at the very end is inside."""
    return given.quantity.low * unit_of(given).factor / unit.factor


def window_on(given: Mapping[str, Given], low: float, high: float) -> tuple[Fraction, Fraction] | Refusal:
    """Lowest and highest setting, in the wrench's unit, that keep a wrench as far out as it may be inside `low` to `high` N·m."""
    ratio = lever(given)
    if isinstance(ratio, Refusal):
        return ratio
    unit, graduation = unit_of(given["wrench graduation"]), given["wrench graduation"].quantity.low
    out = given["wrench accuracy"].high if "wrench accuracy" in given else 0.0
    if out >= 1:
        return Refusal("a wrench that may be out by all it shows says nothing", "have the wrench checked")
    ends = (round_to(unit.from_si(low / (1 - out) / ratio), graduation, "up"), round_to(unit.from_si(high / (1 + out) / ratio), graduation, "down"))
    reach = f"{in_unit(low, 'torque', unit, '0.1')} to {in_unit(high, 'torque', unit, '0.1')}"
    if ends[0] > ends[1]:
        return Refusal(f"no graduation of this wrench keeps the fastener inside {reach}", "use a finer wrench, or one that is out by less")
    lowest = _end(given["wrench lowest"], unit) if "wrench lowest" in given else ends[0]
    highest = _end(given["wrench highest"], unit) if "wrench highest" in given else ends[1]
    if ends[0] < lowest or ends[1] > highest:
        return Refusal(f"settings for {reach} lie outside the range of the wrench", f"use a wrench for {reach} at the fastener")
    return ends


def setting_on(given: Mapping[str, Given], torque: float) -> list[Value] | Refusal:
    """Setting, what it delivers, and the rounds before it; torque in N·m at the fastener."""
    ratio = lever(given)
    if isinstance(ratio, Refusal):
        return ratio
    unit, graduation = unit_of(given["wrench graduation"]), given["wrench graduation"].quantity.low
    setting = round_to(unit.from_si(torque / ratio), graduation, "down")
    lowest = _end(given["wrench lowest"], unit) if "wrench lowest" in given else Fraction(0)
    highest = _end(given["wrench highest"], unit) if "wrench highest" in given else None
    reach = in_unit(torque / ratio, "torque", unit, "0.1")
    if setting <= 0:
        return Refusal(f"{reach} on the wrench is less than one graduation", "use a smaller wrench")
    if setting < lowest or (highest is not None and unit.from_si(torque / ratio) > highest * (1 + TOLERANCE)):
        low, high = given["wrench lowest"].text if "wrench lowest" in given else "", given["wrench highest"].text if "wrench highest" in given else ""
        return Refusal(f"{reach} on the wrench is outside its range{f', {low} to {high}' if low and high else ''}",
                       f"use a wrench that can be set to {reach}" if setting < lowest else
                       f"use a wrench that can be set to {reach}, or a longer adapter in line with a new setting")
    step = min(graduation, Fraction(1))
    values = [value("setting", "torque", float(setting * unit.factor), unit, graduation, "down"),
              value("delivered torque", "torque", float(setting * unit.factor) * ratio, unit, step, "nearest")]
    rounds = round(given["passes"].likely) if "passes" in given else 1
    for n, share in enumerate(PASS_SHARES.get(rounds, ()), start=1):
        part = round_to(unit.from_si(torque / ratio) * share / 100, graduation, "down")
        values.append(value(f"pass {n}", "torque", float(part * unit.factor), unit, graduation, "down"))
    if rounds in PASS_SHARES and rounds > 1:
        values.append(value(f"pass {rounds}", "torque", float(setting * unit.factor), unit, graduation, "down"))
    return values
