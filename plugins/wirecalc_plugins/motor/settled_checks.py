"""How the current that a motor settles at is judged, by its plate and its kind."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Item,
    Origin,
    at_least,
    at_most,
    at_or_above,
    at_or_below,
    cannot_tell,
    confirmed,
)

from .start_checks import SEEN

OVER_RLA = 1.1  # settled over rated current that an open motor may have; practice
MCC_OVER_RLA = 1.44  # least ratio of continuous limit to RLA that makers use; others 1.56
LOADED, TURNS = 0.3, 0.2  # share of rated load of a motor that runs idle, and of none; practice

RLA = confirmed("rla", "trade articles on compressor ratings", "RLA = MCC / 1.56 or 1.44", 2)
_SETTLED = "settled current, upper limit"


def judge_settled(
    settled: float | None,
    rated: float | None,
    kind: str | None = None,
    service: float | None = None,
) -> Iterator[Item]:
    """Judge the settled current by the motor's own rated current and kind, all in A.

    `service` is its service-factor current. A compressor may draw 1.44 times its RLA; what an
    open motor may draw over 1.1 times its amps only its service factor tells.
    """
    if settled is None:
        yield cannot_tell(
            _SETTLED,
            "the settled current was not measured",
            measure="let it run, and read the current once it has settled",
            needs=("settled",),
        )
        return
    if rated is None:
        yield cannot_tell(
            _SETTLED,
            "no rated-load current to compare with",
            measure="read RLA on the plate",
            needs=("rated_load_current",),
        )
        return
    most, source = MCC_OVER_RLA * rated, RLA
    if service is not None and kind == "motor":
        most, source = max(service, OVER_RLA * rated), PRACTICE
    settles = kind == "compressor" or service is not None or at_or_below(settled, OVER_RLA * rated)
    if not settles and at_or_below(settled, most):
        yield cannot_tell(
            _SETTLED,
            f"{settled:.4g} A is {settled / rated:.3g} times the rated {rated:g} A: a compressor "
            f"may draw {MCC_OVER_RLA} times its RLA, an open motor its service-factor amps",
            measure="say what kind of motor it is; read SFA on an open motor's plate",
            needs=("motor_kind",) if kind is None else ("service_factor_current",),
            source=RLA,
        )
        return
    yield at_most(
        _SETTLED,
        settled,
        most,
        "A",
        caution=rated,
        source=source,
        origin=Origin.PRACTICE if source is PRACTICE else Origin.STANDARD,
        action="look for a hot condenser, low volts or a weak capacitor"
        if at_or_below(settled, most)
        else "switch off; look for a stuck rotor, a hot condenser, low volts or a weak capacitor",
    )


def judge_turning(
    settled: float | None, rated: float | None, *, seen: bool, inverter: bool | None = None
) -> Iterator[Item]:
    """Judge whether the settled current is that of a motor which turns; `seen`: a start was."""
    if settled is None or rated is None:
        return
    name = "settled current, lower limit"
    stands = not at_or_above(settled, SEEN * rated)
    turns = at_or_above(settled, TURNS * rated)
    if (stands and not seen) or (not stands and not turns and not inverter):
        doubt = "it does not run, or the jaws are around both wires or none that feeds it"
        if not stands:
            doubt = "no induction motor settles so low: another wire, another load, another plate"
            doubt += "" if inverter is False else ", or a board drives it"
        yield cannot_tell(
            name,
            f"{settled:.4g} A is {settled / rated:.2g} of rated load: {doubt}",
            measure="see and feel whether it runs; one wire in the jaws",
            needs=("inverter",) if inverter is None and not stands else (),
            source=PRACTICE,
        )
        return
    yield at_least(
        name,
        settled,
        (SEEN if inverter else TURNS) * rated,
        "A",
        caution=None if inverter else LOADED * rated,
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says="it may run idle without pumping, or not run at all",
        action="see and feel whether it runs, cools or pumps; one wire in the jaws",
    )
