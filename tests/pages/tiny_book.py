"""A book small enough to read: one machine of two variants, one press, a procedure of three steps."""

from dataclasses import replace

from witnessmark.core.authority import Caution, Conflict, Correction, Side, Source
from witnessmark.core.book import Book
from witnessmark.core.derived import Derived, Resolved, Worked, key_of
from witnessmark.core.equipment import Gauge, Press, Wrench
from witnessmark.core.figure import Citation, Figure, NotKnown, Plain, Spec
from witnessmark.core.machine import Carrier, Machine, Variant
from witnessmark.core.place import Place
from witnessmark.core.procedure import Act, IfOutside, LooseEnd, Need, Needs, PressNeed, Procedure, Record, Step, Tried
from witnessmark.core.quantity import Quantity, read_quantity
from witnessmark.core.sentence import Sentence, read_reference, read_sentence
from witnessmark.core.thread import read_thread
from witnessmark.core.variation import Case, Selector, Serials, Varies, always
from witnessmark.core.working import Details, Line, Outcome, Refusal, Value
from witnessmark.pages.forge_links import Forge
from witnessmark.pages.site import Settings, site_pages

AT = Place("procedures/winch/hub.yaml", 7, 3)
MACHINE, PROCEDURE = "winch", "hub"


def says(text: str) -> Sentence:
    return read_sentence(text, AT)[0]


def quantity(text: str, kind: str) -> Quantity:
    found = read_quantity(text, kind)
    assert isinstance(found, Quantity), found
    return found


def by(carrier: str, **values) -> Varies:
    """by("winch", A=..., B=...): a value for each variant of a carrier."""
    return Varies((carrier,), tuple(Case((Selector(name, None, AT),), value, AT) for name, value in values.items()), AT)


def figure(role: str, worth, source: str = "notes", where: str = "p. 3", **more) -> Figure:
    worth = worth if isinstance(worth, Varies) else always(worth, AT)
    given = dict(because=None, condition=None, when=None, kept_for_record=None, superseded_by=None, in_doubt=None,
                 to_be_found_by=None, was=())
    return Figure(role, worth, None, (Citation(source, where, AT),), place=AT, **{**given, **more})


def step(name: str, do: str, **more) -> Step:
    given = dict(check=None, if_outside=None, go_to=(), cautions=(), specs=(), each=None, at=None, only=(), acts=(), opens_up=(),
                 records=(), picture=None, hold_point=None, leaves=(), closes=(), second_person=False, note=None, was=())
    return Step(name, says(do), place=AT, **{**given, **more})


def need(sort: str, name: str, **more) -> Need:
    given = dict(number=None, count=None, one_use=False, fate=None, adapter=None, note=None)
    return Need(sort, name, place=AT, **{**given, **more})


def tons(text: str) -> Quantity:
    return quantity(text, "press force")


PRESS_FORCE = Spec("press-force", "Hub press force", "press force", "dry", (
    figure("target", by("winch", A=tons("15 long ton"), B=tons("18 long ton")), because=says("Set by the shop.")),
    figure("ceiling", by("hub", A=tons("18 long ton"), B=tons("22 long ton")), source="leaves", where="leaf 11"),
    figure("target", tons("30 long ton"), source="manual", where="p. 51", kept_for_record="CF-1")), AT, was=("FC-PRESS",))
NUT = Spec("nut", "Hub nut", "torque", "oiled", (figure("target", quantity("57 lbf·ft", "torque")),), AT,
           thread=always(read_thread("3/4-16 UNF"), AT), grade=always("5", AT), wrench="TW1")
GAP = Spec("gap", "Key gap", "clearance", None, (figure("window", quantity("0.006 to 0.012 in", "clearance")),), AT)
SHIM = Spec("shim", "Shim", "length", None, (figure("target", NotKnown(), to_be_found_by=says("Measure three hubs.")),), AT)
OLD_TAPER = Spec("old-taper", "Taper", "taper", None, (figure("target", quantity("1:12", "taper"), in_doubt=says("Two drawings differ.")),), AT)
NAME = Spec("name", "Thread of the plug", "none", None, (figure("found", Plain("<b>left</b> hand")),), AT)

BURST = Caution("HZ-02", "DANGER", says("Hub under load."), says("It bursts."), (says("Set up the guard."), says("Stand aside.")), None, AT)
OIL = Caution("HZ-13", "NOTICE", says("Two pints."), says("Short on oil."), (says("Read litres."),), None, AT)

STEPS = (
    step("clean", "Wipe the taper *twice*.", check=says("The rag stays white."), cautions=("HZ-13",), each="side", was=("wipe",)),
    step("press", "Press to {press-force}.", cautions=("HZ-02",), acts=(Act("press", "hub", AT),), hold_point=says("Nobody in line."),
         records=(Record("Gap", read_reference("gap", AT), None, "side", IfOutside(says("New key."), says("File it."), ("clean",)), AT),)),
    step("tab", "Leave the tab unbent.", only=(Selector("B", None, AT),), leaves=(
        LooseEnd("LE-02", says("Tab not bent."), says("It may come off."), says("The nut backs away."), (Act("run", None, AT),), None, "proof", "TAB", (), AT),)),
)


def machine() -> Machine:
    def variants(**measures):
        return {name: Variant(name, f"Winch {name}" if serials else f"Hub {name}", serials, measure, None, AT)
                for name, (serials, measure) in measures.items()}

    winch = Carrier("winch", "Winch", "serial", variants(A=(Serials(1, 99), None), B=(Serials(100, None), None)), AT)
    hub = Carrier("hub", "Hub", "outside diameter", variants(A=(None, quantity("5.00 in", "length")), B=(None, quantity("5.25 in", "length"))), AT)
    return Machine(MACHINE, "Quarry winch", says("A winch."), says("LEFT and RIGHT facing the drum."), None, {"winch": winch, "hub": hub},
                   {"side": ("left", "right")}, {}, None, (says("Where these pages and an inspector disagree, stop."),), AT)


def procedure(**changes) -> Procedure:
    needs = Needs((PressNeed("BP50", "main", AT),), (need("wrench", "TW1"),), (), (need("part", "Tab washer", number="6B-7789", count="2", one_use=True),))
    whole = Procedure(PROCEDURE, MACHINE, "Press the hub", says("Dry, by marks."), ("strip",), (), ("A", "B"), None, 2, None,
                      quantity("45 min", "time"), Tried(), (says("The hub is measured."),), ("HZ-02",), needs,
                      {spec.id: spec for spec in (PRESS_FORCE, NUT, GAP, SHIM, OLD_TAPER, NAME)}, {}, STEPS, (), (), AT)
    return replace(whole, **changes)


def book(one: Procedure | None = None) -> Book:
    strip = procedure(id="strip", title="Strip the winch", after=(), specs={}, steps=(step("look", "Look."),), cautions=())
    kept = Conflict("CF-1", read_reference("hub/press-force", AT), says("The shop target."), says("The chart is for parallel seats."),
                    (Side(says("30 long tons."), Citation("manual", "p. 51", AT)),), True, AT)
    changed = Correction("COR-1", "2023-03-18", (read_reference("hub/press-force", AT),), says("20 long tons."), says("18 long tons."),
                         says("A hub cracked."), None, None, (Citation("leaves", "leaf 11", AT),), "inspect", None, AT)
    gauge = Gauge("main", "Gauge 0 to 10,000 psi", quantity("10,000 psi", "pressure"), quantity("100 psi", "pressure"), quantity("1.5 %", "share"), None, None, AT)
    press = Press("BP50", "Bench press", quantity("10.97 in²", "area"), None, None, None, None, quantity("9,100 psi", "pressure"), {"main": gauge}, None, (), None, AT)
    wrench = Wrench("TW1", "Torque wrench 1", *(quantity(text, "torque") for text in ("10 lbf·ft", "80 lbf·ft", "1 lbf·ft")), quantity("4 %", "share"), None, None, AT)
    sources = {name: Source(name, title, kind, None, None, None, AT) for name, title, kind in (
        ("notes", "Shop notes", "shop"), ("leaves", "Fitter's leaves", "field"), ("manual", "Manual", "factory"))}
    return Book(machines={MACHINE: machine()}, sources=sources, presses={"BP50": press}, wrenches={"TW1": wrench},
                cautions={"HZ-02": BURST, "HZ-13": OIL}, conflicts={"CF-1": kept}, corrections={"COR-1": changed},
                procedures={(MACHINE, PROCEDURE): one or procedure(), (MACHINE, "strip"): strip})


def value(name: str, kind: str, printed: str, converted: str = "", si: float = 1.0) -> Value:
    return Value(name, kind, si, si, si, "down", None, lambda: (printed, converted))


def card(*marks: str, never: str) -> Outcome:
    values = [value(f"mark at {share} %", "pressure", mark, "100 bar") for share, mark in zip((50, 75, 90, 100), marks)]
    return Outcome((*values, value("never-pass mark", "pressure", never, "240 bar"), value("exact reading", "pressure", "3,063 psi"),
                    value("force at the last mark", "press force", "14.69 long ton (13.92 to 15.47)", "146.4 kN", 146_400.0)),
                   details=lambda: Details((Line("Exact reading", "p = F / A", "15 long ton / 10.97 in²", "3,063 psi"),)))


REFUSED = Outcome(refusals=(Refusal("the last mark may lie over the ceiling", "use the frame press"),))


def derived(one: Procedure | None = None) -> dict:
    """Own parts get a card, a hub from the other variant another ceiling; B with an A hub is refused."""
    one = one or procedure()
    found = Derived()
    for variant in one.variants:
        combinations = [{"winch": variant, "hub": hub} for hub in (variant, "AB".replace(variant, ""))]
        found.combinations[variant] = tuple(map(key_of, combinations))
        for combination in combinations:
            key = key_of(combination)
            for spec in one.specs.values():
                found.resolved[key, spec.id] = tuple(Resolved(
                    figure, figure.worth.matching(combination, machine().serial_ranges)[0].value, AT) for figure in spec.figures)
            own = combination["hub"] == variant
            outcome = card("1,500 psi", "2,200 psi", "2,700 psi", "3,000 psi", never="3,500 psi" if own else "4,300 psi")
            outcome = REFUSED if variant == "B" and not own else outcome
            found.worked[key, "press-force"] = (Worked("press-card", "press-force", key, {"target": "15 long ton"}, {"target": AT}, outcome, "BP50", "main"),)
            torque = Outcome((value("torque", "torque", "57 lbf·ft", "77 N·m"), value("setting", "torque", "57 lbf·ft", "77 N·m"),
                              value("clamp", "press force", "6,080 lbf (5,150 to 7,296)"), value("pass 1", "torque", "28 lbf·ft"), value("pass 2", "torque", "57 lbf·ft")))
            found.worked[key, "nut"] = (Worked("tightening-torque", "nut", key, {}, {}, torque),)
    return {(one.machine, one.id): found}


CODES = {(MACHINE, PROCEDURE, "A"): "7QX2-M4", (MACHINE, PROCEDURE, "B"): "K3PD-99"}


def site(one: Procedure | None = None):
    return site_pages(book(one), derived(one), CODES, Settings("Tiny book", "tiny", Forge("other", "", "https://forge.example/edit/main/{path}"), {}))


def page(one: Procedure | None = None, url: str = "winch/hub/") -> str:
    return next(page.html for page in site(one).pages if page.url == url)


def sheet(variant: str, one: Procedure | None = None) -> str:
    return site(one).files[f"winch/hub/sheet/{variant}/index.html"]
