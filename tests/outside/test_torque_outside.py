"""Torques, strengths and wrench settings against published tables and manuals."""

import pytest
from scipy import constants
from witnessmark.core.thread import Thread, read_thread
from witnessmark.workings.read_inputs import run
from witnessmark.workings.registry import WORKINGS
from witnessmark.workings.stress_area import stress_area
from witnessmark.workings.tables.bolt_strengths import Strength, strength_of

SQUARE_INCH = constants.inch**2


def thread(text) -> Thread:
    found = read_thread(text)
    assert isinstance(found, Thread)
    return found


def torque(**texts):
    outcome, problems = run(WORKINGS["tightening-torque"], {name.replace("_", " "): text for name, text in texts.items()})
    assert problems == [] and outcome.refusals == ()
    return outcome


# ANSI B1.1-1974 tables, in². They cut the last figure off, hence 0.3 % or one unit of the last place.
@pytest.mark.parametrize(("size", "printed"), [("1/4-20", "0.0318"), ("3/8-16", "0.0775"), ("1/2-13", "0.1419"), ("1/2-20", "0.1599"), ("5/8-11", "0.226"),
                                              ("3/4-10", "0.334"), ("3/4-16", "0.373"), ("7/8-14", "0.509"), ("1-8", "0.606"), ("1-12", "0.663"), ("1-1/4-12", "1.073")])
def test_inch_stress_areas(size, printed):
    last_place = 10.0 ** -len(printed.partition(".")[2])
    assert abs(stress_area(thread(size)) / SQUARE_INCH - float(printed)) <= max(0.003 * float(printed), last_place)


# ASTM A574, table of tensile requirements (published extract): stress areas of coarse threads it prints.
@pytest.mark.parametrize(("size", "printed"), [("#10-24", 0.0175), ("7/16-14", 0.1063), ("7/8-9", 0.462), ("1-1/8-7", 0.763), ("1-1/2-6", 1.405), ("2-4.5", 2.50)])
def test_inch_stress_areas_of_a574(size, printed):
    assert stress_area(thread(size)) / SQUARE_INCH == pytest.approx(printed, rel=3e-3)


# ISO 898-1, nominal stress area, mm², three figures.
@pytest.mark.parametrize(("size", "printed"), [("M6", 20.1), ("M8", 36.6), ("M10", 58.0), ("M12", 84.3), ("M16", 157), ("M20", 245), ("M24", 353)])
def test_metric_stress_areas(size, printed):
    assert stress_area(thread(size)) * 1e6 == pytest.approx(printed, rel=3e-3)


def to_three_figures(load, printed):
    """Both tables print three figures, from stress areas of three: 0.6 %, or one unit of the third where it is cut off."""
    return abs(load - printed) < max(0.006 * printed, 10 ** (len(str(printed)) - 3))


# ISO 898-1, proof loads of coarse threads, N.
@pytest.mark.parametrize(("size", "grade", "newtons"), [("M6", "8.8", 11600), ("M6", "10.9", 16700), ("M8", "8.8", 21200), ("M8", "10.9", 30400), ("M10", "10.9", 48100),
                                                       ("M12", "8.8", 48900), ("M12", "10.9", 70000), ("M14", "8.8", 66700), ("M18", "8.8", 115000), ("M22", "8.8", 182000)])
def test_metric_proof_loads(size, grade, newtons):
    found = strength_of(grade, thread(size))
    assert isinstance(found, Strength)
    assert to_three_figures(found.proof * stress_area(thread(size)), newtons)


# ASTM A574, table of tensile requirements (published extract): proof load, lbf.
@pytest.mark.parametrize(("size", "lbf"), [("#10-24", 2450), ("1/4-20", 4450), ("3/8-16", 10800), ("1/2-13", 19900), ("5/8-11", 30500), ("3/4-10", 45100), ("1-8", 81800), ("1-1/2-6", 190000), ("2-4.5", 338000)])
def test_a574_proof_loads(size, lbf):
    found = strength_of("A574", thread(size))
    assert isinstance(found, Strength)
    assert to_three_figures(found.proof * stress_area(thread(size)) / constants.lbf, lbf)


# A published table of torques at 75 % of SAE J429 proof, T = K D F: lbf·ft for K 0.15, 0.17, 0.20, and clamp in lbf.
TABLE = [("3/8-16", "5", (23, 26, 31), 4940), ("1/2-13", "5", (57, 64, 75), 9046), ("5/8-11", "5", (113, 128, 150), 14408), ("3/4-10", "5", (200, 227, 267), 21322),
         ("1-8", "5", (483, 547, 644), 38616), ("3/4-16", "5", (223, 253, 297), 23776), ("1/2-20", "8", (90, 102, 120), 14396), ("7/8-14", "8", (502, 568, 669), 45853)]


@pytest.mark.parametrize(("size", "grade", "printed", "clamp"), TABLE)
def test_published_torque_table(size, grade, printed, clamp):
    for factor, pound_feet in zip(("0.15", "0.17", "0.20"), printed, strict=True):
        outcome = torque(thread=size, grade=grade, nut_factor=factor, share_of_proof="75 %")
        exact = outcome.value("exact torque").likely / (constants.lbf * constants.foot)
        assert exact == pytest.approx(pound_feet, abs=0.6)
        assert outcome.value("torque").likely <= outcome.value("exact torque").likely
        pull = exact * 12 / (float(factor) * float(thread(size).nominal))
        assert pull == pytest.approx(clamp, rel=1e-3)


# Machine-design textbook, example 8-3: 3/4-16, 25 kip, K 0.2 takes 3,750 lbf·in, so that torque must clamp 25,000 lbf.
def test_textbook_clamp():
    outcome = torque(thread="3/4-16", grade="none", nut_factor="0.20", torque="3750 lbf·in")
    assert outcome.value("clamp").likely / constants.lbf == pytest.approx(25000, rel=1e-9)


def delivered(want, unit, length, adapter, angle="0°", graduation="0.1"):
    return torque(thread="1/2-13", grade="none", nut_factor="0.15", torque=f"{want} {unit}", wrench_graduation=f"{graduation} {unit}",
                  wrench_length=f"{length} in", adapter_length=f"{adapter} in", adapter_angle=angle)


# US military maintenance and training manuals (public domain), adapter in line: setting = T L / (L + A).
# TM 1-1500-204-23-9, figure 8-16: 300 lbf·in, 10 + 4 in, 214. TM 9-254, figure 45: 60 set, 12 + 2 in, 70 delivered.
@pytest.mark.parametrize(("want", "unit", "length", "adapter", "setting"), [
    (30, "lbf·ft", 12, 3, 24), (30, "lbf·ft", 12, 6, 20), (20, "lbf·ft", 12, 3, 16), (300, "lbf·in", 10, 4, 214), (70, "lbf·in", 12, 2, 60), (100, "lbf·in", 12, 6, 66.6)])
def test_adapter_in_line(want, unit, length, adapter, setting):
    found = delivered(want, unit, length, adapter).value("setting").printed
    assert float(found.split()[0]) == pytest.approx(setting, abs=0.3)


# The same manuals: turned back along the wrench L - A, at 90° no correction, at an angle L + A cos a (cos 60° is a half).
@pytest.mark.parametrize(("angle", "setting"), [("180°", 40), ("90°", 30), ("60°", 30 * 12 / 13.5)])
def test_adapter_at_an_angle(angle, setting):
    found = delivered(30, "lbf·ft", 12, 3, angle).value("setting").printed
    assert float(found.split()[0]) == pytest.approx(setting, abs=0.1)
