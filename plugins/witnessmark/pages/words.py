"""Every word of our own that a reader sees. A translation is another file like this one."""

from .words_paper import *              # noqa: F403
from .words_plan import *               # noqa: F403

ROLE = {"target": "aim for", "window": "between", "floor": "not less than", "ceiling": "never more than",
        "reject": "reject", "stop": "stop at", "found": "found"}
STANDING = {"factory": "factory figure", "field": "field figure", "shop": "shop figure",
            "standard": "public standard", "computed": "computed here"}
IF_ALREADY_DONE = {"fine": "Work already done: fine as it is.", "inspect": "Work already done: inspect it.",
                   "redo": "Work already done: do it again."}
SIGNAL_LADDER = {"DANGER": "Someone will be killed or badly hurt.", "WARNING": "Someone could be killed or badly hurt.",
                 "CAUTION": "Someone could be hurt.", "NOTICE": "The machine can be damaged; nobody is hurt."}
NEED = {"presses": "Presses", "tools": "Tools", "supplies": "Supplies", "parts": "Parts"}

NOT_KNOWN = "NOT KNOWN, DO NOT GUESS"
DO_NOT_USE = "DO NOT USE"
RECHECK = "RE-CHECK, DO NOT USE"
RECHECK_WHY = "re-check"
STRUCK_ROLE = "once printed"
NO_FIGURE = "no figure for this case"
KEPT = "kept for the record, do not use"
SUPERSEDED = "superseded, do not use"
REFUSED = "REFUSED"
NONE = "None"
ALL = "all variants"
OWN = "with its own parts"

TRIED = "Tried on serial {serial}, {on}"
DESK = "Written at the desk, not yet tried on a machine"
ACCEPT_WORD = "accept"
FOR = "For"
SERIALS = "serials"
MEASURES = "measures"
TOLD_BY = "Told by"
PEOPLE = "People"
TIME = "Time"
SKILL = "Skill"
LEFT_RIGHT = "Left and right"
SERIAL_PLATE = "Serial plate"
DONE_FIRST = "Done first"
MUST_BE_SHUT = "Must be shut before you start"
BEFORE = "Before you start"
NEEDS = "What you need"
CAUTIONS = "Cautions"
SPECS = "Figures"
CARDS = "Press cards"
TORQUES = "Torques and wrench settings"
RESULTS = "Worked out here"
AMONG_FIGURES = "Its results stand among the figures; every step of them is shown under how it was worked out."
STEPS = "Steps"
LOOSE = "Left loose"
CORRECTIONS = "Corrections"
CORRECT = "Correct this"
CHANGED_SINCE = "changed since"
NOTES = "Notes"
BENCH = "At the bench"
CHECKLIST = "Checklist"
CHECKLISTS = "Print the checklist"
ON_THIS_PAGE = "On this page"
HOW_WORKED = "How it was worked out"
PROCEDURES = "Procedures"
VARIANTS = "Variants"
PLACES = "Places"
PRESSES = "Presses"
SOURCES = "Sources"
WORKINGS = "Workings"
MACHINE_FIGURES = "Figures of the machine"
DEFER = "What these pages give way to"
SEARCH = "How to search"
SEARCH_HELP = ("Type what you have in your hand or in your head: words of the job, a thread such as 3/4-16, a part number, "
               "a tool's name, or a figure with its unit such as 57 lbf·ft. Figures are found in either system of units.")

HAZARD = "Hazard"
CONSEQUENCE = "What happens"
AVOID = "How to avoid it"
CHECK = "Check"
IF_OUTSIDE = "If not"
ABOVE = "If over"
BELOW = "If under"
GO_TO = "go to"
STEP = "step"
OF = "of"
RECORD = "Write down"
HOLD = "STOP, INSPECT"
SECOND = "A second person checks this step."
SIGNED = "Inspected by"
ACTS = "This step does"
OPENS = "Opens up"
LEAVES = "Leaves loose"
CLOSES = "Closes"
CLOSED_IN = "closed in"
TAG = "Tag"
BECAUSE = "Because"
IF_FORGOTTEN = "If forgotten"
NEVER = "Never while open"
ONLY = "Only"
NOTE = "Note"
EACH = "each"
FOUND_BY = "To be found by"
IN_DOUBT = "In doubt"
CONFLICT = "Sources disagree"
PRINTED = "What is printed"
WHY = "Why"
WHEN = "when"
THREAD = "thread"
GRADE = "grade"
SURFACE = "surface"
AT_RADIUS = "at radius"
PASSES = "passes"
LIMITED = "Limited by"
TAKEN_FROM = "taken from"
OUTPULL = "Must not out-pull"
REVIEW = "review by"
CAUSES = "causes"
LEADS = "leads to"

MARKS = "Stop at"
NEVER_PASS = "Needle never past"
EXACT = "Exact reading"
UNCERTAIN = "The needle may be wrong by"
LAST_FORCE = "Force at the last mark"
SAME_FORCE = "The same force"
ACCEPT = "Accept the last reading"
STUD_TARGET = "Draw stud at the target"
STUD_CEILING = "Draw stud at the ceiling"
DONORS = "With a part from a donor"
CARD_NOTE = "For this press with this gauge only. Forces are press forces; marks are where the needle stands."
WOULD_DO = "Instead"
CASE = "Case"
TORQUE = "Torque"
WRENCH = "Wrench"
SETTING = "Set"
DELIVERS = "delivers"
CLAMP = "Clamp"
PROOF = "Share of proof (worst)"
PRESS_SHARE = "Worst share of press force"

ONE_USE = "use once, never refit"
FATE = {"reuse": "reuse", "reclaim": "reclaim", "renew": "renew", "make": "make", "one-use": "use once, never refit",
        "undecided": "not yet decided"}
OLD = "Was"
NEW = "Is now"
REASON = "Why"
EVIDENCE = "Evidence"
BY = "By"

RESTS = "What rests on it"
RESTS_NOTHING = "Nothing in this book rests on it."
KIND = "Kind"
EDITION = "Edition"
DATE = "Date"
WEIGHT = "How far it is trusted"
AREA = "Area"
BORE = "Bore"
ROD = "Rod"
SIDE = "Works on"
RATED_FORCE = "Rated force"
RATED_PRESSURE = "Rated pressure"
NAMEPLATE = "Source"
GAUGES = "Gauges"
FULL_SCALE = "Full scale"
DIVISION = "Division"
ACCURACY = "Accuracy (share of full scale)"
GAUGE_LIMIT = "Highest reading it may see"
CHECKED_ON = "Last checked"
DRAW_STUD = "Draw stud"
YIELD = "yield"
ENGAGEMENT = "engagement"
USED_IN = "Used in"
USED_NOWHERE = "No procedure uses it."
LADDER = "Signal words"
LEGEND = "Cautions and what the words mean"

FORMULA = "Formula"
ASSUMES = "What this rests on"
READ_FIRST = "Waits for a reading at the bench"
SEVERAL = "several, with commas between"
OUTSIDE_USUAL = "outside that"
EXAMPLE_DRAWN = "Drawn for the example below."
AT_A_TERMINAL = "At a terminal"
SIDES = {"down": "rounded down", "up": "rounded up", "inward": "rounded inward", "nearest": "to the nearest"}
INPUTS = "Inputs"
OUTPUTS = "Results"
USUAL = "usual"
OPTIONAL = "may be left out"
EXAMPLE = "Worked example"
PUBLISHED = "Published source"
GOES_WRONG = "What goes wrong"
REFUSES = "When it refuses"
RESULT = "Result"


def applies(names: str, every: bool) -> str:
    return f"{ALL} ({names})" if every else names


def only(names: list[str]) -> str:
    return f"for {' and '.join(names)} only" if len(names) < 3 else f"for {', '.join(names)} only"


def count_of(number: int, one: str, many: str) -> str:
    return f"{number} {one if number == 1 else many}"


def boxes(number: int) -> str:
    return count_of(number, "box", "boxes")


def either(names: list[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} or {names[-1]}"

NOTICE_FINDINGS = "This book has findings."
NOTICE_OLD = "What stands below, and every checklist, is from before them: do not print or work from it."
