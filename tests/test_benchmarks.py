"""The benchmark's book is a sound book in which no sentence is said twice: else what it measures means little."""

import subprocess
import sys
from collections import Counter

import pytest
from make_book import as_yaml, made_book, make_books


def test_no_sentence_is_said_twice():
    said = Counter(text for one in made_book(120, seed=1) for step in one.steps for text in step[1:])
    assert len(said) == 120 * 2 * len(made_book(1, seed=1)[0].steps)


def test_a_procedure_weighs_what_the_budgets_assume():
    sizes = [len(as_yaml(one).encode()) for one in made_book(50, seed=1)]
    assert 6000 < sum(sizes) / len(sizes) < 7000


def test_same_seed_same_book():
    assert made_book(20, seed=3) == made_book(20, seed=3) != made_book(20, seed=4)


@pytest.mark.parametrize("size", [3, 60])
def test_nothing_is_found_wrong_with_the_book(tmp_path, size):
    make_books(tmp_path, size, seed=1)
    code = "from witnessmark.cli import main; import sys; sys.exit(main())"
    done = subprocess.run(
        [sys.executable, "-c", code, "check"], cwd=tmp_path / "witnessmark", capture_output=True, text=True
    )
    assert (done.returncode, done.stderr) == (0, ""), done.stdout[-2000:]
