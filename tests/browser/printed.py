"""A printed page read back: its text, its type, its picture."""

import re
from functools import cached_property

import pypdfium2 as pdfium
import pypdfium2.raw as raw

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

    def picture(self, number: int, dots_per_inch: int):
        return self.document[number].render(scale=dots_per_inch / 72).to_pil()


def _points(piece) -> float:
    size = raw.c_float()
    raw.FPDFTextObj_GetFontSize(piece, size)
    return size.value * abs(piece.get_matrix().d)
