"""The words of the pages on which a figure is corrected, and of the plain text that goes to the maintainer.

`witnessmark correct` reads that text back: core/correction_text.py holds the names of its lines."""

TITLE = "Correct a figure"
SAYS = ("You need no git for this. Tell what you found, and whoever keeps this book changes the line. Where you have an account on the "
        "book's forge, you may change it yourself.")
PRINTED = "The page prints"
LINE = "It stands in"
EDIT = "Open the line in the editor"
EDIT_FILE = "Open the file in the editor"
SEE = "See the line"
ISSUE = "Write to the maintainer on the forge"
SHOP = "Presses, gauges, wrenches, surfaces and materials"
OF_SHOP = "The shop's own data"
WORKED = "This is worked out from what stands here. Correct the one that is wrong."
RESTS = "It rests on"
OF_RESULT = "Correct this"
MOVES = "What it moves"
IN_ALL = "{} figures and results in all"
MOVES_NONE = "Nothing else in the book rests on it."
SHEETS = "Printed sheets of this procedure that go stale with it"
CARD, SETTING, VERSIONS = "the marks of its press card", "its wrench setting", "which figures and sheets are for which machine"
WITHDRAW = "In doubt? Withdraw it first"
WITHDRAW_SAYS = ("A figure can be withdrawn before anyone knows the right one: put this line under it, at the same depth, and save. "
                 "The book then prints DO NOT USE in its place, and everything that rests on it refuses.")
WITHDRAW_LINE = "in doubt: Tell here in a sentence what speaks against it."
ELSE = "Something else on this page"
ELSE_SAYS = "A step, a caution, a word, a picture."
QUESTIONS = "What matters"
NO_SCRIPT = "Without script this page fills in no form. Answer these on the correction slip or on any paper, and give it to whoever keeps the book:"
BACK = "Back to the page"
NO_FORGE = "This book names no forge. Fill in the form and send it as plain text."

SCRIPT = {
    "fill": "Fill in the form", "close": "Put the form away",
    "kept": "Kept on this phone as you type.", "not kept": "This browser keeps nothing. Copy the text before you leave.",
    "plain": "The same as plain text", "copy": "Copy the text", "copied": "Copied.", "no copy": "This browser does not copy. Mark the text and copy it by hand.",
    "share": "Send it by another app", "mail": "Send it by mail", "issue": ISSUE, "too long": "The text is too long for the forge's form: copy it there by hand.",
    "list": "Corrections kept on this phone", "list says": "Not sent, as far as this phone knows. Remove what you have sent.",
    "remove": "Remove it", "really": "Tap again to remove it for good", "open": "Open", "subject": "Correction: {}",
}
