"""The sheets that a correction made untrue, read from the files of the editions: what is destroyed, and what was worked by them."""

import json
from collections.abc import Mapping
from typing import NamedTuple


class OldSheet(NamedTuple):
    """A code on paper that may be about. `stop` where the correction changed something grave on it."""

    code: str
    on: str
    machine: str
    procedure: str
    variant: str
    title: str
    stop: bool


def old_sheets(files: Mapping[str, str]) -> dict[str, list[OldSheet]]:
    """By correction, the newest first; `files` are those that DEVELOPERS.md tells of, by path."""
    found: dict[str, list[OldSheet]] = {}
    for text in files.values():
        for code, sheet in json.loads(text).get("codes", {}).items():
            for correction in (sheet["corrections"] if sheet["state"] != "same" else ()):
                grave = any(change["stop"] for change in sheet["changes"] if correction["id"] in change["why"])
                found.setdefault(correction["id"], []).append(OldSheet(
                    code, sheet["on"] or "", sheet["machine"], sheet["procedure"], sheet["variant"], sheet["title"], grave))
    return {name: sorted(sheets, key=lambda sheet: (sheet.on, sheet.machine, sheet.procedure, sheet.variant), reverse=True) for name, sheets in found.items()}
