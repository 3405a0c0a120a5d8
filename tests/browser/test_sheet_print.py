"""Sheets on paper: printed by a browser, read back by a reader of PDF that is not the browser, as text and as pictures."""

import re
import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "pages"))      # the tiny book stands there

from PIL import Image, ImageChops, ImageFilter
from printed import MILLIMETRE, Printed, squeezed
from tiny_book import procedure, sheet, step

from witnessmark.pages.fill_template import static_files
from witnessmark.pages.pdf import NoPdf, Press

pdfium = pytest.importorskip("pypdfium2")

#: What must stand whole on one page, and what may never be the last thing on one.
WHOLE = ".block, .together > tbody > tr, .grid > tbody > tr, .wm-caution, .wm-open > li, .item, .wm-needs > li, .firsts > li, .hold, .card"
HEADS = "h1, h2, h3, .flows > .hold, .together > thead, .grid > thead"
LONG = procedure(steps=tuple(step(f"s{n}", f"Turn nut number {n}.", cautions=("HZ-02",), each="side") for n in range(1, 46)))

READ_PAGE = """([whole, heads]) => ({
  code: document.querySelector('.sheet').dataset.code,
  identity: document.querySelector('.identity').innerText,
  whole: [...document.querySelectorAll(whole)].map(e => e.textContent),
  undrawn: [...document.querySelectorAll(whole)].map(e => { const c = e.cloneNode(true); c.querySelectorAll('svg').forEach(d => d.remove()); return c.textContent; }),
  heads: [...document.querySelectorAll(heads)].map(e => e.textContent),
  dials: [...document.querySelectorAll('.card-dial svg')].map(e => [...e.querySelectorAll('text')].map(t => t.textContent)).filter(texts => texts.length),
  steps: [...document.querySelectorAll('.step')].map(e => [e.textContent,
    [...(e.closest('.together') ?? e).querySelectorAll('.wm-caution')].map(c => c.textContent)]),
})"""


@pytest.fixture(scope="module")
def sheets(chromium, serve, demo_site) -> list[Printed]:
    """Every sheet of the demo in both sizes, printed in one run of the browser."""
    address, found = serve(demo_site), []
    page = chromium.new_page(java_script_enabled=True)
    for file in sorted(demo_site.glob("*/*/sheet/*/index.html")):
        name = file.parent.relative_to(demo_site).as_posix()
        page.goto(f"{address}{name}/")
        page.evaluate("Promise.all([...document.fonts].map(font => font.load())).then(() => true)")       # a slow fetch is no other font
        told = page.evaluate(READ_PAGE, [WHOLE, HEADS])
        found += [Printed(name, size, told, page.pdf(format=size)) for size in ("A4", "Letter")]
    page.close()
    return found


def test_every_sheet_is_there_in_both_sizes(sheets):
    assert len(sheets) >= 100 and {one.size for one in sheets} == {"A4", "Letter"}
    sizes = {one.size: [round(length / MILLIMETRE) for length in one.document[0].get_size()] for one in sheets}
    assert sizes == {"A4": [210, 297], "Letter": [216, 279]}


def test_every_printed_page_says_whose_it_is(sheets):
    for one in sheets:
        assert one.told["code"] in one.told["identity"]
        assert [squeezed(one.told["identity"]) in page for page in one.pages] == [True] * len(one.pages), one


def test_nothing_is_split_between_two_pages(sheets):
    """No step, no row of a table, no caution, no loose end: each is found whole on one page."""
    for one in sheets:
        split = [text for text in one.told["whole"] if not any(squeezed(text) in page for page in one.pages)]
        assert split == [], one


def test_each_step_has_its_cautions_complete_on_its_page(sheets):
    for one in sheets:
        for text, cautions in one.told["steps"]:
            page = next(page for page in one.pages if squeezed(text) in page)
            assert all(squeezed(caution) in page for caution in cautions), (one, text)
    assert sum(len(cautions) for one in sheets for _, cautions in one.told["steps"]) > 200


def test_no_page_ends_with_a_heading(sheets):
    for one in sheets:
        heads = tuple(filter(None, map(squeezed, one.told["heads"])))
        assert not [page for page in one.bodies if page.endswith(heads)], one


def test_nothing_is_clipped_and_no_type_is_under_ten_points(sheets):
    """Also where a browser would shrink the page because something is too wide for it."""
    for one in sheets:
        left, right = 20 * MILLIMETRE, one.document[0].get_size()[0] - 11 * MILLIMETRE
        for page in one.texts():
            assert min(size for _, _, size in page) > 9.95, one
            assert min(start for start, _, _ in page) > left - 1 and max(end for _, end, _ in page) < right + 2, one


def test_every_body_word_is_set_in_the_font_we_carry(sheets):
    for one in sheets:
        assert one.fonts() == {"DejaVuSansCondensed", "DejaVuSansCondensed-Bold"}, one


def test_the_code_is_read_by_another_reader_and_is_large_enough_for_a_greasy_print(sheets):
    zxing = pytest.importorskip("zxingcpp")
    for one in sheets:
        found = zxing.read_barcodes(one.picture(0, 150))
        assert [code.text for code in found] == [f"https://book.example/s/#{one.told['code']}"], one
        corners = found[0].position
        assert corners.top_right.x - corners.top_left.x >= 25 / 25.4 * 150, one
        assert found[0].extra["ECLevel"] == "H" if "ECLevel" in found[0].extra else found[0].ec_level == "H"


def copied(page: Image.Image) -> Image.Image:
    """A copy of a copy of a copy: blurred a little, and each time made pure black and white again, as a shop's copier does."""
    for _ in range(3):
        page = page.filter(ImageFilter.GaussianBlur(0.7)).point(lambda shade: 255 * (shade > 150))
    return page


def test_the_code_is_read_from_a_copy_of_a_copy(sheets):
    zxing = pytest.importorskip("zxingcpp")
    for one in sheets:
        if one.size == "A4":
            found = zxing.read_barcodes(copied(one.picture(0, 150).convert("L")))
            assert [code.text for code in found] == [f"https://book.example/s/#{one.told['code']}"], one


@pytest.mark.parametrize("name", ["type-24/flycrank-press-on/sheet/24-B", "type-24/engine-top-end/sheet/24-C", "thornley-13/lathe-run-in-and-test/sheet/taper"])
def test_no_stroke_is_gone_from_a_copy_of_a_copy(sheets, name):
    """Boxes, dotted leaders, dials, figures: where a page is dark, its copy is dark within two dots of it."""
    one = next(one for one in sheets if (one.name, one.size) == (name, "A4"))
    for number in range(len(one.pages)):
        page = one.picture(number, 150).convert("L")
        dark = page.point(lambda shade: 255 * (shade < 235))
        near = copied(page).filter(ImageFilter.MinFilter(5)).point(lambda shade: 255 - shade)
        gone = ImageChops.subtract(dark, near)
        assert gone.histogram()[255] <= .001 * dark.histogram()[255], (one, number, gone.getbbox())


def test_paper_is_black_and_white(sheets):
    for one in sheets:
        if one.size == "A4":
            for number in range(len(one.pages)):
                red, green, blue = one.picture(number, 30).convert("RGB").split()
                assert max(ImageChops.difference(red, other).getextrema()[1] for other in (green, blue)) <= 2, one      # rounded by the reader


def test_pages_are_not_wasted(sheets):
    """A short job takes one leaf, the longest nine sides; no page but the last is half white."""
    count = {(one.name, one.size): len(one.pages) for one in sheets}
    assert {count["thornley-13/lathe-front-bearing-plain/sheet/plain", size] for size in ("A4", "Letter")} == {2}
    assert max(count.values()) <= 9
    for one in sheets:
        filled = [one.filled(number) for number in range(len(one.pages) - 1)]
        assert min(filled) > .5, (one, filled)


@pytest.mark.parametrize("width", [676, 698])           # what A4 and Letter leave between the margins, in pixels of CSS
@pytest.mark.parametrize("name", ["flycrank-press-on/sheet/24-B", "wheelset-repress/sheet/24-B"])
def test_a_part_is_named_on_the_line_of_its_figure(chromium, serve, demo_site, name, width):
    """At the end of a line it would be read with the figure before it."""
    page = chromium.new_page(java_script_enabled=False, viewport={"width": width, "height": 900})
    page.emulate_media(media="print")
    page.goto(f"{serve(demo_site)}type-24/{name}/")
    parted = page.evaluate("""() => [...document.querySelectorAll('.wm-figure > .wm-case')].map(part => {
        const figure = part.parentElement.querySelector('.wm-printed');
        return [part.textContent + ' ' + figure?.textContent, figure ? Math.abs(part.getBoundingClientRect().bottom - figure.getBoundingClientRect().bottom) : 0];
    })""")
    page.close()
    assert len(parted) > 6 and [told for told, apart in parted if apart > 6] == []


@pytest.fixture(scope="module", params=("A4", "Letter"))
def long(request, chromium) -> list[str]:
    """The text of each page of a sheet whose steps all have the same caution."""
    style = static_files()["sheet.css"].decode()
    page = chromium.new_page(java_script_enabled=False)
    page.set_content(re.sub("<meta http-equiv[^>]*>", "", sheet("A", LONG)).replace("</head>", f"<style>{style}</style></head>"))
    data = page.pdf(format=request.param)
    page.close()
    return [" ".join(leaf.get_textpage().get_text_range().split()) for leaf in pdfium.PdfDocument(data)]


def test_a_caution_for_many_steps_is_printed_again_where_a_page_ends_between_them(long):
    with_steps = [leaf for leaf in long if "Turn nut number" in leaf]
    assert len(with_steps) > 1
    for leaf in with_steps:
        assert "For steps 1 to 45. Hazard: Hub under load." in leaf and "Stand aside." in leaf
        assert leaf.index("For steps 1 to 45.") < leaf.index("Turn nut number")


def test_nothing_is_lost_on_the_way_to_paper(long):
    whole = " ".join(long)
    assert [f"Turn nut number {n}." in whole for n in range(1, 46)] == [True] * 45
    assert "End of checklist — 94 boxes" in long[-1]


@pytest.mark.parametrize("name", ["thornley-13/lathe-front-bearing-plain/sheet/plain", "type-24/flycrank-press-on/sheet/24-C", "type-24/wheelset-repress/sheet/24-B"])
def test_the_pdf_has_the_same_pages_as_the_browsers_print(sheets, demo_site, name):
    """The same words, whole steps on one page, the same head on each, the same gauges with the same numbers in their faces; two
    setters of type may break a page one step apart, and write what stands in a drawing at another place in the file."""
    try:
        press = Press(lambda address: (demo_site / address).read_bytes() if (demo_site / address).is_file() else None, "A4")
    except NoPdf as problem:
        pytest.skip(str(problem))
    browsers = next(one for one in sheets if (one.name, one.size) == (name, "A4"))
    ours = Printed(name, "A4", browsers.told, press.pdf((demo_site / name / "index.html").read_text(encoding="utf-8"), f"{name}/"))
    assert abs(len(ours.pages) - len(browsers.pages)) <= 1
    assert [squeezed(browsers.told["identity"]) in page for page in ours.pages] == [True] * len(ours.pages)
    assert [text for text in browsers.told["undrawn"] if not any(squeezed(text) in page for page in ours.pages)] == []
    assert all(min(size for _, _, size in page) > 9.95 for page in ours.texts())
    drawn = [one.dials(48 * MILLIMETRE) for one in (browsers, ours)]
    assert [[set(texts) for texts, _ in dials] for dials in drawn] == 2 * [[set(texts) for texts in browsers.told["dials"]]]
    assert all(abs(dark - other) < .03 and dark > .1 for (_, dark), (_, other) in zip(*drawn, strict=True))
