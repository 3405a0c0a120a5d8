"""Declarations of the workings computed in belt_and_chain."""
from __future__ import annotations

from ..core.working import Example, Formula, Input, Output, Working
from .belt_and_chain import belt_sag, chain_length, chain_sag, chain_wear

_SPAN = Formula("span = sqrt(C² - ((D - d) / 2)²)", r"\text{span} = \sqrt{C^2 - ((D - d) / 2)^2}")


def _span_inputs(wheels: str) -> tuple[Input, ...]:
    return (Input("span", "length", "free length between the wheels, if measured", ("2 in", "400 in"), "not a belt or chain of a machine?", required=False),
            Input("centres", "length", "middle of one wheel to middle of the other, if the span is not measured", required=False),
            Input("large diameter", "diameter", f"{wheels} of one wheel", required=False),
            Input("small diameter", "diameter", f"{wheels} of the other", required=False))


BELT = Working(
    id="belt-sag",
    title="How far to push a belt in at its middle",
    purpose="Gives the push of a sixty-fourth of the free span at its middle, and with a tension the force that should do it.",
    formula=(_SPAN, Formula("s = span / 64", r"s = \text{span} / 64"),
             Formula("force = 4 T s / sqrt(span² + 4 s²)", r"\text{force} = \frac{4 T s}{\sqrt{\text{span}^2 + 4 s^2}}")),
    inputs=(*_span_inputs("outside diameter"), Input("tension", "force", "tension wanted in one strand of the belt", required=False)),
    outputs=(Output("span", "length", "nearest", "free span"),
             Output("push in", "length", "nearest", "how far the middle goes in"),
             Output("push in on a tape", "none", "nearest", "the same to a sixty-fourth"),
             Output("push with", "force", "nearest", "force at the middle for that push at that tension")),
    source="US Army TM 5-4310-339-15, paragraph 5-5: 1/64 in for each inch of span; statics of a string pushed at its middle",
    example=Example({"span": "100 in", "tension": "80 lbf"}, {"push in": "1.56 in", "push in on a tape": "1-9/16 in", "push with": "5.0 lbf"}, "the same manual; the force by hand"),
    goes_wrong=("Tightened until it does not move: the belt lives and the bearings die.",
                "Tried beside the pulley instead of at the middle of the longest free span.",
                "A new belt set once: try it again after an hour's run."),
    refuses=("Wheels that overlap at their centres.", "No span, and not all of centres and diameters."),
    assumes=("The belt bends freely: a thick one wants more force.",),
    compute=belt_sag)

SAG = Working(
    id="chain-sag",
    title="Movement of a chain at the middle of its slack side",
    purpose="Gives the movement up and down to accept, as a share of the free span, rounded inward to what a rule shows.",
    formula=(_SPAN, Formula("movement = share · span", r"\text{movement} = \text{share} \cdot \text{span}")),
    inputs=(*_span_inputs("pitch diameter"), Input("share", "share", "movement as a share of the span, from least to most", ("0.5 %", "8 %"), "2 to 3 % is usual on the level")),
    outputs=(Output("span", "length", "nearest", "free span"),
             Output("movement", "length", "inward", "movement in all, up and down, to accept")),
    source="roller-chain handbooks: total movement 2 to 3 % of the span for nearly level drives; geometry",
    example=Example({"centres": "23.04 in", "large diameter": "11.958 in", "small diameter": "7.991 in", "share": "2 to 3 %"},
                    {"span": "22.95 in", "movement": "0.46 to 0.68 in"}, "this project's demonstration book, by hand"),
    goes_wrong=("Set where the chain is slackest: turn it by hand to the tightest place first.",
                "Movement to one side measured for the whole of it: twice too slack."),
    refuses=("Wheels that overlap at their centres.", "A share that leaves no room between least and most."),
    compute=chain_sag)

WEAR = Working(
    id="chain-wear",
    title="Growth of a roller chain over so many pitches",
    purpose="Gives the length over which a chain is renewed, and how far a measured one has grown.",
    formula=(Formula("renew over = pitches · pitch · (1 + limit)", r"\text{renew over} = \text{pitches} \cdot \text{pitch} \cdot (1 + \text{limit})"),
             Formula("growth = reading / (pitches · pitch) - 1", r"\text{growth} = \frac{\text{reading}}{\text{pitches} \cdot \text{pitch}} - 1")),
    inputs=(Input("pitch", "length", "pin to pin of a new chain", ("0.25 in", "3 in"), "two pitches taken for one?"),
            Input("pitches", "count", "pitches measured over", ("6", "100"), "too few to measure growth with a rule?"),
            Input("limit", "share", "growth at which it is renewed", ("0.5 %", "3 %"), "past 3 % it climbs the teeth"),
            Input("reading", "length", "length measured over them, pulled straight", required=False)),
    outputs=(Output("length new", "length", "nearest", "length of as many new pitches"),
             Output("renew over", "length", "down", "over this the chain is renewed"),
             Output("growth", "none", "nearest", "how far it has grown"),
             Output("verdict", "none", "nearest", "in order, or renew")),
    source="ASME B29.1 (pitches); chain handbooks: renew at 3 % growth, 1.5 to 2 % on fixed centres",
    example=Example({"pitch": "1.250 in", "pitches": "20", "limit": "2 %", "reading": "25.31 in"},
                    {"length new": "25.00 in", "renew over": "25.50 in", "growth": "1.2 %", "verdict": "in order"}, "this project's demonstration book, by hand"),
    goes_wrong=("Measured slack: pull it straight.", "Measured over an offset link.", "A new chain on hooked teeth: they wear it out fast."),
    refuses=("Sizes no machine has.",),
    compute=chain_wear)

LENGTH = Working(
    id="chain-length",
    title="Links of a chain round two sprockets, and the centres for them",
    purpose="Gives the even number of links nearest to the centres wanted, and the centres at which that many are taut.",
    formula=(Formula("links = 2 C + (N + n) / 2 + ((N - n) / (2 pi))² / C", r"\text{links} = 2 C + (N + n) / 2 + ((N - n) / (2 \pi))^2 / C"),
             Formula("pitch diameter = p / sin(180° / N)", r"\text{pitch diameter} = \frac{p}{\sin(180^\circ / N)}")),
    inputs=(Input("pitch", "length", "pin to pin of the chain", ("0.25 in", "3 in"), "two pitches taken for one?"),
            Input("teeth", "count", "teeth of one sprocket", ("7", "150"), "not a sprocket?"),
            Input("other teeth", "count", "teeth of the other", ("7", "150"), "not a sprocket?"),
            Input("centres", "length", "centres wanted, middle to middle", ("2 in", "400 in"), "not a chain drive?")),
    outputs=(Output("links", "count", "nearest", "even number of links nearest to it"),
             Output("centres then", "length", "nearest", "centres at which that many links are taut"),
             Output("pitch diameter", "diameter", "nearest", "across the pins on the first sprocket"),
             Output("other pitch diameter", "diameter", "nearest", "across the pins on the second")),
    source="ASME B29.1 (pitch diameters); chain-drive handbooks, length of chain in pitches",
    example=Example({"pitch": "1.250 in", "teeth": "20", "other teeth": "30", "centres": "23.0 in"},
                    {"links": "62", "centres then": "23.04 in", "pitch diameter": "7.991 in", "other pitch diameter": "11.958 in"},
                    "this project's demonstration book, by hand"),
    goes_wrong=("An odd number, closed with an offset link: the weakest link of the chain.",
                "Centres that cannot be moved: the slack of a worn chain has nowhere to go."),
    refuses=("Sprockets that overlap at their centres.", "Sprockets of fewer than five teeth."),
    compute=chain_length)
