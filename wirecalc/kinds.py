"""Kinds of input: what may be typed for each, and how it is read.

A calculation declares its inputs with these, inside `Annotated`:

    force: Annotated[float, Reading("lbf", low=0, high=20000, text="force at which it let go")]
    breaker: Annotated[float, Nameplate("A", above=0, high=100, text="rating on the handle")]
    wires: Annotated[int, Count(low=1, high=20, text="wires in the connector")]
    terminal: Annotated[str, OneOf(terminal_kinds, text="kind of terminal")]

A plain text in place of a kind serves `Wire`, `SizeRange`, `bool` and `str`. `goes_with` names
the input without which one means nothing: `cord_conductors` goes with `cord`.
"""

from __future__ import annotations

import math
import re
from abc import ABC, abstractmethod
from collections.abc import Callable, Mapping, Sequence
from typing import Any, NamedTuple

from .errors import BadText, DeclarationError, nearest
from .quantities import read_number, read_quantity, split_error
from .rounding import show
from .units import SPELLINGS, convert, dimension_of, read_unit
from .wires import SizeRange, Wire, read_size_range, read_wire

# units that are typed in place of another; offered when the number fits the span in the other
_SLIPS = {
    "C": "F",
    "F": "C",
    "mm": "in",
    "in": "mm",
    "lbf": "kgf",
    "kgf": "lbf",
    "ft": "m",
    "mohm": "Mohm",
    "Mohm": "mohm",
    "V": "mV",
    "mV": "V",
    "A": "mA",
    "mA": "A uA",
    "uA": "mA",
    "min": "s",
    "h": "min",
    "s": "ms",
    "ms": "s",
    "N": "lbf",
    "W": "kW",
    "kW": "W",
    "kohm": "ohm",
    "uF": "nF",
    "nF": "uF",
}


TAKEN_AS_EXACT = "taken as exact"  # noted of a reading that was typed without an error
_OPEN = re.compile(r"(?:[o0]\.?l\.?(?:\s*[a-z]*ohm)?|open)", re.IGNORECASE)  # shown past the range


class Read(NamedTuple):
    """What a kind made of a given value; `low` and `high` are the band, if it has an error.

    `excluded` says that the band reaches a value which the input cannot have.
    """

    value: Any
    low: Any = None
    high: Any = None
    excluded: bool = False
    notes: tuple[str, ...] = ()


class Kind(ABC):
    """What may be given for an input."""

    of: type  # what a function declares and gets
    text: str
    unit: str = ""
    goes_with: str = ""  # the input without which this one means nothing
    companions: tuple[str, ...] = ()  # inputs that say how this one is to be read
    of_file: bool = False  # whether a given text names a file, and its values stand there
    sample: str = ""  # what a small file of this kind holds, for the example of a calculation

    def read_with(self, given: object, companions: Mapping[str, object]) -> Read:
        """Read a given value, with what was given for the companions."""
        del companions
        return self.read(given)

    @abstractmethod
    def read(self, given: object) -> Read:
        """Read a given value; raises BadText, saying what would do."""

    @property
    @abstractmethod
    def example(self) -> str:
        """A text that may be typed."""

    @property
    @abstractmethod
    def span(self) -> str:
        """What may be typed, in words."""

    @property
    @abstractmethod
    def schema(self) -> dict[str, Any]:
        """JSON schema of the given value."""

    def show(self, value: Any) -> str:
        """Write a value of this kind as it would be typed."""
        return str(value)


def _text(given: object, example: str) -> str:
    if isinstance(given, str):
        return given
    raise BadText(f"{given!r} is not text", f'write it in quotes, such as "{example}"')


class _QuantityKind(Kind):
    of = float

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
    ) -> None:
        self.unit, self.text, self.goes_with = unit, text, goes_with
        self.if_open, self.past, self.slip_under = if_open, past, slip_under
        if (">" in past and high is None) or ("<" in past and low is None):
            raise DeclarationError(f"{text!r}: past the meter's range, and the span has no end")
        self.low, self.high, self.above = low, high, above
        self.typical = typical
        self.dimension = dimension or dimension_of(unit)

    @property
    def example(self) -> str:
        return self.typical or f"10 {self.unit}"

    @property
    def span(self) -> str:
        if self.above is not None:
            start = f"over {show(self.above)}"
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

    def excludes(self, value: float) -> bool:
        """Whether the input cannot have this value."""
        return self.above is not None and value <= self.above

    def inside(self, value: float) -> bool:
        """Whether a value is within the sanity span."""
        under = self.low is not None and value < self.low
        over = self.high is not None and value > self.high
        return not (under or over or self.excludes(value))

    def read(self, given: object) -> Read:
        if isinstance(given, int | float) and not isinstance(given, bool):
            text = f"{given} {self.unit}" if math.isfinite(given) else self.example
            raise BadText(f"{given} has no unit", f'write it as text: "{text}"')
        typed = _text(given, self.example)
        quantity = read_quantity(typed, self.dimension, self.unit)
        if not self.inside(quantity.value):
            raise BadText(
                f"{typed!r} is outside {self.span}", self._slip(typed) or f"such as {self.example}"
            )
        if 0 < abs(quantity.value) < self.slip_under:
            self._refuse_small(typed, quantity.value)
        return self._with_band(quantity.value, quantity.low, quantity.high, typed)

    def _refuse_small(self, typed: str, value: float) -> None:
        """Refuse a value that is small by a smaller unit; in the declared unit it is meant."""
        number, word = read_number(split_error(typed)[0])
        if read_unit(word, self.dimension) != self.unit:
            meant = f"did you mean {show(number.value)} {self.unit}? else write {self.show(value)}"
            raise BadText(f"{typed!r} is next to nothing", meant)

    def _with_band(self, value: float, low: float | None, high: float | None, typed: str) -> Read:
        if low is None or high is None:
            return Read(value, notes=(TAKEN_AS_EXACT,))
        excluded = self.excludes(low)
        floor = self.above if self.above is not None else self.low
        low = low if floor is None else max(low, floor)
        high = high if self.high is None else min(high, self.high)
        return Read(value, low, high, excluded)

    def _slip(self, typed: str) -> str:
        number, word = read_number(split_error(typed)[0])
        unit = read_unit(word, self.dimension)
        for other in _SLIPS.get(unit, "").split():
            known = other in SPELLINGS[self.dimension]
            if known and self.inside(convert(number.value, other, self.unit)):
                return f"did you mean {show(number.value)} {other}?"
        return ""


class Reading(_QuantityKind):
    """A quantity that somebody measured; it may carry the instrument's error.

    `past` says on which side a good reading may lie past the meter's range: with ">" it may be
    typed as `>999 Mohm`, a band from there to the end of the span, with "<" as `<0.1 ohm`, one
    from the start of the span. `if_open` is what to give instead of OL. A value below
    `slip_under` that is typed in a smaller unit, `1.2 mA` for a line current, is refused.
    """

    def read(self, given: object) -> Read:
        typed = given.strip() if isinstance(given, str) else ""
        if _OPEN.fullmatch(typed):
            raise BadText(f"{typed!r} is no number: it is past the meter's range", self._for_open)
        if typed[:1] not in ("<", ">"):
            return super().read(given)
        if typed[0] not in self.past:
            raise BadText(f"{typed!r} is no one number", f"such as {self.example}, or unknown")
        read = super().read(typed[1:])
        if read.low is not None:
            raise BadText(f"{typed!r} says a side and an error", "drop the ± part")
        end, side = (self.high, "more") if typed[0] == ">" else (self.low, "less")
        low, high = sorted((read.value, read.value if end is None else end))
        return Read(read.value, low, high, notes=(f"{side} than {self.show(read.value)}",))

    @property
    def _for_open(self) -> str:
        if ">" in self.past:
            return f"write the end of its range with >, such as >{self.example}, or unknown"
        return self.if_open or "take a higher range of the meter, or write unknown"


class Nameplate(_QuantityKind):
    """A quantity that is printed on a part or a plate; it never carries an error."""

    def _with_band(self, value: float, low: float | None, high: float | None, typed: str) -> Read:
        if low is not None:
            raise BadText(f"{typed!r}: a printed value has no meter error", "drop the ± part")
        return Read(value)


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

    def read(self, given: object) -> Read:
        if isinstance(given, str) and re.fullmatch(r"\s*\d{1,9}\s*", given, re.ASCII):
            given = int(given)
        if isinstance(given, bool) or not isinstance(given, int):
            raise BadText(f"{given!r} is not a count", f"write a {self.span}")
        if not self.low <= given <= self.high:
            raise BadText(f"{given} is outside {self.low} to {self.high}", f"write a {self.span}")
        return Read(given)


class OneOf(Kind):
    """One word out of a list; the list is made when it is needed, so that no table loads early.

    `on_plate` says that it is printed on a nameplate, as a code letter is.
    """

    of = str

    def __init__(
        self,
        options: Callable[[], Sequence[str]] | tuple[str, ...],
        *,
        text: str,
        on_plate: bool = False,
        goes_with: str = "",
    ) -> None:
        self.options, self.text = options, text
        self.on_plate, self.goes_with = on_plate, goes_with

    @property
    def words(self) -> list[str]:
        """The words to choose from."""
        return list(self.options() if callable(self.options) else self.options)

    @property
    def example(self) -> str:
        return self.words[0]

    @property
    def span(self) -> str:
        return ", ".join(self.words)

    @property
    def schema(self) -> dict[str, Any]:
        return {"type": "string", "description": self.text, "enum": self.words}

    def read(self, given: object) -> Read:
        typed = _text(given, self.example).strip()
        by_lower = {w.casefold(): w for w in self.words}
        if typed.casefold() not in by_lower:
            close = nearest(typed, self.words)
            would_do = f"did you mean {close}?" if close else f"such as {self.example}"
            raise BadText(f"{typed!r} is not one of {self.span}", would_do)
        return Read(by_lower[typed.casefold()])


class _WordKind(Kind):
    def __init__(self, text: str, *, goes_with: str = "") -> None:
        self.text, self.goes_with = text, goes_with

    @property
    def schema(self) -> dict[str, Any]:
        return {"type": "string", "description": self.text, "examples": [self.example]}


class WireKind(_WordKind):
    """A wire as people write it."""

    of = Wire
    example = "18 AWG"
    span = "18 AWG, 14 AWG solid, 1.5 mm2, 26x30 AWG, 41x0.254 mm"

    def read(self, given: object) -> Read:
        wire = read_wire(_text(given, self.example))
        return Read(wire, notes=tuple(f"assumed {word}" for word in wire.assumed))


class RangeKind(_WordKind):
    """A range of wire size."""

    of = SizeRange
    example = "22-18 AWG"
    span = "16-14 AWG, 2050-5180 cmil, 1.5-2.5 mm2"

    def read(self, given: object) -> Read:
        return Read(read_size_range(_text(given, self.example)))


class YesNo(_WordKind):
    """Yes or no."""

    of = bool
    example = "yes"
    span = "yes or no"

    @property
    def schema(self) -> dict[str, Any]:
        return {
            "type": ["boolean", "string"],
            "description": self.text,
            "enum": [True, False, "yes", "no"],
        }

    def show(self, value: Any) -> str:
        return "yes" if value else "no"

    def read(self, given: object) -> Read:
        if isinstance(given, bool):
            return Read(given)
        words = {"yes": True, "y": True, "no": False, "n": False}
        typed = given.strip().casefold() if isinstance(given, str) else ""
        if typed not in words:
            raise BadText(f"{given!r} is neither yes nor no", "write yes or no")
        return Read(words[typed])


class Words(_WordKind):
    """Free text."""

    of = str
    example = "text"
    span = "text"

    def read(self, given: object) -> Read:
        return Read(_text(given, self.example))
