"""Addresses on the forge where a book's sources live: its editor at a line, its form for a new issue.

The shape of `edit_uri` or `edit_uri_template` tells the forge, since shops run their own; a shape that is none of the three gets the
editor alone. GitHub documents `title` and `body` of a new issue (docs.github.com, "Creating an issue from a URL query"), GitLab
`issue[title]` and `issue[description]` (docs.gitlab.com, "Create an issue", "Using a URL with prefilled values"); of Forgejo and Gitea the
sources say it (routers/web/repo/issue_new.go reads `title` and `body`, routers/web/web.go has `_edit/<branch>/<path>`). GitLab's editor
takes `#L12` (its merge request 56159); that GitHub's does is from memory, and where it does not the file opens all the same. Forgejo's
editor takes no line, so there the line is shown beside it.
"""

import re
from typing import NamedTuple
from urllib.parse import quote, urlencode, urlsplit

GITHUB, GITLAB, FORGEJO, OTHER = "github", "gitlab", "forgejo", "other"
_ADDRESS = re.compile(r"https?://[^\s\"'<>]+")
_PATH = re.compile(r"\{path(_noext)?(!q)?\}")


class IssueForm(NamedTuple):
    """Where a new issue is written, and what its two fields are called in the address."""

    address: str
    title: str
    body: str

    def filled(self, title: str, body: str) -> str:
        return f"{self.address}?{urlencode({self.title: title, self.body: body})}"


class Forge(NamedTuple):
    """`way` is the address of the editor, with `{path}` where that of a source belongs; `repo` is '' where the book names none."""

    shape: str
    repo: str
    way: str

    def edit(self, path: str, line: int) -> str:
        """The editor, at the line where it takes one."""
        address = _filled(self.way, path)
        return address + (f"#L{line}" if self.shape in (GITHUB, GITLAB) and "#" not in address else "")

    def shown(self, path: str, line: int) -> str:
        """The line to look at, where the editor cannot be led to it; else ''."""
        if self.shape != FORGEJO:
            return ""
        return f"{_filled(self.way.replace('/_edit/', '/src/branch/', 1), path)}#L{line}"

    def issues(self) -> IssueForm | None:
        if self.shape == OTHER or not self.repo:
            return None
        if self.shape == GITLAB:
            return IssueForm(f"{self.repo}/-/issues/new", "issue[title]", "issue[description]")
        return IssueForm(f"{self.repo}/issues/new", "title", "body")


def forge_of(repo_url: str | None, edit_uri: str | None, template: str | None = None) -> Forge | None:
    """The forge that MkDocs' settings name; None where they name no editor, or one that is no web address. `template` is
    `edit_uri_template`, which stands over `edit_uri` as in MkDocs: `{path}`, `{path_noext}`, each with `!q` for a path whose slashes are quoted too."""
    repo = (repo_url or "").strip().rstrip("/").removesuffix(".git")
    if repo and not _ADDRESS.fullmatch(repo):
        return None
    way = template if template else f"{edit_uri.rstrip('/')}/{{path}}" if edit_uri else ""
    if not _PATH.search(way) or not (repo or template):
        return None
    if not _ADDRESS.match(way):
        way = f"{repo}{'' if way.startswith(('?', '#')) else '/'}{way.lstrip('/')}"
    if not _ADDRESS.fullmatch(_filled(way, "x")):
        return None
    before = _PATH.split(way)[0]
    return Forge(_shape(repo or before, before[len(repo):] if before.startswith(repo) else urlsplit(before).path), repo, way)


def _filled(way: str, path: str) -> str:
    """The address for one source; `{path!q}` has its slashes quoted, as in MkDocs."""
    def told(match: re.Match) -> str:
        text = path.rpartition(".")[0] if match[1] and "." in path else path
        return quote(text, safe="" if match[2] else "/")

    return _PATH.sub(told, way)


def _shape(repo: str, way: str) -> str:
    host = urlsplit(repo).hostname or ""
    if "/_edit/" in way:
        return FORGEJO
    if "/-/edit/" in way or ("/edit/" in way and "gitlab" in host):
        return GITLAB
    return GITHUB if "/edit/" in way else OTHER
