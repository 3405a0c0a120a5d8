"""The `witnessmark` command. Exit 0 all well, 1 findings, 2 could not run."""

import argparse
import json
import sys
from pathlib import Path

from .core.finding import nearest
from .core.finding_formats import as_annotations, as_json, as_text
from .loading import manual as of_reading
from .loading.source_files import is_book
from .build import check
from .rules.table import RULES
from .workings import manual as of_working_out
from .workings.explain import manual_lines, outcome_lines, outcome_record
from .workings.read_inputs import run
from .workings.registry import WORKINGS

#: rule -> its manual; the rule's own module speaks where it has one
MANUAL = {**{rule: lesson.text() for rule, lesson in {**of_reading.MANUAL, **of_working_out.MANUAL}.items()},
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
    chosen = parser.parse_args(arguments)
    return {"check": _check, "work": _work, "explain": _explain}[chosen.command](chosen)


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
