"""A winding to the bare case by an ohmmeter: it can fail one, and pass none."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import Item, at_least, at_or_below, cannot_tell, figure, not_checked, tables

_SAID = "any pin to the case"


def judge_case(value: float | None, band: tuple[float, float] | None, kind: str) -> Iterator[Item]:
    """Judge a reading in Mohm by the limits of insulation; at few volts a high one shows nothing.

    The standard's limit of class I binds, and what is advised over it is a caution level.
    """
    if value is None:
        yield cannot_tell(
            _SAID,
            "no pin was read to the case",
            measure="read a pin to the bare case on the highest range; OL is >40 Mohm, its top",
            needs=("case_resistance",),
        )
        return
    yield figure(_SAID, value, "Mohm", band=band)
    rows = list(_rows(kind))
    binding = next(r for r in rows if r.text("binding") == "yes")
    advised = max(r.number("limit_Mohm") for r in rows)
    if at_or_below(advised, value if band is None else band[0]):
        yield not_checked(
            "insulation to the case",
            "an ohmmeter's few volts are no insulation test: see insulation",
        )
        return
    fails = not at_or_below(binding.number("limit_Mohm"), value)
    yield at_least(
        "any pin to the case, by ohmmeter",
        value,
        binding.number("limit_Mohm"),
        "Mohm",
        caution=advised,
        source=binding.source,
        says="do not power it" if fails else "at few volts it proves nothing: see insulation",
        action="dry and clean the terminal, read again"
        + ("; below 1 Mohm do not power it" if fails else ", and test it at 500 V: insulation"),
        band=band,
    )


def _rows(kind: str) -> Iterator[tables.Row]:
    for row in tables.load("insulation-limits").rows:
        of_class = row.text("protection") in ("class-i", "any")
        if of_class and row.text("tested_part") in ("any", kind):
            yield row
