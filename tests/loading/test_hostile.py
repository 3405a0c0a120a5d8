"""Sources that mean harm, or that a bad disk left: each is a finding at its place, in bounded memory, and nothing is raised.

No test here is judged by the clock; what would hang or swell is bounded by what it may hold in memory."""

import os
import subprocess
import sys
import tracemalloc

import pytest
from small_book import PROCEDURE, SITE_DATA, sources

from witnessmark.prove import check
from witnessmark.loading.load_book import load_book
from witnessmark.loading.source_files import MOST_BYTES, yaml_sources
from witnessmark.rules.table import check_book
from witnessmark.workings.derive import derive_book

PATH = "procedures/hoist/drum.yaml"
MEBI = 1 << 20
BOMB = "a: &a [x, x, x, x, x, x, x, x, x]\n" + "".join(f"{b}: &{b} [{', '.join([f'*{a}'] * 9)}]\n" for a, b in zip("abcdefgh", "bcdefghi"))

# The whole procedure is this text: line, column, rule and part of what is said.
TEXTS = {
    "alias bomb": (BOMB, 1, 4, "yaml", "names a piece of text for copying"),
    "20,000 brackets": ("a: " + "[" * 20_000, 1, 1003, "yaml", "the brackets stand too deep"),
    "20,000 braces": ("{a: " * 20_000, 1, 161, "yaml", "the nesting is over 40 deep"),
    "20,000 dashes": ("- " * 20_000, 1, 81, "yaml", "the nesting is over 40 deep"),
    "1,000 steps of indent": ("".join(f"{' ' * n}a:\n" for n in range(1_000)), 41, 41, "yaml", "the nesting is over 40 deep"),
    "self reference": ("a: &a [*a]", 1, 4, "yaml", "names a piece of text for copying"),
    "alias of nothing": ("a: b\nc: *d", 2, 4, "yaml", "would be replaced by something else"),
    "tag that runs": ("a: !!python/object/apply:os.system [echo]", 1, 4, "yaml", "is a tag"),
    "binary tag": ("a: !!binary eA==", 1, 4, "yaml", "is a tag"),
    "own tag": ("title: !include /etc/passwd", 1, 8, "yaml", "is a tag"),
    "several documents": ("a: b\n--- \nc: d", 2, 1, "yaml", "a second document begins here"),
    "merge key": ("<<: {a: b}", 1, 1, "yaml", "would copy entries"),
    "list as key": ("? [a, b]\n: c", 1, 3, "yaml", "a list or group stands where a name should"),
    "other version": ("%YAML 9.9\n---\na: b", 1, 1, "yaml", ""),
    "NUL": ("title: a\n\0: b", 2, 1, "deceiving-sign", "a NUL character"),
    "bell": ("title: a\x07b", 1, 9, "deceiving-sign", "U+0007"),
    "right to left": ("title: a\u202eb", 1, 9, "deceiving-sign", "U+202E"),
    "isolate": ("title: a\u2066b", 1, 9, "deceiving-sign", "U+2066"),
    "zero width": ("title: a\u200db", 1, 9, "deceiving-sign", "U+200D"),
    "tag signs": ("title: a\U000e0041b", 1, 9, "deceiving-sign", "U+E0041"),
    "hidden in an escape": ('title: "a\\u202eb"', 1, 8, "text-bent", "'\\u' in double quotes becomes another sign"),
    "only a mark": ("---", 1, 1, "empty-value", "the file is empty"),
    "nothing": ("", 1, 1, "empty-value", "the file is empty"),
    "a key of a million signs": ("k" * (MOST_BYTES - 10) + ": x", 1, 1, "yaml", "a text of over 10,000 letters"),
    "a text of a million signs": ("title: " + "k" * 900_000, 1, 8, "yaml", "a text of over 10,000 letters"),
}

# What stands in the smallest book, what stands instead, the rule of the finding and its place.
VALUES = {
    "power as a unit": ("55 lbf·ft", "5 9**9**9", "quantity", "29:9"),
    "a million digits": ("55 lbf·ft", "9" * 900_000 + " lbf·ft", "yaml", "29:9"),
    "power as a number": ("55 lbf·ft", "9**9**9 lbf·ft", "quantity", "29:9"),
    "9,000 digits": ("55 lbf·ft", "9" * 9_000 + " lbf·ft", "quantity", "29:9"),
    "9,000 digits of people": ("people: 2", "people: " + "9" * 9_000, "bad-number", "4:9"),
    "9,000 digits of thread": ("1/2-13 UNC", "1/2-" + "9" * 9_000, "thread", "25:13"),
    "9,000 digits of a unit": ("55 lbf·ft", "5 " + "x" * 9_000, "quantity", "29:9"),
    "an exponent": ("55 lbf·ft", "1e999999999 lbf·ft", "quantity", "29:9"),
    "a fraction over nothing": ("55 lbf·ft", "5/0 lbf·ft", "quantity", "29:9"),
    "digits of another script": ("55 lbf·ft", "٥٥ lbf·ft", "quantity", "29:9"),
    "code in a unit": ("55 lbf·ft", "5 __import__('os')", "quantity", "29:9"),
    "braces without end": ("Tighten the bolts to {bolt}.", "{" * 300_000, "yaml", "36:1006"),
    "stars without end": ("Tighten the bolts to {bolt}.", "x" + "{!}" * 3_000, "bad-reference", "36:9"),
    "a reference of 9,000 letters": ("{press.target}", "{" + "a" * 9_000 + "}", "unknown-reference", "33:9"),
    "a name over several lines": ("after: none", "after: ['a\n\n  b']", "unknown-reference", "3:1"),
    "a caution of 9,000 letters": ("[HZ-1]", "[" + "H" * 9_000 + "]", "unknown-reference", "34:5"),
    "a name of 9,000 letters": ("  - id: bolt\n", "  - id: " + "b" * 9_000 + "\n", "bad-id", "35:9"),
    "a way out of the book": ("  - id: bolt\n", "  - id: ../../site\n", "bad-id", "35:9"),
}


def all_findings(files):
    book, found = load_book(files)
    derived, more = derive_book(book)
    return sorted({*found, *more, *check_book(book, derived)})


def peak(action):
    """What `action` returns, and the most it held in memory at once, in bytes."""
    tracemalloc.start()
    try:
        return action(), tracemalloc.get_traced_memory()[1]
    finally:
        tracemalloc.stop()


@pytest.mark.parametrize("name", TEXTS)
def test_a_hostile_text_is_a_finding_at_its_place(name):
    text, line, column, rule, says = TEXTS[name]
    found, most = peak(lambda: [f for f in all_findings(sources(text)) if f.place.path == PATH])
    assert any((finding.place.line, finding.place.column, finding.rule) == (line, column, rule) and says in finding.message
               for finding in found), found
    assert most < 60 * MEBI


@pytest.mark.parametrize("name", VALUES)
def test_a_hostile_value_is_a_finding_at_its_place(name):
    stands, wrong, rule, at = VALUES[name]
    assert PROCEDURE.count(stands) == 1
    found, most = peak(lambda: all_findings(sources(PROCEDURE.replace(stands, wrong))))
    assert f"{PATH}:{at}" in {str(finding.place) for finding in found if finding.rule == rule}, [f.line() for f in found]
    assert all(len(finding.line()) < 1000 and "\n" not in finding.line() for finding in found)
    assert most < 60 * MEBI


def test_five_thousand_findings_are_all_told_once_and_in_order():
    wrong = "steps:\n" + "".join(f"  - id: s{n}\n    do: Go.\n    wrong-{n}: x\n" for n in range(5_000))
    found, most = peak(lambda: all_findings(sources(PROCEDURE.partition("steps:")[0] + wrong)))
    unknown = [finding for finding in found if finding.rule == "unknown-key"]
    assert len(unknown) == 5_000 and found == sorted(set(found))
    assert most < 150 * MEBI


@pytest.fixture
def folder(tmp_path):
    book = tmp_path / "book"
    for path, text in {**SITE_DATA, PATH: PROCEDURE}.items():
        (book / path).parent.mkdir(parents=True, exist_ok=True)
        (book / path).write_text(text, encoding="utf-8")
    return book


def at(folder, name):
    return folder / "procedures/hoist" / name


@pytest.mark.parametrize("data, line, says", [
    ("title: a".encode("utf-16"), 1, "not UTF-8"),
    ("title: a".encode("utf-16-le"), 1, "NUL"),
    ("title: Ölfilter\n".encode("latin-1"), 1, "not UTF-8"),
    ("title: a\nsummary: 15 °F\n".encode("latin-1"), 2, "not UTF-8"),
    (b"\xed\xa0\x80", 1, "not UTF-8"),
    (b"title: a" + b" " * MOST_BYTES, 1, "over 1 MB"),
], ids=["UTF-16", "UTF-16 without its mark", "Latin-1", "Latin-1 on line 2", "half a pair", "over 1 MB"])
def test_bytes_that_are_no_text(folder, data, line, says):
    at(folder, "other.yaml").write_bytes(data)
    [finding] = check(folder).findings
    assert (finding.place.path, finding.place.line) == ("procedures/hoist/other.yaml", line) and says in finding.message


@pytest.mark.parametrize("path, text", [("site_data/cautions.yaml", "HZ-1: {word: WARNING"), ("site_data/machines/hoist.yaml", "title: a\0"),
                                        (PATH, "title: [")])
def test_what_hangs_on_a_file_that_cannot_be_read_is_not_blamed(folder, path, text):
    (folder / path).write_text(text)
    [finding] = check(folder).findings
    assert finding.place.path == path


def test_the_mark_of_an_editor_at_the_start_is_no_mistake(folder):
    (folder / PATH).write_bytes(b"\xef\xbb\xbf" + PROCEDURE.encode().replace(b"\n", b"\r\n"))
    assert check(folder).findings == ()


def test_fifty_megabytes_are_not_read(folder):
    with open(at(folder, "other.yaml"), "wb") as file:
        file.truncate(50 * MEBI)
    files, most = peak(lambda: yaml_sources(folder, ("procedures",)))
    assert "over 1 MB" in next(file for file in files if file.path.endswith("other.yaml")).problem[0]
    assert most < 4 * MEBI


def test_a_link_that_leaves_the_book_is_not_followed(folder, tmp_path):
    secret = tmp_path / "secret.yaml"
    secret.write_text("title: secret words\n")
    at(folder, "other.yaml").symlink_to(secret)
    at(folder, "near.yaml").symlink_to("../../../secret.yaml")
    at(folder, "system.yaml").symlink_to("/dev/zero")
    found = check(folder).findings
    assert [finding.place.path.rpartition("/")[2] for finding in found] == ["near.yaml", "other.yaml", "system.yaml"]
    assert all("a link that leaves the book" in finding.message for finding in found)
    assert "secret words" not in " ".join(finding.line() for finding in found)


def test_a_link_in_a_ring_or_to_nothing_or_to_a_folder(folder, tmp_path):
    at(folder, "ring.yaml").symlink_to("ring.yaml")
    at(folder, "gone.yaml").symlink_to("nowhere.yaml")
    (tmp_path / "more").mkdir()
    (folder / "procedures/more").symlink_to(tmp_path / "more")
    (folder / "procedures/up").symlink_to("..")
    assert [finding.place.path for finding in check(folder).findings] == [
        "procedures/hoist/gone.yaml", "procedures/hoist/ring.yaml", "procedures/more", "procedures/up"]


def test_a_link_within_the_book_is_read(folder):
    at(folder, "other.yaml").symlink_to("drum.yaml")
    assert ("hoist", "other") in check(folder).book.procedures


def test_a_pipe_is_not_waited_for(folder):
    os.mkfifo(at(folder, "other.yaml"))
    [finding] = check(folder).findings
    assert "no plain file" in finding.message


def test_a_file_name_cannot_forge_a_finding(folder):
    at(folder, "x\n::error ::forged.yaml").write_text("title: a")
    at(folder, "\u202eforged.yaml").write_text("title: a")
    (folder / "procedures/hoist").joinpath(os.fsdecode(b"\xff.yaml")).write_text("title: a")
    lines = [finding.line() for finding in check(folder).findings]
    assert len(lines) >= 3 and all(line.isprintable() for line in lines)
    "\n".join(lines).encode()


def test_all_of_it_at_once_in_200_megabytes_and_without_a_traceback(folder):
    for number, (text, *_) in enumerate(TEXTS.values()):
        at(folder, f"text-{number}.yaml").write_text(text, encoding="utf-8", newline="")
    for number, (stands, wrong, *_) in enumerate(VALUES.values()):
        at(folder, f"value-{number}.yaml").write_text(PROCEDURE.replace(stands, wrong), encoding="utf-8")
    with open(at(folder, "huge.yaml"), "wb") as file:
        file.truncate(50 * MEBI)
    before = sorted(path for path in folder.parent.rglob("*"))
    done = subprocess.run([sys.executable, "-c", (
        "import sys; from witnessmark.cli import main; code = main(sys.argv[1:]);"
        "print(open('/proc/self/status').read().split('VmHWM:')[1].split()[0], file=sys.stderr); sys.exit(code)"),
        "check", str(folder)],
        capture_output=True, text=True, env={**os.environ, "PYTHONIOENCODING": "utf-8"})
    assert done.returncode == 1 and "Traceback" not in done.stdout + done.stderr, done.stderr[-2000:]
    # The high water mark of this process alone, in kB: getrusage would count what pytest held when it forked.
    assert int(done.stderr) < 200 * 1024
    assert sorted(path for path in folder.parent.rglob("*")) == before
    for name in ("huge", *(f"text-{n}" for n in range(len(TEXTS))), *(f"value-{n}" for n, (_, _, rule, _) in enumerate(VALUES.values()) if rule != "unknown-reference")):
        assert f"procedures/hoist/{name}.yaml:" in done.stdout


@pytest.mark.parametrize("file, stands, wrong", [
    ("wrenches", "graduation: 5 lbf·ft", "graduation: 0 lbf·ft"), ("wrenches", "graduation: 5 lbf·ft", "graduation: at least 5 lbf·ft"),
    ("wrenches", "highest: 150 lbf·ft", "highest: 100 to 150 lbf·ft"), ("wrenches", "accuracy: 4 %", "accuracy: 4 to 6 %"),
    ("presses", "area: 5.00 in²", "area: 0 in²"), ("presses", "division: 100 psi", "division: 0 psi"),
    ("presses", "full scale: 10000 psi", "full scale: over 10000 psi"), ("presses", "rated pressure: 10000 psi", "rated pressure: 0 psi"),
])
def test_an_instrument_of_nothing_or_of_two_figures_is_refused(file, stands, wrong):
    text = SITE_DATA[f"site_data/{file}.yaml"]
    assert text.count(stands) == 1
    found = all_findings(sources(**{file: text.replace(stands, wrong)}))
    assert any(finding.rule == "quantity" and finding.place.path == f"site_data/{file}.yaml" for finding in found), found
