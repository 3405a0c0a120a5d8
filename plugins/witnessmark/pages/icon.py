"""The book's icon: a line scribed across two parts, so that they go back as they came apart. Drawn here, as SVG and as PNG."""

import struct
import zlib

_PAPER, _UPPER, _LOWER, _SEAM, _MARK = "#1c2228", "#c9d1d6", "#8d99a3", "#1c2228", "#e06c00"
#: All in hundredths of the side: the two parts, the seam between them, and the scribed line, which leans a little.
_LEFT, _RIGHT, _TOP, _SEAM_TOP, _SEAM_BOTTOM, _BOTTOM = 18, 82, 20, 49, 51, 80
_MARK_TOP, _MARK_BOTTOM, _MARK_WIDTH = 30, 70, 6
_MARK_X, _LEAN = 55, 10                                       # its left edge above, and how far it stands to the left below

SIZES = (192, 512)


def icon_svg() -> str:
    run = _MARK_BOTTOM - _MARK_TOP
    return (f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100"><path fill="{_PAPER}" d="M0 0h100v100H0z"/>'
            f'<path fill="{_UPPER}" d="M{_LEFT} {_TOP}H{_RIGHT}V{_SEAM_TOP}H{_LEFT}z"/><path fill="{_LOWER}" d="M{_LEFT} {_SEAM_BOTTOM}H{_RIGHT}V{_BOTTOM}H{_LEFT}z"/>'
            f'<path fill="{_MARK}" d="M{_MARK_X} {_MARK_TOP}h{_MARK_WIDTH}l-{_LEAN} {run}h-{_MARK_WIDTH}z"/></svg>')


def icon_png(side: int) -> bytes:
    """A square of `side` pixels, 8 bits a colour, no transparency: the same picture for launchers that take no SVG."""
    rows = b"".join(b"\0" + _row(side, y) for y in range(side))
    head = struct.pack(">IIBBBBB", side, side, 8, 2, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + _chunk(b"IHDR", head) + _chunk(b"IDAT", zlib.compress(rows, 9)) + _chunk(b"IEND", b"")


def _row(side: int, y: int) -> bytes:
    """One line of pixels as runs of one colour."""
    at = (y + 0.5) * 100 / side
    part = _UPPER if _TOP <= at < _SEAM_TOP else _LOWER if _SEAM_BOTTOM <= at < _BOTTOM else _PAPER
    runs = [(0, _PAPER), (_LEFT, part), (_RIGHT, _PAPER), (100, _PAPER)]
    if _MARK_TOP <= at < _MARK_BOTTOM:
        x = _MARK_X - _LEAN * (at - _MARK_TOP) / (_MARK_BOTTOM - _MARK_TOP)
        runs[2:2] = [(x, _MARK), (x + _MARK_WIDTH, part)]
    edges = [round(x * side / 100) for x, _ in runs]
    return b"".join(_colour(colour) * (after - before) for (_, colour), before, after in zip(runs, edges, edges[1:]))


def _colour(text: str) -> bytes:
    return bytes.fromhex(text[1:])


def _chunk(name: bytes, data: bytes) -> bytes:
    return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))
