"""The overload of a motor or compressor, by its resistance and its temperatures."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    at_or_below,
    calculation,
    cannot_tell,
    requires,
)

from ..lead_resistance import less_leads, ohms_at_most, without_leads
from .overload_inputs import (
    LeadResistance,
    NameplateVoltage,
    OverloadCold,
    OverloadOpen,
    OverloadResistance,
    ResetTemperature,
    TripTemperature,
    refuse,
)
from .overload_temperatures import REPLACE, judge_closing, judge_opening, overload_row

_CONDUCTS = "overload conducts"
AS_GOOD_AS_OPEN = 40.0  # ohm: ten times what one for 230 V has; practice
PLATE_115 = (100.0, 130.0)  # plates that the manual's ohm is for


@calculation(
    part="motor and start",
    words=(
        "overload protector; overload ohms; overload resistance; continuity of overload; OL; OLP",
        "overload switch; thermal overload; thermal protector; motor protector; bimetal; disc",
        "internal overload; external overload; protector; clicks; clicking; compressor clicks",
        "clicks on and off; click; overload open; overload trips; tripped; will not reset; reset",
        "cuts out; shuts off; cycles on overload; short cycling; stops after a while",
        "stops when hot; hot compressor; compressor; compressor hot; fridge; refrigerator",
        "freezer; not cooling; AC; motor cuts out; thermal switch; relay and overload; overheats",
        "overheating; overheated; trip temperature; motor stops; motor hot",
        "restarts after cooling; dead compressor; cutout; cut-out; guard; thermal guard",
        "reset time; opens; trip time; after a few minutes; after five minutes; cuts off",
        "line break protector; resets; quits; quits when hot; dies when hot; stops hot",
        "motor trips; trips thermal; thermal trip; thermal",
        "bimetal overload; overload sticks; overload will not close; stays open; open when cold",
        "does not close again; takes long to reset; trips thermally; thermal overload test",
        "motor protector test; overload check; runs a minute then stops; runs for a minute",
        "stops after minutes; winding thermostat; button overload; manual reset; reset button",
        "reads OL; stops halfway; stops midway; stops mid cycle; stops in the middle",
        "quits midway",
    ),
    go_on="push it home on its pins, start, and read the amps: inrush",
    cautions=("dead-01", "cap-01", "hot-01", "heat-03", "mov-01", "flam-02", "pin-01", "flam-01"),
    not_checked=(
        "that it is the very overload which the compressor's maker lists: no other fits",
        "the current at which it opens, and how soon",
    ),
    refuse=refuse,
    example_with=("overload_resistance", "lead_resistance"),
)
def overload(
    overload_resistance: OverloadResistance = None,
    lead_resistance: LeadResistance = None,
    overload_open: OverloadOpen = None,
    overload_cold: OverloadCold = None,
    nameplate_voltage: NameplateVoltage = None,
    trip_temperature: TripTemperature = None,
    reset_temperature: ResetTemperature = None,
) -> Iterator[Item]:
    """Is this overload good?

    For the external overload of a small compressor or motor. Cold it reads 1 ohm at most in a
    115 V unit (one service manual), less the test leads; one for 230 V has about four times the
    ohms, and over 1 ohm it can't be told by them, up to 40 ohm, which is as good as open (common
    practice). Open when cold fails; open when warm it may only have done its work: let it cool, an
    internal one up to 60 min (one manual). Opened at 225 to 250 F and closed at 150 to 160 F (107
    to 121 C, 65 to 71 C) is usual (one trade author, whose two pages differ); parts differ, so
    outside is marginal, and over 160 C, where a winding's protector must have opened, a fail.

    Inputs: resistances in ohm (0 to 10000, leads to 2), overload_open, overload_cold,
    nameplate_voltage in V, trip_temperature and reset_temperature in C where they were measured.
    Yields a criterion a question. Refuses an open overload with a reading, a reading
    below the leads, and a reset not below the trip.
    Source: table start-parts.
    """
    if overload_resistance is not None:
        yield from _reads(overload_resistance, lead_resistance, overload_cold, nameplate_voltage)
    elif overload_open:
        yield _open(overload_cold)
    else:
        yield cannot_tell(
            _CONDUCTS,
            "it was not read",
            measure="take it off, let it cool, and read across it",
            needs=("overload_resistance", "overload_open"),
        )
    if trip_temperature is not None:
        yield from judge_opening(trip_temperature)
    if reset_temperature is not None:
        yield from judge_closing(reset_temperature)


def _reads(
    reading: float, leads: float | None, cold: bool | None, plate: float | None
) -> Iterator[Item]:
    ohms = less_leads(reading, leads)
    row = overload_row("cold resistance", "manual")
    most = row.number("most")
    if leads is not None:
        yield without_leads("resistance less leads", ohms, reading, leads)
    at_115 = plate is not None and PLATE_115[0] <= plate <= PLATE_115[1]
    hopeless = not at_or_below(ohms.low, AS_GOOD_AS_OPEN)
    if not at_or_below(ohms.high, most):
        why = [] if cold else [_warmth(cold)]
        why += [] if at_115 or hopeless else [f"{most:g} ohm is of 115 V units"]
        if why:
            lacks = {"overload_cold": cold, "nameplate_voltage": plate}
            yield cannot_tell(
                _CONDUCTS,
                f"{ohms.high:.4g} ohm is over {most:g} ohm, and {', and '.join(why)}",
                measure="let it cool to the room and read it again; take its ohms from the maker's "
                "sheet, or compare with a new one of the same number",
                needs=[name for name, value in lacks.items() if value is None],
                source=row.source,
            )
            return
    yield ohms_at_most(
        _CONDUCTS,
        ohms,
        AS_GOOD_AS_OPEN if hopeless and not at_115 else most,
        source=PRACTICE if hopeless and not at_115 else row.source,
        says="burnt contacts, or not closed",
        action=REPLACE,
    )


def _warmth(cold: bool | None) -> str:
    return "it was not said whether it is cold" if cold is None else "it is warm"


def _open(cold: bool | None) -> Item:
    if not cold:
        wait = overload_row("wait before a reading", "manual")
        return cannot_tell(
            _CONDUCTS,
            f"it reads open, and {_warmth(cold)}: it may only have tripped",
            measure="let it cool and read it again; an internal one may take "
            f"{wait.number('least'):g} min",
            needs=("overload_cold",) if cold is None else (),
            source=wait.source,
        )
    return requires(
        _CONDUCTS,
        False,
        says="it reads open when cold",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        action=REPLACE,
    )
