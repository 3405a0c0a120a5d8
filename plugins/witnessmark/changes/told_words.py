"""Every sentence of a procedure by what it belongs to, and which changes of words are more than words."""

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from ..core.acted import Key
from ..core.figure import Spec
from ..core.procedure import Procedure, Step
from ..core.record_parts import acted_in
from ..core.place import Place
from ..core.sentence import Sentence, read_sentence
from .renamed import Names
from .words import LOOK, WORDING

_NOWHERE = Place("")


class Said(NamedTuple):
    """`acted_on` where it stands in a step: there a sentence that comes or goes is more than words."""

    sentence: Sentence
    acted_on: bool = False


def said(procedure: Procedure, names: Names | None = None) -> dict[Key, Said]:
    """The procedure's sentences; with `names` those of an old one, in today's names."""
    found: dict[Key, Said] = {}
    for key, sentence, acted_on in _all(procedure):
        if names:
            text = names.sentence(procedure.id, sentence.text)
            sentence = read_sentence(text, _NOWHERE)[0] if text != sentence.text else sentence
            key = key._replace(name=names.step(procedure.id, key.name) if key.sort == "step" else names.figure(procedure.id, key.name),
                               part=_renamed_end(names, procedure, key.part))
        found[key] = Said(sentence, acted_on)
    return found


def severity(old: Said | None, new: Said | None) -> str:
    """More than words where a number or a figure in it is another, or a sentence of a step comes or goes."""
    if old and new:
        return LOOK if acted_in(old.sentence) != acted_in(new.sentence) else WORDING
    there = old or new
    return LOOK if there.acted_on or acted_in(there.sentence) else WORDING


def _renamed_end(names: Names, procedure: Procedure, part: str) -> str:
    mark, end, what = part.partition("left loose ")
    name, colon, rest = what.partition(": ")
    return f"{mark}{end}{names.end(procedure.id, name)}{colon}{rest}" if end else part


def _all(procedure: Procedure) -> Iterator[tuple[Key, Sentence, bool]]:
    yield Key("words", "", "title"), _plain(procedure.title), False
    for part, sentence in (("summary", procedure.summary), ("skill", procedure.skill), ("time", procedure.time and _plain(procedure.time.text)),
                           ("tried", _plain(f"{procedure.tried.serial} on {procedure.tried.on}" if procedure.tried.serial else "desk"))):
        if sentence:
            yield Key("words", "", part), sentence, False
    for at, sentence in enumerate(procedure.conditions, 1):
        yield Key("words", "", f"condition {at}"), sentence, True
    yield from of_specs(procedure.specs.values())
    for step in procedure.steps:
        yield from _step(step)
    for note in procedure.notes:
        yield Key("words", "", f"note {note.id}"), note.says, False


def of_specs(specs: Iterable[Spec]) -> Iterator[tuple[Key, Sentence, bool]]:
    """The words of figures, whether a procedure's or a machine's."""
    for spec in specs:
        yield Key("words", spec.id, "label"), _plain(spec.label), False
        for part, sentence in (("note", spec.note), ("limited by", spec.limited_by)):
            if sentence:
                yield Key("words", spec.id, part), sentence, False
        for at, figure in enumerate(spec.figures, 1):
            for part, sentence in (("because", figure.because), ("in doubt", figure.in_doubt), ("to be found by", figure.to_be_found_by)):
                if sentence:
                    yield Key("words", spec.id, f"{figure.role} {at}: {part}"), sentence, False


def _step(step: Step) -> Iterator[tuple[Key, Sentence, bool]]:
    for part, sentence in (("do", step.do), ("check", step.check), ("if outside", step.if_outside), ("hold point", step.hold_point), ("note", step.note)):
        if sentence:
            yield Key("step", step.id, part), sentence, part != "note"
    for record in step.records:
        if record.if_outside:
            for part, sentence in (("above", record.if_outside.above), ("below", record.if_outside.below)):
                if sentence:
                    yield Key("step", step.id, f"{record.label}: if {part}"), sentence, True
    for end in step.leaves:
        for part, sentence in (("state", end.state), ("because", end.because), ("if forgotten", end.if_forgotten), ("tag", end.tag and _plain(end.tag))):
            if sentence:
                yield Key("step", step.id, f"left loose {end.id}: {part}"), sentence, False


def _plain(text: str) -> Sentence:
    return read_sentence(text, _NOWHERE)[0]
