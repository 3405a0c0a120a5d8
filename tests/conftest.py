"""Switches and fixtures that every room's tests share."""

from pathlib import Path

import pytest
from hypothesis import settings

# No test is judged by the clock, and the same run finds the same examples on every machine.
settings.register_profile("steady", deadline=None, derandomize=True)
settings.load_profile("steady")

GOLDEN = Path(__file__).parent / "golden"


def pytest_addoption(parser):
    parser.addoption(
        "--update-golden",
        action="store_true",
        help="write what is produced now into tests/golden/, then read the difference with git",
    )


@pytest.fixture
def update_golden(request) -> bool:
    """True when the run is to rewrite the golden files instead of comparing with them."""
    return request.config.getoption("--update-golden")


@pytest.fixture
def golden(update_golden):
    """`golden(name, text)`: text equals tests/golden/<name>; a missing file fails, it is never made in passing."""

    def compare(name: str, text: str) -> None:
        path = GOLDEN / name
        if update_golden:
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8", newline="\n")
            return
        assert path.exists(), f"no golden file {name}: run pytest --update-golden and read what it wrote"
        assert text == path.read_text(encoding="utf-8"), f"differs from golden/{name}; meant? pytest --update-golden"

    return compare
