"""How a sheet may say that what failed as found was taken away, so that nothing is left to measure.

What every machine, or every one of its kind, must have stays with it and is never taken away.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from ...base.errors import Problem
from ..checks import AS_FOUND, AS_LEFT
from .kinds import usual
from .machine_facts import Subject
from .plan import Check

_TAKEN_AWAY = re.compile(
    r"\b(gone|removed|discarded|scrapped|thrown\s+(away|out)|"
    r"cut\s+(off|out|away)|(taken|took|pulled)\s+(\w+\s+){0,3}(away|off|out))\b",
    re.IGNORECASE,
)
_UNPLUGGED = re.compile(r"\bcord\b[^,;.]*\b(unplugged|disconnected)\b", re.IGNORECASE)
_STILL_THERE = re.compile(
    r"\b(not|never|cannot|\w+n't|should|must|will|to\s+be|needs?|asked|advised|told|said|says|"
    r"recommended|later|tomorrow|soon)\b|\?",
    re.IGNORECASE,
)
_MENDED = re.compile(
    r"\b(replac\w*|mend\w*|repair\w*|fix\w*|tap(ed|e|ing)|renew\w*|swap\w*|exchang\w*|changed|"
    r"new\s+(?!receptacle|outlet|circuit)\w+|re-?(made|fitted|crimped|done|soldered|wired|set)|"
    r"made\s+(again|anew)|put\s+back|clean\w*|tighten\w*|solder\w*|crimped|splic\w*|glu\w*|"
    r"seal\w*|dried|insulated|wrapped|adjust\w*|bent|patch\w*)\b",
    re.IGNORECASE,
)
_SAY = 'write what is gone and how, as "the cord is gone, plugged in at the wall", or leave it out'
_AGAIN = "leave removed out, and write the same check as left"


def problems_of(planned: Sequence[Check], subjects: Sequence[Subject]) -> Iterator[Problem]:
    """Yield what is wrong with what the checks of a sheet say was removed.

    It must say that it is gone: what stays, or was mended or replaced, is measured again instead.
    """
    left = {check.same_as for check in planned if check.place.stage == AS_LEFT}
    for check in planned:
        if not check.removed or check.place.stage != AS_FOUND:
            continue
        label = f"check {check.name}: removed"
        if check.same_as in left:
            wrong = "the same check stands there as left"
            yield Problem(label, wrong, "leave removed out")
        elif _stays(check, subjects):
            wrong = f"{check.calculation.name} is never taken away: the machine must have it"
            yield Problem(label, wrong, _AGAIN)
        elif _MENDED.search(check.removed):
            wrong = f"{check.removed!r}: what was mended or replaced is measured again instead"
            yield Problem(label, wrong, _AGAIN)
        elif not _is_gone(check):
            yield Problem(label, f"{check.removed!r} does not say that it is gone", _SAY)


def _is_gone(check: Check) -> bool:
    """Whether the words say that it is gone; unplugged is so only where a cord was judged."""
    said = check.removed
    cord = any(name in check.given for name in ("cord", "extension_cord"))
    unplugged = cord and _UNPLUGGED.search(said)
    return not _STILL_THERE.search(said) and bool(unplugged or _TAKEN_AWAY.search(said))


def _stays(check: Check, subjects: Sequence[Subject]) -> bool:
    """Whether its machine must have what it measures; of no machine, whether any one must."""
    named = [s for s in subjects if s.machine == check.place.machine]
    must = {c.calculation for s in named or subjects for c in usual(s.kind) if c.required}
    return check.calculation.name in must
