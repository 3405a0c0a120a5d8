"""The size of a picture from its first bytes, and whether all of it is there. The name says nothing: a page of script
may be called photo.jpg, and a picture photo.html, which a browser would read as a page.

PNG (ISO/IEC 15948, 11.2.2), JPEG (ITU-T T.81, B.2.2), orientation (Exif 2.32, tag 0x0112), WebP (RFC 9649, 2.5 to 2.7).
"""

from struct import error, unpack_from

#: Enough for a camera's preamble: the size stands behind it.
HEAD = 500_000
#: The orientations in which a camera was held on its side: the picture is shown turned.
_TURNED = (5, 6, 7, 8)
_FRAMES = frozenset(range(0xC0, 0xD0)) - {0xC4, 0xC8, 0xCC}

#: By the first letters: how the name of such a file must end for a browser to take it for a picture and nothing else.
_NAMED = {b"\x89P": (".png",), b"\xff\xd8": (".jpg", ".jpeg"), b"RI": (".webp",)}


def picture_fault(data: bytes, name: str) -> tuple[str, str] | None:
    """Message and mend for what is no picture, not all of one, or one under the name of something else."""
    if not data:
        return "the file is empty", "copy it again from where it came"
    if picture_size(data[:HEAD]) is None:
        return "it is no picture that can be shown", "save it as PNG, JPEG or WebP; a drawing (SVG) too"
    ends = _NAMED[data[:2]]
    if not name.lower().endswith(ends):
        return f"it is a {ends[-1][1:].upper()} picture under another name", f"let its name end in {ends[0]}"
    if not _whole(data):
        return "the file ends before the picture does", "copy it again from where it came"
    return None


def _whole(data: bytes) -> bool:
    """Its own end is there; what lies behind it is never shown."""
    match data[:2]:
        case b"\x89P":
            return b"\0\0\0\0IEND\xae\x42\x60\x82" in data
        case b"\xff\xd8":
            return b"\xff\xd9" in data[2:]
    return len(data) >= int.from_bytes(data[4:8], "little") + 8


def picture_size(data: bytes) -> tuple[int, int] | None:
    """Width and height as a browser shows it; None for what is no whole PNG, JPEG or WebP header."""
    try:
        if data.startswith(b"\x89PNG\r\n\x1a\n") and data[12:16] == b"IHDR":
            size = unpack_from(">II", data, 16)
        elif data.startswith(b"\xff\xd8\xff"):
            size = _jpeg(data)
        elif data[:4] == b"RIFF" and data[8:12] == b"WEBP":
            size = _webp(data)
        else:
            return None
    except (error, IndexError):
        return None
    return size if size and min(size) > 0 else None


def _jpeg(data: bytes) -> tuple[int, int] | None:
    at, turned = 2, False
    while data[at] == 0xFF:
        marker = data[at + 1]
        if marker == 0xFF:                                # fill before a marker
            at += 1
            continue
        length, = unpack_from(">H", data, at + 2)
        if marker in _FRAMES:
            height, width = unpack_from(">HH", data, at + 5)
            return (height, width) if turned else (width, height)
        if marker == 0xE1 and data[at + 4:at + 10] == b"Exif\0\0":
            turned = _orientation(data[at + 10:at + 2 + length]) in _TURNED
        if marker == 0xDA or length < 2:
            return None
        at += 2 + length
    return None


def _orientation(tiff: bytes) -> int:
    """1 (upright) where the tags do not say."""
    try:
        order = {b"II": "<", b"MM": ">"}[tiff[:2]]
        first, = unpack_from(f"{order}I", tiff, 4)
        count, = unpack_from(f"{order}H", tiff, first)
        for entry in range(first + 2, first + 2 + 12 * count, 12):
            tag, = unpack_from(f"{order}H", tiff, entry)
            if tag == 0x0112:
                return unpack_from(f"{order}H", tiff, entry + 8)[0]
    except (error, KeyError):
        pass
    return 1


def _webp(data: bytes) -> tuple[int, int] | None:
    match data[12:16]:
        case b"VP8X":
            return tuple(int.from_bytes(data[at:at + 3], "little") + 1 for at in (24, 27)) if len(data) >= 30 else None
        case b"VP8L" if data[20] == 0x2F:
            bits, = unpack_from("<I", data, 21)
            return (bits & 0x3FFF) + 1, (bits >> 14 & 0x3FFF) + 1
        case b"VP8 " if data[23:26] == b"\x9d\x01\x2a":
            width, height = unpack_from("<HH", data, 26)
            return width & 0x3FFF, height & 0x3FFF
    return None
