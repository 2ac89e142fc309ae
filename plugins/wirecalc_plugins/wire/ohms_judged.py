"""Measured ohms of a known length against the most it may have, and against its size."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    MAKER,
    PRACTICE,
    Item,
    Origin,
    Wire,
    at_or_below,
    cannot_tell,
    figure,
    put,
    show,
)
from wirecalc.trade.conductors import greatest_resistance
from wirecalc.trade.wire_runs import KFT_PER_KM

from ..lead_resistance import Ohms, ohms_at_most
from .ohms_of_length import Conductor
from .ohms_read import Read

MOST, MOST_IEC = "ohms of this length", "ohms of this length, IEC 60228"
TOO_FEW = 0.8  # of the least ohms of its size; less is a slip of length, way or size; practice
_ACTION = "clean the ends and read it again, four-wire; then another wire"


def judged(
    ohms: Ohms, whole: float, greatest_per_length: float | None, wire: Wire | None
) -> Iterator[Item]:
    """Judge ohms against the most of a maker in ohm/kft, and of IEC 60228 for a metric wire.

    `whole` is the length in kft of all conductors, times how much the ohms of 20 C have risen.
    """
    if greatest_per_length is not None:
        yield ohms_at_most(
            MOST,
            ohms,
            greatest_per_length * whole,
            source=MAKER,
            origin=Origin.MAKER,
            says="the most at 20 C, carried to this temperature and length",
            action=_ACTION,
        )
    iec = None if wire is None else greatest_resistance(wire)
    if iec is not None:
        yield ohms_at_most(
            MOST_IEC,
            ohms,
            iec.value / KFT_PER_KM * whole,
            source=iec.source,
            says="the most at 20 C of the class that may have most, carried to this length",
            action=_ACTION,
        )


def against_size(conductor: Conductor, read: Read, length: float, celsius: float) -> Item:
    """Show what was read beside the most that is expected of this length."""
    most = read.ways * conductor.most(celsius).ohm_per_kft * length / 1000
    return figure(
        "measured of the most expected",
        100 * read.middle / most,
        "%",
        source=PRACTICE,
        band=(100 * read.low / most, 100 * read.high / most),
        working=lambda: f"100 x {put(read.middle, 'ohm')} / {put(most, 'ohm')}",
    )


def too_few(conductor: Conductor, read: Read, length: float, celsius: float) -> Iterator[Item]:
    """Too few ohms for the size are a slip, and no good wire.

    By the middle of each reading: a wide band must not turn the doubt away.
    """
    least = read.ways * conductor.least(celsius).ohm_per_kft * length / 1000
    if not at_or_below(TOO_FEW * least, read.middle):
        yield cannot_tell(
            "ohms against the size",
            f"{show(read.middle, 'ohm')}, and this length has {show(least, 'ohm')} or more",
            measure="check length, size, one-way or loop: or it is joined on the way",
            source=PRACTICE,
        )
