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
    """What may be given for an input. What makes one means the same for each:

    - `text`: what it is, as its help and every refusal say it.
    - `unit`: the unit in which the function gets it, and which a refusal offers.
    - `low`, `high`: the ends of what is plausible; what lies outside is refused.
    - `above`: the end that is none itself, in place of `low`: over 0.
    - `typical`: an example, with its unit; it stands in help, refusals and drills.
    - `goes_with`: the input without which this one means nothing.
    - `dimension`: what the unit measures, where it measures two things (K, F).
    - `if_open`: what to give in place of OL, the reading of an open circuit.
    - `past`: ">" or "<", the side on which a good reading may lie past the meter's range.
    - `slip_under`: below it a value in a smaller unit is taken for a slip, and asked.
    - `zero`: what a reading of 0 without an error tells, and what to do; it is a cannot tell.
    - `not_zero`: why this calculation can use no 0; it is refused.
    - `error_input`: the input that has one error of the meter for all values.
    - `steps`: the values that are sold or standard, tried where it is sought.
    - `either_scale`: whether C and F are both usual for it, so that neither is taken for a slip.
    - `crest_input`: the input that says whether a meter shows the crest or the rms of a start.
    - `wave`: "ac" or "dc", where a meter has a range for it of its own.
    - `options`: the words to choose from, or a function that returns them.
    - `on_plate`: whether the word is printed on a nameplate.
    - `columns`: a reading for each column of a file, by its name.
    - `comma_input`: the yes or no that says whether commas are decimal.
    - `sample`: what a small file holds, for the example of the calculation.
    - `measured`: the quantities of which a recording has one, the best first.
    - `kinds`: a reading for each column that a recording may have, by its name.
    - `beside`: the columns that a recording may have beside the measured one.
    - `column_input`: the input that names the column, where a recording has several.
    - `clamp_input`: the input that has the scale of a clamp, where a column is in mV.
    """

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
