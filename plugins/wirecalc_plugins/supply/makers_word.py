"""What makers say of extension cords: whether one is allowed, its ground and its rating."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Caution,
    Confidence,
    Item,
    Origin,
    Source,
    at_least,
    cannot_tell,
    caution,
    confirmed,
    not_checked,
    requires,
)

ALLOWS = ("no", "three-wire grounding", "yes", "not stated")
_ALLOWED = ("three-wire grounding", "yes")
LEAST_RATING_A = 15.0  # printed on the cord; makers' sheets that accept one

_SHEETS = confirmed(
    "makers-cords", "makers' sheets", "extension cords: one allows none, three on conditions", 4
)
_SHEET = Source("maker-sheet", "the maker's sheet", confidence=Confidence.TYPED)
_NONE = (
    "take the extension cord away and use no other; then move the machine to a receptacle, "
    "or have an electrician add one"
)
_OTHER = (
    "take the extension cord away; only a three-wire grounding appliance cord of 15 A or more "
    "will do"
)
_LAID = Caution(
    "cord-laid",
    "One that stays lies uncoiled, not under a rug or through a doorway. No adapter, and no second "
    "cord.",
    "the maker's sheet",
    "stop",
    "an extension cord is in use",
    PRACTICE,
    "a cord that stays: uncoiled, not under a rug; no adapter, no second cord",
)
_AWAY = Caution(
    "cord-away",
    "Take it away: no cord will do, however thick or short, and no adapter.",
    "the maker's sheet",
    "stop",
    "an extension cord that the maker does not allow",
    PRACTICE,
    "take the cord away: no cord will do, however thick, and no adapter",
)


def cord_cautions(allows: str | None) -> Iterator[Item]:
    """Yield what to do with the cord: never both to take it away and how to lay it."""
    if allows == "no":
        yield _AWAY
        return
    yield _LAID
    if allows not in _ALLOWED:
        yield caution("cord-03")


def makers_word(
    allows: str | None, grounding: bool | None, rating: float | None, protection: str | None
) -> Iterator[Item]:
    """Judge the cord by the maker's word, and by what makers ask of one that is allowed."""
    name = "the maker's word on extension cords"
    if allows is None:
        yield cannot_tell(
            name,
            "one sheet allows none, three allow one on conditions",
            measure="read the maker's sheet of this machine",
            needs=("maker_allows",),
            source=_SHEETS,
        )
    else:
        yield requires(
            name,
            allows in _ALLOWED,
            says="the maker's sheet allows none, and one is there"
            if allows == "no"
            else "the maker's sheet says nothing of it, and makers advise against it",
            source=_SHEETS if allows == "not stated" else _SHEET,
            origin=Origin.MAKER,
            advisory=allows == "not stated",
            behind="grounding, rating, load, drop and dip of the cord; no is a fail",
            action=_NONE,
        )
    asked = allows in ("three-wire grounding", "yes", "not stated")
    if allows in ("yes", "not stated") and protection == "class-ii":
        yield not_checked("ground of the cord", "a machine of double insulation has none")
    elif grounding is not None or asked:
        yield _grounding(grounding)
    if rating is not None or asked:
        yield _rating(rating, advice=allows == "yes")


def _grounding(grounding: bool | None) -> Item:
    name = "three-wire grounding cord"
    if grounding is None:
        return cannot_tell(
            name,
            "sheets that accept a cord accept only one with a ground",
            measure="look at plug and connector: three blades",
            needs=("grounding",),
            source=_SHEETS,
        )
    return requires(
        name,
        grounding,
        says="it has no ground",
        source=_SHEETS,
        origin=Origin.MAKER,
        action=_OTHER,
    )


def _rating(rating: float | None, *, advice: bool) -> Item:
    name = "rating of the cord"
    if rating is None:
        return cannot_tell(
            name,
            f"sheets that accept a cord ask for {LEAST_RATING_A:g} A or more",
            measure="read the rating on the tag or the jacket of the cord",
            needs=("cord_rating",),
            source=_SHEETS,
        )
    return at_least(
        name,
        rating,
        LEAST_RATING_A,
        "A",
        source=_SHEETS,
        origin=Origin.MAKER,
        advisory=advice,
        behind="the load on the cord by the code's table, and the rating printed on it",
        says="what other makers ask for; this one allows any" if advice else "",
        action=_OTHER,
    )
