"""A press target is lowered after the nut was checked against it: what changes without anybody touching the nut.

The shop's own correction COR-1 played again: 24-A from 16.5 to 15 long ton, its nut still at the 400 lbf·ft of then."""

import json
from pathlib import Path

import pytest
from small_book import PROCEDURE, sources

from witnessmark.build import codes, render
from witnessmark.prove import Checked
from witnessmark.loading.load_book import FOLDERS, load_book
from witnessmark.loading.source_files import SourceFile, yaml_sources
from witnessmark.rules.table import check_book
from witnessmark.workings.derive import derive_book

BOOK = Path(__file__).parent.parent
PRESS_ON = "procedures/type-24/flycrank-press-on.yaml"
NOW = "24-A: {24-A: 15 long ton, 24-B: 15 long ton, 24-C: 15 long ton}"
THEN = NOW.replace("15 ", "16.5 ")
HUB = "{24-A: 18 long ton,"


def book_with(target: str, ceiling: str) -> Checked:
    """The demonstration with the nut of the 24-A as it was, 400 lbf·ft checked against 16.5 long ton, under these two."""
    files = []
    for file in yaml_sources(BOOK, FOLDERS):
        text = file.text
        if file.path == PRESS_ON:
            before, between, after = text.split(NOW)            # the target stands first, then what the nut was checked against
            text = f"{before}{target}{between}{THEN}{after}".replace("360 lbf·ft", "400 lbf·ft")
            assert text.count(HUB) == 1
            text = text.replace(HUB, f"{{24-A: {ceiling},")
        files.append(SourceFile(file.path, text))
    book, found = load_book(files)
    derived, more = derive_book(book)
    return Checked(book, derived, tuple(sorted({*found, *more, *check_book(book, derived)})))


@pytest.fixture(scope="module")
def before() -> Checked:
    return book_with(THEN, "20 long ton")


@pytest.fixture(scope="module")
def after() -> Checked:
    return book_with(NOW, "18 long ton")


def nuts(checked: Checked) -> dict:
    runs = checked.derived["type-24", "flycrank-press-on"].worked
    return {(dict(key)["locomotive"], dict(key)["fly-crank"]): run[0].outcome for (key, owner), run in runs.items() if owner == "nut"}


def test_nothing_is_said_while_the_check_holds(before):
    assert not any("RE-CHECK" in finding.message for finding in before.findings)
    assert not any(outcome.refusals for outcome in nuts(before).values())


def test_the_nut_is_to_be_checked_again_and_no_other(after):
    said = [finding for finding in after.findings if finding.rule == "checked-against"]
    assert len(said) == 1 and said[0].severity == "warning"
    assert said[0].message == "RE-CHECK 'nut' of 24-A: it was checked against 16.5 long ton, the target is now 15 long ton"
    for (locomotive, _), outcome in nuts(after).items():
        refused = [refusal.message for refusal in outcome.refusals]
        assert refused == (["RE-CHECK: was checked against 16.5 long ton, the target is now 15 long ton"] if locomotive == "24-A" else [])
        assert bool(outcome.values) == (locomotive != "24-A"), "no setting to act on"


def marks(checked: Checked, variant: str) -> list[str]:
    """The four stops and the mark never to pass on the BP50, own hub."""
    runs = checked.derived["type-24", "flycrank-press-on"].worked
    cards = [run for (key, owner), found in runs.items() if owner == "press-force" and dict(key)["locomotive"] == variant
             and dict(key)["fly-crank"] == variant for run in found if run.press == "BP50"]
    return [value.printed for value in cards[0].outcome.values if "mark" in value.name and "force" not in value.name]


def test_the_marks_are_those_of_the_correction(before, after):
    assert marks(before, "24-A") == ["1600 psi", "2500 psi", "3000 psi", "3300 psi", "3900 psi"]
    assert marks(after, "24-A") == ["1500 psi", "2200 psi", "2700 psi", "3000 psi", "3500 psi"]
    assert [marks(before, other) == marks(after, other) for other in ("24-B", "24-C")] == [True, True]


def test_it_is_told_by_how_much_it_would_press(after):
    """81.4 % of the 14.05 long ton at the new last mark: the shop's own words in COR-1."""
    assert any("81.4 % of the press force" in warning for warning in nuts(after)["24-A", "24-A"].warnings)


def test_page_sheet_and_data_print_it(before, after):
    then, now = (render(checked, "Demo", "demo", None) for checked in (before, after))
    sheets = [name for name in now.files if "flycrank-press-on" in name and name.endswith(".html") and "24-A" in name]
    sheet = "type-24/flycrank-press-on/sheet/24-A/"
    assert "RE-CHECK, DO NOT USE" in _text(now.files[f"{sheet}index.html"])
    assert "RE-CHECK: was checked against 16.5 long ton" in _text(now.files["type-24/flycrank-press-on/leaves/24-A/index.html"])
    assert not any("RE-CHECK, DO NOT USE" in _text(then.files[name]) for name in sheets)
    others = [name for name in now.files if "flycrank-press-on" in name and name.endswith(".html") and "24-B" in name]
    assert others and not any("RE-CHECK, DO NOT USE" in _text(now.files[name]) for name in others)
    page = next(page.html for page in now.pages if "flycrank-press-on" in page.url)
    assert "RE-CHECK, DO NOT USE" in page and "was checked against 16.5 long ton, the target is now 15 long ton" in page
    data = json.loads(_text(now.files["book.json"]))
    procedure = next(p for p in data["procedures"] if p["id"] == "flycrank-press-on")
    nut = next(spec for spec in procedure["specs"] if spec["id"] == "nut")
    waiting = {figure["for"]["locomotive"] for figure in nut["figures"] if figure["re-check"]}
    assert waiting == {"24-A"}
    assert all(figure["role"] == "target" for figure in nut["figures"] if figure["re-check"])


def test_a_new_target_makes_paper_of_the_24_a_stale_and_a_new_ceiling_every_sheet_with_its_hub(before, after):
    then, now = codes(book_with(THEN, "18 long ton")), codes(after)
    key = ("type-24", "flycrank-press-on")
    assert {variant: then[*key, variant] == now[*key, variant] for variant in ("24-A", "24-B", "24-C")} == \
        {"24-A": False, "24-B": True, "24-C": True}
    both = codes(before)                                        # sheets of the others hold rows for a 24-A hub from a donor
    assert not any(both[*key, variant] == now[*key, variant] for variant in ("24-A", "24-B", "24-C"))


def _text(body) -> str:
    return body.decode() if isinstance(body, bytes) else str(body)


def test_another_procedure_that_names_the_nut_prints_it_too(after):
    now = render(after, "Demo", "demo", None)
    sheet = next(name for name in now.files if "quartering-check" in name and name.endswith(".html") and "24-A" in name)
    assert "RE-CHECK, DO NOT USE" in _text(now.files[sheet])


def test_what_rests_on_a_figure_to_be_checked_refuses():
    bolt = "    surface: oiled\n    must not out-pull: press.floor\n    checked against: {} short ton\n"
    grip = "computed:\n  grip:\n    working: taper-grip\n    taper: 1:12\n    torque to carry: bolt.target\nsteps:\n"
    for ton, refused in ((6, False), (7, True)):
        book, _ = load_book(sources(PROCEDURE.replace("    surface: oiled\n", bolt.format(ton)).replace("steps:\n", grip)))
        derived, _ = derive_book(book)
        runs = [run[0] for (_, owner), run in derived["hoist", "drum"].worked.items() if owner == "grip"]
        assert runs and all(("torque to carry" not in run.inputs) == refused for run in runs)
        assert all(any("torque to carry is not known" in r.message for r in run.outcome.refusals) == refused for run in runs)
