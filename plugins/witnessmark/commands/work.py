"""`witnessmark work`: one computation from inputs typed by hand."""

import json
import sys

from ..core.finding import nearest
from ..workings import read_inputs
from ..workings.explain import outcome_lines, outcome_record
from ..workings.registry import WORKINGS


def run(chosen) -> int:
    working = WORKINGS.get(chosen.working)
    if working is None:
        print(f"witnessmark: there is no working '{chosen.working}', {nearest(chosen.working, WORKINGS)}", file=sys.stderr)
        return 2
    texts = {}
    for item in chosen.inputs:
        name, equals, value = item.partition("=")
        if not equals:
            print(f"witnessmark: '{item}' is not name=value, write it such as 'full scale=10000 psi'", file=sys.stderr)
            return 2
        texts[name.strip()] = value.strip()
    outcome, problems = read_inputs.run(working, texts)
    if outcome is None:
        for problem in problems:
            print(f"{problem.message}, {problem.mend}", file=sys.stderr)
        return 2
    if chosen.format == "json":
        print(json.dumps({"working": working.id, "inputs": texts, **outcome_record(outcome), "source": working.source},
                         ensure_ascii=False, indent=1))
    else:
        print("\n".join(outcome_lines(working, outcome)))
    return 1 if outcome.refusals else 0
