"""What a shop's records tell together, as text or as one JSON object ("wirecalc.history/1")."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from typing import Any

from ..jobs.history import (
    CHECKS,
    JOBS,
    LATER,
    NO_VERDICT,
    NOT_TESTED,
    SOON,
    TOO_FEW,
    UNKNOWN,
    VERDICTS,
    History,
)
from .layout import block, table, wrap

_TITLES = {
    "kind": "Jobs by kind",
    "technician": "Jobs by technician",
    "tool": "Checks as left, by tool",
    "part": "Checks as left, by part",
    "terminal": "Checks as left, by terminal",
}
_NOT_SAID = "(not said)"
_MOST_MISSING = 20  # lines of what is missing; JSON has all
_HOW = {UNKNOWN: "said unknown", NOT_TESTED: "not tested"}


def history_text(history: History) -> str:
    """Return what the records tell as text, 80 columns wide."""
    return "\n".join([_head(history), *_body(history), *_not_read(history)])


def history_object(history: History) -> dict[str, Any]:
    """Return what the records tell as a JSON object."""
    return {
        "schema": "wirecalc.history/1",
        "n": history.n,
        "first": history.first.isoformat() if history.first else None,
        "last": history.last.isoformat() if history.last else None,
        "verdicts": _counts(history.verdicts),
        "callbacks": [
            {
                "cause": c.cause,
                "n": c.n,
                f"within_{SOON}_days": c.soon,
                f"within_{LATER}_days": c.later,
                "later": c.after,
                "days_not_known": c.not_known,
                "too_few": c.n < TOO_FEW,
            }
            for c in history.callbacks
        ],
        **{f"by_{by}": _group_objects(history, by) for by in (*JOBS, *CHECKS)},
        "missing": [
            {"name": name, "how": how, "n": n, "required": required}
            for name, how, n, required in history.missing
        ],
        "not_read": [{"name": n, "reason": r} for n, r in sorted(history.not_read)],
    }


def _group_objects(history: History, by: str) -> list[dict[str, Any]]:
    return [
        {
            "name": name,
            "n": found.total(),
            "verdicts": _counts(found),
            "too_few": found.total() < TOO_FEW,
        }
        for name, found in history.groups(by)
    ]


def _counts(found: Counter[str]) -> dict[str, int]:
    return {verdict: found[verdict] for verdict in VERDICTS}


def _head(history: History) -> str:
    days = f", {history.first} to {history.last}" if history.n else ""
    more = f"; {len(history.not_read)} more could not be read" if history.not_read else ""
    return f"{history.n} {'job' if history.n == 1 else 'jobs'}{days}{more}"


def _body(history: History) -> Iterator[str]:
    if not history.n:
        return
    yield from block("Verdicts", _verdict_table([("all jobs", history.verdicts)]))
    yield from _callbacks(history)
    for by in (*JOBS, *CHECKS):
        rows = [(_shown(name), found) for name, found in history.groups(by)]
        if any(name is not None for name, _ in history.groups(by)):
            yield from block(_TITLES[by], _verdict_table(rows))
        elif rows:
            yield from block(_TITLES[by], [f"not said in any of {rows[0][1].total()}"])
    yield from _missing(history)
    yield ""
    yield from wrap(
        f"too few: fewer than {TOO_FEW}, no base for a comparison. These are counts of what the "
        "sheets say: easy and hard jobs are not told apart."
    )


def _verdict_table(rows: Sequence[tuple[str, Counter[str]]]) -> list[str]:
    shown = [v for v in VERDICTS if v != NO_VERDICT or any(found[v] for _, found in rows)]
    lines = [("", "n", *shown, "")]
    lines += [
        (name, str(found.total()), *(str(found[v]) for v in shown), _few(found.total()))
        for name, found in rows
    ]
    return _aligned(lines)


def _callbacks(history: History) -> Iterator[str]:
    found = history.callbacks
    n = sum(c.n for c in found)
    title = f"Callbacks: {n} of {history.n} jobs"
    if not found:
        yield from ("", title)
        return
    days = (f"to {SOON} days", f"to {LATER}", "later", "not known")
    rows: list[tuple[str, ...]] = [("cause", "n", *days, "")]
    rows += [
        (_shown(c.cause), *map(str, (c.n, c.soon, c.later, c.after, c.not_known)), _few(c.n))
        for c in found
    ]
    yield from block(title, _aligned(rows))


def _missing(history: History) -> Iterator[str]:
    found = history.missing
    rows = [("", f"of {history.n} jobs", "required", "")]
    rows += [
        (_shown(name), str(n), str(required) if how == NOT_TESTED else "", _HOW[how])
        for name, how, n, required in found[:_MOST_MISSING]
    ]
    more = len(found) - _MOST_MISSING
    last = [f"and {more} more, which --format json lists"] if more > 0 else []
    yield from block("Readings that are missing", [*_aligned(rows), *last] if found else ["none"])


def _not_read(history: History) -> Iterator[str]:
    lines = [
        line
        for name, reason in sorted(history.not_read)
        for line in wrap(f"- {name}: {reason}", indent="  ")
    ]
    yield from block(f"Could not be read, and are not counted: {len(history.not_read)}", lines)


def _few(n: int) -> str:
    return "too few" if n < TOO_FEW else ""


def _shown(name: str | None) -> str:
    return _NOT_SAID if name is None else name


def _aligned(rows: Sequence[Sequence[str]]) -> list[str]:
    numbers = ["right"] * (len(rows[0]) - 2)
    return table(rows, align=["left", *numbers, "left"], head=True)
