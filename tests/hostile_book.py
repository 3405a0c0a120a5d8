"""The demonstration book with something that would run in every text its shapes leave free, and where that was put."""

import json
import os
import re
import subprocess
import sys
from pathlib import Path

from test_pictures import png

from witnessmark.loading.load_book import FOLDERS
from witnessmark.loading.scalars import Says, Text
from witnessmark.loading.shape import Fields, ListOf, NamesOf, Raw, Shape
from witnessmark.loading.source_files import SourceFile, yaml_sources
from witnessmark.loading.source_schemas import SOURCES
from witnessmark.loading.yaml_tree import Mapping, Node, Scalar, Sequence, read_tree

ROOT = Path(__file__).parent.parent
#: Closes what it may stand in, runs in five ways, and in words that a host which unescapes once too often would let run.
EVIL = ("\"'></title></script><script>alert(1)</script><img src=x onerror=alert(2)><svg onload=alert(3)>"
        "<a href=javascript:alert(4)>x</a><iframe srcdoc='<script>alert(5)</script>'></iframe>"
        "&lt;script&gt;alert(6)&lt;/script&gt; {{ 7*7 }} {% raw %} [x](javascript:alert(8)) onload=alert(9) `</code>`").replace("{", "(").replace("}", ")")
BY_WHOM = ("corrections", "*", "by")          # words, where any other "by" is the id of a carrier
#: Texts that are read as figures, threads or names of something else: what is hostile there is refused at its place.
READ = frozenset(
    "is thread grade surface machine by at each places after cautions press gauge wrench adapter made scale tester file division highest "
    "for only measures was when serial closes".split()) | {
        "checked against", "told by", "applies to", "go to", "in doubt", "to be found by", "leads to", "must be shut", "opens again"}


def leaves(shape: Shape, path: tuple[str, ...] = ()):
    """Every place of a source where a text may stand: the keys to it and its shape. `*` is any name, `-` an entry of a list."""
    if isinstance(shape, Fields):
        for key, below in shape.keys.items():
            yield from leaves(below, (*path, key))
        if shape.extra:
            yield from leaves(shape.extra, (*path, "*"))
    elif isinstance(shape, NamesOf):
        yield from leaves(shape.value, (*path, "*"))
    elif isinstance(shape, ListOf):
        yield from leaves(shape.item, (*path, "-"))
    elif isinstance(shape, Raw):
        for below in shape.says:
            yield from leaves(below, path)
        if shape.varies:
            yield from leaves(shape.says[0], (*path, "*"))
    else:
        yield path, shape


def document(path: tuple[str, ...], text: str) -> str:
    """A source of one line that holds nothing but the text, at its place."""
    value = text
    for key in reversed(path):
        value = [value] if key == "-" else {"name" if key == "*" else key: value}
    return json.dumps(value, ensure_ascii=False)


def is_read(path: tuple[str, ...]) -> bool:
    """Whether what stands here is read as something, or decides whether a figure holds: `path` begins with the sort of source."""
    last = [key for key in path[1:] if key not in ("*", "-")][-1:]
    return (READ.issuperset(last) and path != BY_WHOM) or path[:3] == ("procedure", "computed", "*")


#: Texts that the demonstration's records mostly leave out.
ADDED = frozenset(("tag", "number", "count", "drawing", "date", "edition", "viewpoint"))


def is_free(shape: Shape) -> bool:
    return isinstance(shape, Says) or (isinstance(shape, Text) and not shape.choices)


class Spoiler:
    """Adds EVIL to every free text that is no name of something; `put` holds the places it was added at."""

    def __init__(self, files):
        self.files = files = [file for file in files if file.path.endswith(".yaml")]      # editions are written by the command, and checked against it
        self.trees = {file.path: read_tree(file.path, file.text)[0] for file in files}
        self.names = {part for file in files for part in file.path.removesuffix(".yaml").split("/")} | {"none", "desk", "serial", "not known yet", "yes", "no"}
        for tree in self.trees.values():
            self._gather(tree)
        self.put: set[tuple[str, ...]] = set()

    def _gather(self, node: Node) -> None:
        if isinstance(node, Mapping):
            for key, value in node.entries:
                self.names.add(key.text)
                if key.text in ("id", "was") and isinstance(value, Scalar):
                    self.names.add(value.text)
                self._gather(value)
        for item in getattr(node, "items", ()):
            self._gather(item)

    def spoilt(self) -> list[SourceFile]:
        return [SourceFile(file.path, json.dumps(self._value(self.trees[file.path], shape_of(file.path), (kind_of(file.path),)), ensure_ascii=False))
                for file in self.files]

    def _value(self, node: Node, shape: Shape | None, path):
        if isinstance(node, Sequence):
            return [self._value(item, shape.item if isinstance(shape, ListOf) else shape, (*path, "-") if isinstance(shape, ListOf) else path) for item in node.items]
        if isinstance(node, Mapping):
            return self._group(node, shape, path)
        while isinstance(shape, ListOf) or (isinstance(shape, Fields) and shape.brief):
            shape, path = (shape.item, (*path, "-")) if isinstance(shape, ListOf) else (shape.keys[shape.brief], (*path, shape.brief))
        if not is_free(shape) or self.names.issuperset(re.split("[/#]", node.text)) or is_read(path):
            return node.text
        self.put.add(path)
        return " ".join(node.text.split()) + EVIL

    def _group(self, node: Mapping, shape, path):
        if isinstance(shape, ListOf):
            return self._group(node, shape.item, (*path, "-"))
        if isinstance(shape, Raw):
            fields = next((each for each in shape.says if isinstance(each, Fields)), None)
            return self._group(node, fields, path) if fields else {key.text: self._value(value, shape, path) for key, value in node.entries}
        if isinstance(shape, NamesOf):
            return {key.text: self._value(value, shape.value, (*path, "*")) for key, value in node.entries}
        keys = shape.keys if isinstance(shape, Fields) else {}
        extra = getattr(shape, "extra", None)
        return self._more(node, keys, path) | {key.text: self._value(value, keys.get(key.text) or extra, (*path, key.text if key.text in keys else "*")) for key, value in node.entries}


    def _more(self, node: Mapping, keys: dict[str, Shape], path) -> dict:
        """What this group might say and does not: its free sentences, a few of its words, its picture."""
        there = {key.text for key, _ in node.entries}
        if "is" in keys and "is" not in there and "from" not in there:
            keys = {key: keys[key] for key in ("note", "viewpoint") if key in keys}
        more = {key: EVIL for key, shape in keys.items() if key not in there and (
            (isinstance(shape, Says) and key not in ("in doubt", "to be found by", "do", "hold point")) or key in ADDED or (*path, key) == BY_WHOM)}
        self.put |= {(*path, key) for key in more}
        if "picture" in keys and "picture" not in there:
            more["picture"] = {"file": "evil.png", "shows": EVIL}
            self.put.add((*path, "picture", "shows"))
        return more


def kind_of(path: str) -> str:
    parts = path.removesuffix(".yaml").split("/")
    return {"procedures": "procedure", "machines": "machine"}.get(parts[-2] if parts[0] == "site_data" else parts[0], parts[-1])


def shape_of(path: str) -> Shape:
    return SOURCES[kind_of(path)][1]


def build_clean(folder: Path) -> Path:
    """The site of the book as it is, to compare with."""
    built = subprocess.run([sys.executable, "-m", "mkdocs", "build", "--quiet", "--site-dir", str(folder)], cwd=ROOT, capture_output=True, text=True,
                           env={**os.environ, "NO_MKDOCS_2_WARNING": "1"})
    assert built.returncode == 0, built.stderr[-3000:]
    return folder


def build_hostile(folder: Path) -> Path:
    """The site of the spoilt book, built by the host as if our own refusal of HTML were not there."""
    for file in Spoiler(yaml_sources(ROOT, FOLDERS)).spoilt():
        at = folder / file.path
        at.parent.mkdir(parents=True, exist_ok=True)
        at.write_text(file.text, encoding="utf-8")
        (at.parent / "evil.png").write_bytes(png(2, 2, b"<script>alert(1)</script>"))
    (folder / "mkdocs.yml").write_text((ROOT / "mkdocs.yml").read_text(encoding="utf-8"), encoding="utf-8")
    program = ("from witnessmark.loading import yaml_tree; yaml_tree.may_hold_markup = lambda text: False;"
               "from mkdocs.__main__ import cli; cli()")
    built = subprocess.run([sys.executable, "-c", program, "build", "--quiet"], cwd=folder, capture_output=True, text=True,
                           env={**os.environ, "NO_MKDOCS_2_WARNING": "1"})
    assert built.returncode == 0, built.stderr[-3000:]
    return folder / "site"
