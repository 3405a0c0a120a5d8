"""The shapes of single values: words, names, numbers, dates, quantities, threads, citations, references."""

import re
from dataclasses import dataclass
from datetime import date

from ..core.figure import Citation
from ..core.finding import nearest
from ..core.quantity import Quantity, read_quantity
from ..core.sentence import Reference, Sentence, read_reference, read_sentence
from ..core.thread import Thread, read_thread
from .shape import NamesOf, Shape, text_schema

RESERVED = frozenset({"sheet", "press", "source", "working", "assets", "index", "search", "caution", "plan", "s", "corrections", "bench", "correct"})
_NAME = r"[A-Za-z0-9][A-Za-z0-9-]{0,63}"
IDENTIFIER = re.compile(_NAME)
_BETWEEN = re.compile(r"[\s_./]+")
_CITATION = re.compile(r"([\w-]+)(?:\s+(.*))?", re.DOTALL)


@dataclass(frozen=True)
class Text(Shape):
    """Words as they are; `choices` closes the list of them."""

    wanted: str = "a text"
    choices: tuple[str, ...] = ()

    def of_text(self, text, node, report):
        if self.choices and text not in self.choices:
            report.error(node.place, "unknown-word", f"'{text}' is not known here", nearest(text, self.choices))
            return None
        return text

    def schema(self):
        return {"enum": list(self.choices)} if self.choices else text_schema()


@dataclass(frozen=True)
class Identifier(Shape):
    """An id. `page` is True where it becomes part of an address, so that the site's own pages must not be hit."""

    wanted: str = "a short name of letters, digits and dashes"
    page: bool = False

    def of_text(self, text, node, report):
        if not IDENTIFIER.fullmatch(text):
            better = _BETWEEN.sub("-", text).strip("-")
            report.error(node.place, "bad-id", f"'{text}' cannot be a name",
                         f"write '{better}'" if IDENTIFIER.fullmatch(better) else f"write {self.wanted}")
            return None
        if self.page and text in RESERVED:
            report.error(node.place, "reserved-id", f"'{text}' is kept for the site's own pages", "choose another name")
            return None
        return text

    def schema(self):
        kept = {"not": {"enum": sorted(RESERVED)}} if self.page else {}
        return {**text_schema(f"^\\s*{_NAME}\\s*$"), **kept}


@dataclass(frozen=True)
class Number(Shape):
    """A whole number (`whole`) or a plain decimal, kept as text."""

    whole: bool = True
    most: int = 1000
    least: int = 0

    @property
    def wanted(self) -> str:
        if not self.whole:
            return "a plain decimal such as 0.15"
        return f"a whole number from {self.least} to {self.most}" if self.least else f"a whole number up to {self.most}"

    def of_text(self, text, node, report):
        if self.whole and re.fullmatch(r"0|[1-9][0-9]{0,8}", text) and self.least <= int(text) <= self.most:
            return int(text)
        if not self.whole and re.fullmatch(r"[0-9]{0,6}(\.[0-9]{1,9})?", text) and text:
            return text
        report.error(node.place, "bad-number", f"'{text}' is not what is wanted here", f"write {self.wanted}")
        return None

    def schema(self):
        if self.whole:
            digits = "[1-9][0-9]{0,8}" if self.least else "[0-9]{1,9}"           # a text has no minimum
            return {**text_schema(rf"^\s*{digits}\s*$", "string", "integer"), "minimum": self.least, "maximum": self.most}
        return {**text_schema(r"^\s*([0-9]{1,6}(\.[0-9]{1,9})?|\.[0-9]{1,9})\s*$"), "minimum": 0}


@dataclass(frozen=True)
class YesNo(Shape):
    wanted: str = "yes or no"

    def of_text(self, text, node, report):
        if text in ("yes", "no"):
            return text == "yes"
        report.error(node.place, "unknown-word", f"'{text}' is not known here", "write yes or no")
        return None

    def schema(self):
        return {"enum": ["yes", "no"]}


@dataclass(frozen=True)
class Date(Shape):
    wanted: str = "a date such as 2024-05-11"

    def of_text(self, text, node, report):
        if re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", text):
            try:
                date.fromisoformat(text)
                return text
            except ValueError:                            # the 31st of February
                pass
        report.error(node.place, "bad-date", f"'{text}' is not a date", f"write {self.wanted}")
        return None

    def schema(self):
        return text_schema(r"^\s*[0-9]{4}-[0-9]{2}-[0-9]{2}\s*$", "string")


@dataclass(frozen=True)
class Says(Shape):
    """A sentence."""

    wanted: str = "a sentence"
    prose = True

    def of_text(self, text, node, report) -> Sentence:
        sentence, bad = read_sentence(text, node.place)
        if bad and ("{{" in text or "}}" in text):
            report.error(node.place, "bad-reference", "braces stand here one in the other", "write each once, as in {spec} or {spec.role}")
            return sentence
        for brace in bad:
            if brace in "{}":
                report.error(node.place, "bad-reference", f"a '{brace}' stands here without its other half", "write both, as in {spec} or {spec.role}, or none")
                continue
            report.error(node.place, "bad-reference", f"'{brace}' names no figure",
                         "write {spec} or {spec.role}, or take the braces away")
        return sentence


@dataclass(frozen=True)
class Measure(Shape):
    """A quantity of a kind."""

    kind: str

    @property
    def wanted(self) -> str:
        return f"a {self.kind} with its unit"

    def of_text(self, text, node, report) -> Quantity | None:
        quantity = read_quantity(text, self.kind)
        if isinstance(quantity, Quantity):
            return quantity
        report.error(node.place, "quantity", quantity.message, quantity.mend)
        return None

    def schema(self):
        if isinstance(read_quantity("1", self.kind), Quantity):          # a kind without units
            return text_schema("[0-9]")
        return text_schema(r"[0-9].*[^0-9\s.,]", "string")


@dataclass(frozen=True)
class Single(Measure):
    """One figure over zero, for what an instrument or a stock is: a window there would be guessed into one number."""

    nothing: bool = False               # True where the figure may be zero

    def of_text(self, text, node, report) -> Quantity | None:
        quantity = super().of_text(text, node, report)
        if quantity is None or (quantity.form == "exact" and (quantity.low > 0 or (self.nothing and quantity.low == 0))):
            return quantity
        wrong = "is not over zero" if quantity.form == "exact" else "is not one figure"
        report.error(node.place, "quantity", f"“{quantity.text}” {wrong}", f"write one {self.kind} with its unit")
        return None


@dataclass(frozen=True)
class ThreadText(Shape):
    wanted: str = "a thread such as 1/2-13 UNC or M12 x 1.25"

    def of_text(self, text, node, report) -> Thread | None:
        thread = read_thread(text)
        if isinstance(thread, Thread):
            return thread
        report.error(node.place, "thread", thread.message, thread.mend)
        return None


@dataclass(frozen=True)
class Cites(Shape):
    """A citation: the id of a source, then where in it."""

    wanted: str = "a source and where in it, such as shop-practice p. 35"

    def of_text(self, text, node, report) -> Citation | None:
        match = _CITATION.fullmatch(text)
        if match:
            return Citation(match[1], (match[2] or "").strip(), node.place)
        report.error(node.place, "bad-id", f"'{text}' begins with no source", f"write {self.wanted}")
        return None


@dataclass(frozen=True)
class Refers(Shape):
    wanted: str = "a reference such as crank-press.target or type-24/slip-torque"

    def of_text(self, text, node, report) -> Reference | None:
        reference = read_reference(text.strip("{}"), node.place)
        if reference is None:
            report.error(node.place, "bad-reference", f"'{text}' is no reference", f"write {self.wanted}")
        return reference


def map_of(value: Shape, name: Shape = Identifier()) -> NamesOf:
    """Ids (or what `name` says) to values of one shape."""
    return NamesOf(name, value)
