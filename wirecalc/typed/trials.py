"""What a value may be where it is asked for instead of given: `sought` in place of it.

    sought                              every value that the input may have
    sought 10 to 200 ft                 of these, what lies between
    sought in mm2                       in another unit, or wires by their area
    sought by clamp 1                   as a declared instrument shows it
    sought ±(2%+5) to 0.1 lbf           as a meter shows it that has this error and this last digit

The last digit has to be said where the error counts digits: the number of decimals that is tried
would decide it otherwise.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import NamedTuple

from ..base.errors import BadText
from .quantities import split_error

SOUGHT = "sought"
_REQUEST = re.compile(r"sought\b\s*(?P<rest>.*)", re.IGNORECASE | re.DOTALL)
_SPAN = re.compile(r"(?P<low>\S.*?)\s+to\s+(?P<high>\S.*)")
_BY = re.compile(r"(?P<between>.*?)\bby\s+(?P<name>\S.*)", re.DOTALL)
_COUNTS = re.compile(r"\+\s*\d+\s*\)")  # an error of so many counts


class Request(NamedTuple):
    """What is asked of the values to try; all texts, empty where nothing was said."""

    low: str = ""
    high: str = ""
    unit: str = ""
    error: str = ""
    step: str = ""  # the last digit of the display
    by: str = ""  # the declared instrument that shows it


class Ladder(NamedTuple):
    """Values that are tried one by one, such as gauges that are sold; in order of size or not."""

    texts: tuple[str, ...]
    ordered: bool = True


class Scale(NamedTuple):
    """Values that are tried as numbers from `low` to `high` in a unit.

    `above` says that `low` itself is no value, `step` what they are multiples of, if anything;
    `behind` stands behind each, the meter's error or its name.
    """

    low: float
    high: float
    unit: str
    above: bool = False
    behind: str = ""
    step: float | None = None


def is_sought(given: object) -> bool:
    """Whether a value is asked for instead of given."""
    return isinstance(given, str) and bool(_REQUEST.fullmatch(given.strip()))


def sought_in(given: Mapping[str, object]) -> tuple[str, ...]:
    """Return the inputs that are sought."""
    return tuple(
        name
        for name, value in given.items()
        if any(map(is_sought, value if isinstance(value, list | tuple) else (value,)))
    )


def read_request(text: str) -> Request:
    """Read `sought ...`; raises BadText.

    >>> read_request("sought 10 to 200 ft")
    Request(low='10', high='200 ft', unit='', error='', step='', by='')
    >>> read_request("sought ±(2%+5) to 0.1 lbf").step
    '0.1 lbf'
    """
    match = _REQUEST.fullmatch(text.strip())
    rest = match["rest"].strip() if match else text
    between, by = rest, ""
    if named := _BY.fullmatch(rest):
        between, by = named["between"].strip(), named["name"]
    between, error = split_error(between)
    step = ""
    if error and (parts := _SPAN.fullmatch(error)):
        error, step = parts["low"], parts["high"]
    if _COUNTS.search(error) and not step:
        wrong = f"±{error} counts digits of a display, and which is its last is not said"
        raise BadText(wrong, f"write sought ±{error} to 0.1 lbf, with its own digit and unit")
    if between.casefold().startswith("in "):
        return Request(unit=between[3:].strip(), error=error, step=step, by=by)
    if not between:
        return Request(error=error, step=step, by=by)
    ends = _SPAN.fullmatch(between)
    if ends is None:
        raise BadText(f"{text!r} is not understood", "write sought, or sought 10 to 200 ft")
    return Request(ends["low"], ends["high"], error=error, step=step, by=by)
