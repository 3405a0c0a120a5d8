"""A step is one action with one box to tick: two behind one tick, and one is forgotten.

right:
    - {id: read-nut, do: Read the nut again with the same crowfoot.}
    - {id: bend-tab, do: Bend the tab washer.}
wrong:
    - {id: lock-nut, do: "Read the nut again with the same crowfoot, then bend the tab washer."}
"""

import re
from typing import Iterator

from ..core.book import Book
from ..core.finding import WARNING, Finding

ID = "one-action-a-step"
# "Then" before one of these goes on with the same action: "read the floor, then the four marks".
_SAME = r"(?!(?:the|a|an|its|each|every|all|to|at|by|in|on|with|from|left|right|back|again|only|wait)\b)"
_THEN = re.compile(rf"(?:,|;| and|\.) then (?P<verb>{_SAME}[a-z][\w-]*)", re.IGNORECASE)
#: What a shop does with its hands. A second sentence that begins with one of them is a second action.
_VERBS = frozenset(
    "adjust align apply assemble bend bleed bolt bring check clamp clean close compare confirm connect cool cut degrease "
    "disconnect drain draw drill drive fill fit grease grind heat hang hold hone install lap lay leave level lift lock "
    "loosen lower lubricate make mark measure mount move oil open paint pour press prove pull pump push raise read record "
    "release remove renew replace reset rig rinse roll screw seal seat secure set shim slacken slide slip solder start stop "
    "strip tag tap test tie tighten torque turn undo unscrew wash weigh weld wind wipe wire withdraw wrap".split())


def check(book: Book, derived) -> Iterator[Finding]:
    for procedure in book.procedures.values():
        for step in procedure.steps:
            text = step.do.text
            second = _second_action(text) if "hen " in text or ". " in text or "! " in text else None
            if second:
                yield Finding(step.do.place, ID, f"the step '{step.id}' has a second action, '{second}'",
                              "make it a step of its own, so that each has its own box", WARNING)


def _second_action(text: str) -> str | None:
    if "hen " in text and (match := _THEN.search(text)):
        return match["verb"].lower()
    if ". " not in text and "! " not in text:
        return None
    first, *later = (sentence.split() for sentence in re.split(r"(?<=[.!]) +(?=[A-Z])", text))
    if first and first[0].strip(",").lower() in _VERBS:
        for words in later:
            if words and words[0].strip(",.").lower() in _VERBS:
                return words[0].strip(",.").lower()
    return None
