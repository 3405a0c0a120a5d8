"""The words on paper: sheets, press cards, leaves to fill by pen. Part of words.py, which hands them on."""

SHEET_CODE = "Sheet code"
SHEET_SERIAL = "Serial"
SHEET_PLACE = "Side"
SHEET_DATE = "Date"
SHEET_COPY = "Copy"
SHEET_COPY_OF = "of"
SHEET_RECORD = "(copy 1 is the record)"
SHEET_SOURCES = "sources of {date}"
SHEET_SOURCES_OPEN = "sources changed and not yet dated"
SHEET_DONE = "Done by"
SHEET_CHECKED = "Checked by"
SHEET_END = "End of checklist"
SHEET_LEFT = "left loose"
SHEET_NOTHING_LEFT = "nothing left loose"
SHEET_SKIPPED = "Steps not for this variant"
SHEET_VALUE = "found"
SHEET_OFFER = "One sheet for each variant. Measure or read the serial first; a sheet is true for its own variant only."
SHEET_PRINT = "Prints on A4 or Letter, black on white."
SHEET_ASK = "Does this sheet still hold?"
SHEET_ASK_SCAN = "Scan this, or open {address} and type the code"
SHEET_ASK_TYPE = "Open the page s/ of this book and type the code"
SHEET_FIRST_SIDE = "On the second side's sheet: what the first side gave"
SHEET_COPIED = "Copied from sheet copy"
SHEET_STILL = "Still open, as when you started"
SHEET_DIFFERENT = "What I did differently"
SHEET_COUNT = "Every tool of this sheet is back in its place."
SHEET_LEGEND = "What the words mean"
SHEET_FOR_STEPS = "For steps {first} to {last}"
SHEET_FOR_TWO = "For steps {first} and {last}"
INITIALS = "Initials"
WORKED_BY = "done by"
TIGHTEN_ORDER = "In this order"
PASS = "Pass"
PASS_LAST = "Last"



def for_steps(numbers: list[int]) -> str:
    """Which steps a caution's box is for, where it stands before several."""
    if len(numbers) < 2:
        return ""
    return (SHEET_FOR_TWO if len(numbers) == 2 else SHEET_FOR_STEPS).format(first=numbers[0], last=numbers[-1])


STOP_CARD = "Read your nameplate and gauge. If one differs, STOP: these marks are not yours."
RAM_AREA = "Ram area"
RAM_BORE = "Ram bore"
STOP_NUMBER = "Stop"
SHARE_OF_TARGET = "of target"
NEEDLE_AT = "Needle at"
ADVANCE = "Advance"
NEVER_BAND = "The needle never enters the black band"
DIAL_SHOWS = "A dial of 0 to {full}. The needle stops at {stops}. From {never} on the rim is black: the needle never goes there."
DIAL_SHOWS_NEVER = "A dial of 0 to {full}. From {never} on the rim is black: the needle never goes there."
DIAL_EMPTY = "An empty dial, to draw the needle marks by pen."
OTHER_PRESS = ("On any other press use no mark of this sheet: take the blank press card of this procedure, and work its marks from the force.")
NO_STOPS = "no stops before it"
EMPTY_CARD = "Press not in the book"
EMPTY_CARD_SAYS = ("Work the marks for your own press and gauge from the force below, each rounded down to a division. "
                   "Never use the marks of another press.")
PRESS = "Press"
GAUGE = "Gauge"
ACCURACY_SHORT = "Accuracy"
WORKED_OUT_BY = "Worked out by"

BINDER = "Binder"
EVERY_VARIANT = "every variant"
BINDER_ALL = "The sheets of every variant are in here: take out those of your serial. A sheet is true for its own variant only."
CONTENTS = "Contents"
SHEET_NAME = "What"
PAGES_OF = "Pages"


def pages(number: int) -> str:
    return "1 page" if number == 1 else f"{number} pages"


FRONT = "The book"
NAMES = "Who"
MEASURED = "measured"
NIGHT = "The night before"
NIGHT_DONE = "Done and shut before tomorrow"
NIGHT_MEASURE = "Read and measure, before anything is pressed or ordered"
PRESS_LEAF = "Press card"
TORQUE_LEAF = "Torque card"
TORQUE_CHECK = "Wrench checked on, by, and reading low or high by:"
HAND_OVER = "Hand-over record"
HAND_OVER_SAYS = "Copied from copy 1 of each sheet when the work is done. It goes with the machine; a copy stays in the shop."
HAND_OVER_LOOSE = "Left loose and tied up again"
HAND_OVER_CHANGED = "Figures changed: tick what the work was done by, or was looked at again for"
HAND_OVER_SINCE = "Changed since this was printed:"
SHEET_COPY_USED = "code on the sheet used, if another"
FATE_WAS = "what became of it"
HANDED_BY = "Handed over by"
TAKEN_BY = "Taken over by"
LEAVES_TOO = "Single leaves"
LEAVES_ALL = "All of them"
LEAVES_PRINT = "Choose a leaf to see and print it alone; all of them print one after the other, each on pages of its own."
DOWNLOAD = "PDF"
SLIP = "Correction slip"
SLIP_SAYS = ("For a figure or a step that is wrong. Fill in what you know and hand it to whoever keeps the book: it becomes a dated correction. "
             "Typed in as it stands, a colon after each heading, witnessmark correct reads it.")
#: What stands beside a heading of the slip, and how many lines it has; core/correction_text.py says which headings there are.
SLIP_HELP = {
    "Procedure": ("as the sheet calls it", 1), "Case": ("which version, hub or side", 1), "Spec": ("which figure or step, as the sheet calls it", 1),
    "Printed figure": ("what the sheet says", 1), "New figure and unit": ("as measured, or as printed in the source", 1), "Condition": ("oiled, dry, cold, hot", 1),
    "Source and page, or how measured": ("", 2), "Serial": ("of the machine it was found on", 1), "What happened": ("", 3), "Sheet code on the paper": ("at the head of the sheet", 1),
    "By whom": ("a role will do, and the day", 1)}
FORM = "Procedure form"
FORM_SAYS = ("To write a procedure by hand. The headings are those of its source, so that whoever types it in has nothing to ask. "
             "Write none where nothing is needed, and NOT KNOWN where nobody knows.")
FORM_FIELDS = (
    ("title", "a verb first: press, fit, set", 1), ("machine", "", 1), ("assembly", "", 1), ("applies to", "which variants, or all", 1), ("summary", "", 2), ("after", "what is done first", 1),
    ("must be shut", "what others left loose", 1), ("each", "side, box, pin, or none", 1), ("people", "how many", 1), ("skill", "", 1), ("time", "with its unit", 1),
    ("tried", "serial and date, or desk", 1), ("conditions", "what must be so before the first step", 2), ("cautions", "by their names in the legend", 1),
    ("needs: presses", "with gauge", 1), ("needs: tools", "", 3), ("needs: supplies", "", 2), ("needs: parts", "how many, and reuse, reclaim, renew or make", 3),
    *((f"specs {number}", "label; kind; condition; aim for, between, never more than; figure with unit; source and page", 2) for number in range(1, 7)),
    ("computed", "what is to be worked out, and from which figures", 2),
    *((f"steps {number}", "do; check; if outside; cautions; what is written down; hold point; leaves loose; closes", 3) for number in range(1, 13)),
    ("notes", "questions answered, signs of trouble and what lies behind them", 3), ("was", "names it had before", 1))
