"""Screw threads by their designation: 1-1/2-12 UNF, 3/4-16, #10-32, M12 x 1.25, M12.

Published series: unified UNC, UNF, UNEF and the constant pitches of UN by ASME B1.1, metric coarse by ISO 261 and fine
by ISO 261 and 262. A pitch that is not of the series named is refused: "1-14 UNF" is a misprint often seen in print (UNF is 1-12).
"""

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from .kinds import Problem


class ThreadProblem(Problem):
    """A text that names no thread of a known series."""


@dataclass(frozen=True)
class Thread:
    """`nominal` diameter in inches or millimetres by `family`; `pitch` is threads per inch, or the pitch in millimetres.

    series: UNC, UNF, UNEF, UN, UNS; coarse, fine, special."""

    text: str
    family: str
    nominal: Fraction
    pitch: Fraction
    series: str

    @property
    def nominal_in(self) -> Fraction | None:
        return self.nominal if self.family == "unified" else None

    @property
    def tpi(self) -> Fraction | None:
        return self.pitch if self.family == "unified" else None

    @property
    def nominal_mm(self) -> Fraction | None:
        return self.nominal if self.family == "metric" else None

    @property
    def pitch_mm(self) -> Fraction | None:
        return self.pitch if self.family == "metric" else None

    @property
    def nominal_si(self) -> float:
        """Metres."""
        return float(self.nominal * (_INCH if self.family == "unified" else _MILLIMETRE))

    @property
    def pitch_si(self) -> float:
        """Metres from one thread to the next."""
        return float(_INCH / self.pitch if self.family == "unified" else self.pitch * _MILLIMETRE)


_INCH, _MILLIMETRE = Fraction(254, 10000), Fraction(1, 1000)


def _pairs(text: str) -> dict[Fraction, Fraction]:
    """'1-1/2:12 …' -> {3/2: 12}; '#10' is 0.190 in: 0.060 and 0.013 for each number."""
    return {_size(size): Fraction(pitch) for size, pitch in (pair.split(":") for pair in text.split())}


def _size(text: str) -> Fraction:
    if text.startswith("#"):
        return Fraction(60 + 13 * int(text[1:]), 1000)
    whole, _, fraction = text.rpartition("-")
    return Fraction(fraction) + int(whole or 0)


_UNIFIED = {
    "UNC": _pairs("#1:64 #2:56 #3:48 #4:40 #5:40 #6:32 #8:32 #10:24 #12:24 1/4:20 5/16:18 3/8:16 7/16:14 1/2:13 9/16:12 5/8:11"
                  " 3/4:10 7/8:9 1:8 1-1/8:7 1-1/4:7 1-3/8:6 1-1/2:6 1-3/4:5 2:4.5 2-1/4:4.5 2-1/2:4 2-3/4:4 3:4 3-1/4:4"
                  " 3-1/2:4 3-3/4:4 4:4"),
    "UNF": _pairs("#0:80 #1:72 #2:64 #3:56 #4:48 #5:44 #6:40 #8:36 #10:32 #12:28 1/4:28 5/16:24 3/8:24 7/16:20 1/2:20 9/16:18"
                  " 5/8:18 3/4:16 7/8:14 1:12 1-1/8:12 1-1/4:12 1-3/8:12 1-1/2:12"),
    "UNEF": _pairs("#12:32 1/4:32 5/16:32 3/8:32 7/16:28 1/2:28 9/16:24 5/8:24 11/16:24 3/4:20 13/16:20 7/8:20 15/16:20 1:20"
                   " 1-1/16:18 1-1/8:18 1-3/16:18 1-1/4:18 1-5/16:18 1-3/8:18 1-7/16:18 1-1/2:18 1-9/16:18 1-5/8:18"
                   " 1-11/16:18"),
}
# Constant pitch series: threads per inch -> smallest and largest nominal size, in sixteenths of an inch.
_CONSTANT = {4: (40, 96), 6: (22, 96), 8: (16, 96), 12: (9, 96), 16: (6, 96), 20: (4, 48), 28: (4, 24), 32: (4, 16)}
# Threads per inch that special threads are cut with, as the lathe's gearbox and the taps offer them: common practice, no source.
_USUAL = frozenset(map(Fraction, "4 4.5 5 6 7 8 9 10 11 12 13 14 16 18 20 24 27 28 30 32 36 40 44 48 56 64 72 80".split()))

_COARSE = _pairs("1.6:0.35 2:0.4 2.5:0.45 3:0.5 3.5:0.6 4:0.7 5:0.8 6:1 7:1 8:1.25 10:1.5 12:1.75 14:2 16:2 18:2.5 20:2.5 22:2.5"
                 " 24:3 27:3 30:3.5 33:3.5 36:4 39:4 42:4.5 45:4.5 48:5 52:5 56:5.5 60:5.5 64:6")
_FINE = frozenset(tuple(map(Fraction, pair.split("x"))) for pair in (
    "6x0.75 8x1 10x1.25 10x1 12x1.5 12x1.25 14x1.5 14x1.25 16x1.5 18x2 18x1.5 20x2 20x1.5 22x2 22x1.5 24x2 27x2 30x2 33x2 36x3 39x3 42x3 45x3"
    " 48x3 52x4 56x4 60x4 64x4").split())
_PITCHES = frozenset(map(Fraction, "6 5.5 5 4.5 4 3.5 3 2.5 2 1.75 1.5 1.25 1 0.8 0.75 0.7 0.6 0.5 0.45 0.4 0.35 0.3 0.25"
                         " 0.225 0.2".split()))

_UNIFIED_TEXT = re.compile(
    r"(?P<size>#[0-9]{1,2}|(?:[1-9]-)?[1-9][0-9]?/[1-9][0-9]?|[1-9]|[0-9]?\.[0-9]{2,4}) ?- ?(?P<tpi>[1-9][0-9]?(?:\.5)?)"
    r"(?:[ -]?(?P<series>[A-Z]+))?(?: ?-? ?[123][AB])?(?: ?-? ?LH)?")
_METRIC_TEXT = re.compile(
    r"M ?(?P<size>[1-9][0-9]{0,2}(?:\.[0-9])?)(?: ?[x×X*] ?(?P<pitch>[0-9](?:\.[0-9]{1,3})?))?(?: ?- ?[3-9][eEfFgGhH]{1,2})?"
    r"(?: ?-? ?LH)?")
_EXAMPLE = "write a designation such as 1-1/2-12 UNF, #10-32 or M12 x 1.25"


@lru_cache(maxsize=4096)
def read_thread(text: str) -> Thread | ThreadProblem:
    """A thread by its designation; where no series is named, it is worked out. Never raises."""
    text = " ".join(text[:60].split())
    plain = re.sub(r"^(No\.? ?|Nr\.? ?)(?=[0-9])", "#", text).rstrip('"')
    plain = re.sub(r'(?<=[0-9])"(?= ?-)| in(?= ?-)', "", plain)
    if match := _METRIC_TEXT.fullmatch(plain):
        return _metric(text, Fraction(match["size"]), match["pitch"] and Fraction(match["pitch"]))
    if match := _UNIFIED_TEXT.fullmatch(plain):
        return _unified(text, match["size"], Fraction(match["tpi"]), match["series"])
    if re.fullmatch(r"(0|[1-9][0-9]?) ?- ?[1-9][0-9].*", plain):
        return ThreadProblem(f"“{text}”: the size could be inches or a screw number", f"write #{plain} for a numbered screw")
    return ThreadProblem(f"“{text}” is no thread that is known here", _EXAMPLE)


def _unified(text: str, typed: str, tpi: Fraction, named: str | None) -> Thread | ThreadProblem:
    if "/" in typed:
        top, bottom = typed.rpartition("-")[2].split("/")
        if int(top) >= int(bottom):
            return ThreadProblem(f"“{text}”: a fraction that is a whole or more", "write it such as 1-1/2")
    size = _size(typed)
    at = [series for series, table in _UNIFIED.items() if table.get(size) == tpi]
    least, most = _CONSTANT.get(tpi, (0, 0))
    if (size * 16).denominator == 1 and least <= size * 16 <= most:
        at.append("UN")
    if typed.startswith("#") and not any(size in table for table in _UNIFIED.values()):
        return ThreadProblem(f"“{text}”: there is no screw {typed}", _EXAMPLE)
    if typed.isdigit() and not at and (int(typed) > 6 or any(t.get(_size(f"#{typed}")) == tpi for t in _UNIFIED.values())):
        return ThreadProblem(f"“{text}”: the size could be inches or a screw number", f"write #{text} for a numbered screw")
    coarse = _UNIFIED["UNC"].get(size, Fraction(0))
    if named is None and not at and (tpi not in _USUAL or tpi < coarse):
        return ThreadProblem(f"“{text}”: no usual pitch at this size", f"write {text} UNS if it is a special thread")
    if named is None or named in at:
        return Thread(text, "unified", size, tpi, named or (at[0] if at else "UNS"))
    if named == "UNS":
        return Thread(text, "unified", size, tpi, "UNS") if not at else ThreadProblem(
            f"“{text}”: this pitch is standard, not special", f"write {typed}-{float(tpi):g} {at[0]}")
    if named not in (*_UNIFIED, "UN"):
        return ThreadProblem(f"“{text}”: “{named}” is no series that is known here", "write UNC, UNF, UNEF, UN or UNS")
    right = _UNIFIED.get(named, {}).get(size)
    itself = f"{typed}-{float(tpi):g} {at[0] if at else 'UNS'}"
    said = f"{named} at this size has {float(right):g} threads per inch" if right else f"there is no such {named} thread"
    return ThreadProblem(f"“{text}”: {said}",
                         f"write {typed}-{float(right):g} {named} or {itself}" if right else f"write {itself}")


def _metric(text: str, size: Fraction, pitch: Fraction | None) -> Thread | ThreadProblem:
    coarse = _COARSE.get(size)
    if pitch is None:
        if coarse is None:
            return ThreadProblem(f"“{text}” is not a coarse thread of ISO 261", f"write its pitch, such as M{float(size):g} x 1")
        return Thread(text, "metric", size, coarse, "coarse")
    if pitch == coarse:
        return Thread(text, "metric", size, pitch, "coarse")
    if pitch not in _PITCHES or pitch > (coarse or size / 4):
        hint = f"M{float(size):g} x {float(coarse):g} is the coarse one" if coarse else "look at the pitch gauge again"
        return ThreadProblem(f"“{text}”: no standard pitch at this size", hint)
    return Thread(text, "metric", size, pitch, "fine" if (size, pitch) in _FINE else "special")
