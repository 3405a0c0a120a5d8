"""Lists of numbers and words packed small, for the search index. `static/search/unpack.js` is the other half.

A list of some of N things is written as the gaps between their numbers in a Golomb code, which comes within a few percent
of the fewest bits possible for a list of that length (S. W. Golomb, Run-length encodings, IEEE Trans. Inf. Theory 12, 1966;
the parameter near 0.69 N / length is Gallager and Van Voorhis, same Transactions 21, 1975). A list of more than half is
written as the list of those it leaves out. Words in order are written as how many letters they share with the word before.
"""

from __future__ import annotations

from base64 import b64encode
from functools import lru_cache
from operator import sub
from os.path import commonprefix


@lru_cache(maxsize=65536)
def golomb(number: int, m: int) -> str:
    """Write a whole number, zero or more, in the Golomb code of parameter m, as a text of 0 and 1."""
    quotient, rest = divmod(number, m)
    width = (m - 1).bit_length()
    short = (1 << width) - m                        # so many rests are written with one bit less
    if width == 0:
        tail = ""
    elif rest < short:
        tail = f"{rest:0{width - 1}b}" if width > 1 else ""
    else:
        tail = f"{rest + short:0{width}b}"
    return "1" * quotient + "0" + tail


def golomb_parameter(length: int, total: int) -> int:
    """Return m for a list of `length` numbers below `total`, in whole-number arithmetic that a browser repeats exactly."""
    return max(1, (69 * total + 50 * length) // (100 * length))


def _bits(rising: list[int], total: int) -> str:
    if 2 * len(rising) > total:
        held = set(rising)
        rising = [number for number in range(total) if number not in held]
    if not rising:
        return ""
    m = golomb_parameter(len(rising), total)
    gaps = map(sub, rising, [-1, *rising])
    return "".join([golomb(gap - 1, m) for gap in gaps])


def packed_lists(lists: list[list[int]], totals: list[int]) -> list:
    """Return [the lengths, all lists as base64 of their bits]: each is a list of rising whole numbers below its total."""
    bits = "1" + "".join(map(_bits, lists, totals))
    bits += "0" * (-len(bits) % 8)                  # the leading 1 keeps leading zeros through the whole number
    data = int(bits, 2).to_bytes(len(bits) // 8, "big")
    return [list(map(len, lists)), b64encode(data).decode("ascii")]


def front_coded(terms: list[str]) -> str:
    coded, before = [], ""
    for term in terms:
        shared = min(len(commonprefix((before, term))), 9)
        coded.append(f"{shared}{term[shared:]}")
        before = term
    return " ".join(coded)
