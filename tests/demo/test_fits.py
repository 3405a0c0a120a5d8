"""The demonstration's press fits come from their workings, and agree with the scenario's tables to the last figure."""

import pytest

FRICTIONS = ("0.20", "0.15", "0.12", "0.06, oiled")
# scenario FC-ADVANCE, FC-GRIP, FC-STRESS, FC-OFF: own hub at the shop target, friction 0.20 / 0.15 / 0.12 / 0.06
COLUMNS = [
    ("advance-at-target", "in", {"24-A": ".0158 .0199 .0236 .0376", "24-B": ".0180 .0227 .0269 .0428", "24-C": ".0199 .0251 .0298 .0474"}),
    ("grip", "lbf·ft", {"24-A": "3476 3287 3118 2479", "24-B": "4171 3944 3741 2974", "24-C": "4982 4711 4468 3553"}),
    ("hoop-stress", "ksi", {"24-A": "9.0 11.3 13.4 21.3", "24-B": "10.0 12.6 14.9 23.7", "24-C": "10.6 13.3 15.8 25.1"}),
    ("push-off-force", "long ton", {"24-A": "9.8 8.5 7.3 2.7", "24-B": "11.8 10.2 8.7 3.2", "24-C": "14.1 12.2 10.4 3.9"})]


def spec_of(book, name):
    procedure, _, spec = name.partition("/")
    here = next(each for each in book["procedures"] if each["id"] == procedure)
    return next(each for each in here["specs"] if each["id"] == spec)


@pytest.mark.parametrize("variant", ("24-A", "24-B", "24-C"))
@pytest.mark.parametrize(("spec", "unit", "rows"), COLUMNS, ids=[row[0] for row in COLUMNS])
def test_four_columns(book, spec, unit, rows, variant):
    figures = [each for each in spec_of(book, f"flycrank-press-on/{spec}")["figures"] if each["for"]["locomotive"] == variant and each["role"] == "found"]
    found = {figure["condition"].removeprefix("friction ").removesuffix(", likely"): figure["as written"] for figure in figures}
    assert found == {friction: f"{'0' if text[0] == '.' else ''}{text} {unit}" for friction, text in zip(FRICTIONS, rows[variant].split(), strict=True)}


# scenario FC-ADVANCE and the donor table: accepted at the BP50 last mark
ACCEPT = {("24-A", "24-A"): "0.0155 to 0.0230 in", ("24-B", "24-B"): "0.0180 to 0.0260 in", ("24-C", "24-C"): "0.0200 to 0.0290 in",
          ("24-B", "24-C"): "0.0165 to 0.0240 in", ("24-C", "24-A"): None}


@pytest.mark.parametrize(("pair", "band"), ACCEPT.items())
def test_advance_to_accept(book, pair, band):
    found = {figure["as written"] for figure in spec_of(book, "flycrank-press-on/advance")["figures"]
             if (figure["for"]["locomotive"], figure["for"].get("fly-crank")) == pair}
    assert found - {"none"} == ({band} if band else set())
