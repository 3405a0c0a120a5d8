"""Oil by the drop against published drop counts of lubricators."""

import pytest
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS

PINT = 473.176473


# Lubrication contractor's table for sight-feed lubricators (30 to 40 weight oil): 14,115 drops to a US pint in a vacuum glass, and
# 10 drops a minute a pint in 24 hours; in a filled glass 4,705 drops, 3 pints. The table itself is rounded by 2 %.
@pytest.mark.parametrize(("to_the_pint", "pints"), [(14115, 1), (4705, 3)])
def test_drops_to_the_pint(to_the_pint, pints):
    outcome, problems = run(WORKINGS["drip-rate"], {"drops": "10 drops/min", "drop": f"{PINT / to_the_pint:.6f} mL", "cup": f"{PINT:.4f} mL"})
    assert problems == []
    assert outcome.value("oil in an hour").likely * 24e6 == pytest.approx(pints * PINT, rel=0.025)
    assert outcome.value("cup lasts").likely / 3600 == pytest.approx(24 / pints, rel=0.025)
