"""The demonstration as data: book.json, as a reader's program gets it, and the pages beside it."""

import json
from pathlib import Path

import pytest

from witnessmark.build import render
from witnessmark.prove import check

BOOK = Path(__file__).parents[2]


@pytest.fixture(scope="session")
def site():
    return render(check(BOOK), "Demo", "demo", None)


@pytest.fixture(scope="session")
def book(site):
    return json.loads(site.files["book.json"])
