"""What a figure measures. A kind decides which units are allowed: torque is not energy, a rise is not a temperature."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Problem:
    """Why a text was refused (`message`) and what to write instead (`mend`)."""

    message: str
    mend: str


@dataclass(frozen=True)
class Kind:
    """`si_symbol` is the unit of every SI value of this kind; `needs` are conditions a figure must state;
    `signed` kinds may be below zero; `ratio` kinds may be written 1:12; `counted` kinds are whole numbers."""

    name: str
    si_symbol: str
    needs: tuple[str, ...] = ()
    signed: bool = False
    ratio: bool = False
    counted: bool = False


KINDS: dict[str, Kind] = {kind.name: kind for kind in (
    Kind("press force", "N"),
    Kind("force", "N"),
    Kind("torque", "N·m", needs=("surface", "thread")),
    Kind("rolling drag", "N·m"),
    Kind("energy", "J"),
    Kind("length", "m", signed=True),
    Kind("clearance", "m", signed=True),
    Kind("interference", "m", signed=True),    # on diameter
    Kind("interference per side", "m", signed=True),
    Kind("radius", "m"),
    Kind("diameter", "m"),
    Kind("taper", "1", ratio=True),            # diameter per length, so 1:12 is 1/12
    Kind("area", "m²"),
    Kind("pressure", "Pa"),
    Kind("stress", "Pa"),
    Kind("temperature", "K", signed=True),
    Kind("temperature rise", "K", signed=True),
    Kind("angle", "rad", signed=True),
    Kind("turns", "turn", signed=True),
    Kind("count", "1", counted=True),
    Kind("volume", "m³"),
    Kind("mass", "kg"),
    Kind("density", "kg/m³"),
    Kind("time", "s"),
    Kind("speed", "turn/s"),
    Kind("road speed", "m/s"),
    Kind("drip rate", "drop/s"),
    Kind("spring rate", "N/m"),
    Kind("gear ratio", "1", ratio=True),
    Kind("friction", "1"),
    Kind("factor", "1"),                       # a plain number: Poisson's ratio, a stress concentration
    Kind("share", "1"),
    Kind("expansion", "1/K"),
    Kind("thread", ""),                        # read by core/thread.py, never a quantity
    Kind("none", ""),
)}
