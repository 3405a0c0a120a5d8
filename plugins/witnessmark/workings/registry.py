"""Every working there is, by id. A new one is added here by hand: nothing is found by searching."""
from __future__ import annotations

from ..core.working import Working
from . import (
    castle_nut, press_card, rolling_drag, run_out, spring_test, springs, taper_advance, taper_grip,
    tightening_order, tightening_torque, timing_arc, wrench_adapter,
)

WORKINGS: dict[str, Working] = {working.id: working for working in (
    castle_nut.WORKING,
    press_card.WORKING,
    tightening_torque.WORKING,
    taper_grip.WORKING,
    taper_advance.WORKING,
    spring_test.WORKING,
    springs.WORKING,
    wrench_adapter.WORKING,
    run_out.RUN_OUT,
    run_out.FACE,
    timing_arc.WORKING,
    rolling_drag.WORKING,
    tightening_order.WORKING,
)}
