"""What is kept of a calculation between its runs: itself, loaded, and what was read of texts."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from ..engine.from_plugins import ProvidedCalculation
    from ..engine.remembered import Remembered
    from ..instruments.declared import Declared


class BetweenRuns:
    """Calculations that ran, each by its name and the origin of its inputs."""

    def __init__(self) -> None:
        self._kept: dict[
            tuple[str, str], tuple[ProvidedCalculation, Declared, ProvidedCalculation, Remembered]
        ] = {}

    def of(
        self, name: str, origin: str, offered: ProvidedCalculation, instruments: Declared
    ) -> tuple[ProvidedCalculation, Remembered]:
        """Return a calculation, loaded, and what was read of texts in its runs with these."""
        from ..engine.remembered import Remembered

        kept = self._kept.get((name, origin))
        if kept is None or kept[0] is not offered or kept[1] is not instruments:
            loaded = offered._replace(offered=offered.calculation)
            kept = self._kept[name, origin] = offered, instruments, loaded, Remembered()
        return kept[2:]
