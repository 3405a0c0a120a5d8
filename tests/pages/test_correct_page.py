"""The page for corrections, as it is built: each figure with its line, its ways to the forge, what it moves."""

import re
from dataclasses import replace
from html import unescape
from urllib.parse import parse_qs, urlsplit

from compared_books import proved_book
from small_book import PROCEDURE, SITE_DATA
from test_procedure_page import words
from tiny_book import CODES, book, derived, page

from witnessmark.build import render
from witnessmark.core.correction_text import ASKED, read_correction
from witnessmark.pages.forge_links import forge_of
from witnessmark.pages.to_correct import MOST_MOVED, not_too_many
from witnessmark.pages.view_step import Target
from witnessmark.pages.site import Settings, site_pages


def correct(repo: str | None = "https://forge.example/shop/book", edit_uri: str | None = "edit/main/", mail: str = "", one=None) -> str:
    settings = replace(Settings("Tiny book", "tiny"), forge=forge_of(repo, edit_uri), mail=mail)
    return site_pages(one or book(), derived(), CODES, settings).files["winch/hub/correct/index.html"]


def test_each_figure_of_the_page_leads_to_its_own_entry():
    anchors = re.findall(r'class="wm-correct" href="correct/#([^"]+)"', page())
    html = correct()
    assert {"press-force.target", "press-force.ceiling", "press-force.target-2", "nut.target", "gap.window"} <= set(anchors)
    assert len(set(anchors)) == len(anchors) and all(f'id="{anchor}"' in html for anchor in anchors)


def test_editor_and_issue_form_are_filled_with_what_the_page_knows():
    html = correct()
    assert '<a class="wide" href="https://forge.example/shop/book/edit/main/procedures/winch/hub.yaml#L7"' in html
    links = [unescape(link) for link in re.findall(r'href="(https://forge.example/shop/book/issues/new[^"]*)"', html)]
    bodies = [read_correction(parse_qs(urlsplit(link).query)["body"][0]) for link in links]
    force = next(body for body in bodies if body["Spec"] == "press-force")
    assert force["Procedure"] == "winch/hub" and "18 long ton" in force["Printed figure"].split("; ")
    assert force["Line"] == "procedures/winch/hub.yaml:7" and "A 7QX2-M4" in force["Sheet codes of the page"]
    assert all(name in force.values for name in ASKED)
    assert {body["Spec"] for body in bodies} >= {"press-force", "nut", "gap", ""}


def test_each_card_torque_and_result_leads_to_what_it_is_worked_out_from():
    html = correct()
    for anchor in re.findall(r'class="wm-correct" href="correct/#([^"]+)"', page()):
        assert f'id="{anchor}"' in html
    assert re.search(r'<section class="wm-card" data-spec="press-force".*?href="correct/#press-force"', page(), re.DOTALL)
    assert re.search(r'<section class="wm-torque" data-spec="nut".*?href="correct/#nut"', page(), re.DOTALL)
    force = html[html.index('id="press-force"'):].partition("</section>")[0]
    assert 'href="../../../press/correct/#press-BP50.main"' in force and 'href="../../../press/correct/#press-BP50"' in force


GRIP = """\
computed:
  grip:
    working: taper-grip
    torque to carry: hoist/load-torque
    taper: 1:12
    mean diameter: 3.000 in
    length: {early: 3.50 in, late: 3.75 in}
    friction: dry
"""
TORQUE = "hand-over: drum\n", "  load-torque: {label: Load torque, kind: torque, role: found, is: 400 lbf·ft, source: chart p. 1}\nhand-over: drum\n"
DRY = "dry:\n  title: Dry\n  taper friction: {low: 0.12, likely: 0.15, high: 0.20, source: shop}\n"


def test_a_result_is_corrected_by_what_it_is_worked_out_from():
    checked = proved_book(PROCEDURE.replace("steps:\n", f"{GRIP}steps:\n"), surfaces=SITE_DATA["site_data/surfaces.yaml"] + DRY,
                          **{"machines/hoist": SITE_DATA["site_data/machines/hoist.yaml"].replace(*TORQUE)})
    assert checked.findings == ()
    site = render(checked, "t", "t", forge_of("https://forge.example/shop/book", "edit/main/"))
    [procedure] = [one.html for one in site.pages if one.url == "hoist/drum/"]
    assert re.search(r'id="result-grip".*?<a class="wm-correct" href="correct/#result-grip"', procedure, re.DOTALL)
    assert 'href="../correct/#result-grip"' in site.files["hoist/drum/working/index.html"]
    html = site.files["hoist/drum/correct/index.html"]
    grip = html[html.index('id="result-grip"'):].partition("</section>")[0]
    assert "This is worked out from what stands here" in grip
    lines = {role: text for role, text in re.findall(r'data-role="([^"]*)"><p>(.*?)</p>', grip)}
    assert set(lines) == {"torque to carry", "taper", "mean diameter", "length", "friction"} and "3.75 in" in lines["length"] and "late" in lines["length"]
    line = next(number for number, text in enumerate(checked.texts["procedures/hoist/drum.yaml"].splitlines(), 1) if "taper: 1:12" in text)
    assert f'edit/main/procedures/hoist/drum.yaml#L{line}"><code>procedures/hoist/drum.yaml:{line}<' in grip
    assert 'href="../../plan/correct/#load-torque">Load torque' in grip.replace("../../../hoist/plan", "../../plan")
    assert 'href="../../../press/correct/#surface-dry">Dry' in grip


def test_the_machine_s_versions_and_the_shop_lead_to_their_own_pages():
    site = render(proved_book(), "t", "t", None)
    pages = {one.url: one.html for one in site.pages}
    assert 'href="plan/correct/#carrier-hoist"' in pages["hoist/"] and 'id="carrier-hoist.late"' in site.files["hoist/plan/correct/index.html"]
    assert 'href="../correct/#press-P20"' in pages["press/P20/"] and 'href="../correct/#press-P20.main"' in pages["press/P20/"]
    bench = site.files["hoist/drum/bench/index.html"]
    assert re.search(r'<details class="reason"><summary>Something wrong here\? Correct it</summary>\s*<ul><li><a href="../correct/#press">Drum press force</a>', bench)


def test_the_press_s_own_data_has_its_lines_and_says_what_rests_on_it():
    html = site_pages(book(), derived(), CODES, replace(Settings("Tiny book", "tiny"), forge=forge_of("https://forge.example/shop/book", "edit/main/"))).files["press/correct/index.html"]
    press = html[html.index('id="press-BP50"'):].partition("</section>")[0]
    assert 'data-home="site_data/presses"' in press and "10.97 in²" in words(press) and "#L" in press
    gauge = html[html.index('id="press-BP50.main"'):].partition("</section>")[0]
    assert 'data-name="BP50/main"' in gauge and 'data-role="division"' in gauge and '../../winch/hub/#spec-press-force"' in gauge


def test_what_rests_on_much_is_counted_and_not_listed_without_end():
    targets = tuple(Target(f"Figure {number}", "x") for number in range(MOST_MOVED + 1))
    assert not_too_many(targets[:-1]) == ((), targets[:-1])
    assert not_too_many(targets) == ((f"{MOST_MOVED + 1} figures and results in all",), targets[:-1])


def test_without_a_forge_nothing_leads_anywhere_and_the_page_says_so():
    html = correct(repo=None)
    assert "forge.example" not in html and "names no forge" in words(html)
    assert '"issue": null' in html


def test_what_a_figure_moves_and_how_it_is_withdrawn():
    text = words(correct())
    assert "the marks of its press card" in text and "its wrench setting" in text
    assert "in doubt: Tell here in a sentence" in text and "7QX2-M4" in text


def test_without_script_the_questions_stand_there():
    assert all(question in words(correct()) for question in ASKED)
    assert 'href="../../../sheet/correction-slip/"' in correct()
