"""Where a bar stands in the margin: what is acted on otherwise than in the edition before, and nothing else."""

from small_book import PROCEDURE, sources

from witnessmark.build import codes, new_editions, records
from witnessmark.prove import proved
from witnessmark.changes.bars import bars
from witnessmark.loading.source_files import SourceFile

KEY = ("hoist", "drum")


def book(text: str, editions: dict[str, str]):
    files = sources(text) + [SourceFile(path, content) for path, content in editions.items()]
    return proved(sorted(files, key=lambda file: file.path), ((), ()), lambda path: None)


def found(text: str, *issued: str):
    """The bars of a book whose editions were issued of the texts given, one a year."""
    editions: dict[str, str] = {}
    for year, before in enumerate(issued, 2021):
        editions.update(new_editions(book(before, editions), f"{year}-01-01"))
    checked = book(text, editions)
    return bars(checked.book, records(checked), codes(checked))


HARDER = PROCEDURE.replace("early: 8 short ton", "early: 7 short ton")
STEPPED = PROCEDURE.replace("Bend the plate over.", "Bend the plate over.\n    hold point: Look at it twice.")


def test_a_new_figure_has_a_bar_since_the_last_edition_and_its_words_have_none():
    bar = found(HARDER, PROCEDURE)[KEY]
    assert bar.since == "2021-01-01" and bar.figures == {"press"} and bar.steps <= {"press"}
    assert found(PROCEDURE.replace("label: Drum press force", "label: Press force of the drum"), PROCEDURE) == {}


def test_a_step_has_its_own():
    bar = found(STEPPED, PROCEDURE)[KEY]
    assert bar.steps == {"lock"} and bar.figures == frozenset()


def test_once_it_is_in_an_edition_it_is_laid_beside_the_one_before():
    assert found(HARDER, PROCEDURE, HARDER)[KEY] == found(HARDER, PROCEDURE)[KEY]
    assert found(STEPPED, PROCEDURE, HARDER, STEPPED)[KEY].since == "2022-01-01"


def test_without_an_edition_there_is_no_bar():
    assert found(PROCEDURE) == {} and found(PROCEDURE, PROCEDURE) == {}
