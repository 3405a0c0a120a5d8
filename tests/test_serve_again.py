"""After any edit, what `mkdocs serve` shows is byte for byte what it shows when it is started anew on the same sources."""

from pathlib import Path

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config
from small_book import PROCEDURE, SITE_DATA, sources
from test_mkdocs_plugin import CONFIG

from witnessmark.core.memory import FORGETFUL, Memory

ANOTHER = PROCEDURE.replace("      - {role: target, is: 30 short ton, source: chart p. 3, kept for the record: CF-9}\n", "")
CAP = ANOTHER.replace("Press the drum", "Set the cap").replace("after: none", "after: drum").replace(
    "Press to {press.target} and read {press}.", "Press to {drum/press.target}, not over {drum/press.ceiling} or {hoist/load}.").replace(
    "Bend the plate over.", "Bend both plates over.").replace("closes: [plate]", "closes: [plate, drum/plate]")
OPEN = PROCEDURE.replace("  - id: lock\n    do: Bend the plate over.\n    closes: [plate]\n", "")
WINCH = SITE_DATA["site_data/machines/hoist.yaml"].replace("Yard hoist", "Quay winch").replace("hoist:\n", "winch:\n").replace("hand-over: drum\n", "hand-over: rope\n")
ROPE = ANOTHER.replace("machine: hoist", "machine: winch").replace("Press the drum", "Reeve the rope")
BRAKE = ROPE[:ROPE.index("    leaves:")].replace("Reeve the rope", "Set the brake").replace("after: none", "after: rope")

#: What is edited, one after the other: the file, and what stands for what; None for a file that goes.
EDITS = [
    ("procedures/hoist/drum.yaml", "target, is: {early: 8", "target, is: {early: 9"),
    ("procedures/hoist/drum.yaml", "Press the drum", "Press the drum home"),
    ("procedures/hoist/drum.yaml", "steps:\n", "# a note of the author\nsteps:\n"),
    ("procedures/hoist/drum.yaml", "      - id: plate\n", "      - id: plate\n        tag: Red tag on the handle.\n"),
    ("site_data/cautions.yaml", "It can burst.", "It can burst and throw its pieces."),
    ("site_data/machines/hoist.yaml", "is: 2000 lbf", "is: 1900 lbf"),
    ("site_data/presses.yaml", "division: 100 psi", "division: 200 psi"),
    ("procedures/hoist/drum.yaml", "  - id: press\n", "  - id: press-home\n    was: press\n"),
    ("procedures/hoist/by-hand.md", "", "# By hand\n\nSee [the drum](drum/index.md).\n"),
    ("procedures/winch/brake.yaml", "", BRAKE),
    ("procedures/winch/brake.yaml", "after: rope", "after: none"),
    ("mkdocs.yml", "site_name: Small", "site_name: Smaller"),
    ("procedures/winch/brake.yaml", None, None),
]


class Author:
    """Serves the book in `folder` as `mkdocs serve` does, one build after the other, without its server."""

    def __init__(self, folder: Path, site: Path):
        self.folder, self.site = folder, site

    def edit(self, path: str, old: str | None, new: str | None) -> None:
        at = self.folder / path
        if old is None:
            at.unlink()
        elif not at.exists():
            at.write_text(new, encoding="utf-8")
        else:
            text = at.read_text(encoding="utf-8")
            assert old in text and old != new
            at.write_text(text.replace(old, new), encoding="utf-8")

    def shown(self, anew: bool = False) -> dict[str, bytes]:
        """The served site as it is now; `anew` by a server that has just been started."""
        config = load_config(config_file=str(self.folder / "mkdocs.yml"), site_dir=str(self.site))
        if anew:
            config.plugins.on_startup(command="serve", dirty=False)
        config.site_url = "http://127.0.0.1:8000/"
        build(config, serve_url=config.site_url)
        # The host writes the hour of its work into these two.
        return {path.relative_to(self.site).as_posix(): path.read_bytes() for path in self.site.rglob("*")
                if path.is_file() and not path.name.startswith("sitemap.xml")}


@pytest.fixture
def authors(tmp_path, monkeypatch):
    """Two with the same book: one who keeps the server running, one who starts it anew."""
    monkeypatch.setenv("NO_MKDOCS_2_WARNING", "1")
    texts = {file.path: file.text for file in sources()} | {
        "mkdocs.yml": CONFIG, "procedures/hoist/drum.yaml": OPEN, "procedures/hoist/cap.yaml": CAP, "site_data/machines/winch.yaml": WINCH,
        "procedures/winch/rope.yaml": ROPE}
    for name in ("one", "other"):
        for path, text in texts.items():
            (tmp_path / name / path).parent.mkdir(parents=True, exist_ok=True)
            (tmp_path / name / path).write_text(text.replace("hand-over: drum", "hand-over: cap"), encoding="utf-8")
    return Author(tmp_path / "one", tmp_path / "site"), Author(tmp_path / "other", tmp_path / "site")


def differing(again: dict[str, bytes], anew: dict[str, bytes]) -> list[str]:
    return sorted(path for path in {*again, *anew} if again.get(path) != anew.get(path))


def test_each_edit_shows_as_if_served_anew(authors):
    one, other = authors
    seen = [one.shown(anew=True)]
    for edit in EDITS:
        one.edit(*edit)
        seen.append(one.shown())
        assert b"This book has findings" not in seen[-1]["index.html"]
        assert seen[-1] != seen[-2] or edit[2].startswith("# a note")
    for edit, shown in zip(EDITS, seen[1:]):
        other.edit(*edit)
        assert differing(shown, other.shown(anew=True)) == [], edit


def test_an_edit_writes_what_it_touches_and_nothing_else(authors):
    one, _ = authors
    one.shown(anew=True)
    before = {path: path.stat().st_ino for path in one.site.rglob("*") if path.is_file()}
    one.edit("procedures/winch/rope.yaml", "people: 2", "people: 3")
    one.shown()
    written = {path.relative_to(one.site).as_posix() for path, inode in before.items() if path.exists() and path.stat().st_ino != inode}
    assert {"winch/rope/index.html", "winch/rope/sheet/early/index.html", "book.json"} <= written
    assert not [path for path in written if path.startswith(("hoist/", "assets/stylesheets/")) or path == "index.html"]


def test_a_build_that_fails_leaves_what_was_served(authors, monkeypatch):
    one, _ = authors
    good = one.shown(anew=True)
    one.edit("procedures/winch/rope.yaml", "Reeve the rope", "Reeve the new rope")
    with monkeypatch.context() as broken:
        broken.setattr("witnessmark.mkdocs_plugin.render", lambda *given: 1 / 0)
        with pytest.raises(ZeroDivisionError):
            one.shown()
    standing = {path: (one.site / path).read_bytes() for path in good}
    assert standing == good
    assert b"Reeve the new rope" in one.shown()["winch/rope/index.html"]


def test_a_broken_file_and_its_mend(authors):
    one, other = authors
    good = one.shown(anew=True)
    one.edit("procedures/hoist/drum.yaml", "cautions: [HZ-1]", "cautions: [HZ-7]")
    broken = one.shown()
    assert all(b"This book has findings" in broken[path] for path in ("index.html", "hoist/drum/index.html", "winch/rope/index.html"))
    one.edit("procedures/hoist/cap.yaml", "Set the cap", "Set the cap down")
    assert b"This book has findings" in one.shown()["hoist/drum/index.html"]
    assert b"Set the cap down" not in one.shown()["hoist/drum/index.html"]      # what was served stays, until all is well
    one.edit("procedures/hoist/drum.yaml", "cautions: [HZ-7]", "cautions: [HZ-1]")
    mended = one.shown()
    assert b"Set the cap down" in mended["hoist/drum/index.html"] and b"Set the cap down" not in good["hoist/drum/index.html"]
    other.edit("procedures/hoist/cap.yaml", "Set the cap", "Set the cap down")
    assert differing(mended, other.shown(anew=True)) == []


def test_what_rests_on_the_same_is_not_made_again():
    made = []
    memory = Memory()
    assert [memory.of("page", "text", lambda: made.append(1) or len(made)) for _ in range(2)] == [1, 1]
    assert memory.of("page", "other text", lambda: made.append(1) or len(made)) == 2
    assert [FORGETFUL.of("page", "text", lambda: made.append(1) or len(made)) for _ in range(2)] == [3, 4]
