"""The scripts that work at the bench say what Python says: the same marks, roundings, words and refusals, in one run of the browser.

The browser is given the inputs alone; its answers come back and are compared here.
"""

import re

import bench_vectors as vectors
import pytest

from witnessmark.pages.fill_template import static_files
from witnessmark.pages.script_tables import script_tables
from witnessmark.workings.registry import WORKINGS
from witnessmark.workings.tables.gauge_ranges import standard_gauges

NAMES = ["rounding", "quantity", *vectors.WORKINGS]
ANSWER = """async asked => {
  const from = name => import(new URL(`assets/witnessmark/bench/${name}.js`, location.href));
  const [{ Exact, roundTo }, { Problem }, { readQuantity }] = await Promise.all(["exact", "units", "quantity"].map(from));
  const [{ pressCard }, { wrenchSetting }, { advanceReading }, { shimStack }, { dialWindow, gearShift }, { discPack }, { bearingShim, gasketEndPlay }] =
    await Promise.all(["press_card", "wrench_setting", "advance_reading", "shim_stack", "gear_shift", "disc_pack", "end_play"].map(from));
  const told = exact => exact && (exact.d === 1n ? `${exact.n}` : `${exact.n}/${exact.d}`);
  const worked = compute => texts => {
    const { values, refusals, warnings, problems } = compute(texts);
    if (problems.length) return { problems: problems.map(each => [each.message, each.mend]) };
    return { problems: [], values: values.map(each => [each.name, each.printed, each.converted]), refusals: refusals.map(each => [each.message, each.instead]), warnings };
  };
  const how = {
    rounding: ([value, step, side]) => told(roundTo(value.startsWith("~") ? Number(value.slice(1)) : Exact.of(value), step, side)),
    quantity: ([text, kind]) => {
      const read = readQuantity(text, kind);
      return read instanceof Problem ? [read.message, read.mend] : [read.form, told(read.low), told(read.high), read.unit.symbol, read.decimals, read.whole];
    },
    "press-card": worked(pressCard), "wrench-setting": worked(wrenchSetting), "taper-advance": worked(advanceReading), "shim-stack": worked(shimStack),
    backlash: worked(dialWindow), "gear-shift": worked(gearShift), "disc-pack": worked(discPack), "bearing-shim": worked(bearingShim), "gasket-end-play": worked(gasketEndPlay),
  };
  return Object.fromEntries(Object.entries(asked).map(([name, cases]) => [name, cases.map(how[name])]));
}"""


@pytest.fixture(scope="module")
def cases():
    return {name: vectors.cases(name) for name in NAMES}


@pytest.fixture(scope="module")
def expected(cases):
    """What Python answers; it stays here."""
    return {name: [vectors.expected(name, case) for case in every] for name, every in cases.items()}


@pytest.fixture(scope="module")
def answers(cases, chromium, serve, tmp_path_factory):
    """What the scripts answer to every case, asked in one run."""
    folder = tmp_path_factory.mktemp("scripts")
    files = {**{f"assets/witnessmark/{path}": text.decode() for path, text in static_files().items() if path.startswith("bench/")}, **script_tables(WORKINGS, tuple(standard_gauges()))}
    for path, text in {"index.html": "<!doctype html><title>vectors</title>", **files}.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_text(text)
    page = chromium.new_page()
    page.goto(serve(folder))
    yield page.evaluate(ANSWER, {name: [vectors.for_script(name, case) for case in every] for name, every in cases.items()})
    page.close()


@pytest.mark.parametrize("name", NAMES)
def test_the_scripts_say_what_python_says(name, cases, expected, answers):
    assert len(cases[name]) > 500
    other = [three for three in zip(cases[name], expected[name], answers[name], strict=True) if three[1] != three[2]]
    assert not other, f"{len(other)} of {len(cases[name])} differ; the first: {other[0]}"


@pytest.mark.parametrize("name", vectors.REASONS)
def test_every_reason_to_refuse_is_met(name, expected):
    said = set()
    for answer in expected[name]:
        said |= {answer[0]} if name == "quantity" else {text for text, _ in answer["problems"] + answer.get("refusals", [])} | set(answer.get("warnings", ()))
    assert [reason for reason in vectors.REASONS[name] if not any(re.search(reason, text) for text in said)] == []


def test_a_good_part_of_the_cases_gives_an_answer(expected):
    """Vectors that only refuse would prove nothing of marks."""
    for name in vectors.WORKINGS:
        assert sum(bool(answer.get("values")) for answer in expected[name]) > len(expected[name]) / 4, name
