"""Tensile stress area of a screw thread: the section that carries the pull.

Source: ASME B1.1 (unified), As = 0.7854 (D - 0.9743/n)^2 in inches;
ISO 898-1 (metric), As = pi/4 (d - 0.938194 p)^2 in millimetres.
"""
from __future__ import annotations

import math

from ..core.thread import Thread

INCH = 0.0254
MILLIMETRE = 0.001


def stress_area(thread: Thread) -> float:
    """Stress area in m², by the formula of the thread's own standard."""
    if thread.family == "unified":
        effective = float(thread.nominal_in) - 0.9743 / float(thread.tpi)
        return 0.7854 * effective**2 * INCH**2
    effective = float(thread.nominal_mm) - 0.938194 * float(thread.pitch_mm)
    return math.pi / 4 * effective**2 * MILLIMETRE**2
