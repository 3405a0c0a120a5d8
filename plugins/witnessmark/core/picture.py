"""A picture that a source names, and what is known of it before it is shown: how large it is, or why it cannot be used."""

from dataclasses import dataclass

from .place import Place


@dataclass(frozen=True, slots=True)
class Picture:
    """`file` as named in the source, `shows` in words what is to be seen."""

    file: str
    shows: str
    place: Place

    @property
    def path(self) -> str:
        """Where it stands, from the book: it is named from the folder of the source that names it."""
        return f"{self.place.path.rpartition('/')[0]}/{self.file}"


@dataclass(frozen=True, slots=True)
class PictureFile:
    """`width` and `height` in pixels as shown, `weight` in bytes, `digest` a hash of the bytes, so that another picture of
    the same name is known as another; `problem` is (message, mend) where it cannot be used."""

    width: int = 0
    height: int = 0
    weight: int = 0
    digest: str = ""
    problem: tuple[str, str] | None = None
