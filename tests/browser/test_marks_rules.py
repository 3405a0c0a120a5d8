"""The rules by which marks are read, run in the browser that will run them: no page, no storage, no clock."""

import pytest

BASE = {"v": 1, "device": "a", "at": "2024-05-11T10:00:00.000Z", "book": "b", "machine": "m", "procedure": "p", "serial": "7", "place": "", "step": "s",
        "slot": "tick", "value": True, "meaning": "M1", "variant": "A", "code": "C", "shown": "", "replaces": []}


def mark(name: str, *replaces: str, **more) -> dict:
    return {**BASE, "id": name, "replaces": list(replaces), **more}


@pytest.fixture(scope="module")
def run(chromium, demo_site, serve):
    """`run("state.js", "m => ...", value)` -> what a function of the module gives."""
    page = chromium.new_page()
    address = serve(demo_site, prefix="a/book/")
    page.goto(address + "type-24/flycrank-press-on/sheet/24-B/")
    yield lambda module, code, value=None: page.evaluate(
        f"async value => {{ const m = await import('{address}assets/witnessmark/bench/{module}'); return ({code})(m, value); }}", value)
    page.close()


TICK = """(m, [entries, meaning]) => { const slots = m.standing(entries); const where = { machine: "m", serial: "7", procedures: ["p", "old-p"],
  steps: ["s", "old-s"], place: "" }; return m.tickState(m.at(slots, { ...where, slot: "tick" }), m.at(slots, { ...where, slot: "answer" }), meaning); }"""


@pytest.mark.parametrize("entries, state", [
    ([], "open"),
    ([mark("1")], "done"),
    ([mark("1"), mark("2", "1", value=False)], "open"),
    ([mark("2", "1", value=False), mark("1")], "open"),                                     # whatever the order they are read in
    ([mark("1"), mark("2", "1", value=False), mark("3", "2")], "done"),
    ([mark("1"), mark("2", value=False)], "open"),                                          # two phones that never met: no tick to rely on
    ([mark("1", at="2030-01-01T00:00:00.000Z"), mark("2", "1", value=False, at="1990-01-01T00:00:00.000Z")], "open"),   # a clock that moved
    ([mark("1", meaning="M0")], "old"),
    ([mark("1", meaning="M0"), mark("2", slot="answer", value="fine")], "done"),
    ([mark("1", meaning="M0"), mark("2", slot="answer", value="fine", meaning="M0")], "old"),      # an answer to an older question
    ([mark("1", meaning="M0"), mark("2", "1")], "done"),
    ([mark("1", meaning="sheet 0K7M-29QX")], "old"),
    ([mark("1", step="old-s", procedure="old-p")], "done"),
    ([mark("1", serial="8")], "open"),
    ([mark("1", place="left")], "open"),
])
def test_the_state_of_a_tick(run, entries, state):
    assert run("state.js", TICK, [entries, "M1"]) == state


@pytest.mark.parametrize("entries, parts, state", [
    ([mark("1")], "", "done"),                                                              # a mark from before parts were kept: the machine's own
    ([mark("1", parts="Hub B")], "Hub B", "done"),
    ([mark("1", parts="Hub B")], "", "old"),
    ([mark("1")], "Hub B", "old"),
    ([mark("1", parts="Hub B"), mark("2", slot="answer", value="fine")], "", "done"),
    ([mark("1", parts="Hub B"), mark("2", slot="answer", value="fine", parts="Hub C")], "", "old"),
    ([mark("1", parts="Hub B")], None, "done"),                                             # the step is the same whatever is fitted
])
def test_a_tick_holds_for_the_parts_it_was_made_with(run, entries, parts, state):
    code = "(m, [all, parts]) => m.tickState(all.filter(e => e.slot === 'tick'), all.filter(e => e.slot === 'answer'), 'M1', parts)"
    assert run("state.js", code, [entries, parts]) == state


def test_two_values_for_one_reading_are_both_kept_until_a_third_replaces_them(run):
    first, second = mark("1", slot="value gap", value="0.008"), mark("2", slot="value gap", value="0.009", device="b")
    code = "(m, [ours, theirs]) => [...m.standing(m.union(ours, theirs)).values()].flat().map(each => each.value).sort()"
    assert run("state.js", code, [[first], [second]]) == ["0.008", "0.009"]
    assert run("state.js", code, [[first, mark("3", "1", "2", slot="value gap", value="0.010")], [second]]) == ["0.010"]


def test_joining_twice_or_in_either_order_is_the_same(run):
    a, b = [mark("1"), mark("2", "1", value=False)], [mark("1"), mark("9", slot="note", value="Oil seen.")]
    code = "(m, [a, b]) => [m.union(a, b), m.union(b, a), m.union(m.union(a, b), b)].map(all => all.map(each => each.id).sort().join())"
    assert set(run("state.js", code, [a, b])) == {"1,2,9"}


@pytest.mark.parametrize("spoilt", [None, 7, "x", [], {}, {**mark("1"), "v": 2}, {**mark("1"), "value": {"a": 1}}, {**mark("1"), "step": 4},
                                    {**mark("1"), "replaces": "1"}, {**mark("1"), "replaces": [1]}, {**mark("1"), "shown": "x" * 5000}, {**mark(""), "id": ""}])
def test_what_is_no_entry_is_not_taken_in(run, spoilt):
    assert run("state.js", "(m, one) => m.isEntry(one)", spoilt) is False
    assert run("state.js", "(m, one) => m.isEntry(one)", mark("1")) is True


def end(**more) -> dict:
    step = lambda name: {"procedures": ["p"], "steps": [name], "at": "", "meaning": {"A": "M1"}}
    return {"id": "tab", "state": "Tab unbent.", "left": step("s"), "ties": [step("t")], "need": {"A": [""]}, **more}


SIDES = {"need": {"A": ["left", "right"]}}


@pytest.mark.parametrize("ends, entries, loose", [
    ([end()], [], []),
    ([end()], [mark("1")], [""]),
    ([end()], [mark("1"), mark("2", step="t")], []),
    ([end()], [mark("1"), mark("2", step="t"), mark("3", "2", step="t", value=False)], [""]),
    ([end()], [mark("1"), mark("2", step="t", meaning="M0")], [""]),                        # closed under an older figure: not surely closed
    ([end()], [mark("1", meaning="M0")], [""]),                                             # left under an older figure: left all the same
    ([end()], [mark("1", place="left"), mark("2", place="right"), mark("3", step="t", place="left")], ["right"]),
    ([end(**SIDES)], [mark("1"), mark("2", step="t", place="left")], [""]),
    ([end(**SIDES)], [mark("1"), mark("2", step="t", place="left"), mark("3", step="t", place="right")], []),
    ([end()], [mark("1", serial="8")], []),
])
def test_what_is_loose_now(run, ends, entries, loose):
    found = run("state.js", "(m, [ends, entries]) => m.looseNow(ends, entries, 'm', '7').map(each => each.place)", [ends, entries])
    assert found == loose


@pytest.mark.parametrize("typed, number", [
    ("0.008", 0.008), (".008", 0.008), ("1,100", 1100), ("5/8", 0.625), ("1-1/2", 1.5), ("1 1/2", 1.5), (" 7 ", 7), ("-0.002", -0.002), ("−3", -3),
    ("0,008", None), ("1,5", None), ("", None), ("-", None), (".", None), ("1e3", None), ("0x10", None), ("5/0", None), ("about 5", None), ("1.2.3", None), ("12 in", None),
])
def test_a_number_as_a_shop_writes_it(run, typed, number):
    assert run("judge.js", "(m, text) => m.numberOf(text)", typed) == number


INCH = ["in", 0.0254, 0]
WINDOW = {"role": "window", "low": 0.006 * 0.0254, "high": 0.012 * 0.0254, "open": False}


@pytest.mark.parametrize("value, unit, limits, verdict", [
    (0.006, INCH, [WINDOW], "inside"), (0.012, INCH, [WINDOW], "inside"),                    # on the limit is inside
    (0.0059, INCH, [WINDOW], "below"), (0.0121, INCH, [WINDOW], "above"),
    (0.1524, ["mm", 0.001, 0], [WINDOW], "inside"), (0.1523, ["mm", 0.001, 0], [WINDOW], "below"),   # 0.006 in = 0.1524 mm exactly: the inch is 25.4 mm
    (5, ["", 1, 0], [{"role": "floor", "low": 5, "high": 5, "open": False}], "inside"), (4.9, ["", 1, 0], [{"role": "floor", "low": 5, "high": 5, "open": False}], "below"),
    (99, ["", 1, 0], [{"role": "floor", "low": 5, "high": 5, "open": False}], "inside"),
    (5.1, ["", 1, 0], [{"role": "ceiling", "low": 5, "high": 5, "open": False}], "above"), (1, ["", 1, 0], [{"role": "ceiling", "low": 5, "high": 5, "open": False}], "inside"),
    (5, ["", 1, 0], [{"role": "reject", "low": 5, "high": None, "open": True}], "inside"), (5.01, ["", 1, 0], [{"role": "reject", "low": 5, "high": None, "open": True}], "above"),
    (5, ["", 1, 0], [{"role": "reject", "low": None, "high": 5, "open": True}], "inside"), (4.9, ["", 1, 0], [{"role": "reject", "low": None, "high": 5, "open": True}], "below"),
    (5, ["", 1, 0], [{"role": "window", "low": 5, "high": None, "open": True}], "below"),    # "over 5"
    (212, ["°F", 5 / 9, 459.67 * 5 / 9], [{"role": "ceiling", "low": 373.15, "high": 373.15, "open": False}], "inside"),  # water boils at 212 °F = 373.15 K
    (0, ["", 1, 0], [{"role": "window", "low": 0, "high": 1, "open": False}], "inside"),
    (5, ["", 1, 0], [], "none"),
])
def test_a_reading_held_against_its_limits(run, value, unit, limits, verdict):
    found = run("judge.js", "(m, [value, unit, limits]) => m.judge(m.toSi(value, unit), limits).verdict", [value, unit, limits])
    assert found == verdict


@pytest.mark.parametrize("typed, code", [("0k7m29qx", "0K7M-29QX"), (" 0K7M 29QX", "0K7M-29QX"), ("OK7M-29QX", "0K7M-29QX"), ("lI7M-29QX", "117M-29QX"), ("0K7M-29Q", None), ("0K7M-29QU", None)])
def test_a_sheet_code_typed_by_hand(run, typed, code):
    assert run("paper.js", "(m, text) => m.codeOf(text)", typed) == code


@pytest.mark.parametrize("at, today, words", [("2024-05-01T10:00:00Z", "2024-05-11T11:00:00Z", "10 days"), ("2024-05-11T10:00:00Z", "2024-05-11T11:00:00Z", "today"),
                                              ("2024-05-11T10:00:00Z", "2020-01-01T00:00:00Z", "on 2024-05-11"), (None, "2024-05-11T11:00:00Z", "never")])
def test_when_marks_were_last_saved_even_by_a_clock_set_back(run, at, today, words):
    say = {"never saved": "never", "saved today": "today", "saved days": "{} days", "saved on": "on {}"}
    code = "(m, [at, today, say]) => m.lastSaved(at && { at }, Date.parse(today), say)"
    assert run("transfer.js", code, [at, today, say]) == words
