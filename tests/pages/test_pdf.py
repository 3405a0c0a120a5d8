"""Sheets as PDF where the extra [pdf] is there, read back by a reader that did not write them."""

import io

import pytest
from tiny_book import machine, site

from witnessmark.pages.binding import how_many, only, printed
from witnessmark.pages.paper_pages import binder_links
from witnessmark.pages.pdf import NoPdf, Press

SITE = site()


def press(size: str = "A4") -> Press:
    try:
        return Press(read, size)
    except NoPdf as problem:
        pytest.skip(str(problem))


def read(address: str) -> bytes | None:
    known = SITE.files.get(address)
    return known.encode() if isinstance(known, str) else known


@pytest.fixture(scope="module")
def files() -> dict[str, bytes]:
    return {one.name: one.data for one in printed(SITE, press())}


def reader(data: bytes):
    return pytest.importorskip("pypdf").PdfReader(io.BytesIO(data))


def test_there_is_a_file_for_each_sheet_and_a_binder_for_the_machine_and_for_each_variant(files):
    assert sorted(list(files)[:4]) == ["winch/hub-A.pdf", "winch/hub-B.pdf", "winch/strip-A.pdf", "winch/strip-B.pdf"]
    assert list(files)[4:] == ["winch/binder.pdf", "winch/binder-A.pdf", "winch/binder-B.pdf"]
    assert len(files) == how_many(SITE)


def test_the_same_sources_give_the_same_bytes(files):
    assert {one.name: one.data for one in printed(SITE, press())} == files


def test_text_can_be_selected_and_each_page_says_whose_it_is(files):
    for page in reader(files["winch/hub-B.pdf"]).pages:
        text = " ".join(page.extract_text().split())
        assert "Press the hub" in text and "K3PD-99" in text


def test_it_is_tagged_bookmarked_and_carries_its_fonts(files):
    document = reader(files["winch/hub-B.pdf"])
    root = document.trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"] and "/StructTreeRoot" in root and root["/Lang"] == "en"
    assert [each.title for each in document.outline if not isinstance(each, list)] == ["Press the hub"]
    for page in document.pages:
        for font in page["/Resources"]["/Font"].values():
            inner = font.get_object()["/DescendantFonts"][0].get_object()["/FontDescriptor"]
            assert {"/FontFile2", "/FontFile3"} & set(inner) and "Sheet" in inner["/FontName"]


def test_a_binder_holds_contents_legend_sheets_tags_record_and_slip_in_this_order(files):
    titles = [each.title for each in reader(files["winch/binder-B.pdf"]).outline if not isinstance(each, list)]
    assert titles == ["Binder: Quarry winch, B", "Strip the winch", "Press the hub", "Tags to print, cut and hang: Press the hub", "Hand-over record: Quarry winch, B", "Correction slip"]
    every = [each.title for each in reader(files["winch/binder.pdf"]).outline if not isinstance(each, list)]
    assert every == ["Binder: Quarry winch, every variant", "Strip the winch", "Strip the winch", "Press the hub", "Press the hub", "Tags to print, cut and hang: Press the hub",
                     "Hand-over record: Quarry winch, A", "Hand-over record: Quarry winch, B", "Correction slip"]
    assert "take out those of your serial" in " ".join(reader(files["winch/binder.pdf"]).pages[0].extract_text().split())
    assert "K3PD-99" in reader(files["winch/binder-B.pdf"]).pages[0].extract_text()
    first = " ".join(reader(files["winch/binder-B.pdf"]).pages[0].extract_text().split())
    assert "Contents" in first and "DANGER Someone will be killed" in first


def test_a_binder_for_every_variant_holds_each_sheet_once():
    whole, *alone = SITE.binders
    sheets = [leaf.url for leaf in whole.leaves if "/sheet/" in leaf.url]
    assert whole.variant == "" and len(sheets) == len(set(sheets)) == 4
    assert {leaf.url for leaf in whole.leaves} == {leaf.url for binder in alone for leaf in binder.leaves}
    assert [leaf.title for leaf in whole.leaves][:3] == ["Strip the winch, A", "Strip the winch, B", "Press the hub, A"]


def test_only_what_is_of_one_variant_is_printed_when_asked_for():
    assert [binder.variant for binder in only(SITE, "winch").binders] == ["", "A", "B"] and only(SITE, "mill").binders == ()
    mine = only(SITE, "winch", "B")
    assert how_many(mine) == 3 and [binder.variant for binder in mine.binders] == ["B"]


def test_the_machines_page_offers_the_binders_where_they_are_there():
    assert [target.href for target in binder_links(machine(), "../")] == [
        "../winch/plan/hand-over/A/binder.pdf", "../winch/plan/hand-over/B/binder.pdf", "../winch/plan/binder.pdf"]
    urls = {one.url for one in printed(SITE, press())}
    assert {target.href.removeprefix("../") for target in binder_links(machine(), "../")} <= urls
    assert "binder.pdf" not in next(page.html for page in SITE.pages if page.url == "winch/")


@pytest.mark.parametrize("size, points", [("A4", (595, 842)), ("Letter", (612, 792))])
def test_the_paper_is_the_one_asked_for(size, points):
    url = "winch/hub/sheet/B/"
    box = reader(press(size).pdf(SITE.files[f"{url}index.html"], url)).pages[0].mediabox
    assert (round(box.width), round(box.height)) == points


def test_nothing_is_fetched_from_elsewhere():
    html = '<html lang="en"><title>x</title><img src="https://elsewhere.example/x.png" alt="x"></html>'
    with pytest.raises(BaseException, match="elsewhere.example"):
        press().pdf(html, "x/")
