"""The demonstration's past: its sources as they stood before COR-1, COR-2 and COR-3, made by putting each correction back.

`python tests/demo/history.py` writes site_data/editions anew from that past: the first edition, one on the day of each
correction, and one of the sources as they stand now. Run it when the demonstration's sheets have changed before a release.
"""

import shutil
import sys
import tempfile
from pathlib import Path

from witnessmark.cli import main

BOOK = Path(__file__).parent.parent.parent
CRANK, DRIVE, FILL = (f"procedures/type-24/{name}.yaml" for name in ("flycrank-press-on", "final-drive-build", "fill-and-engine-test"))

#: What COR-1 changed in the press force itself: now, and before.
FORCE = ((CRANK, "24-A: {24-A: 15 long ton, 24-B: 15 long ton, 24-C: 15 long ton}\n          24-B: {24-A: 16.45 long ton, 24-B: 18 long ton, 24-C: 18 long ton}\n"
          "          24-C: {24-A: 17.8 long ton,",
          "24-A: {24-A: 16.5 long ton, 24-B: 16.5 long ton, 24-C: 16.5 long ton}\n          24-B: {24-A: 17.45 long ton, 24-B: 18 long ton, 24-C: 18 long ton}\n"
          "          24-C: {24-A: 18.8 long ton,"),
         (CRANK, "is: {24-A: 18 long ton, 24-B: 22 long ton, 24-C: 26 long ton}", "is: {24-A: 20 long ton, 24-B: 22 long ton, 24-C: 26 long ton}"))
#: What was set anew the same day because of it: the nut, and the force its advance is shown at.
FOLLOWED = ((CRANK, "24-A: {24-A: 15 long ton, 24-B: 15 long ton, 24-C: 15 long ton}\n      24-B: {24-A: 16.45 long ton,",
             "24-A: {24-A: 16.5 long ton, 24-B: 16.5 long ton, 24-C: 16.5 long ton}\n      24-B: {24-A: 17.45 long ton,"),
            (CRANK, "24-A: {24-A: 360 lbf·ft, 24-B: 360 lbf·ft, 24-C: 360 lbf·ft}\n          24-B: {24-A: 420 lbf·ft,",
             "24-A: {24-A: 400 lbf·ft, 24-B: 400 lbf·ft, 24-C: 400 lbf·ft}\n          24-B: {24-A: 440 lbf·ft,"),
            (CRANK, "  crank-at-target:\n    label: Fly-crank at the target force, dry\n    working: taper-advance\n    force: {24-A: 15 long ton,", "  crank-at-target:\n    working: taper-advance\n    force: {24-A: 16.5 long ton,"),
            (CRANK, "  crank-oiled:\n    label: Fly-crank at the target force, oiled\n    working: taper-advance\n    force: {24-A: 15 long ton,", "  crank-oiled:\n    working: taper-advance\n    force: {24-A: 16.5 long ton,"))
#: COR-2: the dial's arm was taken as 7.50 in.
DIAL = ((DRIVE, "at radius: 7.25 in", "at radius: 7.50 in"), (DRIVE, "with the dial at 7.25 in radius", "with the dial at 7.50 in radius"),
        (DRIVE, "dial radius: 7.25 in", "dial radius: 7.50 in"))
#: COR-3: the pints were read as US pints.
SUMP = ((FILL, "is: {24-A: 14 imperial pints, 24-B: 14 imperial pints, 24-C: 9.5 litres}", "is: {24-A: 6.62 litres, 24-B: 6.62 litres, 24-C: 9.5 litres}"),)

#: Edition by edition: the day, what still stood as before, and the corrections not yet made.
STATES = (("2022-10-15", (*FORCE, *FOLLOWED, *DIAL, *SUMP), ("COR-1", "COR-2", "COR-3")),
          ("2023-03-18", (*DIAL, *SUMP), ("COR-2", "COR-3")),
          ("2023-09-02", SUMP, ("COR-3",)),
          ("2024-01-27", (), ()))


def as_it_stood(folder: Path, undone=(), not_yet=(), editions: bool = False) -> Path:
    """The book in `folder` as today, with each (file, now, before) of `undone` put back and the corrections `not_yet` left out."""
    for name in ("procedures", "site_data"):
        shutil.rmtree(folder / name, ignore_errors=True)
        shutil.copytree(BOOK / name, folder / name, ignore=None if editions else shutil.ignore_patterns("editions"))
    for path, now, before in undone:
        text = (folder / path).read_text(encoding="utf-8")
        assert now in text, (path, now)
        (folder / path).write_text(text.replace(now, before), encoding="utf-8")
    path = folder / "site_data/corrections.yaml"
    text = path.read_text(encoding="utf-8")
    for name in not_yet:
        start = text.index(f"{name}:\n")
        end = min((at for at in (text.find("\nCOR-", start) + 1,) if at > 0), default=len(text))
        text = text[:start] + text[end:]
    path.write_text(text if "COR-" in text else "none\n", encoding="utf-8")
    return folder


def write_editions(book: Path) -> None:
    """Every edition of the demonstration, into the book's own site_data/editions."""
    with tempfile.TemporaryDirectory() as folder:
        kept = Path(folder) / "kept"
        for day, undone, not_yet in STATES:
            state = as_it_stood(Path(folder) / "book", undone, not_yet)
            if kept.exists():
                shutil.copytree(kept, state / "site_data/editions")
            assert main(["edition", str(state), "--on", day]) == 0
            shutil.rmtree(kept, ignore_errors=True)
            shutil.copytree(state / "site_data/editions", kept)
        shutil.rmtree(book / "site_data/editions", ignore_errors=True)
        shutil.copytree(kept, book / "site_data/editions")


if __name__ == "__main__":
    write_editions(BOOK)
    sys.exit(0)
