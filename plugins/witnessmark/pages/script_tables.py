"""What the scripts that work at the bench must not type a second time: units, inputs of workings, standard gauges, and the words of My bench, as small modules."""

import json
from collections.abc import Iterable, Mapping

from ..core.kinds import KINDS
from ..core.units import AMBIGUOUS, SPELLINGS, Unit, counterpart, units_of
from ..core.working import Input, Working
from . import my_bench_words

#: Workings that the scripts do too. Threads they do not read: of a draw stud they are given the section.
_COPIED = ("press-card", "taper-advance", "shim-stack", "backlash", "gear-shift", "disc-pack", "bearing-shim", "gasket-end-play")
#: What a wrench is set by: those inputs of the working that judges a torque.
SETTING = ("torque", "wrench lowest", "wrench highest", "wrench graduation", "wrench accuracy", "wrench length", "adapter length", "adapter angle", "passes")
_MUST_SET = ("torque", "wrench graduation")

Gauges = Iterable[tuple[int, str, float]]


def script_tables(workings: Mapping[str, Working], gauges: Gauges) -> dict[str, str]:
    """Path in the site -> module. Sizes of units go as exact fractions."""
    return {"assets/witnessmark/bench/units_table.js": _units(), "assets/witnessmark/bench/workings_table.js": _workings(workings, gauges),
            "assets/witnessmark/bench/my_bench_words.js": _module("The words that the scripts of My bench say.", say=my_bench_words.SCRIPT)}


def _units() -> str:
    kinds = [kind for kind in KINDS if units_of(kind)]
    units = list(dict.fromkeys(unit for kind in kinds for unit in SPELLINGS[kind].values()))
    rows = [[unit.symbol, str(unit.factor), str(unit.offset), unit.system, _there(unit)] for unit in units]
    index = {kind: {key: units.index(unit) for key, unit in SPELLINGS[kind].items()} for kind in kinds}
    flags = {name: {flag: True for flag in ("signed", "ratio", "counted") if getattr(kind, flag)} for name, kind in KINDS.items()}
    return _module("Sizes, spellings and counterparts of units, from core/units.py; a row is symbol, factor, offset, system, counterparts by kind.",
                   UNITS=rows, INDEX=index, KINDS=flags, AMBIGUOUS=AMBIGUOUS)


def _there(unit: Unit) -> dict[str, list[str]]:
    """Spellings of the counterparts under each kind of the unit."""
    found = {}
    for kind in sorted(unit.kinds):
        keys = {other: key for key, other in reversed(list(SPELLINGS[kind].items()))}
        if others := [keys[other] for other in counterpart(unit, kind)]:
            found[kind] = others
    return found


def _workings(workings: Mapping[str, Working], gauges: Gauges) -> str:
    table = {name: {"inputs": [_input(workings[name], declared) for declared in workings[name].inputs]} for name in _COPIED if name in workings}
    if "tightening-torque" in workings:
        torque = workings["tightening-torque"]
        table["wrench-setting"] = {"inputs": [{**_input(torque, torque.input(name)), "required": name in _MUST_SET} for name in SETTING]}
    return _module("The inputs of the workings that the scripts do too, and standard gauges: bar, class, division.", WORKINGS=table, GAUGES=list(gauges))


def _input(working: Working, declared: Input) -> dict:
    example = working.example.inputs.get(declared.name) or (declared.usual[0] if declared.usual else "")
    return {"name": declared.name, "kind": declared.kind, "doc": declared.doc, "usual": declared.usual, "outside": declared.outside, "required": declared.required,
            "choices": declared.choices, "many": declared.many, "sign": declared.sign, "example": example}


def _module(says: str, **tables) -> str:
    lines = [f"export const {name} = {json.dumps(table, ensure_ascii=False, separators=(',', ':'))};" for name, table in tables.items()]
    return "\n".join([f"/* {says} Written by the build. */", *lines, ""])
