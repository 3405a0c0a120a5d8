"""A printed page read back: its text, its type, its picture."""

import re
from functools import cached_property

import pypdfium2 as pdfium
import pypdfium2.raw as raw
from PIL import Image

MILLIMETRE = 72 / 25.4


def squeezed(text: str) -> str:
    """Text without white space, bullets and hyphens, as two readers of one page agree on it."""
    return re.sub(r"[\s•\ufffe\x02-]+", "", text)


class Printed:
    """One sheet in one paper size; `told` is what the page says of itself."""

    def __init__(self, name: str, size: str, told: dict, data: bytes):
        self.name, self.size, self.told, self.data = name, size, told, data

    def __repr__(self) -> str:
        return f"{self.name} on {self.size}"

    @cached_property
    def document(self) -> pdfium.PdfDocument:
        return pdfium.PdfDocument(self.data)

    @cached_property
    def pages(self) -> list[str]:
        return [squeezed(page.get_textpage().get_text_range()) for page in self.document]

    @property
    def bodies(self) -> list[str]:
        """Each page without the number at its foot."""
        return [page.removesuffix(f"{number}/{len(self.pages)}") for number, page in enumerate(self.pages, 1)]

    def texts(self) -> list[list[tuple[float, float, float]]]:
        """For each page every piece of text: where it starts, where it ends, how large it is, in points."""
        return [[(left, right, _points(piece)) for piece in page.get_objects(filter=[raw.FPDF_PAGEOBJ_TEXT], max_depth=4)
                 for left, _, right, _ in [piece.get_bounds()] if right > left] for page in self.document]

    def fonts(self) -> set[str]:
        return {font.partition("+")[2] or font for page in self.document
                for font in {piece.get_font().get_base_name() for piece in page.get_objects(filter=[raw.FPDF_PAGEOBJ_TEXT], max_depth=4)}}

    def filled(self, number: int) -> float:
        """How far down a page there is something, but for the number at its foot; of its height."""
        dark = self.picture(number, 36).convert("L").point(lambda shade: 255 * (shade < 200))
        width, height = dark.size
        return dark.crop((0, 0, width, round(height * .955))).getbbox()[3] / height

    def words(self, number: int) -> list[tuple[str, float, float, float]]:
        """Signs that stand close together on a page, whoever drew them in whatever order: text, left and right end, foot, in points
        from the lower left."""
        text, lines = self.document[number].get_textpage(), {}
        for at in range(text.count_chars()):
            sign = text.get_text_range(at, 1)
            if not sign.isspace() and sign:
                left, foot, right, _ = text.get_charbox(at, loose=True)
                lines.setdefault(round(foot), []).append((left, right, sign))
        found = []
        for foot, signs in lines.items():
            ends = None
            for left, right, sign in sorted(signs):
                if ends is not None and left - ends < 1.2:
                    found[-1] = (found[-1][0] + sign, found[-1][1], right, foot)
                else:
                    found.append((sign, left, right, foot))
                ends = right
        return found

    def dials(self, width: float) -> list[tuple[frozenset[str], float]]:
        """The numbers in the face of each gauge and how dark the drawing is, page by page and downwards. A face is found by its unit, which
        stands alone on its line; `width` is that of a drawing in points, its proportions those of view_dial."""
        found, part = [], width / 200
        for number in range(len(self.document)):
            words, (_, high) = self.words(number), self.document[number].get_size()
            picture = self.picture(number, 72).convert("L")
            for unit, left, right, foot in sorted((word for word in words if word[0] in ("psi", "bar")), key=lambda word: -word[3]):
                if any(other != (unit, left, right, foot) and abs(other[3] - foot) < 6 and abs(other[1] - left) < 40 for other in words):
                    continue
                x, y = (left + right) / 2, foot + 64 * part          # the middle of the face, from the foot of the unit below it
                inside = frozenset(text for text, start, end, low in words if ((start + end) / 2 - x) ** 2 + (low - y) ** 2 < (98 * part) ** 2)
                face = picture.crop((round(x - 90 * part), round(high - y - 90 * part), round(x + 90 * part), round(high - y + 70 * part)))
                if "0" in inside:                                     # a word of running text that stands alone has no scale round it
                    found.append((inside, 1 - face.resize((1, 1), Image.Resampling.BOX).getpixel((0, 0)) / 255))
        return found

    def picture(self, number: int, dots_per_inch: int):
        return self.document[number].render(scale=dots_per_inch / 72).to_pil()


def _points(piece) -> float:
    size = raw.c_float()
    raw.FPDFTextObj_GetFontSize(piece, size)
    return size.value * abs(piece.get_matrix().d)
