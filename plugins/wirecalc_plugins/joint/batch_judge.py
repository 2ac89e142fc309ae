"""What judges a batch of pulls: each set's lowest pull, its margin, and its figures."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from wirecalc import (
    PRACTICE,
    Confidence,
    Item,
    Origin,
    Source,
    Wire,
    at_least,
    at_or_below,
    cannot_tell,
    computed,
    figure,
    not_checked,
    put,
    show,
)
from wirecalc.trade import crimps

from . import statistics
from .batch_groups import ALL

FEWEST = 5  # pulls of a set; 25 for capability: one maker's crimp handbook
CAPABILITY = 25
MARGIN_S = 3.0  # standard deviations between mean and minimum; practice
CONFIDENCES = {"95/90": (0.90, 0.95), "95/95": (0.95, 0.95), "95/99": (0.99, 0.95)}
JUDGED = "95/90"  # least that a batch must show; a stricter one is shown and not judged
FACTOR_OF_FEWEST = 3.407  # k of 95/90 for five pulls, the greatest; stands where scipy is missing
HEAD = ("set", "n", "mean", "s", "lowest", "bound", "let go")
_AGAIN = "see whether the wire slipped or broke, set up the tool again, and pull a new set"
_HOUSE = Source("house", "the shop's own minimum", confidence=Confidence.HOUSE)
_BOUND = computed("tolerance", "one-sided normal tolerance bound", "noncentral t")


class Minimum(NamedTuple):
    """A minimum: a constant name, its force in lbf, whose it is, below what it calls for care."""

    label: str
    least: crimps.PullMinimum | None
    origin: Origin = Origin.STANDARD
    careful: float | None = None

    @property
    def lbf(self) -> float | None:
        """The one force in lbf that it asks of the wire; None where it has none or two."""
        return None if self.least is None or self.least.above is not None else self.least.lbf

    @property
    def mark(self) -> str:
        """How far it may be trusted, said beside it; nothing of the shop's own."""
        source = None if self.least is None else self.least.source
        if source is None or source.confidence is Confidence.HOUSE:
            return ""
        if source.confidence is Confidence.MEMORY:
            return ", from memory"
        own = self.label.replace("-", " ").upper() in source.title.upper()
        return ", confirmed" if own else ", confirmed of UL 486A"


def limits_of(
    wire: Wire, terminal: str, standards: Sequence[str], shop: float | None
) -> Iterator[Minimum]:
    """Yield the minimum of each standard, and the shop's own in lbf."""
    named = (crimps.TERMINALS[terminal] if asked == "own" else asked for asked in standards)
    for standard in dict.fromkeys(named):
        least = crimps.judging_minimum(wire, standard)
        yield Minimum(standard, least, careful=crimps.careful_minimum(wire, standard))
    if shop is not None:
        yield Minimum("shop minimum", crimps.PullMinimum(shop, _HOUSE), Origin.HOUSE)


def judge(name: str, found: statistics.Summary, limits: Sequence[Minimum]) -> Iterator[Item]:
    """Judge a set: how many pulls, its lowest by each minimum, and the margin of its mean."""
    if found.size < FEWEST:
        yield cannot_tell(
            f"{_of(name)}number of pulls",
            f"{found.size} pulls show too little; {FEWEST} at least",
            measure=f"pull {FEWEST - found.size} more of the same wire, terminal and tool",
        )
    for limit in limits:
        lbf = None if limit.least is None else limit.least.decides(found.lowest)
        if lbf is None or limit.least is None:
            yield cannot_tell(
                f"{_of(name)}lowest pull, {limit.label}",
                f"no minimum of {limit.label} for this wire was seen",
                measure="take it from the terminal maker's sheet, or name a --pull-standard",
            )
            continue
        careful = limit.careful if limit.careful is not None and limit.careful > lbf else None
        yield at_least(
            f"{_of(name)}lowest pull, {limit.label}",
            found.lowest,
            lbf,
            "lbf",
            caution=careful,
            source=limit.least.source,
            origin=limit.origin,
            action=_AGAIN,
        )
        if found.deviation > 0:
            yield _capability(name, found, limit.label, lbf)
            yield _margin(name, found, limit.label, lbf)
            if at_or_below(lbf, found.lowest):
                yield from _reaches(name, found, limit.label, lbf)


def _reaches(name: str, found: statistics.Summary, label: str, lbf: float) -> Iterator[Item]:
    """Say where the batch reaches below the minimum though no pull did."""
    share, sure = CONFIDENCES[JUDGED]
    factor = statistics.tolerance_factor(found.size, share, sure) or FACTOR_OF_FEWEST
    bound = found.mean - factor * found.deviation
    if found.size >= FEWEST and not at_or_below(lbf, bound):
        yield cannot_tell(
            f"{_of(name)}scatter, {label}",
            f"no pull is below {lbf:g} lbf, but by its scatter the batch reaches to "
            f"{show(bound, toward='down')} lbf ({JUDGED})",
            measure="look at the die, the strip and the hand; set up the tool again, and pull a "
            "new set, or more of this one",
            source=_BOUND,
        )


def _margin(name: str, found: statistics.Summary, label: str, lbf: float) -> Item:
    return at_least(
        f"{_of(name)}margin in s, {label}",
        (found.mean - lbf) / found.deviation,
        MARGIN_S,
        source=PRACTICE,
        origin=Origin.PRACTICE,
        advisory=True,
        says="the scatter reaches toward the minimum",
        action="look at the die, the strip and the hand before trusting the next one",
        behind="any single pull below the minimum fails its set; a bound below it can't be told",
    )


def _capability(name: str, found: statistics.Summary, label: str, lbf: float) -> Item:
    """Return the one-sided capability (mean - minimum) / 3 s, for a set that is large enough."""
    what = f"{_of(name)}capability, {label}"
    if found.size < CAPABILITY:
        return not_checked(what, f"needs {CAPABILITY} pulls, and there are {found.size}")
    return figure(
        what,
        (found.mean - lbf) / (3 * found.deviation),
        working=lambda: (
            f"({put(found.mean, 'lbf')} - {put(lbf, 'lbf')}) / (3 x {put(found.deviation, 'lbf')})"
        ),
    )


def figures_of(
    name: str,
    found: statistics.Summary,
    bound: float | None,
    confidence: str,
    values: Sequence[float],
) -> Iterator[Item]:
    """Yield mean, deviation, lowest, coefficient of variation and tolerance bound of a set."""
    many = f"{len(values)} force{'s' * (len(values) > 1)}"
    yield figure(
        f"{_of(name)}mean",
        found.mean,
        "lbf",
        working=lambda: f"{put(sum(values), 'lbf')} / {len(values)}; the sum of {many}",
    )
    yield figure(
        f"{_of(name)}standard deviation",
        found.deviation,
        "lbf",
        working=lambda: (
            f"the root of the squared distances of {many} from their mean, over one less than "
            "their number"
        ),
    )
    yield figure(f"{_of(name)}lowest", found.lowest, "lbf", working=lambda: f"the lowest of {many}")
    if found.mean > 0:
        spread = 100 * found.deviation / found.mean
        yield figure(
            f"{_of(name)}coefficient of variation",
            spread,
            "%",
            working=lambda: f"100 x {put(found.deviation, 'lbf')} / {put(found.mean, 'lbf')}",
        )
    if bound is not None:
        k = statistics.tolerance_factor(len(values), *CONFIDENCES[confidence]) or 0.0
        yield figure(
            f"{_of(name)}tolerance bound {confidence}",
            bound,
            "lbf",
            source=_BOUND,
            working=lambda: f"{put(found.mean)} lbf - {put(k)} x {put(found.deviation)} lbf",
            toward="down",
        )


def _of(name: str) -> str:
    """Begin a name with its set; a batch that is one set needs none."""
    return "" if name == ALL else f"{name}: "


def line_of(
    name: str, found: statistics.Summary, bound: float | None, modes: str
) -> tuple[str | float | None, ...]:
    """Write a set as a line of the listing."""
    numbers = (found.mean, found.deviation, found.lowest)
    shown = [f"{value:.2f}" for value in numbers]
    least = "" if bound is None else show(bound, toward="down")
    return (name, str(found.size), *shown, least, modes)
