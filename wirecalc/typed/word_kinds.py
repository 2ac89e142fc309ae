"""Kinds of input that are words: one of a list, a wire, a range of sizes, yes or no, any text."""

from __future__ import annotations

import functools
import re
from collections.abc import Callable, Sequence
from typing import Any

from ..base.errors import BadText, nearest
from .explained import no_value, says_none
from .kinds import Kind, Read, as_text
from .size_ladders import ranges_to_try, wires_to_try
from .size_ranges import SizeRange, read_size_range
from .tidy import tidy
from .trials import Ladder, Request
from .wire_lists import wires_in
from .wires import Wire, read_wire

_TRADE = {  # what people call a terminal or connector -> what it may be; asked, never taken
    "spade": ("fork", "push-on"),
    "wire nut": ("twist-on",),
    "wirenut": ("twist-on",),
    "quick connect": ("push-on",),
    "quick disconnect": ("push-on",),
    "eyelet": ("ring",),
}


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

    def trials(self, request: Request) -> Ladder:
        _take_no_span(request, self.span)
        return Ladder(tuple(self.words), ordered=False)

    def read(self, given: object) -> Read:
        typed = as_text(given, self.example).strip()
        by_lower = {w.casefold(): w for w in self.words}
        if (same := _joined(typed)) in (joined := {_joined(w): w for w in self.words}):
            typed = joined[same] if typed.casefold() not in by_lower else typed
        if typed.casefold() not in by_lower:
            if says_none(typed):
                raise no_value(typed)
            close = " or ".join(_meant(typed, self.words)) or nearest(
                typed, [w for w in self.words if _same_number(typed, w)]
            )
            would_do = f"did you mean {close}?" if close else f"such as {self.example}"
            raise BadText(f"{typed!r} is not one of {self.span}", would_do)
        return Read(by_lower[typed.casefold()])


def _take_no_span(request: Request, span: str) -> None:
    if any(request):
        raise BadText(f"has no ends between which it lies, it is one of {span}", "write sought")


def _joined(word: str) -> str:
    """Return a word without what parts its parts: push on, push_on and pushon are push-on."""
    return re.sub(r"[\s_-]+", "", word.casefold())


def _meant(typed: str, words: Sequence[str]) -> list[str]:
    """Return what a text may mean: a word of it, a screw by its number, a word of the trade."""
    screw = re.fullmatch(r"(?:#|no\.? ?)?([0-9]{1,2})(?:-[0-9]{2})?", typed.casefold())
    said = {typed.casefold(), *typed.casefold().split()}
    also = set(_TRADE.get(typed.casefold().replace("-", " "), ()))
    if screw:
        also |= {f"No.{screw[1]}"} | ({f"M{screw[1]}"} if typed.isdigit() else set())
    if metric := re.fullmatch(r"m([0-9.]+) ?[x×].*|([0-9.]+) ?mm", typed.casefold()):  # M5x10
        also |= {f"M{metric[1] or metric[2]}"}
    said.add(re.sub(r"\s+to\s+", ":", typed.casefold()))  # a ratio
    meant = [w for w in words if w.casefold() in said or w in also]
    meant = meant or [w for w in words if w.casefold().startswith(f"{typed.casefold()}-")]
    if meant:
        return meant
    ends = {w: re.split("[- ]", w.casefold())[-1] for w in words}  # curve C
    last = [w for w in words if ends[w] in said]
    return last if len(last) == 1 else []


def _same_number(typed: str, word: str) -> bool:
    """Whether a word has the number that was typed, or one digit behind another: M45 is no M5."""
    there, wanted = ("".join(re.findall("[0-9]", text)) for text in (typed, word))
    return not wanted or wanted.startswith(there) or sorted(wanted) == sorted(there)


class _WordKind(Kind):
    def __init__(self, text: str, *, goes_with: str = "") -> None:
        self.text, self.goes_with = text, goes_with

    @property
    def schema(self) -> dict[str, Any]:
        return {"type": "string", "description": self.text, "examples": [self.example]}


@functools.lru_cache(maxsize=4096)
def _read_wire(text: str) -> Read:
    wire = read_wire(text)
    notes = tuple(f"assumed {word}" for word in wire.assumed)
    return Read(wire, notes=notes, understood=wire.understood)


class WireKind(_WordKind):
    """A wire as people write it."""

    of = Wire
    example = "18 AWG"
    span = "18 AWG, 14 AWG solid, 1.5 mm2, 26x30 AWG, 41x0.254 mm"

    def trials(self, request: Request) -> Ladder:
        return Ladder(wires_to_try(request))

    def read(self, given: object) -> Read:
        if says_none(given):
            raise no_value(str(given))
        return _read_wire(tidy(as_text(given, self.example)))

    def parts(self, given: object) -> Sequence[object]:
        return wires_in(given) if isinstance(given, str) else (given,)


class RangeKind(_WordKind):
    """A range of wire size."""

    of = SizeRange
    example = "22-18 AWG"
    span = "16-14 AWG, 2050-5180 cmil, 1.5-2.5 mm2"

    def trials(self, request: Request) -> Ladder:
        return Ladder(ranges_to_try(request))

    def read(self, given: object) -> Read:
        if says_none(given):
            raise no_value(str(given))
        return Read(read_size_range(as_text(given, self.example)))


class YesNo(_WordKind):
    """Yes or no."""

    of = bool
    example = "yes"
    span = "yes or no"

    def trials(self, request: Request) -> Ladder:
        _take_no_span(request, self.span)
        return Ladder(("yes", "no"), ordered=False)

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
        typed = given.strip().casefold().removesuffix(".") if isinstance(given, str) else ""
        if typed not in words:
            if says_none(given):
                raise no_value(str(given))
            raise BadText(f"{given!r} is neither yes nor no", "write yes or no")
        return Read(words[typed])


class Words(_WordKind):
    """Free text; `typical` is its example."""

    of = str
    span = "text"

    def __init__(self, text: str, *, goes_with: str = "", typical: str = "text") -> None:
        super().__init__(text, goes_with=goes_with)
        self.typical = typical

    @property
    def example(self) -> str:
        return self.typical

    def read(self, given: object) -> Read:
        return Read(as_text(given, self.example))
