"""The columns of a recording: which one was measured, what stands beside it, and in what unit."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from ..base.errors import BadText, did_you_mean
from ..typed.quantity_kinds import Reading
from ..typed.units import converter
from .clamp import Clamp, clamp_in, volts_in
from .head import bare_name, fits, unit_of

_PEAK = "peak"
_PEAKS = {_PEAK, "crest"}  # words of a header for the highest instantaneous value of each reading


class Declared(NamedTuple):
    """What a calculation reads: of the measured quantities one, and what may stand beside it."""

    measured: tuple[str, ...]
    kinds: Mapping[str, Reading]
    beside: tuple[str, ...]


class Columns(NamedTuple):
    """The names of what was found, where it stands, and the factors to the declared units.

    `clamp` is the scale by which the measured one was read, where it was the volts of a clamp.
    """

    names: tuple[str, ...]
    places: tuple[int, ...]
    factors: tuple[float, ...]
    clamp: Clamp | None = None


def columns_of(
    head: Sequence[str],
    stamps: Sequence[int],
    declared: Declared,
    wanted: str,
    clamp: Clamp | None,
) -> Columns:
    """Find the measured column, the one that is `wanted` or the first that fits, and the others."""
    others = [i for i in range(len(head)) if i not in stamps]
    asked = _wanted(head, others, wanted) if wanted else others
    mine = [i for i in asked if not _peak(head[i])]
    if clamp is not None:
        at = _of_clamp(head, mine, clamp)
        found = Columns((declared.measured[0],), (at,), (clamp.amps(volts_in(head[at])),), clamp)
    else:
        found = _measured(head, mine, declared)
    rest = [i for i in others if i not in found.places]
    for name in declared.beside:
        kind = declared.kinds[name]
        fitting = (i for i in rest if _stands_for(head[i], name, kind))
        at_beside = next(fitting, None)
        if at_beside is not None:
            found = found._replace(
                names=(*found.names, name),
                places=(*found.places, at_beside),
                factors=(*found.factors, _factor(head[at_beside], kind)),
            )
    return found


def _wanted(head: Sequence[str], others: Sequence[int], wanted: str) -> list[int]:
    named = [i for i in others if wanted.casefold() in (head[i].casefold(), bare_name(head[i]))]
    if not named:
        known = [head[i] for i in others]
        raise BadText(f"the file has no column {wanted!r}", did_you_mean(wanted, known))
    return named


def _measured(head: Sequence[str], mine: Sequence[int], declared: Declared) -> Columns:
    """Find the first column of a measured quantity, or of a clamp whose scale its header says."""
    for name in declared.measured:
        kind = declared.kinds[name]
        for only in (True, False):
            for i in mine:
                if fits(head[i], name, kind, only):
                    return Columns((name,), (i,), (_factor(head[i], kind),))
        scales = [(i, clamp_in(head[i])) for i in mine] if name == declared.measured[0] else []
        for i, scale in scales:
            if scale is not None:
                return Columns((name,), (i,), (scale.amps(volts_in(head[i])),), scale)
    said = " or ".join(f"{n}_{declared.kinds[n].unit}" for n in declared.measured)
    clamps = [head[i] for i in mine if volts_in(head[i]) and not _stands_for_volts(head[i])]
    if clamps:
        raise BadText(
            f"the column {clamps[0]!r} is in {volts_in(clamps[0])}, and how many an ampere is not "
            "said",
            'say the scale of the clamp (--clamp "100 mV/A"), or write it into the header',
        )
    if any(_peak(h) for h in head):
        peak = next(h for h in head if _peak(h))
        raise BadText(
            f"the column {peak} has peaks, and no rms is beside it", f"record {said} with it"
        )
    raise BadText(
        f"the file has no column of {' or '.join(declared.measured)} with its unit",
        f"write {said} in the header; its columns: {', '.join(head)[:120]}",
    )


def _of_clamp(head: Sequence[str], mine: Sequence[int], clamp: Clamp) -> int:
    """Return the one column that may hold the volts of a clamp."""
    volts = [i for i in mine if volts_in(head[i])]
    own = [i for i in volts if not _stands_for_volts(head[i])] or volts
    if len(own) == 1:
        return own[0]
    if not own:
        raise BadText(
            f"no column is in mV or V, as a clamp of {clamp} gives them",
            f"leave --clamp out, or write the unit; its columns: {', '.join(head)[:120]}",
        )
    named = ", ".join(head[i] for i in own)
    raise BadText(f"{named}: either may be the clamp's", "say which one with --column")


def _factor(head: str, kind: Reading) -> float:
    return converter(unit_of(head, kind)[1], kind.unit, kind.dimension)(1.0)


def _peak(head: str) -> bool:
    """Whether a header is that of the recorder's own peak of each reading."""
    return bool(_PEAKS & set(re.split(r"[\s_]+", bare_name(head))))


def _stands_for(head: str, name: str, kind: Reading) -> bool:
    """Whether a header is that of something beside; volts at a plug are not written in mV."""
    if name == "voltage" and volts_in(head) not in (None, "V"):
        return False
    return fits(head, name, kind, False) and _peak(head) is (name == _PEAK)


def _stands_for_volts(head: str) -> bool:
    """Whether a header is that of the volts at the plug, by its name."""
    return bare_name(head).startswith(("voltage", "volts", "mains"))
