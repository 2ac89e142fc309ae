"""What the instruments of a finding come to: their date of calibration, their category here."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from ..instruments.declared import Instrument
from ..instruments.readings import declared, named
from ..published.sources import PRACTICE, confirmed
from ..said.criteria import Criterion, Origin, requires
from ..said.items import Caution
from .declaration import Calculation
from .prepared_inputs import Prepared

IEC_61010 = confirmed("iec-61010", "IEC 61010", "measurement categories", 3)
_FASTENED = "fastened_in_place"  # such a machine is measured at the terminal block


def used(prepared: Prepared) -> list[Instrument]:
    """Return the instruments that the readings were taken by, each once."""
    return [named(name) for name in dict.fromkeys(prepared.taken_by.values())]


def past_due(prepared: Prepared) -> Iterator[Criterion]:
    """Yield an advised limit that is missed for each instrument past its date on that of the job.

    No clock is read: without a date of the job nothing is said.
    """
    date = declared().date
    for instrument in used(prepared):
        if instrument.due is not None and date is not None:
            yield requires(
                f"calibration of {instrument.name}",
                date <= instrument.due,
                says=f"it was due on {instrument.due}, and the job is of {date}",
                source=PRACTICE,
                origin=Origin.PRACTICE,
                advisory=True,
                action=f"read again with an instrument within its date, or have {instrument.name} "
                "calibrated",
                behind="none: past its date an instrument may still read right, and nobody knows",
            )


def below_category(calc: Calculation[Any], prepared: Prepared) -> Iterator[Caution]:
    """Yield a STOP for each instrument that is declared for less than this place asks for."""
    volts = _most_volts(calc, prepared.values)
    place = "III" if prepared.values.get(_FASTENED) is True else calc.category
    for instrument in used(prepared):
        own = instrument.category
        if own is None or (own.reaches(place) and own.volts >= volts):
            continue
        at = f" and {volts:g} V or more" if volts else ""
        yield Caution(
            f"category of {instrument.name}",
            f"{instrument.name} is declared as {own}, and CAT {place}{at} is asked for where this "
            "is read. Do not take this reading with it: a meter and leads marked for the place.",
            "meter marking",
            "stop",
            "measuring",
            IEC_61010,
        )


def _most_volts(calc: Calculation[Any], values: Mapping[str, Any]) -> float:
    """Return the most volts that were said of the circuit; 0 where none were."""
    found = [
        values[i.name]
        for i in calc.inputs
        if i.kind.unit == "V" and isinstance(values.get(i.name), int | float)
    ]
    return max(found, default=0.0)
