"""A kind of input that is a whole number of things."""

from __future__ import annotations

import re
from typing import Any

from ..base.errors import BadText
from .explained import no_value, says_none
from .kinds import Kind, Read
from .tidy import in_digits
from .trials import Request, Scale


class Count(Kind):
    """A whole number of things."""

    of = int

    def __init__(
        self, text: str, *, low: int = 1, high: int = 1_000_000, goes_with: str = ""
    ) -> None:
        self.text, self.low, self.high, self.goes_with = text, low, high, goes_with

    @property
    def example(self) -> str:
        return str(max(self.low, 2) if self.high >= 2 else self.low)

    @property
    def span(self) -> str:
        return f"whole number, {self.low} to {self.high}"

    @property
    def schema(self) -> dict[str, Any]:
        bounds = {"minimum": self.low, "maximum": self.high}
        return {"type": "integer", "description": self.text, **bounds, "examples": [self.low]}

    def trials(self, request: Request) -> Scale:
        ends = (request.low or str(self.low), request.high or str(self.high))
        if request.error or request.unit or not all(re.fullmatch("[0-9]{1,9}", e) for e in ends):
            raise BadText("is a count", "write sought, or sought 2 to 6")
        low, high = (int(end) for end in ends)
        if not self.low <= low <= high <= self.high:
            raise BadText(f"{low} to {high} is no span within {self.span}", "the smaller one first")
        return Scale(low, high, "", step=1.0)

    def _no_count(self, given: object) -> BadText:
        if says_none(given):
            return no_value(str(given))
        digits = re.match(r"\s*([0-9]{1,9})(?:\.0*)?(?=[\s/x×]|$)", in_digits(str(given)))
        do = f": {digits[1]}" if digits else ""
        return BadText(f"{given!r} is not a count", f"write a {self.span}{do}")

    def read(self, given: object) -> Read:
        if isinstance(given, str) and re.fullmatch(r"\s*\d{1,9}\s*", given, re.ASCII):
            given = int(given)
        if isinstance(given, bool) or not isinstance(given, int):
            raise self._no_count(given)
        if not self.low <= given <= self.high:
            raise BadText(f"{given} is outside {self.low} to {self.high}", f"write a {self.span}")
        return Read(given)
