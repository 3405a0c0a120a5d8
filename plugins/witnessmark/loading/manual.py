"""What each finding of reading means, for `witnessmark explain`: a right and a wrong source, alike but for the slip."""

from ..core.lesson import Lesson

MANUAL: dict[str, Lesson] = {
    "unknown-key": Lesson(
        "A key that is not known would be dropped in silence, and what it says with it.",
        "people: 2", "poeple: 2"),
    "missing-key": Lesson(
        "Some keys must be written, so that nobody has to guess whether they were forgotten. Where nothing is needed, write none.",
        "after: none\npeople: 2", "after: none"),
    "duplicate-key": Lesson(
        "Of two keys of one name the first would be lost.",
        "people: 2", "people: 2\npeople: 3"),
    "duplicate-id": Lesson(
        "An id names one thing; a second thing of the same id would hide it.",
        "  bolt:\n    label: Cap bolt", "  press:\n    label: Cap bolt"),
    "wrong-shape": Lesson(
        "Each key takes one value, a list with a dash before each entry, or a group of keys, and not another of them.",
        "people: 2", "people: [2]"),
    "empty-value": Lesson(
        "A key without a value may be a forgotten one.",
        "people: 2", "people:"),
    "empty-list": Lesson(
        "An empty list may be a forgotten one. Where nothing is needed, write none.",
        "after: none", "after: []"),
    "unknown-word": Lesson(
        "Some keys take one of a few words; a near miss would be read as something else or as nothing.",
        "kind: torque", "kind: torqe"),
    "bad-number": Lesson(
        "A count is written in digits.",
        "people: 2", "people: two"),
    "bad-date": Lesson(
        "A date is year, month, day, so that 05/11 is not read as the other month.",
        "tried: desk", "tried: {serial: 512, on: 11 May 2024}"),
    "bad-id": Lesson(
        "An id becomes part of addresses and references: letters, digits and dashes, no spaces.",
        "- id: bolt", "- id: cap bolt"),
    "reserved-id": Lesson(
        "A few names are kept for the site's own pages: a procedure of that name would stand where they do.",
        "procedures/hoist/drum.yaml", "procedures/hoist/sheet.yaml"),
    "bad-reference": Lesson(
        "Braces in a sentence name a figure, which the page then shows; without a figure of that name the braces would be printed.",
        "Press to {press.target}", "Press to {press target!}"),
    "quantity": Lesson(
        "A figure is a number and a unit of its kind. A ton without its country, a range that runs backwards, a decimal comma "
        "and a unit of another kind are not guessed at.",
        "is: 55 lbf·ft", "is: 55 psi"),
    "thread": Lesson(
        "A thread is looked up in the standard series; one that is in none of them is a slip until it says UNS or its pitch.",
        "thread: 1/2-13 UNC", "thread: 1/2-14 UNC"),
    "serials": Lesson(
        "A range of serials is 1390 to 2215, from 2750, or up to 1389, the lower one first.",
        "serials: up to 499", "serials: 499 and before"),
    "unknown-reference": Lesson(
        "A name that points nowhere leaves the reader without the thing it should show.",
        "machine: hoist", "machine: hosit"),
    "yaml": Lesson(
        "Some signs mean something else to the file format when a text begins with them or holds a colon and a space: the text "
        "is cut, replaced or lost. Quotes round the whole text keep it as it is.",
        "do: Tighten the bolts", "do: Note: tighten the bolts"),
    "text-lost": Lesson(
        "A space and a # begin a note that nobody sees: what follows is dropped.",
        'state: Plate flat.', 'state: Plate on stud #3 flat.'),
    "text-cut": Lesson(
        "Between { } a comma ends the value: the rest of the text becomes a key of its own.",
        "- {item: lock plate, count: 1, one use: yes, number: 6B-7789}",
        "- {item: lock plate, bent over, count: 1, one use: yes, number: 6B-7789}"),
    "key-swallowed": Lesson(
        "A key becomes more of the text before it where no space stands after its colon, or where it is indented further than the "
        "key above it.",
        "    do: Tighten the bolts to {bolt}.\n    leaves:", "    do: >\n      Tighten the bolts to {bolt}.\n      note: Wait.\n    leaves:"),
    "text-bent": Lesson(
        "In double quotes a backslash makes another sign of the letter after it.",
        "because: The drum may come off again.", 'because: "The drum\\nut may come off again."'),
    "deceiving-sign": Lesson(
        "A sign that is not seen, or that turns the direction of reading, makes a line read otherwise than it is.",
        "words typed in an editor", "words copied from a page or a message, with an invisible sign among them"),
    "unreadable": Lesson(
        "Only plain text in UTF-8, at most 1 MB a file, inside the book is read.",
        "a text file inside the book", "a picture, a file of another program, or a link that leaves the book"),
    "unknown-file": Lesson(
        "A file is read by its place and name; one that stands elsewhere would be left out in silence.",
        "procedures/hoist/drum.yaml", "procedures/drum.yaml"),
    "html-not-read": Lesson(
        "A sentence is plain words, *emphasis* and {figures}. HTML and Markdown links would be printed as they stand, never followed.",
        "if forgotten: The bolt backs out.", "if forgotten: The bolt <b>backs</b> out."),
    "outside-link": Lesson(
        "An outside address is written out, with http or https. Nothing that a browser would run is taken.",
        "because: The drum may come off again.", "because: See javascript:alert(1)."),
    "stray-file": Lesson(
        "The site holds pages, and the pictures that a source or a page written by hand names. Whatever else lies beside the "
        "procedures is not copied into it: a browser might run it.",
        "procedures/hoist/cup.png, and in a step: picture: {file: cup.png, shows: The cup.}", "procedures/hoist/cup.svg"),
    "edition-broken": Lesson(
        "The editions say what stood on paper that is still about: a line whose code is not that of what it holds would judge that paper wrongly.",
        "the lines as 'witnessmark edition' wrote them", "a line changed by hand, cut short, or merged from two"),
    "edition-twice": Lesson(
        "A sheet code stands for one sheet.",
        "each code in one line", "one code in two lines, as after merging two branches"),
    "wrong-folder": Lesson(
        "A procedure stands in the folder of its machine, so that its address says what it is for.",
        "procedures/hoist/drum.yaml", "procedures/winch/drum.yaml"),
}
