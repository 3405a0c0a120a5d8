"""The graph of what rests on what, for the smallest book with a taper, a nut held to the press and a tool in it."""

from small_book import PROCEDURE, sources

from witnessmark.core.dependency import Dependency, dependencies, resting_on
from witnessmark.loading.load_book import load_book

GRIP = """\
computed:
  grip:
    working: taper-grip
    torque to carry: {early: hoist/load, late: 90 lbf·ft}
    taper: 1:12
    mean diameter: 3.000 in
    length: 3.50 in
    friction: oiled
    force: press.target
steps:
"""


def edges(text: str) -> tuple[Dependency, ...]:
    book, _ = load_book(sources(text))
    return dependencies(book)


WHOLE = PROCEDURE.replace("steps:\n", GRIP).replace("{role: floor, is: 6 short ton, source: shop p. 1}", "{role: floor, from: grip.force needed, source: shop p. 1}") \
    .replace("    wrench: W1\n", "    wrench: W1\n    must not out-pull: press.target\n")


def test_every_way_to_rest_on_another_is_an_edge():
    assert edges(WHOLE) == (
        Dependency("hoist/drum/bolt", "hoist/drum/press"),
        Dependency("hoist/drum/bolt", "surface/oiled"),
        Dependency("hoist/drum/bolt", "wrench/W1"),
        Dependency("hoist/drum/grip", "hoist/drum/press"),
        Dependency("hoist/drum/grip", "hoist/load", ("early",)),
        Dependency("hoist/drum/grip", "surface/oiled"),
        Dependency("hoist/drum/press", "hoist/drum/grip"),
        Dependency("hoist/drum/press", "press/P20/main"),
    )


def test_what_rests_on_a_figure_is_found_through_others():
    found = edges(WHOLE)
    assert resting_on(found, "hoist/load") == {"hoist/drum/grip", "hoist/drum/press", "hoist/drum/bolt"}
    assert resting_on(found, "wrench/W1") == {"hoist/drum/bolt"}
    assert resting_on(found, "hoist/drum/bolt") == set()


def test_what_is_not_there_is_no_edge():
    assert not any("nobody" in edge.on for edge in edges(WHOLE.replace("hoist/load", "nobody/load").replace("wrench: W1", "wrench: nobody")))
