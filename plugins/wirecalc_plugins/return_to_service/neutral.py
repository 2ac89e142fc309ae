"""Neutral and frame of ranges and dryers: a strap joins them on three wires, never on four."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import Item, OneOf, cannot_tell, caution, confirmed, not_checked, requires

STRAPS = ("no-strap", "fitted", "lifted", "removed")
NO_STRAP = "no strap from neutral to frame: neither a range nor a dryer of 120/240 V"
STRAP = OneOf(
    STRAPS,
    text="strap from neutral to the frame, of a range or dryer. fitted: in place; lifted: for an "
    "insulation test alone; removed: for a cord or cable of four wires; no-strap: it never had one",
)
_NEUTRAL = confirmed("neutral-strap", "installation texts on NEC 250.140", "ranges, dryers", 6)
_REFIT = "unplugged, refit it (three wires only), then read the case to the neutral blade"
LIFTED = not_checked("the strap that was lifted", f"{_REFIT}: wirecalc ground")


def ground_bond(point: str, strap: str | None, neutral_open: bool | None) -> Iterator[Item]:
    """Judge the strap beside a ground path."""
    if strap not in (None, "no-strap"):
        yield caution("cord-02")
    if strap == "lifted":
        yield cannot_tell(
            "neutral to the frame",
            "the strap is still lifted: on three wires the frame has no ground",
            measure=f"{_REFIT}; on four wires it stays off: neutral_strap removed",
            source=_NEUTRAL,
        )
    if point == "neutral-blade":
        if strap is None:
            yield cannot_tell(
                "neutral to the frame",
                "a path to the neutral blade is one only with the strap in place",
                measure="see that the strap is fitted, on a cord of three wires",
                needs=("neutral_strap",),
                source=_NEUTRAL,
            )
        return
    yield from _beside_a_ground_wire(strap, neutral_open)


def _beside_a_ground_wire(strap: str | None, neutral_open: bool | None) -> Iterator[Item]:
    if strap == "removed" and neutral_open is None:
        yield cannot_tell(
            "neutral to the frame",
            "on four wires the case must read open to neutral, and it was not read",
            measure="unplugged, read case to neutral",
            needs=("neutral_open",),
            source=_NEUTRAL,
        )
    elif strap == "fitted" or neutral_open is not None:
        yield requires(
            "neutral apart from the frame",
            strap != "fitted" and neutral_open is True,
            says="neutral is joined to the frame beside a ground wire: the frame carries the "
            "current of the neutral",
            source=_NEUTRAL,
            action="unplugged, take the strap off; if case to neutral is not open then, find where "
            "it touches",
        )


def insulation_bond(strap: str | None) -> Iterator[Item]:
    """Say what a strap does to an insulation test."""
    if strap in (None, "no-strap"):
        return
    yield caution("cord-02")
    if strap == "fitted":
        yield cannot_tell(
            "neutral to the frame",
            "the strap joins neutral to the frame: every live part reads to the case through it",
            measure="unplugged, lift the strap for this test alone, and read again",
            source=_NEUTRAL,
        )


def leakage_bond(strap: str | None) -> Iterator[Item]:
    """Say that no leakage test is made on a machine whose neutral is bonded to its frame."""
    if strap in (None, "no-strap", "removed"):
        return
    yield caution("cord-02")
    fitted = "neutral is joined to the frame, and what returns there is no leakage"
    lifted = "with the strap lifted the frame of a live machine has no ground: switch off"
    yield cannot_tell(
        "neutral to the frame",
        fitted if strap == "fitted" else lifted,
        measure="make no leakage test of it: unplugged, lift the strap, read the insulation at "
        f"500 V dc; {_REFIT}",
        source=_NEUTRAL,
    )
