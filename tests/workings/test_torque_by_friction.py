"""Where a torque goes: the parts add up, friction drives it, and no procedure may rest on it."""

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st
from small_book import PROCEDURE, SITE_DATA

from witnessmark.loading.load_book import load_book
from witnessmark.loading.source_files import SourceFile
from witnessmark.workings.derive import derive_book
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS

BY_FRICTION = WORKINGS["torque-by-friction"]
NUT = {"thread": "3/4-16 UNF", "clamp": "23,776 lbf", "thread friction": "0.10 / 0.12 / 0.15", "head friction": "0.10 / 0.12 / 0.15", "head diameter": "1.125 in"}


def split(leave=(), **texts):
    given = {name: text for name, text in NUT.items() if name not in leave}
    outcome, problems = run(BY_FRICTION, {**given, **{name.replace("_", " "): text for name, text in texts.items()}})
    assert problems == []
    return outcome


def test_a_usual_split_and_the_nut_factor_it_comes_to():
    outcome = split()
    assert outcome.value("torque").printed == "229 lbf·ft (194 to 281)"
    assert outcome.value("nut factor").printed == "0.154 (0.131 to 0.189)"
    assert outcome.value("share that pulls").printed == "9 %"


def test_the_parts_are_the_whole():
    parts = [float(line.value.split()[0]) for line in split().lines[:4]]
    assert sum(parts[:3]) == pytest.approx(parts[3], abs=0.15)


def test_clamp_from_a_share_of_proof():
    outcome = split(("clamp",), grade="5", share_of_proof="75 %")
    assert outcome.value("clamp").printed == "23,780 lbf"


@pytest.mark.parametrize(("leave", "texts", "says"), [
    (("clamp",), {}, "how hard"), (("clamp",), {"grade": "none", "share_of_proof": "75 %"}, "how hard"), (("clamp",), {"grade": "10.9", "share_of_proof": "75 %"}, "metric"),
    (("clamp",), {"grade": "5", "share_of_proof": "0 %"}, "share of nothing"), ((), {"hole_diameter": "1.2 in"}, "no larger than its hole"), ((), {"head_diameter": "0.7 in"}, "no larger than its hole")])
def test_refusals(leave, texts, says):
    outcome = split(leave, **texts)
    assert outcome.values == () and says in outcome.refusals[0].message


hundredths = st.integers(4, 40).map(lambda n: f"{n / 100:.2f}")


@given_any(hundredths, hundredths, st.sampled_from(["thread_friction", "head_friction"]))
def test_more_friction_needs_more_torque_and_wastes_more(one, two, where):
    low, high = (split(**{where: text}) for text in sorted((one, two)))
    assert low.value("torque").likely <= high.value("torque").likely
    assert low.value("share that pulls").likely >= high.value("share that pulls").likely


def test_both_systems_give_the_same():
    inch, metric = split(), split(clamp="105.7609 kN", head_diameter="28.575 mm")
    assert metric.value("torque").likely == pytest.approx(inch.value("torque").likely, rel=1e-5)


def test_a_procedure_that_rests_on_it_is_told_to_print_one_torque():
    computed = "computed:\n  apart:\n    working: torque-by-friction\n" + "".join(f"    {name}: {text}\n" for name, text in NUT.items())
    texts = {**SITE_DATA, "procedures/hoist/drum.yaml": PROCEDURE.replace("steps:\n", computed + "steps:\n", 1)}
    book, _ = load_book([SourceFile(path, text) for path, text in sorted(texts.items())])
    derived, found = derive_book(book)
    [finding] = {(each.rule, each.message) for each in found}
    assert finding == ("working-for-reading", "'apart' is worked out by torque-by-friction, which only explains: a procedure prints one figure")
    assert all(worked.outcome.refusals for each in derived.values() for runs in each.worked.values() for worked in runs if worked.owner == "apart")
