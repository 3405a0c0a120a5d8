"""What a working may be given besides a quantity: a tool or material by its id, several values, a reading still to come,
another working's result with its band. The worked book is the smallest one with a taper in it."""

from small_book import PROCEDURE, sources

from witnessmark.core.figure import NoFigure
from witnessmark.core.quantity import read_quantity
from witnessmark.core.working import Example, Formula, Given, Input, Outcome, Output, Working
from witnessmark.loading.load_book import load_book
from witnessmark.workings.derive import derive_book
from witnessmark.workings.printed import value, words
from witnessmark.workings.read_inputs import given_inputs, given_of, run

TAPER = """\
computed:
  grip:
    working: taper-grip
    torque to carry: 400 lbf·ft
    taper: 1:12
    mean diameter: 3.000 in
    length: 3.50 in
    friction: 0.12 / 0.15 / 0.20
    force: 12 short ton
  again:
    working: taper-grip
    torque to carry: grip.grip
    taper: 1:12
    mean diameter: 3.000 in
    length: 3.50 in
    friction: 0.15
"""


def doubled(given) -> Outcome:
    return Outcome((value("twice", "length", 2 * given["gap"].likely, "in", "0.001"), words("verdict", "fits")))


DOUBLE = Working(
    "double", "Twice a gap", "For these tests.", (Formula("g", "g"),),
    (Input("gap", "length", "the gap", ("0.001 in", "1 in"), "not a gap"), Input("stock", "length", "pieces", many=True, required=False),
     Input("hub modulus", "stress", "of the hub", required=False), Input("hub expansion", "expansion", "of the hub", required=False),
     Input("turned", "length", "either way", required=False, sign="signed")),
    (Output("twice", "length", "nearest", "two of it"), Output("verdict", "none", "nearest", "in words")), "none",
    Example({}, {}, "none"), (), (), doubled)


def resolved(computed: str, name: str = "late"):
    book, found = load_book(sources(PROCEDURE.replace("steps:\n", computed + "steps:\n")))
    derived, more = derive_book(book)
    return derived["hoist", "drum"], [*found, *more]


def test_a_material_gives_the_inputs_that_are_declared():
    from witnessmark.workings.shelf import from_shelf
    texts, problems = from_shelf(DOUBLE, {"gap": "1 in", "hub material": "grey-iron"},
                                 {"material": {"grey-iron": {"modulus": "14.5 Mpsi", "poisson": "0.211", "expansion": "6.3 ppm/°F"}}})
    assert problems == []
    assert texts == {"gap": "1 in", "hub modulus": "14.5 Mpsi", "hub expansion": "6.3 ppm/°F"}


def test_what_is_given_outright_comes_before_what_the_material_says():
    given, problems = given_inputs(DOUBLE, {"gap": "1 in"})
    assert problems == []
    outcome, problems = run(DOUBLE, {"gap": "1 in", "hub material": "steel", "hub modulus": "28 Mpsi"})
    assert problems == [] and outcome.value("twice").printed == "2.000 in"


def test_a_material_nobody_has_is_named():
    outcome, problems = run(DOUBLE, {"gap": "1 in", "hub material": "stel"})
    assert outcome is None
    assert [(each.message, each.mend) for each in problems] == [("there is no material 'stel'", "did you mean 'steel'?")]


def test_several_stand_with_commas():
    given, problems = given_inputs(DOUBLE, {"gap": "1 in", "stock": "0.003 in, 0.005 in, 12 thou"})
    assert problems == []
    assert [round(each.likely / 0.0254, 6) for each in given["stock"].several] == [0.003, 0.005, 0.012]
    _, problems = given_inputs(DOUBLE, {"gap": "1 in", "stock": "0.003 in, five"})
    assert problems and "comma" in problems[0].mend


def test_most_inputs_are_over_zero_and_some_may_be_under():
    assert given_inputs(DOUBLE, {"gap": "0 in"})[1] and not given_inputs(DOUBLE, {"gap": "1 in", "turned": "-0.002 in"})[1]


def test_a_reading_still_to_come_gives_no_number_and_a_chart_of_what_may_follow():
    outcome, problems = run(DOUBLE, {"gap": "measured at read-gap, 0.010 to 0.020 in"})
    assert problems == []
    assert outcome.waits == ("gap",) and outcome.values == () and outcome.refusals == ()
    table = outcome.told.tables[0]
    assert table.heads == ("gap", "twice", "verdict")
    assert table.rows[0] == ("0.010 in", "0.020 in", "fits") and table.rows[-1] == ("0.020 in", "0.040 in", "fits")


def test_an_expected_range_that_is_none_is_a_problem():
    for text in ("measured at read-gap, 0.010 in", "measured at read-gap, 0.010 to 0.020 psi", "measured at read-gap, soon"):
        outcome, problems = run(DOUBLE, {"gap": text})
        assert outcome is None and problems[0].message.startswith("gap: ")


def test_a_result_goes_on_with_its_whole_band():
    band = value("grip", "torque", (100.0, 150.0, 200.0), "N·m", "1")
    given = given_of(band)
    assert (given.low, given.likely, given.high) == (100.0, 150.0, 200.0)
    assert given.quantity.unit.symbol == "N·m"
    derived, found = resolved(TAPER)
    assert found == []
    first, then = (runs[0] for (_, owner), runs in list(derived.worked.items())[:2] for _ in [0] if owner in ("grip", "again"))
    grip = first.outcome.value("grip")
    assert grip.low < grip.likely < grip.high
    # F = (2 T / d) (mu + T/2) / mu with the highest torque of the band: the floor rests on the worst end
    needed = 2 * grip.high / (3 * 0.0254) * (0.15 + 1 / 24) / 0.15
    assert then.outcome.value("force needed").likely >= needed > 2 * grip.likely / (3 * 0.0254) * (0.15 + 1 / 24) / 0.15


def test_a_result_of_another_kind_is_refused():
    computed = TAPER.replace("torque to carry: grip.grip", "torque to carry: grip.contact pressure")
    _, found = resolved(computed)
    assert any("is a stress, not a torque" in each.message for each in found)


def test_a_length_is_no_diameter_by_accident_but_a_radius_never_is():
    radius = read_quantity("1 in", "radius")
    _, problems = given_inputs(DOUBLE, {"gap": Given("1 in", 0.0254, 0.0254, 0.0254, radius)})
    assert problems == []                                       # a radius is a length
    diameter = Working("d", "d", "d", (), (Input("across", "diameter", "d"),), (), "", Example({}, {}, ""), (), (), doubled)
    _, problems = given_inputs(diameter, {"across": Given("1 in", 0.0254, 0.0254, 0.0254, radius)})
    assert problems and "is a radius, not a diameter" in problems[0].message


def test_what_rests_on_a_reading_waits_too():
    computed = TAPER.replace("torque to carry: 400 lbf·ft", "torque to carry: measured at press")
    derived, found = resolved(computed)
    assert found == []
    assert all(runs[0].outcome.waits == ("torque to carry",) for (_, owner), runs in derived.worked.items() if owner in ("grip", "again"))


SLOT = """\
computed:
  slot:
    working: castle-nut
    thread: 1/2-13 UNC
    the nut: clamps a joint
    torque window: bolt.window
    wrench: W1
"""


def with_window(window: str):
    figures = f"figures:\n      - {{role: window, is: {window}, source: shop p. 3}}\n      - {{role: target, from: slot.first setting}}\n"
    book, found = load_book(sources(PROCEDURE.replace("is: 55 lbf·ft\n    source: shop p. 3\n", figures).replace("steps:\n", SLOT + "steps:\n")))
    derived, more = derive_book(book)
    return derived["hoist", "drum"], [*found, *more]


def target_of(derived, variant: str):
    key = derived.combinations[variant][0]
    return next(each.worth for each in derived.resolved[key, "bolt"] if each.figure.role == "target"), derived.worked.get((key, "slot"), ())


def test_a_target_may_be_worked_out_from_the_window_beside_it():
    derived, found = with_window("50 to 60 lbf·ft")
    assert found == []
    worth, runs = target_of(derived, "late")
    assert worth.typed() == "55 lbf·ft" and runs[0].inputs["torque window"] == "50 to 60 lbf·ft"


def test_where_an_input_is_deliberately_none_so_is_the_result():
    derived, found = with_window("{early: none, late: 50 to 60 lbf·ft}")
    assert found == []
    assert isinstance(target_of(derived, "early")[0], NoFigure) and target_of(derived, "early")[1] == ()
    assert target_of(derived, "late")[0].typed() == "55 lbf·ft"


def test_where_an_input_is_not_known_the_result_is_refused_and_not_none():
    derived, _ = with_window("{early: not known yet, late: 50 to 60 lbf·ft}")
    worth, runs = target_of(derived, "early")
    assert worth is None and runs[0].outcome.refusals
