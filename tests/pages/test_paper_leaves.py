"""The leaves that go with a sheet, and what is filled in by pen."""

import json
import re
from hashlib import sha256
from os.path import normpath
from pathlib import Path

from test_procedure_page import words
from tiny_book import procedure, site, step

from witnessmark.core.correction_text import ON_PAPER, read_correction
from witnessmark.pages.fill_template import static_files

FILES = site().files
SHEET = "winch/hub/sheet"


LEAVES = "winch/hub/leaves"


def leaf(url: str) -> str:
    return words(FILES[f"{url}index.html"])


def single(variant: str, name: str) -> str:
    """One leaf of the page of single leaves, as HTML."""
    return re.search(rf'<section class="single" id="{name}".*?</section>\n(?=<section class="single"|</main>)', FILES[f"{LEAVES}/{variant}/index.html"], re.DOTALL)[0]


def test_the_offer_links_every_leaf_and_each_is_there():
    links = re.findall(r'href="([^"]+/(?:#\w+)?)"', FILES[f"{SHEET}/index.html"])
    assert {"../leaves/A/#night", "../leaves/A/#cards", "../leaves/A/#torques", "../leaves/B/#night", "../tags/", "../../../sheet/correction-slip/",
            "../../../winch/plan/hand-over/B/"} <= set(links)
    for link in links:
        path, _, anchor = link.partition("#")
        name = normpath(f"{SHEET}/{path}index.html")
        assert link == "../" or (name in FILES and f'id="{anchor}"' in FILES[name] + 'id=""'), link


def test_the_night_before_lists_what_must_be_done_measured_and_ready():
    night = words(single("B", "night"))
    assert "The night before: Press the hub" in night and "People: 2" in night
    assert night.index("Done and shut before tomorrow") < night.index("Read and measure") < night.index("What you need") < night.index("Needle never past")


def test_the_press_card_holds_an_empty_card_without_any_mark():
    cards = single("B", "cards")
    empty = cards[cards.index('data-press=""'):]
    assert "Press not in the book: Hub press force" in words(empty) and "never more than hub B 22 long ton" in words(empty)
    assert "psi" not in words(empty) and "data-share" not in empty
    assert "REFUSED" in words(cards) and "1,500 psi" in words(cards)


def test_the_torque_card_has_a_column_for_each_pass():
    torques = words(single("A", "torques"))
    assert "Pass 1 Last" in torques and "28 lbf·ft 57 lbf·ft (77 N·m)" in torques


def test_a_leaf_that_would_be_empty_is_not_there():
    def found(html):
        return re.findall(r'<section class="single" id="(\w+)"', html)

    assert found(FILES[f"{LEAVES}/A/index.html"]) == ["night", "cards", "torques"]
    bare = site(procedure(specs={}, computed={}, steps=(step("look", "Look at it."),))).files[f"{LEAVES}/A/index.html"]
    assert found(bare) == ["night"] and 'href="#all"' not in bare


def test_the_hand_over_record_holds_readings_parts_loose_ends_and_changes():
    record = leaf("winch/plan/hand-over/B/")
    for kept in (step_record.label for step in procedure().steps for step_record in step.records):
        assert kept in record
    assert "Tab not bent." in record and "K3PD-99" in record and "what became of it" in record
    assert "Tab not bent." not in leaf("winch/plan/hand-over/A/"), "what A never leaves loose is not asked of it"


def test_the_procedure_form_has_every_heading_of_a_source():
    schema = json.loads((Path(__file__).parents[2] / "site_data/schema/procedure.schema.json").read_text(encoding="utf-8"))
    heads = [re.sub(r"[: ]*(presses|tools|supplies|parts|\d+)$", "", words(head)) for head in re.findall(r"<p><b>(.*?)</b>", FILES["sheet/procedure-form/index.html"])]
    assert set(schema["properties"]) <= set(heads)


def test_the_slip_asks_by_the_names_that_the_text_of_a_correction_has():
    html = FILES["sheet/correction-slip/index.html"]
    assert tuple(words(head) for head in re.findall(r"<p><b>(.*?)</b>", html)) == ON_PAPER
    typed_in = "".join(f"{name}: about {name}\n" for name in ON_PAPER)
    assert read_correction(typed_in).values == {name: f"about {name}" for name in ON_PAPER}


def test_leaves_run_nothing_and_call_nobody():
    for name in (f"{LEAVES}/A/", "winch/plan/hand-over/A/", "sheet/correction-slip/"):
        assert not re.search(r"<script|https?://", FILES[f"{name}index.html"].replace("http-equiv", ""))


def test_the_fonts_are_the_ones_whose_licence_and_version_lie_beside_them():
    files = static_files()
    told = files["font/sheet.VERSION.txt"].decode()
    for name in ("sheet.woff2", "sheet-bold.woff2"):
        assert f"{sha256(files[f'font/{name}']).hexdigest()} {name}" in told
    assert b"Permission is hereby granted" in files["font/sheet.LICENSE.txt"]
