"""A figure on a page for corrections: its line in the source, and the ways to the forge. The same for procedures, machines and the shop."""

from collections.abc import Iterable
from typing import NamedTuple

from ..core.book import Book
from ..core.correction_text import ASKED, GIVEN, HEAD, SEVERAL, written
from ..core.place import Place
from ..core.procedure import Procedure
from ..core.shop_facts import SHELVES, thing_of
from . import words_correct
from .address import SHOP_CORRECT_URL, correct_url, machine_correct_url, procedure_url, result_anchor, shop_anchor, spec_anchor
from .forge_links import Forge
from .view_step import Target


#: What rests on one figure is counted beyond this, so that a page stays as light in a large book.
MOST_MOVED = 24


class LineView(NamedTuple):
    """One value in one case, as its line in the source gives it. `role` is its id, `word` what a reader calls it. Links are '' where
    there is no such thing."""

    anchor: str
    role: str
    word: str
    case: str
    printed: str
    at: str
    edit: str
    see: str


class ToCorrect(NamedTuple):
    """`home` and `name` are how the text of a correction names it; `own` and `moves` what rests on it, `rests` what it rests on.
    `issue` leads to the forge's form for all of its lines: the script fills in a form for each. `brief` where the lines are no figures
    of their own: what a result is `worked` out from, or what a thing of the shop is."""

    anchor: str
    home: str
    name: str
    label: str
    lines: tuple[LineView, ...]
    issue: str
    own: tuple[str, ...] = ()
    moves: tuple[Target, ...] = ()
    rests: tuple[Target, ...] = ()
    brief: bool = False
    worked: bool = False


class CorrectView(NamedTuple):
    title: str
    back: str
    specs: tuple[ToCorrect, ...]
    other: ToCorrect | None
    codes: tuple[tuple[str, str], ...]
    data: dict


class Asking:
    """Makes the lines of one page; `given` is what every text of the page says."""

    def __init__(self, forge: Forge | None, given: dict[str, str]):
        self.forge, self.given = forge, given
        self._form = forge and forge.issues()

    def line(self, anchor: str, place: Place, role: str = "", word: str = "", case: str = "", printed: str = "") -> LineView:
        edit, see = (self.forge.edit(place.path, place.line), self.forge.shown(place.path, place.line)) if self.forge else ("", "")
        return LineView(anchor, role, word, case, printed, f"{place.path}:{place.line}", edit, see)

    def issue(self, home: str, name: str, label: str, place: Place, lines: Iterable[LineView] = ()) -> str:
        """The forge's form, filled with what the page prints of one thing; '' without a forge."""
        if not self._form:
            return ""
        printed = SEVERAL.join(dict.fromkeys(line.printed for line in lines if line.printed))
        return self._form.filled(words_correct.SCRIPT["subject"].format(label), written({
            **self.given, "Procedure": home, "Spec": name, "Line": f"{place.path}:{place.line}", "Printed figure": printed}))

    def data(self, root: str, page: str, mail: str) -> dict:
        """What the script of the page is given; the figures themselves it reads off the page."""
        return {"book": self.given["Book"], "root": root, "page": page, "mail": mail, "issue": self._form and self._form._asdict(),
                "given": self.given, "names": {"head": HEAD, "given": GIVEN, "asked": ASKED}}


def moved(book: Book, home: Procedure | None, names: Iterable[str], root: str) -> tuple[Target, ...]:
    """What rests on a thing, by its label, with its procedure where that is another than `home`."""
    found = []
    for name in names:
        machine, *rest = name.split("/")
        procedure = book.procedures.get((machine, rest[0])) if len(rest) == 2 else None
        if procedure is None:
            continue
        spec = procedure.specs.get(rest[1])
        anchor = spec_anchor(rest[1]) if spec else result_anchor(rest[1])
        found.append(Target(_told(procedure, rest[1], home), f"{root}{procedure_url(machine, procedure.id)}#{anchor}"))
    return tuple(found)


def not_too_many(targets: tuple[Target, ...]) -> tuple[tuple[str, ...], tuple[Target, ...]]:
    """How many there are, where they are more than a page takes, and the first of them: a shop's press is used by every procedure."""
    return ((words_correct.IN_ALL.format(len(targets)),) if len(targets) > MOST_MOVED else (), targets[:MOST_MOVED])


def rests_on(book: Book, home: Procedure | None, names: Iterable[str], root: str) -> tuple[Target, ...]:
    """Where each thing that something rests on is itself corrected; `names` are addresses of core/dependency.py."""
    found = []
    for name in names:
        sort, *rest = name.split("/")
        if sort in book.machines:
            procedure = book.procedures.get((sort, rest[0])) if len(rest) == 2 else None
            if procedure is None:
                found.append(Target(book.machines[sort].figures[rest[0]].label, f"{root}{machine_correct_url(sort)}#{rest[0]}"))
                continue
            anchor = rest[1] if rest[1] in procedure.specs else result_anchor(rest[1])
            found.append(Target(_told(procedure, rest[1], home), f"#{anchor}" if procedure is home else f"{root}{correct_url(procedure)}#{anchor}"))
            continue
        shelf = next((shelf for shelf, called in SHELVES.items() if called.split()[-1] == sort), "")
        things = [rest[0], "/".join(rest)] if len(rest) == 2 else rest
        found += [Target(thing.title, f"{root}{SHOP_CORRECT_URL}#{shop_anchor(SHELVES[shelf], each)}") for each in things
                  if (thing := thing_of(book, shelf, each))]
    return tuple(dict.fromkeys(found))


def _told(procedure: Procedure, name: str, home: Procedure | None) -> str:
    thing = procedure.specs.get(name) or procedure.computed.get(name)
    label = thing.label if thing else name
    return label if procedure is home else f"{label} ({procedure.title})"
