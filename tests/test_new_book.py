"""The first book that `witnessmark new` lays down: whole, valid, and nobody's folder written over."""

import json
import subprocess
from pathlib import Path

import jsonschema
import pytest
import yaml
from workflow_run import environment, tools

from witnessmark.build import first_book, render
from witnessmark.prove import check
from witnessmark.cli import main
from witnessmark.core.correction_text import ASKED, GIVEN, HEAD, read_correction
from witnessmark.loading.source_schemas import SOURCES, schema_files
from witnessmark.workings.registry import WORKINGS

FILES = first_book()
YAML = sorted(path for path in FILES if path.endswith(".yaml") and path.split("/")[0] in ("procedures", "site_data"))


@pytest.fixture(scope="module")
def book(tmp_path_factory) -> Path:
    folder = tmp_path_factory.mktemp("new") / "a book"
    assert main(["new", str(folder)]) == 0
    return folder


def test_the_book_is_whole_and_nothing_is_wrong_with_it(book):
    checked = check(book)
    assert checked.findings == ()
    [procedure] = checked.book.procedures.values()
    assert {spec.kind for spec in procedure.specs.values()} == {"press force", "torque"} and len(checked.book.machines) == 1
    assert [end for step in procedure.steps for end in step.leaves] and [end for step in procedure.steps for end in step.closes]
    site = render(checked, "x", "x", None)
    [card] = [page.html for page in site.pages if page.url == "saw-bench/pulley-press-on/"]
    assert "2000 psi" in card.replace("2,000", "2000") and "75" in card


def test_the_site_is_built_without_a_warning(book, tmp_path):
    given = environment(tools(tmp_path / "tools"))
    done = subprocess.run(["mkdocs", "build", "--strict", "-d", str(tmp_path / "site")], cwd=book, env=given, capture_output=True, text=True)
    assert done.returncode == 0 and "WARNING" not in done.stderr, done.stderr


def test_it_is_written_as_it_is_kept(book):
    assert {path.relative_to(book).as_posix(): path.read_text(encoding="utf-8") for path in book.rglob("*") if path.is_file()} == FILES
    assert not [path for path in FILES if "dot-" in path] and ".github/workflows/check.yml" in FILES and ".gitignore" in FILES


@pytest.mark.parametrize("path", YAML)
def test_each_source_teaches_and_names_a_schema_that_takes_it(path):
    first, *rest = FILES[path].splitlines()
    said, _, target = first.partition("$schema=")
    assert said == "# yaml-language-server: " and rest[0].startswith("# ")
    schema = FILES[(Path("/", path).parent / target).resolve().relative_to("/").as_posix()]
    jsonschema.Draft7Validator(json.loads(schema)).validate(yaml.load(FILES[path], yaml.BaseLoader))


def test_the_editor_knows_every_source_by_its_place():
    kept = json.loads(FILES[".vscode/settings.json"])["yaml.schemas"]
    assert kept == {f"./site_data/schema/{name}.schema.json": f"/{files}" for name, (files, _) in SOURCES.items()}
    assert {f"site_data/schema/{name}" for name in schema_files(WORKINGS)} == {path for path in FILES if path.startswith("site_data/schema/")}


def test_the_readme_of_a_book_shows_a_correction_that_holds(book, tmp_path):
    text = FILES["README.md"]
    shown = text.split("```yaml\n")[1].split("```")[0]
    (tmp_path / "book").mkdir()
    for path, content in {**FILES, "site_data/corrections.yaml": shown}.items():
        (tmp_path / "book" / path).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / "book" / path).write_text(content.replace("late: 14 short ton", "late: 13 short ton"), encoding="utf-8")
    assert check(tmp_path / "book").findings == ()
    assert main(["compare", str(book), str(tmp_path / "book")]) == 0
    for named in ("procedures/saw-bench/pulley-press-on.yaml", "site_data/presses.yaml", "mkdocs.yml", ".github/CODEOWNERS", "requirements.txt"):
        assert named in text and named in FILES


def test_an_issue_is_a_letter_that_the_tool_reads_back():
    """Each line of the template filled in by hand; `witnessmark correct` takes the text of the issue."""
    _, _, letter = FILES[".github/ISSUE_TEMPLATE/correction.md"].partition("\n---\n")
    names = [line.removesuffix(": ") for line in letter.splitlines() if line.endswith(": ")]
    assert letter.startswith(HEAD) and set(ASKED) < set(names) and set(names) - set(ASKED) < set(GIVEN)
    filled = "\n".join(f"{line}about {line[:-2]}" if line.endswith(": ") else line for line in letter.splitlines())
    assert read_correction(filled).values == {name: f"about {name}" for name in names}


@pytest.mark.parametrize("made", ["file", "full folder", "hidden file", "link to nowhere"])
def test_what_is_there_already_is_not_touched(tmp_path, capsys, made):
    at = tmp_path / "mine"
    if made == "file":
        at.write_text("mine")
    elif made == "link to nowhere":
        at.symlink_to(tmp_path / "elsewhere")
    else:
        at.mkdir()
        (at / ("note" if made == "full folder" else ".note")).write_text("mine")
    before = sorted(tmp_path.rglob("*"))
    assert main(["new", str(at)]) == 2
    told = capsys.readouterr().err
    assert str(at) in told and ("is not an empty folder" in told or "cannot be written" in told)
    assert sorted(tmp_path.rglob("*")) == before


def test_an_empty_folder_is_taken(tmp_path, capsys):
    assert main(["new", str(tmp_path)]) == 0 and (tmp_path / "mkdocs.yml").exists()
    assert f"{len(FILES)} files" in capsys.readouterr().out
