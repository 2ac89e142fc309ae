"""What is only ever asked of some kinds of machine, though a calculation takes it for any."""

from __future__ import annotations

from ..jobs.sheet.kinds import OTHER, table_kinds

ONLY_OF = {  # input -> the kinds of the tables that can have it; common practice
    "range_rating": ("range",),
    "storage_water_heater": ("water-heater",),
}


def has(kind: str, name: str) -> bool:
    """Whether a machine of a kind can have what an input asks for; one that is not listed can."""
    return name not in ONLY_OF or kind in (*ONLY_OF[name], OTHER) or kind not in table_kinds()
