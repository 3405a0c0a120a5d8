"""What is installed is what is in the checkout: every module, template, style and table, and both entry points."""

import subprocess
import sys
import zipfile
from configparser import ConfigParser
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent


@pytest.fixture(scope="module")
def wheel(tmp_path_factory) -> zipfile.ZipFile:
    """The wheel, built from a copy of the files that matter so that the checkout gains no build folder."""
    source, out = tmp_path_factory.mktemp("source"), tmp_path_factory.mktemp("wheel")
    for name in ("pyproject.toml", "README.md", "LICENSE"):
        (source / name).write_bytes((ROOT / name).read_bytes())
    for file in package_files():
        copy = source / "plugins" / file
        copy.parent.mkdir(parents=True, exist_ok=True)
        copy.write_bytes((ROOT / "plugins" / file).read_bytes())
    command = [sys.executable, "-m", "pip", "wheel", "--quiet", "--no-deps", "--no-build-isolation", "--no-index"]
    done = subprocess.run([*command, "--wheel-dir", str(out), str(source)], capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
    [built] = out.glob("*.whl")
    with zipfile.ZipFile(built) as opened:
        yield opened


def package_files() -> list[str]:
    """Each file of the package, relative to plugins/, leaving out what Python and editors drop there."""
    files = (file for file in (ROOT / "plugins" / "witnessmark").rglob("*") if file.is_file())
    names = (file.relative_to(ROOT / "plugins") for file in files)
    return sorted(name.as_posix() for name in names if "__pycache__" not in name.parts and name.name[0] != ".")


def test_every_file_of_the_package_is_in_the_wheel(wheel):
    assert set(package_files()) - set(wheel.namelist()) == set()


@pytest.mark.parametrize("folder", ["pages/templates", "pages/static", "theme", "new_book/dot-github/workflows"])
def test_folders_that_hold_no_modules_are_not_empty(wheel, folder):
    assert [name for name in wheel.namelist() if name.startswith(f"witnessmark/{folder}/")]


def test_nothing_else_is_in_the_wheel(wheel):
    strangers = {name for name in wheel.namelist() if ".dist-info/" not in name} - set(package_files())
    assert strangers == set()


@pytest.mark.parametrize(
    ("group", "points_at"),
    [
        ("console_scripts", "witnessmark.cli:main"),
        ("mkdocs.plugins", "witnessmark.mkdocs_plugin:WitnessmarkPlugin"),
    ],
)
def test_entry_points(wheel, group, points_at):
    [listed] = [name for name in wheel.namelist() if name.endswith("entry_points.txt")]
    points = ConfigParser()
    points.read_string(wheel.read(listed).decode())
    assert points[group]["witnessmark"] == points_at
    # The name it points at stands in the module: a typing slip would show only once installed.
    module, name = points_at.split(":")
    source = wheel.read(module.replace(".", "/") + ".py").decode()
    assert f"def {name}(" in source or f"class {name}(" in source
