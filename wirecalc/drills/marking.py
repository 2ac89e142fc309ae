"""Marking: is an answer right, which slip is it, or is it neither?"""

from __future__ import annotations

from enum import StrEnum
from typing import NamedTuple

from ..base.errors import BadText
from ..typed.quantities import read_number
from ..typed.units import convert, dimension_of, read_unit
from .offers import Offer
from .questions import Question

LETTERS = "ABCDE"
WRONG_UNIT = "wrong unit", "The number is right with another unit than this one."
NO_UNIT = "unit left out", "The number is right; without its unit it says nothing."
OTHER_KIND = "wrong unit", "This is the unit of another kind of quantity."


class Kind(StrEnum):
    """What an answer comes to."""

    RIGHT = "right"
    SLIP = "slip"
    OTHER = "wrong"
    BLANK = "blank"
    UNREAD = "cannot be read"


class Mark(NamedTuple):
    """What one answer comes to; `slip` and `sentence` say which slip it was, or why unreadable."""

    question: Question
    answer: str
    kind: Kind
    slip: str = ""
    sentence: str = ""


def marked(question: Question, answer: str, tolerance: float) -> Mark:
    """Mark one answer; `tolerance` is a share of the right value.

    One step of the stated rounding is allowed too, where that is more.
    """
    said = " ".join(answer.split())
    if not said:
        return Mark(question, "", Kind.BLANK)
    if question.listed and len(said) == 1 and said.upper() in LETTERS[: len(question.listed)]:
        return _of(question, said, question.listed[LETTERS.index(said.upper())])
    if question.right.value is None:
        meant = next((o for o in question.listed if o.text == said.casefold()), None)
        if meant is None:
            return Mark(question, said, Kind.UNREAD, "", "it is no verdict and no letter")
        return _of(question, said, meant)
    try:
        number, unit = read_number(said)
    except BadText as error:
        return Mark(question, said, Kind.UNREAD, "", error.wrong)
    return _of_number(question, said, number.value, unit, tolerance)


def _of(question: Question, said: str, offer: Offer) -> Mark:
    if offer is question.right:
        return Mark(question, said, Kind.RIGHT)
    kind = Kind.SLIP if offer.slip else Kind.OTHER
    return Mark(question, said, kind, offer.slip, offer.sentence)


def _of_number(q: Question, said: str, number: float, unit: str, tolerance: float) -> Mark:
    as_typed = _nearest(q, number, tolerance)
    if not unit and q.unit:
        if as_typed is q.right:
            return Mark(q, said, Kind.SLIP, *NO_UNIT)
        return _of(q, said, as_typed) if as_typed else Mark(q, said, Kind.OTHER)
    value = _in_unit(number, unit, q.unit)
    if value is None:
        return Mark(q, said, Kind.SLIP, *OTHER_KIND)
    meant = _nearest(q, value, tolerance)
    if meant is not q.right and as_typed is q.right:
        return Mark(q, said, Kind.SLIP, *WRONG_UNIT)
    return _of(q, said, meant) if meant else Mark(q, said, Kind.OTHER)


def _in_unit(number: float, unit: str, wanted: str) -> float | None:
    """Return a number of one unit in another; None where they are not of one kind."""
    wanted = wanted.partition(" ")[0]  # of "ft one way"
    if unit.casefold() == wanted.casefold():
        return number
    try:
        dimension = dimension_of(wanted)
        return convert(number, read_unit(unit, dimension), wanted)
    except (BadText, KeyError, ValueError):
        return None


def _nearest(q: Question, value: float, tolerance: float) -> Offer | None:
    """Return the right answer where a value is within its tolerance, else the slip that it is."""
    for offer in (q.right, *sorted(q.slips, key=lambda o: abs(o.number - value))):
        allowed = max(float(q.step), tolerance * abs(offer.number))
        if abs(value - offer.number) <= allowed * (1 + 1e-9):
            return offer
    return None
