"""Pull tests of a batch: every specimen against the minimum, scatter, and who or what differs."""

from __future__ import annotations

from collections.abc import Iterator

from wirecalc import (
    Item,
    calculation,
    chart,
    listing,
    not_checked,
)

from ..inputs_joint import ListedFor
from . import statistics
from .batch_answers import difference
from .batch_chart import PullLimits, Shown, batch_chart, mode_of, placed
from .batch_groups import modes_of, sets_of
from .batch_judge import CONFIDENCES, HEAD, figures_of, judge, limits_of, line_of
from .batch_places import key_of, numbered
from .joint_ratings import listed
from .pull_batch_inputs import (
    By,
    Confidence,
    DecimalComma,
    Force,
    ForceError,
    Names,
    PullStandard,
    Readings,
    ShopMinimum,
    Terminal,
    WireInput,
    refuse,
)


@calculation(
    analysis=True,
    part="wire and joint",
    words=(
        "pull test; pull tests; crimp test; tug test; crimp; crimps; batch; lot; sample; samples",
        "several crimps; average; mean; spread; scatter; standard deviation; sigma; statistics",
        "capability; Cpk; learner; apprentice; trainee; student; training; class; compare tools",
        "compare crimpers; which crimper; crimper; crimping tool; crimp tool; ratchet crimper",
        "quality control; outlier; tool calibration; tolerance bound; variation; crimp quality",
        "exam; spread of crimps; pliers; plier; which tool; which pliers; operator; consistency",
        "inconsistent; vary; varies; repeatability; compare technicians; qualify; qualification",
        "process check; weak crimps",
        "ten crimps; 10 crimps; several pulls; many pulls; class pulls; results of a class",
        "pulls of a class; team; compare people; compare students; training crimps",
        "crimper check; ratchet check; crimper verification; verify the crimper; tool check",
        "crimper worn out; crimper good; worn crimper; first article; setup check",
        "readings of crimps; mean pull; lowest pull; which student; who crimps best",
    ),
    go_on="keep sheet and date with the tool; pull anew for another die or wire",
    cautions=("pull-01", "crimp-03"),
    not_checked=(
        "the one-minute hold of the UL test",
        "crimp height and the look of each crimp",
        "qualification of a learner, tool or terminal: this is a check of samples",
    ),
    refuse=refuse,
    example_with=(
        "force=24.1 lbf; 23.4 lbf; 25.0 lbf; 24.6 lbf; 23.8 lbf; 24.4 lbf; 25.3 lbf; 23.9 lbf",
    ),
    renamed={"standard": "pull_standard"},
    exercises=".pull_batch_exercises",
)
def pull_batch(
    wire: WireInput,
    terminal: Terminal,
    readings: Readings = None,
    force: Force = None,
    force_error: ForceError = None,
    decimal_comma: DecimalComma = False,
    by: By = None,
    pull_standard: PullStandard = None,
    shop_minimum: ShopMinimum = None,
    confidence: Confidence = "95/90",
    listed_for: ListedFor = None,
    names: Names = False,
) -> Iterator[Item]:
    """Is this batch of crimps good, and does the learner or the tool make the difference?

    For crimps of one wire in one kind of terminal; not for soldered or welded joints.
    Any single pull below the minimum fails its set; a mean less than 3 standard deviations above
    it is marginal (common practice); fewer than 5 pulls can't be told, nor a batch whose one-sided
    normal tolerance bound (mean - k s, k of noncentral t; 95/90) lies below it. Each learner or
    tool is set beside the mean of the others, the other columns accounted for (additive layout,
    t tests, by Welch too where spreads differ, 5 % a column, Bonferroni step by step): low, high,
    nothing shown, or can't tell where another column goes with it or one pull makes it.
    Outliers (Grubbs, ASTM E178, 5 %) are named, never dropped.

    Inputs: wire, terminal; readings (CSV with force_lbf) or force in lbf; by, pull_standard,
    shop_minimum in lbf, confidence, listed_for (solid wire). Yields figures and a criterion a set,
    and a chart. Refuses mixed wire, identical forces, forces that no such wire bears.
    Source: tables pull-crimp; k factors computed.
    """
    forces = force if force is not None else list(readings.numbers["force"]) if readings else []
    named = readings.words if readings is not None else {}
    columns = list(dict.fromkeys(by or ()))
    words = named if names else numbered(named, columns)
    if key := key_of(named, words, columns):
        yield listing("Who is who", ("number", "name"), key, apart=True)
    sets = sets_of(forces, words, columns)
    limits = list(limits_of(wire, terminal, pull_standard or ["own"], shop_minimum))
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
        yield from difference(forces, words, columns)
    if statistics.missing_library():
        yield not_checked("tolerance bound and tests", "install wirecalc[analysis]")
    minima = tuple((x.label, x.lbf, x.mark) for x in limits if x.lbf is not None)
    shown = PullLimits(minima, bounds, confidence)
    modes = [mode_of(m) for m in words.get("failure_mode", [None] * len(forces))]
    drawn = {n: Shown([forces[i] for i in m], [modes[i] for i in m]) for n, m in sets.items()}
    yield chart(lambda: batch_chart(*placed(drawn, words, columns, names=names), shown))
