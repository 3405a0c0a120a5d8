"""The words of the plan: what comes next, what is left loose, what is needed. Part of words.py, which hands them on."""

OPEN_AT_START = "Open when you start this"
NOTHING_AT_START = "Nothing that comes before leaves anything loose."
MAYBE_AT_START = "May be open too, if it has been begun"
MAYBE_MORE = "More may be open: see the ledger."
OPEN_AT_STOP = "Open when you stop"
NOTHING_AT_STOP = "Nothing is left loose."
LEFT_HERE = "left here"
LEFT_IN = "left in"
UNLESS = "unless it is tied up already in"
IN_LEDGER = "The whole ledger"
PRINT_TAGS = "Print the tags"
STARTS_UP = "This procedure runs the machine. First put your hand on each of these: it must be shut."
HANDS_OVER = "This procedure hands the machine over. Nothing may be left loose: besides what must be shut before you start, each of these is shut before you sign."
BEFORE_STEP = "before step"
SHUT_IN = "shut in"
BESIDE = "May go side by side with"
BESIDE_MORE = "and {count} more"


def and_places(places: list[str]) -> str:
    return " and ".join(places) if len(places) < 3 else ", ".join(places)


FIRST_OF_ALL = "nothing before it"
ORDER = "The order of the work"
ORDER_SAYS = ("Each box is a procedure, in an order for one pair of hands. A wire on the left leads from a procedure to those that wait for it. "
              "A line on the right is something left loose: it begins where it is left, with a ring, and ends where it is shut, with a block.")
ORDER_LEFT_OUT = "{count} more are left out of the drawing; they are in the ledger."
SPANS = "What the lines on the right are"
LONE = "For one pair of hands"
LONE_SAYS = ("Of all that is free to begin, first what ties up most of what is loose, then what the longest chain of work waits for, "
             "then by name. Any order that keeps the wires is as good.")
WHY_HERE = {"only": "nothing else is free yet", "ties": "it ties up most of what is loose", "chain": "the longest chain of work waits for it",
            "name": "by name, among several as good"}
TIES_UP = "ties up"
STAGES = "Side by side"
STAGES_SAYS = "For more hands: those of one line may go side by side once all lines above are done."
PLAN = "The whole work"


def after_rows(rows: list[int]) -> str:
    return f"after {', '.join(map(str, rows[:-1]))} and {rows[-1]}" if len(rows) > 1 else f"after {rows[0]}"

LEDGER = "Left loose: the ledger"
LEDGER_SAYS = "All that is left unfinished on purpose, and the step that shuts each. Every one is shut before the machine is handed over in:"
LEDGER_NONE = "Nothing is ever left loose on this machine."
AGAIN_OPEN = "Opens again what was shut"
ALL_LEFT = "All that is left loose"
NOW = "What is open now?"
NOW_SAYS = "Choose the variant and tick what is done. Ticking a procedure ticks all that must come before it. The ticks stay on this device only."
NOW_VARIANT = "Variant"
NOW_DONE = "Done"
NOW_COUNT = "{} to shut"
NOW_NONE = "Nothing is open."
NOW_NEVER = "Never now"
LEFT_AT = "Left in"
SHUT_AT = "Shut in"
WHERE = "Where"
TAGS = "Tags to print, cut and hang"
TAGS_SAYS = "Print on card, cut along the lines, punch the ring and tie each tag to what it names. It comes off when the loose end is shut."
TAG_HEAD = "LEFT LOOSE"
TAG_NEVER = "NEVER WHILE THIS HANGS"
TAG_TIED = "Tied on"
TAG_BY = "By"

ROLL = {"wrench": "Torque wrenches and what they are set to", "scale": "Scales and testers", "made": "Tools the shop makes", "tool": "Other tools",
        "supply": "Supplies", "part": "Parts", "one-use": "Use once, never refit"}
ROLL_TITLE = "What the whole work needs"
ROLL_LESS = "Only for"
ROLL_SAYS = "Everything the procedures ask for, each thing once. Tick what lies ready; the rest is the shopping list."
USED_FOR = "For"
DRAWING = "Drawing"
COUNTED = {"out": "counted out", "in": "counted in again", "out and in": "counted out and in again"}
COUNT_OUT = "count out"
COUNT_IN = "Count in again"
COUNTED_OUT_IN = "counted out in"
COMES_BACK = "comes back in"

CONFLICTS = "Where sources disagree"
CONFLICTS_SAYS = "Each figure on which authorities differ: every side kept, which one the sheets print, and why."
REAL = {True: "Both cannot be right.", False: "Both can be right: one of them left out its condition."}
HOLDS = "Where work stops until it is inspected"
HOLDS_SAYS = "Nobody goes on past one of these until it is so. A second person looks; who works alone goes away, comes back and looks again, and writes down when."
ALONE = "Alone: look again after a break, and write down when."
AGAIN = "or alone, again at"
NOTE_KINDS = {"open decision": "Open decisions", "on trial": "On trial", "symptom": "Symptoms", "answered question": "Answered questions"}
NOTES_SAYS = "What is not settled, what is being tried, what goes wrong and where to look, what has been asked before."
IN_ORDER = "Causes, the likeliest first"

WHICH = "Which figures are yours"
WHICH_ALL = "Every variant stands beside the others. Not sure which you have? Find out first, and work to none of them until you know."
WHICH_PART = "goes by the part in your hand, not by the serial of the machine; told by"
MEASURED_IN = "Found out in"
CHOOSE = "Mark the part you have, one ring a line"
MEASURES_PART = "This tells which you have"
