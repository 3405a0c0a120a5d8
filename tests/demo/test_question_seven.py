"""Q7: a helper reads '18 tons' as another ton. By hand: 18 x 2000 / 2240 = 16.07; 18 x 2204.62 / 2240 = 17.72 (NIST SP 811)."""

import pytest

from witnessmark.core.display import shown
from witnessmark.core.kinds import Problem
from witnessmark.core.quantity import read_quantity


@pytest.mark.parametrize("read_as, long_tons", [("18 short ton", "16.07 long ton"), ("18 tonne", "17.72 long ton")])
def test_another_ton_is_another_force(read_as, long_tons):
    assert shown(read_quantity(read_as, "press force").si_low, "press force", "long ton", step="0.01") == long_tons


def test_a_bare_ton_is_refused():
    assert isinstance(read_quantity("18 tons", "press force"), Problem)
