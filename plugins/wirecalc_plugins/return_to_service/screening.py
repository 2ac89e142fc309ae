"""A screening of a machine where neither its insulation nor its leakage can be measured."""

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

from .screening_inputs import (
    DeviceHeld,
    OhmRange,
    OverRange,
    SwitchedOn,
    TestButtonTrips,
    TripCurrent,
)

LEAST_RANGE_MOHM = 2.0  # over the range of a lesser one says less than any limit of insulation


MOST_TRIP_MA = 30.0  # a device that trips above it does not protect a person
MEASURE = "measure the insulation at 500 V dc, or the leakage with everything switched on"


@calculation(
    part="return to service",
    words=(
        "shock; shocks; tingle; electric shock; no insulation tester; no megohmmeter",
        "only a multimeter; multimeter; DMM; short to case; short to ground; short to chassis",
        "shorted to ground; fault to case; live case; hot case; grounded; over range; OL to case",
        "test button; GFCI test; GFCI test button; RCD test button; GFCI trips; RCD trips",
        "ground fault; earth fault; continuity to case; quick check; bare metal",
        "return to service; hot chassis; jolt; no tester; ohmmeter; basic check; push the button",
        "live metal; metal case live; dead short; short; shorted; buzzes me; live case shock",
        "no meg; no insulation meter",
        "check before return; last test; final check; quick test for shock; is it live",
        "case live test; check case with multimeter; ohms to case; continuity check to case",
        "GFCI plug test; push test button; ready to hand back",
        "before it goes back; put back in service; back in service; ok to use again",
        "OK to return; final test; end of repair test",
    ),
    go_on="read insulation or leakage as soon as a tester is at hand",
    cautions=("dead-01", "dead-02", "cap-01", "gnd-01", "gfci-01", "flam-01"),
    not_checked=(
        "weak insulation that a few volts of a meter do not show",
        "leakage under what trips the GFCI or RCD: it may still be over every limit",
        "the ground path: this does not stand in for it",
    ),
    example_with=(
        "over_range",
        "ohm_range",
        "switched_on",
        "device_held",
        "test_button_trips",
        "trip_current",
    ),
)
def screening(
    over_range: OverRange = None,
    ohm_range: OhmRange = None,
    switched_on: SwitchedOn = None,
    device_held: DeviceHeld = None,
    test_button_trips: TestButtonTrips = None,
    trip_current: TripCurrent = None,
) -> Iterator[Item]:
    """Does anything show a fault to the case, where nobody could measure insulation or leakage?

    Live to case over range on an ordinary meter, all switches closed, then a full run on a GFCI or
    RCD that was proved by its button and held: no fault shows. That is no measurement: a meter's
    few volts pass weak insulation, and what holds a device may leak more than any limit. So it is
    at best marginal, screened and not tested; a rule of the shop may forbid it. For one whole
    machine that such a device feeds, not for a part by itself.

    Inputs: yes or no of the ohm reading, switches, run and button; ohm_range in Mohm (over 0 to
    10000), trip_current in mA (4 to 1000). Yields a criterion each. Source: common practice.
    """
    if over_range is False:
        yield _open(
            "live to case",
            "it is not over range: something leads from live parts to the case",
            f"leave it unplugged; {MEASURE}",
        )
    if ohm_range is not None and not at_or_below(LEAST_RANGE_MOHM, ohm_range):
        yield _open(
            "range of the ohm reading",
            f"over a range of {ohm_range:g} Mohm says nothing of insulation, at least "
            f"{LEAST_RANGE_MOHM:g} Mohm does",
            "read it again on the highest range, or with a meter that has a higher one",
        )
    if switched_on is False:
        yield _open(
            "switches closed",
            "what lies behind an open switch or relay is not in the reading",
            "close switches and relays, or read at the element, motor or compressor itself",
        )
    if test_button_trips is False:
        yield _open(
            "its test button trips it",
            "the GFCI or RCD does not trip by its button, so that it held says nothing",
            "run it on another one, and have this one replaced",
        )
    if trip_current is not None and not at_or_below(trip_current, MOST_TRIP_MA):
        yield _open(
            "trip of the GFCI or RCD",
            f"one of {trip_current:g} mA holds beside a machine that shocks, {MOST_TRIP_MA:g} mA "
            "is the most",
            "run it on a class A GFCI, or on an RCD of 30 mA or less",
        )
    if device_held is not None:
        yield requires(
            "a GFCI or RCD holds",
            device_held,
            says="it tripped: the machine leaks",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            action="do not bypass it; find what leaks: unplug parts one by one, wet parts and "
            "elements first",
        )
    yield requires(
        "insulation or leakage",
        False,
        says="screened, not tested: neither was measured",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        advisory=True,
        action=MEASURE,
        behind="the reading over range, and the run on a GFCI or RCD that holds",
    )


def _open(name: str, why: str, measure: str) -> Item:
    """Return what settles nothing, and what would."""
    return cannot_tell(name, why, measure=measure, source=PRACTICE)
