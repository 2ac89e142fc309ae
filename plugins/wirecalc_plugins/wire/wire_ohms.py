"""Copper to ohms, and back: resistance of a length, and the length or warmth that ohms come to."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from wirecalc import (
    Bands,
    Item,
    calculation,
    caution,
    figure,
    put,
)
from wirecalc.trade.wire_runs import KFT_PER_KM

from ..lead_resistance import less_leads
from .ohms_judged import against_size, judged, too_few
from .ohms_of_length import BASE_C, Conductor, conductor_of, rise
from .ohms_read import Read, Span, length_of, no_metal, temperature_of
from .wire_ohms_inputs import (
    LOOP,
    ConductorLength,
    ConductorMetal,
    ConductorTemperature,
    GreatestPerLength,
    KnownAt,
    LeadResistance,
    MeasuredResistance,
    MeasuredWay,
    ResistancePerLength,
    Resistivity,
    TheWire,
    refuse,
)


@calculation(
    part="wire and joint",
    words=(
        "wire resistance; resistance of wire; cable resistance; conductor resistance; copper ohms",
        "ohms per foot; ohms per 1000 ft; ohm per metre; ohms per meter; resistivity; rho",
        "specific resistance; length of wire on a spool; how long is this wire; reel; roll; coil",
        "distance to fault; find the break; short in a cable; fault location; heating cable",
        "heat tape; defrost cable; floor heating; temperature by resistance; hot wire ohms",
        "loop resistance; there and back; continuity ohms; tinned wire ohms; CCA ohms; milliohm",
        "ohms of wire; ohms of cable; how long is the coil of wire; reel left; wire left on reel",
        "ohm per 100 m; good copper; fake copper; copper clad aluminium; resistance of 100 m",
        "heating wire; nichrome; ohms for length; cable break; length from ohms",
    ),
    go_on="note length, temperature and meter beside the ohms",
    cautions=("dead-01",),
    not_checked=(
        "joints, terminals and the fault itself: their ohms are read as length or as heat",
        "how far the wire is from the size it is named by: 1 % of ohms is 1 % of length or 2.5 K",
        "what current it may carry: see `ampacity`",
    ),
    refuse=refuse,
    example_with=("wire=14 AWG", "conductor_length", "conductor_temperature"),
)
def wire_ohms(
    wire: TheWire = None,
    resistance_per_length: ResistancePerLength = None,
    resistivity: Resistivity = None,
    known_at: KnownAt = 20.0,
    conductor_metal: ConductorMetal = None,
    conductor_length: ConductorLength = None,
    conductor_temperature: ConductorTemperature = None,
    measured_resistance: MeasuredResistance = None,
    measured_way: MeasuredWay = None,
    lead_resistance: LeadResistance = None,
    greatest_per_length: GreatestPerLength = None,
    bands: Bands | None = None,
) -> Iterator[Item]:
    """How many ohms has this length of conductor, or how long or warm is it by its ohms?

    R = ohm of a length x length, there and back twice that. By size: NEC Chapter 9 Table 8 (coated
    column for tinned wire), IEC 60228 for metric wire, which is its most, else resistivity over
    area with 2 % of lay; tinned wire of other sizes by ASTM B33, copper-clad aluminium between the
    two classes of ASTM B566. In place of the size a printed resistance of a length, or resistivity
    over the area of the wire. Ohms rise with 0.00393 per K from 20 C (copper).

    Measured ohms less the leads give the length at a temperature, or the temperature of a known
    length; leads that were not read count as 0 to 0.3 ohm. Judged is only a measured length at a
    known temperature, against the most of IEC 60228 or of a maker.

    For dc, as an ohmmeter reads it; not for the reactance of a run (drop). Inputs: length in ft
    (over 0 to 100000), temperatures in C (-40 to 150), resistance of a length in ohm/kft,
    resistivity in nohm m, ohms. Yields ohms one way and of the loop, length, temperature. Refuses
    wire and resistance_per_length at once. Source: tables nec-ch9-table8, iec-60228, metals.
    """
    if wire is not None and wire.metal != "copper":
        yield caution("alu-01")
    conductor = conductor_of(wire, resistance_per_length, resistivity, known_at, conductor_metal)
    if conductor is None:
        return
    ends = bands or {}
    known = BASE_C if conductor.fixed_at is None else conductor.fixed_at
    celsius = known if conductor_temperature is None else conductor_temperature
    if conductor.fixed_at not in (None, celsius):
        yield no_metal(known)
        return
    warm = ends.get("conductor_temperature", (celsius, celsius))
    yield _per_length(conductor, celsius)
    if conductor_length is not None:
        feet = ends.get("conductor_length", (conductor_length, conductor_length))
        yield from _ohms(conductor, conductor_length, celsius, feet, warm)
    if measured_resistance is None or measured_way is None:
        return
    ways = 2 if measured_way == LOOP else 1
    read = Read.of(measured_resistance, lead_resistance, ways, ends)
    if lead_resistance is not None:
        yield read.less_leads(measured_resistance, lead_resistance)
    if conductor_length is None:
        yield from length_of(conductor, read, celsius, warm)
    elif conductor_temperature is None:
        yield from temperature_of(conductor, read, conductor_length, feet)
    else:
        yield against_size(conductor, read, conductor_length, celsius)
        yield from too_few(conductor, read, conductor_length, celsius)
        whole = ways * conductor_length * rise(conductor.metal or "copper", celsius) / 1000
        ohms = less_leads(measured_resistance, lead_resistance)
        yield from judged(ohms, whole, greatest_per_length, wire if resistivity is None else None)


def _per_length(conductor: Conductor, celsius: float) -> Item:
    most, least = conductor.most(celsius), conductor.least(celsius)
    return figure(
        f"ohms of a length at {put(celsius, 'C')}",
        most.ohm_per_kft,
        "ohm/kft",
        source=most.source,
        band=(least.ohm_per_kft, most.ohm_per_kft),
        also=[(most.ohm_per_kft * KFT_PER_KM, "ohm/km")],
    )


def _ohms(
    conductor: Conductor, length: float, celsius: float, feet: Span, warm: Span
) -> Iterator[Item]:
    """Yield the resistance of a length, one way and there and back."""
    each = conductor.most(celsius)
    low = conductor.least(warm[0]).ohm_per_kft * feet[0] / 1000
    high = conductor.most(warm[1]).ohm_per_kft * feet[1] / 1000
    for name, ways in (("resistance, one way", 1), ("resistance, there and back", 2)):
        yield figure(
            name,
            ways * each.ohm_per_kft * length / 1000,
            "ohm",
            source=each.source,
            band=(ways * low, ways * high),
            working=partial(_working, ways, length, each.ohm_per_kft),
        )


def _working(ways: int, length: float, ohm_per_kft: float) -> str:
    return f"{ways} x {put(length, 'ft')} x {put(ohm_per_kft, 'ohm/kft')} / 1000"
