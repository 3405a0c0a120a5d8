"""Order-sheet sizes: the worst reading decides, the size is a stock one, and what comes off is enough."""

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS


def work(name, **texts):
    outcome, problems = run(WORKINGS[name], {key.replace("_", " ").replace("clean up", "clean-up"): text for key, text in texts.items()})
    assert problems == []
    return outcome


JOURNAL = {"standard_size": "2.750 in", "clean_up": "0.0015 in", "undersizes": "0.010 in, 0.020 in, 0.030 in"}
BORE = {"standard_size": "4.250 in", "clean_up": "0.004 in", "oversizes": "0.020 in, 0.040 in, 0.060 in"}


@pytest.mark.parametrize(("readings", "size"), [("2.7440 in", "2.740 in"), ("2.7415 in", "2.740 in"), ("2.7414 in", "2.730 in"), ("2.750 in", "2.740 in"),
                                                ("2.7452 in, 2.7344 in, 2.7461 in", "2.730 in"), ("2.7215 in", "2.720 in")])
def test_the_smallest_journal_decides(readings, size):
    assert work("undersize", readings=readings, **JOURNAL).value("grind to").printed == size


@pytest.mark.parametrize(("readings", "size"), [("4.2630 in", "4.270 in"), ("4.2660 in", "4.270 in"), ("4.2661 in", "4.290 in"), ("4.2500 in, 4.2870 in", "4.310 in")])
def test_the_largest_bore_decides(readings, size):
    assert work("oversize", readings=readings, **BORE).value("bore to").printed == size


@pytest.mark.parametrize(("name", "texts", "said"), [
    ("undersize", {**JOURNAL, "readings": "2.7214 in"}, "past the last of the sizes"),
    ("undersize", {**JOURNAL, "readings": "2.7501 in"}, "over the standard size"),
    ("oversize", {**BORE, "readings": "4.3061 in"}, "past the last of the sizes"),
    ("oversize", {**BORE, "readings": "4.2499 in"}, "under the standard size"),
    ("undersize", {"standard_size": "0.5 in", "clean_up": "0.0015 in", "undersizes": "0.5 in", "readings": "0.49 in"}, "nothing of the part")])
def test_refusals(name, texts, said):
    outcome = work(name, **texts)
    assert outcome.values == () and said in outcome.refusals[0].message


def test_wear_inside_its_limit_is_said():
    assert work("oversize", readings="4.2620 in", wear_limit="0.012 in", **BORE).warnings
    assert not work("oversize", readings="4.2621 in", wear_limit="0.012 in", **BORE).warnings


@given_any(st.lists(st.integers(27200, 27500), min_size=1, max_size=6), st.integers(0, 40))
def test_the_size_leaves_room_for_cleaning_up_and_the_next_larger_would_not(tenths, clean):
    texts = {**JOURNAL, "readings": ", ".join(f"{each / 10000:.4f} in" for each in tenths), "clean_up": f"{clean / 10000 + 0.0001:.4f} in"}
    outcome = work("undersize", **texts)
    need = min(tenths) / 10000 - clean / 10000 - 0.0001
    makes = [size for size in (2.740, 2.730, 2.720) if size <= need + 1e-9]
    assert (outcome.value("grind to").likely / 0.0254 == pytest.approx(makes[0])) if makes else bool(outcome.refusals)
    if makes:
        assert outcome.value("left to take off").likely >= 0.0254 * (clean / 10000) * (1 - 1e-6)


def test_metric_sizes_and_steps():
    outcome = work("undersize", standard_size="70.00 mm", readings="69.86 mm, 69.90 mm", clean_up="0.04 mm", undersizes="0.25 mm, 0.50 mm, 0.75 mm")
    assert outcome.value("grind to").printed == "69.75 mm" and outcome.value("undersize").printed == "0.25 mm"
    inch = work("undersize", standard_size="2.755906 in", readings="2.750394 in", clean_up="0.001575 in", undersizes="0.009843 in")
    assert inch.value("grind to").likely == pytest.approx(outcome.value("grind to").likely, abs=5e-8)


RULE = {"clearance": "0.0008 to 0.0014 in", "on_each": "1 in", "diameter": "2.750 in"}


def test_window_and_its_partner():
    assert work("running-clearance", **RULE).value("running clearance").printed == "0.0022 to 0.0038 in"
    assert work("running-clearance", shaft="2.7400 in", **RULE).value("bore to make").printed == "2.7422 to 2.7438 in"
    assert work("running-clearance", bore="2.7500 in", **RULE).value("shaft to make").printed == "2.7462 to 2.7478 in"


@pytest.mark.parametrize(("bore", "said"), [("2.7421 in", "tighter than the window"), ("2.7422 in", "inside the window"), ("2.7438 in", "inside the window"),
                                            ("2.7439 in", "slacker than the window"), ("2.7390 in", "tighter than the window")])
def test_verdict_of_a_pair(bore, said):
    assert work("running-clearance", shaft="2.7400 in", bore=bore, **RULE).value("verdict").printed == said


def test_no_room_is_refused():
    assert "nothing is left" in work("running-clearance", clearance="0.001 in", on_each="1 in", diameter="2 in").refusals[0].message


@given_any(st.integers(250, 24000))
def test_the_window_lies_inside_the_rule_in_both_systems(thousandths):
    inch = work("running-clearance", **{**RULE, "diameter": f"{thousandths / 1000} in"})
    metric = work("running-clearance", clearance="0.8 to 1.4 µm", on_each="1 mm", diameter=f"{thousandths * 0.0254:.6f} mm")
    for outcome in (inch, metric):
        if not outcome.refusals:
            band = outcome.value("running clearance")
            assert 0.0008 * thousandths * 2.54e-5 * (1 - 1e-9) <= band.low < band.high <= 0.0014 * thousandths * 2.54e-5 * (1 + 1e-9)


BUSH = {"bush_outside": "2.875 in", "bush_bore": "2.262 in", "housing_outside": "4.25 in", "interference": "0.0025 in", "bush_modulus": "16.1 Mpsi", "bush_poisson": "0.349",
        "housing_modulus": "30.0 Mpsi", "housing_poisson": "0.292"}


def bush(**more):
    return work("bush-closing-in", **{**BUSH, **more})


@pytest.mark.parametrize(("more", "said"), [({"housing_outside": "2.875 in"}, "no larger outside than the bush"), ({"bush_bore": "2.9 in"}, "as large as the bush"),
                                            ({"interference": "0.9 in"}, "crush the bush"), ({"bush_poisson": "0.5"}, "no metal")])
def test_bushes_that_cannot_be(more, said):
    outcome = bush(**more)
    assert outcome.values == () and said in outcome.refusals[0].message


def test_materials_are_named_by_their_ids():
    outcome, problems = run(WORKINGS["bush-closing-in"], {"bush outside": "2.875 in", "bush bore": "2.262 in", "housing outside": "4.25 in", "interference": "0.0025 in",
                                                          "bush material": "phosphor-bronze", "housing material": "steel"})
    assert problems == [] and outcome.value("contact pressure").likely == pytest.approx(bush().value("contact pressure").likely, rel=1e-3)


@given_any(st.integers(1, 40), st.integers(1, 40))
def test_tighter_closes_more_and_the_band_follows(one, two):
    low, high = sorted((one, two))
    if low < high:
        band = bush(interference=f"{low / 10000} to {high / 10000} in").value("closes in")
        assert band.low == pytest.approx(bush(interference=f"{low / 10000} in").value("closes in").likely)
        assert band.low < band.likely < band.high


def test_bush_in_both_systems():
    metric = bush(bush_outside="73.025 mm", bush_bore="57.4548 mm", housing_outside="107.95 mm", interference="0.0635 mm")
    assert metric.value("closes in").likely == pytest.approx(bush().value("closes in").likely, rel=1e-9)
    assert metric.value("closes in").converted == bush().value("closes in").printed.replace("0.0019", "0.00188")
