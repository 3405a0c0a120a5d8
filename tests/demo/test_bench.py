"""The bench workings in the demonstration: what stands on the page is what the working gives, and what the scenario says."""

import pytest

from demo.ledger import figures, procedure, step_of

# Scenario's label of the spec | variants | role | figure.
FIGURES = [
    ("FD-PINION-NUT", "24-A 24-B 24-C", "target", "250 lbf·ft"), ("FD-PINION-NUT", "24-A 24-B 24-C", "stop", "280 lbf·ft"),
    ("EB-ROD-BOLT", "24-A 24-B", "stop", "61 lbf·ft"), ("FW-TRAVEL", "24-A 24-B 24-C", "window", "0.60 to 0.90 in"),
]


@pytest.mark.parametrize(("label", "variants", "role", "written"), FIGURES)
def test_each_figure(book, label, variants, role, written):
    found = figures(book, "type-24", label, "locomotive", role)
    assert {variant: text for variant, (text, _) in found.items()} == dict.fromkeys(variants.split(), written)


def figure(book, name, spec, role, variant):
    of = next(each for each in procedure(book, name)["specs"] if each["id"] == spec)
    return [each["as written"] for each in of["figures"] if each["role"] == role and each["for"]["locomotive"] == variant]


@pytest.mark.parametrize(("spec", "variant", "window", "exact"), [
    ("pinion-pull", "24-A", "7.25 to 11.00 lbf", "7.2 to 11.2 lbf"), ("jackshaft-pull-new", "24-A", "none", "none"),
    ("jackshaft-pull-new", "24-B", "12.50 to 17.75 lbf", "12.4 to 17.8 lbf"), ("jackshaft-pull-run-in", "24-C", "6.25 to 8.75 lbf", "6.2 to 8.9 lbf"),
    ("backlash-on-dial", "24-B", "0.0090 to 0.0155 in", "0.0089 to 0.0156 in")])
def test_windows_on_scale_and_dial(book, spec, variant, window, exact):
    assert figure(book, "final-drive-build", spec, "window", variant) == [window]
    assert figure(book, "final-drive-build", spec, "found", variant) == [exact]


@pytest.mark.parametrize(("variant", "stacks"), [("24-A", ["0.044 in", "0.031 in", "0.0109 in"]), ("24-B", ["0.044 in", "0.031 in", "0.0109 in"]),
                                                 ("24-C", ["0.045 in", "0.030 in", "0.0102 in"])])
def test_stacks_after_the_move_and_what_they_leave(book, variant, stacks):
    assert figure(book, "final-drive-build", "shim-stacks", "found", variant)[-3:] == stacks


def test_the_move_asked_for_cannot_be_made_of_the_stock_of_a_24_c(book):
    """Question 18: 0.031 in cannot be made; the nearest that keep the sum stand on both sides."""
    runs = [run for run in procedure(book, "final-drive-build")["worked"] if run["owner"] == "shim-example-asked"]
    shown = [{value["name"]: value["shown"] for value in run["values"]} for run in runs]
    refused = [values for values in shown if "left" not in values]
    assert len(refused) == 1
    assert refused[0]["left stack at the larger move"].startswith("0.045 in: 0.033 + 2 × 0.006 in")
    assert refused[0]["right stack at the larger move"].startswith("0.030 in: 2 × 0.009 + 2 × 0.006 in")
    assert any("0.031 in cannot be made from this stock in 6 pieces, nor in any number" in warning for run in runs for warning in run["warnings"])


def test_clutch_capacity_over_its_friction(book):
    assert figure(book, "flywheel-and-clutch", "clutch-capacity", "found", "24-B") == ["314 lbf·ft", "376 lbf·ft", "439 lbf·ft"]


@pytest.mark.parametrize(("owner", "order"), [("head-order", "2-7-3-6-1-8-4-5"), ("head-order-of-ten", "3-8-2-9-4-7-1-10-5-6")])
def test_order_of_the_head_nuts(book, owner, order):
    runs = [run for run in procedure(book, "engine-top-end")["worked"] if run["owner"] == owner]
    assert runs
    assert {value["shown"] for run in runs for value in run["values"] if value["name"] == "order"} == {order}
    step = "tighten-head-nuts-metric" if owner.endswith("ten") else "tighten-head-nuts"
    assert step_of(book, f"engine-top-end#{step}")["do"].endswith(f"in the order {{{owner}.order}}.")


def test_lathe_cap_stack_and_spindle_cord(book):
    plain = next(each for each in procedure(book, "lathe-front-bearing-plain")["specs"] if each["id"] == "cap-stack")
    assert {each["as written"] for each in plain["figures"]} == {"0.0105 in"}
    pull = next(each for each in procedure(book, "lathe-front-bearing-taper")["specs"] if each["id"] == "cord-pull")
    assert {(each["role"], each["as written"]) for each in pull["figures"] if each["as written"] != "none"} == {("window", "3.5 to 5.7 lbf"), ("found", "3.43 to 5.71 lbf")}
