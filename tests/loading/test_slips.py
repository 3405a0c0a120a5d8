"""Words that would be dropped or bent in silence: what is changed in the smallest book, and the finding at its place.

A case is (rule, severity, words that stand in the book, what stands there instead, line:column, part of message and mend)."""

import pytest
from small_book import PROCEDURE, sources

from witnessmark.loading import slips
from witnessmark.loading.load_book import load_book
from witnessmark.loading.slips import PROSE
from witnessmark.loading.yaml_tree import MOST_NODES, read_tree

PATH = "procedures/hoist/drum.yaml"
BOLT = "do: Tighten the bolts to {bolt}."
CASES = [
    ("text-lost", "error", BOLT, "do: Tighten stud #3 first", "36:22", "'#3 first' is left out"),
    ("text-lost", "error", BOLT, "do: Tighten stud # 3 first", "36:22", "quotes around the whole text"),
    ("text-lost", "warning", BOLT, "do: Tighten the stud # the long one", "36:26", "'# the long one' is left out"),
    ("text-lost", "warning", "state: Plate flat.", "state: > # flat\n          Plate flat.", "39:18", "'# flat' is left out"),
    ("text-lost", "error", "people: 2", "people: 2 #two", "4:11", "'#two' is left out"),
    ("text-lost", "error", BOLT, "do: Tighten stud\n      #3 first", "37:7", "'#3 first' is left out"),
    ("yaml", "error", "number: 6B-7789}", "number: 6B #7789}", "11:61", "'#7789}' is left out, and the closing bracket"),
    ("text-cut", "error", "item: lock plate,", "item: Stop, then wait,", "11:20", "the comma cuts the text before 'then wait' in two"),
    ("text-cut", "error", "early: 8 short ton", "early: 1,100 short ton", "19:38", "'1,100 short ton' in two, put quotes around the number"),
    ("text-cut", "error", "item: lock plate,", "item:lock plate,", "11:8", "put a space after the colon"),
    ("text-cut", "error", BOLT, "do: {bolt}", "36:10", "braces at the start of a text open a group"),
    ("text-cut", "error", "tried: desk", "tried: desk\nconditions: [Stop the hoist, then wait]", "6:30", "cuts the sentence before 'then wait' in two"),
    ("key-swallowed", "error", BOLT, "do: >\n      Tighten it.\n      hold point: Wait.", "38:7", "'hold point:' is read as more of the text above it"),
    ("key-swallowed", "error", BOLT, "do: Tighten it.\n      note:Wait.", "37:7", "straight under the key above, with a space after its colon"),
    ("key-swallowed", "error", BOLT, "do: 'Tighten it.\n      check: It is tight.'", "37:7", "'check:'"),
    ("key-swallowed", "error", BOLT, "do: Tighten it note:then wait.", "36:20", "'note:' is read as more of the text before it, put a space after its colon"),
    ("key-swallowed", "error", BOLT, "do: Tighten it hold point:Wait.", "36:20", "'hold point:' is read"),
    ("key-swallowed", "error", BOLT, "do: >\n      Tighten the bolts\n      to {bolt} check:The plate is flat.", "38:17", "'check:' is read"),
    ("key-swallowed", "error", BOLT, "do: Tighten it\n      and note:10 turns.", "37:11", "'note:' is read"),
    ("key-swallowed", "error", "item: lock plate,", "item: lock plate note:new,", "11:25", "(between { } a comma before it)"),
    ("empty-value", "error", "is: 55 lbf·ft", "is: {}", "29:9", "nothing stands between the braces"),
    ("text-bent", "error", "title: Press the drum", 'title: "Press \\x41 drum"', "1:8", "'\\x' in double quotes becomes another sign"),
    ("yaml", "error", "item: lock plate,", "item: lock: plate,", "11:18", "a colon inside the text cuts it in two"),
    ("yaml", "error", BOLT, "do: {bolt} tight", "36:16", "begins with { is taken for a list or a group"),
    ("yaml", "error", BOLT, "do: *Never* over the mark", "36:15", "a text may not begin with '*'"),
    ("yaml", "error", BOLT, "do: Note: stop", "36:13", "a colon inside the text"),
    ("yaml", "error", "is: 55 lbf·ft", "is: > 55 lbf·ft", "29:11", "write 'over' or 'under' before a figure"),
    ("yaml", "error", "is: 55 lbf·ft", "is: - 5 lbf·ft", "29:9", "'-' and a space at the start"),
    ("yaml", "error", BOLT, "do: @ the bolts", "36:9", "a text may not begin with '@'"),
    ("yaml", "error", "people: 2", "people:2", "4:1", "no space stands after 'people:'"),
    ("yaml", "error", "people: 2", "people: 2\nand one more", "5:1", "neither a key with its value nor the rest"),
    ("yaml", "error", "people: 2", "<<: {people: 2}", "4:1", "'<<' would copy entries"),
    ("yaml", "error", "    do: Tighten", "\tdo: Tighten", "36:1", "indented with a tab"),
    ("yaml", "error", "    do: Tighten", "     do: Tighten", "36:8", "the indent does not fit"),
    ("yaml", "error", "title: Press the drum", 'title: "Press" the drum', "1:16", "a quote is closed too early"),
    ("yaml", "error", "title: Press the drum", 'title: "Press the drum', "1:8", "a quote is opened here and not closed"),
    ("yaml", "error", "after: none", "after: [hub, shaft", "3:8", "a bracket is opened here and not closed"),
    ("yaml", "error", "title: Press the drum", "title: ! Press the drum", "1:8", "'!' is a tag"),
    ("yaml", "error", "people: 2", "people: 2\n---\ntitle: Another", "5:1", "a second document begins here"),
    ("deceiving-sign", "error", "Press the drum", "Press\u202e the drum", "1:13", "U+202E, right-to-left override"),
    ("deceiving-sign", "error", "55 lbf·ft", "5\u200b5 lbf·ft", "29:10", "U+200B, zero width space"),
    ("deceiving-sign", "error", "Press the drum", "Press\u2028the drum", "1:13", "line separator"),
    ("deceiving-sign", "error", "Press the drum", "Press\0the drum", "1:13", "a NUL character"),
    ("deceiving-sign", "error", "Press the drum", "Press\rthe drum", "1:13", "plain line ends"),
    ("bad-number", "error", "people: 2", "people: 02", "4:9", "write a whole number"),
    ("bad-number", "error", "people: 2", "people: ٢", "4:9", "write a whole number"),
]


@pytest.mark.parametrize("rule, severity, stands, wrong, at, says", CASES, ids=[f"{case[0]}: {case[3][:30]!r}" for case in CASES])
def test_no_word_is_lost_in_silence(rule, severity, stands, wrong, at, says):
    assert PROCEDURE.count(stands) == 1, "the case must change exactly one place"
    _, found = load_book(sources(PROCEDURE.replace(stands, wrong)))
    lines = [finding.line() for finding in found if finding.place.path == PATH]
    assert any(line.startswith(f"{PATH}:{at}: {severity}: ") and says in line and line.endswith(f"[{rule}]") for line in lines), lines
    assert sum(rule in line for line in lines) == 1, lines


@pytest.mark.parametrize("stands, right", [
    ("people: 2", "people: 2 # two, for the hub is heavy"),
    ("is: 55 lbf·ft", "is: 55 lbf·ft   # 60 in the first edition"),
    ("people: 2", "# people as the shop counts them\npeople: 2"),
    ("people: 2", "people: 2 ##"),
    (BOLT, "do: 'Tighten stud #3 first'"),
    (BOLT, 'do: "Tighten stud #3 first, \\"gently\\""'),
    (BOLT, "do: >\n      Tighten stud\n      #3 first"),
    (BOLT, "do: Tighten stud no.#3 first"),
    ("item: lock plate,", "item: 'Stop, then wait #3',"),
    ("title: Press the drum", "title: Press the drum\r"),
])
def test_a_note_and_a_quoted_text_stand(stands, right):
    assert PROCEDURE.count(stands) == 1
    assert load_book(sources(PROCEDURE.replace(stands, right)))[1] == []


@pytest.mark.parametrize("right", [
    "do: Tighten it at 10:30 and note 1:12.",
    "do: 'Tighten it note:then wait.'",
    'do: "Tighten it check:then wait."',
    "do: Tighten it as in https://example.org/note:3 or file 6B:77.",
    "do: Tighten the key:way bolts.",                    # no key of ours
    "do: Tighten it with the keynote:then wait.",
    "do: Tighten it. Note:then wait.",                   # a capital: words, and no key
    "do: >\n      Tighten it and note what it says :-)",
    "do: Tighten it (check:) twice.",
    "do: Tighten it.\n    note: See the note 5:30 of 2:1.",
])
def test_a_colon_that_belongs_to_the_words_stands(right):
    assert PROCEDURE.count(BOLT) == 1
    assert [finding for finding in load_book(sources(PROCEDURE.replace(BOLT, right)))[1] if finding.rule != "outside-link"] == []


def test_no_sign_that_is_looked_for_passes_the_quick_look():
    """A file that is surely seen is not searched sign by sign."""
    looked_for = [sign for sign in map(chr, range(0x110000)) if slips._UNSEEN.search(sign)]
    assert len(looked_for) > 200
    assert [sign for sign in looked_for if slips.unseen("x.yaml", f"é{sign}x") is None] == []


def test_a_block_keeps_what_looks_like_a_note_also_beside_true_notes():
    text = "a: >\n  x #1\nb: 1 # fine\ndo: y #2 # and #3\nc: 'z #4' #5\n"
    assert [(f.place.line, f.place.column) for f in read_tree("x.yaml", text)[1]] == [(4, 7), (5, 11)]


def test_a_slip_in_a_list_is_judged_by_the_key_of_the_list():
    assert "conditions" in PROSE and "places" not in PROSE
    assert [f.severity for f in read_tree("x.yaml", "conditions:\n  - Wheels off # and on\nplaces:\n  - left # port\n")[1]] == ["warning"]


def test_a_file_of_too_many_entries_is_one_finding():
    node, found = read_tree("x.yaml", "- a\n" * (MOST_NODES + 1))
    assert node is None and [f.place.line for f in found] == [MOST_NODES]
