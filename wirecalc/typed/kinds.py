"""Kinds of input: what may be typed for each, and how it is read.

The kinds themselves stand in `quantity_kinds.py` and `word_kinds.py`; here is what they share.

A calculation declares its inputs with these, inside `Annotated`:

    force: Annotated[float, Reading("lbf", low=0, high=20000, text="force at which it let go")]
    breaker: Annotated[float, Nameplate("A", above=0, high=100, text="rating on the handle")]
    wires: Annotated[int, Count(low=1, high=20, text="wires in the connector")]
    terminal: Annotated[str, OneOf(terminal_kinds, text="kind of terminal")]

A plain text in place of a kind serves `Wire`, `SizeRange`, `bool` and `str`. `goes_with` names
the input without which one means nothing: `cord_conductors` goes with `cord`.

A quantity that several calculations ask for is declared once, and each takes it as it is or with
what is its own: `CORD_LENGTH.but(goes_with="cord")`.
"""

from __future__ import annotations

import copy
from abc import ABC, abstractmethod
from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple, Self

from ..base.errors import BadText, DeclarationError
from .trials import Ladder, Request, Scale

_ONE_CALCULATION = (  # what may differ there
    "goes_with",
    "before",
    "zero",
    "not_zero",
    "if_open",
    "error_input",
    "upper_input",
    "tolerance_input",
    "typical",
)
TAKEN_AS_EXACT = "taken as exact"  # noted of a reading that was typed without an error


class Read(NamedTuple):
    """What a kind made of a given value; `low` and `high` are the band, if it has an error.

    `excluded` says that the band reaches a value which the input cannot have,
    `understood` what was made of a text, where it is not what stands there, `by` the instrument
    that a reading was taken by, if one is declared.
    """

    value: Any
    low: Any = None
    high: Any = None
    excluded: bool = False
    notes: tuple[str, ...] = ()
    understood: str = ""
    by: str = ""


class Kind(ABC):
    """What may be given for an input."""

    of: type  # what a function declares and gets
    text: str
    unit: str = ""
    goes_with: str = ""  # the input without which this one means nothing
    before: str = ""  # the reading that it makes right or harmless: it is asked before that
    companions: tuple[str, ...] = ()  # inputs that say how this one is to be read
    zero: tuple[str, str] = ("", "")  # why an exact 0 is no reading of it, and what to do
    of_file: bool = False  # whether a given text names a file, and its values stand there
    sample: str = ""  # what a small file of this kind holds, for the example of a calculation

    def but(self, **own: Any) -> Self:
        """Return this kind with what one calculation has of its own: `goes_with` and the like.

        Unit, span, choices and text are the quantity itself: they are the same in every
        calculation, and DeclarationError is raised for them.
        """
        if odd := set(own) - set(_ONE_CALCULATION):
            raise DeclarationError(f"{self.text!r}: no {', '.join(sorted(odd))} of one calculation")
        kind = copy.copy(self)
        kind.__dict__.update(own)
        if "error_input" in own:
            kind.companions = (own["error_input"],)
        return kind

    def parts(self, given: object) -> Sequence[object]:
        """Return the values that one text of a list holds, parted by semicolons."""
        if isinstance(given, str) and ";" in given:
            return given.split(";")
        return (given,)

    def read_with(self, given: object, companions: Mapping[str, object]) -> Read:
        """Read a given value, with what was given for the companions."""
        del companions
        return self.read(given)

    def trials(self, request: Request) -> Ladder | Scale:
        """Return what can be tried where the value is sought; raises BadText where nothing can."""
        del request
        raise BadText("cannot be sought: no list of what it may be can be tried", "give it")

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


def as_text(given: object, example: str) -> str:
    """Return what was given as text; raises BadText for anything else."""
    if isinstance(given, str):
        return given
    raise BadText(f"{given!r} is not text", f'write it in quotes, such as "{example}"')
