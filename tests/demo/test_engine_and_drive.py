"""Engine, clutch, gear box, chain and brake against the scenario: each figure for each variant, each torque and what is set
on the wrench, each loose end. The rows are copied from the scenario's own tables and from nothing in the sources."""

import json
import re
from pathlib import Path

import pytest

from witnessmark.build import check, render

BOOK = Path(__file__).parent.parent.parent


@pytest.fixture(scope="module")
def site():
    return render(check(BOOK), "Demo", "demo", None)


@pytest.fixture(scope="module")
def data(site):
    return json.loads(site.files["book.json"])


def procedure(data: dict, name: str) -> dict:
    return next(each for each in data["procedures"] if (each["machine"], each["id"]) == ("type-24", name))


def own(case: dict, variant: str) -> bool:
    return set(case["for"].values()) == {variant}


# procedure | spec | role | figures, in order, by variant (A; B; C, or one for all; - for none) | whose they are
FIGURES = """
engine-bottom-end | sling-load | found | 779 lbf, 955 lbf, 1,350 lbf | computed
engine-bottom-end | main-clearance | window | 0.0025 to 0.0040 in; 0.0025 to 0.0040 in; 0.060 to 0.095 mm | factory
engine-bottom-end | main-clearance | reject | over 0.0065 in; over 0.0065 in; - | factory
engine-bottom-end | undersize | found | 2.7440 in, 2.7425 in, 2.740 in | computed
engine-bottom-end | oversize | found | 4.2630 in, 4.267 in, 4.270 in | computed
engine-bottom-end | bore-wear | reject | over 0.012 in | factory
engine-bottom-end | main-stud | target | 80 lbf·ft; 80 lbf·ft; - | shop standard
engine-bottom-end | main-stud-metric | target | -; -; 145 N·m | shop standard
engine-bottom-end | crank-float | window | 0.006 to 0.012 in | factory
engine-bottom-end | crank-float | reject | over 0.020 in | factory
engine-bottom-end | ring-gap | window | 0.013 to 0.017 in | factory
engine-bottom-end | rod-bolt | window | 56 to 64 lbf·ft; 56 to 64 lbf·ft; - | shop standard
engine-bottom-end | rod-bolt | target | 59 lbf·ft; 59 lbf·ft; - | computed
engine-bottom-end | rod-bolt | stop | 61 lbf·ft; 61 lbf·ft; - | computed
engine-bottom-end | rod-bolt-metric | target | -; -; 95 N·m | shop standard
engine-top-end | nozzle-opening | window | 2,500 to 2,600 psi; 2,500 to 2,600 psi; 175 to 182 kgf/cm² | factory
engine-top-end | valve-spring | target | 62 lbf | factory
engine-top-end | valve-spring | reject | under 55.8 lbf | factory
engine-top-end | valve-spring | floor | at least 58 lbf | computed
engine-top-end | bump-clearance | window | 0.045 to 0.055 in | factory
engine-top-end | gasket-crushed | found | 0.053 in, 0.052 in | computed
engine-top-end | head-nut | target | 120 lbf·ft; 120 lbf·ft; - | shop standard
engine-top-end | head-nut | found | 145 lbf·ft; 145 lbf·ft; - | factory
engine-top-end | head-nut-metric | target | -; -; 160 N·m | shop standard
engine-top-end | head-nut-hot | target | 120 lbf·ft; 120 lbf·ft; - | shop standard
engine-top-end | head-nut-hot-metric | target | -; -; 160 N·m | shop standard
engine-top-end | head-hot | floor | at least 150 °F | factory
engine-top-end | head-nut-turn | window | under 15 ° | factory
engine-top-end | valve-gap | target | 0.015 in, 0.012 in | factory
engine-top-end | injection-start | target | 24 °; 24 °; 26 ° | factory
engine-top-end | injection-arc | target | 3.770 in; 3.770 in; 95.3 mm | computed
"""
ROWS = [tuple(cell.strip() for cell in line.split("|")) for line in FIGURES.strip().splitlines()]


def by_variant(cell: str) -> dict[str, str]:
    cells = [each.strip().removeprefix("-") for each in cell.split(";")]
    return dict(zip(("24-A", "24-B", "24-C"), cells * 3 if len(cells) == 1 else cells))


@pytest.mark.parametrize("name, spec, role, wanted, standing", ROWS, ids=[" ".join(row[:3]) for row in ROWS])
def test_each_figure_is_the_scenarios(data, name, spec, role, wanted, standing):
    here = procedure(data, name)
    found = next(each for each in here["specs"] if each["id"] == spec)["figures"]
    for variant in here["variants"]:
        there = [figure for figure in found if figure["role"] == role and own(figure, variant) and figure["as written"] != "none"]
        assert ", ".join(figure["as written"] for figure in there) == by_variant(wanted)[variant]
        assert all(" ".join(dict.fromkeys(figure["standing"])) == standing for figure in there)


def test_no_figure_is_left_out_of_the_rows(data):
    for name in dict.fromkeys(row[0] for row in ROWS):
        held = {(spec["id"], figure["role"]) for spec in procedure(data, name)["specs"] for figure in spec["figures"]}
        assert held == {row[1:3] for row in ROWS if row[0] == name}


# procedure | torque | variant | wrench setting | clamp at likely K | share of proof, likely: the scenario's own judgement
TORQUES = """
engine-bottom-end | main-stud | 24-A | 80 lbf·ft | 11,378 lbf | 74 %
engine-bottom-end | main-stud | 24-B | 80 lbf·ft | 11,378 lbf | 74 %
engine-bottom-end | main-stud-metric | 24-C | 145 N·m | 69.0 kN | 72 %
engine-bottom-end | rod-bolt | 24-A | 59 lbf·ft | 9440 lbf | 69 %
engine-bottom-end | rod-bolt-metric | 24-C | 95 N·m | 52.8 kN | 69 %
engine-top-end | head-nut | 24-A | 120 lbf·ft | 15,360 lbf | 71 %
engine-top-end | head-nut | 24-B | 120 lbf·ft | 15,360 lbf | 71 %
engine-top-end | head-nut-metric | 24-C | 160 N·m | 76.2 kN | 74 %
engine-top-end | head-nut-hot | 24-A | 120 lbf·ft | 15,360 lbf | 71 %
engine-top-end | head-nut-hot-metric | 24-C | 160 N·m | 76.2 kN | 74 %
"""


@pytest.mark.parametrize("row", TORQUES.strip().splitlines())
def test_each_torque_is_judged_as_the_scenario_judges_it(data, row):
    name, spec, variant, setting, clamp, share = (cell.strip() for cell in row.split("|"))
    runs = [run for run in procedure(data, name)["worked"] if run["owner"] == spec and own(run, variant)]
    values = {value["name"]: value["shown"] for value in runs[0]["values"]}
    assert (len(runs), runs[0]["refused"], runs[0]["warnings"]) == (1, [], [])
    assert (values["setting"], values["clamp"].split(" (")[0], values["share of proof"]) == (setting, clamp, share)


@pytest.mark.parametrize("variant, passes", [("24-A", "40 lbf·ft, 80 lbf·ft, 120 lbf·ft"), ("24-B", "40 lbf·ft, 80 lbf·ft, 120 lbf·ft"),
                                             ("24-C", "50 N·m, 100 N·m, 160 N·m")])
def test_the_sheet_sets_the_head_nuts_in_the_passes_given(site, variant, passes):
    row = re.search(r"<tr><th scope=\"row\">Head nuts.*?</tr>", site.files[f"type-24/engine-top-end/sheet/{variant}/index.html"])[0]
    assert row.endswith(f"<td>{passes}</td></tr>")


# what is left | in which procedure | never while open | variants
LEFT = """
block-drain-open | engine-bottom-end | fill (water), run, turn by power | 24-A 24-B 24-C
head-nuts-cold | engine-top-end | turn by power | 24-A 24-B 24-C
nozzle-unions-slack | engine-top-end | run, turn by power | 24-A 24-B 24-C
"""


def test_each_loose_end_is_left_where_the_ledger_says(data):
    rows = [tuple(cell.strip() for cell in line.split("|")) for line in LEFT.strip().splitlines()]
    for name in dict.fromkeys(row[0] for row in ROWS):
        here = procedure(data, name)
        found = {(end["id"], name, ", ".join(end["never while open"]), " ".join(step["only"] or here["variants"]))
                 for step in here["steps"] for end in step["leaves"]}
        assert found == {row for row in rows if row[1] == name}


# procedure | step | the dangerous thing it does | the hazards named above it
ACTS = """
engine-bottom-end | sling-block | lift (engine) | HZ-01
"""


def test_what_a_step_does_is_warned_of_there(data):
    rows = [tuple(cell.strip() for cell in line.split("|")) for line in ACTS.strip().splitlines()]
    for name in dict.fromkeys(row[0] for row in ROWS):
        found = {(name, step["id"], ", ".join(step["acts"]), " ".join(step["cautions"]))
                 for step in procedure(data, name)["steps"] if step["acts"]}
        assert found == {row for row in rows if row[0] == name}
