"""What of a step, a caution, a loose end and a need is acted on, as plain data for a sheet's record.

Words are left out and the numbers in them kept; what one variant's reader does not meet is left out for it.
"""

import re
from dataclasses import replace

from .book import Book
from .every_picture import picture_of_need
from .picture import Picture
from .procedure import LooseEnd, Need, Needs, PressNeed, Procedure, Step
from .procedure import Record as Reading
from .sentence import Emphasis, Reference, Sentence, Words

_NUMBER = re.compile(r"\d[\d.,/:-]*\d|\d")


def numbers_in(text: str) -> list[str]:
    return _NUMBER.findall(text)


def acted_in(sentence: Sentence) -> list[str]:
    """The references and the numbers of a sentence, in order: what a hand does by it."""
    found: list[str] = []
    for part in sentence.parts:
        if isinstance(part, (Words, Emphasis)):
            found += numbers_in(part.text)
        else:
            found.append(f"{{{part}}}")
    return found


def step_record(book: Book, procedure: Procedure, variant: str, step: Step) -> dict:
    machine, ledger = book.machines[procedure.machine], book.ledgers[procedure.machine]

    def sent(names: tuple[str, ...]) -> list[str]:
        """As on the sheet: nobody is sent to a step that is not on it, as long as another one named is."""
        here = {each.id for each in procedure.steps if ledger.done_on(procedure, each, variant)} if names else ()
        return [name for name in names if "#" in name or name in here] or list(names)

    closes = [name for name in step.closes if ledger.is_left(procedure, name, variant)]
    again = [name for end in step.leaves for name in end.again if ledger.is_left(procedure, name, variant)]

    def reading(one: Reading) -> list:
        group = one.places or step.each
        return [str(one.spec) if one.spec else one.label, [group, *machine.places_on(group, variant)], numbers_in(one.label) if one.spec else [],
                *[acted_in(sentence) for sentence in if_outside(one)], *sent(one.if_outside.go_to if one.if_outside else ())]

    def loose_end(end: LooseEnd) -> list:
        return [end.id, [end.each, *machine.places_on(end.each, variant)], end.closes_in, [str(act) for act in end.never_while_open],
                acted_in(end.state), *(name for name in end.again if name in again)]

    return {
        "id": step.id, "acted on": [acted_in(sentence) for sentence in step.sentences()],
        "cautions": [caution_record(book, name) for name in step.cautions], "specs": [str(spec) for spec in step.specs],
        "each": [step.each, list(machine.places_on(step.each, variant))], "at": step.at, "acts": [str(act) for act in step.acts],
        "opens up": list(step.opens_up), "hold point": step.hold_point is not None, "second person": step.second_person,
        "go to": sent(step.go_to), "closes": closes,
        "leaves": [loose_end(end) for end in step.leaves], "records": [reading(one) for one in step.records],
        "picture": _picture(book, step.picture), "how left": [state for name in (*closes, *again) if (state := how_left(book, procedure, name))],
    }


def how_left(book: Book, procedure: Procedure, name: str) -> list:
    """A loose end with the numbers in how it was left: two wedges to take out are not three. Nothing where there are none."""
    left = book.ledgers[procedure.machine].named(procedure, name)
    acted = acted_in(left.end.state) if left else []
    return [name, *acted] if acted else []


def left_elsewhere(book: Book, procedure: Procedure, steps: list[Step], variant: str) -> list[Reference]:
    """The figures in how other procedures leave what this sheet names, each as a figure of the procedure that leaves it."""
    ledger, ends = book.ledgers[procedure.machine], book.open_ends[procedure.machine]
    if not ledger.tells_figures:
        return []
    names = [*procedure.must_be_shut, *(name for step in steps for name in (*step.closes, *(again for end in step.leaves for again in end.again)))]
    told = [left for name in names if ledger.is_left(procedure, name, variant) and (left := ledger.named(procedure, name))]
    told += [each.left for listed in (ends.at_start, ends.maybe_at_start, ends.to_prove) for each in listed(procedure, (variant,))]
    return [reference if reference.owner else replace(reference, owner=left.procedure.id)
            for left in told if left.procedure is not procedure for reference in left.end.state.references()]


def if_outside(reading: Reading) -> tuple[Sentence, ...]:
    outside = reading.if_outside
    return tuple(sentence for sentence in (outside.above, outside.below) if sentence is not None) if outside else ()


def caution_record(book: Book, name: str) -> list:
    """Its signal word, and what it says to do: how many things, and the numbers in each."""
    caution = book.cautions.get(name)
    return [name, caution.word, *[acted_in(sentence) for sentence in caution.avoid]] if caution else [name, None]


def needs_record(book: Book, needs: Needs) -> list:
    """Each need as it must lie ready. What a nameplate shows and what the notes of the gauge say stand beside the marks."""
    return ([[need.press, need.gauge, *_of_press(book, need)] for need in needs.presses]
            + [[need.sort, need.name, need.adapter, *_about(book, need)] for need in needs.tools]
            + [[need.sort, need.name, need.number, need.count, need.one_use, need.fate, *_about(book, need)]
               for need in (*needs.supplies, *needs.parts)])


def _of_press(book: Book, need: PressNeed) -> list:
    press = book.presses.get(need.press)
    gauge = press.gauges.get(need.gauge) if press else None
    if gauge is None:
        return []
    plate = [each and each.typed() for each in (press.area, press.bore, press.rod, gauge.full_scale, gauge.division)]
    return [plate, press.side, *[acted for note in gauge.notes if (acted := acted_in(note))]]


def _about(book: Book, need: Need) -> list:
    """Its picture, how it is counted, and the numbers in what is said of it; nothing where nothing is."""
    known = {"made": book.made_tools, "scale": book.scales, "wrench": book.wrenches}.get(need.sort, {}).get(need.name)
    features = known.features if known and need.sort == "made" else ()
    picture = picture_of_need(book, need)
    said = [*(numbers_in(known.title) if known else ()), *(number for feature in features for number in acted_in(feature)),
            *(acted_in(need.note) if need.note else ())]
    return [*([_picture(book, picture)] if picture else []), *([need.count, need.counted] if need.counted else []), *([said] if said else [])]


def _picture(book: Book, picture: Picture | None) -> list | None:
    """The bytes that are seen, whatever the file is called, and the numbers in the words below them."""
    known = book.pictures.get(picture.path) if picture else None
    return picture and [known.digest if known else None, *numbers_in(picture.shows)]
