"""A machine's ledger as a table for one glance or one question: what is open once these are done."""

from .loose_ends import Ledger, Left, covers


def open_table(ledger: Ledger, left: Left) -> dict[str, list[list[str]]]:
    """Variant -> for each place, the procedures that close it there: it is open once its own is done and none of those is."""
    table = {}
    for variant in ledger.variants(left):
        ties = ledger.ties_after(left, variant)
        table[variant] = [[place, *dict.fromkeys(tie.procedure.id for tie in ties if covers(tie, place))] for place in ledger.to_close(left, ties, variant)]
    return table
