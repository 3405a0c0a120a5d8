"""The sheet code against the sheet itself: what is printed is the witness of what a variant's reader acts on.

Every number of two small books is changed in turn, and single things that one variant alone has.
"""

import re

import pytest
import plan_book
import small_book

from witnessmark.build import records, render
from witnessmark.core.picture import PictureFile
from witnessmark.core.record import fingerprint
from witnessmark.loading.source_files import SourceFile
from witnessmark.pages.view_sheet import Paper
from witnessmark.prove import proved

#: What a late hoist alone has: a procedure with a loose end of its own, and a step that others are sent to.
PAINT = plan_book.PAINT.replace("people: 1\n", "people: 1\napplies to: [late]\n") + """\
    leaves:
      - {id: mask, state: Plate masked., because: Paint hides the stamp., if forgotten: Nobody reads the serial., never while open: [run]}
  - id: peel
    do: Peel the mask.
    closes: [mask]
"""
OIL = plan_book.HEAD.format(title="Oil the sheave", after="none").replace("people: 1\n", "people: 1\napplies to: [late]\n") + """\
steps:
  - id: oil
    do: Oil the sheave.
"""
TRY = plan_book.TRY.replace("[strip/pawl-wedged]", "[strip/pawl-wedged, paint/mask]").replace("[build, paint]", "[build, paint, oil]")
BUILD = plan_book.BUILD.replace("specs:\n", """\
  - id: shim
    do: Lay one shim under the late frame.
    only: [late]
  - id: feel
    do: Feel the drum.
    check: It does not rock.
    if outside: It rocks.
    go to: [press, shim]
specs:
""")
PLAN = {"oil": OIL, "paint": PAINT, "try": TRY, "build": BUILD}


def plan(**changed: str) -> list[SourceFile]:
    return plan_book.sources(**{**PLAN, **changed})


def sheets(files: list[SourceFile]) -> dict[tuple[str, str], tuple[str, str, dict]]:
    """For each procedure and variant the sheet code, all that is printed, and the record."""
    checked = proved(files, ([], []), lambda path: PictureFile())
    errors = [finding for finding in checked.findings if finding.severity == "error"]
    if errors:
        raise ValueError(errors)
    site, found = render(checked, "Book", "book", None, Paper()), {}
    for (machine, procedure, variant), record in records(checked).items():
        code = fingerprint(record)
        html = site.files[f"{machine}/{procedure}/sheet/{variant}/index.html"].replace(code, "")
        seen = re.sub(r"<(?!svg|/svg|path|line|circle|text)[^>]+>", " ", html.replace('class="box"', ">BOX<").replace('class="line"', ">LINE<"))
        found[procedure, variant] = code, " ".join(seen.split()), record
    return found


BOOKS = {"small": small_book.sources(), "plan": plan()}
BEFORE = {name: sheets(files) for name, files in BOOKS.items()}
_NUMBER = re.compile(r"(?<![\w/.#-])\d+(?:\.\d+)?(?![\w/-])")
NUMBERS = [(name, at, match.span()) for name, files in BOOKS.items() for at, file in enumerate(files) for match in _NUMBER.finditer(file.text)]


def with_number(name: str, at: int, span: tuple[int, int]) -> list[SourceFile]:
    """The book with one number a little more: its last digit, or one."""
    file = BOOKS[name][at]
    old = file.text[slice(*span)]
    new = f"{float(old) + 10.0 ** -len(old.partition('.')[2]):.{len(old.partition('.')[2])}f}" if "." in old else str(int(old) + 1)
    return [*BOOKS[name][:at], SourceFile(file.path, file.text[:span[0]] + new + file.text[span[1]:]), *BOOKS[name][at + 1:]]


def behind(record: dict) -> dict:
    """A record without what only stands behind the paper: results, and figures that inform and are not printed."""
    specs = [{**spec, "figures": [[case, [figure for figure in figures if figure[0] != "found"]] for case, figures in spec["figures"]]} for spec in record["specs"]]
    return {**record, "worked": [], "specs": specs}


def test_a_number_that_changes_the_paper_changes_its_code_and_no_other_code():
    seen = {"paper": 0, "only behind it": 0, "neither": 0}
    for name, at, span in NUMBERS:
        try:
            now = sheets(with_number(name, at, span))
        except ValueError:
            continue                                    # the book refuses it: nothing is printed
        line = BOOKS[name][at].text[:span[1]].rpartition("\n")[2]
        for sheet, (code, printed, record) in now.items():
            before, was, then = BEFORE[name][sheet]
            if printed != was:
                seen["paper"] += 1
                assert code != before, f"{sheet} is printed otherwise, and its code says it holds: {line}"
            elif code != before:
                seen["only behind it"] += 1
                assert behind(record) == behind(then), f"{sheet} is printed as before, and its code says it does not hold: {line}"
            else:
                seen["neither"] += 1
    assert min(seen.values()) > 5, seen


COVER_OFF = """\
  - id: cover
    do: Take off the cover.
    only: [late]
    leaves:
      - {id: cover-off, state: Cover off., because: To reach in., if forgotten: A hand is drawn in., never while open: [run]}
"""
COVER_ON = """\
  - id: cover-on
    do: Fit the cover.
    only: [late]
    closes: [cover-off]
"""
#: What is changed, from what to what, and the sheets that are old paper by it.
ONE_VARIANT = {
    "what is done first on a late one": ("try", "after: [build, paint, oil]", "after: [build, paint]", {("try", "late")}),
    "what must be shut on a late one": ("try", ", paint/mask]", "]", {("try", "late")}),
    "where a late one is sent": ("build", "[press, shim]", "[press]", {("build", "late")}),
    "a step of a late one": ("build", "Lay one shim", "Lay 2 shims", {("build", "late")}),
    "a figure of the late drum, on either hoist": ("build", "0.20 to 0.22", "0.20 to 0.21", {("build", "early"), ("build", "late")}),
    "a place that a late one has besides": ("machine", "[left, right]", "[left, right, {place: middle, only: [late]}]",
                                           {("strip", "late"), ("build", "late"), ("paint", "late")}),
    "how a late drum is told": ("machine", "10 in", "11 in", {("build", "early"), ("build", "late")}),
    "a loose end that a late one has open for long": ("strip", "  - id: measure\n", COVER_OFF + "  - id: measure\n",
                                                     {("strip", "late"), ("build", "late"), ("paint", "late"), ("try", "late")}),
    "a loose end that a late one ties up at once, to be proved at the end": ("strip", "  - id: measure\n", COVER_OFF + COVER_ON + "  - id: measure\n",
                                                                            {("strip", "late"), ("try", "late")}),
    "from where left is seen": ("machine", "facing the drum", "facing away from the drum", {(name, variant) for name, variant in BEFORE["plan"]}),
    "a number in how it is left": ("strip", "state: Pawl wedged.", "state: Pawl wedged by 2 wedges.", {
        (name, variant) for name, variant in BEFORE["plan"] if name != "oil"}),
}


@pytest.mark.parametrize("name", ONE_VARIANT)
def test_a_change_makes_old_paper_of_the_sheets_whose_reader_acts_on_it_and_of_no_other(name):
    where, old, new, stale = ONE_VARIANT[name]
    text = {**plan_book.PROCEDURES, **PLAN, "machine": plan_book.MACHINE}[where]
    assert text.count(old) == 1
    changed = {where: text.replace(old, new)}
    if new.startswith(COVER_OFF) and COVER_ON not in new:
        changed["try"] = TRY.replace("closes: [strip/guard-off]", "closes: [strip/guard-off, strip/cover-off]")
    now = sheets(plan(**changed))
    assert {sheet for sheet in now if now[sheet][0] != BEFORE["plan"][sheet][0]} == stale
    assert stale <= {sheet for sheet in now if now[sheet][1] != BEFORE["plan"][sheet][1]}
