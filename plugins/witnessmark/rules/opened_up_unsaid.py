"""What a step opens up stays open when the hand leaves it: the same step leaves a loose end, closed by name later on.

right:
    - id: guard
      do: Take off the guard.
      opens up: [guard]
      leaves:
        - id: guard-off
          ...
wrong:
    - id: guard
      do: Take off the guard.
      opens up: [guard]           # and nobody is told to put it back
"""

from typing import Iterator

from ..core.book import Book
from ..core.finding import Finding

ID = "opened-up-unsaid"


def check(book: Book, derived) -> Iterator[Finding]:
    for procedure in book.procedures.values():
        for step in procedure.steps:
            if step.opens_up and not step.leaves:
                yield Finding(step.key_places.get("opens up", step.place), ID,
                              f"'{step.id}' opens up {', '.join(step.opens_up)} and leaves no loose end", "write under 'leaves:' how it is left, until a later step closes it")
