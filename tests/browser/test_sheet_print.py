"""A sheet on paper: printed by a browser, read back by a reader of PDF that is not the browser."""

import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "pages"))      # the tiny book stands there

from tiny_book import procedure, sheet, step

from witnessmark.pages.fill_template import static_files

pdfium = pytest.importorskip("pypdfium2")

LONG = procedure(steps=tuple(step(f"s{n}", f"Turn nut number {n}.", cautions=("HZ-02",), each="side") for n in range(1, 16)))


@pytest.fixture(scope="module", params=("A4", "Letter"))
def paper(request, chromium) -> list[str]:
    """The text of each printed page of a long sheet."""
    style = static_files()["sheet.css"].decode()
    page = chromium.new_page(java_script_enabled=False)
    page.set_content(sheet("A", LONG).replace("</head>", f"<style>{style}</style></head>"))
    data = page.pdf(format=request.param)
    page.close()
    return [" ".join(leaf.get_textpage().get_text_range().split()) for leaf in pdfium.PdfDocument(data)]


def test_every_printed_page_says_whose_it_is(paper):
    assert len(paper) > 2
    for leaf in paper:
        assert "Press the hub · Quarry winch · A · Sheet code 7QX2-M4" in leaf


def test_no_step_is_parted_from_its_caution(paper):
    """Each step's page holds at least as many whole cautions, first word to last, as it has steps."""
    for leaf in paper:
        steps = leaf.count("Turn nut number")
        assert leaf.count("DANGER Hazard: Hub under load.") >= steps and leaf.count("Stand aside.") >= steps


def test_nothing_is_lost_on_the_way_to_paper(paper):
    whole = " ".join(paper)
    assert [f"Turn nut number {n}." in whole for n in range(1, 16)] == [True] * 15
    assert "End of checklist — 33 boxes" in paper[-1]


def test_no_page_but_the_last_is_all_but_empty(paper):
    assert all(len(leaf) > 250 for leaf in paper[:-1])
