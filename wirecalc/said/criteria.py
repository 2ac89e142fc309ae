"""Criteria: an actual value against a limit. The verdict is computed from the two, never given."""

from __future__ import annotations

import math
from collections.abc import Sequence
from enum import StrEnum
from typing import NamedTuple, TypedDict, Unpack

from ..base.rounding import show_pair
from ..published.sources import Confidence, Source
from .verdicts import Verdict, at_or_above, at_or_below


class Origin(StrEnum):
    """Whose limit it is."""

    STANDARD = "standard"
    MAKER = "maker"
    PRACTICE = "practice"
    HOUSE = "house"


class Criterion(NamedTuple):
    """An actual value against a limit. The verdict is computed, never given.

    `band` is low and high of the actual value, where the calculation works them out itself.
    `better` names the instrument that settles a value whose band reaches across the limit.
    `behind` says what binds behind an advisory limit, or why nothing does. `plain` is what it is
    about in words that a customer reads, where the table of plain words has none.
    """

    name: str
    sense: str
    actual: float | None = None
    limit: float | None = None
    unit: str = ""
    caution_limit: float | None = None
    source: Source | None = None
    origin: Origin = Origin.STANDARD
    advisory: bool = False
    holds: bool = False
    says: str = ""
    action: str = ""
    needs: tuple[str, ...] = ()
    band: tuple[float, float] | None = None
    better: str = ""
    behind: str = ""
    plain: str = ""

    @property
    def verdict(self) -> Verdict:
        """The verdict on the actual value as it stands, without the instrument's error."""
        if self.sense == "cannot tell":
            return Verdict.CANNOT_TELL
        if not self._within(self.limit):
            return Verdict.MARGINAL if self.advisory else Verdict.FAIL
        past_caution = self.caution_limit is not None and not self._within(self.caution_limit)
        return Verdict.MARGINAL if past_caution or self._rests_on_memory else Verdict.PASS

    @property
    def _rests_on_memory(self) -> bool:
        """Whether it is kept only as the limit is remembered, and not as far as that may be off."""
        if self.source is None or self.source.confidence is not Confidence.MEMORY:
            return False
        levels = [level for level in (self.limit, self.caution_limit) if level is not None]
        return not levels or not all(self._within(self._strictest(level)) for level in levels)

    def _strictest(self, level: float) -> float:
        """Return a remembered level where it is off as far as it may be, to the strict side."""
        assert self.source is not None
        off, _ = self.source.may_be_off(level, self.unit)
        return level + off if self.sense == "at least" else level - off

    def _within(self, limit: float | None) -> bool:
        if self.sense == "requires":
            return self.holds
        if self.actual is None or limit is None:
            return False
        if self.sense == "at least":
            return at_or_above(self.actual, limit)
        return at_or_below(self.actual, limit)

    @property
    def _level(self) -> float | None:
        """The nearest level: the caution level if there is one, else the limit."""
        return self.limit if self.caution_limit is None else self.caution_limit

    @property
    def margin(self) -> float | None:
        """How far inside the limit the actual value is, in its unit; negative when outside."""
        if self.actual is None or self.limit is None:
            return None
        return self.actual - self.limit if self.sense == "at least" else self.limit - self.actual

    @property
    def closeness(self) -> float:
        """The margin as a share of the limit, for finding the weakest link; 0 without numbers."""
        return self.closeness_as(self.verdict)

    def closeness_as(self, verdict: Verdict) -> float:
        """Return it where the verdict is known."""
        level = self.limit if verdict is not Verdict.PASS else self._level
        if self.actual is None or not level:
            return math.inf if verdict.rank <= Verdict.MARGINAL.rank else 0.0
        share = self.actual / level - 1 if level > 0 else 1 - self.actual / level
        return share if self.sense == "at least" else -share

    @property
    def next_action(self) -> str:
        """Say what to do about it: a limit from memory that was kept is to be confirmed."""
        only_memory = self.verdict is Verdict.MARGINAL and self._within(self._level)
        return "confirm the limit in a copy of its source" if only_memory else self.action

    @property
    def sure_reason(self) -> str:
        """Say why it fails over the whole band, of which this is the mildest end."""
        if self.actual is None or self.limit is None or self._within(self.limit):
            return self.reason
        toward = "up" if self.sense == "at least" else "down"
        end, past = ("at most", "below") if self.sense == "at least" else ("at least", "above")
        actual, limit = show_pair(self.actual, self.limit, self.unit, toward)
        return _join(f"{end} {actual}, {past} {limit}", self.says)

    @property
    def reason(self) -> str:
        """Say in words why the verdict is what it is."""
        if self.sense == "cannot tell" or (self.sense == "requires" and not self.holds):
            return self.says
        if self.actual is None or self.limit is None:
            return _MEMORY if self.verdict is Verdict.MARGINAL else ""
        least = self.sense == "at least"
        toward, under, over = ("up", "below", "at least") if least else ("down", "above", "at most")
        actual, limit = show_pair(self.actual, self.limit, self.unit, toward)
        if not self._within(self.limit):
            advice = ", the advised limit" if self.advisory else ""
            return _join(f"{actual} is {under} {limit}{advice}", self.says)
        if self.caution_limit is not None:
            actual, level = show_pair(self.actual, self.caution_limit, self.unit, toward)
            if not self._within(self.caution_limit):
                kept = f"within the limit of {limit} and past"
                if least:
                    kept = f"over the least of {limit} and under"
                return _join(f"{actual} is {kept} the caution level of {level}", self.says)
            limit = level
        return _join(f"{actual}, {over} {limit}", self._of_memory)

    @property
    def _of_memory(self) -> str:
        """Say of a kept limit that it is only remembered, and how far off it may be."""
        if self.limit is None or self.source is None:
            return ""
        if self.source.confidence is not Confidence.MEMORY:
            return ""
        off = self.source.may_be_off(self.limit, self.unit)[1]
        kept = f"limit from memory, kept even if that is off by {off}"
        return kept if self.verdict is Verdict.PASS else _MEMORY


_MEMORY = "limit from memory: confirm it"


def _join(said: str, more: str) -> str:
    return f"{said}; {more}" if more else said


class _Said(TypedDict, total=False):
    """What may be said of any limit."""

    origin: Origin
    advisory: bool
    action: str
    behind: str
    plain: str


class _More(_Said, total=False):
    """What may be said of a limit with numbers."""

    says: str
    band: tuple[float, float] | None
    better: str


def at_least(
    name: str,
    actual: float,
    limit: float,
    unit: str = "",
    *,
    source: Source,
    caution: float | None = None,
    **more: Unpack[_More],
) -> Criterion:
    """Yield a criterion: `actual` must be at least `limit`; below `caution` it is marginal.

    `name` is constant text, `unit` that of all three, and `source` where the limit comes from;
    `origin` is whose limit it is, standard if not said. One that is `advisory`, when missed, is
    marginal and no fail; `behind` says what binds behind it, or why nothing does. `says` is added
    to the reason past a level, `action` is what to do then. `band` is low and high of the actual
    value, for a calculation that works out its band itself. `better` names the instrument to take
    where the meter's error reaches across the limit, `plain` what it is about, for a customer.
    """
    return Criterion(name, "at least", actual, limit, unit, caution, source, **more)


def at_most(
    name: str,
    actual: float,
    limit: float,
    unit: str = "",
    *,
    source: Source,
    caution: float | None = None,
    **more: Unpack[_More],
) -> Criterion:
    """Yield a criterion: `actual` must be at most `limit`; all else is as for `at_least`."""
    return Criterion(name, "at most", actual, limit, unit, caution, source, **more)


def requires(
    name: str, holds: bool, *, says: str, source: Source, **more: Unpack[_Said]
) -> Criterion:
    """Yield a criterion that `holds` or, as it `says`, does not; all else is as for `at_least`."""
    return Criterion(name, "requires", source=source, holds=holds, says=says, **more)


def cannot_tell(
    name: str,
    reason: str,
    *,
    measure: str = "",
    needs: Sequence[str] = (),
    source: Source | None = None,
    plain: str = "",
) -> Criterion:
    """Yield a criterion that cannot be judged: its `name`, the `reason`, what to `measure` then.

    `needs` names the inputs that were left out and would settle it. All else is as for `at_least`.
    """
    return Criterion(
        name,
        "cannot tell",
        source=source,
        says=reason,
        action=measure,
        needs=tuple(needs),
        plain=plain,
    )
