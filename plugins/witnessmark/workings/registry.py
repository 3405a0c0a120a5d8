"""Every working there is, by id. A new one is added here by hand: nothing is found by searching."""
from __future__ import annotations

from ..core.working import Working
from . import (
    adhesion, backlash, belt_and_chain_words, bush, castle_nut, counts, drip, gearing, lifting,
    machining_sizes, press_card, rolling_drag, run_out, shim_stack, shrink_fit, spring_test, springs,
    straight_interference, taper_advance, taper_grip, tightening_order, tightening_torque, timing_arc,
    volumes, wrench_adapter,
)

WORKINGS: dict[str, Working] = {working.id: working for working in (
    castle_nut.WORKING,
    press_card.WORKING,
    tightening_torque.WORKING,
    taper_grip.WORKING,
    taper_advance.WORKING,
    straight_interference.WORKING,
    shrink_fit.WORKING,
    spring_test.WORKING,
    springs.WORKING,
    wrench_adapter.WORKING,
    run_out.RUN_OUT,
    run_out.FACE,
    timing_arc.WORKING,
    rolling_drag.WORKING,
    tightening_order.WORKING,
    gearing.RATIO,
    gearing.SPEED,
    adhesion.WORKING,
    volumes.WORKING,
    drip.DRIP,
    drip.WICK,
    counts.WORKING,
    lifting.WEIGHT,
    lifting.SLINGS,
    belt_and_chain_words.BELT,
    belt_and_chain_words.SAG,
    belt_and_chain_words.WEAR,
    belt_and_chain_words.LENGTH,
    backlash.BACKLASH,
    backlash.SHIFT,
    shim_stack.STACK,
    shim_stack.MOVE,
    machining_sizes.UNDERSIZE,
    machining_sizes.OVERSIZE,
    machining_sizes.CLEARANCE,
    bush.WORKING,
)}
