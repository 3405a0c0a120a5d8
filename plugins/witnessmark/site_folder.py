"""The finished site as files: what each weighs, what a stick takes, and a served site in which only what changed is replaced."""

import gc
import os
from collections.abc import Callable, Hashable, Iterable, Mapping
from hashlib import sha256
from pathlib import Path

from .core.picture import PictureFile
from .pages.keep_list import keep_files
from .pages.offline import About
from .pages.stick import DATA_FOLDERS, asking_script, data_script, for_stick


def write_keep_lists(root: Path, about: About) -> None:
    """What a phone may keep, by the hash of each finished file."""
    files = {path: _weighed(root / path) for path in _paths(root)}
    for name, text in keep_files(files, about.machines, about.date).items():
        (root / name).parent.mkdir(parents=True, exist_ok=True)
        (root / name).write_text(text, encoding="utf-8")


def turn_for_stick(root: Path) -> None:
    for page in root.rglob("*.html"):
        page.write_text(for_stick(page.read_text(encoding="utf-8")), encoding="utf-8")
    scripts = [data_script(data.relative_to(root).as_posix(), data.read_text(encoding="utf-8"))
               for folder in DATA_FOLDERS for data in sorted((root / folder).glob("*.json"))]
    for path, text in (*scripts, asking_script()):
        (root / path).write_text(text, encoding="utf-8")


def may_stand(folder: Path, at: str, pictures: Mapping[str, PictureFile]) -> bool:
    """Pages written by hand, and pictures that a source names: nothing else of what lies beside the sources is copied."""
    picture = pictures.get(Path(at).relative_to(folder).as_posix())
    if not at.endswith(".md") and (picture is None or picture.problem):
        return False
    return Path(at).resolve().is_relative_to(folder.resolve())


def made_from(path: str) -> Hashable:
    """What a file that is copied is known by, so long as nobody writes to it."""
    known = os.stat(path)
    return path, known.st_mtime_ns, known.st_size


class Served:
    """A site that is read while its book is written. Its first build stands in `root`; each later one is laid `aside`, without
    what stands in the site already, and then moved over it: nothing is cleaned or written twice, and a build that fails leaves what was served.
    """

    def __init__(self, root: str):
        self.root = Path(root)
        self.aside = os.path.join(root, ".aside")           # goes with the site when the server ends
        self._stands: dict[str, object] = {}
        self._wanted: dict[str, object] = {}
        self._covered: list[str] = []

    def begin(self) -> str:
        """The folder for the next build. Litter is looked for once a build and never in what is held: the host's pages and files hold one another."""
        gc.collect()
        gc.freeze()
        gc.disable()
        self._wanted = {}
        return self.aside if self._stands else str(self.root)

    def stands(self, path: str, source: object) -> bool:
        """Whether what stands at `path` was made from just this; if not, the next build is to lay it aside."""
        self._wanted[path] = source
        return path in self._stands and self._stands[path] == source

    def move_in(self) -> None:
        """Puts what was laid aside into the site, and takes away what nobody wants any more."""
        for path in self._covered:
            os.replace(self._good(path), self.root / path)
        self._covered = []
        for path in _paths(Path(self.aside)):
            self._wanted.setdefault(path, object())
            (self.root / path).parent.mkdir(parents=True, exist_ok=True)
            os.replace(Path(self.aside, path), self.root / path)
        for path in self._stands.keys() - self._wanted.keys():
            (self.root / path).unlink(missing_ok=True)
        if not self._stands:
            gc.freeze()                         # all that the first build made is held
        gc.enable()
        self._stands = self._wanted


    def cover(self, paths: Iterable[str], turned: Callable[[str], str]) -> None:
        """Shows these pages turned until the next build is moved in, and keeps them as they are beside."""
        for path in paths:
            self._good(path).parent.mkdir(parents=True, exist_ok=True)
            os.replace(self.root / path, self._good(path))
            (self.root / path).write_text(turned(self._good(path).read_text(encoding="utf-8")), encoding="utf-8")
            self._covered.append(path)

    def _good(self, path: str) -> Path:
        return self.root / ".good" / path

    @property
    def whole(self) -> bool:
        """Whether a build stands in it."""
        return bool(self._stands)


def _paths(root: Path) -> list[str]:
    """Every file below a folder, from it, with slashes."""
    return [os.path.join(folder, name)[len(str(root)) + 1:].replace(os.sep, "/") for folder, _, names in os.walk(root) for name in names]


def _weighed(path: Path) -> tuple[str, int]:
    data = path.read_bytes()
    return sha256(data).hexdigest(), len(data)
