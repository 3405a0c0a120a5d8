"""Where pages and the things on them stand. Addresses are relative to the site's root; no page knows its depth by heart."""

from urllib.parse import quote

from ..core.figure import Figure, Spec
from ..core.procedure import Procedure


def machine_url(machine: str) -> str:
    return f"{machine}/"


def procedure_url(machine: str, procedure: str) -> str:
    return f"{machine}/{procedure}/"


def leaves_url(procedure: Procedure, variant: str) -> str:
    """As deep as the sheet, so that what the sheet leads to is found from its leaves too."""
    return f"{procedure_url(procedure.machine, procedure.id)}leaves/{variant}/"


def sheets_url(procedure: Procedure) -> str:
    return f"{procedure.machine}/{procedure.id}/sheet/"


def sheet_url(procedure: Procedure, variant: str) -> str:
    return f"{procedure.machine}/{procedure.id}/sheet/{variant}/"


def worked_url(procedure: Procedure) -> str:
    return f"{procedure.machine}/{procedure.id}/working/"


def plan_url(machine: str) -> str:
    """Head of the pages that are about a machine's whole work; no procedure may be called so."""
    return f"{machine}/plan/"


def ledger_url(machine: str) -> str:
    return f"{plan_url(machine)}ledger/"


def needs_url(machine: str) -> str:
    return f"{plan_url(machine)}needs/"


def holds_url(machine: str) -> str:
    return f"{plan_url(machine)}hold-points/"


def conflicts_url(machine: str) -> str:
    return f"{plan_url(machine)}conflicts/"


def notes_url(machine: str) -> str:
    return f"{plan_url(machine)}notes/"


def record_url(machine: str, variant: str) -> str:
    return f"{plan_url(machine)}hand-over/{variant}/"


def binder_url(machine: str, variant: str) -> str:
    """Of a finished file: of one variant, or '' for the whole machine."""
    return f"{record_url(machine, variant) if variant else plan_url(machine)}binder.pdf"


def tags_url(procedure: Procedure) -> str:
    return f"{procedure.machine}/{procedure.id}/tags/"


def bench_url(procedure: Procedure) -> str:
    return f"{procedure.machine}/{procedure.id}/bench/"


def correct_url(procedure: Procedure) -> str:
    return f"{procedure.machine}/{procedure.id}/correct/"


def machine_correct_url(machine: str) -> str:
    return f"{plan_url(machine)}correct/"


def corrections_url(machine: str) -> str:
    return f"{plan_url(machine)}corrections/"


def pin_url(correction: str) -> str:
    return f"{CORRECTIONS_URL}{correction}/"


def press_url(press: str) -> str:
    return f"press/{press}/"


def source_url(source: str) -> str:
    return f"source/{source}/"


def working_url(working: str) -> str:
    return f"working/{working}/"


def ask_url(site: str, code: str) -> str:
    """Where a sheet's code is asked whether it still holds, short enough for a code to be read off greasy paper; '' without a site."""
    return f"{site.rstrip('/')}/s/#{code}" if site else ""


CAUTIONS_URL = "caution/"
#: Asked by the codes on paper: as short as an address can be.
ASK_URL = "s/"
MY_BENCH_URL = "bench/"
CORRECTIONS_URL = "corrections/"
SHOP_CORRECT_URL = "press/correct/"


def picture_url(path: str) -> str:
    """Of a picture by its path from the book: beside the pages of its machine, or among the assets where it is the shop's."""
    return quote(path.removeprefix("procedures/") if path.startswith("procedures/") else f"assets/{path}")


def step_anchor(step: str) -> str:
    return f"step-{step}"


def spec_anchor(spec: str) -> str:
    return f"spec-{spec}"


def figure_anchor(spec: Spec, figure: Figure) -> str:
    """Of a figure on the page for corrections: `press-force.ceiling`, and `press-force.target-2` for the second in that role."""
    number = spec.in_role(figure.role).index(figure) + 1
    return f"{spec.id}.{figure.role}" + (f"-{number}" if number > 1 else "")


def result_anchor(computed: str) -> str:
    return f"result-{computed}"


def carrier_anchor(carrier: str) -> str:
    return f"carrier-{carrier}"


def shop_anchor(called: str, name: str) -> str:
    """Of a thing of the shop on the page where it is corrected: `press-BP50`, `press-BP50.main` for a gauge."""
    return f"{called.replace(' ', '-')}-{name.replace('/', '.')}"


def note_anchor(note: str) -> str:
    return f"note-{note}"


def loose_anchor(end: str) -> str:
    """`loose-tab` on the page of the procedure that leaves it; `loose-press-on-tab` in the ledger, for `press-on/tab`."""
    return f"loose-{end.replace('/', '-')}"


def caution_anchor(caution: str) -> str:
    return f"caution-{caution}"


def root_from(url: str) -> str:
    """What leads from a page back to the root: `../../` for `type-24/press-on/`."""
    return "../" * url.count("/")
