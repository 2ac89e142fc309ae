"""Pull tests of a batch: every specimen against the minimum, scatter, and who or what differs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Annotated, Any, NamedTuple

from wirecalc import (
    PRACTICE,
    FileColumns,
    Item,
    Nameplate,
    OneOf,
    Origin,
    Problem,
    Reading,
    ReadingsFile,
    Wire,
    Words,
    YesNo,
    at_least,
    calculation,
    cannot_tell,
    chart,
    crimps,
    figure,
    listing,
    not_checked,
    put,
    statistics,
)
from wirecalc.rounding import show
from wirecalc.sources import Confidence, Source, computed

from .batch_chart import Limits, batch_chart
from .batch_groups import ALL, difference, modes_of, sets_of

FEWEST = 5  # pulls of a set; 25 for capability: one maker's crimp handbook
CAPABILITY = 25
MARGIN_S = 3.0  # standard deviations between mean and minimum; practice
CONFIDENCES = {"95/90": (0.90, 0.95), "95/95": (0.95, 0.95), "95/99": (0.99, 0.95)}
_FORCE = Reading("lbf", low=0, high=7000, typical="24.1 lbf", text="force at which one let go")
_AGAIN = "see whether the wire slipped or broke, set up the tool again, and pull a new set"
_HOUSE = Source("house", "the shop's own minimum", confidence=Confidence.HOUSE)
_BOUND = computed("tolerance", "one-sided normal tolerance bound", "noncentral t")


def _standards() -> list[str]:
    return ["own", *crimps.CRIMP_STANDARDS]


def _refuse(**given: Any) -> Iterator[Problem]:
    typed, file = given.get("force"), given.get("readings")
    if (typed is None) == (file is None):
        yield Problem("readings", "give a file of readings or --force for each pull", "one of them")
        return
    forces = typed if typed is not None else file.numbers["force"] if file is not None else []
    if len(forces) > 1 and min(forces) == max(forces):
        yield Problem(
            "readings",
            f"all {len(forces)} forces are {forces[0]:g} lbf",
            "real pulls scatter: check the record",
        )
    most = crimps.breaking_force(given["wire"])[0] * 70_000 / crimps.SOFT_COPPER_PSI[0]
    if max(forces) > most:
        yield Problem(
            "readings",
            f"{max(forces):g} lbf is more than {given['wire']} can bear",
            "check the unit (lbf, N, kgf) and the gauge",
        )
    if file is None:
        if given.get("by"):
            yield Problem("by", "groups the rows of a file, and none was given", "give --readings")
        return
    for column in ("wire", "gauge"):
        if len(set(file.words.get(column, ()))) > 1:
            yield Problem(
                "readings",
                f"the column {column} names several wires",
                "one batch is one wire, terminal and standard: split the file",
            )
    for name in given.get("by") or ():
        if name not in file.words:
            known = ", ".join(file.words) or "none"
            yield Problem("by", f"the file has no column {name!r}", f"its columns: {known}")


@calculation(
    part="wire and joint",
    cautions=("pull-01", "crimp-03"),
    not_checked=(
        "the one-minute hold of the UL test",
        "qualification of a learner, tool or terminal: this is a check of samples",
    ),
    refuse=_refuse,
    example_with=(
        "force=24.1 lbf; 23.4 lbf; 25.0 lbf; 24.6 lbf; 23.8 lbf; 24.4 lbf; 25.3 lbf; 23.9 lbf",
    ),
)
def pull_batch(
    wire: Annotated[Wire, "wire crimped into the terminals"],
    terminal: Annotated[str, OneOf(crimps.crimp_kinds, text="kind of terminal")],
    readings: Annotated[
        FileColumns | None,
        ReadingsFile(
            {"force": _FORCE},
            text="CSV with a column force and any others",
            error_input="force_error",
            comma_input="decimal_comma",
            typical="class.csv",
        ),
    ] = None,
    force: Annotated[list[float] | None, _FORCE] = None,
    force_error: Annotated[
        str | None, Words("meter error of every force, such as 1%", goes_with="readings")
    ] = None,
    decimal_comma: Annotated[
        bool, YesNo("the numbers of the file have decimal commas", goes_with="readings")
    ] = False,
    by: Annotated[
        list[str] | None, "column to group by, such as learner; repeat it for two"
    ] = None,
    standard: Annotated[
        list[str] | None, OneOf(_standards, text="standard to judge by; own: the terminal's")
    ] = None,
    shop_minimum: Annotated[
        float | None,
        Nameplate("lbf", above=0, high=7000, typical="25 lbf", text="the shop's own least force"),
    ] = None,
    confidence: Annotated[
        str, OneOf(tuple(CONFIDENCES), text="confidence / population of the tolerance bound")
    ] = "95/90",
) -> Iterator[Item]:
    """Is this batch of crimps good, and does the learner or the tool make the difference?

    Any single pull below the minimum fails its set; a mean less than 3 standard deviations above
    it is marginal (common practice); fewer than 5 pulls can't be told. The mean itself is never
    judged: it hides a bad crimp. The one-sided normal tolerance bound (mean - k s, k from the
    noncentral t distribution) is a figure. With two columns to group by, each is tested with the
    other accounted for (additive two-way layout, F test of the drop in residual sum of squares);
    with one, by one-way F test. Outliers (Grubbs, ASTM E178, 5 %) are named, never dropped.

    Inputs: wire, terminal; readings (CSV with force_lbf, or units in the cells) or force in lbf;
    by, standard, shop_minimum in lbf, confidence. Yields a line a set, figures, one criterion a
    set, and a chart. Refuses mixed wire, identical forces, forces that no such wire bears.
    Source: tables pull-crimp; k factors computed.
    """
    forces = force if force is not None else list(readings.numbers["force"]) if readings else []
    words = readings.words if readings is not None else {}
    names = list(dict.fromkeys(by or ()))
    sets = sets_of(forces, words, names)
    limits = list(_limits(wire, terminal, standard or ["own"], shop_minimum))
    level = CONFIDENCES[confidence]
    lines, bounds = [], {}
    for name, members in sets.items():
        values = [forces[i] for i in members]
        summary = statistics.summary(values)
        bounds[name] = statistics.tolerance_bound(values, *level)
        lines.append(_line(name, summary, bounds[name], modes_of(words, members)))
        yield from _figures(name, summary, bounds[name], confidence, values)
        yield from _judge(name, summary, limits)
        for row in statistics.outliers(values):
            yield not_checked(f"why {values[row]:g} lbf stands apart", f"{name}, pull {row + 1}")
    told = any(line[-1] for line in lines)  # how they let go; without it there is no such column
    yield listing("Sets", _HEAD if told else _HEAD[:-1], lines if told else [x[:-1] for x in lines])
    if len(sets) > 1:
        yield from difference(forces, words, names)
    if statistics.missing_library():
        yield not_checked("tolerance bound and tests", "install wirecalc[analysis]")
    minima = tuple((x.label, x.lbf) for x in limits if x.lbf is not None)
    shown = Limits(minima, bounds, confidence)
    yield chart(lambda: batch_chart({n: [forces[i] for i in m] for n, m in sets.items()}, shown))


class _Minimum(NamedTuple):
    """A minimum to judge by: a constant name, the force in lbf, whose it is."""

    label: str
    lbf: float | None
    source: Source | None
    origin: Origin


_HEAD = ("set", "n", "mean", "s", "lowest", "bound", "let go")


def _limits(
    wire: Wire, terminal: str, standards: Sequence[str], shop: float | None
) -> Iterator[_Minimum]:
    named = (crimps.TERMINALS[terminal] if asked == "own" else asked for asked in standards)
    for standard in dict.fromkeys(named):
        minimum = crimps.pull_minimum(wire, standard)
        known = minimum is not None and minimum.above is None
        yield _Minimum(
            standard,
            minimum.lbf if minimum is not None and known else None,
            minimum.source if minimum is not None and known else None,
            Origin.STANDARD,
        )
    if shop is not None:
        yield _Minimum("shop minimum", shop, _HOUSE, Origin.HOUSE)


def _judge(name: str, found: statistics.Summary, limits: Sequence[_Minimum]) -> Iterator[Item]:
    if found.size < FEWEST:
        yield cannot_tell(
            f"{_of(name)}number of pulls",
            f"{found.size} pulls show too little; {FEWEST} at least",
            measure=f"pull {FEWEST - found.size} more of the same wire, terminal and tool",
        )
    for limit in limits:
        if limit.lbf is None or limit.source is None:
            yield cannot_tell(
                f"{_of(name)}lowest pull, {limit.label}",
                f"no minimum of {limit.label} for this wire was seen",
                measure="take it from the terminal maker's sheet, or name a --standard",
            )
            continue
        yield at_least(
            f"{_of(name)}lowest pull, {limit.label}",
            found.lowest,
            limit.lbf,
            "lbf",
            source=limit.source,
            origin=limit.origin,
            action=_AGAIN,
        )
        if found.deviation > 0:
            yield _capability(name, found, limit.label, limit.lbf)
            yield at_least(
                f"{_of(name)}margin in s, {limit.label}",
                (found.mean - limit.lbf) / found.deviation,
                MARGIN_S,
                source=PRACTICE,
                origin=Origin.PRACTICE,
                advisory=True,
                says="the scatter reaches toward the minimum",
                action="look at the die, the strip and the hand before trusting the next one",
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


def _figures(
    name: str,
    found: statistics.Summary,
    bound: float | None,
    confidence: str,
    values: Sequence[float],
) -> Iterator[Item]:
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


def _line(
    name: str, found: statistics.Summary, bound: float | None, modes: str
) -> tuple[str | float | None, ...]:
    numbers = (found.mean, found.deviation, found.lowest)
    shown = [f"{value:.2f}" for value in numbers]
    least = "" if bound is None else show(bound, toward="down")
    return (name, str(found.size), *shown, least, modes)
