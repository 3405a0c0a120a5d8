"""What a correction may be about: a figure, or by its bare id a procedure, a machine or a thing of the shop."""

import pytest
from compared_books import proved_book

from witnessmark.changes.reach import Reach
from witnessmark.core.acted import Key
from witnessmark.pages.book_index import BookIndex


def book(about: str):
    text = f"COR-1: {{on: 2024-02-03, about: {about}, old: A., new: B., reason: C., if already done: fine}}\n"
    return proved_book(extra={"site_data/corrections.yaml": text})


PRESS, MARKS, LOCK, CAUTION = Key("figure", "press", "target"), Key("mark", "press", "marks"), Key("step", "lock", ""), Key("caution", "press", "HZ-1")
SURFACE, NEED, BOLT, LOAD = Key("spec", "bolt", "fastener"), Key("need", "P20", "main"), Key("setting", "bolt", "setting"), Key("figure", "hoist/load", "found")
ALL = (PRESS, MARKS, LOCK, CAUTION, SURFACE, NEED, BOLT, LOAD)


@pytest.mark.parametrize("about, accounts, listed", [
    ("drum/press", (PRESS, MARKS), {"drum"}),
    ("drum/bolt", (SURFACE, BOLT), {"drum"}),
    ("hoist/load", (LOAD,), {"hoist"}),
    ("drum", (LOCK, CAUTION, NEED), {"drum"}),
    ("hoist", (LOCK, CAUTION, NEED), {"hoist"}),
    ("HZ-1", (CAUTION,), {"drum"}),
    ("P20", (PRESS, MARKS, NEED), {"drum"}),
    ("oiled", (BOLT,), {"drum"}),
    ("W1", (BOLT,), {"drum"}),
])
def test_it_accounts_for_what_it_names_and_what_rests_on_that(about, accounts, listed):
    checked = book(about)
    assert checked.findings == ()
    reach = Reach(checked.book)
    assert tuple(key for key in ALL if reach.of_fact("hoist", "drum", key)) == accounts
    index = BookIndex(checked.book)
    assert set(index.corrections) == listed and [each.id for each in index.corrections_of("hoist")] == ["COR-1"]
    assert reach.sheet(checked.book.procedures["hoist", "drum"]) == (() if about == "hoist/load" else ("COR-1",))


@pytest.mark.parametrize("about, says", [("drumm", "there is no procedure, machine or thing of the shop 'drumm', did you mean 'drum'?"),
                                         ("hoist/lod", "there is no figure of the machine 'lod', did you mean 'load'?"),
                                         ("drum/pres", "there is no figure in 'drum' that is called 'pres', did you mean 'press'?"),
                                         ("drumm/press", "there is no procedure 'drumm', did you mean 'drum'?")])
def test_a_name_that_is_none_is_a_finding(about, says):
    [finding] = book(about).findings
    assert finding.rule == "unknown-reference" and says in finding.line()
