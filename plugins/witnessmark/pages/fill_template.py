"""The gate of Jinja: fills the templates beside this file, and hands out the static files.

Templates compute nothing: what they print is ready in the views. Anything not given is an error, all text is escaped.
"""

from functools import lru_cache
from pathlib import Path
from typing import Any, Callable

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup, escape

from . import bench_words, keep_words, my_bench_words, words
from .content_policy import PLAIN

__all__ = ["Markup", "escape", "fill", "part", "static_files"]

_HERE = Path(__file__).parent
_ENVIRONMENT = Environment(loader=FileSystemLoader(_HERE / "templates"), undefined=StrictUndefined, autoescape=True,
                           trim_blocks=True, lstrip_blocks=True, auto_reload=False)
_ENVIRONMENT.globals["say"] = words
_ENVIRONMENT.globals["at_bench"] = bench_words
_ENVIRONMENT.globals["keeping"] = keep_words
_ENVIRONMENT.globals["mine"] = my_bench_words
_ENVIRONMENT.globals["policy"] = PLAIN


@lru_cache(maxsize=None)
def _template(name: str):
    return _ENVIRONMENT.get_template(name)


def fill(name: str, /, **values: Any) -> str:
    """templates/<name>.html filled."""
    return _template(f"{name}.html").render(values)


@lru_cache(maxsize=None)
def part(name: str) -> Callable[..., Markup]:
    """The macro `name` of templates/parts.html, to be called with its arguments."""
    return getattr(_template("parts.html").module, name)


@lru_cache(maxsize=None)
def static_files() -> dict[str, bytes]:
    """Path under assets/witnessmark/ -> content of every file in static/."""
    root = _HERE / "static"
    return {file.relative_to(root).as_posix(): file.read_bytes() for file in sorted(root.rglob("*")) if file.suffix in (".css", ".js", ".txt", ".json", ".woff2")}
