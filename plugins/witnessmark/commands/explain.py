"""`witnessmark explain`: the manual of a rule or working."""

import sys

from ..changes import manual as of_changes
from ..core.finding import nearest
from ..loading import manual as of_reading
from ..rules.table import RULES
from ..workings import manual as of_working_out
from ..workings.explain import manual_lines
from ..workings.registry import WORKINGS

#: rule -> its manual; the rule's own module speaks where it has one
MANUAL = {**{rule: lesson.text() for rule, lesson in {**of_reading.MANUAL, **of_working_out.MANUAL, **of_changes.MANUAL}.items()},
          **{rule: module.__doc__.strip() for rule, module in RULES.items()}}


def run(chosen) -> int:
    if chosen.name in WORKINGS:
        print("\n".join(manual_lines(WORKINGS[chosen.name])))
        return 0
    if chosen.name in MANUAL:
        print(f"{chosen.name}: {MANUAL[chosen.name]}")
        return 0
    if chosen.name is None:
        print("Workings: " + ", ".join(WORKINGS) + "\nRules: " + ", ".join(sorted(MANUAL)))
        return 0
    print(f"witnessmark: there is no rule or working '{chosen.name}', {nearest(chosen.name, (*MANUAL, *WORKINGS))}",
          file=sys.stderr)
    return 2
