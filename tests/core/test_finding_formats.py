"""Each form of a finding, with what a forge would take for its own signs."""

import json
import re

from hypothesis import given
from hypothesis import strategies as st

from witnessmark.core.finding import WARNING, Finding
from witnessmark.core.finding_formats import as_annotations, as_json, as_text
from witnessmark.core.place import Place

PLAIN = Finding(Place("procedures/hoist/drum.yaml", 34, 5), "unknown-reference", "there is no caution 'HZ-7'",
                "did you mean 'HZ-1'?")
ODD = Finding(Place("procedures/a,b/50%: c.yaml", 1, 2), "yaml", "100 %\nof it: gone", "write\r'::' so", WARNING)


def test_text_counts():
    assert as_text([], 1) == "1 procedure: no findings"
    assert as_text([PLAIN], 2).splitlines() == [PLAIN.line(), "2 procedures: 1 finding"]


def test_json_holds_every_field():
    assert json.loads(as_json([PLAIN])) == [{
        "place": {"path": "procedures/hoist/drum.yaml", "line": 34, "column": 5}, "rule": "unknown-reference",
        "message": "there is no caution 'HZ-7'", "mend": "did you mean 'HZ-1'?", "severity": "error"}]


def test_an_annotation_a_line_and_none_for_a_clean_book():
    assert as_annotations([]) == ""
    assert as_annotations([PLAIN]) == ("::error file=procedures/hoist/drum.yaml,line=34,col=5,title=unknown-reference"
                                       "::there is no caution 'HZ-7', did you mean 'HZ-1'?")
    assert as_annotations([ODD]) == ("::warning file=procedures/a%2Cb/50%25%3A c.yaml,line=1,col=2,title=yaml"
                                     "::100 %25%0Aof it: gone, write%0D'::' so")


def parsed(line: str) -> tuple[str, dict, str]:
    """As the runner reads a command: its name, its properties, its message, each unescaped, percent last."""
    command, properties, message = re.fullmatch(r"::(\w+) (.*?)::(.*)", line, re.DOTALL).groups()

    def plain(text: str) -> str:
        for escaped, sign in (("%0D", "\r"), ("%0A", "\n"), ("%3A", ":"), ("%2C", ","), ("%25", "%")):
            text = text.replace(escaped, sign)
        return text

    return command, {k: plain(v) for k, v in (each.split("=", 1) for each in properties.split(","))}, message


@given(st.text(min_size=1), st.text(), st.text())
def test_no_text_breaks_out_of_its_line_or_its_field(path, message, mend):
    line = as_annotations([Finding(Place(path, 3, 4), "rule", message, mend)])
    assert "\n" not in line and "\r" not in line
    command, properties, said = parsed(line)
    assert (command, properties) == ("error", {"file": path, "line": "3", "col": "4", "title": "rule"})
    for escaped, sign in (("%0D", "\r"), ("%0A", "\n"), ("%25", "%")):
        said = said.replace(escaped, sign)
    assert said == f"{message}, {mend}"
