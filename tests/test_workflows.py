"""What a forge does with a change to a book: its own commands, run here against real repositories, and its files held to the rules
that keep strangers' changes harmless."""

import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from workflow_run import CHANGE_ONLY, git, run_job, workflow

from witnessmark.build import first_book

ROOT = Path(__file__).parent.parent
OURS = ROOT / ".github" / "workflows"
OF_BOOKS = ROOT / "plugins" / "witnessmark" / "new_book" / "dot-github" / "workflows"
FILES = sorted([*OURS.glob("*.yml"), *OF_BOOKS.glob("*.yml")])
JOB = workflow(OF_BOOKS / "check.yml")["jobs"]["check"]
PROVE, TOUCHES, BUILD, MOVES = (step["name"] for step in JOB["steps"] if "run" in step and not step["name"].startswith("Install"))
SOURCE = "procedures/saw-bench/pulley-press-on.yaml"
CORRECTION = """\
COR-1:
  on: 2026-01-31
  about: pulley-press-on/press-force
  old: Late ceiling 14 short tons.
  new: Late ceiling 13 short tons.
  reason: A late hub cracked at 13.5 short tons.
  if already done: inspect
"""


@pytest.fixture(scope="module")
def main_line(tmp_path_factory) -> Path:
    """A first book, committed as it was laid down."""
    folder = tmp_path_factory.mktemp("forge") / "book"
    for path, text in first_book().items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_text(text, encoding="utf-8")
    git(folder, "init", "-q", "-b", "main")
    git(folder, "add", ".")
    git(folder, "commit", "-qm", "first")
    return folder


@pytest.fixture
def change(main_line, tmp_path):
    """`change(files, old=, new=)`: what the forge's job does with a branch that has these files and this one change of the procedure."""

    def run(files: dict[str, str] | None = None, old: str = "", new: str = ""):
        book = tmp_path / "book"
        shutil.copytree(main_line, book)
        git(book, "switch", "-qc", "change")
        if old:
            text = (book / SOURCE).read_text(encoding="utf-8")
            assert text.count(old) == 1
            (book / SOURCE).write_text(text.replace(old, new), encoding="utf-8")
        for path, text in (files or {}).items():
            (book / path).parent.mkdir(parents=True, exist_ok=True)
            (book / path).write_text(text, encoding="utf-8")
        git(book, "add", "-A", "-f")
        git(book, "commit", "-qm", "change")
        git(book, "switch", "-q", "main")
        git(book, "merge", "-q", "--no-ff", "-m", "merge", "change")          # what the forge checks out
        return run_job(JOB, book, tmp_path / "runner")

    return run


def test_a_corrected_figure_passes_and_shows_what_it_moves(change, tmp_path):
    run = change({"site_data/corrections.yaml": CORRECTION}, "late: 14 short ton", "late: 13 short ton")
    assert run.status == {PROVE: 0, TOUCHES: 0, MOVES: 0, BUILD: 0}
    assert run.summary.startswith("## Only data is touched\n")
    assert "`14 short ton (124 kN)` | `13 short ton (115 kN)`" in run.summary and "COR-1" in run.summary and "never pass 5000 psi" in run.summary
    assert "::" not in run.printed[PROVE] + run.printed[TOUCHES] + run.printed[MOVES]
    assert "DO NOT" not in run.summary and (tmp_path / "book/site/saw-bench/pulley-press-on/index.html").exists()


def test_a_broken_file_is_told_beside_its_line_and_no_site_is_built(change, tmp_path):
    run = change(old="surface: oiled", new="surface: oild")
    line = next(number for number, text in enumerate((tmp_path / "book" / SOURCE).read_text(encoding="utf-8").splitlines(), 1) if "oild" in text)
    assert run.status == {PROVE: 1, TOUCHES: 0, MOVES: 1}
    assert f"::error file={SOURCE},line={line},col=" in run.printed[PROVE] and "oiled" in run.printed[PROVE]
    assert "oild" in run.summary and run.printed[MOVES].startswith("::error title=Not to be merged yet::")
    assert not (tmp_path / "book/site").exists()


def test_a_change_that_touches_the_machinery_is_marked(change):
    run = change({"mkdocs.yml": first_book()["mkdocs.yml"] + "hooks: [procedures/evil.py]\n", "procedures/evil.py": "print('here')\n",
                  "site_data/schema/new.json": "{}", "site_data/editions/x/y.jsonl": ""})
    assert run.status[TOUCHES] == 0 and run.printed[TOUCHES].startswith("::warning title=Not only data::")
    marked = run.summary.split("\n## ")[0]
    assert marked.startswith("## NOT ONLY DATA\n")
    assert [line for line in marked.splitlines() if line.startswith("    ")] == [
        "    mkdocs.yml", "    procedures/evil.py", "    site_data/editions/x/y.jsonl", "    site_data/schema/new.json"]


def test_what_only_looks_like_data_is_marked(change):
    run = change({"elsewhere/note.yaml": "x\n", "procedures/run.sh": "x\n", ".github/workflows/mine.yml": "on: push\n", "site_data.yaml": "x\n",
                  f"x/{'y' * 250}": ""})
    assert [line.strip() for line in run.summary.split("\n## ")[0].splitlines() if line.startswith("    ")] == [
        ".github/workflows/mine.yml", "elsewhere/note.yaml", "procedures/run.sh", "site_data.yaml", f"x/{'y' * 198}"]


def test_a_grave_change_is_passed_knowingly_or_not_at_all(change, tmp_path):
    """Without its correction it ends red, with the site built to be looked at; with it, in a warning. It stands first both times."""
    run = change(old="late: 14 short ton", new="late: 18 short ton")
    assert run.status == {PROVE: 0, TOUCHES: 0, BUILD: 0, MOVES: 1} and run.printed[MOVES].startswith("::error title=Not to be merged yet::")
    assert run.summary.split("\n## ")[1].startswith("Stop and look") and (tmp_path / "book/site/saw-bench/pulley-press-on/index.html").exists()


def test_a_grave_change_with_its_correction_is_passed_for_a_second_reader(change):
    run = change({"site_data/corrections.yaml": CORRECTION.replace("13 short tons.\n", "18 short tons.\n")}, "late: 14 short ton", "late: 18 short ton")
    assert run.status == {PROVE: 0, TOUCHES: 0, BUILD: 0, MOVES: 0} and run.printed[MOVES].startswith("::warning title=A second reader::")
    assert run.summary.split("\n## ")[1].startswith("Stop and look") and "COR-1; needs a second reader" in run.summary


def test_the_first_book_of_a_repository_passes(tmp_path):
    """main has no book yet: there is nothing to compare with, and all of it is new."""
    book = tmp_path / "book"
    book.mkdir()
    (book / "README.md").write_text("soon\n", encoding="utf-8")
    git(book, "init", "-q", "-b", "main")
    git(book, "add", ".")
    git(book, "commit", "-qm", "begun")
    git(book, "switch", "-qc", "change")
    for path, text in first_book().items():
        (book / path).parent.mkdir(parents=True, exist_ok=True)
        (book / path).write_text(text, encoding="utf-8")
    git(book, "add", ".")
    git(book, "commit", "-qm", "first book")
    git(book, "switch", "-q", "main")
    git(book, "merge", "-q", "--no-ff", "-m", "merge", "change")
    run = run_job(JOB, book, tmp_path / "runner")
    assert run.status == {PROVE: 0, TOUCHES: 0, BUILD: 0, MOVES: 0}
    assert re.search(r"There is no book at `HEAD\^1 \([0-9a-f]{10}\)`: everything is new\.", run.summary) and "`a new sheet`" in run.summary


def test_a_book_laid_in_the_way_of_the_revision_is_refused(change):
    """Compared with a folder called HEAD^1, a change could show whatever its sender likes."""
    run = change({f"HEAD^1/{SOURCE}": first_book()[SOURCE].replace("late: 14", "late: 18")}, "late: 14 short ton", "late: 18 short ton")
    assert run.status[MOVES] == 2 and "'HEAD^1' is both a folder and a revision" in run.printed[MOVES] and "## NOT ONLY DATA" in run.summary


EVIL = "::add-mask::x ::set-output name=a::b %0A::error::x $(touch taken) `touch taken` @everyone [here](https://evil.example) ${{ secrets.X }}"


def test_words_of_a_stranger_are_neither_commands_nor_markup(change, tmp_path):
    names = {"--output=taken": "", "procedures/saw-bench/--help.yaml": "title: x\n", "procedures/saw-bench/;touch taken;.yaml": "title: x\n",
             "::error::x": "", "`@everyone` [a](b)": "", "line\n::error::end": "", ".gitattributes": "*.yaml diff=evil filter=evil\n", "-": ""}
    run = change(names, "title: Press the pulley on the spindle", f"title: '{EVIL}'")
    assert run.status == {PROVE: 1, TOUCHES: 0, MOVES: 1}
    commands = [line for said in run.printed.values() for line in said.splitlines() if re.match(r"\s*(::|##\[)", line)]
    assert all(re.match(rf"::(error|warning) (file=(procedures|site_data)/[^:,]*,line=\d+,col=\d+,)?title=[\w -]+::", line) for line in commands), commands
    assert not [*tmp_path.rglob("taken"), *ROOT.glob("taken")]
    head, _, rest = run.summary.partition("\n## ")
    listed = [line for line in head.splitlines()[4:] if line]
    assert '    "line\\n::error::end"' in listed and all(line.startswith("    ") for line in listed)
    assert "@everyone" not in re.sub(r"(`+).*?\1", "", rest) and "evil.example" not in re.sub(r"(`+).*?\1", "", rest)


def test_an_edition_does_not_follow_a_link_out_of_the_book(main_line, tmp_path):
    book, outside = tmp_path / "book", tmp_path / "outside"
    shutil.copytree(main_line, book)
    outside.mkdir()
    (book / "site_data/editions").mkdir()
    (book / "site_data/editions/saw-bench").symlink_to(outside)
    from witnessmark.cli import main
    assert main(["edition", str(book), "--on", "2026-01-31"]) == 1 and not list(outside.iterdir())


# What keeps the files themselves harmless.

@pytest.mark.parametrize("path", FILES, ids=lambda path: f"{path.parent.parent.name}/{path.name}")
def test_a_workflow_gives_a_stranger_nothing(path):
    """GitHub's "Secure use reference": no pull_request_target, the least token, actions by commit, no text of others in a command."""
    text, read = path.read_text(encoding="utf-8"), workflow(path)
    assert set(read["on"]) <= {"pull_request", "push"} and (read["on"] if isinstance(read["on"], list) else read["on"]["push"]["branches"]) == ["main"]
    assert "secrets." not in text and "pull_request_target" not in text
    assert read["permissions"] in ({}, "")
    for name, job in read["jobs"].items():
        assert set(job["permissions"].items()) == ({("pages", "write"), ("id-token", "write")} if name == "deploy" else {("contents", "read")})
        for step in job["steps"]:
            assert "${{" not in step.get("run", "")
            if "uses" in step:
                assert re.fullmatch(r"actions/[\w-]+@[0-9a-f]{40}", step["uses"])
            if step.get("uses", "").startswith("actions/checkout@"):
                assert step["with"]["persist-credentials"] == "false" and "ref" not in step["with"]


def test_a_deploy_runs_nothing_of_the_repository_and_never_for_a_change():
    for path in (OURS / "publish.yml", OF_BOOKS / "publish.yml"):
        read = workflow(path)
        assert list(read["on"]) == ["push"]
        assert [step.get("uses", "").split("@")[0] for step in read["jobs"]["deploy"]["steps"]] == ["actions/deploy-pages"]


def test_this_repository_marks_and_compares_as_its_books_do():
    ours = {step["name"]: step for step in workflow(OURS / "check.yml")["jobs"]["check"]["steps"] if "name" in step}
    theirs = {step["name"]: step for step in JOB["steps"] if "name" in step}
    for name in (TOUCHES, MOVES):
        assert ours[name]["run"] == theirs[name]["run"] and ours[name]["if"] == theirs[name]["if"] == CHANGE_ONLY


def test_a_linter_of_workflows_finds_nothing():
    linter = Path(sys.executable).parent / "zizmor"
    done = subprocess.run([str(linter), "--offline", "--no-progress", "--persona", "pedantic", *map(str, FILES)], capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr


def test_the_linter_would_find_something(tmp_path):
    bad = tmp_path / "bad.yml"
    bad.write_text("name: x\non: pull_request_target\njobs:\n  x:\n    runs-on: ubuntu-24.04\n    steps:\n"
                   "      - run: echo ${{ github.event.pull_request.title }}\n", encoding="utf-8")
    done = subprocess.run([str(Path(sys.executable).parent / "zizmor"), "--offline", "--no-progress", str(bad)], capture_output=True, text=True)
    assert done.returncode != 0 and "template-injection" in done.stdout


def fits_the_schema(*paths: Path) -> bool:
    """The schema of workflows from json.schemastore.org, as check-jsonschema carries it; nothing is fetched."""
    command = [sys.executable, "-m", "check_jsonschema", "--builtin-schema", "vendor.github-workflows", *map(str, paths)]
    return subprocess.run(command, capture_output=True, text=True).returncode == 0


def test_every_key_of_a_workflow_is_one_that_the_forge_knows():
    assert fits_the_schema(*FILES)


@pytest.mark.parametrize("key, misspelt", [("if: ${{", "iff: ${{"), ("pull_request:", "pull_requests:"), ("permissions: {}", "permisions: {}"),
                                           ("cancel-in-progress:", "cancel-in-progres:"), ("contents: read", "contents: reed")])
def test_a_key_that_the_forge_would_drop_in_silence_is_seen(tmp_path, key, misspelt):
    """Of these the linter of what strangers could abuse lets the first, second and fourth through."""
    text = (OF_BOOKS / "check.yml").read_text(encoding="utf-8")
    assert key in text
    (tmp_path / "check.yml").write_text(text.replace(key, misspelt, 1), encoding="utf-8")
    assert not fits_the_schema(tmp_path / "check.yml")


def test_owners_own_all_but_data():
    """The last line of CODEOWNERS that fits a file decides; a line without a name leaves it to anyone."""
    for path in (ROOT / ".github/CODEOWNERS", OF_BOOKS.parent / "CODEOWNERS"):
        lines = [line.split() for line in path.read_text(encoding="utf-8").splitlines() if line and not line.startswith("#")]
        assert lines[0][0] == "*" and lines[0][1].startswith("@")
        free = {line[0] for line in lines if len(line) == 1}
        assert free == {line[0] for line in lines[1:]}
        excluded = set(re.findall(r":\(exclude\)(\S+)'", next(step["run"] for step in JOB["steps"] if step.get("name") == TOUCHES)))
        assert {pattern.lstrip("/").replace("procedures/**/", "procedures/") for pattern in free} == excluded | {"site_data/machines/*.yaml"}
