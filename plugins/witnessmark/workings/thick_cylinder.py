"""A hub tight on a shaft as two thick cylinders after Lamé: pressure, interference and stress, hub and shaft of unlike materials.

Plane stress, elastic, both as long as the contact; sizes in m, pressures and moduli in Pa. Interference is on the
*diameter*. Source: machine-design textbooks, press and shrink fits (Lamé's equations with a common surface).
"""
from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Pair:
    """Hub and shaft: contact `diameter`, hub `outside`, `bore` through the shaft (0 when solid), modulus and Poisson's ratio of each."""
    diameter: float
    outside: float
    bore: float
    hub_modulus: float
    hub_poisson: float
    shaft_modulus: float
    shaft_poisson: float

    @property
    def hub_ratio(self) -> float:
        """(D² + d²) / (D² - d²): hoop stress at the hub's bore over the pressure."""
        return (self.outside**2 + self.diameter**2) / (self.outside**2 - self.diameter**2)

    @property
    def shaft_ratio(self) -> float:
        """(d² + b²) / (d² - b²); 1 for a solid shaft."""
        return (self.diameter**2 + self.bore**2) / (self.diameter**2 - self.bore**2)

    def give(self) -> float:
        """delta / (p d): how far bore and shaft give way together, for each unit of pressure and diameter, in 1/Pa."""
        return (self.hub_ratio + self.hub_poisson) / self.hub_modulus + (self.shaft_ratio - self.shaft_poisson) / self.shaft_modulus

    def interference(self, pressure: float) -> float:
        return pressure * self.diameter * self.give()

    def pressure(self, interference: float) -> float:
        return interference / (self.diameter * self.give())

    def hub_stress(self, pressure: float) -> float:
        """Hoop stress at the hub's bore, where it splits."""
        return pressure * self.hub_ratio

    def shaft_stress(self, pressure: float) -> float:
        """Greatest squeeze in the shaft: all over a solid one, hoopwise at the bore of a hollow one."""
        return pressure if not self.bore else 2 * pressure * self.diameter**2 / (self.diameter**2 - self.bore**2)

    def sense(self) -> str:
        """What is wrong with the sizes, or ''."""
        if self.outside <= self.diameter * (1 + 1e-6):
            return "the hub is no larger outside than the shaft"
        if self.bore >= self.diameter * (1 - 1e-6):
            return "the bore of the shaft is as large as the shaft"
        if self.hub_poisson >= 0.5 or self.shaft_poisson >= 0.5:
            return "no metal has a Poisson's ratio of a half or more"
        return ""
