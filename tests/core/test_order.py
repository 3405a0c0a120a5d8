"""The order of procedures, against plain ways of finding the same: every pair followed by hand, every order in which the work can be taken."""

import graphlib
import random

import pytest
from plan_book import HEAD, PROCEDURES, read

from witnessmark.core.lone_order import lone_order
from witnessmark.core.procedure import Act


def plan(graph: dict[str, set[str]], steps: dict[str, str] | None = None):
    """The ledger of a hoist whose procedures wait as `graph` says, with these steps or one that does nothing."""
    texts = dict.fromkeys(PROCEDURES, None)
    for name, before in graph.items():
        after = f"[{', '.join(sorted(before))}]" if before else "none"
        texts[name] = HEAD.format(title=name, after=after) + ((steps or {}).get(name) or "steps:\n  - {id: look, do: Look.}\n")
    return read(**texts)[0].ledgers["hoist"]


def some_graph(rng: random.Random, size: int) -> dict[str, set[str]]:
    names = [f"p{number}" for number in range(size)]
    rng.shuffle(names)
    return {name: {other for other in names[:at] if rng.random() < 0.35} for at, name in enumerate(names)}


def reach(graph: dict[str, set[str]]) -> set[tuple[str, str]]:
    """(later, earlier) for every pair, by following each wish until nothing new comes."""
    pairs = {(name, other) for name, before in graph.items() for other in before}
    while more := {(a, d) for a, b in pairs for c, d in pairs if b == c} - pairs:
        pairs |= more
    return pairs


@pytest.mark.parametrize("seed", range(12))
def test_what_comes_after_what_directly_or_through_others(seed):
    graph = some_graph(random.Random(seed), 9)
    order, pairs = plan(graph).order, reach(graph)
    for a in graph:
        assert {one.id for one in order.of(order.before[a])} == {b for b in graph if (a, b) in pairs}
        assert {one.id for one in order.of(order.behind[a])} == {b for b in graph if (b, a) in pairs}
        assert {one.id for one in order.of(order.beside(a))} == {b for b in graph if b != a and not {(a, b), (b, a)} & pairs}
        assert set(order.nearest(a)) == {b for b in graph[a] if not any((c, b) in pairs for c in graph[a])}


@pytest.mark.parametrize("seed", range(12))
def test_the_order_for_one_pair_of_hands_and_the_stages_keep_every_wish(seed):
    graph = some_graph(random.Random(seed), 9)
    ledger = plan(graph)
    row = [turn.procedure.id for turn in lone_order(ledger)]
    assert sorted(row) == sorted(graph)
    assert all(row.index(other) < row.index(name) for name, before in graph.items() for other in before)
    stages = [[one.id for one in stage] for stage in ledger.order.stages()]
    number = {name: at for at, stage in enumerate(stages) for name in stage}
    assert all(number[other] < number[name] for name, before in graph.items() for other in before)


@pytest.mark.parametrize("seed", range(12))
def test_a_loop_is_found_where_python_s_own_sorter_finds_one(seed):
    rng = random.Random(seed)
    names = [f"p{number}" for number in range(6)]
    graph = {name: {other for other in names if other != name and rng.random() < 0.2} for name in names}
    order = plan(graph).order
    try:
        graphlib.TopologicalSorter(graph).prepare()
        assert order.loops == []
    except graphlib.CycleError:
        for loop in order.loops:
            assert all(after in graph[name] for name, after in zip(loop, loop[1:] + loop[:1]))
        assert order.loops
    assert sorted(one.id for one in order.row) == names


LEAVE = """\
  - id: leave-{0}
    do: Loosen it.
    leaves:
      - id: {0}
        state: Loose.
        because: So.
        if forgotten: It falls.
        never while open: none
    acts: [{{lift: {1}}}]
"""
CLOSE = "  - {{id: close-{1}-{2}, do: Shut it., closes: [{0}/{1}], acts: [{{lift: {3}}}]}}\n"


def open_when(graph, acts) -> set[tuple[str, str, int]]:
    """(loose end, procedure, step) wherever it is open just before that step: every order of single steps is followed, step by step."""
    names = sorted(graph)
    start = (0,) * len(names), frozenset()
    seen, todo, found = {start}, [start], set()
    while todo:
        done, loose = todo.pop()
        finished = {name for name, at in zip(names, done) if at == len(acts[name])}
        for number, name in enumerate(names):
            at = done[number]
            if at == len(acts[name]) or not graph[name] <= finished:
                continue
            found |= {(end, name, at) for end in loose}
            what, opener, end = acts[name][at]
            after = loose | {f"{opener}/{end}"} if what == "leave" else loose - {f"{opener}/{end}"}
            state = (*done[:number], at + 1, *done[number + 1:]), after
            if state not in seen:
                seen.add(state)
                todo.append(state)
    return found


@pytest.mark.parametrize("seed", range(40))
def test_what_may_be_open_is_what_is_open_in_some_order_of_the_work(seed):
    """Side by side work too. The ledger walks no order, and must say the same: each step lifts a thing of its own, and is asked for by it."""
    rng = random.Random(seed)
    graph = some_graph(rng, 5)
    names = sorted(graph)
    acts: dict[str, list[tuple[str, str, str]]] = {name: [] for name in names}
    for number in range(4):
        opener = rng.choice(names)
        acts[opener].insert(rng.randrange(len(acts[opener]) + 1), ("leave", opener, f"e{number}"))
        for closer in rng.sample(names, 2):
            acts[closer].insert(rng.randrange(len(acts[closer]) + 1), ("close", opener, f"e{number}"))
    for name in names:
        acts[name] = acts[name] or [("close", name, "nothing")]
    steps = {name: "steps:\n" + "".join(LEAVE.format(end, f"{name}-{at}") if what == "leave" else CLOSE.format(opener, end, at, f"{name}-{at}")
                                       for at, (what, opener, end) in enumerate(row)) for name, row in acts.items()}
    ledger = plan(graph, steps)
    said = {(left.name, name, at) for left in ledger.left.values() for name in names for at in range(len(acts[name]))
            if ledger.first_while_open(left, Act("lift", f"{name}-{at}", left.end.place))}
    assert said == open_when(graph, acts)
