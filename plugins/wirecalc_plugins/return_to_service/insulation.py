"""Insulation resistance of a machine or a part of it, live parts to the case."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Annotated, NamedTuple

from wirecalc import (
    Caution,
    Confidence,
    Item,
    Nameplate,
    OneOf,
    Origin,
    Reading,
    YesNo,
    at_least,
    at_or_below,
    calculation,
    cannot_tell,
    caution,
    figure,
    not_checked,
    requires,
    tables,
)
from wirecalc.sources import confirmed
from wirecalc.tables import Row

TEST_V = 500.0  # the limits hold at this voltage
LEAST_TEST_V = 250.0  # under it a good reading shows nothing; common practice
GROUNDED_MOHM = 0.01  # at 100 V it lets 10 mA through, more than any leakage limit
SLIP_MOHM = 1e-6  # 1 ohm: fewer, typed in mohm, is a slip of mohm and Mohm
BY_CURRENT_W = 3500.0  # heating power from which the protective conductor's current may decide
BETTER = "a 500 V insulation tester whose range ends near the limit"
NAME = "insulation to the case"

_VDE = confirmed("vde-0701", "DIN VDE 0701", "insulation resistance at 500 V dc", 2)
_GUIDES = confirmed("inspection-guides", "UK in-service inspection guides", "boards at 500 V", 2)
_VACUUM = Caution(
    "compressor-vacuum",
    "No test voltage on a compressor that is under vacuum: it can arc inside.",
    "maker sheet",
    "stop",
    "insulation test of a hermetic compressor",
)


class _Doubt(NamedTuple):
    """Why a reading settles nothing, what would, and the inputs that it lacks."""

    why: str
    measure: str
    needs: tuple[str, ...] = ()


@calculation(
    part="return to service",
    cautions=("dead-01", "dead-02", "cap-01", "ins-01", "ins-02"),
    not_checked=(
        "boards and surge parts that were unplugged, and the cord if it was not in the test",
        "insulation between live parts, such as shorted turns",
    ),
    example_with=("test_voltage", "switched_on", "electronics_unplugged"),
)
def insulation(
    insulation_resistance: Annotated[
        float,
        Reading(
            "Mohm",
            low=0,
            high=1e6,
            typical="50 Mohm",
            text="live parts joined, to the bare case; over range (OL): its top, as in >999 Mohm",
            past=">",
            slip_under=SLIP_MOHM,
        ),
    ],
    protection: Annotated[
        str,
        OneOf(
            ("class-i", "class-ii", "class-iii"),
            text="class-i: ground pin; class-ii: double square, no ground pin; class-iii: fed by "
            "extra-low volts",
        ),
    ],
    tested_part: Annotated[
        str,
        OneOf(
            ("machine", "heater", "compressor", "motor"),
            text="what was tested; heater: heating elements, alone or switched on in the machine",
        ),
    ],
    test_voltage: Annotated[
        float | None,
        Nameplate(
            "V", above=0, high=1000, typical="500 V", text="dc volts that the tester is set to"
        ),
    ] = None,
    switched_on: Annotated[
        bool | None,
        YesNo("switches, thermostats and relays were closed, so that all was in the reading"),
    ] = None,
    electronics_unplugged: Annotated[
        bool | None, YesNo("boards, surge parts and inverter were unplugged, or there are none")
    ] = None,
    dried: Annotated[bool | None, YesNo("it was warmed and dried before this reading")] = None,
    nameplate_power: Annotated[
        float | None,
        Nameplate("W", above=0, high=20_000, typical="2585 W", text="power of the elements"),
    ] = None,
) -> Iterator[Item]:
    """Is the insulation good between live parts and the case?

    At 500 V dc: class I 1 Mohm (0.3 with heating elements switched on), class II 2, class III
    0.25 (DIN VDE 0701); under the 2 Mohm of one guide, and 10 of a hermetic compressor by
    practice, marginal. Under 250 V, or with parts switched off, a good reading shows nothing. A
    low one fails, unless it may be moisture (heaters), a board at test voltage, or elements of
    3.5 kW that are judged by leakage; under 0.01 Mohm it always fails.

    Inputs: reading in Mohm (0 to 1e6; past the tester's end >999 Mohm), class, part, test_voltage
    in V dc (over 0 to 1000), nameplate_power in W, yes or no of the rest. Yields the limits and
    criteria. Refuses mohm for Mohm. Source: table insulation-limits.
    """
    rows = list(_rows(protection, tested_part))
    for row in rows:
        part = "" if row.text("tested_part") == "any" else f", {tested_part}"
        name = f"least, {row.text('said_by')}{part}"
        yield figure(name, row.number("limit_Mohm"), "Mohm", source=row.source)
    if tested_part in ("compressor", "motor"):
        yield from _ieee_43()
    if tested_part == "compressor":
        yield caution("ins-02")
        yield _VACUUM
        yield caution("flam-01")
    binding = _binding(rows)
    unproven = list(_unproven(test_voltage, switched_on))
    limit = binding.number("limit_Mohm")
    if at_or_below(limit, insulation_resistance):
        doubts = unproven
    elif at_or_below(GROUNDED_MOHM, insulation_resistance):
        excuses = _excuses(tested_part, test_voltage, electronics_unplugged, dried, nameplate_power)
        doubts = list(excuses)
    else:
        doubts = []
    yield _judge(insulation_resistance, binding, doubts)
    if not unproven:
        yield from _advice(insulation_resistance, rows)
    yield from _at_test_voltage(test_voltage, electronics_unplugged)


def _rows(protection: str, part: str) -> Iterator[Row]:
    for row in tables.load("insulation-limits").rows:
        of_class = row.text("protection") in (protection, "any")
        if of_class and row.text("tested_part") in (part, "any"):
            yield row


def _binding(rows: Sequence[Row]) -> Row:
    """Return the standard's row: that of the part itself before that of any."""
    standard = [r for r in rows if r.text("binding") == "yes"]
    return max(standard, key=lambda r: r.text("tested_part") != "any")


def _ieee_43() -> Iterator[Item]:
    row = tables.load("insulation-limits").row(
        protection="ieee-43", tested_part="random-wound", said_by="IEEE 43"
    )
    yield figure(
        "of a machine of 1 hp or more, at 40 C", row.number("limit_Mohm"), "Mohm", source=row.source
    )
    yield not_checked("IEEE 43", "it does not cover motors under 1 hp; its limit is only shown")


def _judge(reading: float, row: Row, doubts: Sequence[_Doubt]) -> Item:
    if doubts:
        return cannot_tell(
            NAME,
            "; ".join(d.why for d in doubts),
            measure="; ".join(d.measure for d in doubts),
            needs=[name for d in doubts for name in d.needs],
            source=row.source,
        )
    return at_least(
        NAME,
        reading,
        row.number("limit_Mohm"),
        "Mohm",
        source=row.source,
        says="do not power it",
        action="take parts off one by one to find where it leaks; dry what is wet, replace the "
        "part, read again",
        better=BETTER,
    )


def _unproven(test_voltage: float | None, switched_on: bool | None) -> Iterator[_Doubt]:
    """Yield what a good reading leaves open."""
    if test_voltage is None:
        yield _Doubt(
            "the test voltage was not given",
            "test at 500 V dc, boards unplugged",
            ("test_voltage",),
        )
    elif not at_or_below(LEAST_TEST_V, test_voltage):
        yield _Doubt(
            f"{test_voltage:g} V is no insulation test: it shows a dead short, not weak insulation",
            "test at 500 V dc with an insulation tester, boards unplugged",
        )
    if switched_on is not True:
        yield _Doubt(
            "what lies behind an open switch or relay is not in the reading",
            "close switches and relays, or read at the element, motor or compressor itself",
            ("switched_on",) if switched_on is None else (),
        )


def _excuses(
    part: str,
    test_voltage: float | None,
    electronics_unplugged: bool | None,
    dried: bool | None,
    power: float | None,
) -> Iterator[_Doubt]:
    """Yield why a low reading need not be bad insulation."""
    by_volts = test_voltage is None or at_or_below(LEAST_TEST_V, test_voltage)
    if electronics_unplugged is not True and by_volts:
        yield _Doubt(
            "a board or surge part that is connected can make it read low",
            "unplug boards and surge parts and read again, or measure the leakage",
            ("electronics_unplugged",) if electronics_unplugged is None else (),
        )
    if dried is False or (dried is None and part == "heater"):
        yield _Doubt(
            "it may be low by moisture: a sheathed element, for one, dries out",
            "warm it until it is dry and read again; if it stays low, replace it",
            ("dried",) if dried is None else (),
        )
    if part == "heater" and power is not None and at_or_below(BY_CURRENT_W, power):
        yield _Doubt(
            "it is low; at 3.5 kW or more the current in the protective conductor decides",
            "measure the leakage current: wirecalc leakage",
        )


def _advice(reading: float, rows: Sequence[Row]) -> Iterator[Item]:
    """Judge by advice that is stricter than the standard."""
    for row in rows:
        if row.text("binding") == "no":
            practice = row.source.confidence is Confidence.PRACTICE
            yield at_least(
                f"insulation by {row.text('said_by')}",
                reading,
                row.number("limit_Mohm"),
                "Mohm",
                source=row.source,
                advisory=True,
                origin=Origin.PRACTICE if practice else Origin.STANDARD,
                says=f"stricter than the standard: {row.note}",
                action="dry and clean it, read again; write the reading down and watch it",
                better=BETTER,
            )


def _at_test_voltage(
    test_voltage: float | None, electronics_unplugged: bool | None
) -> Iterator[Item]:
    if test_voltage is None or not at_or_below(LEAST_TEST_V, test_voltage):
        return
    yield requires(  # how the reading was made, no reading: it never comes closest to a limit
        "tested at 500 V dc",
        at_or_below(TEST_V, test_voltage),
        says=f"the limits hold at {TEST_V:g} V dc, and {test_voltage:g} V was used",
        source=_VDE,
        advisory=True,
        action="test at 500 V dc, boards unplugged",
    )
    if electronics_unplugged is not None:
        yield requires(
            "boards unplugged for the test",
            electronics_unplugged,
            says="test voltage went into boards or surge parts, which it can damage",
            source=_GUIDES,
            advisory=True,
            action="check that the boards still work; unplug them the next time",
        )
