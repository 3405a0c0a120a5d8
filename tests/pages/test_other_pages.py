"""Machine, press, source, caution and working pages, and how figures were worked out."""

from test_procedure_page import words
from tiny_book import page, site


def test_home_lists_machines_and_their_procedures_in_order():
    text = words(page(url=""))
    assert text.index("Quarry winch") < text.index("Strip the winch") < text.index("Press the hub") < text.index("How to search")
    assert "Where these pages and an inspector disagree, stop." in text


def test_a_machine_tells_its_variants_and_places():
    text = words(page(url="winch/"))
    assert "Winch A serials 1 to 99" in text and "Hub B measures 5.25 in" in text and "side left, right" in text
    assert "LEFT and RIGHT facing the drum." in text


def test_a_source_lists_all_that_rests_on_it():
    html = page(url="source/leaves/")
    assert 'href="../../winch/hub/#spec-press-force">Hub press force</a>, Press the hub (leaf 11)' in html


def test_a_press_lists_gauges_and_who_uses_it():
    text = words(page(url="press/BP50/"))
    assert "Area 10.97 in² (70.77 cm²)" in text and "Division 100 psi" in text and "Press the hub" in text


def test_the_caution_page_starts_with_the_ladder_and_then_the_gravest():
    text = words(page(url="caution/"))
    assert text.index("Someone will be killed") < text.index("HZ-02") < text.index("HZ-13")


def test_a_derived_figure_leads_to_its_inputs_places_and_lines():
    html = site().files["winch/hub/working/index.html"]
    assert '<a href="https://forge.example/edit/main/procedures/winch/hub.yaml">procedures/winch/hub.yaml:7</a>' in html
    assert "p = F / A = 15 long ton / 10.97 in²" in words(html) and "REFUSED" in html
