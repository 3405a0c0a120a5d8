"""While serving, a procedure's figures, sheet codes and pages are made again when it, a procedure it names, or an outline of another changes.

That is enough: made of a book in which the others are no more than their outlines, they are the same byte for byte.
"""

from dataclasses import replace
from pathlib import Path

import pytest
from small_book import PROCEDURE, sources

from witnessmark.build import record
from witnessmark.core.outline import Naming, outline
from witnessmark.core.record import fingerprint
from witnessmark.loading.load_book import load_book
from witnessmark.pages.book_index import BookIndex
from witnessmark.pages.lookup import Lookup
from witnessmark.pages.offline import about_book
from witnessmark.pages.site import Settings, procedure_pages
from witnessmark.workings.derive import derive_machine, derive_procedure, joined
from witnessmark.workings.registry import WORKINGS
from witnessmark.prove import Checked, check

SETTINGS = Settings("Book", "book", workings=WORKINGS)
BOOK = check(Path(__file__).parents[2]).book


def made(book, whole, key, moved_by, about):
    """All that is made of one procedure; `whole` are the procedures of its machine that are worked out."""
    derived, _ = joined([derive_machine(book, key[0]), *(derive_procedure(book, (key[0], name)) for name in whole)])
    index = BookIndex(book)
    index.moved_by = moved_by                   # is asked for besides: who rests on a figure is not named by it
    records = {variant: record(Checked(book, derived, ()), (*key, variant)) for variant in derived[key].combinations}
    codes = {variant: fingerprint(one) for variant, one in records.items()}
    pages = procedure_pages(Lookup(book, index, derived, book.machines[key[0]]), derived, book.procedures[key], codes, SETTINGS, about)
    return derived[key], records, pages


@pytest.mark.parametrize("key", BOOK.procedures, ids="/".join)
def test_others_show_in_outline_or_are_named(key):
    named = [each.id for each in Naming(BOOK).named(BOOK.procedures[key])]
    in_outline = {other: procedure if other[0] != key[0] or other[1] in (key[1], *named) else outline(procedure)
                  for other, procedure in BOOK.procedures.items()}
    moved_by, about = BookIndex(BOOK).moved_by, about_book(BOOK, "book")
    whole = made(BOOK, [key[1], *named], key, moved_by, about)
    assert made(replace(BOOK, procedures=in_outline), [key[1], *named], key, moved_by, about) == whole


def test_an_outline_is_the_same_wherever_its_lines_stand_and_whatever_is_done_in_its_steps():
    def read(text):
        return outline(load_book(sources(text))[0].procedures["hoist", "drum"])

    assert read("# a remark\n" + PROCEDURE) == read(PROCEDURE)
    assert read(PROCEDURE.replace("people: 2", "people: 3")) == read(PROCEDURE)
    assert read(PROCEDURE.replace("title: Press the drum", "title: Press the drum home")) != read(PROCEDURE)
    assert read(PROCEDURE.replace("- id: lock", "- id: lock-it")) != read(PROCEDURE)
