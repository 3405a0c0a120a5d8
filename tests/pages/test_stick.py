import re

import pytest

from witnessmark.pages.classic_script import classic
from witnessmark.pages.stick import asking_script, data_script, for_stick


@pytest.mark.parametrize("before, after", [
    ('<a href="../">', '<a href="../index.html">'), ('<a class="x" href="../../type-24/#step-a">', '<a class="x" href="../../type-24/index.html#step-a">'),
    ('<a href=".">', '<a href="./index.html">'), ('<a href="..">', '<a href="../index.html">'), ('<a href="sheet/24-B/">', '<a href="sheet/24-B/index.html">'),
    ('<a href="#start">', '<a href="#start">'), ('<a href="../book.json">', '<a href="../book.json">'), ('<a href="https://forge.example/a/">', '<a href="https://forge.example/a/">'),
    ('<link rel="manifest" href="../manifest.webmanifest">\n', ""), ('<script type="module" src="../a.js"></script>', ""), ('<script src="../a.js" defer></script>', '<script src="../a.js" defer></script>'),
])
def test_what_a_page_from_a_file_can_do(before, after):
    assert for_stick(before) == after


def test_it_says_what_is_not_promised():
    assert for_stick('<p class="wm-book" data-wm-book>This book is of 2024-05-11.</p>').count("not promised here") == 1


def test_the_page_that_is_asked_by_a_code_keeps_a_script():
    html = '<script type="module" src="../assets/witnessmark/ask/ask.js"></script>'
    assert for_stick(html) == '<script src="../assets/witnessmark/ask/stick.js" defer></script>'
    path, text = asking_script()
    assert path.endswith("ask/stick.js") and not re.search(r"^\s*(import|export)\b", text, re.MULTILINE)
    assert text.index('of["bench/element.js"] =') < text.index('of["ask/answer.js"] =') < text.index('of["ask/ask.js"] =')


@pytest.mark.parametrize("module", ["export default 7;", 'import * as all from "./b.js";', "export { a };"])
def test_a_module_that_is_not_understood_is_not_made_into_half_a_script(module):
    with pytest.raises(ValueError):
        classic("a.js", {"a.js": module, "b.js": ""}.__getitem__)


def test_data_becomes_a_script_beside_it():
    assert data_script("search/3.json", '{"a":1}') == ("search/3.js", '(window.witnessmarkSearchData ??= {})["search/3.json"] = {"a":1};\n')
