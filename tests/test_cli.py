"""The command: what it prints and how it ends."""

import json
import re
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest
import yaml
from small_book import PROCEDURE, sources

from witnessmark.cli import main

CARD = ["work", "press-card", "area=10.97 in2", "rated pressure=9100 psi", "full scale=10000 psi", "division=100 psi",
        "accuracy=1.5 %", "target=18 long ton", "floor=14.9 long ton"]


def book(folder: Path, procedure: str = PROCEDURE) -> Path:
    for file in sources(procedure):
        path = folder / file.path
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(file.text, encoding="utf-8")
    return folder


def test_a_clean_book_ends_well(tmp_path, capsys):
    assert main(["check", str(book(tmp_path))]) == 0
    assert capsys.readouterr().out == "1 procedure: no findings\n"


def test_a_slip_is_one_line_with_a_path_inside_the_book(tmp_path, capsys):
    assert main(["check", str(book(tmp_path, PROCEDURE.replace("HZ-1", "HZ-7")))]) == 1
    assert capsys.readouterr().out.splitlines() == [
        "procedures/hoist/drum.yaml:34:5: error: there is no caution 'HZ-7', did you mean 'HZ-1'? [unknown-reference]",
        "1 procedure: 1 finding"]


def test_findings_as_json(tmp_path, capsys):
    main(["check", "--format", "json", str(book(tmp_path, PROCEDURE.replace("HZ-1", "HZ-7")))])
    [finding] = json.loads(capsys.readouterr().out)
    assert finding["place"] == {"path": "procedures/hoist/drum.yaml", "line": 34, "column": 5}


def test_findings_as_annotations(tmp_path, capsys):
    assert main(["check", "--format", "annotations", str(book(tmp_path, PROCEDURE.replace("HZ-1", "HZ-7")))]) == 1
    assert capsys.readouterr().out == ("::error file=procedures/hoist/drum.yaml,line=34,col=5,title=unknown-reference"
                                       "::there is no caution 'HZ-7', did you mean 'HZ-1'?\n")
    assert main(["check", "--format", "annotations", str(book(tmp_path))]) == 0
    assert capsys.readouterr().out == ""


def test_a_folder_that_is_no_book_could_not_run(tmp_path, capsys):
    assert main(["check", str(tmp_path)]) == 2
    assert "is no book" in capsys.readouterr().err


@pytest.mark.parametrize("name, text", [("wide.yaml", b"title: \xff\xfe"), ("big.yaml", b"#" * 1_000_001),
                                        ("nul.yaml", b"title: a\0b"), ("bidi.yaml", "title: a\u202eb".encode())])
def test_a_file_that_is_no_text_is_a_finding(tmp_path, capsys, name, text):
    (book(tmp_path) / "procedures/hoist" / name).write_bytes(text)
    assert main(["check", str(tmp_path)]) == 1
    assert f"procedures/hoist/{name}:1:" in capsys.readouterr().out


def test_a_link_out_of_the_book_is_not_followed(tmp_path, capsys):
    secret = tmp_path / "secret.yaml"
    secret.write_text("title: secret")
    (book(tmp_path / "book") / "procedures/hoist/link.yaml").symlink_to(secret)
    assert main(["check", str(tmp_path / "book")]) == 1
    assert "leaves the book" in capsys.readouterr().out


def test_work_prints_marks_and_source(capsys):
    assert main([*CARD, "ceiling=22 long ton"]) == 0
    printed = capsys.readouterr().out
    assert "mark at 100 %: 3600 psi" in printed and "never-pass mark: 4300 psi" in printed and "Source: " in printed


def test_work_refuses_aloud_and_ends_with_one(capsys):
    assert main([*CARD, "ceiling=18 long ton"]) == 1
    assert "REFUSED: " in capsys.readouterr().out


def test_work_names_what_is_missing_with_an_example(capsys):
    assert main(["work", "taper-grip", "taper=1:12"]) == 2
    assert "needs 'mean diameter'" in capsys.readouterr().err


def test_explain_knows_rules_and_workings_and_says_so_of_others(capsys):
    assert main(["explain", "press-card"]) == 0
    assert main(["explain", "limits-in-order"]) == 0
    assert main(["explain", "pres-card"]) == 2
    assert "did you mean 'press-card'?" in capsys.readouterr().err


def test_the_pre_commit_hook_runs_this_command_on_every_source_and_nothing_else(tmp_path, monkeypatch):
    root = Path(__file__).parent.parent
    [hook] = yaml.safe_load((root / ".pre-commit-hooks.yaml").read_text(encoding="utf-8"))
    program, *arguments = hook["entry"].split()
    assert program in tomllib.loads((root / "pyproject.toml").read_text(encoding="utf-8"))["project"]["scripts"]
    monkeypatch.chdir(book(tmp_path))
    assert main(arguments) == 0
    book(tmp_path, PROCEDURE.replace("HZ-1", "HZ-7"))
    assert main(arguments) == 1
    taken = [file.path for file in sources() if re.search(hook["files"], file.path)]
    assert taken == [file.path for file in sources()]
    assert not re.search(hook["files"], "site_data/schema/procedure.schema.json") and not hook["pass_filenames"]


def test_compare_of_two_folders_ends_by_how_grave_it_is(tmp_path, capsys):
    old, words, stop = (book(tmp_path / name, text) for name, text in (
        ("old", PROCEDURE), ("words", PROCEDURE.replace("Tighten the", "Pull the")), ("stop", PROCEDURE.replace("is: 14 short", "is: 15 short"))))
    assert main(["compare", str(old), str(old)]) == 0
    assert capsys.readouterr().out.endswith("Nothing has changed. Every printed sheet still holds.\n")
    assert main(["compare", str(old), str(words)]) == 0
    assert "Wording only" in capsys.readouterr().out
    assert main(["compare", str(old), str(stop), "--format", "json"]) == 1
    assert json.loads(capsys.readouterr().out)["verdict"] == "stop"
    assert main(["compare", str(old), str(stop), "--format", "markdown"]) == 1
    assert "a ceiling is raised" in capsys.readouterr().out


@pytest.mark.parametrize("name", ["--output=x", "no/such/folder", "main..v1"])
def test_compare_with_what_is_neither_folder_nor_revision_could_not_run(tmp_path, capsys, name):
    with_dashes = ["--", name] if name.startswith("-") else [name]
    assert main(["compare", "--book", str(book(tmp_path)), *with_dashes]) == 2
    assert "witnessmark: " in capsys.readouterr().err


def test_a_stop_passes_with_its_correction_and_is_still_told_first(tmp_path, capsys):
    raised = PROCEDURE.replace("is: 14 short", "is: 15 short")
    old, new = book(tmp_path / "old"), book(tmp_path / "new", raised)
    (new / "site_data/corrections.yaml").write_text(
        "COR-1: {on: 2024-02-03, about: drum/press, old: It was 14., new: It is 15., reason: A new hub., if already done: fine}\n", encoding="utf-8")
    assert main(["compare", str(old), str(new)]) == 0
    told = capsys.readouterr().out.splitlines()
    assert told[2] == "Stop and look before anyone works by this" and "a ceiling is raised; COR-1; needs a second reader" in told[4]
    assert told[-1] == "Stop and look before anyone works by this. Each stop has its correction: it needs a second reader, and may then be taken over"
    assert main(["compare", str(old), str(new), "--format", "json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert (data["verdict"], data["passes"], data["first"]) == ("stop", True, False)


def test_compare_with_a_folder_that_holds_no_book_could_not_run(tmp_path, capsys):
    (tmp_path / "none").mkdir()
    assert main(["compare", str(book(tmp_path / "book")), "--book", str(tmp_path / "none")]) == 2
    assert "is no folder that holds a book" in capsys.readouterr().err


def test_edition_writes_once_and_its_check_is_for_the_release(tmp_path, capsys):
    folder = book(tmp_path)
    assert main(["edition", str(folder), "--check"]) == 1
    assert capsys.readouterr().out.count("[edition-missing]") == 2
    assert main(["edition", str(folder), "--on", "2024-01-02"]) == 0
    assert "written: site_data/editions/hoist/drum.jsonl" in capsys.readouterr().out
    text = (folder / "site_data/editions/hoist/drum.jsonl").read_text(encoding="utf-8")
    assert text.count('"on":"2024-01-02"') == 2
    assert main(["edition", str(folder)]) == 0
    assert "every sheet was in an edition already" in capsys.readouterr().out
    assert main(["edition", str(folder), "--check"]) == 0 == main(["check", str(folder)])


def test_no_edition_is_written_of_a_book_with_mistakes(tmp_path, capsys):
    folder = book(tmp_path, PROCEDURE.replace("HZ-1", "HZ-7"))
    assert main(["edition", str(folder), "--on", "2024-01-02"]) == 1
    assert "[unknown-reference]" in capsys.readouterr().out and not (folder / "site_data/editions").exists()


def test_an_edition_has_a_day(tmp_path, capsys):
    with pytest.raises(SystemExit):
        main(["edition", str(book(tmp_path)), "--on", "May 11"])
    assert "invalid" in capsys.readouterr().err
    assert main(["edition", str(tmp_path)]) == 0
    assert re.search(r'"on":"20[0-9]{2}-[01][0-9]-[0-3][0-9]"', (tmp_path / "site_data/editions/hoist/drum.jsonl").read_text(encoding="utf-8"))


def test_compare_with_a_revision_of_git_is_of_the_book_as_it_stands(tmp_path, capsys, monkeypatch):
    """A figure corrected without a word is stopped; with its correction and an edition it may pass, and old paper is known."""
    def git(*arguments: str) -> None:
        subprocess.run(["git", "-c", "user.name=A", "-c", "user.email=a@example.org", *arguments], cwd=folder, check=True, capture_output=True)

    folder = book(tmp_path / "book")
    git("init", "-q", "-b", "main")
    assert main(["edition", str(folder), "--on", "2024-01-02"]) == 0
    git("add", ".")
    git("commit", "-qm", "first")
    monkeypatch.chdir(folder)
    capsys.readouterr()
    assert main(["compare", "main"]) == 0 and capsys.readouterr().out.endswith("Nothing has changed. Every printed sheet still holds.\n")
    book(folder, PROCEDURE.replace("is: 14 short ton", "is: 13.5 short ton"))
    assert main(["compare", "main"]) == 1
    assert "[correction-missing]" in capsys.readouterr().out
    (folder / "site_data/corrections.yaml").write_text("COR-1: {on: 2024-02-03, about: drum/press, old: It was 14., new: It is 13.5., reason: A hub split., if already done: inspect}\n")
    git("checkout", "-qb", "mend")
    git("add", ".")
    git("commit", "-qm", "mend")
    assert main(["compare", "main", "mend", "--format", "json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert data["verdict"] == "look" and data["changes"][0]["corrections"] == ["COR-1"] and len(data["sheets"]) == 2
    assert re.fullmatch(r"main \([0-9a-f]{10}\)", data["old"])
    assert main(["edition", "--check"]) == 1 and main(["edition", "--on", "2024-02-03"]) == 0 and main(["edition", "--check"]) == 0


def test_where_there_was_no_book_yet_everything_is_new(tmp_path, capsys):
    def git(*arguments: str) -> None:
        subprocess.run(["git", "-c", "user.name=A", "-c", "user.email=a@example.org", *arguments], cwd=folder, check=True, capture_output=True)

    folder = tmp_path / "book"
    folder.mkdir()
    (folder / "note").write_text("soon\n", encoding="utf-8")
    git("init", "-q", "-b", "main")
    git("add", ".")
    git("commit", "-qm", "begun")
    book(folder)
    assert main(["compare", "main", "--book", str(folder)]) == 0
    told = capsys.readouterr().out
    assert "There is no book at main (" in told and "hoist/drum, late: a new sheet -> " in told and "Stop" not in told
    git("add", ".")
    git("commit", "-qm", "book")
    assert main(["compare", "main", "main~1", "--book", str(folder)]) == 2
    assert "there is no book at main~1" in capsys.readouterr().err


def test_sheets_writes_each_sheet_and_binder_and_tells_how_far_it_is(tmp_path, capsys):
    book(tmp_path)
    if main(["sheets", str(tmp_path), "--out", str(tmp_path / "out"), "--paper", "Letter"]) == 2:
        pytest.skip(capsys.readouterr().err.strip())
    told = capsys.readouterr().out.splitlines()
    assert told[0].startswith("1 of 5: ") and len(told) == 5
    assert sorted(file.relative_to(tmp_path / "out").as_posix() for file in (tmp_path / "out").rglob("*.pdf")) == [
        "hoist/binder-early.pdf", "hoist/binder-late.pdf", "hoist/binder.pdf", "hoist/drum-early.pdf", "hoist/drum-late.pdf"]


@pytest.mark.parametrize("mine", ["hoist/late", "hoist/731"])
def test_sheets_of_my_own_serial_are_those_of_its_variant_alone(tmp_path, capsys, mine):
    book(tmp_path)
    if main(["sheets", str(tmp_path), "--out", str(tmp_path / "out"), "--of", mine]) == 2:
        pytest.skip(capsys.readouterr().err.strip())
    assert sorted(file.name for file in (tmp_path / "out").rglob("*.pdf")) == ["binder-late.pdf", "drum-late.pdf"]


@pytest.mark.parametrize("named, says", [("hoisst", "there is no machine 'hoisst'"), ("hoist/later", "hoist has no variant or serial 'later'")])
def test_sheets_of_what_is_not_there_says_what_is(tmp_path, capsys, named, says):
    book(tmp_path)
    assert main(["sheets", str(tmp_path), "--out", str(tmp_path / "out"), "--of", named]) == 2
    assert says in capsys.readouterr().err and not (tmp_path / "out").exists()


def test_sheets_prints_nothing_of_a_book_with_errors(tmp_path, capsys):
    book(tmp_path, PROCEDURE.replace("HZ-1", "HZ-7"))
    assert main(["sheets", str(tmp_path), "--out", str(tmp_path / "out")]) == 1
    assert "there is no caution 'HZ-7'" in capsys.readouterr().out and not (tmp_path / "out").exists()


def test_sheets_without_the_extra_says_the_one_thing_that_is_missing(tmp_path, capsys, monkeypatch):
    book(tmp_path)
    monkeypatch.setitem(sys.modules, "weasyprint", None)
    assert main(["sheets", str(tmp_path), "--out", str(tmp_path / "out")]) == 2
    assert "pip install 'witnessmark[pdf]'" in capsys.readouterr().err


@pytest.mark.parametrize(("typed", "not_needed"), [
    (["check", "."], {"jinja2", "markupsafe", "segno", "pint", "mkdocs", "latex2mathml", "subprocess", "witnessmark.build"}),
    (CARD, {"jinja2", "segno", "pint", "mkdocs", "yaml", "witnessmark.build", "witnessmark.prove", "witnessmark.rules.table"}),
    (["explain", "limits-in-order"], {"jinja2", "segno", "pint", "mkdocs", "witnessmark.build", "witnessmark.prove"}),
], ids=lambda typed: typed[0] if isinstance(typed, list) else "")
def test_a_command_imports_nothing_that_another_one_needs(tmp_path, typed, not_needed):
    """Start-up is most of what a small book waits for; one import at the top of a shared module brings it all back."""
    code = f"import sys; from witnessmark.cli import main; main({typed!r}); print(*sys.modules)"
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, cwd=book(tmp_path), env={"PYTHONPATH": ":".join(sys.path)})
    assert set(ran.stdout.splitlines()[-1].split()) & not_needed == set(), ran.stderr


def test_a_reader_who_has_seen_enough_is_no_traceback(tmp_path):
    """`witnessmark explain | head -1`: the reading end is closed before all is said."""
    code = "from witnessmark.cli import main; import sys; sys.exit(main(['explain', 'limits-in-order']))"
    with subprocess.Popen([sys.executable, "-c", code], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True,
                          env={"PYTHONPATH": ":".join(sys.path)}) as running:
        running.stdout.close()
        said = running.stderr.read()
    assert (running.returncode, said) == (1, "")
