"""Opens files: the only module that does. Everything else is given text and names."""

import os
import re
import stat
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path

from ..core.picture import PictureFile
from .picture_header import HEAD, picture_fault, picture_size

MOST_BYTES = 1_000_000
#: Where the editions stand: the only sources that are not YAML.
EDITIONS = "site_data/editions"
MOST_OF_A_PICTURE = 20_000_000
_OUTSIDE = re.compile(r"(?:^|/)\.|\\|:|//|[\x00-\x1f]")

#: What would break the one line that a finding is, were it in a file's name.
_UNPRINTABLE = re.compile("[\x00-\x1f\x7f-\x9f\u2028-\u202e\u2066-\u2069\ud800-\udfff]")
_LEAVES = ("this file is a link that leaves the book", "put the file itself here", 1)
_NOWHERE = ("this file is a link that leads nowhere", "put the file itself here", 1)


@dataclass(frozen=True, slots=True)
class SourceFile:
    """A source of the book: its path relative to the book, and its text, or why it cannot be read."""

    path: str
    text: str
    problem: tuple[str, str, int] | None = None       # message, mend, line


def yaml_sources(book: Path, folders: tuple[str, ...]) -> list[SourceFile]:
    """Every .yaml file below the named folders and every .jsonl file of the editions, in the order of their paths, and every link that leaves the book."""
    root = book.resolve()
    found = []
    for folder in folders:
        for path, below, names in os.walk(root / folder):
            below.sort()
            found += [SourceFile(_shown(root, Path(path) / name), "", (
                "this folder is a link, and what is in it is not read", "put the folder itself here", 1))
                for name in below if os.path.islink(os.path.join(path, name))]
            for name in sorted(names):
                at = Path(path) / name
                if name.endswith((".yaml", ".yml")) or (name.endswith(".jsonl") and at.is_relative_to(root / EDITIONS)):
                    found.append(_read(root, at))
                elif at.is_symlink() and (problem := _bad_link(root, at)):      # the site would hold a copy of what it leads to
                    found.append(SourceFile(_shown(root, at), "", problem))
    return found


#: Pages written by hand, and the paths of all that is neither page nor source.
Beside = tuple[list[SourceFile], list[str]]


def beside_sources(book: Path) -> Beside:
    """Below procedures/: the pages written by hand, and the paths of all that is neither page nor source. Hidden files, which
    editors and systems leave about, are not told: they never come into a site."""
    root = book.resolve()
    pages, others = [], []
    for path, below, names in os.walk(root / "procedures"):
        below[:] = sorted(name for name in below if not name.startswith("."))
        for name in sorted(names):
            at = Path(path) / name
            if name.startswith(".") or name.endswith((".yaml", ".yml")) or (at.is_symlink() and _bad_link(root, at)):
                continue
            if name.endswith(".md"):
                pages.append(_read(root, at))
            else:
                others.append(_shown(root, at))
    return pages, others


def _shown(root: Path, path: Path) -> str:
    return printable(path.relative_to(root).as_posix())


def printable(path: str) -> str:
    """A file's name as a finding can bear it."""
    return _UNPRINTABLE.sub("?", path)


def _bad_link(root: Path, link: Path) -> tuple[str, str, int] | None:
    try:
        return _LEAVES if not link.resolve().is_relative_to(root) else None if link.exists() else _NOWHERE
    except (OSError, RuntimeError):
        return _NOWHERE


def _read(root: Path, path: Path) -> SourceFile:
    """`path` stands in a folder below `root` that no link leads to."""
    shown = _shown(root, path)
    try:
        sort = os.lstat(path).st_mode
        if stat.S_ISLNK(sort):                            # to resolve every path costs as much as to read the files
            if not path.resolve().is_relative_to(root):
                return SourceFile(shown, "", _LEAVES)
            sort = os.stat(path).st_mode
        if not stat.S_ISREG(sort):
            return SourceFile(shown, "", ("this is no plain file", "put a text file here", 1))
        with open(path, "rb") as file:
            data = file.read(MOST_BYTES + 1)
    except OSError as error:
        return SourceFile(shown, "", (f"the file cannot be opened: {error.strerror}", "check its name and rights", 1))
    except RuntimeError:                                  # what pathlib raises for a link to itself
        return SourceFile(shown, "", _NOWHERE)
    return as_source(shown, data)


def as_source(shown: str, data: bytes) -> SourceFile:
    """The bytes of one file as a source; what cannot be text is its problem."""
    if len(data) > MOST_BYTES:
        return SourceFile(shown, "", ("the file is over 1 MB", "split it into several procedures", 1))
    try:
        text = data.decode("utf-8-sig")                  # an editor may put its mark at the very start
    except UnicodeDecodeError as error:
        return SourceFile(shown, "", ("a character here is not UTF-8", "save the file as UTF-8 in your editor",
                                      data.count(b"\n", 0, error.start) + 1))
    return SourceFile(shown, text)


def is_book(book: Path) -> bool:
    """True where the folder holds procedures or site_data."""
    return (book / "procedures").is_dir() or (book / "site_data").is_dir()


def picture_file(book: Path, name: str) -> PictureFile:
    """What is known of the picture at `name`, a path from the book's folder; its bytes are only counted and hashed."""
    root, path = book.resolve(), book / name
    if _OUTSIDE.search(name):
        return PictureFile(problem=("its path leaves the folder of its source", "put it beside the source that names it and write its name, such as cup-on-shaft.jpg"))
    try:
        if not path.resolve().is_relative_to(root):
            return PictureFile(problem=("it is a link that leaves the book", "put the file itself here"))
        if not path.is_file():
            return PictureFile(problem=("there is no such file beside this source", "check its name, capitals too"))
        with open(path, "rb") as file:
            data, weight = file.read(MOST_OF_A_PICTURE + 1), os.fstat(file.fileno()).st_size
    except (OSError, RuntimeError, ValueError):
        return PictureFile(problem=("it cannot be opened", "check its name and rights"))
    return as_picture(name, data, weight)


def picture_bytes(book: Path, name: str) -> bytes | None:
    """The picture at `name`, a path from the book's folder, as far as it may stand in a site."""
    return (book / name).read_bytes() if picture_file(book, name).problem is None else None


def as_picture(name: str, data: bytes, weight: int) -> PictureFile:
    """What the bytes of a picture tell, of `weight` bytes in all; what the name promises must be in them."""
    if len(data) > MOST_OF_A_PICTURE:
        return PictureFile(weight=weight, problem=(f"it is over {MOST_OF_A_PICTURE // 1_000_000} MB", "save it smaller, 1,600 pixels across"))
    if fault := picture_fault(data, name):
        return PictureFile(weight=weight, problem=fault)
    return PictureFile(*picture_size(data[:HEAD]), weight, sha256(data).hexdigest())
