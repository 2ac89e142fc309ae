"""How the pulls of a crimp tool run over time, against what each had to hold.

The limit depends on the wire, so each pull is told as a share of its own limit. Records of pulls
that failed count like any other.
"""

from __future__ import annotations

import datetime
import statistics
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from ..base.errors import BadText
from ..base.rounding import show
from ..said.charts import Axis, Chart, Limit, Points
from .checks import OPTION
from .history import TOO_FEW

CALCULATION, CRITERION = "pull", "pull-out force"  # of which the pulls are gathered


class Pull(NamedTuple):
    """One pull: its day, the tool, the wire, and the force as a share of its limit, in %."""

    day: datetime.date
    tool: str
    wire: str
    share: float


def pulls(day: datetime.date, job: Mapping[str, Any]) -> Iterator[Pull]:
    """Yield the pulls of a job, as it stands in its JSON; one without a tool or a limit is none.

    Of several limits the strictest counts, and of a meter's band the low end. Raises BadText
    for what is no job.
    """
    try:
        for check in job["checks"]:
            finding = check["finding"] or {}
            if finding.get("calculation") != CALCULATION or check["stage"] == OPTION:
                continue
            shares = [
                100 * (c["actual"] if c["low"] is None else c["low"]) / c["limit"]
                for c in finding["criteria"]
                if c["name"] == CRITERION and c["actual"] is not None and c["limit"]
            ]
            tool = " ".join(str(check.get("tool") or "").split())
            wires = [i["value"] for i in finding["inputs"] if i["name"] == "wire"]
            if tool and shares:
                yield Pull(day, tool, str((wires or [""])[0]), min(shares))
    except (AttributeError, KeyError, TypeError, ValueError) as error:
        raise BadText(f"a field of its job is missing or wrong ({error})") from None


def same(name: str) -> str:
    """Return what all spellings of a name of a tool are, whatever their case and spaces."""
    return "".join(name.casefold().split())


def chart(found: Sequence[Pull]) -> Chart:
    """Return the chart of some pulls of one tool, at least one."""
    ordered = sorted(found)
    first, last = ordered[0].day, ordered[-1].day
    wires = sorted({p.wire for p in ordered})
    return Chart(
        f"Pulls of {ordered[0].tool}, {first} to {last}",
        _in_words(ordered),
        Axis(f"time since {first}", "days"),
        Axis("pull, of the least that it had to hold", "%"),
        points=tuple(_points(wire, first, ordered) for wire in wires),
        limits=(Limit("limit", 100.0),),
    )


def _points(wire: str, first: datetime.date, found: Iterable[Pull]) -> Points:
    mine = [p for p in found if p.wire == wire]
    return Points(wire, [float((p.day - first).days) for p in mine], [p.share for p in mine])


def _in_words(ordered: Sequence[Pull]) -> str:
    """Say what the picture shows: the lowest, and the first and last of it beside each other."""
    lowest = min(ordered, key=lambda p: p.share)
    said = [
        f"{len(ordered)} {'pull' if len(ordered) == 1 else 'pulls'} of {ordered[0].tool} from "
        f"{ordered[0].day} to {ordered[-1].day}, each as a share of its limit.",
        f"Lowest: {show(lowest.share, '%', toward='down')} on {lowest.day} ({lowest.wire}).",
    ]
    if len(ordered) < 2 * TOO_FEW:
        said.append(f"Fewer than {2 * TOO_FEW}: too few to tell a drift.")
    else:
        begin, end = (
            show(statistics.median(p.share for p in part), "%")
            for part in (ordered[:TOO_FEW], ordered[-TOO_FEW:])
        )
        said.append(f"Median of the first {TOO_FEW}: {begin}, of the last {TOO_FEW}: {end}.")
    return " ".join(said)
