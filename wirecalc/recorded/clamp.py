"""The scale of a clamp that gives volts: so many an ampere, as typed or in a header.

>>> str(read_clamp("100 mV/A")), read_clamp("10 A/V").amps("mV")
('100 mV/A', 0.01)
"""

from __future__ import annotations

import re
from typing import NamedTuple

from ..base.errors import BadText
from .head import unit_behind_name

_VOLTS = {"V": 1.0, "mV": 1e-3, "uV": 1e-6, "µV": 1e-6}
_NUMBER = r"(?P<{}>\d+(?:\.\d*)?|\.\d+)"
_PER_A = re.compile(_NUMBER.format("volts") + r"\s*(?P<unit>[mµu]?V)\s*/\s*(?P<amps>\d*)\s*A\b")
_PER_V = re.compile(_NUMBER.format("amps") + r"\s*A\s*/\s*(?P<volts>\d*)\s*(?P<unit>[mµu]?V)\b")


class Clamp(NamedTuple):
    """So many volts an ampere; `text` as it was written, `unit` the unit of volts in it."""

    volts_per_amp: float
    unit: str
    text: str

    def amps(self, unit: str | None) -> float:
        """Return the amperes of one unit of volts; without a unit, that of the scale."""
        return _VOLTS[unit or self.unit] / self.volts_per_amp

    def __str__(self) -> str:
        return self.text


def read_clamp(text: str) -> Clamp:
    """Read the scale of a clamp; raises BadText."""
    given = " ".join(text.split())
    for form in (_PER_A, _PER_V):
        match = form.fullmatch(given)
        if match is not None:
            return _clamp(match, given)
    raise BadText(f"{given[:30]!r} is no scale of a clamp", 'such as "100 mV/A" or "10 A/V"')


def clamp_in(head: str) -> Clamp | None:
    """Return the scale that a header says, if it says one.

    >>> str(clamp_in("probe_mV (100 mV/A)")), clamp_in("probe_mV")
    ('100 mV/A', None)
    """
    match = _PER_A.search(head) or _PER_V.search(head)
    return None if match is None else _clamp(match, match.group())


def volts_in(head: str) -> str | None:
    """Return the unit of volts in which a header says that its values are; None for no volts.

    >>> volts_in("probe_mV"), volts_in("probe (100 mV/A)"), volts_in("ch1 (V) 0.1 V/A")
    ('mV', 'mV', 'V')
    """
    match = _PER_A.search(head) or _PER_V.search(head)
    plain = head if match is None else head.replace(match.group(), "").strip(" ()[],;")
    unit = unit_behind_name(plain)
    if unit in _VOLTS:
        return unit
    return None if match is None else match["unit"]


def _clamp(match: re.Match[str], text: str) -> Clamp:
    volts, amps = (float(match[name] or 1) for name in ("volts", "amps"))
    if not volts or not amps:
        raise BadText(f"{text!r} is no scale of a clamp", 'such as "100 mV/A"')
    return Clamp(volts * _VOLTS[match["unit"]] / amps, match["unit"], text)
