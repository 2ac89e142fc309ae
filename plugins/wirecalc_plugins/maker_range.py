"""A range of ohms that a maker prints: its upper end is an input beside the lower one."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import Nameplate, Problem


def upper_end(of: str, typical: str, most: float = 1000) -> Nameplate:
    """Return the input in ohm for the upper end of a maker's range; `of` has the lower end."""
    return Nameplate(
        "ohm",
        above=0,
        high=most,
        typical=typical,
        text="upper end, where its maker prints a range",
        goes_with=of,
    )


def wrong_way_round(of: str, low: float | None, high: float | None) -> Iterator[Problem]:
    """Refuse a range in ohm that was typed the wrong way round."""
    if low is not None and high is not None and high <= low:
        yield Problem(
            f"{of}_high",
            f"{high:g} ohm is not above {low:g} ohm",
            f"a range is printed low to high: {of} has its lower end",
        )
