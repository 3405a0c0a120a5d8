"""The manual of every rule: each id that a finding can bear has one, and its wrong source is what the rule finds."""

import ast
from pathlib import Path

import pytest
from small_book import PROCEDURE, SITE_DATA

from witnessmark.changes import manual as of_changes
from witnessmark.cli import main
from witnessmark.loading import manual as of_reading
from witnessmark.loading.load_book import load_book
from witnessmark.loading.source_files import SourceFile
from witnessmark.rules.table import RULES, check_book
from witnessmark.workings import manual as of_working_out
from witnessmark.workings.derive import derive_book

HOUSE = Path(__file__).parent.parent / "plugins" / "witnessmark"
LESSONS = {**of_reading.MANUAL, **of_working_out.MANUAL, **of_changes.MANUAL}
IN_WORDS = {"deceiving-sign", "unreadable", "stray-file", "edition-broken", "edition-twice", "correction-missing", "edition-missing"}           # no example can be shown; tests of hostile files and of editions hold these rules
PATH = "procedures/hoist/drum.yaml"

# The smallest book, with a floor that is worked out.
BOOK = {**SITE_DATA, PATH: PROCEDURE.replace("{role: floor, is: 6 short ton, source: shop p. 1}", """\
role: floor
        from: grip.force needed
        source: shop p. 1""").replace("steps:\n", """\
computed:
  grip:
    working: taper-grip
    torque to carry: 400 lbf·ft
    taper: '1:12'
    mean diameter: 3.000 in
    length: 3.50 in
    friction: 0.12 / 0.15 / 0.20
steps:
""", 1)}


def rules_found(texts: dict[str, str]) -> set[str]:
    book, found = load_book([SourceFile(path, text) for path, text in sorted(texts.items())])
    derived, more = derive_book(book)
    return {finding.rule for finding in (*found, *more, *check_book(book, derived))}


def with_the_slip(right: str, wrong: str) -> dict[str, str]:
    """The book with the wrong source in the place of the right one, which must stand in it once."""
    if right == PATH:
        return {wrong if path == PATH else path: text for path, text in BOOK.items()}
    [place] = [path for path, text in BOOK.items() if text.count(right)]
    assert BOOK[place].count(right) == 1
    return {**BOOK, place: BOOK[place].replace(right, wrong)}


def ids_in(source: str) -> set[str]:
    """Rule ids that a module gives to findings: the text after the place, written out or by a name of the module."""
    tree = ast.parse(source)
    names = {target.id: node.value.value for node in ast.walk(tree) if isinstance(node, ast.Assign)
             and isinstance(node.value, ast.Constant) for target in node.targets if isinstance(target, ast.Name)}
    found = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and len(node.args) >= 4 and (
                getattr(node.func, "attr", "") in ("error", "warn", "warning") or getattr(node.func, "id", "") == "Finding"):
            rule = node.args[1]
            found.add(rule.value if isinstance(rule, ast.Constant) else names.get(getattr(rule, "id", "")))
    return found - {None}


def test_every_rule_has_a_manual_and_every_manual_a_rule():
    used = set().union(*(ids_in(file.read_text(encoding="utf-8")) for file in HOUSE.rglob("*.py")))
    used |= {"text-cut", "text-bent", "key-swallowed"} & set(LESSONS)      # handed on by yaml_tree as a variable
    assert used | set(RULES) == set(LESSONS) | set(RULES)


def test_the_book_without_a_slip_has_no_finding():
    assert rules_found(BOOK) == set()


@pytest.mark.parametrize("rule", sorted(set(LESSONS) - IN_WORDS))
def test_the_wrong_source_is_what_the_rule_finds(rule):
    assert rule in rules_found(with_the_slip(LESSONS[rule].right, LESSONS[rule].wrong))


@pytest.mark.parametrize("rule", sorted({*LESSONS, *RULES}))
def test_explain_shows_a_right_and_a_wrong_source(rule, capsys):
    assert main(["explain", rule]) == 0
    printed = capsys.readouterr().out
    assert printed.startswith(f"{rule}: ") and "\nright:\n" in printed and "\nwrong:\n" in printed
