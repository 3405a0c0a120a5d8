"""The smallest whole book, as texts: one machine of two variants, one press, one wrench, one procedure. Invented for tests."""

from witnessmark.loading.source_files import SourceFile

SITE_DATA = {
    "site_data/machines/hoist.yaml": """\
title: Yard hoist
viewpoint: Left and right are named facing the drum.
carriers:
  hoist:
    title: hoist
    told by: serial
    variants:
      early: {serials: up to 499}
      late: {serials: from 500}
places:
  side: [left, right]
figures:
  load: {label: Rated load, kind: force, role: found, is: 2000 lbf, source: chart p. 1}
hand-over: drum
""",
    "site_data/sources.yaml": """\
chart: {title: Printed chart, kind: factory}
shop: {title: Shop notes, kind: shop}
""",
    "site_data/presses.yaml": """\
P20:
  title: Bench press
  area: 5.00 in²
  rated pressure: 10000 psi
  gauges:
    main: {full scale: 10000 psi, division: 100 psi, accuracy: 1.0 %}
""",
    "site_data/wrenches.yaml": """\
W1: {title: Half-inch wrench, lowest: 20 lbf·ft, highest: 150 lbf·ft, graduation: 5 lbf·ft, accuracy: 4 %}
""",
    "site_data/surfaces.yaml": """\
oiled:
  title: Light oil
  nut factor: {low: 0.13, likely: 0.15, high: 0.17, source: shop}
""",
    "site_data/cautions.yaml": """\
HZ-1:
  word: WARNING
  hazard: Hub under load.
  consequence: It can burst.
  avoid: Stand clear.
""",
    "site_data/conflicts.yaml": """\
CF-9:
  about: drum/press
  printed: The shop figure.
  why: The chart split hubs.
  sides:
    - says: 30 short tons.
      source: chart p. 3
""",
}

PROCEDURE = """\
title: Press the drum
machine: hoist
after: none
people: 2
tried: desk
needs:
  presses: [{press: P20, gauge: main}]
  tools: [{wrench: W1}]
  supplies: none
  parts:
    - {item: lock plate, count: 1, one use: yes, number: 6B-7789}
specs:
  press:
    label: Drum press force
    kind: press force
    condition: dry
    figures:
      - {role: floor, is: 6 short ton, source: shop p. 1}
      - {role: target, is: {early: 8 short ton, late: 10 short ton}, source: shop p. 1}
      - {role: ceiling, is: 14 short ton, source: shop p. 2}
      - {role: target, is: 30 short ton, source: chart p. 3, kept for the record: CF-9}
  bolt:
    label: Cap bolt
    kind: torque
    thread: 1/2-13 UNC
    grade: 5
    surface: oiled
    wrench: W1
    is: 55 lbf·ft
    source: shop p. 3
steps:
  - id: press
    do: Press to {press.target} and read {press}.
    cautions: [HZ-1]
  - id: bolt
    do: Tighten the bolts to {bolt}.
    leaves:
      - id: plate
        state: Plate flat.
        because: The drum may come off again.
        if forgotten: The bolt backs out.
        never while open: [run]
  - id: lock
    do: Bend the plate over.
    closes: [plate]
"""


def sources(procedure: str = PROCEDURE, **changed: str) -> list[SourceFile]:
    """The book's files with `procedure` as procedures/hoist/drum.yaml; `changed` replaces site_data files by bare name."""
    texts = {**SITE_DATA, "procedures/hoist/drum.yaml": procedure}
    for name, text in changed.items():
        texts[f"site_data/{name}.yaml"] = text
    return [SourceFile(path, text) for path, text in sorted(texts.items())]
