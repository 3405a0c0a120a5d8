"""What a printed sheet must hold, on the tiny book."""

import re

import pytest
from test_procedure_page import after, words
from tiny_book import AT, figure, page, procedure, quantity, says, sheet, site, step

from witnessmark.core.figure import Spec
from witnessmark.core.procedure import Record
from witnessmark.core.sentence import read_reference


def test_the_sheet_in_whole(golden):
    golden("pages/sheet-B.html", sheet("B"))


def test_the_sheet_carries_its_identity_in_a_head_that_repeats():
    head = words(re.search(r"<thead>(.*?)</thead>", sheet("B"), re.DOTALL)[1])
    assert head == ("Press the hub · Quarry winch · B · Sheet code K3PD-99 · sources changed and not yet dated · desk · "
                    "LEFT and RIGHT facing the drum. Serial Date Copy of (copy 1 is the record)")


def test_a_sheet_shows_its_own_variant_only():
    assert "15 long ton" in words(sheet("A")) and "15 long ton" not in words(sheet("B"))
    assert 'data-variant="A"' not in sheet("B")


def test_the_last_line_counts_the_boxes_and_names_what_is_left_loose():
    for variant in "AB":
        boxes = sheet(variant).count('class="box"')
        assert f"End of checklist — {boxes} boxes; " in sheet(variant)
    assert "left loose: Tab not bent." in sheet("B") and "nothing left loose" in sheet("A")


def test_a_step_of_another_variant_is_left_out_and_said_so():
    assert "Leave the tab unbent" not in sheet("A")
    assert "Steps not for this variant: 3." in words(sheet("A")) and "Steps not for this variant" not in sheet("B")


def test_a_step_with_places_has_a_box_and_a_blank_for_each():
    clean = after(sheet("A"), 'id="step-clean"').split("</td>")[0]
    assert words(clean).endswith("left right Check: The rag stays white.") and clean.count('class="box"') == 2
    press = after(sheet("A"), 'id="step-press"').split("</td>")[0]
    assert "between 0.006 to 0.012 in (0.16 to 0.30 mm) left right" in words(press) and press.count('class="line"') == 2 + 3


def test_cautions_stand_complete_in_the_block_of_their_step():
    press = after(sheet("B"), 'id="step-press"').split("</td>")[0]
    assert words(press).startswith("id=\"step-press\"> DANGER Hazard: Hub under load. What happens: It bursts. "
                                   "How to avoid it: Set up the guard. Stand aside. STOP, INSPECT before step 2: Nobody in line.")
    assert "2 Press to 18 long ton (179 kN) ." in words(press)


def test_figures_not_to_use_are_struck_through_or_withdrawn_and_footnoted():
    assert re.search(r"<s><span[^>]*>.*?30 long ton.*?</s> kept for the record, do not use \[CF-1\]", sheet("A"))
    assert "Sources disagree (CF-1)." in words(sheet("A")) and "1:12" not in sheet("A")
    assert "once printed 30 long ton" in words(sheet("A"))


def test_what_only_informs_stays_on_the_page():
    assert "Thread of the plug" not in sheet("A")


def test_an_unknown_figure_leaves_a_blank_to_fill():
    assert re.search(r'NOT KNOWN, DO NOT GUESS</strong></span> <span class="line">', sheet("A"))


def test_a_donor_row_says_which_part_it_is_for():
    assert "hub A REFUSED the last mark may lie over the ceiling." in words(sheet("B"))
    assert "Bench press, Gauge 0 to 10,000 psi: Hub press force, with its own parts" in words(sheet("B"))


def test_torques_show_wrench_setting_and_passes():
    assert "Pass 1 Last" in words(sheet("A")) and "Torque wrench 1 (TW1) 28 lbf·ft 57 lbf·ft (77 N·m)" in words(sheet("A"))


def test_a_sheet_sends_nobody_to_a_step_it_leaves_out():
    both = procedure(steps=(*procedure().steps, step("turn", "Turn it.", if_outside=says("Tight."), go_to=("press", "tab"))))
    assert "Tight. Go to step 2." in words(sheet("A", both)) and "Tight. Go to step 2, step 3." in words(sheet("B", both))
    alone = procedure(steps=(*procedure().steps, step("turn", "Turn it.", if_outside=says("Tight."), go_to=("tab",))))
    assert "Tight. Go to step 3." in words(sheet("A", alone)), "a wrong way is seen, a missing one is not"


def test_a_record_of_an_open_window_says_accept():
    spec = Spec("runout", "Run-out", "length", None, (figure("window", quantity("at most 0.003 in", "length")),), AT)
    one = procedure(specs={"runout": spec}, steps=(step("dial", "Dial it.", records=(
        Record("Run-out", read_reference("runout.window", AT), None, None, None, AT),)),))
    assert "Run-out accept at most 0.003 in" in words(sheet("A", one))


@pytest.mark.parametrize("role, typed, says", [("ceiling", "at most 15 ft", "must be at most 15 ft"), ("floor", "at least 1.50 in", "must be at least 1.50 in"),
                                               ("ceiling", "15 ft", "never more than 15 ft")])
def test_a_limit_is_not_limited_twice(role, typed, says):
    one = procedure(specs={"stop": Spec("stop", "Stop", "length", None, (figure(role, quantity(typed, "length")),), AT)}, steps=(step("run", "Run it."),))
    assert says in words(sheet("A", one))


def test_a_sheet_prints_without_scripts_or_other_hosts():
    assert not re.search(r"<script|https?://", sheet("A"))


def test_the_offer_links_each_sheet_by_code():
    offer = site().files["winch/hub/sheet/index.html"]
    assert 'href="A/"' in offer and "Winch B serials from 100 Sheet code K3PD-99" in words(offer)


def test_one_box_is_no_boxes():
    one = procedure(steps=(step("a", "Look."),), needs=procedure().needs.__class__((), (), (), ()))
    assert "End of checklist — 1 box; nothing left loose" in sheet("A", one)


def test_a_hold_point_stands_before_what_it_holds_on_page_and_sheet():
    held = procedure(steps=(step("press", "Press it home.", hold_point=says("Guard up, nobody in line.")),))
    for html in (after(page(held), 'id="steps"'), sheet("A", held)):
        assert html.index("Guard up, nobody in line.") < html.index("Press it home.")
    assert "STOP, INSPECT before step 1: Guard up" in words(sheet("A", held))
