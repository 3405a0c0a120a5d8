"""Keeps the house: who may import what, where files are opened, who speaks, how long a module is.

The tables are the rules. If a better cut shows itself, change the cut and its table together.
"""

import ast
import sys
from pathlib import Path

import pytest

HOUSE = Path(__file__).parent.parent / "plugins" / "witnessmark"

# A room is a folder, or one of the few modules at the top. Each may import itself and these.
FACES = {"mkdocs_plugin.py", "cli.py", "commands"}
ROOMS = {
    "core": set(),
    "loading": {"core"},
    "rules": {"core"},
    "workings": {"core"},
    "pages": {"core"},
    "changes": {"core"},
    "prove.py": {"core", "loading", "rules", "workings"},
    "site_folder.py": {"core", "pages"},
    "build.py": {"core", "loading", "rules", "workings", "pages", "changes", "prove.py"},
    "commands": {"core", "loading", "rules", "workings", "pages", "changes", "prove.py", "build.py"},
    "mkdocs_plugin.py": {"core", "loading", "rules", "workings", "pages", "changes", "prove.py", "build.py", "site_folder.py"},
    "cli.py": {"commands", "pages"},                     # pages: the names of the papers
    "__init__.py": set(),
}

# Each of these is known to one module only. What is neither here nor in Python itself is not used at all.
GATES = {
    "pint": "core/unit_sizes.py",
    "yaml": "loading/yaml_tree.py",
    "jinja2": "pages/fill_template.py",
    "markupsafe": "pages/fill_template.py",
    "mkdocs": "mkdocs_plugin.py",
    "latex2mathml": "pages/set_formula.py",
    "subprocess": "loading/revisions.py",
    "segno": "pages/qr_code.py",
    "weasyprint": "pages/pdf.py",
}

# Files: modules that reach them, what a path is asked, and who may.
FILE_MODULES = {"os", "pathlib", "shutil", "tempfile", "glob", "io", "importlib", "pkgutil", "sqlite3"}
FILE_CALLS = {
    "open", "read_text", "write_text", "read_bytes", "write_bytes", "iterdir", "glob", "rglob", "mkdir", "unlink",
    "exists", "is_file", "is_dir", "stat", "touch", "rename", "resolve",
}
FILE_OPENERS = {"loading/source_files.py", "loading/new_book.py", "pages/fill_template.py", "site_folder.py"} | FACES
HANDS_A_PATH_ON = {"build.py", "prove.py"}  # may name pathlib.Path, and call nothing on it
NO_FILE = {"pathlib.PurePath", "pathlib.PurePosixPath", "io.StringIO", "io.BytesIO", "os.path.commonprefix"}

# The same sources give the same bytes: no clock, no chance, except where a command asks for today's date.
CHANCE_MODULES = {"time", "random", "secrets", "uuid"}
CLOCK_CALLS = {"now", "today", "utcnow"}
CLOCK_READERS = FACES

# Speaking is for the faces; everything else returns findings.
SPEECH_MODULES = {"logging", "warnings"}
SPEECH_STREAMS = {"stdout", "stderr"}

LONGEST = 250
NOTHING_NAMES = {"util", "utils", "helper", "helpers", "manager", "managers", "common", "misc"}


def breaches(path: str, source: str) -> list[str]:
    """What a module at `path` (relative to the package, with slashes) does against the tables, one line each."""
    found = []
    room = path.split("/")[0]
    if room not in ROOMS:
        return [f"{path}: stands in no known room"]
    for part in path.removesuffix(".py").split("/"):
        if part in NOTHING_NAMES or NOTHING_NAMES & set(part.split("_")):
            found.append(f"the name {part} says nothing of what is inside")
    if (length := len(source.splitlines())) > LONGEST:
        found.append(f"{length} lines, more than {LONGEST}")
    for node in ast.walk(ast.parse(source)):
        for name in imported(node, path):
            found += import_breaches(name, path, room)
        found += call_breaches(node, path)
    return [f"{path}: {breach}" for breach in found]


def among(path: str, allowed: set[str]) -> bool:
    """Whether the module, or the room it stands in, is one of those allowed."""
    return path in allowed or path.split("/")[0] in allowed


def imported(node: ast.AST, path: str) -> list[str]:
    """Full dotted names that an import statement brings in, relative ones resolved; [] for any other node."""
    if isinstance(node, ast.Import):
        return [alias.name for alias in node.names]
    if isinstance(node, ast.ImportFrom):
        base = [node.module] if node.module else []
        if node.level:
            package = ["witnessmark", *path.split("/")[:-1]]
            base = package[: len(package) - node.level + 1] + base
        return [".".join([*base, alias.name]) for alias in node.names]
    return []


def import_breaches(name: str, path: str, room: str) -> list[str]:
    top, _, rest = name.partition(".")
    if top == "witnessmark":
        other = rest.split(".")[0]
        other = other if other in ROOMS else f"{other}.py"
        return [] if other == room or other in ROOMS[room] else [f"imports {name}, which is not below {room}"]
    found = []
    if top in GATES:
        if path != GATES[top]:
            found.append(f"imports {top}, which only {GATES[top]} knows")
    elif top not in sys.stdlib_module_names:
        found.append(f"imports {top}, which is neither Python's own nor behind a gate")
    handed_on = name == "pathlib.Path" and path in HANDS_A_PATH_ON
    if top in FILE_MODULES and name not in NO_FILE and not among(path, FILE_OPENERS) and not handed_on:
        found.append(f"imports {name}: files are opened elsewhere")
    if top in CHANCE_MODULES and not among(path, CLOCK_READERS):
        found.append(f"imports {name}: no clock, no chance")
    if top in SPEECH_MODULES and not among(path, FACES):
        found.append(f"imports {name}: only a face speaks")
    return found


def call_breaches(node: ast.AST, path: str) -> list[str]:
    if isinstance(node, ast.Attribute) and node.attr in SPEECH_STREAMS and not among(path, FACES):
        return [f"line {node.lineno} uses {node.attr}: only a face speaks"]
    if not isinstance(node, ast.Call):
        return []
    bare = isinstance(node.func, ast.Name)
    called = node.func.id if bare else getattr(node.func, "attr", "")
    at = f"line {node.lineno} calls {called}"
    if called in FILE_CALLS and not among(path, FILE_OPENERS):
        return [f"{at}: files are opened elsewhere"]
    if called in CLOCK_CALLS and not bare and not among(path, CLOCK_READERS):
        return [f"{at}: no clock, no chance"]
    if bare and called in {"print", "input"} and not among(path, FACES):
        return [f"{at}: only a face speaks"]
    if bare and called in {"eval", "exec", "__import__"}:
        return [f"{at}: nothing is imported or run by name"]
    return []


MODULES = sorted(file.relative_to(HOUSE).as_posix() for file in HOUSE.rglob("*.py"))


@pytest.mark.parametrize("path", MODULES)
def test_module_keeps_the_house(path):
    assert breaches(path, (HOUSE / path).read_text(encoding="utf-8")) == []


@pytest.mark.parametrize("room", sorted({Path(path).parent.as_posix() for path in MODULES}))
def test_folder_of_modules_is_a_package(room):
    """Without __init__.py a folder works from a checkout and is missing once installed."""
    assert (HOUSE / room / "__init__.py").exists()


BAD = [
    ("core/figure.py", "from witnessmark.loading import shape", "not below core"),
    ("core/figure.py", "from ..loading.shape import Shape", "not below core"),
    ("core/figure.py", "from .. import build", "not below core"),
    ("rules/gaps.py", "import witnessmark.workings.torque", "not below rules"),
    ("pages/sheet.py", "def late():\n    from witnessmark.rules import gaps", "not below pages"),
    ("build.py", "from witnessmark.cli import main", "not below build.py"),
    ("cli.py", "from witnessmark import mkdocs_plugin", "not below cli.py"),
    ("core/figure.py", "import pint", "only core/unit_sizes.py"),
    ("loading/shape.py", "from yaml import compose", "only loading/yaml_tree.py"),
    ("cli.py", "import mkdocs.config", "only mkdocs_plugin.py"),
    ("pages/words.py", "from jinja2 import Template", "only pages/fill_template.py"),
    ("build.py", "import subprocess", "only loading/revisions.py"),
    ("workings/torque.py", "import numpy as np", "neither Python's own"),
    ("rules/gaps.py", "import os.path", "files are opened"),
    ("pages/sheet.py", "from pathlib import Path", "files are opened"),
    ("build.py", "text = path.read_text()", "files are opened"),
    ("build.py", "from pathlib import Path\nfound = Path('x').exists()", "files are opened"),
    ("build.py", "import os", "files are opened"),
    ("prove.py", "from .pages import words", "not below prove.py"),
    ("commands/check.py", "from ..cli import main", "not below commands"),
    ("build.py", "from .commands import check", "not below build.py"),
    ("loading/shape.py", "with open('x') as file: pass", "files are opened"),
    ("workings/torque.py", "import random", "no chance"),
    ("pages/sheet.py", "from time import time", "no clock"),
    ("rules/gaps.py", "import datetime\nd = datetime.date.today()", "no clock"),
    ("core/figure.py", "print('here')", "only a face"),
    ("build.py", "import logging", "only a face"),
    ("build.py", "import sys\nsys.stderr.write('x')", "only a face"),
    ("core/figure.py", "eval('1')", "run by name"),
    ("core/figure.py", "x = 1\n" * 251, "251 lines"),
    ("core/utils.py", "", "says nothing"),
    ("pages/page_helpers.py", "", "says nothing"),
    ("attic/old.py", "", "no known room"),
    ("notes.py", "", "no known room"),
]


@pytest.mark.parametrize(("path", "source", "said"), BAD)
def test_a_breach_is_caught(path, source, said):
    assert said in "\n".join(breaches(path, source))


GOOD = [
    ("core/unit_sizes.py", "from pint import UnitRegistry\nfrom .place import Place"),
    ("workings/torque.py", "import math\nfrom ..core.quantity import Quantity\nfrom .tables import threads"),
    ("loading/shape.py", "from pathlib import PurePosixPath\nfrom datetime import date"),
    ("loading/source_files.py", "from pathlib import Path\nPath('x').read_bytes()"),
    ("mkdocs_plugin.py", "import logging\nfrom mkdocs.plugins import BasePlugin\nfrom .build import build"),
    ("cli.py", "from datetime import date\nfrom .commands.check import run\nprint(date.today())"),
    ("commands/edition.py", "import os\nfrom ..build import new_editions\nfrom datetime import date\nprint(date.today())"),
    ("prove.py", "from pathlib import Path\nfrom .rules.table import check_book"),
    ("build.py", "from pathlib import Path\ndef build(folder: Path): return load(folder)"),
    ("core/figure.py", "x = 1\n" * 250),
]


@pytest.mark.parametrize(("path", "source"), GOOD)
def test_what_is_allowed_passes(path, source):
    assert breaches(path, source) == []
