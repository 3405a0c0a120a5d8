"""The figures of a press card and how each was worked out, once the press and the job are judged."""
from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from ..core.working import Given, Line, Value
from .press_gauge import SHARES, Job, Press, Verdict
from .printed import FORCE_STEPS, banded, five_forces, force, in_unit, ten_step, value
from .stress_area import stress_area


def card_values(given: Mapping[str, Given], press: Press, job: Job, verdict: Verdict) -> tuple[Value, ...]:
    """Every figure of an accepted card; forces in the author's own unit, marks in the gauge's."""
    pascals = press.unit.doubles[0]
    fine = ten_step(float(press.division) / 20)
    step = FORCE_STEPS[job.unit.symbol]
    uncertainty = press.uncertainty

    def mark(name: str, reading: Fraction, side: str = "down") -> Value:
        return value(name, "pressure", float(reading) * pascals, press.unit, press.division, side)

    values = [value("uncertainty", "pressure", uncertainty * pascals, press.unit, _three_figures(uncertainty)),
              value("uncertainty as force", "press force", press.force(uncertainty), job.unit, step),
              mark("never-pass mark", verdict.never_pass)]
    if verdict.marks:
        last = float(verdict.marks[-1])
        edges = tuple(press.force(last + side * uncertainty) for side in (-1, 0, 1))
        values[:0] = [value("exact reading", "pressure", job.target / press.area, press.unit, fine),
                      *(mark(f"mark at {share} %", at) for share, at in zip(SHARES, verdict.marks))]
        values.append(value("force at the last mark", "press force", edges, job.unit, step))
    if verdict.band:
        values += [mark("accept band low", verdict.band[0], "up"), mark("accept band high", verdict.band[1])]
    if "draw stud thread" in given:
        section = stress_area(given["draw stud thread"].thread)
        unit = "ksi" if given["draw stud thread"].thread.family == "unified" else "MPa"
        values += [value(f"draw stud stress at {name}", "stress", newtons / section, unit, "0.1" if unit == "ksi" else "1")
                   for name, newtons in (("target", job.target), ("ceiling", job.ceiling)) if newtons is not None]
    return tuple(values)


def _three_figures(size: float) -> Fraction:
    return ten_step(size) / 100


def card_lines(given: Mapping[str, Given], press: Press, job: Job) -> tuple[Line, ...]:
    """The steps, also for a card that is refused: the reader may check why."""
    unit, fine = press.unit.symbol, press.shown_finely
    area = in_unit(press.area, "area", "in²", "0.001") + " = " + in_unit(press.area, "area", "cm²", "0.01")
    how = next((f"{name} {given[name].text}" for name in ("area", "bore") if name in given), "rated force / rated pressure")
    wanted = job.ceiling if job.target is None else job.target
    exact, u = press.reading(wanted), press.uncertainty
    lines = [Line("Area the oil works on", "A from the nameplate, or pi/4 (D² - d²)", how, area),
             Line("Force asked for, so that no ton is left to guess", "", force(wanted, job.unit), five_forces(wanted)),
             Line("Exact reading", "p = F / A", f"{force(wanted, job.unit)} / {area.split(' = ')[0]}", fine(exact)),
             Line("Uncertainty of a reading", "U = sqrt((class x full scale)² + (division / 2)²)",
                  f"sqrt(({press.accuracy * 100:g} % x {press.shown(press.full_scale)})² + ({float(press.division):g} / 2 {unit})²)",
                  f"{fine(u)} = {force(press.force(u), job.unit)}"),
             Line("Never-pass mark before rounding down", "(ceiling / A) - U",
                  f"{fine(press.reading(job.ceiling))} - {fine(u)}", fine(press.reading(job.ceiling) - u))]
    if job.target is not None:
        last = press.down(exact)
        edges = tuple(press.force(float(last) + side * u) for side in (-1, 0, 1))
        lines.append(Line("Force the last mark may mean", "(mark - U to mark + U) x A", f"{press.shown(last)}, give or take {fine(u)}",
                          banded(edges, "press force", job.unit, FORCE_STEPS[job.unit.symbol])))
    if job.window is not None:
        lines.append(Line("Accept band before rounding inward", "low / A + U to high / A - U",
                          f"{fine(press.reading(job.window[0]))} + {fine(u)} to {fine(press.reading(job.window[1]))} - {fine(u)}",
                          f"{fine(press.reading(job.window[0]) + u)} to {fine(press.reading(job.window[1]) - u)}"))
    if "draw stud thread" in given:
        section = in_unit(stress_area(given["draw stud thread"].thread), "area", "in²", "0.001")
        lines.append(Line("Section of the draw stud", "stress = F / As", given["draw stud thread"].text, section))
    return tuple(lines)
