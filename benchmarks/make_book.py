"""Writes the same made-up procedures twice: as a Witnessmark book, and as pages written by hand for the plain theme.

    python benchmarks/make_book.py FOLDER --size 250 --seed 1

FOLDER/witnessmark holds one YAML file a procedure. FOLDER/plain holds two Markdown pages for each of them, the procedure
and its checklist, with every word a writer would have typed. Fifty procedures to a machine, so that neither site's
navigation grows with the book.
"""

import argparse
from dataclasses import dataclass, field
from pathlib import Path

from words import PARTS, Words

A_MACHINE = 50
STEPS = 21

# thread, grade, oiled torque: about two thirds of proof, so that no rule has a word to say
BOLTS = (("3/8-16 UNC", "5", 20), ("1/2-13 UNC", "5", 50), ("5/8-11 UNC", "5", 100))


@dataclass
class Made:
    """One procedure before it is written down. Torques in lbf·ft, forces in short tons, gaps and lengths in inches."""

    id: str
    title: str
    machine: str
    after: str
    summary: str
    conditions: list[str]
    parts: list[tuple[str, str]]
    supplies: list[str]
    bolt: tuple[str, str, int]
    press: tuple[str, str, str]                 # floor, target, ceiling
    gap: tuple[str, str]
    length: str
    leaf: int
    steps: list[tuple[str, str, str]] = field(default_factory=list)     # id, do, check
    loose: tuple[str, str, str] = ("", "", "")  # state, because, if forgotten


def made_book(size: int, seed: int) -> list[Made]:
    words = Words(seed)
    return [made(words, number) for number in range(size)]


def made(words: Words, number: int) -> Made:
    rng = words.rng
    target = rng.randrange(16, 40) / 2
    low = rng.randrange(8, 30)
    first = number % A_MACHINE == 0
    return Made(
        id=f"job-{number:04d}",
        title=f"{words.name().capitalize()} {words.name()} and {rng.choice(PARTS)}, job {number}",
        machine=f"machine-{number // A_MACHINE + 1:02d}",
        after="none" if first else f"job-{number - 1:04d}",
        summary=words.sentence(),
        conditions=[words.sentence(), words.sentence()],
        parts=[(f"{words.name()} {rng.choice(PARTS)}", f"{rng.randrange(1, 99)}K-{rng.randrange(1000, 9999)}") for _ in range(3)],
        supplies=[f"{words.name()} cloth", "marking blue"],
        bolt=rng.choice(BOLTS),
        press=(f"{target - 3:g} short ton", f"{target:g} short ton", f"{target + 3:g} short ton"),
        gap=(f"0.{low:03d}", f"0.{low + 12:03d}"),
        length=f"{rng.randrange(2, 9)}.{rng.randrange(0, 1000):03d}",
        leaf=rng.randrange(1, 200),
        steps=[(f"s{at:02d}", words.sentence(), words.state()) for at in range(1, STEPS + 1)],
        loose=(words.state(), words.sentence(), words.state()),
    )


def as_yaml(one: Made) -> str:
    thread, grade, torque = one.bolt
    floor, target, ceiling = one.press
    lines = [
        f"title: {one.title}",
        f"machine: {one.machine}",
        f"after: [{one.after}]" if one.after != "none" else "after: none",
        f"summary: {one.summary}",
        "people: 2",
        "time: 45 min",
        "tried: desk",
        "conditions:",
        *[f"  - {said}" for said in one.conditions],
        "cautions: [HZ-01]",
        "needs:",
        "  presses:",
        "    - {press: BP50, gauge: main}",
        "  tools:",
        "    - {wrench: TW1}",
        "  supplies:",
        *[f"    - {{item: {item}, count: 1}}" for item in one.supplies],
        "  parts:",
        *[f"    - {{item: {item}, number: {code}, count: 1, fate: reuse}}" for item, code in one.parts],
        "specs:",
        "  press-on:",
        "    label: Press force",
        "    kind: press force",
        "    condition: clean and dry",
        "    figures:",
    ]
    for role, value in (("floor", floor), ("target", target), ("ceiling", ceiling)):
        lines += [f"      - role: {role}", f"        is: {value}", f"        source: shop-notes leaf {one.leaf}"]
    lines += [
        "  cap-bolts:",
        "    label: Cap bolts",
        "    kind: torque",
        f"    thread: {thread}",
        f"    grade: {grade}",
        "    surface: oiled",
        "    wrench: TW1",
        f"    is: {torque} lbf·ft",
        f"    source: shop-notes leaf {one.leaf + 1}",
        "  end-gap:",
        "    label: End gap",
        "    kind: clearance",
        "    condition: cold",
        "    role: window",
        f"    is: {one.gap[0]} to {one.gap[1]} in",
        f"    source: shop-notes leaf {one.leaf + 2}",
        "  stand-out:",
        "    label: Stand-out",
        "    kind: length",
        f"    is: {one.length} in",
        f"    source: shop-notes leaf {one.leaf + 3}",
        "steps:",
    ]
    for at, (name, do, check) in enumerate(one.steps):
        lines += [f"  - id: {name}", "    do: >", f"      {do}{MENTIONS.get(at, '')}", f"    check: {check}"]
        if at == 2:
            lines += ["    cautions: [HZ-02]", "    hold point: Square, backed and nobody in line."]
        if at == 6:
            lines += ["    record:", "      label: End gap as found", "      spec: end-gap"]
        if at == 8:
            state, because, forgotten = one.loose
            lines += [
                "    leaves:",
                "      - id: tab",
                f"        state: {state}",
                f"        because: {because}",
                f"        if forgotten: {forgotten}",
                "        never while open: [run]",
            ]
        if at == STEPS - 1:
            lines += ["    closes: [tab]"]
    return "\n".join(lines) + "\n"


# Where a step speaks of a figure: the YAML refers to it, the Markdown repeats it.
MENTIONS = {
    2: " The force is {press-on.target}.",
    4: " The torque is {cap-bolts}.",
    6: " The gap is {end-gap}.",
    10: " It stands out {stand-out}.",
}


def mentions(one: Made) -> dict[int, str]:
    values = {"{press-on.target}": one.press[1], "{cap-bolts}": f"{one.bolt[2]} lbf·ft",
              "{end-gap}": f"{one.gap[0]} to {one.gap[1]} in", "{stand-out}": f"{one.length} in"}
    said = dict(MENTIONS)
    for at, text in said.items():
        for reference, value in values.items():
            text = text.replace(reference, value)
        said[at] = text
    return said


CAUTIONS = {
    "HZ-01": ("CAUTION", "Sharp edges on machined faces.", "Cut hands.", "Wear gloves to handle parts."),
    "HZ-02": ("WARNING", "Parts under press load can burst.", "Flying steel.", "Stand to the side of the ram."),
}


def warned(name: str) -> list[str]:
    word, *rest = CAUTIONS[name]
    return [f'!!! warning "{word}"', f"    {' '.join(rest)}", ""]


def figures_table(one: Made) -> list[str]:
    thread, grade, torque = one.bolt
    rows = [
        ("Press force, floor", one.press[0], "clean and dry", one.leaf),
        ("Press force, target", one.press[1], "clean and dry", one.leaf),
        ("Press force, ceiling", one.press[2], "clean and dry", one.leaf),
        ("Cap bolts", f"{torque} lbf·ft", f"{thread}, grade {grade}, oiled", one.leaf + 1),
        ("End gap", f"{one.gap[0]} to {one.gap[1]} in", "", one.leaf + 2),
        ("Stand-out", f"{one.length} in", "", one.leaf + 3),
    ]
    head = ["| Figure | Value | Condition | Source |", "| --- | --- | --- | --- |"]
    return head + [f"| {label} | {value} | {state} | Shop notes, leaf {leaf} |" for label, value, state, leaf in rows] + [""]


def as_page(one: Made) -> str:
    said = mentions(one)
    lines = [f"# {one.title}", "", one.summary, "", "Two people, 45 min. Tried at the desk only.", ""]
    if one.after != "none":
        lines += [f"After: [{one.after}]({one.after}.md)", ""]
    lines += ["## Before you start", "", *[f"- {text}" for text in one.conditions], "", *warned("HZ-01")]
    lines += ["## What you need", "", "- Press BP50 with its main gauge", "- Wrench TW1"]
    lines += [f"- {item}, 1" for item in one.supplies]
    lines += [f"- {item}, {code}, 1, reuse" for item, code in one.parts]
    lines += ["", "## Figures", "", *figures_table(one), "## Steps", ""]
    for at, (_, do, check) in enumerate(one.steps):
        if at == 2:
            lines += warned("HZ-02")
        lines += [f"### {at + 1}. Step", "", do + said.get(at, ""), "", f"*Check:* {check}", ""]
        if at == 2:
            lines += ["**Stop, inspect:** Square, backed and nobody in line.", ""]
        if at == 8:
            state, because, forgotten = one.loose
            lines += [f"**Left loose:** {state} {because} If forgotten: {forgotten} Never run while open.", ""]
    return "\n".join(lines)


def as_checklist(one: Made) -> str:
    said = mentions(one)
    lines = [f"# Checklist: {one.title}", "", *warned("HZ-01"), *figures_table(one)]
    for at, (_, do, check) in enumerate(one.steps):
        lines.append(f"- [ ] {at + 1}. {do}{said.get(at, '')} *{check}*")
        if at == 2:
            lines.append("- [ ] **Stop, inspect:** Square, backed and nobody in line.")
        if at == 6:
            lines.append("- [ ] End gap as found: ________")
        if at == 8:
            lines.append(f"- [ ] **Left loose:** {one.loose[0]}")
    return "\n".join(lines) + "\n"


OUR_CONFIG = """\
site_name: Bench book
docs_dir: procedures
theme:
  name: material
  font: false
  features: [navigation.prune]
plugins:
  - witnessmark
"""

PLAIN_CONFIG = """\
site_name: Bench book
theme:
  name: material
  font: false
  features: [navigation.prune]
plugins:
  - search
markdown_extensions:
  - admonition
  - tables
  - pymdownx.tasklist
"""

SITE_DATA = {
    "sources.yaml": "shop-notes:\n  title: Shop notes\n  kind: shop\n",
    "presses.yaml": (
        "BP50:\n  title: Bench press\n  area: 7.22 in²\n  rated force: 36 short ton\n  rated pressure: 10,000 psi\n"
        "  source: shop-notes leaf 1\n  gauges:\n    main:\n      title: Main gauge\n      full scale: 10,000 psi\n"
        "      division: 100 psi\n      accuracy: 1 %\n      checked: 2024-05-11\n"
    ),
    "wrenches.yaml": (
        "TW1:\n  title: Click wrench\n  lowest: 10 lbf·ft\n  highest: 250 lbf·ft\n  graduation: 1 lbf·ft\n"
        "  accuracy: 4 %\n  length: 24 in\n  checked: 2024-05-11\n"
    ),
    "surfaces.yaml": (
        "oiled:\n  title: Lightly oiled\n  condition words: [oiled]\n  nut factor:\n    low: 0.12\n    likely: 0.15\n"
        "    high: 0.18\n    source: shop-notes leaf 2\n"
    ),
}


def machine_yaml(name: str, last: str) -> str:
    return (
        f"title: {name.replace('-', ' ').capitalize()}\nviewpoint: Left and right are named from the operator's seat.\n"
        "serial plate: On the frame by the ladder.\ncarriers:\n  locomotive:\n    title: Machine\n    told by: serial\n"
        "    variants:\n      A:\n        title: All\n        serials: from 1001\n"
        f"hand-over: {last}\n"
    )


def cautions_yaml() -> str:
    return "".join(
        f"{name}:\n  word: {word}\n  hazard: {hazard}\n  consequence: {harm}\n  avoid:\n    - {avoid}\n"
        for name, (word, hazard, harm, avoid) in CAUTIONS.items()
    )


def write(path: Path, text: str) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8", newline="\n")


def make_books(folder: Path, size: int, seed: int) -> None:
    """Writes folder/witnessmark and folder/plain."""
    ours, plain = folder / "witnessmark", folder / "plain"
    book = made_book(size, seed)
    write(ours / "mkdocs.yml", OUR_CONFIG)
    write(plain / "mkdocs.yml", PLAIN_CONFIG)
    for name, text in {**SITE_DATA, "cautions.yaml": cautions_yaml()}.items():
        write(ours / "site_data" / name, text)
    for machine, last in {one.machine: one.id for one in book}.items():
        write(ours / "site_data" / "machines" / f"{machine}.yaml", machine_yaml(machine, last))
    write(plain / "docs" / "index.md", "# Bench book\n")
    for one in book:
        write(ours / "procedures" / one.machine / f"{one.id}.yaml", as_yaml(one))
        write(plain / "docs" / one.machine / f"{one.id}.md", as_page(one))
        write(plain / "docs" / one.machine / f"{one.id}-checklist.md", as_checklist(one))


if __name__ == "__main__":
    asked = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    asked.add_argument("folder", type=Path)
    asked.add_argument("--size", type=int, default=250, help="procedures")
    asked.add_argument("--seed", type=int, default=1)
    given = asked.parse_args()
    make_books(given.folder, given.size, given.seed)
    print(f"{given.size} procedures, as {given.folder}/witnessmark and {given.folder}/plain")
