"""What may be answered: the right value or verdict, and what each slip comes to."""

from __future__ import annotations

from typing import NamedTuple

SAME_SHARE = 0.01  # of the value: an answer this near counts as it (common practice, no source)

METER_LEFT_OUT = (
    "error of the meter left out",
    "You took the reading as exact; with its error it gives another verdict.",
)


class Offer(NamedTuple):
    """An answer as it is written, its value, and the slip that leads to it; none for the right."""

    text: str
    value: float | None
    slip: str = ""
    sentence: str = ""

    @property
    def number(self) -> float:
        """Its value; 0 for a verdict."""
        return self.value or 0.0
