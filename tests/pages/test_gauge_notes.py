"""What a gauge must be spared stands beside the marks that are read on it, on the page and on paper."""

import re
from pathlib import Path

from small_book import SITE_DATA, sources

from witnessmark.build import render
from witnessmark.prove import Checked, check
from witnessmark.loading.load_book import load_book
from witnessmark.workings.derive import derive_book

NOTE = "Close the gauge cock above <150> bar."
PRESSES = SITE_DATA["site_data/presses.yaml"].replace("main: {", f"main: {{notes: {NOTE}, ").replace(
    "  gauges:\n", "  gauges:\n    spare: {full scale: 20000 psi, division: 500 psi, accuracy: 1.0 %, notes: Of the spare gauge.}\n")


def texts() -> dict[str, str]:
    book, found = load_book(sources(presses=PRESSES))
    derived, more = derive_book(book)
    assert (found, more) == ([], [])
    site = render(Checked(book, derived, ()), "Hoist", "hoist", None)
    return {**{page.url: page.html for page in site.pages}, **site.files}


def test_the_note_of_the_gauge_in_use_stands_in_each_card_below_its_never_pass_mark():
    found = texts()
    shown = "Close the gauge cock above &lt;150&gt; bar."
    for name, one_card, cards in (("hoist/drum/", r'<section class="wm-card".*?</section>', 2), ("hoist/drum/sheet/late/index.html", r'<section class="card".*?</section>', 1)):
        here = re.findall(one_card, found[name], re.DOTALL)
        assert len(here) == cards
        for card in here:
            assert 0 < card.index('data-share="never"') < card.index(shown)
    assert not any("Of the spare gauge." in found[name] for name in ("hoist/drum/", "hoist/drum/sheet/late/index.html"))


def test_the_cock_of_the_demonstrations_test_gauge_is_on_every_sheet_that_reads_it():
    root = Path(__file__).parents[2]
    checked = check(root)
    files = render(checked, "Demo", "demo", None).files
    read = [f"{machine}/{name}/sheet/{variant}/index.html" for (machine, name), procedure in checked.book.procedures.items()
            for need in procedure.needs.presses if need.gauge == "test-gauge" for variant in procedure.variants]
    marked = [name for name in read if "data-share=\"never\"" in files[name] and 'data-gauge="test-gauge"' in files[name]]
    assert marked and all("Close the gauge cock above 150 bar." in files[name] for name in marked)
