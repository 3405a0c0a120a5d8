"""Pictures in steps: what is refused, and how one stands on page and sheet. Every byte is written here."""

import os
import re
import zlib
from pathlib import Path
from struct import pack

import pytest
from small_book import PROCEDURE, sources
from test_mkdocs_plugin import build

from witnessmark.build import codes, render
from witnessmark.prove import check
from witnessmark.loading.picture_header import picture_size
from witnessmark.loading.source_files import picture_file

EOI = b"\xff\xd9"
POLYGLOT = b"<script>alert(1)</script><svg onload=alert(1)>"
STEP = "    do: Tighten the bolts to {bolt}.\n"


def png(width: int, height: int, more: bytes = b"") -> bytes:
    """A whole grey picture, by ISO/IEC 15948."""
    def chunk(name: bytes, data: bytes) -> bytes:
        return pack(">I", len(data)) + name + data + pack(">I", zlib.crc32(name + data))
    rows = zlib.compress(b"".join(b"\0" + bytes(width) for _ in range(height)))
    return (b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)) + chunk(b"IDAT", rows)
            + chunk(b"IEND", b"") + more)


def jpeg(width: int, height: int, orientation: int | None = None, frame: int = 0xC0) -> bytes:
    """The head of a JPEG, by ITU-T T.81 table B.2: start, the camera's tags, a table, the frame."""
    tags = b""
    if orientation:
        tiff = b"MM\0*" + pack(">IH", 8, 1) + pack(">HHIHH", 0x0112, 3, 1, orientation, 0) + pack(">I", 0)
        tags = b"\xff\xe1" + pack(">H", len(tiff) + 8) + b"Exif\0\0" + tiff
    table = b"\xff\xc4" + pack(">H", 4) + b"\0\0"              # looks like a frame by its number, and is none
    return b"\xff\xd8" + tags + table + bytes((0xFF, frame)) + pack(">HBHHB", 11, 8, height, width, 1) + b"\1\x11\0"


def webp(kind: bytes, body: bytes) -> bytes:
    return b"RIFF" + pack("<I", len(body) + 12) + b"WEBP" + kind + pack("<I", len(body)) + body


@pytest.mark.parametrize("data, size", [
    (png(31, 17), (31, 17)), (jpeg(640, 480), (640, 480)), (jpeg(640, 480, frame=0xC2), (640, 480)),
    (jpeg(640, 480, orientation=1), (640, 480)), (jpeg(640, 480, orientation=6), (480, 640)), (jpeg(640, 480, orientation=3), (640, 480)),
    (webp(b"VP8X", bytes(4) + b"\x7f\x02\0" + b"\xdf\x01\0"), (640, 480)),
    (webp(b"VP8L", b"\x2f" + pack("<I", 639 | 479 << 14)), (640, 480)),
    (webp(b"VP8 ", b"\0\0\0\x9d\x01\x2a" + pack("<HH", 640, 480)), (640, 480)),
], ids=["png", "jpeg", "progressive", "upright", "on its side", "upside down", "webp", "webp lossless", "webp lossy"])
def test_the_size_is_that_a_browser_shows(data, size):
    assert picture_size(data) == size


@pytest.mark.parametrize("data", [
    b"", b"\xff\xd8\xff", b"\x89PNG\r\n\x1a\n", b"<svg onload='alert(1)'/>", b"GIF89a" + bytes(20), b"RIFF\0\0\0\0WEBP", b"RIFF\0\0\0\0WEBPVP8L",
    png(0, 5)[:40], b"MZ" + bytes(200), b"<!DOCTYPE html><script>", jpeg(5, 5)[:14], b"\xff\xd8" + b"\xff" * 5000, b"\xff\xd8\xff\xe0\0\0" * 9])
def test_what_is_no_picture_has_no_size(data):
    assert picture_size(data) is None


@pytest.mark.parametrize("whole", [png(31, 17), jpeg(640, 480, 6), webp(b"VP8L", b"\x2f" + bytes(4))])
def test_a_cut_picture_never_raises(whole):
    for end in range(len(whole)):
        assert picture_size(whole[:end]) in (None, picture_size(whole))


def book(folder: Path, picture: str, files: dict[str, bytes] = {}) -> Path:
    text = PROCEDURE.replace(STEP, f"{STEP}    picture: {picture}\n")
    assert text != PROCEDURE
    for source in sources(text):
        (folder / source.path).parent.mkdir(parents=True, exist_ok=True)
        (folder / source.path).write_text(source.text, encoding="utf-8")
    for name, data in files.items():
        (folder / "procedures/hoist" / name).write_bytes(data)
    return folder


@pytest.mark.parametrize("picture, files, severity, says", [
    ("{file: cup.jpg, shows: The cup.}", {}, "error", "there is no such file"),
    ("{file: ../../../etc/passwd, shows: The cup.}", {}, "error", "leaves the folder of its source"),
    ("{file: /etc/passwd, shows: The cup.}", {}, "error", "leaves the folder of its source"),
    ("{file: 'https://example.org/cup.png', shows: The cup.}", {}, "error", "leaves the folder of its source"),
    ("{file: 'C:\\cup.png', shows: The cup.}", {}, "error", "leaves the folder of its source"),
    ("{file: .cup.png, shows: The cup.}", {".cup.png": png(2, 2)}, "error", "leaves the folder of its source"),
    ("{file: cup.svg, shows: The cup.}", {"cup.svg": b"<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'/>"}, "error", "save it as PNG, JPEG or WebP"),
    ("{file: cup.jpg, shows: The cup.}", {"cup.jpg": b"<script>alert(1)</script>"}, "error", "it is no picture"),
    ("{file: drum.yaml, shows: The cup.}", {}, "error", "it is no picture"),
    ("{file: ., shows: The cup.}", {}, "error", "leaves the folder of its source"),
    ("{file: cup.png, shows: The cup.}", {"cup.png": png(9, 9, bytes(500_001))}, "warning", "weighs 500 kB, save it smaller"),
    ("{file: cup.jpg, shows: The cup.}", {"cup.jpg": jpeg(60000, 60000) + EOI}, "error", "60000 by 60000 pixels"),
    ("{file: cup.png, shows: The cup.}", {"cup.png": png(2, 2).replace(pack(">II", 2, 2), pack(">II", 2**31 - 1, 2**31 - 1))}, "error", "2147483647 by 2147483647 pixels"),
    ("{file: cup.png, shows: The cup.}", {"cup.png": b""}, "error", "the file is empty"),
    ("{file: cup.png, shows: The cup.}", {"cup.png": png(40, 40)[:-12]}, "error", "ends before the picture does"),
    ("{file: cup.jpg, shows: The cup.}", {"cup.jpg": jpeg(40, 40)}, "error", "ends before the picture does"),
    ("{file: cup.webp, shows: The cup.}", {"cup.webp": webp(b"VP8L", b"\x2f" + bytes(9))[:-3]}, "error", "ends before the picture does"),
    ("{file: cup.html, shows: The cup.}", {"cup.html": png(2, 2, POLYGLOT)}, "error", "a PNG picture under another name, let its name end in .png"),
    ("{file: cup.svg, shows: The cup.}", {"cup.svg": jpeg(2, 2) + EOI + POLYGLOT}, "error", "a JPEG picture under another name, let its name end in .jpg"),
    ("{file: cup, shows: The cup.}", {"cup": png(2, 2)}, "error", "let its name end in .png"),
    ("{file: cup.jpg, shows: The cup.}", {"cup.jpg": png(2, 2)}, "error", "let its name end in .png"),
    ("{file: cup.png, shows: The cup.}", {"cup.png": bytes(20_000_001)}, "error", "it is over 20 MB"),
    ("{file: cup.png, shows: none}", {"cup.png": png(9, 9)}, "error", "does not say what it shows"),
])
def test_a_picture_that_will_not_do_is_one_finding(tmp_path, picture, files, severity, says):
    found = check(book(tmp_path, picture, files)).findings
    assert len(found) == 1, found
    assert found[0].line().startswith(f"procedures/hoist/drum.yaml:37:14: {severity}: the picture '") and says in found[0].line(), found


def test_what_lies_behind_a_pictures_end_is_never_a_page(tmp_path):
    """A picture and a page at once: as .png a browser shows the picture; under a name that makes it a page it is refused above."""
    folder = book(tmp_path, "{file: cup.png, shows: The cup.}", {"cup.png": png(2, 2, POLYGLOT)})
    assert check(folder).findings == ()


@pytest.mark.parametrize("leads_to, says", [
    ("/etc/hostname", "leaves the book"), ("../../../outside.png", "leaves the book"), ("cup.png", "cannot be opened"), ("nowhere.png", "no such file")])
def test_a_link_in_place_of_a_picture_is_refused(tmp_path, leads_to, says):
    (tmp_path / "outside.png").write_bytes(png(3, 3))
    folder = book(tmp_path / "book", "{file: cup.png, shows: The cup.}")
    os.symlink(leads_to, folder / "procedures/hoist/cup.png")
    assert says in picture_file(folder, "procedures/hoist/cup.png").problem[0]
    assert [finding.place.path for finding in check(folder).findings] == ["procedures/hoist/cup.png"]


def test_a_link_that_leaves_the_book_is_refused_though_no_step_names_it(tmp_path):
    """The host copies whatever lies beside a procedure."""
    (tmp_path / "secret.txt").write_text("secret")
    folder = book(tmp_path / "book", "{file: inside.png, shows: The cup.}", {"cup.txt": png(3, 3)})
    os.symlink("cup.txt", folder / "procedures/hoist/inside.png")
    assert [finding.rule for finding in check(folder).findings] == ["stray-file"]
    (folder / "procedures/hoist/cup.txt").rename(folder / "site_data/cup.txt")
    (folder / "procedures/hoist/inside.png").unlink()
    os.symlink("../../site_data/cup.txt", folder / "procedures/hoist/inside.png")
    assert check(folder).findings == ()
    os.symlink("../../../secret.txt", folder / "procedures/hoist/notes.txt")
    lines = [finding.line() for finding in check(folder).findings]
    assert len(lines) == 1 and "procedures/hoist/notes.txt:1:1: error: this file is a link that leaves the book" in lines[0]


def test_a_pipe_in_place_of_a_picture_does_not_hang(tmp_path):
    folder = book(tmp_path, "{file: cup.png, shows: The cup.}")
    os.mkfifo(folder / "procedures/hoist/cup.png")
    assert "no such file" in check(folder).findings[0].message


def test_page_and_sheet_keep_its_room_and_say_what_it_shows(tmp_path):
    checked = check(book(tmp_path, "{file: 'cup & \"shaft\".png', shows: \"The <b>cup</b> on the shaft.\"}", {'cup & "shaft".png': png(31, 17)}))
    assert [finding.rule for finding in checked.findings] in ([], ["html-not-read"])
    site = render(checked, "Hoist", "hoist", None)
    page = next(page.html for page in site.pages if page.url == "hoist/drum/")
    sheet = site.files["hoist/drum/sheet/late/index.html"]
    shown = 'alt="The &lt;b&gt;cup&lt;/b&gt; on the shaft." width="31" height="17"'
    assert f'<img src="../../hoist/cup%20%26%20%22shaft%22.png" {shown} loading="lazy">' in page
    assert f'<img src="../../../../hoist/cup%20%26%20%22shaft%22.png" {shown}>' in sheet
    assert "grayscale(1)" in site.files["assets/witnessmark/sheet.css"].decode()


NEEDS = PROCEDURE.replace("  tools: [{wrench: W1}]\n", """\
  tools:
    - {wrench: W1}
    - {made: cup}
    - {tool: Brass drift, picture: {file: drift.png, shows: The drift.}}
""").replace("  supplies: none\n", "  supplies:\n    - {item: Blue, picture: {file: blue.png, shows: The blue.}}\n").replace(
    "number: 6B-7789}", "number: 6B-7789, picture: {file: plate.png, shows: The plate.}}")
MADE = "cup: {title: Anvil cup, picture: {file: cup.png, shows: Cup 0.5 in deep.}}\n"
OF_NEEDS = {"site_data/cup.png": png(20, 10), **{f"procedures/hoist/{name}.png": png(30, 12) for name in ("drift", "blue", "plate")}}


def with_needs(folder: Path, made: str = MADE, **files: bytes) -> Path:
    texts = {source.path: source.text for source in sources(NEEDS, made_tools=made)}
    for name, content in {**texts, **OF_NEEDS, **files}.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_bytes(content if isinstance(content, bytes) else content.encode())
    return folder


def test_parts_and_tools_show_their_pictures_with_their_room_on_page_and_sheet(tmp_path):
    checked = check(with_needs(tmp_path))
    assert [finding.line() for finding in checked.findings] == []
    site = render(checked, "Hoist", "hoist", None)
    page = next(page.html for page in site.pages if page.url == "hoist/drum/")
    sheet = site.files["hoist/drum/sheet/late/index.html"]
    for name, words, size in (("assets/site_data/cup", "Cup 0.5 in deep.", (20, 10)), ("hoist/drift", "The drift.", (30, 12)),
                              ("hoist/blue", "The blue.", (30, 12)), ("hoist/plate", "The plate.", (30, 12))):
        shown = f'{name}.png" alt="{words}" width="{size[0]}" height="{size[1]}"'
        assert f'<img src="../../{shown} loading="lazy">' in page
        assert f'<img src="../../../../{shown}>' in sheet
        assert page.count(f"<figcaption aria-hidden=\"true\">{words}</figcaption>") == 1


def test_the_site_holds_the_pictures_of_parts_and_made_tools(tmp_path):
    folder = with_needs(tmp_path)
    assert build(folder, NEEDS, "--strict", made_tools=MADE).returncode == 0
    at = folder / "site/hoist/drum/sheet/late/index.html"
    found = re.findall(r'<img src="([^"]*)"', at.read_text())
    assert len(found) == 4 and all((at.parent / src).is_file() for src in found)


def test_a_heavy_picture_of_a_made_tool_is_a_finding_where_it_is_named(tmp_path):
    found = check(with_needs(tmp_path, **{"site_data/cup.png": png(9, 9, bytes(500_001))})).findings
    assert [finding.line()[:60] for finding in found] == ["site_data/made_tools.yaml:1:34: warning: the picture 'cup.png' w"[:60]]


def code(folder: Path) -> str:
    return codes(check(folder))["hoist", "drum", "late"]


@pytest.mark.parametrize("name", OF_NEEDS)
def test_a_swapped_picture_changes_the_sheet_code_though_its_name_stays(tmp_path, name):
    before = code(with_needs(tmp_path))
    assert code(with_needs(tmp_path)) == before
    assert code(with_needs(tmp_path, **{name: png(20, 11)})) != before


def test_a_swapped_picture_of_a_step_changes_the_sheet_code_and_a_new_name_does_not(tmp_path):
    before = code(book(tmp_path / "a", "{file: cup.png, shows: The cup.}", {"cup.png": png(9, 9)}))
    assert code(book(tmp_path / "b", "{file: new.png, shows: The cup on its shaft.}", {"new.png": png(9, 9)})) == before
    assert code(book(tmp_path / "c", "{file: cup.png, shows: The cup.}", {"cup.png": png(9, 8)})) != before
    assert code(book(tmp_path / "d", "{file: cup.png, shows: The cup at 3 in.}", {"cup.png": png(9, 9)})) != before


def test_the_site_holds_the_picture_where_page_and_sheet_look_for_it(tmp_path):
    folder = book(tmp_path, "{file: cup.png, shows: The cup.}", {"cup.png": png(31, 17)})
    assert build(folder, (folder / "procedures/hoist/drum.yaml").read_text(), "--strict").returncode == 0
    for page in ("hoist/drum/index.html", "hoist/drum/sheet/late/index.html"):
        at = folder / "site" / page
        src = re.search(r'<img src="([^"]*cup.png)"', at.read_text())[1]
        assert (at.parent / src).read_bytes() == png(31, 17)
