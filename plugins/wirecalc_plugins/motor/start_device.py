"""Start device and overload, read dead, cold and off the motor."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    Item,
    calculation,
    not_checked,
)

from .start_device_inputs import (
    BrownedOrRattling,
    ByItself,
    CoilOpen,
    ContactInverted,
    ContactUpright,
    DeviceCold,
    DeviceOpen,
    DeviceResistance,
    LeadResistance,
    MakerResistance,
    MakerResistanceHigh,
    MakerTolerance,
    NameplateVoltage,
    StartDevice,
    refuse,
)
from .start_devices import (
    RELAYS,
    UNREAD,
    Readings,
    judge_looks,
    judge_resistor,
    not_by_itself,
    plate_volts,
)
from .start_relays import judge_relay, judge_unread


@calculation(
    part="motor and start",
    words=(
        "relay; relais; ptc ohms; relay ohms; start relay; starting relay; starter; motor starter",
        "current relay; potential relay; solid state relay; PTC; PTCR; thermistor; pill",
        "electronic relay; 3 in 1; 3-in-1; hard start kit; hard start; kick start; start kit",
        "booster; boost kit; start components; start switch; rattles; rattling; shake; relay coil",
        "relay contacts; burnt relay; stuck relay; sticking relay; bad relay; compressor",
        "compressor relay; will not start; hums; humming; clicks; clicking; compressor clicks",
        "fridge; refrigerator; freezer; not cooling; dead fridge; not cold; relay and overload",
        "compressor start; start winding stays in; AC; fridge clicks; centrifugal switch",
        "dead compressor; rattle; not starting; does not start; PTCR resistance; posistor",
        "plug-on relay; cracked; buzzes; buzzing; fridge relay; run and start",
        "compressor will not start; motor relay; compressor hums",
        "relay upside down; which way up; position of the relay; upright; relay orientation",
        "relay on its side; relay test; ptc test; ptc broken; ptc cold; relay smells",
        "relay burnt; relay clicks; start relay test; hums no start; no start; hums and clicks",
        "clicks every few minutes; click then nothing; solenoid; start capacitor relay",
        "hard start size; relay rattles; bottle relay",
        "fridge will not start; freezer will not start; will not start up",
    ),
    go_on="fit it, start the compressor, read start and running amps: inrush",
    cautions=("dead-01", "cap-01", "hot-01", "flam-02", "sub-01", "flam-01"),
    not_checked=(
        "that it switches in service: the inrush of the next start shows it",
        "that it is the device which the compressor's maker names",
    ),
    refuse=refuse,
    example_with=(
        "device_resistance",
        "by_itself",
        "device_cold",
        "lead_resistance",
        "nameplate_voltage",
        "browned_or_rattling=no",
    ),
)
def start_device(
    start_device: StartDevice,
    device_resistance: DeviceResistance = None,
    lead_resistance: LeadResistance = None,
    device_open: DeviceOpen = None,
    browned_or_rattling: BrownedOrRattling = None,
    by_itself: ByItself = None,
    device_cold: DeviceCold = None,
    maker_resistance: MakerResistance = None,
    maker_resistance_high: MakerResistanceHigh = None,
    maker_tolerance: MakerTolerance = None,
    nameplate_voltage: NameplateVoltage = None,
    contact_upright: ContactUpright = None,
    contact_inverted: ContactInverted = None,
    coil_open: CoilOpen = None,
) -> Iterator[Item]:
    """Is this start device good?

    For the start device of a small single-phase compressor or motor, off it and cold; browned,
    cracked or rattling it is replaced whatever it reads. The maker's ohms rule: within their
    tolerance or printed range good; with neither, within 20 % good, past 30 % bad (data sheets).
    Without them a PTC of a 115 V unit (say its volts) reads 3 to 12 ohm (one manual; another 10),
    of a 220 V unit 15 to 30 (repair texts); a trade page: 10 to 100. Under 1 ohm is short, over 10
    times the most is open (common practice); between: cannot tell. A start thermistor on a run
    capacitor: 100 to 180 % of its mark. A current relay is open upright and closed inverted, a
    potential relay closed; the coil of either conducts (common practice). An electronic relay, or a
    kit that combines relay, overload and capacitor, no ohmmeter tells.

    Inputs: start_device; resistances in ohm (leads to 2); by_itself and device_cold: no or unsaid
    can't be told; maker's ohms and %; contacts, coil_open. Yields a criterion a question. Refuses
    readings that the device has not. Source: tables start-parts, ptc-start-devices.
    """
    yield from judge_looks(browned_or_rattling)
    if start_device in UNREAD:
        yield judge_unread(start_device)
        return
    readings = Readings(
        device_resistance,
        lead_resistance,
        device_open is True,
        maker_resistance,
        maker_resistance_high,
        maker_tolerance,
        nameplate_voltage,
    )
    if start_device == "potential-relay" and contact_inverted is not None:
        yield not_checked("contact upside down", "no gravity opens that of a potential relay")
    if maker_resistance_high is not None and maker_tolerance is not None:
        yield not_checked("tolerance of the maker's ohms", "the maker's range is its own tolerance")
    if start_device == "run-thermistor" and maker_tolerance is not None:
        yield not_checked("tolerance of the mark", "the text judges by shares of the mark")
    unsettled = list(not_by_itself(by_itself, device_cold, start_device))
    yield from unsettled
    if start_device in RELAYS:
        if not unsettled:
            yield from judge_relay(start_device, contact_upright, contact_inverted, coil_open)
    else:
        yield from plate_volts(readings)
        yield from judge_resistor(start_device, readings, by_itself, settled=not unsettled)
