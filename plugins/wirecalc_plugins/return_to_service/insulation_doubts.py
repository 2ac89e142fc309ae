"""What an insulation reading leaves open: how it was made, and why a low one need not be bad."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecalc import Problem, at_or_below

LEAST_TEST_V = 250.0  # under it a good reading shows nothing; common practice
CLASS_III_V = 50.0  # most ac volts that feed class III: IEC 61140, from memory
ANY_CLASS_MOHM = 2.0  # class II, the highest limit of a class: DIN VDE 0701
BY_CURRENT_W = 3500.0  # heating power from which the protective conductor's current may decide
BARE = ("compressor", "motor")  # read at their own pins: no switch or board in between


class Doubt(NamedTuple):
    """Why a reading settles nothing, what would, and the inputs that it lacks."""

    why: str
    measure: str
    needs: tuple[str, ...] = ()


class Test(NamedTuple):
    """How the reading was made, and of what; None where it was not said."""

    part: str
    protection: str
    volts: float | None
    switched_on: bool | None
    boards_off: bool | None
    dried: bool | None
    power: float | None
    plate_volts: float | None = None


def refuse(protection: str, nameplate_voltage: float | None) -> Iterator[Problem]:
    """Refuse a class that the volts on the plate rule out."""
    if protection == "class-iii" and (nameplate_voltage or 0.0) > CLASS_III_V:
        yield Problem(
            "protection",
            f"class-iii is fed by {CLASS_III_V:g} V at most, and its plate says "
            f"{nameplate_voltage:g} V",
            "class-i with a ground pin, class-ii with a double square",
        )


def unproven(test: Test) -> Iterator[Doubt]:
    """Yield what a good reading leaves open."""
    if test.volts is None:
        yield Doubt(
            "the test voltage was not given",
            "test at 500 V dc, boards unplugged",
            ("test_voltage",),
        )
    elif not at_or_below(LEAST_TEST_V, test.volts):
        yield Doubt(
            f"{test.volts:g} V is no insulation test: it shows a dead short, not weak insulation",
            "test at 500 V dc with an insulation tester, boards unplugged",
        )
    if test.switched_on is not True and test.part not in BARE:
        yield Doubt(
            "what lies behind an open switch or relay is not in the reading",
            "close switches and relays, or read at the element, motor or compressor itself",
            ("switched_on",) if test.switched_on is None else (),
        )


def class_by_name(reading: float, test: Test) -> Iterator[Doubt]:
    """Yield whether it is class III at all, whose limit is the lowest; reading in Mohm."""
    told = test.protection != "class-iii" or test.plate_volts is not None
    if not told and not at_or_below(ANY_CLASS_MOHM, reading):
        yield Doubt(
            f"{reading:.3g} Mohm would do for class-iii alone, and whether it is fed by "
            f"{CLASS_III_V:g} V or less was not said",
            "read the volts on its plate; one for the mains is class-i or class-ii",
            ("nameplate_voltage",),
        )


def excuses(test: Test) -> Iterator[Doubt]:
    """Yield why a low reading need not be bad insulation."""
    by_volts = test.volts is None or at_or_below(LEAST_TEST_V, test.volts)
    bare = test.part in BARE and test.boards_off is None
    if test.boards_off is not True and by_volts and not bare:
        yield Doubt(
            "a board or surge part that is connected can make it read low",
            "unplug boards and surge parts and read again, or measure the leakage",
            ("electronics_unplugged",) if test.boards_off is None else (),
        )
    if test.part != "heater":
        return
    if test.dried is not True:
        yield Doubt(
            "it may be low by moisture: a sheathed element dries out",
            "warm it until it is dry and read again; if it stays low, replace it",
            ("dried",) if test.dried is None else (),
        )
    large = test.power is not None and at_or_below(BY_CURRENT_W, test.power)
    if large and test.protection == "class-i":
        yield Doubt(
            "it is low; at 3.5 kW or more the current in the protective conductor decides",
            "measure the leakage current: wirecalc leakage",
        )
