"""What is known of a picture before it is shown: how large it is, or why it cannot be used."""

from dataclasses import dataclass

from .procedure import Picture


@dataclass(frozen=True, slots=True)
class PictureFile:
    """`width` and `height` in pixels as shown, `weight` in bytes; `problem` is (message, mend) where it cannot be used."""

    width: int = 0
    height: int = 0
    weight: int = 0
    problem: tuple[str, str] | None = None


def picture_path(machine: str, picture: Picture) -> str:
    """Where a picture of a procedure stands, from the book: its file is named from the procedure's own folder."""
    return f"procedures/{machine}/{picture.file}"
