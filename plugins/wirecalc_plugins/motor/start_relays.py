"""Relays by their contact and coil, and devices that no ohmmeter tells."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import PRACTICE, Item, Origin, cannot_tell, not_checked, requires

from .start_resistors import REPLACE


def judge_relay(
    device: str, upright: str | None, inverted: str | None, coil_open: bool | None
) -> Iterator[Item]:
    """Judge a relay by its contact in each position, and its coil."""
    if device == "current-relay":
        yield _contact("contact as mounted", "contact_upright", upright, "open")
        yield _contact("contact upside down", "contact_inverted", inverted, "closed")
        yield not_checked("upright mounting, and that it matches the winding", "its maker's sheet")
    else:
        yield _contact("contact as mounted", "contact_upright", upright, "closed")
        yield not_checked("pick-up and drop-out volts", "its maker's sheet")
    if coil_open is None:
        yield cannot_tell(
            "coil conducts",
            "the coil was not read",
            measure="read across the coil, off the motor",
            needs=("coil_open",),
        )
    else:
        yield requires(
            "coil conducts",
            not coil_open,
            says="its coil reads open",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            action=REPLACE,
        )


def _contact(name: str, needs: str, found: str | None, wanted: str) -> Item:
    if found is None:
        return cannot_tell(
            name,
            "the contact was not read",
            measure="read across the contact, off the motor, in this position",
            needs=(needs,),
        )
    trouble = "welded or stuck" if found == "closed" else "burnt or stuck"
    return requires(
        name,
        found == wanted,
        says=f"it reads {found}, {trouble}; it should be {wanted}",
        source=PRACTICE,
        origin=Origin.PRACTICE,
        action=REPLACE,
    )


def judge_unread(device: str) -> Item:
    """Say why no ohmmeter tells a good one, and what does."""
    why = {
        "electronic-relay": "an ohmmeter does not switch an electronic relay",
        "combined-kit": "an ohmmeter does not tell relay, overload and capacitor of a kit apart",
    }[device]
    return cannot_tell(
        "start device conducts",
        why,
        measure="hold the next start with the meter's inrush function, or put in the device that "
        "the compressor's maker names and compare",
        source=PRACTICE,
    )
