"""A figure that is in doubt or not known yet, through everything a reader or a machine may take it from.

Every withdrawn figure has digits that stand nowhere else in its book (7.77 and the like), so that a leak shows anywhere."""

import json
import re
from dataclasses import replace
from pathlib import Path

import pytest
from small_book import PROCEDURE, SITE_DATA, sources

from witnessmark.build import render
from witnessmark.prove import Checked
from witnessmark.core.place import Place
from witnessmark.core.sentence import read_sentence
from witnessmark.loading.load_book import FOLDERS, load_book
from witnessmark.loading.source_files import SourceFile, yaml_sources
from witnessmark.rules.table import check_book
from witnessmark.workings.derive import derive_book

TARGET = "      - {role: target, is: {early: 8 short ton, late: 10 short ton}, source: shop p. 1}\n"
BOLT = "    is: 55 lbf·ft\n    source: shop p. 3\n"
DOUBT = ", in doubt: Two leaves differ."
BY = "to be found by: The fitter weighs it."
SURFACES = SITE_DATA["site_data/surfaces.yaml"] + """\
dry:
  title: Dry and clean
  taper friction: {low: 0.12, likely: 0.15, high: 0.20, source: shop}
"""
OTHER = """\
title: Run the drum
machine: hoist
after: [drum]
people: 1
tried: desk
needs:
  presses: none
  tools: none
  supplies: none
  parts: none
specs:
  load:
    label: Load on the taper
    kind: torque
    role: found
    is: 7171 lbf·ft
    source: shop p. 9
  grip-force:
    label: Force worked out
    kind: press force
    role: found
    from: grip.force needed
    source: shop
computed:
  grip:
    working: taper-grip
    torque to carry: load.found
    taper: "1:12"
    mean diameter: 3.50 in
    length: 4.25 in
    friction: dry
steps:
  - id: look
    do: The drum was pressed to {drum/press.target} and its bolts to {drum/bolt}, the force to carry it is {grip.force needed}.
    record: {label: Force, spec: grip-force}
"""


def whole(drum: str = PROCEDURE, other: str = OTHER, **changed):
    """Findings, pages and files of the book, and book.json as data."""
    files = [*sources(drum, **{"surfaces": SURFACES, **changed}), SourceFile("procedures/hoist/running.yaml", other)]
    book, found = load_book(files)
    derived, more = derive_book(book)
    checked = Checked(book, derived, tuple(sorted({*found, *more, *check_book(book, derived)})))
    site = render(checked, "Hoist", "hoist", None)
    texts = {**{page.url: page.html for page in site.pages}, **{name: text for name, text in site.files.items() if isinstance(text, str)}}
    return checked, texts, json.loads(site.files["book.json"])


def changed(stands: str, instead: str, text: str = PROCEDURE) -> str:
    assert text.count(stands) == 1
    return text.replace(stands, instead)


def leaks(texts: dict, digits: str) -> list[str]:
    """Where the digits stand, but for the words as written in book.json, which are marked there, and the points of drawn lines."""
    drawn = re.compile(r' (?:points|c?x|c?y|r)="[-\d., ]+"')
    shown = {name: drawn.sub("", text) for name, text in texts.items() if name != "book.json"}
    return [f"{name}: …{text[at - 60:at + 40]}…" for name, text in shown.items() if (at := text.find(digits)) >= 0]


def run_of(book: dict, procedure: str, owner: str) -> list[dict]:
    return [run for each in book["procedures"] if each["id"] == procedure for run in each["worked"] if run["owner"] == owner]


def figures(book: dict, procedure: str, spec: str) -> list[dict]:
    return [figure for each in book["procedures"] if each["id"] == procedure for one in each["specs"] if one["id"] == spec for figure in one["figures"]]


def test_the_digits_would_be_found_if_they_were_not_withdrawn():
    _, texts, book = whole(changed(TARGET, TARGET.replace("8 short ton", "7.77 short ton")).replace("55 lbf·ft", "57.7 lbf·ft"))
    for digits in ("7.77", "57.7", "7171"):
        assert leaks(texts, digits)
    assert any("search" in leak for leak in leaks(texts, "7.77"))
    assert not any(run["refused"] for run in run_of(book, "running", "grip"))


@pytest.fixture(scope="module")
def press_in_doubt():
    return whole(changed(TARGET, "      - {role: target, is: 7.77 short ton, source: shop p. 1, because: At 7.77 the hub held." + DOUBT + "}\n")
                 .replace("    wrench: W1\n", "    wrench: W1\n    must not out-pull: press.target\n"))


def test_a_target_in_doubt_gives_no_number_anywhere(press_in_doubt):
    _, texts, _ = press_in_doubt
    assert leaks(texts, "7.77") == []
    for name in ("hoist/drum/", "hoist/drum/sheet/early/index.html", "hoist/drum/sheet/late/index.html", "hoist/running/"):
        assert "DO NOT USE" in texts[name], name
    assert "Two leaves differ." in texts["hoist/drum/"]


def test_a_target_in_doubt_refuses_the_card_and_the_nut_that_holds_it(press_in_doubt):
    checked, texts, book = press_in_doubt
    for owner in ("press", "bolt"):
        runs = run_of(book, "drum", owner)
        assert runs and all(run["refused"] and not run["values"] for run in runs), owner
    assert 'data-share="50"' not in texts["hoist/drum/"] and 'data-share="never"' not in texts["hoist/drum/"]
    assert 'data-share="never"' not in texts["hoist/drum/sheet/late/index.html"]
    assert [finding.line() for finding in checked.findings] == []          # withdrawn on purpose: the site is still built


def test_a_readers_own_press_or_wrench_is_asked_for_nothing_that_is_in_doubt(press_in_doubt):
    """The scripts of My bench work on what `data-job` asks: with a figure withdrawn there is nothing to work on."""
    _, texts, _ = press_in_doubt
    assert "data-job" not in texts["hoist/drum/"] and "data-job" not in texts["hoist/drum/bench/index.html"]
    _, relied_on, _ = whole()
    page = relied_on["hoist/drum/"]
    assert page.count('data-job="{&#34;target&#34;: &#34;8 short ton&#34;') == 1 and '"{&#34;torque&#34;: &#34;55 lbf·ft&#34;' in page
    assert "data-job" not in relied_on["hoist/drum/sheet/late/index.html"]


def test_a_reference_without_a_role_never_steps_down_to_another_figure(press_in_doubt):
    """`{press}` means the target; with the target in doubt it may not print the floor instead."""
    _, texts, _ = press_in_doubt
    words = texts["hoist/drum/"].partition('<li id="step-press"')[2].partition("</li>\n<li id=")[0]
    assert words.count("DO NOT USE") >= 2 and "6 short ton" not in words


def test_book_json_marks_a_withdrawn_figure_and_gives_no_number_to_reckon_with(press_in_doubt):
    found = [figure for figure in figures(press_in_doubt[2], "drum", "press") if figure["in doubt"]]
    assert found and all(figure["si"] is None and figure["in force"] is False and figure["as written"] == "7.77 short ton" for figure in found)
    kept = [figure for figure in figures(press_in_doubt[2], "drum", "press") if figure["role"] == "ceiling"]
    assert kept and all(figure["in force"] is True and figure["si"] for figure in kept)


def test_a_ceiling_in_doubt_leaves_no_mark_standing():
    checked, texts, book = whole(changed("is: 14 short ton, source: shop p. 2", "is: 13.77 short ton, source: shop p. 2" + DOUBT))
    assert leaks(texts, "13.77") == [] and checked.errors == 0
    assert all(run["refused"] for run in run_of(book, "drum", "press"))


def test_a_torque_in_doubt_is_not_replaced_by_its_window_or_its_passes():
    text = changed(BOLT, "    passes: [27.7 lbf·ft, 57.7 lbf·ft]\n    figures:\n      - {role: target, is: 57.7 lbf·ft, source: shop p. 3" + DOUBT + "}\n"
                         "      - {role: window, is: 50 to 60 lbf·ft, source: shop p. 3}\n")
    checked, texts, book = whole(text)
    assert leaks(texts, "57.7") == [] and leaks(texts, "27.7") == []
    assert all(run["refused"] and not run["values"] for run in run_of(book, "drum", "bolt")) and checked.errors == 0


def test_what_is_worked_out_from_a_figure_in_doubt_refuses():
    _, texts, book = whole(other=changed("is: 7171 lbf·ft\n", "is: 7171 lbf·ft\n    in doubt: Two leaves differ.\n", OTHER))
    assert leaks(texts, "7171") == [] and leaks(texts, "7,171") == []
    assert all(run["refused"] and not run["values"] for run in run_of(book, "running", "grip"))
    assert all(figure["si"] is None for figure in figures(book, "running", "grip-force"))
    assert "REFUSED" in texts["hoist/running/"] and "NOT KNOWN, DO NOT GUESS" in texts["hoist/running/"]


def test_a_figure_not_known_yet_is_blank_everywhere_and_refuses():
    target = f"      - {{role: target, is: {{early: not known yet, late: 10 short ton}}, source: shop p. 1, {BY}}}\n"
    checked, texts, book = whole(changed(TARGET, target))
    early, late = (texts[f"hoist/drum/sheet/{variant}/index.html"] for variant in ("early", "late"))
    assert "NOT KNOWN, DO NOT GUESS" in early and "NOT KNOWN" not in late
    assert "The fitter weighs it." in texts["hoist/drum/"]
    assert 'data-share="never"' not in early and 'data-share="never"' in late
    runs = {run["for"]["hoist"]: run for run in run_of(book, "drum", "press")}
    assert runs["early"]["refused"] and not runs["late"]["refused"]
    assert [finding.line() for finding in checked.findings] == []


def test_a_torque_not_known_yet_refuses_and_says_who_finds_it():
    checked, texts, book = whole(changed(BOLT, f"    is: not known yet\n    source: shop p. 3\n    {BY}\n"))
    assert all(run["refused"] for run in run_of(book, "drum", "bolt"))
    assert "NOT KNOWN, DO NOT GUESS" in texts["hoist/running/"] and "The fitter weighs it." in texts["hoist/drum/"]
    assert [finding.line() for finding in checked.findings] == []


def test_a_figure_not_known_yet_must_say_who_finds_it():
    checked, *_ = whole(changed(BOLT, "    is: not known yet\n    source: shop p. 3\n"))
    assert any("says nobody will find it" in finding.message for finding in checked.findings)


def test_a_figure_of_the_machine_in_doubt_refuses_what_rests_on_it():
    hoist = SITE_DATA["site_data/machines/hoist.yaml"].replace("kind: force, role: found, is: 2000 lbf, source: chart p. 1",
                                                               "kind: torque, role: found, is: 7077 lbf·ft, source: chart p. 1, in doubt: Plate worn.")
    _, texts, book = whole(other=OTHER.replace("load.found", "hoist/load.found"), **{"machines/hoist": hoist})
    assert leaks(texts, "7077") == [] and all(run["refused"] for run in run_of(book, "running", "grip"))


@pytest.fixture(scope="module")
def demo():
    return load_book(yaml_sources(Path(__file__).parent.parent, FOLDERS))[0]


@pytest.mark.parametrize("owner, spec, role", [
    (None, "slip-torque", "found"), (None, "crank-taper", "found"), (None, "crank-taper-diameter", "found"), (None, "crank-taper-length", "found"),
    ("flycrank-press-on", "press-force", "target"), ("flycrank-press-on", "press-force", "floor"), ("flycrank-press-on", "press-force", "ceiling")])
def test_each_figure_under_the_demonstrations_press_cards_withdrawn_alone_refuses_them_all(demo, owner, spec, role):
    """Fly-crank marks rest on seven figures, four of them of the machine and through a working; the nut rests on the press."""
    doubt = read_sentence("Two leaves differ.", Place("here"))[0]

    def withdrawn(specs):
        figures = tuple(replace(figure, in_doubt=doubt) if figure.role == role and figure.in_force() else figure for figure in specs[spec].figures)
        assert figures != specs[spec].figures
        return {**specs, spec: replace(specs[spec], figures=figures)}

    key = ("type-24", "flycrank-press-on")
    machine, procedure = demo.machines["type-24"], demo.procedures[key]
    book = replace(demo, procedures={**demo.procedures, key: replace(procedure, specs=withdrawn(procedure.specs))}) if owner else \
        replace(demo, machines={**demo.machines, "type-24": replace(machine, figures=withdrawn(machine.figures))})
    derived, found = derive_book(book)
    runs = [run for (_, name), each in derived[key].worked.items() if name in ("press-force", "nut") for run in each]
    assert {run.working for run in runs} == {"press-card", "tightening-torque"}
    assert all(run.outcome.refusals and not run.outcome.values for run in runs)
    assert [finding for finding in (*found, *check_book(book, derived)) if finding.severity == "error"] == []
