"""Stiffness and expansion of usual materials, for the command line: a book names its own in site_data/materials.yaml.

Modulus and Poisson's ratio: machine-design textbook, table A-5. Expansion: materials textbook, table B.6.
No strengths: those differ by casting and heat treatment more than a table can say.
"""

_ROWS = (
    # id            modulus      Poisson  expansion near room temperature
    ("steel", "30.0 Mpsi", "0.292", "6.5 ppm/°F"),
    ("grey-iron", "14.5 Mpsi", "0.211", "6.3 ppm/°F"),
    ("aluminium", "10.4 Mpsi", "0.333", "13.1 ppm/°F"),
    ("phosphor-bronze", "16.1 Mpsi", "0.349", "10.0 ppm/°F"),
)

MATERIALS: dict[str, dict[str, str]] = {
    name: {"modulus": modulus, "poisson": poisson, "expansion": expansion} for name, modulus, poisson, expansion in _ROWS}
