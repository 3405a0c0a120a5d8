"""What changed on the shop's shelves and in the machines: presses, gauges, surfaces, cautions, variants."""

from collections.abc import Callable, Iterator
from dataclasses import fields, is_dataclass, replace

from ..core.acted import Fact, Key
from ..core.authority import Caution
from ..core.machine import Machine
from ..core.place import Place
from ..core.quantity import Quantity
from ..core.sentence import Sentence
from ..core.thread import Thread
from ..core.variation import Serials
from .change import Change
from .judge import judged, per_cent
from .side import Side
from .told_words import Said, severity
from .words import LOOK, STOP, WORDING

_SHELVES = {"presses": "press", "wrenches": "wrench", "adapters": "adapter", "scales": "scale", "surfaces": "surface",
            "materials": "material", "shim_stocks": "shim stock", "made_tools": "made tool", "cautions": "caution",
            "conflicts": "conflict", "sources": "source", "machines": "machine"}
_GONE = {"cautions": "a caution is gone", "sources": "a source is gone", "presses": "press or gauge data changed", "surfaces": "a surface changed"}
_GRAVE = {"presses": "press or gauge data changed", "surfaces": "a surface changed"}
_WORDS = ("title", "summary", "weight", "edition", "drawing")
_ELSEWHERE = ("figures", "place", "id", "was")


def shelf_changes(old: Side, new: Side, why: Callable[..., tuple[str, ...]]) -> Iterator[Change]:
    """Every key of every record that differs, one change each. `why` gives the corrections about things of these ids; for what
    is gone those about a machine, since its own id means nothing any more."""
    of_machines = why(*new.book.machines)
    for shelf, called in _SHELVES.items():
        before, after = getattr(old.book, shelf), getattr(new.book, shelf)
        if shelf == "machines":
            before = {new.book.machine_of(name): machine for name, machine in before.items()}
        for name in dict.fromkeys((*before, *after)):
            if before.get(name) != after.get(name):
                corrections = why(name) if name in after else of_machines
                yield from (replace(each, corrections=corrections) for each in _record(shelf, f"{called} {name}", before.get(name), after.get(name)))


def _record(shelf: str, called: str, before, after) -> Iterator[Change]:
    one, other = (dict(_flat(each)) if each else {} for each in (before, after))
    place = str(after.place) if after else ""
    if before is None or after is None:
        gone = before is not None
        reason = _GONE.get(shelf) if gone else None
        title = _title(before or after)
        yield Change(STOP if reason else LOOK, "shelf", "", "", called, called, "", title if gone else None, None if gone else title,
                     reasons=(reason,) if reason else (), place=place)
        return
    for key in dict.fromkeys((*one, *other)):
        old, new = one.get(key), other.get(key)
        if _text(old) != _text(new):
            grave, reasons = _severity(shelf, key, old, new, isinstance(after, Machine))
            was, now = _text(old), _text(new)
            yield Change(grave, "shelf", "", "", called, f"{called}: {key}", "", was, now, reasons=reasons,
                         per_cent=per_cent(was, now) if was and now else None, place=place)


def _severity(shelf: str, key: str, old, new, machine: bool) -> tuple[str, tuple[str, ...]]:
    last = key.rpartition(": ")[2]
    if shelf == "cautions" and key == "word":
        verdict = judged(Key("caution", "", key), Fact(old), Fact(new))
        return verdict.severity, verdict.why
    if machine and last in ("serials", "measure"):
        return STOP, ("it is for other machines",)
    if shelf == "cautions" and last.startswith("avoid") and new is None:
        return STOP, ("a caution tells less to do",)
    if last == "source" and new is None:
        return STOP, ("a source is gone",)
    if last in _WORDS:
        return WORDING, ()
    if isinstance(old, Sentence) or isinstance(new, Sentence):
        said = tuple(Said(each, shelf == "cautions") if each else None for each in (old, new))
        return severity(*said), ()
    if shelf in _GRAVE and last != "checked" and "condition words" not in key:
        return STOP, (_GRAVE[shelf],)
    return LOOK, ()


def _flat(value, above: str = "") -> Iterator[tuple[str, object]]:
    """Each field of a record and of the records in it, by its name and those above it; nothing for a field that is empty."""
    for field in fields(value):
        if field.name in _ELSEWHERE or field.name == "key_places":
            continue
        name, held = field.name.replace("_", " "), getattr(value, field.name)
        name = f"{above}: {name}" if above else name
        if isinstance(held, dict):
            for key, entry in held.items():
                below = f"{name} {' '.join(key) if isinstance(key, tuple) else key}"
                if is_dataclass(entry) and not isinstance(entry, Quantity | Sentence | Thread | Serials):
                    yield below, _title(entry)
                    yield from _flat(entry, below)
                else:
                    yield below, entry
        elif isinstance(held, tuple) and held and isinstance(held[0], Sentence):
            yield from ((f"{name} {at}", each) for at, each in enumerate(held, 1))
        elif is_dataclass(held) and not isinstance(held, Quantity | Sentence | Thread | Serials | Place) and "place" not in {f.name for f in fields(held)}:
            yield from _flat(held, name)
        elif held not in (None, (), ""):
            yield name, held


def _title(record) -> str:
    return getattr(record, "title", "") or (record.hazard.text if isinstance(record, Caution) else "there")


def _text(value) -> str | None:
    match value:
        case None:
            return None
        case Quantity() | Sentence() | Thread():
            return value.text
        case bool():
            return "yes" if value else "no"
        case Place():
            return str(value)
        case tuple():
            return ", ".join(_text(each) or "" for each in value)
    if hasattr(value, "place"):
        return " ".join(str(_text(getattr(value, field.name)) or "") for field in fields(value) if field.name != "place").strip()
    return str(value)
