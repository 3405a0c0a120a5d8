"""Runs the commands of a workflow of a forge on this machine: the same text, handed to the shell that the forge would use.

Actions are left out, and so are steps that install, since what they would install is what is tested.
"""

import os
import subprocess
import sys
from dataclasses import dataclass, field
from pathlib import Path

import yaml

CHANGE_ONLY = "${{ !cancelled() && github.event_name == 'pull_request' }}"
#: How the forge calls bash ("Workflow syntax for GitHub Actions", jobs.<id>.steps[*].shell).
SHELLS = {None: ["bash", "-e"], "bash": ["bash", "--noprofile", "--norc", "-eo", "pipefail"]}


@dataclass
class Run:
    """What each step printed and ended with, by its name, and what stands in the summary."""

    printed: dict[str, str] = field(default_factory=dict)
    status: dict[str, int] = field(default_factory=dict)
    summary: str = ""


def workflow(path: Path) -> dict:
    """Read as text, so that `on` stays a word and is not the true of YAML 1.1."""
    return yaml.load(path.read_text(encoding="utf-8"), yaml.BaseLoader)


def git(folder: Path, *arguments: str) -> str:
    environment = {**os.environ, "GIT_CONFIG_GLOBAL": os.devnull, "GIT_CONFIG_NOSYSTEM": "1", "GIT_AUTHOR_NAME": "A", "GIT_AUTHOR_EMAIL": "a@example.org",
                   "GIT_COMMITTER_NAME": "A", "GIT_COMMITTER_EMAIL": "a@example.org"}
    return subprocess.run(["git", *arguments], cwd=folder, env=environment, check=True, capture_output=True, text=True).stdout.strip()


def tools(folder: Path) -> Path:
    """A folder for the path: the commands of the tool, run by this very Python."""
    folder.mkdir(exist_ok=True)
    for name, module in (("witnessmark", "witnessmark.cli"), ("mkdocs", "mkdocs")):
        (folder / name).write_text(f'#!/bin/sh\nexec "{sys.executable}" -m {module} "$@"\n', encoding="utf-8")
        (folder / name).chmod(0o755)
    return folder


def environment(path: Path, **more: str) -> dict[str, str]:
    """What a step has: the tool on its path, nothing of the caller's git."""
    return {"PATH": f"{path}{os.pathsep}{os.environ['PATH']}", "HOME": str(path.parent), "LANG": "C.UTF-8", "GIT_CONFIG_NOSYSTEM": "1", "NO_MKDOCS_2_WARNING": "1",
            "PYTHONPATH": os.pathsep.join(entry for entry in sys.path if entry), **more}


def run_job(job: dict, repository: Path, scratch: Path, event: str = "pull_request") -> Run:
    """The steps of one job in the order they stand in, those after a failure only where they say so."""
    scratch.mkdir()
    summary, run, failed = scratch / "summary", Run(), False
    summary.touch()
    given = environment(tools(scratch / "tools"), GITHUB_STEP_SUMMARY=str(summary), RUNNER_TEMP=str(scratch), GITHUB_PATH=str(scratch / "path"))
    for step in job["steps"]:
        when = step.get("if")
        assert when in (None, CHANGE_ONLY), when
        if "run" not in step or step["name"].startswith("Install") or (failed and when is None) or (when and event != "pull_request"):
            continue
        (scratch / "step").write_text(step["run"], encoding="utf-8")
        done = subprocess.run([*SHELLS[step.get("shell")], str(scratch / "step")], cwd=repository, env=given, capture_output=True, text=True, stdin=subprocess.DEVNULL)
        run.printed[step["name"]], run.status[step["name"]] = done.stdout + done.stderr, done.returncode
        failed = failed or done.returncode != 0
    run.summary = summary.read_text(encoding="utf-8")
    return run
