"""What is lost on the way to the plug, beyond the known wire: a bad joint that no breaker sees."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    Bands,
    Item,
    Problem,
    Wire,
    at_or_below,
    calculation,
    caution,
)

from ..most_current import on_run
from .upstream_heat import DrawnLoad, Span, span, wiring_of
from .upstream_inputs import (
    LEAST_A,
    LEAST_V,
    BuildingWire,
    ConductorTemperature,
    Current,
    ExtensionCord,
    ExtensionLength,
    LoadKind,
    PanelAtRest,
    PanelRunning,
    PowerFactor,
    RunLength,
    SecondLegAtRest,
    SecondLegCurrent,
    SecondLegRunning,
    VoltageAtRest,
    VoltageRunning,
)
from .upstream_judge import judge_leg, judge_neutral
from .upstream_leg import Leg
from .volts_left import MOST_V

SLIP = 0.25  # share of the volts that is left; less is a slip of the unit

HEATER_PF = 95.0  # %; less is no heater


NOISE = 0.005  # share of the volts by which two readings of one drop may differ


def _refuse(
    voltage_at_rest: float,
    voltage_running: float,
    current: float,
    building_wire: Wire | None,
    run_length: float | None,
    extension_cord: Wire | None,
    extension_length: float | None,
    conductor_temperature: float | None,
    load_kind: str | None,
    power_factor: float | None,
    panel_at_rest: float | None,
    panel_running: float | None,
    second_leg_at_rest: float | None,
    second_leg_running: float | None,
) -> Iterator[Problem]:
    if voltage_at_rest > MOST_V:
        yield Problem(
            "voltage_at_rest",
            f"{voltage_at_rest:g} V is no line of a house",
            "check the meter's range and unit; each leg of 120/240 V is read to neutral",
        )
        return
    little = list(_too_little(voltage_at_rest, voltage_running, current))
    if little:
        yield from little
        return
    lost = voltage_at_rest - voltage_running
    risen = list(_rises("voltage_running", voltage_at_rest, voltage_running))
    if risen:
        yield from risen
        return
    if load_kind == "heater" and power_factor is not None and power_factor < HEATER_PF:
        yield Problem(
            "load_kind",
            f"heater, and its power factor is {power_factor:g} %: a heater has 100 %",
            "a heater with a fan or a motor in it is a motor",
        )
    if voltage_running < SLIP * voltage_at_rest:
        yield Problem(
            "voltage_running",
            f"{voltage_running:g} V are left of {voltage_at_rest:g} V, with a current flowing",
            "check the unit, and that both readings are of one plug",
        )
    if panel_at_rest is not None and panel_running is not None:
        yield from _panel(panel_at_rest, panel_running, lost, voltage_at_rest)
    if second_leg_at_rest is not None and not 0.5 < second_leg_at_rest / voltage_at_rest < 1.8:
        yield Problem(
            "second_leg_at_rest",
            f"{second_leg_at_rest:g} V, and the first leg has {voltage_at_rest:g} V",
            "read each leg to neutral",
        )
    runs = building_wire, run_length, extension_cord, extension_length
    wiring = wiring_of(*runs, conductor_temperature, {})
    if current * wiring.ohms(2).centre >= voltage_at_rest / 2:
        yield Problem(
            "extension_length" if run_length is None else "run_length",
            "such a run would take half of the volts",
            "check ft and m, the current and the gauge; lengths are one way",
        )


def _panel(at_rest: float, running: float, lost: float, plug_at_rest: float) -> Iterator[Problem]:
    """Refuse volts of the panel that rise, or of which more is lost than at the plug behind it."""
    yield from _rises("panel_running", at_rest, running)
    ahead = at_rest - running
    if ahead > lost + NOISE * plug_at_rest:
        yield Problem(
            "panel_running",
            f"{ahead:.3g} V lost at the panel, {lost:.3g} V at the plug behind it",
            "take both pairs with the same load, on the same leg",
        )


def _too_little(at_rest: float, running: float, current: float) -> Iterator[Problem]:
    """Refuse volts that are no supply, and a load under which a voltmeter shows no bad joint."""
    for name, volts in (("voltage_at_rest", at_rest), ("voltage_running", running)):
        if volts < LEAST_V:
            wrong = f"{volts:g} V is no supply of a machine"
            yield Problem(name, wrong, "check the meter's range and unit")
    if current < LEAST_A:
        wrong = f"{current:g} A is too little: a bad joint takes no volts that a meter shows"
        yield Problem("current", wrong, f"read it under a load of {LEAST_A:g} A or more")


def _rises(name: str, before: float, after: float) -> Iterator[Problem]:
    if not at_or_below(after, before):
        yield Problem(
            name,
            f"{after:g} V with the load on is more than {before:g} V without it",
            "are the readings exchanged, or did the supply drift? Measure again",
        )


@calculation(
    part="circuit",
    words=(
        "loose neutral; lost neutral; open neutral; floating neutral; bad neutral; bad outlet",
        "bad receptacle; bad socket; loose outlet; loose connection; bad connection",
        "poor connection; high resistance; house wiring; voltage drops under load",
        "voltage drop under load; low voltage under load; voltage sag; volts fall; lights flicker",
        "flickering; lights dim; dimming lights; hot outlet; warm outlet; burnt outlet",
        "buzzing outlet; hot plug; warm plug; burnt plug; burnt receptacle; burnt socket; arcing",
        "sparking; back stab; panel lug; service drop; meter base; one leg; lost leg; missing leg",
        "lights get bright; no power; dead outlet; half power; partial power; intermittent power",
        "loop impedance; aluminum wiring; wall wiring; junction box; bulbs; bulbs bright",
        "bright and dim; pulsing lights; prong; prongs; melted prong; discolored plug",
        "scorched outlet; burning smell; loose wire; loose screw; other outlets; only under load",
        "dim when; volts collapse; crackling; sizzling; wall plug; wall outlet; wall socket",
        "warm switch; light switch; flickers when; too hot to touch; voltage imbalance",
        "unbalanced legs; hot neutral; high neutral; burnt neutral; melted neutral",
        "plug sparks; sparks; sparks when plugged in; sparks at the outlet; smells burnt",
        "burnt smell at the plug; loose socket; loose plug; plug falls out; wall outlet warm",
        "plug warm; warm plug top; lights go bright; flickers; whole house; half the house",
        "other lights dim; voltage drops when; only this room; neighbour; supply company",
        "bad wall wiring; outlet problem or machine; buzzes at the wall; voltage falls when",
        "falls under load",
        "single phasing; lost phase; missing phase; intermittent; comes and goes; after a storm",
        "lightning",
    ),
    go_on="keep the two readings; read again if lights dim or the plug warms",
    cautions=("live-01", "live-02", "meter-01", "cord-04", "brk-01"),
    not_checked=(
        "which part it is: take the millivolt drop across plug, receptacle and joints (joint-drop)",
        "the service ahead of the panel: compare another receptacle of the same panel",
        "a length that is given too long: it hides a bad joint",
        "heat at more than 12 A: it grows with the square of the current",
    ),
    refuse=_refuse,
    renamed={"wire": "building_wire", "cord": "extension_cord", "cord_length": "extension_length"},
    example_with=(
        "voltage_running=117.9 V",
        "building_wire=14 AWG",
        "run_length",
        "load_kind=heater",
    ),
)
def upstream(
    voltage_at_rest: VoltageAtRest,
    voltage_running: VoltageRunning,
    current: Current,
    building_wire: BuildingWire = None,
    run_length: RunLength = None,
    extension_cord: ExtensionCord = None,
    extension_length: ExtensionLength = None,
    conductor_temperature: ConductorTemperature = None,
    load_kind: LoadKind = None,
    power_factor: PowerFactor = None,
    panel_at_rest: PanelAtRest = None,
    panel_running: PanelRunning = None,
    second_leg_at_rest: SecondLegAtRest = None,
    second_leg_running: SecondLegRunning = None,
    second_leg_current: SecondLegCurrent = None,
    bands: Bands | None = None,
) -> Iterator[Item]:
    """Is something upstream of the plug bad?

    R = (rest - running) / I, in phase with the current (a heater, or a power factor; else no
    pass), less the known wire. Heat beyond it, I^2 x R, fails over 5 W, is marginal over 1 W
    (practice); the same resistance at the 12 A of an outlet fails over 5 W too. It passes beyond
    the least that the wire may have and fails beyond the most: 20 to 75 C if not given, IEC
    60228; without the panel's readings 0.1 ohm ahead of it (practice), 0.4 from 200 V on unless
    the wire is an AWG size (IEC 60725, from memory). With a second leg, of its own current, both
    are read to neutral; if it rises as this one falls, over 5 % fails, over 2 % is marginal.

    For a steady load. Inputs: volts in V (20 to 700), currents in A (0.5 to 200), lengths in ft
    one way (to 2000), temperature in C, power_factor in %. Yields ohms, heat, criteria a leg, one
    of the neutral. Source: tables nec-ch9-table8, nec-ch9-table9, iec-60228, nec-ampacity,
    iec-ampacity, nec-small-conductors.
    """
    known = bands or {}
    runs = building_wire, run_length, extension_cord, extension_length
    wiring = wiring_of(*runs, conductor_temperature, known)
    amps = span("current", current, known)
    before = span("voltage_at_rest", voltage_at_rest, known)
    after = span("voltage_running", voltage_running, known)
    load = DrawnLoad(load_kind, None if power_factor is None else power_factor / 100)
    ahead: Span | None = None
    if panel_at_rest is not None and panel_running is not None:
        at_panel = span("panel_at_rest", panel_at_rest, known)
        ahead = at_panel.less(span("panel_running", panel_running, known))
    legs = second_leg_at_rest is not None and second_leg_running is not None
    ways = 1 if legs else 2
    yield from wiring.figures(ways)
    yield from on_run(building_wire, extension_cord, current, known.get("current"))
    if any(run.wire.metal != "copper" for _, run, _ in wiring.runs):
        yield caution("alu-01")
    yield from judge_leg(Leg(before, after, amps, wiring, load, ways, ahead))
    if second_leg_at_rest is None or second_leg_running is None:
        return
    fell = before.less(after)
    before = span("second_leg_at_rest", second_leg_at_rest, known)
    after = span("second_leg_running", second_leg_running, known)
    if second_leg_current is not None:
        amps = span("second_leg_current", second_leg_current, known)
        yield from judge_leg(Leg(before, after, amps, wiring, load, ways, which=", second leg"))
    yield from judge_neutral(fell, before, after)
