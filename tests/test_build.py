"""The whole pipeline on the demonstration book."""

import json
import os
import subprocess
import sys
from pathlib import Path

import jsonschema
import pytest

from small_book import sources

from witnessmark.build import codes, render
from witnessmark.prove import Checked, check
from witnessmark.loading.load_book import load_book
from witnessmark.pages.book_json import book_json
from witnessmark.workings.derive import derive_book

BOOK = Path(__file__).parent.parent


@pytest.fixture(scope="module")
def checked():
    return check(BOOK)


@pytest.fixture(scope="module")
def site(checked):
    return render(checked, "Demo", "demo", None)


def test_the_demonstration_book_has_no_finding(checked):
    assert [finding.line() for finding in checked.findings] == []


def test_book_json_keeps_its_schema(site):
    schema = json.loads(site.files["book.schema.json"])
    jsonschema.Draft202012Validator.check_schema(schema)
    jsonschema.validate(json.loads(site.files["book.json"]), schema)


def test_the_schema_is_not_empty_words(site):
    data = json.loads(site.files["book.json"])
    data["procedures"][0]["specs"][0]["figures"][0]["role"] = "wish"
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(data, json.loads(site.files["book.schema.json"]))


def test_the_same_sources_give_the_same_bytes(site):
    again = render(check(BOOK), "Demo", "demo", None)
    assert again.files == site.files
    assert again.pages == site.pages


def test_another_process_gives_the_same_bytes():
    """Python orders a set of texts anew in each process: none may reach a page."""
    program = ("import hashlib, sys; from pathlib import Path; from witnessmark.build import render; from witnessmark.prove import check; "
               "site = render(check(Path(sys.argv[1])), 'Demo', 'demo', None); "
               "print(hashlib.sha256(repr((site.pages, sorted(site.files.items()))).encode()).hexdigest())")
    runs = {subprocess.run([sys.executable, "-c", program, str(BOOK)], capture_output=True, text=True, check=True,
                           env={**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": str(BOOK / "plugins")}).stdout
            for seed in ("1", "2", "3")}
    assert len(runs) == 1


def test_every_sheet_carries_its_code(site):
    for procedure in json.loads(site.files["book.json"])["procedures"]:
        for variant, code in procedure["sheets"].items():
            assert code in site.files[f"{procedure['machine']}/{procedure['id']}/sheet/{variant}/index.html"]


def result(site, procedure: str, owner: str, combination: dict, name: str, press: str = None, gauge: str = None) -> str:
    """What book.json shows for one result; combination names the carriers that matter."""
    for each in json.loads(site.files["book.json"])["procedures"]:
        for run in each["worked"] if each["id"] == procedure else ():
            if (run["owner"], run["press"], run["gauge"]) == (owner, press, gauge) and combination.items() <= run["for"].items():
                return {value["name"]: value["shown"] for value in run["values"]}.get(name, "refused")
    return "absent"


# The scenario's own table of locomotive and hub: stops and never-pass on both gauges, nut and crowfoot setting.
DONORS = [
    ("24-A", "24-A", "1500 2200 2700 3000", "3500", "28 44 52 58", "68", "360", "330"),
    ("24-A", "24-B", "1500 2200 2700 3000", "4300", "28 44 52 58", "84", "360", "330"),
    ("24-A", "24-C", "1500 2200 2700 3000", "5100", "28 44 52 58", "98", "360", "330"),
    ("24-B", "24-A", "1600 2500 3000 3300", "3500", "32 48 56 64", "68", "420", "390"),
    ("24-B", "24-B", "1800 2700 3300 3600", "4300", "34 52 62 70", "84", "460", "420"),
    ("24-B", "24-C", "1800 2700 3300 3600", "5100", "34 52 62 70", "98", "460", "420"),
    ("24-C", "24-A", "refused refused refused refused", "refused", "refused refused refused refused", "refused", "absent", "absent"),
    ("24-C", "24-B", "2000 3000 3600 4000", "4300", "38 58 68 76", "84", "500", "460"),
    ("24-C", "24-C", "2100 3200 3900 4300", "5100", "42 62 74 84", "98", "530", "490"),
]


@pytest.mark.parametrize("locomotive, hub, bench, bench_never, frame, frame_never, nut, setting", DONORS)
def test_each_pair_of_locomotive_and_hub(site, locomotive, hub, bench, bench_never, frame, frame_never, nut, setting):
    pair = {"locomotive": locomotive, "fly-crank": hub}

    def card(press, gauge, unit):
        names = [f"mark at {share} %" for share in (50, 75, 90, 100)]
        marks = [result(site, "flycrank-press-on", "press-force", pair, name, press, gauge) for name in (*names, "never-pass mark")]
        return " ".join(mark.removesuffix(unit) for mark in marks[:4]), marks[4].removesuffix(unit)

    assert card("BP50", "main", " psi") == (bench, bench_never)
    assert card("FP100", "test-gauge", " bar") == (frame, frame_never)
    assert result(site, "flycrank-press-on", "nut", pair, "torque").removesuffix(" lbf·ft") == nut
    assert result(site, "flycrank-press-on", "nut", pair, "setting").removesuffix(" lbf·ft") == setting


def test_the_floor_follows_the_locomotive(site):
    for locomotive, floor in (("24-A", "12.2"), ("24-B", "14.9"), ("24-C", "17.6")):
        pair = {"locomotive": locomotive, "fly-crank": "24-C"}
        assert result(site, "flycrank-press-on", "crank-grip", pair, "force needed") == f"{floor} long ton"


def test_the_smallest_book_as_data(golden):
    """Every key of book.json in one readable file; read its difference when it changes."""
    book, findings = load_book(sources())
    derived, more = derive_book(book)
    assert not findings and not more
    checked = Checked(book, derived, ())
    golden("book.json", json.dumps(json.loads(book_json(book, derived, codes(checked))), indent=1, ensure_ascii=False) + "\n")
