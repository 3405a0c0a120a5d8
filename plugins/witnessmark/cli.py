"""The `witnessmark` command. Exit 0 all well, 1 findings, 2 could not run."""

import argparse
import json
import os
import re
import sys
from datetime import date
from pathlib import Path

from .changes import manual as of_changes
from .changes.data import as_data
from .changes.from_text import answer_to
from .changes.lines import as_lines
from .changes.markdown import as_markdown
from .core.correction_text import read_correction
from .core.finding import nearest
from .core.finding_formats import as_annotations, as_json, as_text
from .loading import manual as of_reading
from .loading.revisions import Revision, RevisionProblem
from .loading.source_files import is_book
from .build import Checked, check, check_at, compared, first_book, missing_editions, new_editions, paper_of, paper_press, render
from .pages.binding import how_many, printed
from .pages.pdf import SIZES, NoPdf
from .rules.table import RULES
from .workings import manual as of_working_out
from .workings.explain import manual_lines, outcome_lines, outcome_record
from .workings.read_inputs import run
from .workings.registry import WORKINGS

#: rule -> its manual; the rule's own module speaks where it has one
MANUAL = {**{rule: lesson.text() for rule, lesson in {**of_reading.MANUAL, **of_working_out.MANUAL, **of_changes.MANUAL}.items()},
          **{rule: module.__doc__.strip() for rule, module in RULES.items()}}


def main(arguments: list[str] | None = None) -> int:
    parser = argparse.ArgumentParser(prog="witnessmark", description="Prove and explain a book of rebuild procedures.")
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")
    checking = commands.add_parser("check", help="prove a book; every mistake with its line and what to write instead")
    checking.add_argument("book", nargs="?", default=".", type=Path, metavar="BOOK")
    checking.add_argument("--format", choices=("text", "json", "annotations"), default="text",
                          help="annotations: the lines that a forge shows beside the source")
    working = commands.add_parser("work", help="one computation: witnessmark work tightening-torque thread=3/4-16 ...")
    working.add_argument("working", metavar="WORKING")
    working.add_argument("inputs", nargs="*", metavar="name=value")
    working.add_argument("--format", choices=("text", "json"), default="text")
    explaining = commands.add_parser("explain", help="the manual of a rule or working")
    explaining.add_argument("name", nargs="?", metavar="RULE-OR-WORKING")
    comparing = commands.add_parser("compare", help="what one book says otherwise than another, on meaning: figures, marks, sheets, cautions")
    comparing.add_argument("old", metavar="OLD", help="a revision of git, such as main or HEAD~1, or a folder that holds a book")
    comparing.add_argument("new", nargs="?", metavar="NEW", help="likewise; left out: the book as it stands")
    comparing.add_argument("--book", default=".", type=Path, metavar="PATH", help="the book whose revisions are meant")
    comparing.add_argument("--format", choices=("text", "markdown", "json"), default="text", help="markdown: fit for the summary that a forge shows")
    issuing = commands.add_parser("edition", help="write every sheet code that is new to site_data/editions, with what stands on the sheet")
    issuing.add_argument("book", nargs="?", default=".", type=Path, metavar="BOOK")
    issuing.add_argument("--on", type=_day, metavar="DATE", help="the day of the edition, such as 2024-01-27; left out: today")
    issuing.add_argument("--check", action="store_true", help="write nothing, and say which sheets are in no edition: the last step before a release")
    beginning = commands.add_parser("new", help="lay down a small whole book to begin with, in an empty folder")
    beginning.add_argument("folder", type=Path, metavar="FOLDER")
    printing = commands.add_parser("sheets", help="every sheet as PDF, and a binder for each machine and variant; needs the extra [pdf]")
    printing.add_argument("book", nargs="?", default=".", type=Path, metavar="BOOK")
    printing.add_argument("--out", default=Path("sheets"), type=Path, metavar="DIR", help="where the files go (default: sheets)")
    printing.add_argument("--paper", choices=tuple(SIZES), default="A4")
    correcting = commands.add_parser("correct", help="the line to change for a correction that a reader sent as plain text")
    correcting.add_argument("text", type=Path, metavar="TEXTFILE")
    correcting.add_argument("--book", default=".", type=Path, metavar="PATH")
    chosen = parser.parse_args(arguments)
    return {"check": _check, "work": _work, "explain": _explain, "compare": _compare, "edition": _edition, "new": _new, "sheets": _sheets, "correct": _correct}[chosen.command](chosen)


def _check(chosen) -> int:
    if not is_book(chosen.book):
        print(f"witnessmark: {chosen.book} is no book: it has neither procedures/ nor site_data/", file=sys.stderr)
        return 2
    checked = check(chosen.book)
    if chosen.format == "json":
        print(as_json(checked.findings))
    elif chosen.format == "annotations":
        print(as_annotations(checked.findings), end="\n" * bool(checked.findings))
    else:
        print(as_text(checked.findings, len(checked.book.procedures), checked.left_out))
    return 1 if checked.findings else 0


def _compare(chosen) -> int:
    """Ends with 1 where this must not be taken over as it is: a stop without its correction, or a finding."""
    try:
        old = _side(chosen.old, chosen.book)
        new = _side(chosen.new, chosen.book) if chosen.new else _as_it_stands(chosen.book)
        if not new[1].texts:
            raise RevisionProblem(f"there is no book at {new[0]}: neither procedures/ nor site_data/ holds a source")
    except RevisionProblem as problem:
        print(f"witnessmark: {problem}", file=sys.stderr)
        return 2
    comparison = compared(old, new)
    print({"text": as_lines, "markdown": as_markdown, "json": as_data}[chosen.format](comparison).rstrip("\n"))
    return 0 if comparison.passes else 1


def _edition(chosen) -> int:
    """Nothing is written for a book with mistakes: paper would be known by them for ever."""
    if not is_book(chosen.book):
        print(f"witnessmark: {chosen.book} is no book: it has neither procedures/ nor site_data/", file=sys.stderr)
        return 2
    checked = check(chosen.book)
    if chosen.check or checked.errors:
        found = (*checked.findings, *missing_editions(checked)) if chosen.check else checked.findings
        print(as_text(found, len(checked.book.procedures), checked.left_out))
        return 1 if found else 0
    files = new_editions(checked, chosen.on or date.today().isoformat())
    for path, text in files.items():
        (chosen.book / path).parent.mkdir(parents=True, exist_ok=True)
        (chosen.book / path).write_text(text, encoding="utf-8", newline="\n")
        print(f"written: {path}")
    print("every sheet was in an edition already" if not files else f"{len(files)} file{'s' * (len(files) != 1)} to commit together with the sources")
    return 0


def _new(chosen) -> int:
    """Writes only into a folder that it makes or finds empty, so that nothing of the reader's is touched."""
    folder = chosen.folder
    try:
        if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
            print(f"witnessmark: {folder} is not an empty folder: name one that is not there yet", file=sys.stderr)
            return 2
        files = first_book()
        for path, text in files.items():
            (folder / path).parent.mkdir(parents=True, exist_ok=True)
            with open(folder / path, "x", encoding="utf-8", newline="\n") as file:
                file.write(text)
    except OSError as error:
        print(f"witnessmark: {folder} cannot be written: {error.strerror}", file=sys.stderr)
        return 2
    print(f"{folder}: a book of one machine and one procedure, {len(files)} files. README.md there says what each is for.\n"
          f"Now type: cd {folder}, then witnessmark check, then mkdocs serve")
    return 0


def _day(text: str) -> str:
    return date.fromisoformat(text).isoformat()


def _as_it_stands(book: Path) -> tuple[str, Checked]:
    if not is_book(book):
        raise RevisionProblem(f"'{book}' is no folder that holds a book")
    return str(book), check(book)


def _sheets(chosen) -> int:
    """Nothing is printed of a book with errors: a sheet on a clipboard is believed."""
    if not is_book(chosen.book):
        print(f"witnessmark: {chosen.book} is no book: it has neither procedures/ nor site_data/", file=sys.stderr)
        return 2
    checked = check(chosen.book)
    if checked.errors:
        print(as_text(checked.findings, len(checked.book.procedures), checked.left_out))
        return 1
    front = {key: _front(chosen.book, key) for key in ("site_name", "site_url")}
    site = render(checked, front["site_name"], front["site_name"], None, paper_of(chosen.book, checked, front["site_url"], dict(os.environ)))
    try:
        press = paper_press(chosen.book, checked, site, chosen.paper)
        for done, one in enumerate(printed(site, press), 1):
            file = chosen.out / one.name
            file.parent.mkdir(parents=True, exist_ok=True)
            file.write_bytes(one.data)
            print(f"{done} of {how_many(site)}: {file}", flush=True)
    except NoPdf as problem:
        print(f"witnessmark: {problem}", file=sys.stderr)
        return 2
    except OSError as problem:
        print(f"witnessmark: {problem.filename} cannot be written: {problem.strerror}", file=sys.stderr)
        return 2
    return 0


def _front(book: Path, key: str) -> str:
    """A plain word of mkdocs.yml; '' where it is not there."""
    front = book / "mkdocs.yml"
    found = re.search(rf"^{key}:[ \t]*[\"']?(.*?)[\"']?[ \t]*$", front.read_text(encoding="utf-8"), re.MULTILINE) if front.is_file() else None
    return found[1] if found else ""


def _correct(chosen) -> int:
    """Ends with 1 where the text cannot be taken over as it is."""
    text = chosen.text.read_text(encoding="utf-8", errors="replace") if chosen.text.is_file() else ""
    if (told := read_correction(text)) is None or not is_book(chosen.book):
        print(f"witnessmark: {chosen.text} tells no figure, or {chosen.book} is no book", file=sys.stderr)
        return 2
    checked = check(chosen.book)
    answer = answer_to(told, checked.book, checked.texts)
    print("\n".join(answer.lines))
    return 0 if answer.sure else 1


def _side(name: str, book: Path) -> tuple[str, Checked]:
    """A folder that holds a book, or a revision. A name that is both is refused: whoever sends a change could lay a book called
    `main` in the way of the branch, and be compared with what they like."""
    try:
        revision = Revision(str(book), name, dict(os.environ))
    except RevisionProblem:
        if is_book(Path(name)):
            return _as_it_stands(Path(name))
        raise
    if is_book(Path(name)):
        raise RevisionProblem(f"'{name}' is both a folder and a revision: write ./{name} for the folder, or give one of them another name")
    return f"{name} ({revision.commit[:10]})", check_at(revision)


def _work(chosen) -> int:
    working = WORKINGS.get(chosen.working)
    if working is None:
        print(f"witnessmark: there is no working '{chosen.working}', {nearest(chosen.working, WORKINGS)}", file=sys.stderr)
        return 2
    texts = {}
    for item in chosen.inputs:
        name, equals, value = item.partition("=")
        if not equals:
            print(f"witnessmark: '{item}' is not name=value, write it such as 'full scale=10000 psi'", file=sys.stderr)
            return 2
        texts[name.strip()] = value.strip()
    outcome, problems = run(working, texts)
    if outcome is None:
        for problem in problems:
            print(f"{problem.message}, {problem.mend}", file=sys.stderr)
        return 2
    if chosen.format == "json":
        print(json.dumps({"working": working.id, "inputs": texts, **outcome_record(outcome), "source": working.source},
                         ensure_ascii=False, indent=1))
    else:
        print("\n".join(outcome_lines(working, outcome)))
    return 1 if outcome.refusals else 0


def _explain(chosen) -> int:
    if chosen.name in WORKINGS:
        print("\n".join(manual_lines(WORKINGS[chosen.name])))
        return 0
    if chosen.name in MANUAL:
        print(f"{chosen.name}: {MANUAL[chosen.name]}")
        return 0
    if chosen.name is None:
        print("Workings: " + ", ".join(WORKINGS) + "\nRules: " + ", ".join(sorted(MANUAL)))
        return 0
    print(f"witnessmark: there is no rule or working '{chosen.name}', {nearest(chosen.name, (*MANUAL, *WORKINGS))}",
          file=sys.stderr)
    return 2


if __name__ == "__main__":
    sys.exit(main())
