"""The gate of latex2mathml: a formula of a declaration as MathML, which browsers set without any script of ours."""

from functools import lru_cache

from .fill_template import Markup


@lru_cache(maxsize=None)
def mathml(latex: str) -> Markup:
    """`latex` is written in our own declarations, never by an author of a book."""
    from latex2mathml.converter import convert      # late: proving a book sets no formula
    return Markup(convert(latex, display="block"))
