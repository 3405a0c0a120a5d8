"""Every field of every source, found by walking the shapes: what could run there is refused at its place, and were it not,
it would still be nothing but words on every page. A new field is covered by being in a shape."""

from pathlib import Path

import pytest
from hostile_book import EVIL, Spoiler, build_clean, build_hostile, document, is_free, is_read, leaves
from small_book import SITE_DATA, sources
from what_runs import what_runs, what_runs_in

from witnessmark.build import render
from witnessmark.prove import Checked, check
from witnessmark.loading import yaml_tree
from witnessmark.loading.load_book import FOLDERS, load_book
from witnessmark.loading.source_files import SourceFile, yaml_sources
from witnessmark.loading.source_schemas import SOURCES
from witnessmark.workings.derive import derive_book

ROOT = Path(__file__).parents[2]
FIELDS = [(name, path) for name, (_, shape) in SOURCES.items() for path, _ in leaves(shape)]
PATHS = {"procedure": "procedures/hoist/drum.yaml", "machine": "site_data/machines/hoist.yaml"}
WOULD_RUN = [("<script>alert(1)</script>", "html-not-read"), ("<img src=x onerror=alert(1)>", "html-not-read"), ("<svg/onload=alert(1)>", "html-not-read"),
             ("<b onclick=alert(1)>x</b>", "html-not-read"), ("<!--", "html-not-read"), ("See javascript:alert(1)", "outside-link"), ("data:text/html,x", "outside-link")]


@pytest.mark.parametrize("name, path", FIELDS, ids=[f"{name}: {' '.join(path)}" for name, path in FIELDS])
def test_what_would_run_is_refused_in_every_field_at_its_place(name, path):
    at = PATHS.get(name, f"site_data/{name}.yaml")
    others = [file for file in sources() if file.path != at]
    for text, rule in WOULD_RUN:
        source = document(path, text)
        _, found = load_book([*others, SourceFile(at, source)])
        where = source.index(text) + 1 + (4 if text.startswith("See") else 0)
        assert (at, 1, where, rule) in {(f.place.path, f.place.line, f.place.column, f.rule) for f in found}, [f.line() for f in found]


def test_the_walk_sees_the_fields():
    assert len(FIELDS) > 150 and {"procedure", "machine", "presses", "cautions"} <= set(SOURCES) and SITE_DATA
    assert ("procedure", ("steps", "-", "record", "-", "if outside", "above")) in FIELDS


@pytest.fixture(scope="module")
def spoiler():
    return Spoiler(yaml_sources(ROOT, FOLDERS))


@pytest.fixture(scope="module")
def spoilt(spoiler):
    """The book of the spoilt sources, read as if our own refusal of HTML were not there."""
    kept, yaml_tree.may_hold_markup = yaml_tree.may_hold_markup, lambda text: False
    try:
        book, found = load_book(spoiler.spoilt())
    finally:
        yaml_tree.may_hold_markup = kept
    assert [finding.line() for finding in found if finding.severity == "error"] == []
    derived, _ = derive_book(book)
    return Checked(book, derived, ())


def test_every_free_text_of_the_shapes_was_spoilt(spoiler, spoilt):
    # A figure of a machine has the keys of a procedure's: one of the two is enough.
    spoilt_too = {("machine", "figures", *path[2:]) for path in spoiler.put if path[:2] == ("procedure", "specs")}
    free = {(name, *path) for name, (_, shape) in SOURCES.items() for path, below in leaves(shape) if is_free(below) and not is_read((name, *path))}
    assert free - spoiler.put - spoilt_too == set(), "give the demonstration book such a text, or add it in hostile_book.py"
    assert len(free) > 60


def test_no_page_sheet_or_search_holds_anything_of_it_but_words(spoilt):
    clean = render(check(ROOT), "Demo", "demo", None)
    site = render(spoilt, EVIL, "demo", None)
    pages = [*(page.html for page in site.pages), *(text for name, text in site.files.items() if name.endswith(".html"))]
    allowed = set().union(*(what_runs(text) for text in [*(page.html for page in clean.pages), *(t for n, t in clean.files.items() if n.endswith(".html"))]))
    assert set().union(*map(what_runs, pages)) - allowed - {"<img>", "<figure>", "<figcaption>"} == set()
    assert sum("&lt;script&gt;alert(1)" in text for text in pages) > 100                # the words are there


def test_no_page_of_the_host_holds_anything_of_it_but_words(tmp_path):
    hostile = build_hostile(tmp_path / "hostile")
    assert what_runs_in(hostile) - what_runs_in(build_clean(tmp_path / "clean")) - {"<img>", "<figure>", "<figcaption>"} == set()
    assert "&lt;script&gt;alert(1)" in (hostile / "type-24/flycrank-press-on/index.html").read_text(encoding="utf-8")
