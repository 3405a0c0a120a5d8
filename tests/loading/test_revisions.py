"""A book as it stood at a revision, from real repositories: nothing is run but git, and git runs nothing."""

import os
import subprocess
from pathlib import Path

import pytest
from small_book import PROCEDURE, sources

from witnessmark.build import check_at
from witnessmark.prove import check
from witnessmark.loading.revisions import Revision, RevisionProblem

PNG = bytes.fromhex("89504e470d0a1a0a0000000d49484452000000010000000108060000001f15c4890000000d49444154789c6360606060000000050001a5f645400000000049454e44ae426082")


def git(folder: Path, *arguments: str) -> str:
    environment = {**os.environ, "GIT_CONFIG_GLOBAL": os.devnull, "GIT_CONFIG_NOSYSTEM": "1", "GIT_AUTHOR_NAME": "A", "GIT_AUTHOR_EMAIL": "a@example.org",
                   "GIT_COMMITTER_NAME": "A", "GIT_COMMITTER_EMAIL": "a@example.org"}
    return subprocess.run(["git", *arguments], cwd=folder, env=environment, check=True, capture_output=True, text=True).stdout.strip()


def write(folder: Path, procedure: str = PROCEDURE, **changed: str) -> Path:
    for file in sources(procedure, **changed):
        path = folder / file.path
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(file.text, encoding="utf-8")
    return folder


@pytest.fixture
def repository(tmp_path) -> Path:
    """Two commits of the smallest book: the ceiling was 13, then 14."""
    folder = tmp_path / "book"
    write(folder, PROCEDURE.replace("is: 14 short ton", "is: 13 short ton"))
    git(folder, "init", "-q", "-b", "main")
    git(folder, "add", ".")
    git(folder, "commit", "-qm", "first")
    git(folder, "tag", "v1")
    write(folder)
    git(folder, "commit", "-qam", "second")
    return folder


def at(folder: Path, name: str, **environment: str) -> Revision:
    return Revision(str(folder), name, {**os.environ, **environment})


def test_a_revision_is_read_as_the_folder_would_be(repository):
    then, now = check_at(at(repository, "HEAD")), check(repository)
    assert then.texts == now.texts and then.book == now.book and then.findings == now.findings


@pytest.mark.parametrize("name", ["v1", "HEAD~1", "HEAD^", "main~", "@~1"])
def test_older_revisions_hold_the_older_figure(repository, name):
    assert "is: 13 short ton" in check_at(at(repository, name)).texts["procedures/hoist/drum.yaml"]


def test_a_commit_may_be_named_by_its_number(repository):
    number = git(repository, "rev-parse", "HEAD~1")
    assert at(repository, number).commit == number == at(repository, number[:8]).commit


def test_a_book_below_the_top_of_its_repository_is_found(tmp_path):
    folder = write(tmp_path / "docs" / "the book")
    (tmp_path / "procedures").mkdir()
    (tmp_path / "procedures/other.yaml").write_text("title: not ours\n")
    git(tmp_path, "init", "-q", "-b", "main")
    git(tmp_path, "add", ".")
    git(tmp_path, "commit", "-qm", "first")
    assert check_at(at(folder, "main")).texts == check(folder).texts


def test_pictures_count_by_their_bytes(repository):
    step = "    do: Press to {press.target} and read {press}.\n"
    write(repository, PROCEDURE.replace(step, step + "    picture: {file: hub.png, shows: The hub}\n"))
    (repository / "procedures/hoist/hub.png").write_bytes(PNG)
    git(repository, "add", ".")
    git(repository, "commit", "-qm", "picture")
    then, now = check_at(at(repository, "HEAD")), check(repository)
    assert then.book.pictures == now.book.pictures and then.book.pictures["procedures/hoist/hub.png"].digest


@pytest.mark.parametrize("name", ["--output=/tmp/taken", "-h", "--upload-pack=touch taken", "--all", "main..v1", "main:procedures", ":/first", "main v1",
                                  "$(touch taken)", "main\nv1", "../main", "", "main@{upstream}", "a" * 300, "^main", "main;touch taken"])
def test_what_is_no_plain_revision_never_reaches_git(repository, name):
    with pytest.raises(RevisionProblem, match="neither a folder that holds a book nor the name of a revision"):
        at(repository, name)
    assert not list(repository.rglob("taken")) and not Path("/tmp/taken").exists()


@pytest.mark.parametrize("name, said", [("nowhere", "there is no revision 'nowhere'"), ("HEAD~9", "there is no revision"), ("v1^^", "there is no revision")])
def test_a_revision_that_is_not_there_is_said(repository, name, said):
    with pytest.raises(RevisionProblem, match=said):
        at(repository, name)


def test_a_branch_that_looks_like_an_option_is_refused(repository):
    git(repository, "update-ref", "refs/heads/--all", "HEAD")
    with pytest.raises(RevisionProblem):
        at(repository, "--all")


def test_a_folder_without_a_repository_is_said(tmp_path):
    with pytest.raises(RevisionProblem, match="is in no git repository"):
        at(write(tmp_path / "book"), "main", GIT_CEILING_DIRECTORIES=str(tmp_path))


def test_a_revision_without_a_book_is_an_empty_book(tmp_path):
    (tmp_path / "note").write_text("x")
    git(tmp_path, "init", "-q", "-b", "main")
    git(tmp_path, "add", ".")
    git(tmp_path, "commit", "-qm", "first")
    found = check_at(at(tmp_path, "main"))
    assert (found.texts, found.findings, found.book.machines) == ({}, (), {})


def test_git_runs_no_hook_filter_monitor_or_driver_of_the_repository(repository):
    taken = repository.parent / "taken"
    run = repository.parent / "run"
    run.write_text(f"#!/bin/sh\necho $0 $* >> {taken}\ncat\n")
    run.chmod(0o755)
    for hook in ("post-checkout", "reference-transaction", "post-index-change", "pre-auto-gc", "fsmonitor-watchman"):
        (repository / ".git/hooks" / hook).parent.mkdir(exist_ok=True)
        (repository / ".git/hooks" / hook).write_text(run.read_text())
        (repository / ".git/hooks" / hook).chmod(0o755)
    for key in ("core.fsmonitor", "filter.evil.smudge", "filter.evil.clean", "filter.evil.process", "diff.evil.textconv", "diff.evil.command", "diff.external",
                "core.pager", "core.sshCommand", "core.gitProxy", "credential.helper", "core.askPass", "alias.cat-file", "alias.ls-tree", "alias.rev-parse"):
        git(repository, "config", key, str(run))
    (repository / ".gitattributes").write_text("*.yaml filter=evil diff=evil\n")
    git(repository, "-c", "filter.evil.clean=cat", "-c", "filter.evil.process=", "-c", "core.fsmonitor=false", "add", ".gitattributes")
    tree = git(repository, "-c", "core.fsmonitor=false", "write-tree")
    number = git(repository, "commit-tree", tree, "-m", "evil", "-p", "HEAD")
    taken.unlink(missing_ok=True)
    checked = check_at(at(repository, number))
    assert "is: 14 short ton" in checked.texts["procedures/hoist/drum.yaml"] and not taken.exists()


def test_the_caller_s_own_git_variables_do_not_reach_git(repository, tmp_path):
    other = write(tmp_path / "other")
    git(other, "init", "-q", "-b", "main")
    git(other, "add", ".")
    git(other, "commit", "-qm", "other")
    assert at(repository, "v1", GIT_DIR=str(other / ".git"), GIT_WORK_TREE=str(other), GIT_EXTERNAL_DIFF="false").commit == git(repository, "rev-parse", "v1")


def test_a_link_at_a_revision_is_a_finding_and_is_not_followed(repository):
    (repository / "procedures/hoist/link.yaml").symlink_to("/etc/passwd")
    git(repository, "add", ".")
    git(repository, "commit", "-qm", "link")
    [finding] = [each for each in check_at(at(repository, "HEAD")).findings if each.place.path == "procedures/hoist/link.yaml"]
    assert finding.rule == "unreadable" and "not followed" in finding.message


def test_a_file_too_large_and_a_name_with_a_line_end_are_findings(repository):
    (repository / "procedures/hoist/big.yaml").write_text("#" * 1_000_001)
    (repository / "procedures/hoist/two\nlines.yaml").write_text("title: x\n")
    git(repository, "add", ".")
    git(repository, "commit", "-qm", "big")
    lines = [each.line() for each in check_at(at(repository, "HEAD")).findings]
    assert any(line.startswith("procedures/hoist/big.yaml:1:1: error: the file is over 1 MB") for line in lines)
    assert any("two?lines" in line for line in lines) and not any("\n" in line for line in lines)


def test_what_was_replaced_is_read_as_it_was(repository):
    """`git replace` shows another object in the place of one: the figures of a commit are those it was made with."""
    old, new = (git(repository, "rev-parse", f"{name}:procedures/hoist/drum.yaml") for name in ("v1", "HEAD"))
    git(repository, "replace", old, new)
    assert "is: 13 short ton" in check_at(at(repository, "v1")).texts["procedures/hoist/drum.yaml"]
