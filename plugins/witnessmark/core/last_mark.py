"""`press-force.last mark on BP50 main`: the force that the last mark of that press card means, as an input of a result."""

_BEGINS = "last mark on "


def read_last_mark(part: str | None) -> tuple[str, str] | None:
    """(press, gauge) of a reference's part; None where it names none."""
    if not part or not part.startswith(_BEGINS):
        return None
    press, _, gauge = part.removeprefix(_BEGINS).partition(" ")
    return press, gauge
