"""The gate of segno: an address as a QR code to print."""

from functools import lru_cache

import segno

from .fill_template import Markup

_QUIET = 4          # modules left white around the code, as ISO/IEC 18004 asks
_PRINTED = 28       # millimetres across the code itself; under 25 a greasy print is not read at arm's length


@lru_cache(maxsize=4096)
def qr_code(text: str) -> Markup:
    """Inline SVG at level H (a third of it may be lost), drawn the same on every machine."""
    code = segno.make(text, error="h", boost_error=False, micro=False)
    rows = code.matrix
    size = len(rows) + 2 * _QUIET
    runs = "".join(f"M{_QUIET + start} {_QUIET + y}h{length}v1h-{length}z" for y, row in enumerate(rows) for start, length in _dark(row))
    millimetres = round(_PRINTED * size / len(rows), 1)
    return Markup('<svg class="qr" viewBox="0 0 {0} {0}" width="{1}mm" height="{1}mm" role="img" aria-label="{2}">'
                  '<path d="M0 0h{0}v{0}h-{0}z" fill="#fff"/><path d="{3}" fill="#000"/></svg>').format(size, millimetres, text, runs)


def _dark(row) -> list[tuple[int, int]]:
    """Where dark runs of a row begin, and how long they are."""
    runs: list[tuple[int, int]] = []
    for x, dark in enumerate(row):
        if dark and runs and sum(runs[-1]) == x:
            runs[-1] = (runs[-1][0], runs[-1][1] + 1)
        elif dark:
            runs.append((x, 1))
    return runs
