"""Every rule there is. A new one is added here by hand; each module's docstring is its manual."""

from typing import Iterator

from ..core.book import Book
from ..core.finding import Finding
from . import (act_while_open, caution_incomplete, caution_too_late, checked_against, clearance_without_temperature,
               conversion_by_hand, counted_out, duplicate_id, figure_without_source, left_without_viewpoint,
               limit_by_whom, limits_in_order, loose_end_open, measure_of_two_sizes, no_press_will_do, not_shut, one_action_a_step, opened_up_unsaid,
               order_loop, out_pulls_press, part_not_measured, picture_will_do, press_force_without_ceiling,
               radius_not_named, reading_never_taken, reading_without_scale, record_about_another, reference_without_braces,
               scale_in_order, serials_cut_a_variant, serials_in_order, sources_in_one, step_for_nobody, tight_without_figure, tool_not_in_needs,
               torque_refused, torque_without_surface, two_in_force, unknown_input, unknown_reference, was_taken, wrench_too_coarse)

RULES = {rule.ID: rule for rule in (
    unknown_reference, unknown_input, figure_without_source, torque_without_surface, press_force_without_ceiling, limits_in_order, limit_by_whom,
    torque_refused, no_press_will_do, tool_not_in_needs, wrench_too_coarse, reading_without_scale, out_pulls_press,
    caution_incomplete, caution_too_late, one_action_a_step, radius_not_named, clearance_without_temperature,
    record_about_another, two_in_force, serials_in_order, left_without_viewpoint, duplicate_id, was_taken,
    tight_without_figure, conversion_by_hand, checked_against, picture_will_do, reference_without_braces, sources_in_one, scale_in_order, measure_of_two_sizes,
    serials_cut_a_variant, step_for_nobody, reading_never_taken, order_loop, loose_end_open, not_shut, opened_up_unsaid, act_while_open, part_not_measured, counted_out)}


def check_book(book: Book, derived) -> Iterator[Finding]:
    """Every finding of every rule, in the order of the table."""
    for rule in RULES.values():
        yield from rule.check(book, derived)
