"""A sleeve's ratings against its place and circuit, and its length against the joint."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import MAKER, PRACTICE, Item, Origin, at_least, figure, put

OVERLAP_MM = 6.0  # over the insulation at each end, a quarter inch; common practice
SHRINKS = 15.0  # %, lengthwise, where the sheet was not read; common practice
PLAIN = "whether the sleeve over the joint fits and holds"


def ratings(
    rating: float | None, place: float | None, printed: float | None, circuit: float | None
) -> Iterator[Item]:
    """Judge what is printed against the heat of the place in C and the volts of the circuit."""
    for name, has, needs, unit in (
        ("rated for the heat of the place", rating, place, "C"),
        ("rated for the volts", printed, circuit, "V"),
    ):
        if has is not None and needs is not None:
            yield at_least(
                name,
                has,
                needs,
                unit,
                source=MAKER,
                origin=Origin.MAKER,
                action="take a sleeve that is rated for it",
                plain="what heat and volts the sleeve is made for",
            )


def long_enough(covered: float, length: float, shrink: float | None) -> Iterator[Item]:
    """Judge the recovered length in mm against the bare metal and 6 mm at each end."""
    percent = SHRINKS if shrink is None else shrink
    left = length * (1 - percent / 100)
    yield figure(
        "length once recovered",
        left,
        "mm",
        source=PRACTICE if shrink is None else MAKER,
        working=lambda: f"{put(length, 'mm')} x (1 - {percent:g} / 100)",
    )
    yield at_least(
        "covers the joint",
        left,
        covered + 2 * OVERLAP_MM,
        "mm",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        says="the bare metal and 6 mm of insulation at each end",
        action="cut a longer piece, and slide it on before the crimp",
        plain=PLAIN,
    )
