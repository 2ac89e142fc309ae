"""Kinds of input that are numbers with a unit: a reading, a printed value."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Mapping, Sequence
from typing import Any

from ..base.errors import BadText, DeclarationError
from ..base.rounding import show
from .explained import Beside, explained
from .kinds import TAKEN_AS_EXACT, Kind, Read, as_text
from .odd_numbers import up_to
from .quantities import read_quantity, split_error
from .quantity_lists import apart
from .quantity_trials import trials_of
from .tidy import tidy
from .trials import Ladder, Request, Scale
from .unit_slips import other_unit, refuse_slip
from .units import dimension_declared

_OPEN = re.compile(
    r"(?:(?:\.?[o0]\.?|\.)l\.?(?:\s*[a-z]*ohm)?|open|inf|infinit[ey]|∞|over ?range)", re.IGNORECASE
)  # shown past the range


_DIGITS = tuple("123456789")  # no word for open begins with one


class QuantityKind(Kind):
    """A number with a unit and a span; `steps` are the values that are sold or standard."""

    of = float
    printed = False  # on a part or a plate
    upper_input: str = ""  # the input for the upper end, where a range is printed
    tolerance_input: str = ""  # the input for the tolerance that is printed beside it

    def __init__(
        self,
        unit: str,
        *,
        text: str,
        low: float | None = None,
        high: float | None = None,
        above: float | None = None,
        typical: str = "",
        goes_with: str = "",
        dimension: str = "",
        if_open: str = "",
        past: str = "",
        slip_under: float = 0.0,
        zero: tuple[str, str] = ("", ""),
        error_input: str = "",
        not_zero: str = "",
        steps: Callable[[], Sequence[str]] | Sequence[str] = (),
        wave: str = "",
        either_scale: bool = False,
        crest_input: str = "",
    ) -> None:
        self.unit, self.text, self.goes_with = unit, text, goes_with
        self.if_open, self.past, self.slip_under = if_open, past, slip_under
        self.zero, self.error_input, self.not_zero = zero, error_input, not_zero
        self.crest_input = crest_input
        self.companions = (error_input,) if error_input else ()
        self.steps, self.wave, self.either_scale = steps, wave, either_scale
        if (">" in past and high is None) or ("<" in past and low is None):
            raise DeclarationError(f"{text!r}: past the meter's range, and the span has no end")
        self.low, self.high, self.above = low, high, above
        self.typical = typical
        self.dimension = dimension_declared(unit, dimension)

    @property
    def example(self) -> str:
        return self.typical or f"10 {self.unit}"

    @property
    def span(self) -> str:
        if self.above is not None or (self.not_zero and not self.low):
            start = f"over {show(self.above or 0.0)}"
        elif self.low is not None:
            start = f"from {show(self.low)}"
        else:
            start = ""
        end = f"up to {show(self.high)}" if self.high is not None else ""
        return " ".join(p for p in (start, end, self.unit) if p)

    @property
    def schema(self) -> dict[str, Any]:
        return {
            "type": "string",
            "description": self.text,
            "unit": self.unit,
            "span": self.span,
            "examples": [self.example],
        }

    def show(self, value: Any) -> str:
        return show(float(value), self.unit)

    def trials(self, request: Request) -> Ladder | Scale:
        return trials_of(self, request)

    def excludes(self, value: float) -> bool:
        """Whether the input cannot have this value."""
        above = 0.0 if self.above is None and self.not_zero else self.above
        return above is not None and value <= above

    def inside(self, value: float) -> bool:
        """Whether a value is within the sanity span."""
        under = self.low is not None and value < self.low
        over = self.high is not None and value > self.high
        return not (under or over or self.excludes(value))

    def read_with(self, given: object, companions: Mapping[str, object]) -> Read:
        """Read it with the meter's error that was given for all; its own stands before that."""
        if not companions:
            return self.read(given)
        error = str(companions.get(self.error_input) or "").replace("+/-", "").lstrip("± ")
        plain = isinstance(given, str) and not split_error(given)[1]
        return self.read(f"{given} ±{error}" if error and plain else given)

    def read(self, given: object) -> Read:
        if isinstance(given, (int, float)) and not isinstance(given, bool):
            text = f"{given} {self.unit}" if math.isfinite(given) else self.example
            raise BadText(f"{given} has no unit", f'write it as text: "{text}"')
        typed = tidy(as_text(given, self.example))
        try:
            quantity = read_quantity(typed, self.dimension, self.unit)
        except BadText as error:
            beside = Beside(self.upper_input, self.crest_input, self.typical)
            how = self.dimension, self.unit, self.read, beside, self.example
            raise explained(typed, *how, error) from None
        if not self.inside(quantity.value):
            wrong = f"{typed!r} is outside {self.span}"
            if quantity.value == 0 and self.not_zero:
                wrong = f"{typed!r}: {self.not_zero}"
            raise BadText(wrong, other_unit(self, typed, quantity.value))
        refuse_slip(self, typed, quantity, printed=self.printed)
        return self._with_band(quantity.value, quantity.low, quantity.high, typed)

    def parts(self, given: object) -> Sequence[object]:
        if not isinstance(given, str) or not any(sign in given for sign in ",;+"):
            return (given,)
        return [one for part in given.split(";") for one in apart(part)]

    def _with_band(self, value: float, low: float | None, high: float | None, typed: str) -> Read:
        if low is None or high is None:
            return Read(value, notes=(TAKEN_AS_EXACT,))
        excluded = self.excludes(low)
        floor = self.above if self.above is not None else self.low
        low = low if floor is None else max(low, floor)
        high = high if self.high is None else min(high, self.high)
        return Read(value, low, high, excluded)


class Reading(QuantityKind):
    """A quantity that somebody measured; it may carry the instrument's error.

    `past` says on which side a good reading may lie past the meter's range: with ">" it may be
    typed as `>999 Mohm`, a band from there to the end of the span, with "<" as `<0.1 ohm`, one
    from the start of the span. `if_open` is what to give instead of OL. A value that is typed in a
    smaller unit, `1.2 mA` for a line current, is refused below `slip_under`, or else where it is
    next to nothing beside the `typical` one. `zero`
    says of a thing that never reads exactly 0 what such a reading tells and what to do about it:
    without an error it is `cannot tell`. `not_zero` says why one calculation can use no 0, though
    the quantity may be 0: it is refused, and a band down to it is `cannot tell`.
    """

    def read(self, given: object) -> Read:
        typed = given.strip() if isinstance(given, str) else ""
        if typed[:1] not in _DIGITS and _OPEN.fullmatch(typed):
            raise BadText(f"{typed!r} is no number: it is past the meter's range", self._for_open)
        if typed[:1] not in ("<", ">"):
            return super().read(given)
        if typed[0] not in self.past:
            raise self._past_range(typed)
        try:
            read = super().read(typed[1:])
        except BadText as error:
            raise self._with_side(typed, error) from None
        if read.low is not None:
            raise BadText(f"{typed!r} says a side and an error", "drop the ± part")
        end, side = (self.high, "more") if typed[0] == ">" else (self.low, "less")
        low, high = sorted((read.value, read.value if end is None else end))
        return Read(read.value, low, high, notes=(f"{side} than {self.show(read.value)}",))

    def _past_range(self, typed: str) -> BadText:
        """Return the refusal of a reading past the meter's range, where that says too little."""
        wrong = f"{typed!r} is no one number"
        found = re.fullmatch(r"<\s*=?\s*(\d+\.?\d*|\.\d+)\s*([^\d\s±].*)", typed)
        if typed[0] == ">":
            return BadText(wrong, "read it again on a higher range of the meter, or write unknown")
        if found:
            try:
                do = up_to(found[1], found[2])
                self.read(re.findall(r"\[(.*?)\]", do)[0])
                return BadText(wrong, do.replace("[", "").replace("]", ""))
            except BadText:
                pass
        return BadText(wrong, "read it again on a lower range of the meter, or write unknown")

    def _with_side(self, typed: str, error: BadText) -> BadText:
        """Return the refusal of what stands behind < or > with that sign in what would do."""
        side, rest = typed[0], typed[1:].strip()
        would_do = re.sub(r"\b(write|write a point:|or) (?=[\d.])", rf"\1 {side}", error.would_do)
        return BadText(error.wrong.replace(repr(rest), repr(typed)), would_do)

    def known_within(self, value: float, low: float, high: float, why: str) -> Read:
        """Return a value of which only is known, and why, that it lies between two ends."""
        read = self._with_band(value, low, high, why)
        if not (math.isfinite(read.low) and math.isfinite(read.high)):
            raise BadText(f"{why}, and its span has no end", "take another instrument")
        return read._replace(notes=(why,))

    @property
    def _for_open(self) -> str:
        if ">" in self.past:
            return f"write the end of its range with >, such as >{self.example}, or unknown"
        return self.if_open or "take a higher range of the meter, or write unknown"


class Nameplate(QuantityKind):
    """A quantity that is printed on a part or a plate; it never carries an error."""

    printed = True

    def trials(self, request: Request) -> Ladder | Scale:
        if request.error:
            raise BadText("a printed value has no meter error", "drop the ± part")
        return trials_of(self, request)

    def read(self, given: object) -> Read:
        if self.unit == "%" and isinstance(given, str):  # a tolerance is printed as ±6 %
            given = re.sub(r"^\s*(?:±|\+/-|\+-)\s*", "", given)
        return super().read(given)

    def _with_band(self, value: float, low: float | None, high: float | None, typed: str) -> Read:
        if low is not None:
            off = split_error(typed)[1]
            do = f" and give {off} as {self.tolerance_input}" if self.tolerance_input else ""
            wrong = f"{typed!r}: a printed value has no meter error"
            raise BadText(wrong, f"drop the ± part{do}")
        return Read(value)
