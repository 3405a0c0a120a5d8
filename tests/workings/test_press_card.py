"""Press cards of the demonstration book: presses, gauges and windows there are invented, the answers worked by hand."""

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st
from witnessmark.workings.press_card import compute
from witnessmark.workings.read_inputs import given_inputs, run
from witnessmark.workings.registry import WORKINGS

CARD = WORKINGS["press-card"]
BP50 = {"area": "10.97 in2", "rated pressure": "9100 psi", "rated force": "50 short ton",
        "full scale": "10000 psi", "division": "100 psi", "accuracy": "1.5 %"}
FP100 = {"bore": "180 mm", "rated force": "100 tonne", "full scale": "400 bar", "division": "5 bar", "accuracy": "1.6 %"}
TEST_GAUGE = {**FP100, "full scale": "160 bar", "division": "2 bar", "accuracy": "1.0 %", "gauge limit": "150 bar"}
COARSE = {**FP100, "full scale": "600 bar", "division": "20 bar", "accuracy": "2.5 %"}


def job(target=None, floor=None, ceiling=None, window=None):
    texts = {"target": target, "floor": floor, "ceiling": ceiling, "window": window}
    return {name: text if "ton" in str(text) else f"{text} long ton" for name, text in texts.items() if text is not None}


def card(press, others=(), **forces):
    read, problems = given_inputs(CARD, {**press, **job(**forces)})
    assert problems == []
    named = []
    for name, inputs in others:
        texts, wrong = given_inputs(CARD, {**inputs})
        assert wrong == []
        named.append((name, texts))
    return compute(read, lambda: named)


def marks(outcome):
    """'1800 2700 3300 3600; 4300' as a card is read aloud."""
    number = lambda name: outcome.value(name).printed.split(" ")[0]  # noqa: E731
    return " ".join(number(f"mark at {share} %") for share in (50, 75, 90, 100)) + "; " + number("never-pass mark")


# locomotive and hub: floor, ceiling, target, card on BP50 and its last mark, card on the test gauge and its last mark
PAIRS = [
    ("A A", 12.2, 18, 15, "1500 2200 2700 3000; 3500", "14.69 long ton (13.92 to 15.47)", "28 44 52 58; 68", "14.81 long ton (14.33 to 15.29)"),
    ("A B", 12.2, 22, 15, "1500 2200 2700 3000; 4300", "14.69 long ton (13.92 to 15.47)", "28 44 52 58; 84", "14.81 long ton (14.33 to 15.29)"),
    ("A C", 12.2, 26, 15, "1500 2200 2700 3000; 5100", "14.69 long ton (13.92 to 15.47)", "28 44 52 58; 98", "14.81 long ton (14.33 to 15.29)"),
    ("B A", 14.9, 18, 16.45, "1600 2500 3000 3300; 3500", "16.16 long ton (15.39 to 16.94)", "32 48 56 64; 68", "16.34 long ton (15.86 to 16.83)"),
    ("B B", 14.9, 22, 18, "1800 2700 3300 3600; 4300", "17.63 long ton (16.86 to 18.40)", "34 52 62 70; 84", "17.88 long ton (17.40 to 18.36)"),
    ("B C", 14.9, 26, 18, "1800 2700 3300 3600; 5100", "17.63 long ton (16.86 to 18.40)", "34 52 62 70; 98", "17.88 long ton (17.40 to 18.36)"),
    ("C B", 17.6, 22, 19.8, "2000 3000 3600 4000; 4300", "19.59 long ton (18.81 to 20.36)", "38 58 68 76; 84", "19.41 long ton (18.93 to 19.89)"),
    ("C C", 17.6, 26, 21.5, "2100 3200 3900 4300; 5100", "21.06 long ton (20.28 to 21.83)", "42 62 74 84; 98", "21.45 long ton (20.97 to 21.93)"),
]


@pytest.mark.parametrize("pair", PAIRS, ids=lambda pair: pair[0])
def test_fly_crank_cards(pair):
    _, floor, ceiling, target, bench, bench_force, frame, frame_force = pair
    for press, read, means in ((BP50, bench, bench_force), (TEST_GAUGE, frame, frame_force)):
        outcome = card(press, target=target, floor=floor, ceiling=ceiling)
        assert outcome.refusals == ()
        assert marks(outcome) == read
        assert outcome.value("force at the last mark").printed == means


def test_the_pair_that_fits_no_gauge_is_refused_by_every_gauge():
    for press, means in ((BP50, "3600 psi, means anything from 16.86 long ton to 18.40"), (TEST_GAUGE, "68 bar, means anything from 16.88 long ton to 17.85")):
        outcome = card(press, [("BP50", BP50), ("test gauge", TEST_GAUGE), ("0-400", FP100)], target=17.8, floor=17.6, ceiling=18)
        assert outcome.values == ()
        assert means in outcome.refusals[0].message
        assert outcome.refusals[0].instead == "no standard gauge fits inside this floor and ceiling on this ram: do not press with it"


def test_uncertainty_of_the_three_gauges():
    shown = [(outcome.value("uncertainty").printed, outcome.value("uncertainty as force").printed)
             for outcome in (card(press, ceiling=22) for press in (BP50, FP100, TEST_GAUGE))]
    assert shown == [("158 psi", "0.77 long ton"), ("6.87 bar", "1.75 long ton"), ("1.89 bar", "0.48 long ton")]


def test_bottom_quarter_is_warned_and_a_better_gauge_offered():
    outcome = card(FP100, [("FP100 with test gauge", TEST_GAUGE)], target=18, floor=14.9, ceiling=22)
    assert outcome.value("exact reading").printed == "70.5 bar"
    assert marks(outcome) == "35 50 60 70; 75"
    assert "bottom quarter of the gauge (17.5 % of its range); better: FP100 with test gauge (last mark 70 bar, never pass 84 bar)" in outcome.warnings[0]


def test_bench_press():
    outcome = card(BP50, target=18, floor=14.9, ceiling=22)
    assert outcome.value("exact reading").printed == "3675 psi"
    assert outcome.warnings == ()
    assert any("20.16 short ton = 18.00 long ton = 18.29 tonne = 179.4 kN = 40,320 lbf" in line.value for line in outcome.lines)


def test_low_edge_that_just_holds():
    outcome = card(FP100, [("BP50", BP50)], target=15, floor=12.2, ceiling=18)
    assert marks(outcome) == "25 40 50 55; 60"
    assert outcome.value("force at the last mark").printed.startswith("14.05 long ton (12.29 to")
    assert "BP50" in outcome.warnings[0]


@pytest.mark.parametrize(("target", "floor", "ceiling", "low"), [(16.45, 14.9, 18, "13.57"), (19.8, 17.6, 22, "17.40")])
def test_coarse_frame_gauge_refuses_mixed_pairs(target, floor, ceiling, low):
    refusal = card(FP100, target=target, floor=floor, ceiling=ceiling).refusals[0]
    assert f"from {low} long ton" in refusal.message and "under the floor" in refusal.message


def test_coarse_gauge_is_refused_and_the_others_named():
    outcome = card(COARSE, [("0-160 gauge", TEST_GAUGE), ("0-400 gauge", FP100), ("0-600 again", COARSE)], target=18, floor=14.9, ceiling=22)
    message, instead = outcome.refusals[0].message, outcome.refusals[0].instead
    assert "60 bar, means anything from 10.72 long ton to 19.93 long ton" in message
    assert instead == "use 0-160 gauge (last mark 70 bar, never pass 84 bar) or 0-400 gauge (last mark 70 bar, never pass 75 bar)"


def test_with_no_other_gauge_in_the_shop_a_standard_range_is_named():
    instead = card(COARSE, target=18, floor=14.9, ceiling=22).refusals[0].instead
    assert instead == "use a 0 to 100 bar gauge of class 1.6 in divisions of 5 bar or a 0 to 160 bar gauge of class 1.6 in divisions of 5 bar" \
                      " or a 0 to 250 bar gauge of class 1.6 in divisions of 10 bar"


def test_over_the_nameplate():
    outcome = card(BP50, [("FP100", FP100)], ceiling=67)
    assert outcome.refusals[0].message == "67.00 long ton is 13,681 psi, over the 9100 psi nameplate"
    assert outcome.refusals[0].instead == "use FP100 (never pass 255 bar)"
    alone = card(BP50, ceiling=67).refusals[0]
    assert alone.instead == "use a press rated for 67.00 long ton or more"


@pytest.mark.parametrize(("ceiling", "mark"), [(30, "110"), (45, "165"), (48, "180"), (67, "255"), (72, "275")])
def test_wheel_stops(ceiling, mark):
    outcome = card(FP100, ceiling=ceiling)
    assert outcome.value("never-pass mark").printed == f"{mark} bar"
    assert not outcome.has("mark at 100 %") and not outcome.has("exact reading")


@pytest.mark.parametrize(("window", "low", "high"), [("18.75 to 30 long ton", 85, 110), ("30 to 45 long ton", 125, 165), ("32 to 48 long ton", 135, 180)])
def test_wheel_bands_are_read_inward(window, low, high):
    outcome = card(FP100, window=window)
    assert (outcome.value("accept band low").printed, outcome.value("accept band high").printed) == (f"{low} bar", f"{high} bar")
    assert outcome.value("never-pass mark").printed == f"{high} bar"


def test_too_narrow_a_band_is_refused():
    assert "no mark is sure to lie between" in card(FP100, window="30 to 32 long ton").refusals[0].message


@pytest.mark.parametrize(("target", "ceiling", "stud", "at_target", "at_ceiling"), [
    (15, 18, "1-1/2-8 UN", "22.5 ksi", "27.0 ksi"), (18, 22, "1-1/2-8 UN", "27.0 ksi", "33.0 ksi"), (21.5, 26, "1-1/2-8 UN", "32.3 ksi", "39.0 ksi"),
    (15, 18, "1-1/2-12 UNF", "21.3 ksi", "25.5 ksi"), (21.5, 26, "1-1/2-12 UNF", "30.5 ksi", "36.8 ksi")])
def test_draw_stud(target, ceiling, stud, at_target, at_ceiling):
    outcome = card({**BP50, "draw stud thread": stud, "draw stud yield": "105 ksi"}, target=target, ceiling=ceiling)
    assert outcome.value("draw stud stress at target").printed == at_target
    assert outcome.value("draw stud stress at ceiling").printed == at_ceiling


def test_a_stud_that_would_yield_is_refused():
    outcome = card({**BP50, "draw stud thread": "3/4-16 UNF", "draw stud yield": "105 ksi"}, target=15, ceiling=18)
    assert "not under its yield" in outcome.refusals[0].message and outcome.values == ()


def test_nothing_to_stop_at_is_refused():
    assert "no ceiling" in card(BP50, target=18, floor=14.9).refusals[0].message
    no_rating = {name: text for name, text in BP50.items() if not name.startswith("rated")}
    assert "rating is not given" in card(no_rating, ceiling=22).refusals[0].message
    no_area = {name: text for name, text in BP50.items() if name not in ("area", "rated force")}
    assert "area is not known" in card(no_area, ceiling=22).refusals[0].message
    assert "rod is as thick" in card({**FP100, "rod": "180 mm", "side": "pull"}, ceiling=22).refusals[0].message
    assert "area is not known" in card({**FP100, "side": "pull"}, ceiling=22).refusals[0].message


@pytest.mark.parametrize(("forces", "words"), [({"target": 23, "ceiling": 22}, "target of 23.00 long ton is over the ceiling"),
                                              ({"target": 18, "ceiling": 22, "floor": 23}, "floor of 23.00 long ton is over"),
                                              ({"target": 18, "ceiling": 22, "floor": 19}, "under the floor")])
def test_figures_at_odds_are_refused_whatever_the_gauge(forces, words):
    refusal = card(BP50, [("FP100", FP100)], **forces).refusals[0]
    assert words in refusal.message and "FP100" not in refusal.instead


def test_never_pass_is_held_down_to_the_rating_and_to_the_gauge():
    held = card({**BP50, "rated force": "24 long ton"}, target=18, floor=14.9, ceiling=26)
    assert held.value("never-pass mark").printed == "4900 psi"
    assert any("held down" in warning for warning in held.warnings)
    cock = card({**TEST_GAUGE}, target=30, ceiling=48)
    assert cock.value("never-pass mark").printed == "150 bar"
    assert "limit set for the gauge" in cock.warnings[0]


def test_rod_side_is_not_bore_side():
    ram = {"bore": "4.000 in", "rod": "2.000 in", "rated pressure": "400 bar", "full scale": "400 bar", "division": "5 bar", "accuracy": "1.6 %"}
    push, pull = (card({**ram, "side": side}, target="12 short ton", ceiling="16 short ton") for side in ("push", "pull"))
    assert (push.value("exact reading").printed, pull.value("exact reading").printed) == ("131.7 bar", "175.6 bar")


def test_area_from_the_two_ratings():
    outcome = card({**{name: text for name, text in BP50.items() if name != "area"}, "rated pressure": "10000 psi"}, target=18, ceiling=22)
    assert outcome.value("exact reading").printed == "4032 psi"


# Property tests: whatever the shop, the card errs to the safe side.
tons = st.integers(50, 600).map(lambda tenths: tenths / 10)
presses = st.sampled_from([BP50, FP100, TEST_GAUGE, COARSE])


@given_any(presses, tons, tons, tons)
def test_no_mark_can_mean_more_than_the_ceiling_or_less_than_the_floor(press, floor, target, ceiling):
    floor, target, ceiling = sorted((floor, target, ceiling))
    outcome = card(press, floor=floor, target=target, ceiling=ceiling)
    if outcome.refusals:
        assert outcome.values == ()
        return
    ton = 9964.01641818352
    uncertainty = outcome.value("uncertainty").likely
    area = outcome.value("force at the last mark").likely / outcome.value("mark at 100 %").likely
    last, never = outcome.value("mark at 100 %").likely, outcome.value("never-pass mark").likely
    slack = 1e-6 * ton
    assert area * (never + uncertainty) <= ceiling * ton + slack
    assert area * (last - uncertainty) >= floor * ton - slack
    assert area * last <= target * ton + slack
    assert last <= never
    stops = [outcome.value(f"mark at {share} %").likely for share in (50, 75, 90, 100)]
    assert stops == sorted(stops)


@given_any(presses, tons, tons)
def test_a_higher_ceiling_never_lowers_the_never_pass_mark(press, one, two):
    low, high = (card(press, ceiling=ton) for ton in sorted((one, two)))
    if not high.refusals and not low.refusals:
        assert low.value("never-pass mark").likely <= high.value("never-pass mark").likely


@given_any(tons)
def test_both_systems_of_units_give_one_card(ceiling):
    inch, metric = card(BP50, ceiling=ceiling), card({**BP50, "area": "70.774052 cm2", "rated force": "444.822 kN"}, ceiling=ceiling)
    assert [value.printed for value in inch.values] == [value.printed for value in metric.values]


def test_run_adds_the_warning_of_an_unusual_input():
    outcome, _ = run(CARD, {**BP50, "accuracy": "15 %", **job(target=18, ceiling=40)})
    assert any(warning.startswith("accuracy 15 %") for warning in outcome.warnings)
