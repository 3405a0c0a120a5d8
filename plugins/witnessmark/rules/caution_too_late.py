"""A caution is read before the hand moves: it stands at the first step that does the dangerous thing, above its words.

right:
    - id: press-hub
      do: Press to the first mark.
      acts: [{press: hub}]
      cautions: [HZ-02]
wrong:
    - id: press-hub
      do: Press to the first mark.
      acts: [{press: hub}]
    - id: press-on
      do: Press to the last mark.
      acts: [{press: hub}]
      cautions: [HZ-02]         # the hub was already under load
"""

import re
from typing import Iterator

from ..core.book import Book
from ..core.finding import WARNING, Finding
from ..core.procedure import Procedure

ID = "caution-too-late"
_WORDS = ("danger", "warning", "caution", "notice")
_TYPED = re.compile(r"\b(DANGER|WARNING|CAUTION|NOTICE)\b|(?:^|[.!] )(Danger|Warning|Caution|Notice)[:!]")


def check(book: Book, derived) -> Iterator[Finding]:
    for procedure in book.procedures.values():
        yield from _after_its_act(book, procedure)
        words = book.words[procedure.machine, procedure.id]
        for step in procedure.steps if any(word in words for word in _WORDS) else ():
            for sentence in step.sentences():
                if match := _TYPED.search(sentence.text):
                    yield Finding(sentence.place, ID, f"'{match[0].lstrip('.! ')}' is typed inside the step '{step.id}', where it is read too late",
                                  "define it in site_data/cautions.yaml and name it under 'cautions:'")


def _after_its_act(book: Book, procedure: Procedure) -> Iterator[Finding]:
    first: dict[tuple[str, str | None], object] = {}
    warned = set(procedure.cautions)
    for step in procedure.steps:
        for act in step.acts:
            earlier = first.setdefault((act.verb, act.thing), step)
            for name in step.cautions:
                if name in warned or earlier is step or name not in book.cautions or book.cautions[name].word == "NOTICE":
                    continue
                yield Finding(step.key_places.get("cautions", step.place), ID,
                              f"{name} is first named here, but '{earlier.id}' does the same ({act}) before it",
                              f"name {name} at '{earlier.id}' too", WARNING)
        warned.update(step.cautions)
