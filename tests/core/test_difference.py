"""A difference put back gives what it was made of, whatever the two were; one that does not belong is refused."""

import pytest
from hypothesis import given, strategies as st

from witnessmark.core.canonical import canonical
from witnessmark.core.difference import Unfit, applied, difference

LEAVES = st.none() | st.booleans() | st.integers(-3, 3) | st.text("ab=~@#", max_size=3)
DATA = st.recursive(LEAVES, lambda inner: st.lists(inner, max_size=5) | st.dictionaries(st.text("ab=~@#0", max_size=2), inner, max_size=4), max_leaves=20)


@given(DATA, DATA)
def test_a_difference_put_upon_the_old_gives_the_new(old, new):
    assert canonical(applied(old, difference(old, new))) == canonical(new)


@given(DATA)
def test_nothing_differs_from_itself(data):
    assert len(canonical(difference(data, data))) <= max(8, len(canonical(data)) + 6)
    assert canonical(applied(data, difference(data, data))) == canonical(data)


def test_a_step_put_in_is_small_whatever_follows_it():
    old = [{"id": f"step {number}", "acts": ["run"]} for number in range(200)]
    new = [*old[:3], {"id": "new"}, *old[3:]]
    assert difference(old, new) == {"@": [[3, 0, [{"id": "new"}]]]}


@pytest.mark.parametrize("old, change", [
    ({"a": 1}, {}), ({"a": 1}, {"=": 1, "~": {}}), ({"a": 1}, [1]), ([1], {"~": {"a": {"=": 1}}}), ({"a": 1}, {"@": []}), ([1], {"#": {"1": {"=": 2}}}),
    ([1], {"#": {"-1": {"=": 2}}}), ([1], {"#": {"x": {"=": 2}}}), ([1], {"@": [[2, 0, []]]}), ([1], {"@": [[0, 2, []]]}), ([1, 2], {"@": [[1, 1, []], [0, 1, []]]}),
    ([1], {"@": [[0, 1]]}), ([1], {"@": [[True, 0, []]]}), ([1], {"@": [[0, -1, []]]}), ({"a": 1}, {"?": 1}), (None, {"~": {"a": {"=": 1}}})])
def test_what_does_not_belong_is_refused(old, change):
    with pytest.raises(Unfit):
        applied(old, change)
