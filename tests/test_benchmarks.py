"""The benchmark's book is a sound book in which no sentence is said twice, and its server sends what a host sends: else what they measure means little."""

import gzip
import subprocess
import sys
from collections import Counter
from pathlib import Path
from urllib.error import HTTPError
from urllib.request import Request, urlopen

import phone
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


def test_the_phones_server_sends_text_packed_and_counts_what_a_reader_fetches(tmp_path):
    (tmp_path / "site").mkdir()
    (tmp_path / "beside").write_text("not for sale")
    (tmp_path / "site/index.html").write_text("word " * 1000)
    (tmp_path / "site/a.js.map").write_text("x" * 500)
    server = phone.served(tmp_path / "site")
    ask = lambda path: urlopen(Request(f"http://127.0.0.1:{server.server_port}{path}", headers={"Accept-Encoding": "gzip"}))
    with ask("/book/") as answer:
        body = answer.read()
        assert gzip.decompress(body) == b"word " * 1000 and answer.headers["Content-Type"].startswith("text/html")
    ask("/book/a.js.map").read()                                # fetched by tools that take a script apart, not by readers
    for path in ("/index.html", "/book/../beside", "/book/%2e%2e/beside", "/book/none"):
        with pytest.raises(HTTPError, match="404"):
            ask(path)
    server.shutdown()
    server.server_close()
    assert server.sent == len(body)


def test_without_npx_the_phone_is_not_measured_and_it_says_so(tmp_path):
    script = Path(phone.__file__)
    done = subprocess.run([sys.executable, str(script)], env={"PATH": str(tmp_path)}, capture_output=True, text=True)
    assert (done.returncode, done.stdout.strip()) == (0, "Not measured on a phone: no npx on this machine.")
