"""What differs between two pieces of plain data, as plain data: small where little changed, and put back exactly.

A difference is one of: `{"=": value}` another value; `{"~": {key: difference or null}}` a map of which some keys
differ, null for one that is gone; `{"@": [[at, gone, [values]], ...]}` a list of which at place `at` so many are gone
and these stand instead; `{"#": {place: difference}}` a list of which some entries differ in themselves.
"""

from difflib import SequenceMatcher

from .canonical import canonical


class Unfit(ValueError):
    """A difference that does not belong to what it is put upon."""


def difference(old, new) -> dict:
    """What turns `old` into `new`; both as JSON gives them (maps with text keys, lists, texts, numbers, true, false, null)."""
    if isinstance(old, dict) and isinstance(new, dict):
        changed = {key: difference(old[key], new[key]) if key in old else {"=": new[key]}
                   for key in new if key not in old or not _same(old[key], new[key])}
        return {"~": {**changed, **{key: None for key in old if key not in new}}}
    if isinstance(old, list) and isinstance(new, list):
        if len(old) == len(new):
            return {"#": {str(at): difference(*pair) for at, pair in enumerate(zip(old, new, strict=True)) if not _same(*pair)}}
        names = [list(map(canonical, each)) for each in (old, new)]
        runs = SequenceMatcher(None, *names, autojunk=False).get_opcodes()
        return {"@": [[start, end - start, new[first:last]] for tag, start, end, first, last in runs if tag != "equal"]}
    return {"=": new}


def applied(old, change) -> object:
    """`old` with the difference put upon it; Unfit where it does not belong to it."""
    if not isinstance(change, dict) or len(change) != 1:
        raise Unfit("this is no difference")
    [(sort, what)] = change.items()
    if sort == "=":
        return what
    if sort == "~" and isinstance(old, dict) and isinstance(what, dict):
        kept = {key: value for key, value in old.items() if what.get(key, True) is not None}
        return {**kept, **{key: applied(old.get(key), each) for key, each in what.items() if each is not None}}
    if sort == "#" and isinstance(old, list) and isinstance(what, dict):
        changed = list(old)
        for at, each in what.items():
            if not at.isdecimal() or int(at) >= len(old):
                raise Unfit(f"there is no entry {at}")
            changed[int(at)] = applied(old[int(at)], each)
        return changed
    if sort == "@" and isinstance(old, list) and isinstance(what, list):
        return _spliced(old, what)
    raise Unfit("this difference is of another shape")


def _spliced(old: list, runs: list) -> list:
    found, done = [], 0
    for run in runs:
        if not isinstance(run, list) or len(run) != 3 or type(run[0]) is not int or type(run[1]) is not int or not isinstance(run[2], list):
            raise Unfit("this is no part of a list")
        at, gone, values = run
        if not done <= at <= len(old) or not 0 <= gone <= len(old) - at:
            raise Unfit(f"there is no place {at}")
        found += old[done:at] + values
        done = at + gone
    return found + old[done:]


def _same(old, new) -> bool:
    return type(old) is type(new) and old == new and (not isinstance(old, dict | list) or canonical(old) == canonical(new))
