"""A sheet names nothing as done first, or shut, that its variant never has; the page says for which variants it is."""

import re
from functools import partial
from pathlib import Path

import pytest

from witnessmark.build import records
from witnessmark.core.record import fingerprint
from witnessmark.loading.source_files import SourceFile, beside_sources, picture_file, yaml_sources
from witnessmark.prove import FOLDERS, proved

BOOK = Path(__file__).parents[2]



def test_sheets_leave_out_what_their_variant_never_has(book, site):
    checked = 0
    for procedure in book["procedures"]:
        others = {one["id"]: one for one in book["procedures"] if one["machine"] == procedure["machine"]}
        for name in procedure["after"]:
            missing = set(procedure["variants"]) - set(others[name]["variants"])
            page = next(page.html for page in site.pages if page.url == f"{procedure['machine']}/{procedure['id']}/")
            mine = [variant for variant in procedure["variants"] if variant not in missing]
            if missing and mine:
                assert f"{others[name]['title']}, for {' and '.join(mine)} only" in page
            for variant in procedure["variants"]:
                sheet = site.files[f"{procedure['machine']}/{procedure['id']}/sheet/{variant}/index.html"]
                head = sheet[:sheet.index("data-caution") if "data-caution" in sheet else len(sheet)]
                told = re.search(r"done first: (.*?)\. ?[<A-Z]", head)
                assert (others[name]["title"] in (told[1] if told else "")) == (variant not in missing), (procedure["id"], variant, name)
                checked += variant in missing
    assert checked, "nothing in the demonstration shows the difference any more"


def test_a_locomotive_without_a_drive_chain_is_not_asked_whether_it_is_laid_on(site):
    for variant, there in (("24-A", True), ("24-B", True), ("24-C", False)):
        sheet = site.files[f"type-24/fill-and-engine-test/sheet/{variant}/index.html"]
        assert ("Drive chain laid on" in sheet) == there


def test_only_the_order_in_which_this_engines_head_is_tightened_is_drawn(site):
    """Eight studs on the three-cylinder engines, ten on the four-cylinder one: two drawings without a word are a cracked head."""
    for variant, holes in (("24-A", 8), ("24-B", 8), ("24-C", 10)):
        sheet = site.files[f"type-24/engine-top-end/sheet/{variant}/index.html"]
        drawn = re.findall(r"<h3>In this order</h3>(<svg.*?</svg>)", sheet, re.DOTALL)
        assert len(drawn) == 1 and max(map(int, re.findall(r">(\d+)</text>", drawn[0]))) == holes, variant


@pytest.mark.parametrize("stud, stale", [("in each row: 4", {"24-A", "24-B"}), ("in each row: 5", {"24-C"})])
def test_another_order_of_one_head_leaves_the_sheets_of_the_other_true(stud, stale):
    files, beside = yaml_sources(BOOK, FOLDERS), beside_sources(BOOK)

    def codes(sources: list[SourceFile]) -> dict[str, str]:
        checked = proved(sources, beside, partial(picture_file, BOOK))
        return {variant: fingerprint(record) for (_, procedure, variant), record in records(checked).items() if procedure == "engine-top-end"}

    changed = [SourceFile(file.path, file.text.replace(stud, "in each row: 6")) if file.path.endswith("engine-top-end.yaml") else file for file in files]
    before, after = codes(files), codes(changed)
    assert {variant for variant in before if before[variant] != after[variant]} == stale
