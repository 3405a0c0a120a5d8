"""A small machine with an order, loose ends, a swappable drum and counted wedges, as texts. Invented for tests."""

from small_book import SITE_DATA
from witnessmark.loading.load_book import load_book
from witnessmark.loading.source_files import SourceFile
from witnessmark.rules.table import check_book
from witnessmark.workings.derive import derive_book

_HEAD = """\
title: {title}
machine: hoist
after: {after}
people: 1
tried: desk
needs: {{presses: none, tools: %s, supplies: none, parts: none}}
"""
HEAD = _HEAD % "none"
STRIP = (_HEAD % "[{{tool: Wedges, count: 4, counted: out}}]").format(title="Strip the hoist", after="none") + """\
steps:
  - id: guard
    do: Take off the guard.
    opens up: [guard]
    leaves:
      - id: guard-off
        state: Guard off.
        because: The drum must come out.
        if forgotten: A hand is drawn in.
        never while open: [run]
  - id: pawl
    do: Wedge each pawl.
    each: side
    leaves:
      - id: pawl-wedged
        state: Pawl wedged.
        because: The drum must not creep.
        if forgotten: The pawl jams.
        never while open: [run, {lift: load}]
        each: side
  - id: measure
    do: Measure the drum across its flange.
    measures: drum
"""
BUILD = (_HEAD % "[{{tool: Wedges, count: 4, counted: in}}]").format(title="Build the drum", after="[strip]") + """\
steps:
  - id: free-pawl
    do: Take the wedge from each pawl.
    each: side
    closes: [strip/pawl-wedged]
  - id: press
    do: "Set the drum {gap} from the frame."
specs:
  gap: {label: Gap of the drum, kind: length, role: window, by: drum, is: {early: 0.10 to 0.12 in, late: 0.20 to 0.22 in}, source: shop p. 4}
"""
PAINT = HEAD.format(title="Paint the frame", after="[strip]") + """\
steps:
  - id: brush
    do: Paint the frame.
"""
TRY = HEAD.format(title="Try the hoist", after="[build, paint]") + """\
must be shut: [strip/pawl-wedged]
steps:
  - id: guard-on
    do: Fit the guard.
    closes: [strip/guard-off]
  - id: turn
    do: Run the hoist.
    acts: [run]
"""
PROCEDURES = {"strip": STRIP, "build": BUILD, "paint": PAINT, "try": TRY}
MACHINE = SITE_DATA["site_data/machines/hoist.yaml"].replace("places:\n", """\
  drum:
    title: Drum
    told by: the flange across
    variants:
      early: {measure: 8 in}
      late: {measure: 10 in}
places:
""").replace("hand-over: drum", "hand-over: try")


def sources(**changed: str) -> list[SourceFile]:
    """The files, with procedures by name or `machine` replaced; a procedure that is None is left out."""
    texts = {**SITE_DATA, "site_data/machines/hoist.yaml": changed.pop("machine", MACHINE)}
    texts |= {f"procedures/hoist/{name}.yaml": text for name, text in {**PROCEDURES, **changed}.items() if text}
    return [SourceFile(path, text) for path, text in sorted(texts.items()) if path != "site_data/conflicts.yaml"]


def read(**changed: str):
    """(book, derived, every finding)."""
    book, found = load_book(sources(**changed))
    derived, more = derive_book(book)
    return book, derived, sorted({*found, *more, *check_book(book, derived)})
