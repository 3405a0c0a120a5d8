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


@lru_cache(maxsize=1 << 16)
def _escaped(text: str) -> Markup:
    return escape(text)


def quick_escape(given: Any) -> Markup:
    """What escape gives; a book says the same words on many pages, and two of three things printed are markup already."""
    kind = type(given)
    if kind is Markup:
        return given
    return _escaped(given) if kind is str else escape(given)          # a str only: Markup is held equal to it, and means another thing


class _Environment(Environment):
    """Templates call our escape: a fifth of the time of a page went into Jinja's."""

    def _generate(self, *given, **named) -> str:
        return f"{super()._generate(*given, **named)}\nfrom {__name__} import quick_escape as escape\n"


_ENVIRONMENT = _Environment(loader=FileSystemLoader(_HERE / "templates"), undefined=StrictUndefined, autoescape=True,
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
def part(name: str, of: str = "parts") -> Callable[..., Markup]:
    """The macro `name` of templates/<of>.html, to be called with its arguments."""
    return getattr(_template(f"{of}.html").module, name)


@lru_cache(maxsize=None)
def static_files() -> dict[str, bytes]:
    """Path under assets/witnessmark/ -> content of every file in static/."""
    root = _HERE / "static"
    return {file.relative_to(root).as_posix(): file.read_bytes() for file in sorted(root.rglob("*")) if file.suffix in (".css", ".js", ".txt", ".json", ".woff2")}
