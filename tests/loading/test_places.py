"""A place that only some variants have: read, told of where its variant is unknown, and left out of the others' sheets."""

from small_book import SITE_DATA, sources

from witnessmark.loading.load_book import load_book

HOIST = "site_data/machines/hoist.yaml"


def hoist(places: str):
    text = SITE_DATA[HOIST].replace("  side: [left, right]\n", places)
    book, findings = load_book(sources(**{"machines/hoist": text}))
    return book.machines["hoist"], findings


def test_a_place_of_some_variants_is_left_out_of_the_others():
    machine, findings = hoist("  side: [left, right]\n  bearing: [main 1, {place: main 2, only: late}]\n")
    assert findings == []
    assert machine.places_on("bearing", "early") == ("main 1",)
    assert machine.places_on("bearing", "late") == machine.places_on("bearing", None) == ("main 1", "main 2")
    assert machine.places_on("side", "early") == ("left", "right") and machine.places_on(None, "early") == ()


def test_a_place_of_a_variant_that_is_not_there():
    _, findings = hoist("  side: [left, {place: right, only: [lat]}]\n")
    assert [finding.line() for finding in findings] == [
        f"{HOIST}:11:31: error: there is no variant of the hoist 'lat', did you mean 'late'? [unknown-reference]"]
