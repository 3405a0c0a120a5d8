"""Reads a book as it stood at a revision: the only module that runs git, and it runs nothing else.

Nothing is checked out. A revision is a name that git resolves to a commit; from there only object ids are handed on.
What a repository could make git run (hooks, filters, a monitor, another helper, a fetch) is switched off for each call.
"""

import re
import subprocess
from dataclasses import dataclass

from ..core.picture import PictureFile
from .source_files import EDITIONS, Beside, MOST_BYTES, MOST_OF_A_PICTURE, SourceFile, as_picture, as_source, printable

#: What a revision may look like: `main`, `v1.2`, `HEAD~3`, `a1b2c3d`, `origin/main`, `main@{1}`. Never an option, a path or a range.
_REVISION = re.compile(r"[A-Za-z0-9_][\w./+-]*(?:@\{[0-9]{1,6}\})?(?:[~^][0-9]{0,6})*|@(?:[~^][0-9]{0,6})*")
_COMMIT = re.compile("[0-9a-f]{40}|[0-9a-f]{64}")
_SAFE = ("--no-pager", "--no-replace-objects", "--literal-pathspecs", "--no-optional-locks", "-c", "core.fsmonitor=false", "-c", "core.hooksPath=/dev/null",
         "-c", "core.attributesFile=/dev/null", "-c", "protocol.allow=never", "-c", "core.sshCommand=false", "-c", "credential.helper=",
         "-c", "core.askPass=false", "-c", "core.quotePath=false")
_MOST_FILES = 20_000
_MOST_IN_ALL = 200_000_000
_LONGEST = 120.0
_LINK = ("this is a link, and at a revision it is not followed", "put the file itself here", 1)


class RevisionProblem(Exception):
    """Why a book cannot be read at a revision, in words for the reader."""


@dataclass(frozen=True, slots=True)
class _Entry:
    path: str
    mode: str
    object: str
    size: int


class Revision:
    """A book at one commit of the repository that holds its folder. Raises RevisionProblem where there is none."""

    def __init__(self, folder: str, name: str, environment: dict[str, str]):
        """`environment` is the caller's; of it only the path, the home and what marks a safe folder reach git."""
        self._folder = folder
        self._environment = {**{key: environment[key] for key in ("PATH", "HOME", "SYSTEMROOT", "XDG_CONFIG_HOME") if key in environment},
                             "GIT_ATTR_NOSYSTEM": "1", "GIT_TERMINAL_PROMPT": "0", "GIT_NO_LAZY_FETCH": "1", "LC_ALL": "C"}
        if not _REVISION.fullmatch(name) or ".." in name or len(name) > 200:
            raise RevisionProblem(f"'{name[:80]}' is neither a folder that holds a book nor the name of a revision, such as main, HEAD~1 or v2")
        self.name = name
        self._above = self._git("rev-parse", "--show-prefix", why=f"{folder} is in no git repository").decode().removesuffix("\n")
        commit = self._git("rev-parse", "--verify", "--quiet", "--end-of-options", f"{name}^{{commit}}", why=f"there is no revision '{name}' here").decode().strip()
        if not _COMMIT.fullmatch(commit):
            raise RevisionProblem(f"'{name}' is no commit")
        self.commit = commit
        self._tree = self._listed()

    def sources(self, folders: tuple[str, ...]) -> list[SourceFile]:
        """Every source below the named folders, in the order of their paths, as the folder itself would give them; none where there is no book yet."""
        wanted = [entry for path, entry in sorted(self._tree.items(), key=lambda item: item[0].split("/"))
                  if path.split("/")[0] in folders and (path.endswith((".yaml", ".yml")) or (path.endswith(".jsonl") and path.startswith(f"{EDITIONS}/")))]
        data = self._blobs([entry for entry in wanted if entry.mode != "120000" and entry.size <= MOST_BYTES])
        return [SourceFile(printable(entry.path), "", _LINK) if entry.mode == "120000" else as_source(printable(entry.path), data.get(entry.object, b"\0" * (MOST_BYTES + 1)))
                for entry in wanted]

    def beside(self) -> Beside:
        """Below procedures/: pages written by hand, and the paths of all that is neither page nor source; nothing hidden."""
        seen = [entry for path, entry in sorted(self._tree.items()) if path.startswith("procedures/") and "/." not in path
                and not path.endswith((".yaml", ".yml")) and entry.mode != "120000"]
        pages = [entry for entry in seen if entry.path.endswith(".md")]
        data = self._blobs([entry for entry in pages if entry.size <= MOST_BYTES])
        return ([as_source(printable(entry.path), data.get(entry.object, b"\0" * (MOST_BYTES + 1))) for entry in pages],
                [printable(entry.path) for entry in seen if not entry.path.endswith(".md")])

    def picture(self, name: str) -> PictureFile:
        """What is known of the picture at a path from the book's folder."""
        entry = self._tree.get(name)
        if entry is None or entry.mode == "120000":
            return PictureFile(problem=("there is no such file beside this source", "check its name, capitals too"))
        data = self._blobs([entry])[entry.object] if entry.size <= MOST_OF_A_PICTURE else b"\0" * (MOST_OF_A_PICTURE + 1)
        return as_picture(name, data, entry.size)

    def day(self, folders: tuple[str, ...]) -> str:
        """The day on which anything in the named folders last changed, such as 2024-05-11."""
        return self._git("log", "-1", "--format=%cs", self.commit, "--", *folders, why=f"'{self.name}' has no history").decode().strip()

    def _listed(self) -> dict[str, _Entry]:
        told = self._git("ls-tree", "-r", "-l", "-z", "--full-tree", self.commit, "--", *(f"{self._above}{name}" for name in ("procedures", "site_data")),
                         why=f"'{self.name}' cannot be read")
        found: dict[str, _Entry] = {}
        for line in told.split(b"\0"):
            head, _, path = line.decode("utf-8", "replace").partition("\t")
            parts = head.split()
            if len(parts) == 4 and parts[1] == "blob":
                name = path.removeprefix(self._above)
                found[name] = _Entry(name, parts[0], parts[2], int(parts[3]))
        if len(found) > _MOST_FILES:
            raise RevisionProblem(f"'{self.name}' holds over {_MOST_FILES:,} files")
        return found

    def _blobs(self, entries: list[_Entry]) -> dict[str, bytes]:
        if sum(entry.size for entry in entries) > _MOST_IN_ALL:
            raise RevisionProblem(f"'{self.name}' holds over {_MOST_IN_ALL // 1_000_000} MB of sources")
        ids = list(dict.fromkeys(entry.object for entry in entries))
        told = self._git("cat-file", "--batch", why=f"'{self.name}' cannot be read", given="".join(f"{each}\n" for each in ids).encode())
        found, at = {}, 0
        for each in ids:
            head, _, _ = told[at:at + 200].partition(b"\n")
            parts = head.split()
            if len(parts) != 3:
                raise RevisionProblem(f"'{self.name}' is not whole in this repository: fetch all of it first")
            at += len(head) + 1
            size = int(parts[2])
            found[each] = told[at:at + size]
            at += size + 1
        return found

    def _git(self, *arguments: str, why: str, given: bytes = b"") -> bytes:
        try:
            with subprocess.Popen(["git", *_SAFE, *arguments], cwd=self._folder, env=self._environment, stdin=subprocess.PIPE,
                                  stdout=subprocess.PIPE, stderr=subprocess.PIPE) as process:
                try:
                    told, said = process.communicate(given, timeout=_LONGEST)
                except subprocess.TimeoutExpired:
                    process.kill()
                    raise RevisionProblem(f"git gave no answer within {_LONGEST:.0f} seconds") from None
        except OSError:
            raise RevisionProblem("git cannot be run here: install it, or compare two folders") from None
        if process.returncode:
            words = said.decode("utf-8", "replace").strip().splitlines()
            raise RevisionProblem(why + (f" (git: {printable(words[0][:200])})" if words else ""))
        return told
