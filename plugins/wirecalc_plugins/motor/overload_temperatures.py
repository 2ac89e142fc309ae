"""Where an overload opens and closes again, by what is usual and by what binds."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import PRACTICE, Item, at_least, at_most, at_or_below, cannot_tell, tables

REPLACE = (
    "fit only the overload that the compressor's maker lists; find out why it opened: stuck rotor, "
    "start device, volts, dirty condenser, fan"
)
_USUAL = "usual for refrigerator overloads; the maker's sheet rules"
_COMPARE = "compare with the maker's sheet; replace it only by the part listed there"
MUST_HOLD_F = 158.0  # the shell of a good compressor comes to 70 C; practice


def judge_opening(celsius: float) -> Iterator[Item]:
    """Judge where it opens, in the unit of its sources, degrees Fahrenheit."""
    fahrenheit, row, name = (
        1.8 * celsius + 32,
        overload_row("opens", "trade-author"),
        "opens hot enough",
    )
    if at_or_below(MUST_HOLD_F, fahrenheit):
        yield at_least(
            name,
            fahrenheit,
            row.number("least"),
            "F",
            source=row.source,
            advisory=True,
            behind="under 158 F (70 C), where the shell of a good compressor comes, it cannot be "
            "told",
            says=_USUAL,
            action=_COMPARE,
        )
    else:
        yield cannot_tell(
            name,
            f"{fahrenheit:.4g} F is under {MUST_HOLD_F:g} F, where a good compressor comes: it "
            "would open in service, or a current heated it from inside",
            measure="heat it without a current in it, and compare with the maker's sheet",
            source=PRACTICE,
        )
    must = overload_row("opens", "protector-test")
    usual = at_or_below(fahrenheit, must.number("most"))
    if not usual:
        yield at_most(
            "opens cool enough",
            fahrenheit,
            must.number("most"),
            "F",
            source=must.source,
            says="a winding's protector must have opened by then",
            action=REPLACE,
        )
        return
    yield at_most(
        "opens cool enough",
        fahrenheit,
        row.number("most"),
        "F",
        source=row.source,
        advisory=True,
        behind="320 F (160 C), by which a winding's protector must have opened",
        says=_USUAL,
        action=_COMPARE,
    )


def judge_closing(celsius: float) -> Iterator[Item]:
    """Judge where it closes again; it closes cooler than it opens, or the inputs are refused."""
    fahrenheit, row = 1.8 * celsius + 32, overload_row("closes", "trade-author")
    yield at_least(
        "closes hot enough",
        fahrenheit,
        row.number("least"),
        "F",
        source=row.source,
        advisory=True,
        behind="it must conduct as cold as the room: open when cold fails",
        says=_USUAL,
        action=_COMPARE,
    )
    yield at_most(
        "closes cool enough",
        fahrenheit,
        row.number("most"),
        "F",
        source=row.source,
        advisory=True,
        behind="it closes cooler than it opens, and opens by 320 F (160 C)",
        says=_USUAL,
        action=_COMPARE,
    )


def overload_row(quantity: str, said_by: str) -> tables.Row:
    """Return what a kind of text says of an overload."""
    return tables.load("start-parts").row(part="overload", quantity=quantity, said_by=said_by)
