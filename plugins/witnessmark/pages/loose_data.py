"""The loose ends of a machine as the bench view reads them: who leaves each, who ties it up, and where."""

from ..core.book import Book
from ..core.procedure import Step
from .prose import plain


def loose_data(book: Book, machine_id: str, meanings: dict[str, dict[str, dict[str, str]]]) -> list[dict]:
    """One entry for each loose end, in the order of the work. `meanings`: procedure -> step -> variant -> fingerprint."""
    ledger = book.ledgers[machine_id]
    found = []
    for left in ledger.left.values():
        ties = [tie for tie in ledger.ties[left.name] if ledger.follows(tie, left)]
        again = [there for name in left.end.again if (there := ledger.named(left.procedure, name))]     # open with it once more
        every = [left.end, *(there.end for there in again)]
        found.append({
            "id": left.end.id, "title": left.procedure.title, "state": " ".join(_words(end.state) for end in every),
            "if forgotten": " ".join(_words(end.if_forgotten) for end in every),
            "never": list(dict.fromkeys(str(act) for end in every for act in end.never_while_open)), "left": _step(left.procedure, left.step, meanings),
            "ties": [_step(tie.procedure, tie.step, meanings) for tie in ties],
            "need": {variant: list(ledger.to_close(left, ledger.ties_after(left, variant), variant)) for variant in ledger.variants(left)},
        })
    return found


def _step(procedure, step: Step, meanings) -> dict:
    return {"procedures": [procedure.id, *procedure.was], "steps": [step.id, *step.was], "at": step.at or "",
            "meaning": meanings.get(procedure.id, {}).get(step.id, {})}


def _words(sentence) -> str:
    return plain(sentence).striptags()
