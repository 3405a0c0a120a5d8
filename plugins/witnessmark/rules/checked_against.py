"""A torque that was checked against a press force must be checked again when that force changes: until then it is
printed RE-CHECK and nothing may rest on it.

right:
    must not out-pull: press-force.target
    checked against: 15 long ton        # and the target is 15 long ton
wrong:
    must not out-pull: press-force.target
    checked against: 16.5 long ton      # the target was lowered to 15 long ton since
"""

from typing import Iterator

from ..core.book import Book
from ..core.figure import Spec
from ..core.finding import WARNING, Finding

ID = "checked-against"


def check(book: Book, derived) -> Iterator[Finding]:
    for (machine, procedure), result in derived.items():
        specs = book.procedures[machine, procedure].specs if procedure else book.machines[machine].figures
        checked = {spec.id: spec for spec in specs.values() if spec.checked_against is not None}
        for spec in checked.values():
            if spec.must_not_outpull is None:
                yield Finding(_place(spec), ID, f"'{spec.id}' was checked against a figure, but not said which",
                              "write 'must not out-pull:' and that figure, such as press-force.target")
        if checked:
            yield from _changed(book, machine, checked, result)


def _changed(book: Book, machine: str, checked: dict[str, Spec], result) -> Iterator[Finding]:
    said: dict[tuple[str, str], dict[str, None]] = {}
    for (combination, spec_id), resolved in result.resolved.items():
        why = next((each.recheck for each in resolved if each.recheck), None) if spec_id in checked else None
        if why:
            said.setdefault((spec_id, why), {})[dict(combination)[book.machines[machine].main.id]] = None
    for (spec_id, why), variants in said.items():
        yield Finding(_place(checked[spec_id]), ID, f"RE-CHECK '{spec_id}' of {', '.join(variants)}: it {why}",
                      "check it again, then write the new figure under 'checked against'", WARNING)


def _place(spec: Spec):
    return spec.key_places.get("checked against", spec.place)
