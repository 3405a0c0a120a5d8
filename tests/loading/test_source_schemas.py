"""The schemas that editors use: alike with the checked-in copies, right for the demo, and wrong where the loader says so."""

import json
from pathlib import Path, PurePosixPath

import jsonschema
import pytest
import yaml
from small_book import PROCEDURE, SITE_DATA
from test_findings import CASES

from witnessmark.loading.source_schemas import SOURCES, schema_files, source_schema
from witnessmark.workings.registry import WORKINGS

BOOK = Path(__file__).parent.parent.parent
COPIES = BOOK / "site_data" / "schema"
DEMO = sorted(path.relative_to(BOOK).as_posix()
              for folder in ("procedures", "site_data") for path in (BOOK / folder).rglob("*.yaml"))
OF_SHAPE = {"unknown-key", "missing-key", "wrong-shape", "empty-value", "empty-list", "unknown-word", "bad-number", "bad-id"}
SLIPS = [case for case in CASES if case[0] in OF_SHAPE]


def schema_of(path: str) -> str:
    [name] = [name for name, (files, _) in SOURCES.items() if PurePosixPath(path).match(files)]
    return name


def complaints(path: str, text: str, loader=yaml.BaseLoader) -> list[str]:
    validator = jsonschema.Draft7Validator(source_schema(schema_of(path), WORKINGS))
    return [f"{'/'.join(map(str, error.path))}: {error.message[:200]}"
            for error in validator.iter_errors(yaml.load(text, loader))]


class AsAnEditor(yaml.SafeLoader):
    """YAML 1.2's own typing, as editors do it: numbers, true, false and nothing; yes, no and dates are words."""

    yaml_implicit_resolvers = {}


for _tag, _pattern, _first in (
        ("bool", r"true|True|TRUE|false|False|FALSE", "tTfF"), ("null", r"~|null|Null|NULL|", ["~", "n", "N", ""]),
        ("int", r"[-+]?[0-9]+", "-+0123456789"), ("float", r"[-+]?(\.[0-9]+|[0-9]+\.[0-9]*)", "-+.0123456789")):
    AsAnEditor.add_implicit_resolver(f"tag:yaml.org,2002:{_tag}", yaml.resolver.re.compile(f"^(?:{_pattern})$"), list(_first))


@pytest.mark.parametrize("name", SOURCES)
def test_a_schema_is_one_and_says_a_word_about_each_key(name):
    schema = source_schema(name, WORKINGS)
    jsonschema.Draft7Validator.check_schema(schema)
    assert '"description": ""' not in json.dumps(schema)


@pytest.mark.parametrize("path", DEMO)
def test_every_source_of_the_demo_is_right_as_text_and_as_an_editor_reads_it(path):
    text = (BOOK / path).read_text(encoding="utf-8")
    assert complaints(path, text) == []
    assert complaints(path, text, AsAnEditor) == []


@pytest.mark.parametrize("path", DEMO)
def test_every_source_of_the_demo_names_its_schema(path):
    """By the line that the common YAML language server looks for; the address counts from the file itself."""
    first = (BOOK / path).read_text(encoding="utf-8").partition("\n")[0]
    mark, _, target = first.partition("$schema=")
    assert mark == "# yaml-language-server: "
    assert (BOOK / path).parent.joinpath(target).resolve() == (COPIES / f"{schema_of(path)}.schema.json").resolve()


def test_the_smallest_book_is_right():
    for path, text in {**SITE_DATA, "procedures/hoist/drum.yaml": PROCEDURE}.items():
        assert complaints(path, text) == [] and complaints(path, text, AsAnEditor) == []


@pytest.mark.parametrize("rule, stands, wrong", [case[:3] for case in SLIPS], ids=[f"{c[0]}: {c[2][:30]!r}" for c in SLIPS])
def test_a_slip_of_shape_is_underlined_too(rule, stands, wrong):
    text = PROCEDURE.replace(stands, wrong)
    assert complaints("procedures/hoist/drum.yaml", text)
    assert complaints("procedures/hoist/drum.yaml", text, AsAnEditor)


def test_slips_of_shape_were_tried():
    assert {case[0] for case in SLIPS} == OF_SHAPE


def test_a_pressure_without_its_unit_is_underlined():
    presses = SITE_DATA["site_data/presses.yaml"].replace("10000 psi, division", "10000, division")
    assert complaints("site_data/presses.yaml", presses) and complaints("site_data/presses.yaml", presses, AsAnEditor)


GRIP = """\
computed:
  grip:
    working: taper-grip
    torque to carry: 400 lbf·ft
    taper: 1:12
    mean diameter: {early: 3.000 in, late: 3.250 in}
    length: 3.50 in
    friction: oiled
steps:
"""


def test_an_input_is_known_by_the_working_that_takes_it():
    def complain(text: str) -> list[str]:
        return complaints("procedures/hoist/drum.yaml", PROCEDURE.replace("steps:\n", text))

    assert complain(GRIP) == []
    assert complain(GRIP.replace("mean diameter", "mean diametre"))
    assert complain(GRIP.replace("taper-grip", "taper-gripp"))


def test_the_copies_beside_the_sources_are_what_is_made_now(update_golden):
    made = schema_files(WORKINGS)
    if update_golden:
        COPIES.mkdir(exist_ok=True)
        for name, text in made.items():
            (COPIES / name).write_text(text, encoding="utf-8", newline="\n")
    kept = {path.name: path.read_text(encoding="utf-8") for path in COPIES.glob("*")}
    assert kept == made, "meant? make test ARGS=--update-golden, then read the difference"
