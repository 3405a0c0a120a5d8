"""Measures a cold build of a made-up book against the same words as plain pages, one after the other on this machine.

    python benchmarks/bench.py --sizes 250 1000
    python benchmarks/bench.py --sizes 250 --profile

witnessmark   N YAML procedures: checked, computed, each set as a page and its sheet, our search
plain         the same words typed as 2 N Markdown pages (page, checklist): the Material theme with its own search
check         `witnessmark check` on the same YAML, no pages
"""

import argparse
import gzip
import os
import pstats
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path

from make_book import make_books

PYTHON = sys.executable
BUILD = [PYTHON, "-m", "mkdocs", "build", "--quiet"]
CHECK = [str(Path(PYTHON).with_name("witnessmark")), "check"]


@dataclass(frozen=True)
class Run:
    """`wall` and `processor` in seconds, `memory` the peak in MB."""

    wall: float
    processor: float
    memory: float


# Where each kind of page stands in either site.
PAGES = {
    "witnessmark": ("machine-*/job-*/index.html", "machine-*/job-*/sheet/*/index.html"),
    "plain": ("machine-*/job-????/index.html", "machine-*/job-*-checklist/index.html"),
}


def measured(command: list[str], folder: Path) -> Run:
    """Runs it in a process of its own; its peak memory and processor time are the kernel's count for that child."""
    environment = {**os.environ, "NO_MKDOCS_2_WARNING": "1"}
    with tempfile.TemporaryFile() as said:
        began = time.perf_counter()
        child = subprocess.Popen(command, cwd=folder, env=environment, stdout=said, stderr=subprocess.STDOUT)
        _, status, usage = os.wait4(child.pid, 0)
        wall = time.perf_counter() - began
        child.returncode = os.waitstatus_to_exitcode(status)
        if child.returncode:
            said.seek(0)
            sys.exit(f"{' '.join(command)} failed in {folder}:\n{said.read().decode()[-3000:]}")
    scale = 1024 * 1024 if sys.platform == "darwin" else 1024
    return Run(wall, usage.ru_utime + usage.ru_stime, usage.ru_maxrss / scale)


def middle(site: Path, pattern: str) -> list[Path]:
    """The page of median weight among those that match; [] when there is none."""
    pages = sorted(site.glob(pattern), key=lambda page: (page.stat().st_size, page))
    return pages[len(pages) // 2 : len(pages) // 2 + 1]


def raw(files: list[Path]) -> float:
    return sum(file.stat().st_size for file in files) / 1e3


def packed(files: list[Path]) -> float:
    return sum(len(gzip.compress(file.read_bytes(), 9)) for file in files) / 1e3


def compare(folder: Path, size: int, repeat: int) -> dict[str, Run]:
    """Prints one size and gives the runs back, the least processor time of each when repeated."""
    make_books(folder, size, seed=1)
    jobs = {"witnessmark": (BUILD, folder / "witnessmark"), "plain": (BUILD, folder / "plain"), "check": (CHECK, folder / "witnessmark")}
    runs: dict[str, list[Run]] = {name: [] for name in jobs}
    for _ in range(repeat):                    # in turn, so that a busy moment does not fall on one side alone
        for name, (command, where) in jobs.items():
            runs[name].append(measured(command, where))
    best = {name: min(several, key=lambda run: run.processor) for name, several in runs.items()}
    show(folder, size, best)
    return best


def show(folder: Path, size: int, best: dict[str, Run]) -> None:
    sources = [file.stat().st_size for file in (folder / "witnessmark" / "procedures").rglob("*.yaml")]
    print(f"\n{size} procedures, {sum(sources) / len(sources) / 1e3:.1f} kB of YAML each")
    print(f"  {'':12} {'wall s':>8} {'processor s':>12} {'peak MB':>8}")
    for name, run in best.items():
        print(f"  {name:12} {run.wall:8.2f} {run.processor:12.2f} {run.memory:8.0f}")
    ours, plain = best["witnessmark"], best["plain"]
    print(f"  {'ours / plain':12} {ours.wall / plain.wall:8.2f} {ours.processor / plain.processor:12.2f} {ours.memory / plain.memory:8.2f}")
    print("  kB raw / gzip   files  median page       checklist         search data       of it to begin")
    for name, patterns in PAGES.items():
        site = folder / name / "site"
        data = sorted((site / "search").rglob("*.json"))
        begin = [file for file in data if file.stem in {"index", "search_index"}]
        weights = [middle(site, pattern) for pattern in patterns] + [data, begin]
        columns = "  ".join(f"{raw(files):7.1f} / {packed(files):6.1f}" for files in weights)
        print(f"  {name:12} {len(list(site.rglob('*.html'))):8}  {columns}")


def growth(results: dict[int, dict[str, Run]]) -> None:
    """Processor time a procedure more, between the smallest and the largest book: start-up falls out."""
    small, large = min(results), max(results)
    if small == large:
        return
    print(f"\nFrom {small} to {large} procedures ({large / small:g} times)")
    for name in results[small]:
        less, more = results[small][name].processor, results[large][name].processor
        print(f"  {name:12} {more / less:5.2f} times the processor time, {(more - less) / (large - small) * 1e3:6.2f} ms a procedure more")


def profile(folder: Path, size: int) -> None:
    make_books(folder, size, seed=1)
    into = folder / "profile"
    command = [PYTHON, "-m", "cProfile", "-o", str(into), "-m", "mkdocs", "build", "--quiet"]
    print(f"\nOur build of {size} procedures under the profiler, {measured(command, folder / 'witnessmark').wall:.1f} s")
    stats = pstats.Stats(str(into))
    stats.sort_stats("cumulative").print_stats("witnessmark", 25)
    stats.sort_stats("tottime").print_stats(25)


def main() -> None:
    asked = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    asked.add_argument("--sizes", type=int, nargs="+", default=[250, 1000], help="procedures in a book")
    asked.add_argument("--repeat", type=int, default=1, help="times each; the one with the least processor time is shown")
    asked.add_argument("--profile", action="store_true", help="profile our build of the first size instead")
    asked.add_argument("--keep", type=Path, help="leave the books and sites in this folder")
    given = asked.parse_args()
    print(__doc__.split("\n\n")[-1].rstrip())
    with tempfile.TemporaryDirectory() as passing:
        root = given.keep or Path(passing)
        if given.profile:
            profile(root / "profiled", given.sizes[0])
            return
        warm_up(root / "warm")
        growth({size: compare(root / str(size), size, given.repeat) for size in given.sizes})


def warm_up(folder: Path) -> None:
    """One small build of each first, so that neither side pays for compiling Python's modules."""
    make_books(folder, 3, seed=1)
    for name in ("witnessmark", "plain"):
        measured(BUILD, folder / name)


if __name__ == "__main__":
    main()
