"""A correction that came as plain text: the line to change, and what is said where it does not fit the book."""

import pytest
from small_book import PROCEDURE, sources

from witnessmark.changes.from_text import answer_to
from witnessmark.cli import main
from witnessmark.build import codes, new_editions
from witnessmark.core.correction_text import ON_PAPER, read_correction
from witnessmark.core.picture import PictureFile
from witnessmark.loading.load_book import load_book
from witnessmark.loading.source_files import SourceFile
from witnessmark.prove import proved

GIVEN = {"Procedure": "hoist/drum", "Spec": "press", "Role": "target", "Case": "early", "Printed figure": "8 short ton",
         "New figure and unit": "7.5 short ton", "What happened": "The hub cracked.", "By whom": "fitter"}
LINE = next(number for number, line in enumerate(PROCEDURE.splitlines(), 1) if "8 short ton" in line)


def answer(procedure: str = PROCEDURE, **changed):
    files = sources(procedure, corrections="COR-7: {on: 2024-01-01, about: [drum/press], old: A., new: B., reason: C., if already done: fine}\n")
    book, _ = load_book(files)
    text = "\n".join(f"{name}: {value}" for name, value in {**GIVEN, **changed}.items() if value)
    return answer_to(read_correction(text), book, {file.path: file.text for file in files})


def test_the_line_to_change_what_is_asked_and_a_record_to_finish():
    found = answer()
    text = "\n".join(found.lines)
    assert found.sure and f"procedures/hoist/drum.yaml:{LINE}:" in text and "{early: 8 short ton, late: 10 short ton}" in text
    assert "It asks for: 7.5 short ton" in text and "What happened: The hub cracked." in text
    assert "COR-8:" in text and "about: [drum/press]" in text and 'reason: "The hub cracked."' in text


def test_a_figure_that_was_changed_since_is_told_and_not_taken_over():
    found = answer(**{"Printed figure": "9 short ton"})
    assert not found.sure and "something else now" in "\n".join(found.lines) and f"drum.yaml:{LINE}:" in "\n".join(found.lines)


def test_a_new_figure_that_is_none_is_refused_with_the_mend():
    found = answer(**{"New figure and unit": "7.5 tons"})
    assert not found.sure and "cannot be taken over as it is" in "\n".join(found.lines) and "short ton" in "\n".join(found.lines)


def test_without_a_new_figure_it_says_how_to_withdraw():
    found = answer(**{"New figure and unit": ""})
    assert not found.sure and "in doubt:" in "\n".join(found.lines)


def test_an_old_name_still_finds_the_figure_and_another_does_not():
    renamed = PROCEDURE.replace("  press:\n    label", "  force:\n    was: [press]\n    label").replace("{press.target}", "{force.target}").replace("{press}", "{force}")
    assert answer(renamed).sure
    found = answer(Spec="pres")
    assert not found.sure and found.lines[0] == "hoist/drum/pres: the book has no such figure"


GRIP = "computed:\n  grip:\n    working: taper-grip\n    torque to carry: 400 lbf·ft\n    taper: 1:12\n    mean diameter: 3.000 in\n    length: 3.50 in\n    friction: 0.12 / 0.15 / 0.20\nsteps:\n"


@pytest.mark.parametrize("procedure, asked, line, about", [
    ("hoist/drum", {"Spec": "grip", "Role": "taper", "Printed figure": "1:12", "New figure and unit": "1:10"}, "taper: 1:12", "drum/grip"),
    ("hoist", {"Spec": "hoist", "Role": "late", "Printed figure": "from 500", "New figure and unit": "from 520"}, "late: {serials: from 500}", "hoist"),
    ("hoist", {"Spec": "load", "Role": "found", "Printed figure": "2000 lbf", "New figure and unit": "1900 lbf"}, "is: 2000 lbf", "hoist/load"),
    ("site_data/presses", {"Spec": "P20", "Role": "area", "Printed figure": "5.00 in²", "New figure and unit": "4.91 in²"}, "P20:", "P20"),
    ("site_data/presses", {"Spec": "P20/main", "Role": "division", "Printed figure": "100 psi", "New figure and unit": "200 psi"}, "main: {", "P20"),
    ("site_data/surfaces", {"Spec": "oiled", "Role": "nut factor", "Printed figure": "0.13 / 0.15 / 0.17", "New figure and unit": "0.14 / 0.16 / 0.18"}, "oiled:", "oiled"),
    ("hoist/drum", {"Spec": "press", "Role": "", "Case": "", "Printed figure": "6 short ton; 8 short ton; 10 short ton; 14 short ton"}, "{early: 8 short ton", "drum/press"),
])
def test_what_a_card_or_result_rests_on_is_found_at_its_line_too(procedure, asked, line, about):
    found = answer(PROCEDURE.replace("steps:\n", GRIP), **{"Case": "", "Procedure": procedure, **asked})
    text = "\n".join(found.lines)
    assert found.sure and line in text and f"  about: [{about}]" in text
    assert not answer(PROCEDURE.replace("steps:\n", GRIP), **{"Case": "", "Procedure": procedure, **asked, "Printed figure": "1.5"}).sure


SLIP = {"Procedure": "press the drum", "Case": "early", "Spec": "Drum press force", "Role": "", "Printed figure": "8 short tons", "Serial": "312", "Condition": "dry"}


@pytest.mark.parametrize("wrong", [{}, {"Procedure": "the drum", "Sheet code on the paper": "CODE"}], ids=["by its title", "by the sheet's code"])
def test_a_slip_filled_in_by_hand_is_read_by_what_stands_on_paper(wrong):
    """No id stands on a sheet: the headings of the slip are those of the text, what is written there are titles, labels and codes."""
    files = sources(corrections="COR-7: {on: 2024-01-01, about: [drum/press], old: A., new: B., reason: C., if already done: fine}\n")
    checked = proved(files, ([], []), lambda path: PictureFile())
    editions = [SourceFile(path, text) for path, text in new_editions(checked, "2024-01-02").items()]
    book, _ = load_book([*files, *editions])
    code = codes(checked)["hoist", "drum", "early"].replace("-", " ").lower().replace("0", "o").replace("1", "l")
    given = {**GIVEN, **SLIP, **wrong}
    letter = "".join(f"{name}: {given.get(name, '').replace('CODE', code)}\n" for name in ON_PAPER)
    found = answer_to(read_correction(letter), book, {file.path: file.text for file in files})
    text = "\n".join(found.lines)
    assert found.sure and f"procedures/hoist/drum.yaml:{LINE}:" in text and "Serial: 312" in text and "about: [drum/press]" in text


def test_the_words_of_a_stranger_stay_words():
    found = answer(**{"What happened": "x\x1b[31m \"}: [\u202e{press}"})
    text = "\n".join(found.lines)
    assert "\x1b" not in text and "\u202e" not in text and r'reason: "x[31m \"}: [{press}"' in text


@pytest.mark.parametrize(("text", "ends"), [("Procedure: hoist/drum\nSpec: bolt\nRole: target\nPrinted figure: 55 lbf·ft\nNew figure and unit: 50 lbf·ft\n", 0),
                                            ("Procedure: hoist/drum\nSpec: bolt\n", 1), ("good day", 2), (None, 2)])
def test_the_command_ends_as_the_others_do(tmp_path, text, ends, capsys):
    for file in sources():
        (tmp_path / file.path).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / file.path).write_text(file.text, encoding="utf-8")
    if text is not None:
        (tmp_path / "mail.txt").write_text(text, encoding="utf-8")
    assert main(["correct", str(tmp_path / "mail.txt"), "--book", str(tmp_path)]) == ends
    assert capsys.readouterr()[ends == 2] != ""
