"""The words of the page that is asked by a sheet's code; SCRIPT are those that its script says, {} filled in by it."""

TITLE = "Is this sheet still true?"
SAYS = "A printed checklist bears a sheet code, such as 0K7M-29QX, at its head. Scan it or type it: this page says what has changed since."
CODE = "Sheet code"
ASK = "Ask"
BY_HAND = "Without script this page cannot ask. Do it by hand:"
STEPS = ("Find the procedure in the book and open its checklist for your variant.",
         "Compare the sheet code at its head with the one on your paper. The same code: nothing that is acted on has changed in this book.",
         "Another code: your paper is superseded. Work by the new sheet, and read under Corrections what it means for work already done.",
         "No such procedure: your paper may be newer than this book, or from another one. Do not work by it until you know.")
BOOK = "To the book"

SCRIPT = {
    "title": TITLE, "reading": "Looking …",
    "no code": "That is no sheet code. It has eight letters and figures, such as 0K7M-29QX.",
    "same": "Not changed in the book of {}, which this phone last fetched {}.",
    "no date": "a day its sources do not name",
    "later": "A later book may say otherwise. With signal, ask again.",
    "unknown": "Unknown here: this sheet may be newer than this phone.",
    "unknown more": "Or the code was misread, or the sheet is from another book. This phone last fetched its book, of {}, {}. With signal, ask again; until you know, do not take the sheet for true.",
    "unread": "This phone could not read what it was asked: it may never have fetched it.",
    "unread more": "Ask again where there is signal. Until then do not take the sheet for true.",
    "superseded": "SUPERSEDED. Do not work by this sheet.",
    "gone": "GONE. The book has no such sheet any more. Do not work by it.",
    "whose": "{}, {}: sheet {} of {}.", "whose undated": "{}, {}: sheet {}.",
    "now": "The sheet that holds now", "now code": "{}, sheet code {}", "page": "The procedure",
    "already done": {"fine": "Work already done by this sheet: fine as it is.", "inspect": "Work already done by this sheet: INSPECT IT.",
                     "redo": "Work already done by this sheet: DO IT AGAIN."},
    "changes": "What has changed on it", "was": "Was", "is": "Is now", "was not": "not on the old sheet", "is not": "no longer on the sheet",
    "grave": "STOP: grave", "per cent": "{} %", "why": "Why: ",
    "left out": "And {} more that are not listed here. Work by the new sheet alone.",
    "not kept": "What stood on this old sheet is no longer kept, so the changes cannot be listed. Compare it line by line with the sheet that holds now.",
    "corrections": "Why, and what it means", "correction": "{}, {}", "reason": "Why", "evidence": "Evidence", "touches": "It touches",
    "done": {"fine": "Work already done: fine as it is.", "inspect": "Work already done: inspect it.", "redo": "Work already done: do it again."},
    "today": "today", "yesterday": "yesterday", "days": "{} days ago", "never": "at a time it did not note", "stick": "when this copy for a stick was made",
    "clock": "after the day this phone's clock now shows: set its clock",
}
