"""The worst limits of an ordinary thread: class 2A in 2B, or 6g in 6H. They decide how much metal has to shear.

Source: ASME B1.1, the tolerance formulas for classes 2A and 2B; ISO 965-1, the formulas behind grades 6 (its tables
round them to preferred numbers, within 3 % of a tolerance). All sizes in m.
"""
from __future__ import annotations

import math
from dataclasses import dataclass

from ..core.thread import Thread
from .stress_area import INCH, MILLIMETRE

_METRIC_RANGES = (0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45, 90, 180, 355)


@dataclass(frozen=True)
class ThreadLimits:
    """Smallest outside and pitch diameter of the bolt, largest pitch and minor diameter of the tapped hole, and the pitch."""
    bolt_major: float
    bolt_pitch: float
    hole_pitch: float
    hole_minor: float
    pitch: float

    def bolt_shear(self) -> float:
        """Area in which the bolt's thread shears, for each unit of engagement, in m."""
        return math.pi * self.hole_minor / self.pitch * (self.pitch / 2 + math.tan(math.pi / 6) * (self.bolt_pitch - self.hole_minor))

    def hole_shear(self) -> float:
        """The same for the tapped thread."""
        return math.pi * self.bolt_major / self.pitch * (self.pitch / 2 + math.tan(math.pi / 6) * (self.bolt_major - self.hole_pitch))


def thread_limits(thread: Thread) -> ThreadLimits | None:
    """None for a thread so coarse for its size, or so odd, that the formulas leave no metal."""
    limits = _unified(float(thread.nominal_in), 1 / float(thread.tpi), thread.series or "") if thread.family == "unified" else \
        _metric(float(thread.nominal_mm), float(thread.pitch_mm))
    sound = limits and 0 < limits.hole_minor < limits.bolt_major and 0 < limits.bolt_pitch < limits.hole_pitch
    return limits if sound and limits.bolt_shear() > 0 and limits.hole_shear() > 0 else None


def _unified(size: float, pitch: float, series: str) -> ThreadLimits:
    engaged = size if series in ("UNC", "UNF", "") else 9 * pitch
    bolt_tolerance = 0.0015 * size ** (1 / 3) + 0.0015 * engaged**0.5 + 0.015 * pitch ** (2 / 3)
    allowance, basic_pitch = 0.3 * bolt_tolerance, size - 0.75 * math.sqrt(3) / 2 * pitch
    minor_tolerance = 0.15 * pitch if pitch >= 0.25 else 0.25 * pitch - 0.4 * pitch**2
    if size < 0.25:
        minor_tolerance = max(min(0.05 * pitch ** (2 / 3) + 0.03 * pitch / size - 0.002, 0.394 * pitch), minor_tolerance)
    return ThreadLimits(*(each * INCH for each in (
        size - allowance - 0.060 * pitch ** (2 / 3), basic_pitch - allowance - bolt_tolerance, basic_pitch + 1.3 * bolt_tolerance,
        size - 1.25 * math.sqrt(3) / 2 * pitch + minor_tolerance, pitch)))


def _metric(size: float, pitch: float) -> ThreadLimits | None:
    step = next((ends for ends in zip(_METRIC_RANGES, _METRIC_RANGES[1:], strict=False) if ends[0] < size <= ends[1]), None)
    if step is None:
        return None
    bolt_tolerance = 90 * pitch**0.4 * math.sqrt(step[0] * step[1]) ** 0.1 / 1000
    allowance, basic_pitch = (15 + 11 * pitch) / 1000, size - 0.75 * math.sqrt(3) / 2 * pitch
    minor_tolerance = (230 * pitch**0.7 if pitch >= 1 else 433 * pitch - 190 * pitch**1.22) / 1000
    return ThreadLimits(*(each * MILLIMETRE for each in (
        size - allowance - (180 * pitch ** (2 / 3) - 3.15 / math.sqrt(pitch)) / 1000, basic_pitch - allowance - bolt_tolerance,
        basic_pitch + 1.32 * bolt_tolerance, size - 1.25 * math.sqrt(3) / 2 * pitch + minor_tolerance, pitch)))
