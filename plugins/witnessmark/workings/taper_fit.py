"""A hub pressed on a taper: pressure, stress, interference and advance at one force and one friction.

Statics of taper_grip, two thick cylinders of thick_cylinder at the mean diameter.
"""
from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from ..core.working import Given
from .taper_grip import contact_pressure, push_off, torque_for_force
from .thick_cylinder import Pair


@dataclass(frozen=True)
class Fit:
    """One force at one friction: pressure and stress in Pa, interference and advance in m, grip in N·m, push-off in N."""
    friction: float
    pressure: float
    stress: float
    interference: float
    advance: float
    grip: float
    off: float


@dataclass(frozen=True)
class Taper:
    """Sizes of the joint; `fit` presses it."""
    pair: Pair
    taper: float
    length: float

    def fit(self, force: float, friction: float) -> Fit:
        diameter = self.pair.diameter
        pressure = contact_pressure(force, diameter, self.length, self.taper, friction)
        interference = self.pair.interference(pressure)
        return Fit(friction, pressure, self.pair.hub_stress(pressure), interference, interference / self.taper,
                   torque_for_force(force, diameter, self.taper, friction), max(push_off(force, self.taper, friction), 0.0))

    def sense(self) -> str:
        if self.length * self.taper / 2 >= self.pair.diameter:
            return "a taper this steep runs to a point within its length"
        if self.pair.outside <= self.pair.diameter + self.length * self.taper / 2:
            return "the hub is no larger outside than the large end of the taper"
        return self.pair.sense()


def pair_of(given: Mapping[str, Given], diameter: float) -> Pair:
    """Hub and shaft from the inputs that straight and tapered fits share."""
    return Pair(diameter, given["hub diameter"].likely, given["shaft bore"].likely if "shaft bore" in given else 0.0,
                *(given[name].likely for name in ("hub modulus", "hub poisson", "shaft modulus", "shaft poisson")))
