"""Three winding readings of a single-phase motor: which pin is which, and do they fit."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecalc import (
    PRACTICE,
    Bands,
    Item,
    Origin,
    at_or_below,
    calculation,
    not_checked,
    requires,
)

from ..lead_resistance import LEADS_OHM
from .winding_case import judge_case
from .winding_inputs import (
    MakerEach,
    MakerEachHigh,
    MakerRun,
    MakerRunHigh,
    MakerStart,
    MakerStartHigh,
)
from .winding_maker import by_maker
from .winding_open import PAIRS, judge_open, not_read
from .winding_pairs import less_leads, pair_figure
from .winding_pins import LIKE, Pair, no_more_than_leads, pins
from .windings_inputs import (
    CaseResistance,
    CommonPin,
    LeadResistance,
    MotorKind,
    OpenPin,
    Reading12,
    Reading13,
    Reading23,
    WindingTemperature,
    refuse,
)


@calculation(
    part="motor and start",
    words=(
        "winding resistance; motor winding; motor winding resistance; ohm out; ohm out compressor",
        "ohms; ohming; common start run; C S R; CSR; terminals; pins; pinout; which pin",
        "compressor terminals; compressor pins; compressor ohms; motor ohms; open winding",
        "shorted winding; shorted turns; short between windings; burnt winding; burnt motor",
        "burned motor; burned out; burnt out; dead motor; bad motor; bad compressor",
        "compressor test; motor test; will not start; hums; compressor; fridge; refrigerator",
        "freezer; AC; not cooling; washer; washing machine; fan motor; fan; blower motor; pump",
        "drum will not turn; spins slow; three phase; 3 phase; U V W; inverter compressor",
        "continuity; start winding; run winding; main winding; auxiliary winding; aux; coil ohms",
        "identify leads; motor leads; motor wires; multimeter; dead compressor; condenser fan",
        "drain pump; motor dead; motor does not turn; reads OL; open line; ohm readings",
        "three pins; three terminals; motor coil; stator; armature; R S C; infinite; infinity",
        "compressor windings; pin out; resistance between pins; no continuity; balanced",
        "unbalanced; coil; field",
        "valve coil; inlet valve; inlet valve coil; fill valve; water valve; water inlet valve",
        "water valve coil; solenoid; solenoid coil; solenoid ohms; gas valve coil; gas valve",
        "drain valve; door lock coil; lid lock; drain pump ohms; drain pump coil",
        "circulation pump; timer motor; timer motor ohms; ice maker motor; will not fill",
        "does not fill; fills slow; slow fill; will not drain; does not drain; drains slow",
        "no spin; will not spin; not spinning; motor reads open; same ohms on all three",
        "lowest ohms; highest ohms; start winding ohms; flame sensor coil; contactor coil",
        "relay coil ohms; coil test; coil resistance; coil reads; damper motor; auger motor",
        "tub motor; universal motor; carbon brushes; brushes; DC motor; stepper; tacho",
        "tachometer; transformer ohms; primary; secondary",
        "step-down transformer; doorbell transformer",
        "timer; timer will not advance; cam timer",
        "reads 0.L; shows OL; meter shows 1; same reading on all; three phase unbalance",
        "phase to phase ohms; dead motor ohms; motor does nothing",
        "fill time; slow filling; water pressure low; dishie; door lock; lock coil",
        "start or run; run or start; which is start; which is run; pin is which; lead is which",
        "water does not come in; no water comes in; no water coming in; fill valve; will not fill",
    ),
    go_on="read each pin to the case (insulation), then start it, read the amps",
    cautions=("dead-01", "cap-01", "pin-01", "ins-01"),
    not_checked=(
        "shorted turns, unless the maker's ohms are given: a good winding may read 2 ohm or less",
        "insulation at its test voltage: an ohmmeter is no insulation tester",
    ),
    refuse=refuse,
    example_with=(
        "reading_1_2",
        "reading_1_3=16.4 ohm",
        "reading_2_3=12.0 ohm",
        "lead_resistance=0.1 ohm",
        "case_resistance=>40 Mohm",
        "motor_kind=compressor",
    ),
    renamed={"tested_part": "motor_kind"},
    exercises=".windings_exercises",
)
def windings(
    reading_1_2: Reading12 = None,
    reading_1_3: Reading13 = None,
    reading_2_3: Reading23 = None,
    open_pin: OpenPin = "none",
    lead_resistance: LeadResistance = None,
    common_pin: CommonPin = None,
    winding_temperature: WindingTemperature = None,
    maker_run: MakerRun = None,
    maker_run_high: MakerRunHigh = None,
    maker_start: MakerStart = None,
    maker_start_high: MakerStartHigh = None,
    maker_each: MakerEach = None,
    maker_each_high: MakerEachHigh = None,
    case_resistance: CaseResistance = None,
    motor_kind: MotorKind = "compressor",
    bands: Bands | None = None,
) -> Iterator[Item]:
    """Which pin of this motor is common, start, run, and do its windings read right?

    For a single-phase motor; three-phase and inverter ones by their maker's ohms alone. Number the
    pins, take all wires off, read each pair cold. The largest pair leaves common out; of the other
    two the lower is common to run, the higher common to start. The two must add up to the largest
    within 0.3 ohm or 5 % (common practice): if not, the readings contradict each other and nothing
    is named. Start under 1.2 times run: a reversing motor has two like windings, a three-phase or
    inverter motor three; no pin is named, and the motor is not condemned: three like ones are
    judged by the maker's ohms of each pair.

    Inputs: readings and leads in ohm (0 to 1000, leads to 2), open_pin, common_pin, maker's ohms
    (7 % at 25 C, or a printed range; with winding_temperature in C), case_resistance in Mohm,
    motor_kind. Yields each pair less the leads, closure, ratio, the pins, and ratios of known
    motors. Refuses a reading on an open pin, and maker's run ohms over start. To
    the case an ohmmeter can fail, never pass. Source: tables winding-ratios, insulation-limits.
    """
    ends = dict(bands or {})
    given = dict(zip(PAIRS, (reading_1_2, reading_1_3, reading_2_3), strict=True))
    if lead_resistance is None:
        yield not_checked("test leads", "taken as 0 ohm; they have 0.1 to 0.3: touch and read them")
    pairs = list(less_leads(given, ends, lead_resistance or 0.0))
    for pair in pairs:
        yield pair_figure(pair, given[pair.name], lead_resistance)
    yield from judge_case(case_resistance, ends.get("case_resistance"), motor_kind)
    if open_pin != "none":
        yield judge_open(open_pin, common_pin, len(pairs))
        return
    if len(pairs) < len(PAIRS):
        missing = [p for p, reading in given.items() if reading is None]
        yield not_read(missing)
        return
    yield requires("no winding is open", True, says="", source=PRACTICE, origin=Origin.PRACTICE)
    unread = lead_resistance is None
    lowest = min(pairs, key=lambda p: p.low)
    if at_or_below(lowest.low, LEADS_OHM if unread else 0.0):
        yield no_more_than_leads(lowest, unread)
        return
    temperature = winding_temperature, ends.get("winding_temperature")
    low, middle, high = sorted(pairs, key=lambda p: p.ohm)
    own = maker_run is not None or maker_start is not None
    if maker_each is not None and (not own or high.ohm < LIKE * low.ohm):
        for pair in pairs:
            yield from by_maker(
                f"pair {pair.name}", pair, (maker_each, maker_each_high), temperature, unread
            )
        return
    if maker_each is not None:
        yield not_checked("each pair by its maker", "the maker's run and start ohms judge")
    named = yield from pins(low, middle, high, common_pin)
    windings_by_maker = (
        ("run", low, (maker_run, maker_run_high)),
        ("start", middle, (maker_start, maker_start_high)),
    )
    yield from _by_makers(windings_by_maker, temperature, unread=unread, named=named is not None)


def _by_makers(
    each: Sequence[tuple[str, Pair, tuple[float | None, float | None]]],
    temperature: tuple[float | None, tuple[float, float] | None],
    *,
    unread: bool,
    named: bool,
) -> Iterator[Item]:
    for name, pair, (low, high) in each:
        if low is not None and named:
            yield from by_maker(f"{name} winding", pair, (low, high), temperature, unread)
        elif low is not None:
            yield not_checked(f"{name} winding by its maker", "the winding could not be named")
