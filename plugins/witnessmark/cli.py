"""The `witnessmark` command: what may be typed. Each command is a module of `commands/` and is imported only when it is meant:
the pages, which most commands never make, take longer to import than a small book to check."""

import argparse
import os
import sys
from datetime import date
from pathlib import Path

from .pages.pdf import SIZES


def main(arguments: list[str] | None = None) -> int:
    """Exit 0 all well, 1 findings, 2 could not run."""
    chosen = _parser().parse_args(arguments)
    match chosen.command:
        case "check":
            from .commands.check import run
        case "work":
            from .commands.work import run
        case "explain":
            from .commands.explain import run
        case "compare":
            from .commands.compare import run
        case "edition":
            from .commands.edition import run
        case "new":
            from .commands.new import run
        case "sheets":
            from .commands.sheets import run
        case "correct":
            from .commands.correct import run
    try:
        ended = run(chosen)
        sys.stdout.flush()
    except BrokenPipeError:                          # who reads has seen enough, as in `witnessmark check | head`
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 1
    return ended


def _parser() -> argparse.ArgumentParser:
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
    printing = commands.add_parser("sheets", help="every sheet as PDF, a binder for each machine and one for each variant; needs the extra [pdf]")
    printing.add_argument("book", nargs="?", default=".", type=Path, metavar="BOOK")
    printing.add_argument("--out", default=Path("sheets"), type=Path, metavar="DIR", help="where the files go (default: sheets)")
    printing.add_argument("--of", default="", metavar="MACHINE[/VARIANT]", help="only what is of this machine, of this variant, or of this serial: type-24/1604")
    printing.add_argument("--paper", choices=tuple(SIZES), default="A4")
    correcting = commands.add_parser("correct", help="the line to change for a correction that a reader sent as plain text")
    correcting.add_argument("text", type=Path, metavar="TEXTFILE")
    correcting.add_argument("--book", default=".", type=Path, metavar="PATH")
    return parser


def _day(text: str) -> str:
    return date.fromisoformat(text).isoformat()


if __name__ == "__main__":
    sys.exit(main())
