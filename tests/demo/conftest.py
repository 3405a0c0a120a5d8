"""The demonstration as data: book.json, as a reader's program gets it."""

import json
from pathlib import Path

import pytest

from witnessmark.build import check, render

BOOK = Path(__file__).parents[2]


@pytest.fixture(scope="session")
def book():
    return json.loads(render(check(BOOK), "Demo", "demo", None).files["book.json"])
