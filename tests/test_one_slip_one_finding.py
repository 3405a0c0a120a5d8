"""One slip is one finding, at the slip: what rests on a line that could not be read is not blamed for it."""

import re

import pytest
from small_book import PROCEDURE, SITE_DATA

from witnessmark.prove import check
from witnessmark.cli import main

PATH = "procedures/hoist/drum.yaml"
BOOK = {**SITE_DATA, PATH: PROCEDURE}
KEY = re.compile(r"(?<=[\n{ ])(?:[a-z]+(?:[ -][a-z]+)*)(?=: )|(?<=[\n ])[a-z]+(?=:\n)")
#: Names of the author's own: any other name would be as good there.
OWN = {"chart", "shop", "oiled", "main", "hoist", "early", "late", "side", "load", "press", "bolt"}
KEYS = [(path, match.start(), match[0]) for path, text in BOOK.items() for match in KEY.finditer("\n" + text) if match[0] not in OWN]


def written(folder, **changed):
    for path, text in {**BOOK, **changed}.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_text(text, encoding="utf-8")
    return folder


@pytest.mark.parametrize("path, start, key", KEYS, ids=[f"{path.rpartition('/')[2]} {key} {start}" for path, start, key in KEYS])
def test_a_misspelt_key_is_one_finding_at_its_place(tmp_path, path, start, key):
    text = "\n" + BOOK[path]
    wrong = (text[:start] + key + "x" + text[start + len(key):])[1:]
    line = text.count("\n", 0, start)
    found = check(written(tmp_path, **{path: wrong})).findings
    assert [(f.place.path, f.place.line, f.rule) for f in found] == [(path, line, "unknown-key")], [f.line() for f in found]


@pytest.mark.parametrize("path, stands, wrong, at, rule", [
    (PATH, "is: 14 short ton", "is: 14 ton", "20:29", "quantity"),
    (PATH, "is: 55 lbf·ft", "is: 55 lbs", "29:9", "quantity"),
    (PATH, "  - id: bolt\n", "  - id: bolt it\n", "35:9", "bad-id"),
    (PATH, "    kind: torque\n", "    kind: torqe\n", "24:11", "unknown-word"),
    ("site_data/presses.yaml", "division: 100 psi", "division: 100", "6:45", "quantity"),
    ("site_data/wrenches.yaml", "graduation: 5 lbf·ft", "graduation: five", "1:83", "quantity"),
    ("site_data/surfaces.yaml", "likely: 0.15", "likely: .1.5", "3:35", "bad-number"),
    ("site_data/machines/hoist.yaml", "viewpoint: Left", "viewpont: Left", "2:1", "unknown-key"),
])
def test_a_value_that_cannot_be_read_is_one_finding(tmp_path, path, stands, wrong, at, rule):
    assert BOOK[path].count(stands) == 1
    found = check(written(tmp_path, **{path: BOOK[path].replace(stands, wrong)})).findings
    assert [(str(f.place), f.rule) for f in found] == [(f"{path}:{at}", rule)], [f.line() for f in found]


def test_another_slip_is_told_beside_it(tmp_path):
    text = PROCEDURE.replace("is: 14 short ton", "is: 14 ton").replace("    grade: 5\n", "")
    assert {f.rule for f in check(written(tmp_path, **{PATH: text})).findings} == {"quantity", "torque-without-surface"}


def test_what_is_left_out_is_counted_in_the_last_line(tmp_path, capsys):
    written(tmp_path, **{"site_data/sources.yaml": BOOK["site_data/sources.yaml"].replace("title: Shop", "titel Shop")})
    assert main(["check", str(tmp_path)]) == 1
    *_, last = capsys.readouterr().out.splitlines()
    assert re.fullmatch(r"\d+ more rest on what could not be read: mend the above, then check again", last)
    main(["check", str(written(tmp_path))])
    assert capsys.readouterr().out == "1 procedure: no findings\n"
