"""Proof, tensile and yield strength of graded bolts, with the sizes each figure holds for.

Sources: SAE J429 and ISO 898-1 as tabulated in a machine-design textbook (tables 8-9 and 8-11;
the standards themselves were not seen); ASTM A574 from published extracts of its mechanical
requirements (180/140 ksi through 1/2 in, 170/135 ksi above, yield 153 ksi).
Where prints of ISO 898-1 differ for 8.8, these are 580 MPa to 16 mm and 600 MPa above.
"""
from __future__ import annotations

from dataclasses import dataclass

from ...core.thread import Thread

KSI = 6894757.293168361  # Pa, from the exact inch and pound-force
MPA = 1e6


@dataclass(frozen=True)
class Strength:
    """One row: sizes over `over` up to and including `upto` (in or mm), strengths in `unit`."""
    grade: str
    family: str
    over: float
    upto: float
    proof_printed: float
    tensile_printed: float
    yield_printed: float
    source: str

    @property
    def unit(self) -> str:
        return "ksi" if self.family == "unified" else "MPa"

    @property
    def proof(self) -> float:
        """Proof strength in Pa."""
        return self.proof_printed * (KSI if self.family == "unified" else MPA)


@dataclass(frozen=True)
class StrengthProblem:
    message: str
    mend: str


_QUARTER = 0.2499  # 1/4 in is the smallest size of SAE J429
_J429 = [("1", _QUARTER, 1.5, 33, 60, 36), ("2", _QUARTER, 0.75, 55, 74, 57), ("2", 0.75, 1.5, 33, 60, 36),
         ("4", _QUARTER, 1.5, 65, 115, 100), ("5", _QUARTER, 1, 85, 120, 92), ("5", 1, 1.5, 74, 105, 81),
         ("5.2", _QUARTER, 1, 85, 120, 92), ("7", _QUARTER, 1.5, 105, 133, 115),
         ("8", _QUARTER, 1.5, 120, 150, 130), ("8.2", _QUARTER, 1, 120, 150, 130)]
_A574 = [("A574", 0.0599, 0.5, 140, 180, 153), ("A574", 0.5, 4, 135, 170, 153)]
_ISO = [("4.6", 4.99, 39, 225, 400, 240), ("4.8", 1.59, 16, 310, 420, 340), ("5.8", 4.99, 24, 380, 520, 420),
        ("6.8", 4.99, 39, 440, 600, 480), ("8.8", 4.99, 16, 580, 800, 640), ("8.8", 16, 39, 600, 830, 660),
        ("9.8", 1.59, 16, 650, 900, 720), ("10.9", 4.99, 39, 830, 1040, 940), ("12.9", 1.59, 39, 970, 1220, 1100)]

STRENGTHS = tuple(
    [Strength(grade, "unified", *row, "SAE J429") for grade, *row in _J429]
    + [Strength(grade, "unified", *row, "ASTM A574") for grade, *row in _A574]
    + [Strength(grade, "metric", *row, "ISO 898-1") for grade, *row in _ISO])

GRADES = tuple(dict.fromkeys(row.grade for row in STRENGTHS))


def grade_named(text: str) -> str:
    """The grade's own name from 'grade 8', 'class 10.9', 'SAE 5' or '8'."""
    word = text.strip()
    for prefix in ("SAE J429", "SAE", "ISO 898-1", "ASTM", "grade", "class", "property class"):
        if word.lower().startswith(prefix.lower() + " "):
            word = word[len(prefix):].strip()
    return word.upper() if word.upper() == "A574" else word.removeprefix("grade").strip()


def strength_of(grade: str, thread: Thread) -> Strength | StrengthProblem:
    """The row for this grade and thread, or why there is none: a grade outside its sizes is refused."""
    name = grade_named(grade)
    of_grade = [row for row in STRENGTHS if row.grade == name]
    if not of_grade:
        return StrengthProblem(f"no strength is known for grade '{grade}'",
                               f"write one of {', '.join(GRADES)}, or none for a bolt of no grade")
    of_family = [row for row in of_grade if row.family == thread.family]
    if not of_family:
        return StrengthProblem(f"grade {name} is for {of_grade[0].family} threads and {thread.text} is {thread.family}",
                               "check which of the two was read off the bolt")
    size = float(thread.nominal_in if thread.family == "unified" else thread.nominal_mm)
    for row in of_family:
        if row.over < size <= row.upto:
            return row
    unit = "in" if thread.family == "unified" else "mm"
    return StrengthProblem(f"grade {name} of {of_family[0].source} is not given for {thread.text}",
                           f"its sizes end at {max(row.upto for row in of_family):g} {unit}: find the bolt's own figure, or write none")
