"""What comes of reading a source: its findings, and its groups of keys as records."""

from ..core.finding import Finding
from ..core.place import Place


class Report:
    """Gathers findings while a source is read."""

    def __init__(self) -> None:
        self.findings: list[Finding] = []
        self.not_whole: set[str] = set()          # names of what could not be read whole, and paths of such files

    def error(self, place: Place, rule: str, message: str, mend: str) -> None:
        self.findings.append(Finding(place, rule, message, mend))

    def add(self, other: "Report") -> None:
        """Takes over what was found while something else was read."""
        self.findings += other.findings
        self.not_whole |= other.not_whole


class Record(dict):
    """Values by key; `at(key)` is where the key stands, `place` where the record does.

    `whole` is False where something in it could not be read, `misspelt` has the keys that were meant by unknown ones."""

    __slots__ = ("place", "key_places", "whole", "misspelt")

    def read_from(self, place: Place, key_places: dict[str, Place], whole: bool = True, misspelt: frozenset[str] = frozenset()) -> "Record":
        self.place, self.key_places, self.whole, self.misspelt = place, key_places, whole, misspelt
        return self

    def at(self, key: str) -> Place:
        return self.key_places.get(key, self.place)
