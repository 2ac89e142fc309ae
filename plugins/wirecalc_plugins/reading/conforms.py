"""How sure a reading decides: probability of conformity, guard band, decision rule."""

from __future__ import annotations

import math
from collections.abc import Iterator

from wirecalc import (
    PRACTICE,
    Bands,
    Item,
    Origin,
    at_least,
    at_most,
    calculation,
    computed,
    figure,
    from_memory,
    listing,
    put,
)

from .conforms_inputs import (
    NORMAL,
    TRIANGULAR,
    UNIFORM,
    Error,
    ErrorIs,
    LimitHigh,
    LimitLow,
    MeasuredValue,
    refuse,
)

_DIVISOR = {NORMAL: 2.0, UNIFORM: math.sqrt(3), TRIANGULAR: math.sqrt(6)}
JCGM = from_memory("jcgm-106", "JCGM 106:2012, conformity assessment", "clauses 7 and 8")
GUM = computed("gum-b", "JCGM 100:2008 (GUM)", "4.3, standard uncertainty of a half width")
G8 = from_memory("ilac-g8", "ILAC-G8:09/2019, decision rules", "guard bands")
RULES = (  # guard band as a share of the error, and what the table of rules calls it
    ("simple acceptance", 0.0),
    ("guard band of 0.83 of the error", 0.83),
    ("guard band of the error", 1.0),
    ("guard band of 1.5 times the error", 1.5),
)
_PLAIN = "how sure this reading decides"


@calculation(
    part="reading",
    words=(
        "uncertainty; measurement uncertainty; error; guard band; decision rule; conformity",
        "probability; risk; false accept; false reject; pass or fail; too close; cannot tell",
        "why cannot tell; calibration; JCGM 106; GUM; ISO 17025; how sure; confidence",
        "plus minus; meter accuracy; does the meter count; close to the limit; on the limit",
        "borderline; marginal reading; near the limit; trust the reading; can I trust my meter",
        "meter tolerance; reading vs limit; in doubt; doubt; significant; measurement error",
        "accuracy of reading",
        "two readings; compare two readings; readings differ; same reading twice; meters differ",
    ),
    go_on="take the reading as it is, and note the instrument beside it",
    cautions=("meter-02",),
    not_checked=(
        "what the meter's sheet leaves out: leads, contact, drift since it was calibrated",
        "what was known before the reading: a batch that is mostly good makes a doubt smaller",
    ),
    refuse=refuse,
    example_with=("limit_high",),
)
def conforms(
    measured_value: MeasuredValue,
    error: Error,
    limit_high: LimitHigh = None,
    limit_low: LimitLow = None,
    error_is: ErrorIs = NORMAL,
    bands: Bands | None = None,
) -> Iterator[Item]:
    """Will this reading decide, and how sure is it?

    The true value lies about the reading by the distribution that the error stands for: its share
    within the limits is the probability of conformity (JCGM 106, clause 7, from memory). A rule
    accepts a reading that keeps a guard band to the limit, a share of the error: none is simple
    acceptance, the whole error leaves 2.3 % at most on the wrong side (ILAC-G8, from memory). The
    verdict here is the one of every other calculation: all of the error within the limit passes,
    all outside fails, what reaches across can't be told.

    For one reading and its error, of any quantity. Inputs: limits, reading and error in one unit of
    your own, written units (-100 to 1 million). Yields the probability of conformity, the standard
    uncertainty, and what each rule says. Refuses a run without a limit. Source:
    JCGM 106:2012.
    """
    standard = error / _DIVISOR[error_is]
    yield figure(
        "standard uncertainty",
        standard,
        "units",
        source=GUM,
        working=lambda: f"{put(error, 'units')} / {_divisor_text(error_is)}",
    )
    high = 1.0 if limit_high is None else share_below(limit_high - measured_value, error, error_is)
    low = 0.0 if limit_low is None else share_below(limit_low - measured_value, error, error_is)
    yield figure("probability of conformity", 100 * (high - low), "%", source=JCGM)
    yield listing(
        "What decision rules say",
        ("rule", "accepts up to", "accepts from", "this reading"),
        [_by_rule(n, g * error, measured_value, limit_high, limit_low) for n, g in RULES],
    )
    reach = (measured_value - error, measured_value + error)
    if limit_high is not None:
        yield at_most(
            "under the upper limit",
            measured_value,
            limit_high,
            "units",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            plain=_PLAIN,
            band=reach,
        )
    if limit_low is not None:
        yield at_least(
            "over the lower limit",
            measured_value,
            limit_low,
            "units",
            source=PRACTICE,
            origin=Origin.PRACTICE,
            plain=_PLAIN,
            band=reach,
        )


def share_below(away: float, error: float, error_is: str) -> float:
    """Return the share of true values below a point so far over the reading (0 to 1)."""
    if error_is == NORMAL:
        return 0.5 * math.erfc(-away / (error / 2) / math.sqrt(2))
    part = min(max(away / error, -1.0), 1.0)
    if error_is == UNIFORM:
        return (1 + part) / 2
    return (1 + part) ** 2 / 2 if part < 0 else 1 - (1 - part) ** 2 / 2


def _divisor_text(error_is: str) -> str:
    return {NORMAL: "2", UNIFORM: "sqrt(3)", TRIANGULAR: "sqrt(6)"}[error_is]


def _by_rule(
    name: str, guard: float, value: float, high: float | None, low: float | None
) -> tuple[str | float | None, ...]:
    top = None if high is None else high - guard
    bottom = None if low is None else low + guard
    kept = (top is None or value <= top) and (bottom is None or value >= bottom)
    return name, top, bottom, "accepted" if kept else "not accepted"
