"""Slips beyond the first twenty (`test_twenty_slips.py`): one at one place of the demonstration, and the whole answer to it."""

from functools import cache, lru_cache, partial
from pathlib import Path

import pytest

from witnessmark.loading import load_book
from witnessmark.loading.source_files import SourceFile, beside_sources, picture_file, yaml_sources
from witnessmark.prove import proved

ROOT = Path(__file__).parent.parent
CRANK = "procedures/type-24/flycrank-press-on.yaml"
WRENCHES, PRESSES = "site_data/wrenches.yaml", "site_data/presses.yaml"
GAP = "is: 0.006 to 0.012 in"
HUBS = "is: {24-A: 18 long ton, 24-B: 22 long ton, 24-C: 26 long ton}"
FLAT = "    check: The tab is flat and the tag tied on."
COMPARE = "do: Compare the final advance with the friction band."

# Where, what stands there, what the mechanic wrote, and the answer: line from that of the slip, column, finding.
SLIPS = {
    "a letter for a nought": (CRANK, GAP, "is: 0.0O6 to 0.012 in",
        "+0:9: error: “0.0O6 to 0.012 in”: a letter inside a number, write the figures 0 and 1, not the letters O and l [quantity]"),
    "max behind the figure": (CRANK, GAP, "is: 0.012 in max",
        "+0:9: error: “0.012 in max”: a limit in other words, begin with at least, at most, over or under [quantity]"),
    "about": (CRANK, GAP, "is: about 0.009 in",
        "+0:9: error: “about 0.009 in”: a figure with no bounds, write the figure with its tolerance, such as 3.120 ± 0.030 in [quantity]"),
    "thru for to": (CRANK, GAP, "is: 0.006 thru 0.012 in",
        "+0:9: error: “0.006 thru 0.012 in”: a range in other words or signs, write “to” between the figures, such as 0.018 to 0.030 in [quantity]"),
    "a tolerance in per cent": (CRANK, GAP, "is: 0.009 in +/- 10 %",
        "+0:9: error: “0.009 in +/- 10 %”: a tolerance in per cent, write it in the unit of the figure, such as 3.120 ± 0.030 in [quantity]"),
    "how it was measured, in brackets": (CRANK, GAP, "is: 0.006 to 0.012 in (dry)",
        "+0:9: error: “0.006 to 0.012 in (dry)”: words in brackets behind the figure, write the figure alone; in a source what goes with it stands under 'condition:' [quantity]"),
    "to be done later": (CRANK, GAP, "is: TBD",
        "+0:9: error: “TBD” has no number, write the figure and its unit; 'not known yet' where nobody knows it; 'none' where there is deliberately none [quantity]"),
    "a dash for nothing": (CRANK, GAP, "is: -",
        "+0:9: error: '-' alone says nothing, write 'not known yet' for a figure that nobody knows, 'none' where nothing is needed [yaml]"),
    "no space after is:": (CRANK, GAP, "is:0.006 to 0.012 in",
        "+0:5: error: no space stands after 'is:', put a space after the colon [yaml]"),
    "plus or minus before an accuracy": (WRENCHES, "accuracy: 4 %", "accuracy: ±4 %",
        "+0:13: error: “±4 %”: a tolerance without its figure, write the figure before it, such as 3.120 ± 0.030 in, or the figure without ± [quantity]"),
    "a space between thousands": (PRESSES, "full scale: 10,000 psi", "full scale: 10 000 psi",
        "+0:19: error: “10 000 psi”: a space inside a number, leave it out; a comma before each three digits of a whole number, such as 1,100 [quantity]"),
    "a point for the comma of ten thousand": (PRESSES, "full scale: 10,000 psi", "full scale: 10.000 psi",
        "-2:5: error: the division (100 psi) is not smaller than the full scale (10.000 psi), read both off the instrument again; "
        "a point makes decimals, and 10.000 is ten [scale-in-order]"),
    "a figure in round brackets": (CRANK, COMPARE, "do: Compare the advance with (advance.window).",
        "+0:9: error: 'advance.window' is printed here as a word, and not as a figure, write it in braces: {advance.window} [reference-without-braces]"),
    "a figure in square brackets": (CRANK, COMPARE, "do: Compare the advance with [advance].",
        "+0:9: error: 'advance' is printed here as a word, and not as a figure, write it in braces: {advance} [reference-without-braces]"),
    "a ton in words": (CRANK, FLAT, "    check: The gauge stands at 18 tons.",
        "+0:12: error: 'tons' could be more than one size, write long ton (2,240 lb), short ton (2,000 lb) or tonne (1,000 kg) [measure-of-two-sizes]"),
    "braces twice": (CRANK, COMPARE, "do: Compare the advance with {{advance.window}}.",
        "+0:9: error: braces stand here one in the other, write each once, as in {spec} or {spec.role} [bad-reference]"),
    "a key joined to the words": (CRANK, COMPARE, "do: Compare the advance with the band note:then write it down.",
        "+0:43: error: 'note:' is read as more of the text before it, put a space after its colon and give it a line of its own (between { } a comma before it), or put quotes around the whole text [key-swallowed]"),
    "a hard space after the colon": (CRANK, FLAT, FLAT.replace(": ", ":\u00a0"),
        "+0:5: error: a space that is no plain one stands after 'check:', delete it and type a space [yaml]"),
    "an equals sign for the colon": (CRANK, FLAT, FLAT.replace(":", " ="),
        "+0:5: error: no colon stands after 'check', write 'check:' and a space [yaml]"),
    "a line that runs on at the margin": (CRANK, FLAT, FLAT.replace(" and the", "\nand the"),
        "+1:1: error: a line stands here that is neither a key with its value nor the rest of a text, indent it further than the key above, or give it a key [yaml]"),
    "the quotes of a word processor": (CRANK, FLAT, "    check: “Tab: flat”",
        '+0:16: error: \'“\' is a quote of a word processor, and no quote here, write the straight quotes \' or " around the whole text [yaml]'),
    "the braces forgotten": (CRANK, HUBS, HUBS.replace("{", "").replace("}", ""),
        "+0:17: error: several entries stand here without braces, put { before the first and } behind the last [yaml]"),
    "square brackets for braces": (CRANK, HUBS, HUBS.replace("{", "[").replace("}", "]"),
        "+0:13: error: a list stands here, write { and } for the brackets [ and ]: these are cases, not a list [wrong-shape]"),
    "a colon forgotten in braces": (CRANK, HUBS, HUBS.replace("24-A:", "24-A"),
        "+0:14: error: '24-A 18 long ton' has no value of its own, write '24-A: 18 long ton' [text-cut]"),
    "a comma forgotten in braces": (CRANK, HUBS, HUBS.replace("ton, 24-B", "ton 24-B"),
        "+0:36: error: a colon inside the text cuts it in two, put a comma where the next entry begins, or quotes around that text, or give it a line of its own [yaml]"),
    "a thousand in braces": (CRANK, HUBS, HUBS.replace("18 long ton", "40,000 lbf"),
        "+0:23: error: the comma cuts '40,000 lbf' in two, put quotes around the number with its unit [text-cut]"),
    "two sources without brackets": (CRANK, "source: [shop-practice p. 35, formulas]", "source: shop-practice p. 35, formulas",
        "+0:17: error: 'formulas' is read as a place in 'shop-practice', write several sources in brackets with commas: [shop-practice p. 35, formulas] [sources-in-one]"),
    "the machine by its title": (CRANK, "machine: type-24", "machine: Type 24",
        "+0:1: error: there is no machine 'Type 24', did you mean 'type-24'? [unknown-reference]"),
    "the 31st of February": (CRANK, "tried: desk", "tried: {serial: 1604, on: 2024-02-31}",
        "+0:27: error: '2024-02-31' is not a date, write a date such as 2024-05-11 [bad-date]"),
    "an entry left empty": (CRANK, "    - Degreaser\n", "    -\n",
        "+0:6: error: nothing stands here, write the keys of a part or supply: item, number, count, counted, one use, fate, note, picture, or take the line away [empty-value]"),
    "no space after a dash": (CRANK, "    - Degreaser\n    - Chalk", "    -Degreaser\n    -Chalk",
        "+0:5: error: '-Degreaser -Chalk' stands here, write a list with a dash and a space before each entry [wrong-shape]"),
}


@cache
def _files():
    return yaml_sources(ROOT, load_book.FOLDERS)


@pytest.fixture(scope="module", autouse=True)
def _trees_once():
    """Only one file differs in a case: the trees of the others need not be built again."""
    kept, load_book.read_tree = load_book.read_tree, lru_cache(maxsize=None)(load_book.read_tree)
    yield
    load_book.read_tree = kept


def answers(path: str, stands: str, wrote: str) -> list[str]:
    text = next(file.text for file in _files() if file.path == path)
    assert stands in text
    files = [SourceFile(path, text.replace(stands, wrote, 1)) if file.path == path else file for file in _files()]
    line = text.count("\n", 0, text.index(stands)) + 1
    found = proved(files, beside_sources(ROOT), partial(picture_file, ROOT)).findings
    return [f"{finding.place.line - line:+d}:{finding.place.column}: {finding.line().partition(': ')[2]}" if finding.place.path == path else finding.line()
            for finding in found]


@pytest.mark.parametrize("name", SLIPS)
def test_a_slip_is_answered_once_and_in_words(name):
    path, stands, wrote, *answer = SLIPS[name]
    assert answers(path, stands, wrote) == answer
