"""Spoils the demonstration's sources in every way a slip, a bad disk or a hostile hand may, and proves two things of each:
nothing is raised, and where nothing is found wrong every number is read as it is written.

    python tests/fuzz.py --mutations 100000 --seed 1      all of them, on every core
    python tests/fuzz.py --seed 1 --run 4711              one run again, with what was spoilt

A run spoils one place or two in each of several files. Its randomness hangs on seed and run alone.
"""

import argparse
import dataclasses
import difflib
import multiprocessing
import os
import re
import sys
import traceback
from collections import Counter
from fractions import Fraction
from functools import cache, lru_cache
from pathlib import Path
from random import Random

from witnessmark.build import render
from witnessmark.prove import Checked
from witnessmark.core.place import Place
from witnessmark.core.quantity import Quantity
from witnessmark.core.variation import Case
from witnessmark.loading import load_book as loading
from witnessmark.loading.source_files import EDITIONS, SourceFile, as_source, yaml_sources
from witnessmark.loading.yaml_tree import Mapping, Scalar, read_tree
from witnessmark.rules.table import check_book
from witnessmark.workings.derive import derive_book

ROOT = Path(__file__).parent.parent
SIGNS = list("#:{}[]'\"*&!|>%@`,-?~<=.\\/ \t\n\r\0") + [": ", " #", "- ", "---\n", "\u202e", "\u200b", "\ufeff", "–", "½", "٣", "５",
                                                     "é", "e", "E", "0", "1", "9", ",000", ".0", "±", "{x}", "<<: ", "!!int ", "\x85"]
WORDS = ["none", "not known yet", "null", "~", "yes", "no", "0", "-1", "1e999", "nan", "inf", "9**9**9", "1/0", "0x10", "1_000", "5:30",
         "1,100 psi", "{}", "[]", "''", '"\\u0035"', "&a x", "*a", "{a: b}", "[a, b]", "9" * 4000, "x" * 4000, "<script>", "> 3 in",
         "at least 0 in", "0 to 0 in", "2 long ton", "5 ton", "M12", "1-14 UNF", "up to 5", "from 1", "serials 5 to 1", "../../x"]


@cache
def demo() -> tuple[SourceFile, ...]:
    return tuple(yaml_sources(ROOT, loading.FOLDERS))


# One file in five is spoilt in a run: the trees of the others need not be built again.
_kept_tree = lru_cache(maxsize=64)(read_tree)


def _tree_of(path: str, text: str):
    return _kept_tree(path, text) if SourceFile(path, text) in demo() else read_tree(path, text)


def spoilt(random: Random) -> dict[str, SourceFile]:
    """By path: the files of one run that differ from the demonstration's."""
    procedures = [file for file in demo() if file.path.startswith("procedures/")]
    data = [file for file in demo() if not file.path.startswith(("procedures/", EDITIONS))]
    editions = [file for file in demo() if file.path.startswith(EDITIONS)]
    chosen = procedures if random.random() < 0.7 else random.sample(data, 3)
    chosen = [*chosen, random.choice(editions)] if random.random() < 0.2 else chosen
    found = {}
    for file in chosen:
        text = file.text
        for _ in range(random.choice((1, 1, 1, 2, 3))):
            text = random.choice(MUTATIONS)(random, text)
        raw = text.encode("utf-8", "replace")
        if random.random() < 0.05:
            at = random.randrange(len(raw) + 1)
            raw = raw[:at] + bytes([random.randrange(256)]) + raw[at + random.randrange(2):]
        found[file.path] = as_source(file.path, raw)
    return found


def _sign(random: Random, text: str) -> str:
    at = random.randrange(len(text) + 1)
    return text[:at] + random.choice(("", random.choice(SIGNS))) + text[at + random.randrange(3):]


def _line(random: Random, text: str) -> str:
    lines = text.split("\n")
    at, to = random.randrange(len(lines)), random.randrange(len(lines))
    match random.randrange(8):
        case 0:
            del lines[at]
        case 1:
            lines.insert(to, lines[at])
        case 2:
            lines[at], lines[to] = lines[to], lines[at]
        case 3:
            lines[at] = " " * random.randrange(1, 4) + lines[at]
        case 4:
            lines[at] = lines[at][random.randrange(1, 4):]
        case 5 if at + 1 < len(lines):
            lines[at:at + 2] = [lines[at] + random.choice(("", " ", ", ", " # ")) + lines[at + 1].strip()]
        case 6:
            lines = lines[:at]
        case _:
            cut = random.randrange(len(lines[at]) + 1)
            lines[at:at + 1] = [lines[at][:cut], " " * random.randrange(12) + lines[at][cut:]]
    return "\n".join(lines)


_TOKEN = re.compile(r"[0-9][0-9.,/-]*|[A-Za-z·°²%]+(?: [a-z]+)*|[{}\[\],:]")


def _token(random: Random, text: str) -> str:
    tokens = list(_TOKEN.finditer(text))
    if not tokens:
        return text
    one, other = random.choice(tokens), random.choice(tokens)
    put = random.choice(("", other[0], random.choice(WORDS), one[0] + other[0], one[0] + random.choice(SIGNS), random.choice(SIGNS) + one[0]))
    return text[:one.start()] + put + text[one.end():]


def _number(random: Random, text: str) -> str:
    numbers = list(re.finditer(r"[0-9][0-9.,/]*", text))
    if not numbers:
        return text
    one = random.choice(numbers)
    at = random.randrange(one.start(), one.end() + 1)
    put = random.choice((random.choice("0123456789"), random.choice(SIGNS), " ", "\n        "))
    return text[:at] + put + text[at + random.randrange(2):]


def _value(random: Random, text: str) -> str:
    values = list(re.finditer(r"(?<=: )[^\n{\[]+?(?=[,}\n])", text))
    if not values:
        return text
    one, other = random.choice(values), random.choice(values)
    return text[:one.start()] + random.choice((random.choice(WORDS), other[0], "", f"'{one[0]}'", f'"{one[0]}"', f">\n  {one[0]}")) + text[one.end():]


MUTATIONS = (_sign, _line, _token, _number, _value)


def run(seed: int, number: int) -> tuple[int, int, list[str]]:
    """How many files were spoilt, how many of them without a finding, and what went wrong."""
    random = Random(f"{seed}-{number}")
    changed = spoilt(random)
    files = [changed.get(file.path, file) for file in demo()]
    kept, loading.read_tree = loading.read_tree, _tree_of
    try:
        book, found = loading.load_book(files)
        derived, more = derive_book(book)
        findings = sorted({*found, *more, *check_book(book, derived)})
        lines = [finding.line() for finding in findings]
        if number % 50 == 0 and not any(finding.severity == "error" for finding in findings):
            render(Checked(book, derived, tuple(findings)), "Book", "book", None)
    except Exception:                                     # whatever it is, it is what is looked for
        return len(changed), 0, [f"run {number}: {traceback.format_exc()}"]
    finally:
        loading.read_tree = kept
    wrong = [f"run {number}: a finding is not one line: {line[:200]!r}" for line in lines if "\n" in line or len(line) > 3000]
    places = {finding.place.path for finding in findings}
    silent = [file for path, file in changed.items() if path not in places and not path.startswith(EDITIONS)]      # a line taken out whole is not seen
    for file in silent:
        wrong += [f"run {number}: {file.path}: {said}" for said in differing(book, file)]
    return len(changed), len(silent), wrong


def differing(book, file: SourceFile) -> list[str]:
    """Numbers and words of one file without a finding that the book does not hold as they are written there."""
    records = records_of(book, file.path)
    if records is None:
        return ["nothing was read and nothing said"]
    said = []
    texts: list[str] = []
    for value, place in gathered(records, None):
        if isinstance(value, Quantity):
            if place is not None and not stands_at(value.text, file.text, place):
                said.append(f"{value.text!r} does not stand at {place}")
            if place is None and " ".join(value.text.split()) not in " ".join(file.text.split()):
                said.append(f"{value.text!r} does not stand in the file")
            if (value.low, value.high) != naive(value):
                said.append(f"{value.text!r} was read as {value.low} to {value.high}, not {naive(value)}")
            texts.append(value.text)
        else:
            texts.append(str(value))
    written = Counter(re.findall("[0-9]+", without_notes(file.text)))
    missing = written - Counter(re.findall("[0-9]+", "\n".join(texts)))
    missing += Counter(re.findall(r"\w+", "\n".join(values_of(read_tree(file.path, file.text)[0])))) - Counter(re.findall(r"\w+", "\n".join(texts)))
    lost = {word: times for word, times in missing.items() if word not in ("yes", "no", "none", "desk")}
    return said + ([f"written and not read: {lost}"] if lost else [])


def records_of(book, path: str):
    parts = path.removesuffix(".yaml").split("/")
    match parts:
        case ["procedures", folder, name]:
            return next((p for (_, key), p in book.procedures.items() if key == name and p.place.path == path), None)
        case ["site_data", "machines", name]:
            return book.machines.get(name)
    return getattr(book, parts[-1])


def gathered(value, place: Place | None):
    """Every text and number below a record, each with the place of its case where it has one."""
    if isinstance(value, Quantity | str | int) and not isinstance(value, bool):
        yield value, place
    elif isinstance(value, Place):
        return
    elif isinstance(value, dict):
        for key, below in value.items():
            yield from gathered(key, None)
            yield from gathered(below, place)
    elif isinstance(value, list | tuple | frozenset):
        for below in value:
            yield from gathered(below, place)
    elif dataclasses.is_dataclass(value):
        inner = value.place if isinstance(value, Case) else place
        for field in dataclasses.fields(value):
            if field.name != "key_places":
                yield from gathered(getattr(value, field.name), inner)


def stands_at(words: str, text: str, place: Place) -> bool:
    """Whether the words, and nothing more, are the value that begins at the place."""
    lines = text.split("\n")
    rest = "\n".join([lines[place.line - 1][place.column - 1:], *lines[place.line:place.line + 12]])
    pattern = r"\s+".join(re.escape(word) for word in words.split())
    if rest[:1] in ("'", '"'):
        rest = rest.replace("''", "'").replace('\\"', '"')
        return re.match(rf"['\"]\s*{pattern}\s*['\"]", rest) is not None
    return re.match(rf"(?:[>|][^\n]*\n\s*)?{pattern}[ \t\r]*(?=\n|$|[,\]}}]|#)", rest) is not None


def naive(quantity: Quantity) -> tuple[Fraction | None, Fraction | None]:
    """The ends of a quantity, read a second time by simpler means: its numbers in order, its form by the words between."""
    text = re.sub(r"(?<=[A-Za-z^])[23](?![0-9])", "", quantity.text.replace(",", "").replace("−", "-"))
    numbers = [sum(map(Fraction, found.split("-"))) if "/" in found else Fraction(found)
               for found in re.findall(r"[0-9]+-[0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9]*\.[0-9]+|[0-9]+", text)]
    first = -numbers[0] if re.match(r"\D*-", text) else numbers[0]
    if "±" in text or "+/-" in text:
        return first - numbers[1], first + numbers[1]
    if "+" in text:
        return first - numbers[2], first + numbers[1]
    if " to " in text:
        return first, -numbers[1] if re.search(r" to -", text) else numbers[1]
    if ":" in text:
        return numbers[0] / numbers[1], numbers[0] / numbers[1]
    if re.match("(?i)at least|over", text):
        return first, None
    if re.match("(?i)at most|under", text):
        return None, first
    return first, first


def values_of(node):
    if type(node) is Scalar:
        yield node.text
    for below in [value for _, value in node.entries] if type(node) is Mapping else getattr(node, "items", ()):
        yield from values_of(below)


def without_notes(text: str) -> str:
    """Without what a reader too would take for a note: a # with a space after it, or on a line of its own."""
    return re.sub(r"(?m)(^[ \t]*#(?![0-9])|[ \t]##*(?=\s))[^\n]*", "", text)


def _one(job: tuple[int, int]):
    return run(*job)


def main() -> int:
    asked = argparse.ArgumentParser(description=__doc__.partition("\n\n")[0])
    asked.add_argument("--mutations", type=int, default=100_000)
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--run", type=int, help="one run only, with what it spoils")
    asked.add_argument("--jobs", type=int, default=os.cpu_count())
    args = asked.parse_args()
    if args.run is not None:
        for path, file in spoilt(Random(f"{args.seed}-{args.run}")).items():
            before = next(old.text for old in demo() if old.path == path)
            print(*difflib.unified_diff(before.split("\n"), file.text.split("\n"), path, path, n=1, lineterm=""), file.problem or "", sep="\n")
        print(*run(args.seed, args.run)[2], sep="\n")
        return 0
    done = silent = number = failed = 0
    with multiprocessing.Pool(args.jobs) as pool:
        for number, (files, quiet, wrong) in enumerate(pool.imap(_one, ((args.seed, n) for n in range(args.mutations)), 20)):
            done, silent = done + files, silent + quiet
            for line in wrong:
                print(line)
            failed += len(wrong)
            if number % 500 == 0:
                print(f"{done:>7,} of {args.mutations:,} mutations, {silent:,} without a finding, {failed} wrong", flush=True)
            if done >= args.mutations:
                break
        pool.terminate()
    print(f"{done:,} mutations in {number + 1:,} runs of seed {args.seed}: {silent:,} without a finding, {failed} wrong")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
