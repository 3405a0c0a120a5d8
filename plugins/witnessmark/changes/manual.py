"""What the findings of a comparison and of a release mean, for `witnessmark explain`."""

from ..core.lesson import Lesson

MANUAL: dict[str, Lesson] = {
    "correction-missing": Lesson(
        "A figure that is worked to was changed: whoever has done the work already must learn why, and what to do about it.",
        "COR-4: {on: 2024-05-11, about: drum/press, ...}   # in site_data/corrections.yaml, with the change of drum/press",
        "a change of drum/press alone"),
    "edition-missing": Lesson(
        "The editions answer for paper: a sheet that was printed and is in none is unknown to every phone. Only 'witnessmark edition --check' looks for it.",
        "witnessmark edition, then the release", "a release whose sheets changed since the last edition"),
}
