"""How much of one thing several procedures need together, reckoned by hand."""

import pytest
from plan_book import HEAD, PROCEDURES, read

from witnessmark.core.need_sums import total


def needed(*counts: str, variant: str = "late", applies: str = "") -> str:
    """The sum of a supply that stands in so many procedures with these counts; '' stands for a count left out."""
    texts = dict.fromkeys(PROCEDURES, None)
    for number, count in enumerate(counts):
        supply = f"{{item: grease, count: {count}}}" if count else "grease"
        text = HEAD.format(title=f"Job {number}", after="none").replace("supplies: none", f"supplies: [{supply}]")
        texts[f"job{number}"] = text + (applies if number == 0 else "") + "steps:\n  - {id: look, do: Look.}\n"
    book = read(**texts)[0]
    procedures = book.orders["hoist"].row
    return total([(one, one.needs.supplies[0]) for one in procedures], book.machines["hoist"], variant)


@pytest.mark.parametrize("counts, says", [
    (("4", "2"), "6"), (("nine", "a pair"), "11"), (("1 per side",), "2"), (("1 per side", "3"), "5"),
    (("0.25 litre", "1.5 litre"), "1.75 litre"), (("0.25 litre per side", "1 litre"), "1.50 litre"),
    (("1 litre", "2 imperial pints"), "1 litre + 2 imperial pint"), (("1/3 litre", "1 litre"), "1-1/3 litre"),
    (("4", ""), "4 + as needed"), (("", ""), ""), (("a smear", "2"), "2 + a smear"), (("1 per wheel",), "1 per wheel"),
])
def test_counts_add_up_and_words_are_kept(counts, says):
    assert needed(*counts) == says


def test_only_procedures_for_the_variant_count():
    assert needed("4", "2", applies="applies to: [early]\n") == "2"
    assert needed("4", "2", applies="applies to: [early]\n", variant="early") == "6"
