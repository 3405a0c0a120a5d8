"""How grave a change is: stop, look or wording. What makes a thing less safe is a stop, with a source or without."""

import re
from typing import NamedTuple

from ..core.acted import Fact, Key
from ..core.authority import SIGNAL_WORDS
from ..core.derived import NOT_TO_USE, RECHECK
from ..core.quantity import Quantity, read_quantity
from .words import LOOK, STOP

#: Beyond this a force or torque has not been refined but replaced.
MOST_MOVED = 10.0
_MOVED = f"a force or torque moved over {MOST_MOVED:.0f} %"
FORCES = ("press force", "force", "torque", "rolling drag")
_FORCE_UNITS = ("ton", "tonne", "kN", "lbf", "N", "lbf·ft", "lbf·in", "N·m")
_LIMITS = {"ceiling": "a ceiling", "floor": "a floor", "window": "a window", "reject": "a reject limit", "stop": "a stop limit"}
_WARMTH = re.compile(r"\b(?:cold|cool|warm|hot|heat|room temperature)\w*", re.IGNORECASE)
_SURFACE_WORDS = re.compile(r"\b(?:dry|oil|greas|lubric|wax|moly|graphite|paste|sealant|solvent|lacquer|plat|phosphat)\w*", re.IGNORECASE)
_NUMBER = re.compile(r"\d[\d,]*(?:\.\d+)?")
_CLAMP, _SHARE = "tightening-torque", "worst share of press force"
#: Inputs of a working by which a fastener or a fit is another.
_OF_SURFACE = ("thread", "grade", "surface", "friction", "oiled friction", "nut factor", "thread friction")
OTHER_NEEDS = ("words", "wrench", "scale", "tester", "made", "tool", "part", "supply")


class Verdict(NamedTuple):
    """`why` says in words what makes it a stop."""

    severity: str = LOOK
    why: tuple[str, ...] = ()
    per_cent: float | None = None


def judged(key: Key, old: Fact | None, new: Fact | None) -> Verdict:
    """How grave it is that a fact went from `old` to `new`; None where it was not there, or is no longer."""
    match key.sort:
        case "figure":
            return _figure(key, old, new)
        case "mark" | "setting" | "result":
            return _result(key, old, new)
        case "spec" if key.part == "passes":
            return _passes(old.text if old else "", new.text if new else "")
        case "spec":
            return _stop(_spec(key.part, old.text if old else "", new.text if new else ""))
        case "caution":
            return _stop(_caution(old, new))
        case "step" if key.part in ("hold point", "second person") and old and not new:
            return Verdict(STOP, (f"a {key.part} is gone",))
        case "sheet" if key.part == "serials":
            return Verdict(STOP, ("it is for other serials",))
        case "sheet" if key.part in ("measure", "part to mark") and old and new:
            return Verdict(STOP, ("it is told by another measure",))
        case "sheet" if key.part == "viewpoint":
            return Verdict(STOP, ("left and right may have changed places",))
        case "sheet" if key.part == "people" and old and new and int(old.text) > 1 >= int(new.text):
            return Verdict(STOP, ("the second person is gone",))
        case "need" if key.name not in OTHER_NEEDS:
            return Verdict(STOP, ("press or gauge changed",))
    return Verdict()


def given(name: str, old: str, new: str) -> tuple[str, ...]:
    """What makes it a stop that an input of a working went from `old` to `new`, both as the source says them; () where nothing does."""
    if name in _OF_SURFACE:
        return ("another thread, grade or surface",)
    units = [_NUMBER.sub("", text).strip() for text in (old, new)]
    if all(text[:1].isdigit() for text in (old, new)) and units[0] != units[1]:
        return ("another unit",)
    moved = per_cent(old, new)
    of_force = any(isinstance(read_quantity(old, kind), Quantity) for kind in FORCES)
    return (_MOVED,) if of_force and moved is not None and abs(moved) > MOST_MOVED else ()


def per_cent(old: str, new: str) -> float | None:
    """How far the first number of a printed text moved; None where the units differ or there is none."""
    pair = [_NUMBER.search(text) for text in (old, new)]
    if not all(pair) or _NUMBER.sub("", old.partition(" (")[0]) != _NUMBER.sub("", new.partition(" (")[0]):
        return None
    before, after = (float(match[0].replace(",", "")) for match in pair)
    return round(100 * (after - before) / before, 1) if before else None


def _stop(why: str | None) -> Verdict:
    return Verdict(STOP, (why,)) if why else Verdict()


def _figure(key: Key, old: Fact | None, new: Fact | None) -> Verdict:
    limit = _LIMITS.get(key.part)
    if old is None or new is None or "struck" in (old.state, new.state):
        gone = old is not None and not old.state and (new is None or new.state == "struck")
        return _stop(f"{limit} is gone" if gone and limit else None)
    before, after = (read_quantity(fact.text.partition(" (")[0], fact.kind) for fact in (old, new))
    if not (isinstance(before, Quantity) and isinstance(after, Quantity)):
        return Verdict()
    moved = _moved(before, after)
    if new.state == "doubt":                    # withdrawn: whatever it says, nobody works by it
        return Verdict(LOOK, (), moved)
    why = []
    if before.unit.symbol != after.unit.symbol:
        why.append("another unit")
    if loosened := limit and _loosened(key.part, before, after):
        why.append(f"{limit} is {loosened}")
    elif key.part == "target" and {"range", "plus-minus"} & {before.form, after.form} and _widened(before, after):
        why.append("the range to aim for is widened")
    if old.kind in FORCES and moved is not None and abs(moved) > MOST_MOVED:
        why.append(f"a {old.kind} moved over {MOST_MOVED:.0f} %")
    return Verdict(STOP if why else LOOK, tuple(why), moved)


def _moved(before: Quantity, after: Quantity) -> float | None:
    """By how much, in per cent; of both ends of a range the one that moved further."""
    if before.unit.offset:
        return None
    ends = [(a, b) for a, b in ((before.si_low, after.si_low), (before.si_high, after.si_high)) if a and b is not None]
    return max((round(100 * (b - a) / a, 1) for a, b in ends), key=abs, default=None)


def _loosened(role: str, before: Quantity, after: Quantity) -> str | None:
    old, new = ([end for end in (each.si_low, each.si_high) if end is not None] for each in (before, after))
    if role == "ceiling":
        return "raised" if max(new) > max(old) else None
    if role == "floor":
        return "lowered" if min(new) < min(old) else None
    if role == "window":
        return "widened" if _widened(before, after) else None
    if before.form != after.form or before.form in ("range", "plus-minus"):
        return "changed" if old != new else None
    if before.form in ("under", "at least"):
        return "loosened" if min(new) < min(old) else None
    return "loosened" if max(new) > max(old) or (role == "reject" and before.form == "exact" and old != new) else None


def _widened(before: Quantity, after: Quantity) -> bool:
    lower = before.si_low is not None and (after.si_low is None or after.si_low < before.si_low)
    return lower or (before.si_high is not None and (after.si_high is None or after.si_high > before.si_high))


def _result(key: Key, old: Fact | None, new: Fact | None) -> Verdict:
    if key.part == "refused":
        unsafe = new and not old and new.kind == _CLAMP and not new.text.startswith(RECHECK) and NOT_TO_USE not in new.text
        return _stop("a clamp is refused" if unsafe else None)
    if old and not new and key.part == _SHARE:
        return Verdict(STOP, ("the clamp is no longer held against the press force",))
    if old is None or new is None:
        return Verdict()
    if key.sort == "mark":
        return _marks(old.text, new.text)
    moved = per_cent(old.text, new.text)
    why = []
    unit = new.text.partition(" (")[0].rpartition(" ")[2]
    if moved is not None and abs(moved) > MOST_MOVED and (key.sort == "setting" or unit in _FORCE_UNITS):
        why.append(_MOVED)
    if key.part == _SHARE and _first(new.text) > 100 >= _first(old.text):
        why.append("the clamp is above the press force")
    return Verdict(STOP if why else LOOK, tuple(why), moved)


def _marks(old: str, new: str) -> Verdict:
    """By the last mark and the one never to pass: those before them are rounded too coarsely to tell."""
    pairs = list(zip(old.split(", ")[-2:], new.split(", ")[-2:]))
    moves = [moved for pair in pairs if (moved := per_cent(*pair)) is not None]
    most = max(moves, key=abs, default=None)
    over = most is not None and abs(most) > MOST_MOVED
    return Verdict(STOP if over else LOOK, (_MOVED,) if over else (), moves[0] if moves else None)


def _passes(old: str, new: str) -> Verdict:
    moves = [moved for pair in zip(old.split(", "), new.split(", ")) if (moved := per_cent(*pair)) is not None]
    most = max(moves, key=abs, default=None)
    over = most is not None and abs(most) > MOST_MOVED
    return Verdict(STOP if over else LOOK, (_MOVED,) if over else (), most)


def _first(text: str) -> float:
    match = _NUMBER.search(text)
    return float(match[0].replace(",", "")) if match else 0.0


def _spec(part: str, old: str, new: str) -> str | None:
    if part == "fastener":
        return "another thread, grade or surface"
    if part == "kind":
        return "another kind of figure"
    if part != "condition":
        return None
    surfaces, warmth = ([sorted(word.lower() for word in words.findall(text)) for text in (old, new)] for words in (_SURFACE_WORDS, _WARMTH))
    return "another surface condition" if surfaces[0] != surfaces[1] else "read hot and not cold, or cold and not hot" if warmth[0] != warmth[1] else None


def _caution(old: Fact | None, new: Fact | None) -> str | None:
    if new is None:
        return "a caution is gone"
    if old is None:
        return None
    before, after = (SIGNAL_WORDS.index(word) if (word := fact.text.partition(",")[0]) in SIGNAL_WORDS else -1 for fact in (old, new))
    return "a signal word is lowered" if after > before >= 0 else None
