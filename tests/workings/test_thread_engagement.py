"""Engagement: the longer of two lengths, what fails first, and the two meeting at the length needed."""

import pytest
from hypothesis import given as given_any
from hypothesis import strategies as st

from witnessmark.core.thread import read_thread
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS
from witnessmark.workings.thread_limits import thread_limits

ENGAGEMENT = WORKINGS["thread-engagement"]
STUD = {"thread": "3/4-10 UNC", "grade": "5", "tapped ultimate": "25 ksi"}


def engage(**texts):
    outcome, problems = run(ENGAGEMENT, {**STUD, **{name.replace("_", " "): text for name, text in texts.items()}})
    assert problems == []
    return outcome


def test_in_metal_as_strong_as_itself_the_bolts_own_thread_decides():
    outcome = engage(tapped_ultimate="120 ksi")
    assert outcome.value("length needed").printed == "0.55 in" and outcome.value("in diameters").printed == "0.74"
    assert engage().value("length needed").likely > 3 * outcome.value("length needed").likely


@pytest.mark.parametrize(("engagement", "tapped", "first"), [("1.125 in", "25 ksi", "the tapped thread strips"), ("0.50 in", "150 ksi", "the bolt's own thread strips"),
                                                             ("2 in", "25 ksi", "the bolt breaks")])
def test_what_fails_first(engagement, tapped, first):
    outcome = engage(engagement=engagement, tapped_ultimate=tapped)
    assert outcome.value("fails first").printed == first
    assert bool(outcome.warnings) == (first != "the bolt breaks")


@pytest.mark.parametrize(("texts", "says"), [({"grade": "none"}, "how strong the bolt is"), ({"grade": "10.9"}, "metric"), ({"thread": "2-4.5 UNC"}, "not given for"),
                                             ({"thread": "M12", "grade": "5"}, "unified")])
def test_refusals(texts, says):
    outcome = engage(**texts)
    assert outcome.values == () and says in outcome.refusals[0].message


def test_a_bolt_with_no_grade_by_its_strength_and_a_metric_stud():
    assert engage(grade="none", bolt_ultimate="120 ksi").value("length needed").printed == engage().value("length needed").printed
    metric = engage(thread="M20 x 2.5", grade="8.8", tapped_ultimate="172 MPa", engagement="30 mm")
    assert metric.value("length needed").printed.endswith(" mm") and metric.value("bolt breaks at").printed.endswith(" kN")


threads = st.sampled_from(["1/4-20 UNC", "1/4-28 UNF", "3/8-16 UNC", "1/2-13 UNC", "1/2-20 UNF", "3/4-16 UNF", "1-8 UNC", "1-1/4-12 UNF", "1-1/2-6 UNC"])


@given_any(threads, st.integers(15, 160), st.integers(15, 160))
def test_weaker_metal_needs_more_thread(thread, one, two):
    weak, strong = sorted((one, two))
    assert engage(thread=thread, tapped_ultimate=f"{weak} ksi").value("length needed").likely >= engage(thread=thread, tapped_ultimate=f"{strong} ksi").value("length needed").likely


@given_any(threads, st.integers(15, 160))
def test_at_the_length_needed_the_bolt_breaks_first_and_a_tenth_less_strips(thread, tapped):
    needed = engage(thread=thread, tapped_ultimate=f"{tapped} ksi").value("length needed")
    assert engage(thread=thread, tapped_ultimate=f"{tapped} ksi", engagement=needed.printed).value("fails first").printed == "the bolt breaks"
    less = f"{float(needed.printed.split()[0]) * 0.9 - 0.01:.4f} in"
    assert "strips" in engage(thread=thread, tapped_ultimate=f"{tapped} ksi", engagement=less).value("fails first").printed


@pytest.mark.parametrize("text", ["1-20 UNS", "#0-80", "#10-32", "M1", "M3 x 0.5", "M64 x 6", "4-4 UNC", "1/4-56 UNS", "3-28 UN", "M100 x 6", "M8 x 0.2", "1/4-4 UNS", "1/2-1 UNS"])
def test_no_thread_is_an_exception(text):
    thread = read_thread(text)
    limits = getattr(thread, "text", None) and thread_limits(thread)
    assert limits is None or limits.bolt_shear() > 0 < limits.hole_shear()
