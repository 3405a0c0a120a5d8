"""How a loose end is left, as any page or sheet of its machine says it."""

from ..core.loose_ends import Left
from .fill_template import Markup
from .lookup import Lookup
from .prose import Prose


def left_words(lookup: Lookup, left: Left, prose: Prose) -> Markup:
    """How it is left, in the words of the procedure that leaves it: figures in them are looked up there."""
    sentence = left.end.state
    if left.procedure is lookup.procedure or not sentence.references():
        return prose(sentence)
    return Prose(lookup.of(left.procedure.id), False, prose.variant)(sentence)
