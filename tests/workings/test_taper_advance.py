"""How far the demonstration book's cranks climb their tapers, worked by hand there, and what must always hold."""

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st

from witnessmark.core.drawing import Label
from witnessmark.core.units import find_unit
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS

ADVANCE = WORKINGS["taper-advance"]
CRANK = {"force": "18 long ton", "taper": "1:12", "mean diameter": "3.000 in", "length": "3.50 in", "hub diameter": "5.25 in",
         "friction": "0.12 / 0.15 / 0.20", "oiled friction": "0.06", "hub material": "steel", "shaft material": "steel", "scale division": "0.0005 in"}
HUBS = {"24-A": ("5.00 in", "60 ksi", "15 long ton", "14.69 long ton"), "24-B": ("5.25 in", "75 ksi", "18 long ton", "17.63 long ton"),
        "24-C": ("5.75 in", "75 ksi", "21.5 long ton", "21.06 long ton")}


def advance(**texts):
    outcome, problems = run(ADVANCE, {**CRANK, **{name.replace("_", " "): text for name, text in texts.items()}})
    assert problems == []
    return outcome


def row(outcome, name):
    table = outcome.told.tables[0]
    return next(cells[1:] for cells in table.rows if cells[0].startswith(name))


@pytest.mark.parametrize(("hub", "advances", "stresses", "off"), [
    ("24-A", (".0158", ".0199", ".0236", ".0376"), ("9.0", "11.3", "13.4", "21.3"), ("9.8", "8.5", "7.3", "2.7")),
    ("24-B", (".0180", ".0227", ".0269", ".0428"), ("10.0", "12.6", "14.9", "23.7"), ("11.8", "10.2", "8.7", "3.2")),
    ("24-C", (".0199", ".0251", ".0298", ".0474"), ("10.6", "13.3", "15.8", "25.1"), ("14.1", "12.2", "10.4", "3.9"))])
def test_four_columns_at_the_shop_target(hub, advances, stresses, off):
    outcome = advance(hub_diameter=HUBS[hub][0], force=HUBS[hub][2])
    assert outcome.told.tables[0].heads == ("", "friction 0.20", "friction 0.15", "friction 0.12", "oiled, 0.06")
    assert row(outcome, "Advance") == tuple(f"0{text} in" for text in advances)
    assert row(outcome, "Hub stress") == tuple(f"{text} ksi" for text in stresses)
    assert row(outcome, "Push-off") == tuple(f"{text} long ton" for text in off)


@pytest.mark.parametrize(("hub", "force", "band"), [
    ("24-A", "14.69", "0.0155 to 0.0230 in"), ("24-B", "17.63", "0.0180 to 0.0260 in"), ("24-C", "21.06", "0.0200 to 0.0290 in"),
    ("24-B", "14.69", "0.0150 to 0.0215 in"), ("24-C", "14.69", "0.0140 to 0.0200 in"), ("24-A", "16.16", "0.0175 to 0.0250 in"),
    ("24-C", "17.63", "0.0165 to 0.0240 in"), ("24-B", "19.59", "0.0200 to 0.0290 in")])
def test_advance_to_accept_at_the_last_mark_inward_to_the_dial(hub, force, band):
    assert advance(hub_diameter=HUBS[hub][0], force=f"{force} long ton").value("advance to accept").printed == band


@pytest.mark.parametrize(("hub", "force", "times"), [("24-A", 15, "(1.77 to 2.13)"), ("24-A", 18, "(1.48 to 1.77)"), ("24-A", 30, "(0.89 to 1.06)"),
                                                     ("24-B", 18, "(1.99 to 2.39)"), ("24-C", 21.5, "(1.88 to 2.25)")])
def test_ultimate_over_stress_is_an_illustration_with_the_word_assumed(hub, force, times):
    outcome = advance(hub_diameter=HUBS[hub][0], hub_ultimate=HUBS[hub][1], keyway_factor="2.5 to 3", force=f"{force} long ton")
    assert outcome.value("ultimate over stress").printed.endswith(times)
    assert any("assumed" in line.text and "never permission" in line.text for line in outcome.lines)
    assert bool(outcome.warnings) == (force == 30)


@pytest.mark.parametrize(("measured", "reading"), [("0.0175 in", "looks fouled"), ("0.0180 in", "dry as expected"), ("0.0260 in", "dry as expected"),
                                                   ("0.0265 in", "looks oiled"), ("0.0430 in", "looks oiled")])
def test_reading_of_a_measured_advance(measured, reading):
    assert advance(force="17.63 long ton", measured_advance=measured).value("reading").printed == reading


@pytest.mark.parametrize(("measured", "friction"), [("0.0180 in", "0.20"), ("0.0227 in", "0.15"), ("0.0428 in", "0.06")])
def test_a_measured_advance_shows_its_friction(measured, friction):
    assert advance(measured_advance=measured).value("friction it shows").printed == friction


def test_on_diameter_and_per_side_are_two_results_of_two_kinds():
    outcome = advance()
    whole, side = outcome.value("interference"), outcome.value("interference per side")
    assert whole.likely == pytest.approx(2 * side.likely) and whole.kind != side.kind


def test_stand_proud_before_and_after():
    outcome = advance(proud_by_hand="0.090 to 0.110 in", least_proud="0.060 in")
    assert outcome.value("proud after").printed == "0.0773 in (0.0631 to 0.0920)"
    assert outcome.warnings == ()
    assert "would clamp the shaft" in advance(proud_by_hand="0.080 in", least_proud="0.060 in").warnings[0]


@pytest.mark.parametrize(("friction", "says"), [("0.12 / 0.15 / 0.20", "yes"), ("0.03 / 0.06 / 0.10", "only at the higher"), ("0.01 to 0.03", "no:")])
def test_holding_itself(friction, says):
    outcome = advance(friction=friction)
    assert outcome.value("holds itself").printed.startswith(says)
    assert outcome.value("push-off force").low >= 0


def test_iron_gives_way_further_than_steel_and_a_hollow_shaft_further_than_a_solid_one():
    steel = advance().value("advance").likely
    assert advance(hub_material="grey-iron").value("advance").likely > steel < advance(shaft_bore="1.5 in").value("advance").likely


@pytest.mark.parametrize(("texts", "says"), [({"hub_diameter": "3.1 in"}, "large end"), ({"shaft_bore": "3 in"}, "bore of the shaft"),
                                             ({"taper": "2:1"}, "to a point"), ({"hub_poisson": "0.6"}, "Poisson")])
def test_refusals(texts, says):
    outcome = advance(**texts)
    assert outcome.values == () and says in outcome.refusals[0].message


def test_no_division_inside_the_band_is_said():
    outcome = advance(scale_division="0.05 in")
    assert not outcome.has("advance to accept") and "finer tool" in outcome.warnings[0]


def test_both_systems_give_the_same():
    inch, metric = advance(), advance(force="179.352 kN", mean_diameter="76.2 mm", length="88.9 mm", hub_diameter="133.35 mm")
    for name in ("contact pressure", "hub stress", "advance", "grip", "push-off force"):
        assert metric.value(name).likely == pytest.approx(inch.value(name).likely, rel=1e-5)
    assert advance(scale_division="0.01 mm").value("advance to accept").printed == "0.46 to 0.68 mm"


frictions = st.integers(20, 300).map(lambda thousandths: thousandths / 1000)


@given_any(frictions, frictions, st.integers(1, 60))
def test_oil_means_more_stress_and_more_advance(one, two, tons):
    low, high = sorted((one, two))
    oiled, dry = (advance(friction=f"{mu:.3f}", force=f"{tons} long ton") for mu in (low, high))
    for name in ("hub stress", "advance", "contact pressure"):
        assert oiled.value(name).likely >= dry.value(name).likely
    assert oiled.value("grip").likely <= dry.value("grip").likely


@given_any(frictions, st.integers(0, 150), st.integers(1, 60), st.sampled_from(["0.0005 in", "0.001 in", "0.01 mm", "0.1 mm"]))
def test_the_advance_to_accept_never_leaves_the_friction_band(low, wider, tons, division):
    outcome = advance(friction=f"{low:.3f} / {low + wider / 2000:.4f} / {low + wider / 1000:.3f}", force=f"{tons} long ton", scale_division=division)
    if outcome.has("advance to accept"):
        band, whole = outcome.value("advance to accept"), outcome.value("advance")
        step = float(find_unit(division.split()[1], "length").factor) * float(division.split()[0])
        assert whole.low - 1e-8 * step <= band.low < band.high <= whole.high + 1e-8 * step
        for text in (band.printed, band.converted):
            low_text, _, high_text = text.partition(" to ")
            unit = find_unit(high_text.split()[1], "length")
            assert float(unit.factor) * float(low_text) >= whole.low * (1 - 1e-6)
            assert float(unit.factor) * float(high_text.split()[0]) <= whole.high * (1 + 1e-6)


def test_the_drawing_says_in_words_what_it_shows():
    drawing = advance().told.drawing
    assert "1:12" in drawing.shows and "oiled, 0.06: 23.7 ksi" in drawing.shows
    for mark in drawing.marks:
        points = getattr(mark, "points", ((getattr(mark, "x", 0), getattr(mark, "y", 0)),))
        assert all(0 <= x <= drawing.width and 0 <= y <= drawing.height for x, y in points)
        if isinstance(mark, Label):                             # a letter of the page's script is under 6 units wide
            room = {"start": drawing.width - mark.x, "end": mark.x, "middle": 2 * min(mark.x, drawing.width - mark.x)}[mark.anchor]
            assert 6 * len(mark.text) <= room, mark.text
