"""Pull tests of a batch: every specimen against the minimum, scatter, and who or what differs."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Any

from wirecalc import (
    FileColumns,
    Item,
    Nameplate,
    OneOf,
    Problem,
    Reading,
    ReadingsFile,
    Wire,
    Words,
    YesNo,
    calculation,
    chart,
    crimps,
    extra,
    instead_of,
    listing,
    may_be_absent,
    not_checked,
    setting,
    statistics,
)

from .batch_chart import Limits, batch_chart
from .batch_groups import difference, modes_of, sets_of
from .batch_judge import CONFIDENCES, HEAD, figures_of, judge, limits_of, line_of
from .joint_ratings import LISTED_FOR, listed

_FORCE = Reading(
    "lbf",
    low=0,
    high=7000,
    typical="24.1 lbf",
    text="force at which one let go, in lbf, N or kgf",
    error_input="force_error",
)


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
            text="CSV with a column of forces, 5 or more, and any others",
            error_input="force_error",
            comma_input="decimal_comma",
            typical="class.csv",
        ),
        instead_of("force"),
    ] = None,
    force: Annotated[list[float] | None, _FORCE, instead_of("readings")] = None,
    force_error: Annotated[
        str | None,
        Words("tester's error of every force that has none of its own, such as 1%"),
        extra("such forces are taken as exact"),
    ] = None,
    decimal_comma: Annotated[
        bool, YesNo("the numbers of the file have decimal commas", goes_with="readings"), setting()
    ] = False,
    by: Annotated[
        list[str] | None,
        "column to group by, such as learner; repeat it for two",
        extra("every pull is judged by itself all the same; the batch is one set"),
    ] = None,
    standard: Annotated[
        list[str] | None,
        OneOf(_standards, text="standard to judge by; own: the terminal's"),
        extra("the terminal's own judges; another is a stricter second line"),
    ] = None,
    shop_minimum: Annotated[
        float | None,
        Nameplate("lbf", above=0, high=7000, typical="25 lbf", text="the shop's own least force"),
        may_be_absent("no minimum of the shop's own"),
    ] = None,
    confidence: Annotated[
        str,
        OneOf(tuple(CONFIDENCES), text="confidence / population of the tolerance bound"),
        setting("the batch is judged at 95/90; another bound is shown beside it"),
    ] = "95/90",
    listed_for: Annotated[
        str | None,
        OneOf(LISTED_FOR, text="wire that the maker lists the terminal for"),
        extra("stranded wire needs no listing of its own; of solid wire it is asked"),
    ] = None,
) -> Iterator[Item]:
    """Is this batch of crimps good, and does the learner or the tool make the difference?

    Any single pull below the minimum fails its set; a mean less than 3 standard deviations above
    it is marginal (common practice); fewer than 5 pulls can't be told, nor a batch whose one-sided
    normal tolerance bound (mean - k s, k from the noncentral t distribution; 95/90) lies below it
    though no pull does. The mean itself is never judged: it hides a bad crimp. With two columns to
    group by, each is tested with the other accounted for (additive two-way layout, F test of the
    drop in residual sum of squares); with one, by one-way F test. Outliers (Grubbs, ASTM E178,
    5 %) are named, never dropped.

    Inputs: wire, terminal; readings (CSV with force_lbf, or units in the cells) or force in lbf;
    by, standard, shop_minimum in lbf, confidence, listed_for (solid wire). Yields a line a set,
    figures, one criterion a set, and a chart. Refuses mixed wire, identical forces, forces that
    no such wire bears.
    Source: tables pull-crimp; k factors computed.
    """
    forces = force if force is not None else list(readings.numbers["force"]) if readings else []
    words = readings.words if readings is not None else {}
    names = list(dict.fromkeys(by or ()))
    sets = sets_of(forces, words, names)
    limits = list(limits_of(wire, terminal, standard or ["own"], shop_minimum))
    yield from listed([wire], listed_for)
    level = CONFIDENCES[confidence]
    lines, bounds = [], {}
    for name, members in sets.items():
        values = [forces[i] for i in members]
        summary = statistics.summary(values)
        bounds[name] = statistics.tolerance_bound(values, *level)
        lines.append(line_of(name, summary, bounds[name], modes_of(words, members)))
        yield from figures_of(name, summary, bounds[name], confidence, values)
        yield from judge(name, summary, limits)
        for row in statistics.outliers(values):
            yield not_checked(f"why {values[row]:g} lbf stands apart", f"{name}, pull {row + 1}")
    told = any(line[-1] for line in lines)  # how they let go; without it there is no such column
    yield listing("Sets", HEAD if told else HEAD[:-1], lines if told else [x[:-1] for x in lines])
    if len(sets) > 1:
        yield from difference(forces, words, names)
    if statistics.missing_library():
        yield not_checked("tolerance bound and tests", "install wirecalc[analysis]")
    minima = tuple((x.label, x.lbf, x.mark) for x in limits if x.lbf is not None)
    shown = Limits(minima, bounds, confidence)
    yield chart(lambda: batch_chart({n: [forces[i] for i in m] for n, m in sets.items()}, shown))
