"""What is drawn on paper: the code to scan, and the dial of a gauge."""

import re

import pytest

from witnessmark.core.drawing import Disc, Label, Stroke
from witnessmark.pages.qr_code import qr_code
from witnessmark.pages.view_dial import Needle, dial

ADDRESS = "https://book.example/s/#7QX2-M4KD"


def test_the_code_is_read_back_by_a_reader_that_did_not_write_it():
    image = pytest.importorskip("PIL.Image")
    zxing = pytest.importorskip("zxingcpp")
    drawn = str(qr_code(ADDRESS))
    size = int(re.search(r'viewBox="0 0 (\d+)', drawn)[1])
    picture = image.new("L", (size * 4, size * 4), 255)
    for x, y, length in re.findall(r"M(\d+) (\d+)h(\d+)v1", drawn):
        picture.paste(0, (int(x) * 4, int(y) * 4, (int(x) + int(length)) * 4, (int(y) + 1) * 4))
    found = zxing.read_barcodes(picture)
    assert [code.text for code in found] == [ADDRESS]
    spoiled = picture.copy()
    middle = size * 2
    spoiled.paste(255, (middle - 16, middle - 16, middle + 16, middle + 16))
    assert [code.text for code in zxing.read_barcodes(spoiled)] == [ADDRESS], "a thumb print in the middle"


def test_the_code_is_white_for_four_modules_round_and_over_25_millimetres_across():
    drawn = str(qr_code(ADDRESS))
    size, millimetres = (float(re.search(pattern, drawn)[1]) for pattern in (r'viewBox="0 0 (\d+)', r'width="([\d.]+)mm"'))
    starts = [(int(x), int(y), int(x) + int(length)) for x, y, length in re.findall(r"M(\d+) (\d+)h(\d+)v1", drawn)]
    assert min(min(x, y) for x, y, _ in starts) == 4 and max(max(end, y + 1) for _, y, end in starts) == size - 4
    assert millimetres * (size - 8) / size >= 25


def drawn(**more):
    return dial(**{**dict(full_scale=10_000.0, division=100.0, unit="psi", stops=(Needle("1", 0.25), Needle("2", 0.5)), never=0.75, shows="A dial."), **more})


def test_needles_stand_where_the_marks_are():
    """Half of a scale that sweeps 270 degrees from the lower left points straight up; a quarter is 67.5 degrees to the left of it."""
    needles = [mark for mark in drawn().marks if isinstance(mark, Stroke) and mark.weight == "thick" and abs(mark.points[0][0] - 100) < 27
               and abs(mark.points[0][1] - 100) < 27]
    tips = [needle.points[1] for needle in needles]
    assert tips[1] == pytest.approx((100, 24), abs=0.01)
    assert tips[0] == pytest.approx((100 - 76 * 0.92388, 100 - 76 * 0.38268), abs=0.01)      # sine and cosine of 67.5 degrees


def test_the_band_that_is_never_entered_is_solid_black_from_the_mark_to_the_end_of_the_scale():
    band, line = [mark for mark in drawn().marks if isinstance(mark, Stroke) and mark.fill == "dark"]
    assert len(band.points) > 60 and band.closed and line.closed
    assert band.points[0] == pytest.approx((100 + 75 * 0.92388, 100 - 75 * 0.38268), abs=0.01)      # three quarters: the quarter's mirror image
    assert band.points[40] == pytest.approx((100 + 75 * 0.70711, 100 + 75 * 0.70711), abs=0.01)     # the end: the lower right


def test_no_number_is_struck_through_by_a_needle_and_marks_close_together_keep_their_rings_apart():
    close = drawn(stops=tuple(Needle(str(n), share) for n, share in enumerate((0.20, 0.30, 0.34, 0.36), 1)))
    numbers = {mark.text for mark in close.marks if isinstance(mark, Label)}
    assert "2000" not in numbers and "8000" in numbers
    rings = [mark for mark in close.marks if isinstance(mark, Disc) and mark.radius == 8]
    gaps = [((a.x - b.x) ** 2 + (a.y - b.y) ** 2) ** 0.5 for n, a in enumerate(rings) for b in rings[:n]]
    assert len(rings) == 4 and min(gaps) >= 16


@pytest.mark.parametrize("full, division", [(160.0, 2.0), (10_000.0, 100.0), (15_000.0, 200.0), (250.0, 0.5)])
def test_no_digit_of_a_number_lies_under_the_black_band(full, division):
    """10000 without its last nought reads as another pressure. A digit of the font is 0.573 of its size wide, by the font's own table, 0.73 high."""
    for mark in drawn(full_scale=full, division=division, stops=()).marks:
        if isinstance(mark, Label) and mark.text[0].isdigit():
            corners = [(abs(mark.x - 100) + len(mark.text) * 15 * 0.573 / 2, y - 100) for y in (mark.y, mark.y - 15 * 0.73)]
            assert max((x * x + y * y) ** 0.5 for x, y in corners) < 62, mark


@pytest.mark.parametrize("full, division", [(160.0, 2.0), (400.0, 5.0), (10_000.0, 100.0), (250.0, 0.5), (1.0, 0.02)])
def test_any_gauge_can_be_drawn(full, division):
    marks = drawn(full_scale=full, division=division, stops=()).marks
    ticks = [mark for mark in marks if isinstance(mark, Stroke) and mark.weight == "thin" and len(mark.points) == 2]
    numbers = [float(mark.text) for mark in marks if isinstance(mark, Label) and re.fullmatch(r"[\d.]+", mark.text)]
    assert 20 < len(ticks) <= 133 and 3 <= len(set(numbers)) and max(numbers) <= full
