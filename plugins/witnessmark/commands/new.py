"""`witnessmark new`: a small whole book to begin with."""

import sys

from ..build import first_book


def run(chosen) -> int:
    """Writes only into a folder that it makes or finds empty, so that nothing of the reader's is touched."""
    folder = chosen.folder
    try:
        if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
            print(f"witnessmark: {folder} is not an empty folder: name one that is not there yet", file=sys.stderr)
            return 2
        files = first_book()
        for path, text in files.items():
            (folder / path).parent.mkdir(parents=True, exist_ok=True)
            with open(folder / path, "x", encoding="utf-8", newline="\n") as file:
                file.write(text)
    except OSError as error:
        print(f"witnessmark: {folder} cannot be written: {error.strerror}", file=sys.stderr)
        return 2
    print(f"{folder}: a book of one machine and one procedure, {len(files)} files. README.md there says what each is for.\n"
          f"Now type: cd {folder}, then witnessmark check, then mkdocs serve")
    return 0
