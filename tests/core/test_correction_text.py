"""The plain text of a correction: what the page writes is read back, and an answer cannot speak for the page."""

from hypothesis import given, strategies

from witnessmark.core.correction_text import ASKED, GIVEN, read_correction, written


def test_what_is_written_is_read_back():
    text = written({"Procedure": "hoist/drum", "Spec": "press", "Role": "ceiling", "Case": "", "Printed figure": "14 short ton"})
    assert read_correction(text).values == {"Procedure": "hoist/drum", "Spec": "press", "Role": "ceiling", "Printed figure": "14 short ton",
                                            **dict.fromkeys(ASKED, "")}


def test_a_mail_that_quotes_folds_and_signs_is_still_read():
    mail = "Hello,\nplease see below.\n\n> Correction for a Witnessmark book\n> Procedure: hoist/drum\n> Spec: press\n> New figure and unit: 13 short ton\n" \
           "> What happened: The hub cracked\n>   at the keyway.\n> By whom: fitter\n"
    found = read_correction(mail)
    assert (found["New figure and unit"], found["What happened"], found["By whom"]) == ("13 short ton", "The hub cracked at the keyway.", "fitter")


_BREAK = strategies.sampled_from(["\n", "\r", "\r\n", "\x0b", "\x0c", "\x1c", "\x85", "\u2028", "\u2029"])
_FORGED = strategies.builds("{0}{1}{2}: forged{3}".format, strategies.text(max_size=5), _BREAK, strategies.sampled_from((*GIVEN, *ASKED)), _BREAK)


@given(strategies.one_of(strategies.text(max_size=200), _FORGED))
def test_a_value_never_becomes_another_line(value):
    found = read_correction(written({"Procedure": "hoist/drum", "Spec": "press", "Printed figure": value}))
    assert found["Procedure"] == "hoist/drum" and found["Spec"] == "press" and set(found.values) <= {*GIVEN, *ASKED}
    assert all(found[name] == "" for name in ASKED)


def test_what_is_no_correction_is_none():
    assert read_correction("") is None and read_correction("Dear all,\nSerial: 12\n") is None
