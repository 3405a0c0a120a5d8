"""The search index: what it holds, how small it is, and that the same book gives the same bytes.

That the browser reads it back is tested in tests/browser/test_search.py, with the scripts themselves.
"""

import gzip
import hashlib
import json
import math
import random
from pathlib import Path

import pytest

import witnessmark
from witnessmark.pages.search_index import Entry, Line, SearchUnit, build_index, counted_terms, figure_step, normal_key, normal_unit
from witnessmark.pages.search_packing import front_coded, golomb, golomb_parameter, packed_lists

STATIC = Path(witnessmark.__file__).parent / "pages" / "static" / "search"
UNITS = [("torque", 1.3558179483314004, ("lbf·ft", "lb-ft")), SearchUnit("temperature", 5 / 9, ("°F",), 459.67 * 5 / 9)]
BOOK = [
    Entry(
        "mill/press/", "Press the fly-crank", "Saw mill",
        (Line("s1", "Press with BP50, stud 1-1/2-8 in."), Line("s2", "Tab 6B-7789 flat; tab dry; tab seated.")),
        (("crank-nut", "s2", "Crank nut"),),
        (("torque", 623.676, "s2", "Nut 460 lbf·ft"), ("torque", 0.0, "s2", "No drag"), ("torque", -5.0, "s1", "Back off")),
    ),
    Entry("mill/draw/", "Draw it off 6B-7790", "Saw mill", (Line("", "Draw."),)),
]


@pytest.mark.parametrize("number, m, code", [
    (42, 10, "11110010"),                       # the usual worked example of a Golomb code, from memory
    (6, 10, "01100"), (9, 10, "01111"), (0, 3, "00"), (2, 3, "011"), (3, 3, "100"), (9, 4, "11001"), (2, 1, "110"), (1, 2, "01"),
])
def test_golomb_codes(number, m, code):
    assert golomb(number, m) == code


@pytest.mark.parametrize("m", [1, 2, 3, 5, 7, 8, 10, 64, 69])
def test_golomb_codes_are_complete_and_none_begins_another(m):
    """Kraft: the shares of a code that wastes no bit sum to one; the first q rounds leave 2**-q of it."""
    codes = [golomb(number, m) for number in range(m * 20)]
    assert sum(2.0 ** -len(code) for code in codes) == pytest.approx(1 - 2.0**-20, abs=1e-12)
    codes.sort()
    assert not [pair for pair in zip(codes, codes[1:]) if pair[1].startswith(pair[0])]


@pytest.mark.parametrize("length", [1, 10, 100, 300, 700, 990])
def test_a_list_takes_little_more_than_the_fewest_bits_possible(length):
    """log2 of the number of lists of that length is the least any code can take on average (Shannon)."""
    rng = random.Random(7)
    lists = [sorted(rng.sample(range(1000), length)) for _ in range(200)]
    least = 200 * (math.lgamma(1001) - math.lgamma(length + 1) - math.lgamma(1001 - length)) / math.log(2)
    taken = 6 * len(packed_lists(lists, [1000] * 200)[1].rstrip("="))
    assert least <= taken <= 1.16 * least


def test_golomb_parameter_is_near_the_half_life_of_the_gaps():
    # m with p = (1 - share)**m nearest a half (Gallager and Van Voorhis 1975), for rare words
    for length in (1, 5, 20, 50):
        half_life = math.log(0.5) / math.log(1 - length / 1000)
        assert golomb_parameter(length, 1000) == pytest.approx(half_life, rel=0.05, abs=0.6)


def test_words_share_their_beginnings():
    assert front_coded(["bolt", "bolted", "bore", "crank"]) == "0bolt 4ed 2re 0crank"
    assert front_coded(["extraordinary", "extraordinarily"]) == "0extraordinary 9narily"  # one digit says how many


@pytest.mark.parametrize("text, terms", [
    ("fly-crank", {"fly", "crank", "flycrank"}),
    ("Springs, bushes, boxes and bodies; glass, radius, axis", {"spring", "bush", "box", "body", "glass", "radius", "axis"}),
    ("Façade naïve", {"facade", "naive"}),
    ("Press it on the 24-B with 3/4-16, 0.018 in", {"press"}),
    ("front-to-back", {"front", "back"}),
    ("press off", {"press", "off"}),
])
def test_terms(text, terms):
    assert set(counted_terms(text)[0]) == terms


@pytest.mark.parametrize("text, keys", [
    ("Nut (3/4-16), stud 1-1/2-12.", {"3/4-16", "1-1/2-12"}),
    ("tab 6B-7789, press BP50; 24-B only", {"6B-7789", "BP50", "24-B"}),
    ("0.003-0.006 in, 1/2 in, 24-28, 2024-05-11, S4 p. 36", {"S4"}),
    ("screw #10-32", set()),                    # a thread without a letter or a fraction must be listed as a key
])
def test_keys_in_text(text, keys):
    assert counted_terms(text)[1] == keys


def test_keys_and_units_meet_however_they_are_typed():
    assert {normal_key(key) for key in ("6B-7789", "6b7789", "6b 77.89", "6B–7789", "6b\u00a07789")} == {"6B7789"}
    assert normal_key("3/4-16") != normal_key("3/4-10")
    assert {normal_unit(unit) for unit in ("lbf·ft", "LBF-FT", "lbf ft", "lbf.ft")} == {"lbfft"}


def test_figures_are_filed_by_their_size_and_their_sign():
    assert figure_step("torque", 0.0)[0] != figure_step("torque", 1.0)[0] != figure_step("torque", -1.0)[0]
    near, asked, off = (figure_step("torque", si)[1] for si in (623.68, 624.0, 650.0))
    assert asked - near <= 1 and 40 <= off - near <= 43  # ln(650 / 623.68) = 0.0413


def test_what_the_index_holds():
    files = build_index(BOOK, UNITS)
    assert sorted(files) == ["search/0.json", "search/1.json", "search/index.json"]
    index = json.loads(files["search/index.json"])
    assert index["procedures"] == [["mill/press/", "Press the fly-crank", 0], ["mill/draw/", "Draw it off 6B-7790", 0]]
    assert index["contexts"] == ["Saw mill"]
    assert index["units"] == [
        ["temperature", 5 / 9, pytest.approx(255.372222), ["°f"]],      # 0 °F, by scipy.constants.convert_temperature too
        ["torque", 1.3558179483314004, 0.0, ["lbfft", "lbft"]],
    ]
    assert index["keys"]["terms"] == "01128 06B7789 490 0BP50 0CRANKNUT"  # the title's part number too
    assert sorted(index["figures"]) == ["torque", "torque-", "torque0"]
    excerpt = json.loads(files["search/0.json"])
    assert excerpt["url"] == "mill/press/"
    assert excerpt["lines"][1] == ["s2", "Tab 6B-7789 flat; tab dry; tab seated."]
    assert excerpt["keys"] == [["crank-nut", "s2", "Crank nut"]]
    assert excerpt["figures"][0] == ["torque", 623.676, "s2", "Nut 460 lbf·ft"]


def test_the_same_book_gives_the_same_bytes_and_an_empty_one_gives_some():
    assert build_index(BOOK, UNITS) == build_index(list(BOOK), iter(UNITS))
    assert list(build_index([], [])) == ["search/index.json"]


def test_a_thousand_procedures_fit_the_budget():
    """300 kB compressed, though no two of a thousand procedures share a sentence."""
    rng = random.Random(11)
    syllables = [a + b for a in ("b", "d", "f", "gr", "k", "l", "m", "p", "st", "t") for b in ("a", "en", "i", "or", "u")]
    vocabulary = sorted({"".join(rng.choices(syllables, k=rng.randint(2, 4))) for _ in range(2000)})
    weights = [1 / (rank + 5) for rank in range(len(vocabulary))]       # Zipf's law
    entries, sentences = [], []
    for number in range(1000):
        lines = [" ".join(rng.choices(vocabulary, weights, k=12)) for _ in range(50)]
        sentences += lines
        keys = [f"{rng.randint(1, 99)}B-{rng.randint(1000, 9999)}" for _ in range(6)]
        figures = [(rng.choice(["force", "torque", "length"]), 10 ** rng.uniform(-3, 4), "f", "a label") for _ in range(15)]
        entries.append(Entry(
            f"machine-{number // 50}/{rng.choice(vocabulary)}-{number}/", " ".join(rng.choices(vocabulary, k=4)), f"Machine {number // 50}",
            tuple(Line(f"s{at}", line) for at, line in enumerate(lines)), tuple((key, "k", "a part") for key in keys), tuple(figures),
        ))
    assert len(set(sentences)) == len(sentences)
    index = build_index(entries, UNITS)["search/index.json"]
    assert len(gzip.compress(index.encode())) < 300_000


def test_the_library_is_the_one_named():
    version = (STATIC / "minisearch.VERSION.txt").read_text(encoding="utf-8")
    assert hashlib.sha256((STATIC / "minisearch.js").read_bytes()).hexdigest() in version
    assert "MIT" in version and "Permission is hereby granted" in (STATIC / "minisearch.LICENSE.txt").read_text(encoding="utf-8")


def test_both_halves_name_the_same_format_and_steps():
    script = (STATIC / "find.js").read_text(encoding="utf-8")
    index = json.loads(build_index([], [])["search/index.json"])
    assert f"const FORMAT = {index['format']};" in script
    assert f"const LOG_STEPS = {round(figure_step('torque', math.e)[1])};" in script
