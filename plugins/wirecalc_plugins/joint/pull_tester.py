"""The tester itself: pulls of one and the same wire, over again."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Annotated

from wirecalc import (
    FileColumns,
    Item,
    Problem,
    answer,
    calculation,
    cannot_tell,
    computed,
    extra,
    figure,
    from_memory,
    listing,
    not_checked,
    put,
    show,
)

from . import statistics
from .batch_groups import sets_of
from .batch_places import key_of, numbered
from .layouts import SIGNIFICANT
from .pull_batch_inputs import DecimalComma, Force, ForceError, Names, Readings, of_file
from .repeated_pulls import Repeated, repeated

FEWEST = 5  # pulls; fewer say next to nothing of a scatter
_METHOD = from_memory(
    "variance-components",
    "NIST/SEMATECH e-Handbook of Statistical Methods",
    "7.4.4, what are variance components; the mean squares of a one-way analysis are equated",
)
_INTERVAL = computed("scatter", "interval of a normal sample's standard deviation", "chi-square")

By = Annotated[
    list[str] | None,
    "column to group by, such as learner; repeat it for two",
    extra("all pulls are one occasion: what differs from day to day is not in it"),
]


def refuse(
    readings: FileColumns | None, force: list[float] | None, by: list[str] | None
) -> Iterator[Problem]:
    """Yield what contradicts itself."""
    yield from of_file(readings, force, by)


@calculation(
    analysis=True,
    part="wire and joint",
    words=(
        "repeatability; reproducibility; repeated pulls; pull tester; crimp tester; force gauge",
        "tester scatter; gauge study; gage study; measurement system; same spool; reference wire",
        "variance components; check the tester; is the tester steady; tester drift",
        "tester accuracy; tester repeat; pull tester check; pull tester certificate",
        "force gauge check; fish scale accuracy; luggage scale accuracy; spring scale",
        "same wire ten times; load cell; verify the gauge",
    ),
    cautions=("pull-01",),
    not_checked=(
        "whether the tester reads true: hang a known weight on it",
        "which part of the scatter is the wire's own: a pull destroys the sample, and the same "
        "one is never pulled twice",
    ),
    refuse=refuse,
    example_with=(
        "force=31.2 lbf; 30.8 lbf; 31.5 lbf; 31.1 lbf; 30.9 lbf; 31.4 lbf; 31.0 lbf; 31.3 lbf",
    ),
)
def pull_tester(
    readings: Readings = None,
    force: Force = None,
    force_error: ForceError = None,
    decimal_comma: DecimalComma = False,
    by: By = None,
    names: Names = False,
) -> Iterator[Item]:
    """How far do pulls of one and the same wire scatter on this tester?

    For a pull tester with pieces of one spool, prepared alike; not for a tester's calibration.
    Within: the root of the mean square inside occasions, with its 95 % interval (chi-square).
    Between, with a column such as day or operator as `by`: mean squares equated (one-way analysis
    of variance, random occasions, unequal counts too), 0 where it comes out below 0; F test, 5 %.
    It holds tester, setting, hand and the wire's own scatter: the tester's part is at most that.

    Inputs: readings (CSV with force_lbf) or force in lbf; by. Yields the deviations in lbf and half
    the width within which 95 % of such pulls lie; fewer than 5 pulls can't be told. No limit is
    published, so there is no verdict. Refuses what pull-batch refuses of a file.
    Source: NIST/SEMATECH e-Handbook of Statistical Methods, variance components (from memory).
    """
    forces = force if force is not None else list(readings.numbers["force"]) if readings else []
    named = readings.words if readings is not None else {}
    columns = list(dict.fromkeys(by or ()))
    words = named if names else numbered(named, columns)
    if key := key_of(named, words, columns):
        yield listing("Who is who", ("number", "name"), key, apart=True)
    sets = {n: [forces[i] for i in m] for n, m in sets_of(forces, words, columns).items()}
    if len(forces) < FEWEST:
        yield cannot_tell(
            "number of pulls",
            f"{len(forces)} pulls show too little; {FEWEST} at least",
            measure=f"pull {FEWEST - len(forces)} more of the same spool",
        )
    if statistics.missing_library():
        yield not_checked("scatter of the tester", "install wirecalc[analysis]")
        return
    found = repeated(list(sets.values()))
    if found is None:
        yield cannot_tell(
            "pulls of one occasion",
            "no occasion has two pulls, and so nothing tells one from the other",
            measure="pull two or more on each",
        )
        return
    if columns:
        yield _sets(sets)
    yield from _figures(found, sets)
    yield from _said(found, columns)


def _sets(sets: dict[str, list[float]]) -> Item:
    rows = [
        (name, str(s.size), f"{s.mean:.2f}", f"{s.deviation:.2f}")
        for name, s in ((n, statistics.summary(values)) for n, values in sets.items())
    ]
    return listing("Occasions", ("occasion", "n", "mean", "s"), rows)


def _figures(found: Repeated, sets: dict[str, list[float]]) -> Iterator[Item]:
    count = sum(map(len, sets.values()))
    ms_between, ms_within = found.squares
    yield figure("mean", found.mean, "lbf", working=lambda: f"the mean of {count} pulls")
    yield figure(
        "one pull to the next",
        found.within,
        "lbf",
        source=_METHOD,
        working=lambda: (
            f"the root of {put(ms_within)} lbf^2, the squared distances of {count} pulls from the "
            f"mean of their occasion over {count - len(sets)}"
        ),
    )
    sure = "95 % interval by chi-square"
    yield figure(
        "one pull to the next, least",
        found.low,
        "lbf",
        source=_INTERVAL,
        toward="down",
        working=lambda: f"{put(found.within, 'lbf')} by {count - len(sets)} degrees; {sure}",
    )
    yield figure(
        "one pull to the next, most",
        found.high,
        "lbf",
        source=_INTERVAL,
        toward="up",
        working=lambda: f"{put(found.within, 'lbf')} by {count - len(sets)} degrees; {sure}",
    )
    if found.between is not None and ms_between is not None:
        yield figure(
            "one occasion to the next",
            found.between,
            "lbf",
            source=_METHOD,
            working=lambda: (
                f"the root of ({put(ms_between)} lbf^2 - {put(ms_within)} lbf^2) / "
                f"{put(found.weight)}; 0 where that is below 0"
            ),
        )
    yield figure(
        "95 % of such pulls lie within, plus or minus",
        found.half,
        "lbf",
        toward="up",
        source=_INTERVAL,
        working=lambda: (
            f"{put(found.half / found.one_pull)} x {put(found.one_pull, 'lbf')}; "
            f"t of {found.freedom:.3g} degrees"
        ),
    )


def _said(found: Repeated, columns: Sequence[str]) -> Iterator[Item]:
    share = 100 * found.one_pull / found.mean if found.mean > 0 else 0.0
    yield answer(
        "pulls of one spool",
        f"scatter by {show(found.one_pull, 'lbf')} (s), {show(share, '%')} of this force, the "
        "tester's own part within it",
        because=["tester, setting, hand and the wire's own scatter are in it together"],
        in_numbers=True,
    )
    if found.chance is None:
        if columns:
            yield not_checked("one occasion to the next", "there is one only")
        return
    differ = found.chance < SIGNIFICANT
    yield answer(
        "occasions",
        "they differ by more than their pulls explain: look at zero, grip and who pulled"
        if differ
        else "no difference shown",
        because=[f"p {found.chance:.2g} (F test, held against {SIGNIFICANT:g})"],
    )
