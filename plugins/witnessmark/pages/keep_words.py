"""The words about keeping a machine on a phone. SCRIPT are those that a script says, {} filled in by it."""

BOOK_OF = "This book is of {}."
NO_DATE = "This book names no date."
KEEP = "Keep this machine on this phone"
STICK = "This copy reads and searches from a stick. Ticks, readings and installing are not promised here: use the printed sheets."
AWAY_TITLE = "Not on this phone"
AWAY = "There is no network, and this page is not kept on this phone. Go back, and keep its machine when there is a network."

SCRIPT = {
    "keep": "Keep this machine on this phone ({})", "keeping": "{} of {}", "kept": "Kept on this phone: the book of {}, fetched {}.", "no date": "no date",
    "today": "today", "yesterday": "yesterday", "days": "{} days ago", "on": "on {}, by the clock of then",
    "holds": "Kept are its pages, bench views, sheets and single leaves, the whole search, and what old sheets are asked by. Not kept are PDF files, other machines and the book's data for programs: print from the pages.",
    "remove": "Remove it from this phone (marks stay)", "removed": "Removed. Marks are still here.",
    "cannot": "This browser cannot keep pages here: print the sheets you need, or use a copy on a stick.",
    "away": "There is no network now. Nothing was changed.", "no room": "There is no room for it on this phone. Nothing was changed.",
    "not whole": "The book on the server is not complete, or was changed while it was fetched. Nothing of it was taken; try again later.",
    "still": "You still read the book of {}.",
    "news": "A newer book, of {}, is on this phone, whole. The pages you read are still of {}.", "same date": "A changed book, of the same date {}, is on this phone, whole.",
    "use": "Use the newer book now", "in a step": "Somebody is in the middle of a step in another window. Finish it there first.",
    "busy": "Another window is fetching it already.",
}
