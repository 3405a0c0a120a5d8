"""Every word of ours in a comparison, and in what is told about an old sheet."""

from collections.abc import Mapping

from ..core.acted import Key

#: What an aspect of a fact is called; what is not here is called by its own name.
PART = {
    "": "", "acted on": "numbers and figures in it", "specs": "figures used", "go to": "where to go then", "fastener": "thread, grade, surface",
    "opens up": "what it opens up", "records": "what is written down", "each": "at each", "serials": "serials", "people": "people needed",
    "after": "to be done first", "must be shut": "to be tied up first", "open at start": "open when you start", "to prove": "to be proved shut before it runs or is handed over",
    "how left": "numbers in how it was left", "measure": "the measure it is told by", "part to mark": "how the part is told", "defer": "when to leave it to others", "numbers": "numbers in its name", "conditions": "conditions", "acts": "what it sets going",
    "passes": "passes", "places": "places", "at radius": "radius", "refused": "refused", "closes": "what it ties up",
}
#: How a figure that is not worked to stands in a comparison.
STATE = {"struck": "struck through: ", "doubt": "DO NOT USE: ", "recheck": "RE-CHECK: ", "refused": "REFUSED: ", "": ""}
SORT = {"step": "step", "caution": "caution", "loose end": "left loose", "need": "needs", "formula": "formula of", "source": "source of", "spec": "",
        "words": "", "order": "order of the steps", "order of steps": "order of the steps"}
STOP, LOOK, WORDING, SAME = "stop", "look", "wording", "same"
HEADS = {STOP: "Stop and look before anyone works by this", LOOK: "To be looked at", WORDING: "Wording only", SAME: "Nothing has changed"}
CHANGES, MOVED, TOOL, SHEETS, FINDINGS, CORRECTIONS = (
    "What was changed", "What moves in consequence", "Moved by this version of the tool, not by the book", "Printed sheets that are superseded",
    "Findings", "Corrections that came with it")
NEW_SHEET, GONE_SHEET, NOTHING, MORE = "a new sheet", "no such sheet any more", "nothing", "more, not listed here: run the same comparison on your own machine"
SECOND_READER, ALL_ANSWERED = "needs a second reader", "Each stop has its correction: it needs a second reader, and may then be taken over"
PRINTED_ELSE = "The book prints something else now: it was changed since, or the text is of another book."
FIRST = "There is no book at {}: everything is new."
OLDER_FORMULA, NEWER_FORMULA = "worked out by an older formula", "worked out by another formula"
IF_DONE = "work already done"
ALL_SHEETS_HOLD = "Every printed sheet still holds."
RENAMED = "called otherwise"


def what(key: Key, names: Mapping[str, str]) -> str:
    """A fact's name in words; `names` has the labels of specs by id, of steps by `step` and id, of loose ends by `end` and id."""
    name = f"step {key.name}" if key.sort in ("step", "caution") else key.name
    called = names.get(name, key.name.rpartition("/")[2].replace("-", " "))
    part = PART.get(key.part, key.part)
    of = [each for each in key.of if each not in ("struck",) and not each.isdecimal()]
    match key.sort:
        case "figure":
            return ", ".join(filter(None, (called, part, *of)))
        case "mark" | "setting" | "result":
            return ", ".join(filter(None, (called, " ".join(of), part)))
        case "caution":
            return f"caution {key.part}" + (f" at the step “{called}”" if key.name else "")
        case "loose end":
            return f"{SORT['loose end']}: " + names.get(f"end {key.part}", key.part.replace("-", " "))
        case "need":
            return f"needs: {key.name} {key.part}" if key.name not in ("words", "part", "supply") else f"needs: {key.part}"
        case "sheet" | "order":
            return PART.get(key.part, key.part) or SORT[key.sort]
        case "step":
            return f"step “{called}”" + (f", {part}" if part else "")
    return ", ".join(filter(None, (f"{SORT.get(key.sort, key.sort)} {called}".strip(), part, *of)))
