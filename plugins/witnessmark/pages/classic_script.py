"""One plain script made of a module and those it imports: a page from a folder loads no module.

Our modules import names from files and export declarations, each on a line that begins with the word; nothing else is understood here.
"""

import posixpath
import re
from collections.abc import Callable

_IMPORT = re.compile(r'^import \{ ([\w, ]+) \} from "([^"]+)";$', re.MULTILINE)
_EXPORT = re.compile(r"^export (?=(?:async )?(?:function|class|const) (\w+))", re.MULTILINE)
_LEFT = re.compile(r"^(?:import|export)\b.*$", re.MULTILINE)


def classic(entry: str, read: Callable[[str], str]) -> str:
    """`read` gives the text of a module by its path. Raises ValueError where a module is written in a way that is not understood."""
    made: dict[str, str] = {}

    def make(path: str) -> None:
        text = read(path)
        made[path] = ""                                     # two that import each other are made once
        for imported in _IMPORT.finditer(text):
            if (other := _beside(path, imported[2])) not in made:
                make(other)
        names = ", ".join(exported[1] for exported in _EXPORT.finditer(text))
        body = _EXPORT.sub("", _IMPORT.sub(lambda found: f'const {{ {found[1]} }} = of["{_beside(path, found[2])}"];', text))
        if left := _LEFT.search(body):
            raise ValueError(f"{path}: {left[0]}")
        del made[path]
        made[path] = f'of["{path}"] = (() => {{\n{body}\nreturn {{ {names} }};\n}})();\n'

    make(entry)
    return f'(() => {{\n"use strict";\nconst of = {{}};\n{"".join(made.values())}}})();\n'


def _beside(path: str, target: str) -> str:
    return posixpath.normpath(posixpath.join(posixpath.dirname(path), target))
