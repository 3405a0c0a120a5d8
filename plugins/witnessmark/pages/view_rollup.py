"""What the whole work on a machine needs, each thing once: to lay out, to make, to buy."""

from collections import defaultdict
from typing import Iterable, NamedTuple

from ..core.machine import Machine
from ..core.need_sums import total
from ..core.procedure import Need, Procedure
from . import words
from .fill_template import Markup
from .lookup import Lookup
from .prose import Prose, plain
from .view_needs import need_name
from .view_step import Target
from .view_torque import Torque

Users = list[tuple[Procedure, Need]]


class RollLine(NamedTuple):
    """`amounts` are sums, with the variants each is for ('' for all); `lines` say more; `used` are the procedures."""

    name: str
    amounts: tuple[tuple[str, str], ...]
    about: tuple[str, ...]
    lines: tuple[Markup | str, ...]
    used: tuple[str, ...]


class RollList(NamedTuple):
    id: str
    heading: str
    lines: tuple[RollLine, ...]


class RollView(NamedTuple):
    """`assemblies` lead to the lists of less than the whole; `back` to where this list belongs."""

    title: str
    lists: tuple[RollList, ...]
    assemblies: tuple[Target, ...]
    back: Target


def assemblies(lookup: Lookup) -> list[str]:
    """Those that procedures of the machine name, in the order of the work."""
    return list(dict.fromkeys(one.assembly for one in lookup.index.order[lookup.machine.id] if one.assembly))


def rollup_view(lookup: Lookup, torques: dict[str, tuple[Torque, ...]], assembly: str | None = None) -> RollView:
    """Of the whole machine, or of one assembly. `torques` holds what is set on wrenches in each procedure, by its id."""
    found: dict[tuple, Users] = defaultdict(list)
    presses: dict[tuple[str, str], Users] = defaultdict(list)
    for procedure in lookup.index.order[lookup.machine.id]:
        if assembly and procedure.assembly != assembly:
            continue
        for need in procedure.needs.presses:
            presses[need.press, need.gauge].append((procedure, None))
        for need in (*procedure.needs.tools, *procedure.needs.supplies, *procedure.needs.parts):
            found[_key(need)].append((procedure, need))
    roll = _Roll(lookup, torques)
    lists = [RollList("presses", words.NEED["presses"], tuple(roll.press(key, users) for key, users in sorted(presses.items())))]
    for name, heading in words.ROLL.items():
        mine = [users for key, users in found.items() if key[0] == name]
        lists.append(RollList(name, heading, tuple(sorted(map(roll.line, mine), key=lambda line: line.name.casefold()))))
    shown = tuple(each for each in lists if each.lines)
    if assembly:
        return RollView(f"{lookup.machine.title}, {plain_name(assembly)}", shown, (), Target(words.ROLL_TITLE, "../"))
    return RollView(lookup.machine.title, shown, tuple(Target(plain_name(name), f"{name}/") for name in assemblies(lookup)), Target(lookup.machine.title, "../../"))


def plain_name(assembly: str) -> str:
    return assembly.replace("-", " ")


def _key(need: Need) -> tuple:
    """Things are the same where this is: one use is a list of its own, whether supply or part."""
    sort = "one-use" if need.one_use or need.fate == "one-use" else need.sort
    return sort, need.name.casefold(), need.number, need.adapter, None if sort == "one-use" else need.fate


class _Roll:
    def __init__(self, lookup: Lookup, torques: dict[str, tuple[Torque, ...]]):
        self.lookup, self.torques, self.machine = lookup, torques, lookup.machine

    def press(self, key: tuple[str, str], users: Users) -> RollLine:
        press = self.lookup.book.presses.get(key[0])
        gauge = press.gauges.get(key[1]) if press else None
        return RollLine(press.title if press else key[0], (), (gauge.title if gauge else key[1],), (), _used(users))

    def line(self, users: Users) -> RollLine:
        need = users[0][1]
        about = [text for text in (need.number, words.FATE.get(need.fate or ""), words.ONE_USE if need.one_use and need.fate != "one-use" else None) if text]
        notes = dict.fromkeys(self._note(procedure, each) for procedure, each in users if each.note)
        return RollLine(need_name(self.lookup.book, need), _amounts(users, self.machine), tuple(about),
                        (*self._made(need), *self._settings(users), *_counting(users), *notes), _used(users))

    def _note(self, procedure: Procedure, need: Need) -> Markup:
        if not need.note.references():
            return plain(need.note)
        return Prose(self.lookup.of(procedure.id), False)(need.note)

    def _made(self, need: Need) -> Iterable[Markup | str]:
        tool = self.lookup.book.made_tools.get(need.name) if need.sort == "made" else None
        if tool:
            yield from filter(None, (plain(tool.purpose), *map(plain, tool.features)))
            if tool.drawing:
                yield f"{words.DRAWING}: {tool.drawing}"

    def _settings(self, users: Users) -> Iterable[str]:
        """Every setting this wrench, with this adapter, is given: for which fastener, and where there are several for what each is."""
        if users[0][1].sort != "wrench":
            return
        name = need_name(self.lookup.book, users[0][1])
        for procedure, _ in users:
            for torque in self.torques.get(procedure.id, ()):
                settings: dict[str, list[str]] = defaultdict(list)
                for case in torque.cases if torque.wrench == name else ():
                    if not case.refusals and (case.setting or case.torque):
                        settings[case.setting or case.torque].append(case.told.label)
                for setting, cases in settings.items():
                    yield f"{torque.label}, {'; '.join(cases)}: {setting}" if len(settings) > 1 else f"{torque.label}: {setting}"


def _counting(users: Users) -> Iterable[str]:
    for procedure, need in users:
        if need.counted:
            yield f"{words.COUNTED[need.counted]}: {procedure.title}"


def _used(users: Users) -> tuple[str, ...]:
    return tuple(dict.fromkeys(procedure.title for procedure, _ in users))


def _amounts(users: Users, machine: Machine) -> tuple[tuple[str, str], ...]:
    """The sum once where it is the same for all variants, else for each. What only goes round and round is not added up."""
    if users[0][1].sort not in ("supply", "part"):
        most = dict.fromkeys(need.count for _, need in users if need.count)
        return tuple(("", count) for count in most)
    alike: dict[str, list[str]] = {}
    for variant in machine.main.variants:
        if any(variant in procedure.variants for procedure, _ in users):
            alike.setdefault(total(users, machine, variant), []).append(variant)
    every = len(alike) == 1 and len(next(iter(alike.values()))) == len(machine.main.variants)
    return tuple(("" if every else ", ".join(variants), text) for text, variants in alike.items() if text or not every)
