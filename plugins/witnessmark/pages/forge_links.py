"""Addresses on the forge where a book's sources live: its editor at a line, its form for a new issue.

The shape of `edit_uri` tells the forge, since shops run their own; a shape that is none of the three gets the editor alone.
GitHub documents `title` and `body` of a new issue (docs.github.com, "Creating an issue from a URL query"), GitLab `issue[title]` and
`issue[description]` ("Using a URL with prefilled values"), Forgejo `title` and `body` ("Issue and pull request templates").
GitLab's editor takes `#L12` (its merge request 56159); that GitHub's does is from memory, and where it does not the file opens all the same.
Forgejo's editor takes no line, so there the line is shown beside it.
"""

import re
from typing import NamedTuple
from urllib.parse import quote, urlencode, urlsplit

GITHUB, GITLAB, FORGEJO, OTHER = "github", "gitlab", "forgejo", "other"
_ADDRESS = re.compile(r"https?://[^\s\"'<>]+")


class IssueForm(NamedTuple):
    """Where a new issue is written, and what its two fields are called in the address."""

    address: str
    title: str
    body: str

    def filled(self, title: str, body: str) -> str:
        return f"{self.address}?{urlencode({self.title: title, self.body: body})}"


class Forge(NamedTuple):
    """`base` stands before the path of a source and ends in a slash."""

    shape: str
    repo: str
    base: str

    def edit(self, path: str, line: int) -> str:
        """The editor, at the line where it takes one."""
        return f"{self.base}{quote(path)}" + (f"#L{line}" if self.shape in (GITHUB, GITLAB) else "")

    def shown(self, path: str, line: int) -> str:
        """The line to look at, where the editor cannot be led to it; else ''."""
        if self.shape != FORGEJO:
            return ""
        return f"{self.base.replace('/_edit/', '/src/branch/', 1)}{quote(path)}#L{line}"

    def issues(self) -> IssueForm | None:
        if self.shape == OTHER:
            return None
        if self.shape == GITLAB:
            return IssueForm(f"{self.repo}/-/issues/new", "issue[title]", "issue[description]")
        return IssueForm(f"{self.repo}/issues/new", "title", "body")


def edit_base(repo_url: str | None, edit_uri: str | None) -> str | None:
    """Where the sources stand in the forge's editor, ending in a slash; None without a repository."""
    if not repo_url or not edit_uri:
        return None
    return f"{repo_url.rstrip('/')}/{edit_uri.strip('/')}/"


def forge_of(repo_url: str | None, edit_uri: str | None) -> Forge | None:
    """The forge that MkDocs' settings name; None without both, or where they are no web address."""
    repo = (repo_url or "").strip().rstrip("/").removesuffix(".git")
    if not edit_uri or not _ADDRESS.fullmatch(repo):
        return None
    base = edit_uri if _ADDRESS.fullmatch(edit_uri) else f"{repo}/{edit_uri.strip('/')}"
    return Forge(_shape(repo, base[len(repo):] if base.startswith(repo) else urlsplit(base).path), repo, f"{base.rstrip('/')}/")


def _shape(repo: str, way: str) -> str:
    host = urlsplit(repo).hostname or ""
    if "/_edit/" in way:
        return FORGEJO
    if "/-/edit/" in way or ("/edit/" in way and "gitlab" in host):
        return GITLAB
    return GITHUB if "/edit/" in way else OTHER
