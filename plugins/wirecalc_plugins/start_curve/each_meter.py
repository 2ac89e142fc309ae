"""What each kind of meter shows of one and the same healthy start. Needs numpy."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple

from .courses import courses
from .healthy_starts import Band, HealthyStarts
from .meter_readings import INRUSH_S, max_hold
from .spread import first_100_ms

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Samples = NDArray[Any]

CLOSING_ANGLES = range(0, 180, 10)  # degrees: what follows is the other sign


class EachMeter(NamedTuple):
    """Least and most in A of an inrush function, a peak-hold and an ordinary max-hold."""

    inrush: Band
    crest: Band
    held: Band


def each_meter(healthy: HealthyStarts) -> EachMeter:
    """Return what the meters show, over all that is not known and every instant of closing.

    The instant moves the crest, and through the direct part of the current the first 100 ms; of
    a quarter of a second and more it moves no more than the band has room for.
    """
    cases = [
        case._replace(supply=case.supply._replace(closing_angle=float(angle)))
        for case in (start.curve.case for start in healthy.starts)
        for angle in CLOSING_ANGLES
    ]
    many = courses(cases, INRUSH_S)
    held = [max_hold(start.curve) for start in healthy.starts]
    return EachMeter(
        healthy.wider(_ends(first_100_ms(many)), "inrush"),
        healthy.wider(_ends(many.peak), "peak"),
        healthy.wider((min(least for least, _ in held), max(most for _, most in held)), "held"),
    )


def _ends(values: Samples) -> Band:
    return float(values.min()), float(values.max())
