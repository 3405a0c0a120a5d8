"""The words of the bench view that a reader sees; SCRIPT are those that its scripts say, {} filled in by them."""

NOT_KEPT = "The steps stand below, one after another, for all variants: without script this page picks none and keeps no marks."
WHY = "Why, and whose figure"
CORRECT = "Something wrong here? Correct it"
STEPS = "Steps"
NEXT = "Next"
PREVIOUS = "Back"
END_TITLE = "After the last step"

SCRIPT = {
    "serial label": "Serial on the plate", "place label": "Which {}", "part": "{}: as fitted", "own": "its own",
    "serial": "Serial {}", "no serial": "Serial not given", "unknown serial": "Serial {} stands in no range of this book: all variants are shown.",
    "not for": "{} is a {}: this procedure is not for it.", "for": "{}, {}",
    "awake label": "Keep the screen on", "awake": "The screen stays on while this page is in front.", "awake off": "The screen may go dark again.",
    "awake lost": "The screen may go dark: the browser ended it. Tap again to ask anew.",
    "no awake": "This browser cannot keep the screen on. Set a longer time in the phone's own settings.",
    "awake refused": "The browser refused, often because the battery is low. The screen may go dark.",
    "broken": "Something in this page's script failed. All steps stand below as plain text; marks made before are kept.",
    "ask serial": "Give the serial first: marks are kept under it.", "ask place": "Say which {} first: marks are kept under it.",
    "done": "Done", "held": "Inspected", "second": "Checked by a second person", "not done": "not done", "not read": "not written down",
    "note": "Note", "note label": "A note at this step", "unit": "Unit", "and": "and",
    "old": "Done under an older figure", "old words": "the step as it was on sheet {}", "is now": "Is now", "see step": "as it stands above",
    "other part": "Done with another part fitted", "own parts": "its own parts",
    "already fine": "Work already done: fine as it is.", "already inspect": "Work already done: inspect it.", "already redo": "Work already done: do it again.",
    "answer fine": "Looked at: it may stay", "answer redone": "Done again by the figure of today",
    "inside": "Inside", "above": "OUTSIDE, over", "below": "OUTSIDE, under", "outside": "Stop here and find out why.", "no number": "This is no number: write 0.008, 5/8 or 1-1/2",
    "outside count": "Readings outside or unclear: {}",
    "two values": "{} values for one reading: measure again",
    "follows": "From these readings", "reckoned with": "Worked out with", "refused": "REFUSED", "instead": "Instead",
    "stopped": "You stopped here", "step": "step {}", "loose now": "Loose now", "loose count": "{} loose", "nothing loose": "Nothing is loose.",
    "never": "Never while open", "open steps": "{} steps not done", "all done": "All steps are done.", "save now": "Before you leave this side, save the marks",
    "go to side": "Go to the {}", "record": "Hand-over record", "copy": "Copy the record", "copied": "Copied.", "copy by hand": "It is marked: copy it by hand.",
    "print": "Print the record", "sheet code": "Sheet code {}", "steps gone": "Marks of steps that are no longer in this procedure:",
    "transfer": "Marks of this machine", "save": "Save all marks to a file", "load": "Load marks from a file (nothing is lost: both are joined)",
    "never saved": "Never saved to a file from this phone.", "saved today": "Last saved today.", "saved days": "Last saved {} days ago.", "saved on": "Last saved on {}, by the clock of then.",
    "no file of marks": "This is no file of marks of this book.", "joined": "{} marks were new and are added.",
    "not kept": "This browser keeps nothing here: marks are lost when the page is closed. Use the printed sheet, or save to a file before you leave.",
    "may forget": "The browser has not promised to keep these marks: it may clear them when space is short or after days without a visit. Save them to a file.",
    "paper": "Type a printed sheet in", "paper code": "Sheet code on the paper", "paper date": "Date on the paper", "paper keep": "Keep what is typed",
    "paper no code": "A sheet code has eight signs, such as 0K7M-29QX.", "paper no date": "Give the date on the paper.",
    "paper kept": "{} marks kept under sheet {}.", "paper old": "{} marks kept. Sheet {} is not the one that holds now: each step asks whether its work may stay.",
}
