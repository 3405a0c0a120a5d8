"""Every rule there is. A new one is added here by hand; each module's docstring is its manual."""

from typing import Iterator

from ..core.book import Book
from ..core.finding import Finding
from . import (caution_incomplete, caution_too_late, figure_without_source, limits_in_order, no_press_will_do,
               one_action_a_step, out_pulls_press, press_force_without_ceiling, reading_without_scale, tool_not_in_needs,
               torque_refused, torque_without_surface, unknown_reference, wrench_too_coarse)

RULES = {rule.ID: rule for rule in (
    unknown_reference, figure_without_source, torque_without_surface, press_force_without_ceiling, limits_in_order,
    torque_refused, no_press_will_do, tool_not_in_needs, wrench_too_coarse, reading_without_scale, out_pulls_press,
    caution_incomplete, caution_too_late, one_action_a_step)}


def check_book(book: Book, derived) -> Iterator[Finding]:
    """Every finding of every rule, in the order of the table."""
    for rule in RULES.values():
        yield from rule.check(book, derived)
