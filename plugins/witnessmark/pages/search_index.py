"""The search index: the words, exact keys and figures of every procedure, packed small.

The whole book's postings go into one file that a phone fetches once (`search/index.json`); what is shown of a hit is
fetched for the shown hits alone (`search/<n>.json`). The text is cut into words here: the browser only unpacks, and cuts
titles and the reader's query by the same rules (`static/search/unpack.js`; a test holds the two together).
"""

from __future__ import annotations

import json
import math
import re
import unicodedata
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from operator import sub
from typing import NamedTuple

from .search_packing import front_coded, packed_lists

FORMAT = 1
LOG_STEPS = 1000                # a step is 0.1 %, well inside the 0.5 % within which a figure counts as the one asked for
OFTEN = 3                       # of how often a word stands in a procedure only "this often or more" is kept: topic or mention

STOP_WORDS = frozenset(
    "an and are as at be been but by for from had has have if in into is it its no not of on or so than that the their "
    "them then there these they this to was were when where which will with".split()
)                               # "off" is kept: it tells "press off" from "press on"

_COMPOUND = re.compile(r"\w+(?:['’-]\w+)*")
_JOINT = re.compile("['’-]")
_WITH_DIGIT = re.compile(r"#?[\w/-]*\d[\w/-]*")
_KEY_IN_TEXT = re.compile(
    r"""  \#?\d+(?:-\d+)?/\d+-\d+               # 3/4-16, 1-1/2-12
      | (?=.*[^\W\d_])\w+(?:[-/]\w+)*        # letters and digits: BP50, 6B-7789, 24-B, M12
    """,
    re.VERBOSE,
)
_DROPPED_FROM_KEYS = str.maketrans({character: None for character in "-‐‑‒–—−/⁄."} | {"×": "X"})


@dataclass(frozen=True)
class Line:
    """One line a search can land on: `anchor` is the id on the page (no `#`; empty for the top), `text` what is shown."""

    anchor: str
    text: str


@dataclass(frozen=True)
class Entry:
    """One procedure. `url` is relative to the site's root (`type-24/flycrank-press-on/`), `context` the machine's title.

    `keys` are (text as written, anchor, label): threads, part numbers, ids, tools. `figures` are (dimension, SI value,
    anchor, label): both ends of a range are two figures. Part numbers, threads and tool names that stand in `words`
    are found without being listed in `keys`; listing them gives a better label.
    """

    url: str
    title: str
    context: str
    words: tuple[Line, ...]
    keys: tuple[tuple[str, str, str], ...] = ()
    figures: tuple[tuple[str, float, str, str], ...] = ()


class SearchUnit(NamedTuple):
    """How a reader may type a unit: SI = value * factor + offset. One spelling may stand under several dimensions."""

    dimension: str
    factor: float
    spellings: tuple[str, ...]
    offset: float = 0.0


class Cut(NamedTuple):
    """One procedure cut into what is filed of it: how often each term stands in it, normal keys, steps of figures by list."""

    url: str
    title: str
    context: str
    terms: dict[str, int]
    keys: frozenset[str]
    figures: frozenset[tuple[str, int]]
    excerpt: str


def cut(entry: Entry) -> Cut:
    terms, found = counted_terms("\n".join([entry.context, *[line.text for line in entry.words]]))
    written = {key_text for key_text, _, _ in entry.keys}.union(found, counted_terms(entry.title)[1])
    return Cut(entry.url, entry.title, entry.context, terms, frozenset(map(normal_key, written)) - {""},
               frozenset(figure_step(dimension, si) for dimension, si, _, _ in entry.figures), _json(_excerpt(entry)))


def build_index(entries: Iterable[Entry], units: Iterable[tuple]) -> dict[str, str]:
    """Return the files to publish, path -> JSON text: `search/index.json` and one `search/<n>.json` for each entry.

    `units` are `SearchUnit`s or plain tuples of the same shape (the offset may be left out). The same entries in the
    same order give the same bytes.
    """
    return filed([cut(entry) for entry in entries], units)


def filed(cuts: Sequence[Cut], units: Iterable[tuple]) -> dict[str, str]:
    """The same of entries that were cut before."""
    words: dict[str, list[int]] = {}
    often: dict[str, list[int]] = {}
    keys: dict[str, list[int]] = {}
    figures: dict[str, dict[int, list[int]]] = {}
    lengths: list[int] = []
    files: dict[str, str] = {}
    for number, entry in enumerate(cuts):
        lengths.append(len(entry.terms))
        for term, count in entry.terms.items():
            held = words.setdefault(term, [])
            if count >= OFTEN:
                often.setdefault(term, []).append(len(held))
            held.append(number)
        for key in entry.keys:
            keys.setdefault(key, []).append(number)
        for dimension, step in entry.figures:
            figures.setdefault(dimension, {}).setdefault(step, []).append(number)
        files[f"search/{number}.json"] = entry.excerpt
    contexts = list(dict.fromkeys(entry.context for entry in cuts))
    place = {context: number for number, context in enumerate(contexts)}
    total = len(cuts)
    terms = sorted(words)
    files["search/index.json"] = _json(
        {
            "format": FORMAT,
            "contexts": contexts,
            "procedures": [[entry.url, entry.title, place[entry.context]] for entry in cuts],
            "lengths": lengths,
            "stop": sorted(STOP_WORDS),
            "words": {
                "terms": front_coded(terms),
                "in": packed_lists([words[term] for term in terms], [total] * len(terms)),
                "often": packed_lists([often.get(term, []) for term in terms], [len(words[term]) for term in terms]),
            },
            "keys": {
                "terms": front_coded(sorted(keys)),
                "in": packed_lists([keys[key] for key in sorted(keys)], [total] * len(keys)),
            },
            "figures": {dimension: _packed_figures(figures[dimension], total) for dimension in sorted(figures)},
            "units": _unit_rows(units),
        }
    )
    return files


def counted_terms(text: str) -> tuple[dict[str, int], set[str]]:
    """Return ({search term: how often}, {what looks like a key, as written}) of a text.

    Terms are lower case, accents off, plural off; `fly-crank` gives fly, crank and flycrank. What looks like a key is a
    thread, a part number or a tool's name: `3/4-16`, `6B-7789`, `BP50`; those are no terms, nor are numbers.
    """
    counts: dict[str, int] = {}
    keys: set[str] = set()
    for chunk, count in Counter(text.split()).items():
        terms, found = _read_chunk(chunk)
        for term in terms:
            counts[term] = counts.get(term, 0) + count
        keys.update(found)
    return counts, keys


@lru_cache(maxsize=1 << 17)
def _read_chunk(chunk: str) -> tuple[tuple[str, ...], tuple[str, ...]]:
    keys = [found for found in _WITH_DIGIT.findall(chunk) if _KEY_IN_TEXT.fullmatch(found)]
    terms: list[str] = []
    if not chunk.isascii():
        chunk = "".join(c for c in unicodedata.normalize("NFKD", chunk) if not unicodedata.combining(c))
    for compound in _COMPOUND.findall(chunk.lower()):
        every = _JOINT.split(compound)
        parts = [part for part in every if part.isalpha()]
        terms += [_singular(part) for part in parts if len(part) > 1 and part not in STOP_WORDS]
        if len(parts) == len(every) == 2:
            terms.append(_singular("".join(parts)))
    return tuple(terms), tuple(keys)


def _singular(word: str) -> str:
    if len(word) < 4 or not word.endswith("s") or word.endswith(("ss", "us", "is")):
        return word
    if word.endswith("ies"):
        return word[:-3] + "y"
    return word[:-2] if word.endswith(("shes", "ches", "xes", "sses")) else word[:-1]


def normal_key(text: str) -> str:
    """Return the form under which keys meet: upper case; no space, dash, slash or dot (`6B-7789` and `6b 7789` are one)."""
    return "".join(text.translate(_DROPPED_FROM_KEYS).split()).upper()


def figure_step(dimension: str, si: float) -> tuple[str, int]:
    """Return (list, step) under which a figure is filed: zero and below zero have lists of their own, `x0` and `x-`."""
    if si == 0:
        return dimension + "0", 0
    return dimension + ("-" if si < 0 else ""), round(math.log(abs(si)) * LOG_STEPS)


def _packed_figures(steps: Mapping[int, list[int]], total: int) -> list:
    rising = sorted(steps)
    gaps = list(map(sub, rising, [rising[0], *rising]))
    return [rising[0], gaps, *packed_lists([steps[step] for step in rising], [total] * len(rising))]


def _unit_rows(units: Iterable[tuple]) -> list[list]:
    rows = []
    for unit in map(SearchUnit._make, ((*row, 0.0)[:4] for row in units)):
        spellings = sorted({normal_unit(spelling) for spelling in unit.spellings})
        rows.append([unit.dimension, float(unit.factor), float(unit.offset), spellings])
    return sorted(rows)


def normal_unit(spelling: str) -> str:
    """Return the form under which spellings of a unit meet: `lbf·ft`, `LBF-FT` and `lbf ft` are one."""
    return re.sub(r"[\s·⋅*.^-]", "", spelling.replace("²", "2").replace("³", "3")).lower()


def _excerpt(entry: Entry) -> dict:
    # The url lets the browser see that an excerpt of another build answered, and leave it out.
    return {
        "url": entry.url,
        "lines": [[line.anchor, line.text] for line in entry.words],
        "keys": [list(key) for key in entry.keys],
        "figures": [[dimension, float(f"{si:.7g}"), anchor, label] for dimension, si, anchor, label in entry.figures],
    }


def _json(value) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))
