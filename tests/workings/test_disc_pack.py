"""Disc packs and the torque they hold."""

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS

PLAIN = {"friction discs": "6", "friction disc": "0.170 ± 0.003 in", "steel plates": "7", "steel plate": "0.125 ± 0.003 in"}
SINGLE = {"friction discs": "1", "friction disc": "0.500 in", "least pack": "0.420 in"}
CLUTCH = {"faces": "2", "friction": "0.25 / 0.30 / 0.35", "force": "165 lbf", "springs": "9", "outer diameter": "12 in", "inner diameter": "8 in"}


def pack(base, **texts):
    outcome, problems = run(WORKINGS["disc-pack"], {**base, **{name.replace("_", " "): text for name, text in texts.items()}})
    assert problems == []
    return outcome


def clutch(**texts):
    outcome, problems = run(WORKINGS["clutch-capacity"], {**CLUTCH, **{name.replace("_", " "): text for name, text in texts.items()}})
    assert problems == []
    return outcome


def test_height_and_tolerances():
    outcome = pack(PLAIN)
    assert [outcome.value(name).printed for name in ("height", "likely tolerance", "worst tolerance")] == ["1.895 in", "0.011 in", "0.039 in"]
    assert not outcome.has("wear left")
    assert not pack({**PLAIN, "friction disc": "0.170 in", "steel plate": "0.125 in"}).has("worst tolerance")


def test_wear_from_the_limits_of_each_part_or_of_the_pack():
    outcome = pack(PLAIN, worn_friction_disc="0.130 in", worn_steel_plate="0.118 in", pack_now="1.700 in")
    assert [outcome.value(name).printed for name in ("least height", "wear allowed", "wear left")] == ["1.606 in", "0.289 in", "33 %"]
    assert pack(SINGLE, pack_now="0.455 in").value("wear left").printed == "44 %"
    assert pack(PLAIN, worn_friction_disc="0.130 in").value("least height").printed == "1.655 in"


@pytest.mark.parametrize(("now", "left", "said"), [("0.410 in", "0 %", "worn out"), ("0.500 in", "100 %", None), ("0.520 in", "100 %", "thicker than a new pack")])
def test_a_worn_pack_and_one_that_is_too_thick_are_said(now, left, said):
    outcome = pack(SINGLE, pack_now=now)
    assert outcome.value("wear left").printed == left
    assert (said is None and not outcome.warnings) or said in outcome.warnings[-1]


def test_refusals():
    assert "how thick" in pack({"friction discs": "2", "friction disc": "0.170 in", "steel plates": "1"}).refusals[0].message
    assert "not thinner" in pack(SINGLE, least_pack="0.500 in").refusals[0].message
    assert "wider inside" in clutch(inner_diameter="12 in").refusals[0].message


def test_capacity_over_the_friction():
    outcome = clutch(engine_torque="158 lbf·ft")
    assert outcome.value("mean radius").printed == "5.07 in"
    assert outcome.value("capacity").printed == "376 lbf·ft (314 to 439)"
    assert outcome.value("cover").printed == "2.38 (1.98 to 2.78)"
    assert not outcome.warnings
    assert "slips before" in clutch(engine_torque="320 lbf·ft").warnings[0]
    assert clutch(facing="run in").value("capacity").printed == "371 lbf·ft (309 to 433)"


@given_any(st.integers(1, 20), st.integers(0, 20), st.integers(0, 9), st.integers(0, 9))
def test_the_likely_tolerance_never_passes_the_worst(discs, plates, one, other):
    outcome = pack({"friction discs": str(discs), "friction disc": f"0.170 ± 0.00{one + 1} in", "steel plates": str(plates), "steel plate": f"0.125 ± 0.00{other + 1} in"})
    assert outcome.value("likely tolerance").likely <= outcome.value("worst tolerance").likely * (1 + 1e-9)


@given_any(st.integers(421, 499))
def test_less_pack_leaves_less(now):
    one, two = (pack(SINGLE, pack_now=f"0.{now + more} in").value("wear left").likely for more in (0, 1))
    assert one < two


@given_any(st.integers(1, 12), st.integers(10, 400))
def test_a_facing_run_in_never_holds_more_than_a_new_one(inner, more):
    texts = {"inner_diameter": f"{inner} in", "outer_diameter": f"{inner + more / 100:.2f} in"}
    assert clutch(facing="run in", **texts).value("capacity").likely <= clutch(**texts).value("capacity").likely * (1 + 1e-12)


def test_both_systems_of_units_agree():
    metric = clutch(force="733.956566518 N", outer_diameter="304.8 mm", inner_diameter="203.2 mm")
    assert metric.value("capacity").likely == pytest.approx(clutch().value("capacity").likely, rel=1e-9)
    assert metric.value("capacity").printed == "510 N·m (425 to 595)"
    assert pack({**SINGLE, "friction disc": "12.7 mm", "least pack": "10.668 mm"}, pack_now="0.455 in").value("wear left").printed == "44 %"


def test_the_page_gets_a_drawing_and_tables():
    told = pack(PLAIN, worn_friction_disc="0.130 in").told
    assert "6 friction discs and 7 steel plates" in told.drawing.shows
    assert told.tables[0].rows[0] == ("1.895 in", "100 %")
    assert pack({**PLAIN, "friction discs": "200"}).told.drawing is None
    assert ("0.25", "314 lbf·ft") in clutch().told.tables[0].rows
