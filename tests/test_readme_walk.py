"""The README's first book, typed as it stands there: every command is run, and prints what the README says it prints."""

import json
import re
import socket
import subprocess
import time
from pathlib import Path
from urllib.request import urlopen

import pytest
from workflow_run import environment, tools

from witnessmark.build import render
from witnessmark.prove import check

FILE = Path(__file__).parent.parent / "README.md"
README = FILE.read_text(encoding="utf-8")


def typed(text: str) -> list[tuple[str, list[str]]]:
    """Each command of the console blocks, in order, with the lines that are said to follow it."""
    found: list[tuple[str, list[str]]] = []
    for line in "\n".join(re.findall(r"^```console\n(.*?)^```$", text, re.MULTILINE | re.DOTALL)).splitlines():
        if line.startswith("$ "):
            found.append((line[2:], []))
        elif line.startswith("> ") and not found[-1][1]:
            found[-1] = (f"{found[-1][0]}\n{line[2:]}", [])
        elif line or found[-1][1]:
            found[-1][1].append(line)
    return [(command, "\n".join(lines).rstrip().splitlines()) for command, lines in found]


def as_said(lines: list[str], printed: str) -> bool:
    """`...` stands for what differs from one run to the next; alone on a line, for any lines."""
    pattern = "".join(r"(?:.*\n)*?" if line == "..." else re.escape(line).replace(r"\.\.\.", ".*") + r"\n" for line in lines)
    return re.fullmatch(pattern, printed) is not None


@pytest.fixture(scope="module")
def given(tmp_path_factory) -> dict[str, str]:
    names = {f"GIT_{who}_{what}": "a@example.org" for who in ("AUTHOR", "COMMITTER") for what in ("NAME", "EMAIL")}
    return environment(tools(tmp_path_factory.mktemp("path") / "tools"), **names)


def test_the_first_book_of_the_readme_is_walked(tmp_path, given, update_golden):
    """Sheet codes change with the tool: --update-golden writes what is printed now into the README, line for line."""
    walk = typed(README)
    assert [command.split()[1] for command, _ in walk if command.startswith(("witnessmark", "mkdocs"))] == [
        "new", "check", "serve", "edition", "compare", "edition"]
    folder, codes = tmp_path, []
    for command, said in walk:
        if command == "mkdocs serve":
            assert as_said(said, served(folder, given))
            continue
        done = subprocess.run(["bash", "-c", f"{command}\nstatus=$?\npwd > '{tmp_path}/where'\nexit $status"], cwd=folder, env=given, text=True,
                              stdout=subprocess.PIPE, stderr=subprocess.STDOUT)
        if update_golden and "..." not in said:
            kept = dict(zip(done.stdout.splitlines(), said))
            now = [kept[line] if line in kept and as_said([kept[line]], f"{line}\n") else line for line in done.stdout.splitlines()]
            FILE.write_text(FILE.read_text(encoding="utf-8").replace("\n".join(said), "\n".join(now)), encoding="utf-8")
            said = now
        assert done.returncode == 0 and as_said(said, done.stdout), f"$ {command}\n{done.stdout}"
        codes = re.findall(r"late: (\w{4}-\w{4}) -> ", done.stdout) or codes
        folder = Path((tmp_path / "where").read_text(encoding="utf-8").strip())
    checked = check(folder)
    assert checked.findings == ()
    files = render(checked, "x", "x", None).files
    [old] = codes
    told = json.loads(files[f"assets/witnessmark/editions/{old[:2]}.json"])["codes"][old]
    assert (told["state"], told["already done"]) == ("superseded", "inspect")


def served(folder: Path, given: dict[str, str]) -> str:
    """What `mkdocs serve` prints until its first page has been read; on a port that is free, told as the one it has by itself."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    log = folder.parent / "served"
    with open(log, "w", encoding="utf-8") as file, subprocess.Popen(["mkdocs", "serve", "-a", f"127.0.0.1:{port}"], cwd=folder, env=given, stdout=file,
                                                                    stderr=subprocess.STDOUT) as server:
        try:
            while "Serving on" not in log.read_text(encoding="utf-8"):
                assert server.poll() is None, log.read_text(encoding="utf-8")
                time.sleep(0.1)
            printed = log.read_text(encoding="utf-8")
            with urlopen(f"http://127.0.0.1:{port}/saw-bench/pulley-press-on/", timeout=60) as page:
                assert b"Press the pulley on the spindle" in page.read()
        finally:
            server.terminate()
    return printed.replace(f":{port}/", ":8000/")


def test_what_the_readme_says_is_not_taken_for_true_unseen():
    said = ["HEAD (...) -> .", "...", "1 procedure: no findings"]
    assert as_said(said, "HEAD (a1b2) -> .\nx\ny\n1 procedure: no findings\n")
    assert not as_said(said, "HEAD (a1b2) -> .\nx\n1 procedure: 1 finding\n") and not as_said(["x"], "x\ny\n") and not as_said([], "x\n")
