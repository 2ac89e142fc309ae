"""What records tell together. The jobs here are invented and written by hand."""

from __future__ import annotations

import datetime
from typing import Any

import pytest

from wirecalc.base.errors import BadText
from wirecalc.jobs.history import VERDICTS, History, facts
from wirecalc.output.history import history_object, history_text

DAY = datetime.date(2026, 6, 30)


def check(
    verdict: str | None, *inputs: tuple[str, str | None, str], **more: object
) -> dict[str, Any]:
    given = [{"name": n, "value": v, "from": f} for n, v, f in inputs]
    finding = {"verdict": verdict, "inputs": given}
    return {"name": "x", "stage": "as left", "finding": finding, **more}


def job(
    verdict: str, *checks: dict[str, Any], not_tested: Any = (), **about: str
) -> dict[str, Any]:
    missing = [{"name": n, "required": r, "reason": "y"} for n, r in not_tested]
    return {"verdict": verdict, "checks": list(checks), "not_tested": missing, "about": about}


def counted(*jobs: dict[str, Any], day: datetime.date = DAY, **dates: datetime.date) -> History:
    history = History()
    for one in jobs:
        history.add(day, facts(one), dates.get)
    return history


def rows(history: History, by: str) -> dict[str | None, list[int]]:
    return {name: [n[v] for v in VERDICTS] for name, n in history.groups(by)}


def test_jobs_are_counted_by_verdict_and_span_of_days() -> None:
    history = counted(job("pass"), job("pass"), job("fail"))
    history.add(datetime.date(2026, 1, 2), facts(job("cannot tell")), {}.get)
    found = history_object(history)
    assert (found["n"], found["first"], found["last"]) == (4, "2026-01-02", "2026-06-30")
    assert found["verdicts"] == {
        **{"pass": 2, "marginal": 0, "cannot tell": 1, "fail": 1, "no verdict": 0},
    }
    assert history_text(history).startswith("4 jobs, 2026-01-02 to 2026-06-30\n")


def test_nothing_was_recorded() -> None:
    found = history_object(History())
    assert (found["n"], found["first"], found["by_tool"], found["missing"]) == (0, None, [], [])
    assert history_text(History()) == "0 jobs"


def test_technicians_and_kinds_have_the_verdicts_of_their_jobs_in_order_of_names() -> None:
    history = counted(
        job("fail", technician="Zoe"),
        job("pass", technician=" Zoe "),
        job("pass", technician="ann"),
        job("marginal"),
        job("pass", technician=""),
        {**job("pass"), "kind": "capacitor"},
    )
    assert list(rows(history, "technician").items()) == [
        ("ann", [1, 0, 0, 0, 0]),
        ("Zoe", [1, 0, 0, 1, 0]),
        (None, [2, 1, 0, 0, 0]),
    ]
    assert rows(history, "kind") == {"capacitor": [1, 0, 0, 0, 0], None: [3, 1, 0, 1, 0]}


def test_names_are_one_whatever_their_case_and_spaces_and_shown_as_first_written() -> None:
    history = History()
    for day, name in ((3, "qk"), (1, "QK"), (2, "q k"), (1, "QK ")):
        one = job(
            "pass",
            check("pass", ("terminal", name, "sheet"), tool=name, part=name),
            technician=name,
            callback_cause=name,
        )
        history.add(datetime.date(2026, 1, day), facts({**one, "kind": name}), {}.get)
    for by in ("kind", "technician", "tool", "part", "terminal"):
        assert rows(history, by) == {"QK": [4, 0, 0, 0, 0]}, by
    assert [(c.cause, c.n) for c in history.callbacks] == [("QK", 4)]


def test_of_a_day_the_same_spelling_is_shown_in_any_order() -> None:
    jobs = [job("pass", technician=t) for t in ("b", "B", "a b", "A B", "AB")]
    shown = [list(rows(counted(*of), "technician")) for of in (jobs, jobs[::-1])]
    assert shown[0] == shown[1]
    assert len(shown[0]) == 2


def test_a_kind_that_stands_at_a_machine_counts() -> None:
    machines = [{"name": n, "kind": k, "verdict": "pass"} for n, k in (("a", "range"), ("b", ""))]
    history = counted(
        {**job("fail"), "kind": "", "machines": machines},
        {**job("pass"), "kind": "washer", "machines": [{"name": "a", "kind": "washer"}]},
        {**job("pass"), "kind": "washer", "machines": [{"name": "a", "kind": "dryer"}, *machines]},
        {**job("pass"), "kind": None, "machines": [{"name": "a", "kind": "x"}] * 2},
    )
    assert rows(history, "kind") == {
        "dryer": [1, 0, 0, 0, 0],
        "range": [1, 0, 0, 1, 0],
        "washer": [1, 0, 0, 0, 0],
        "x": [1, 0, 0, 0, 0],
    }


def test_tools_parts_and_terminals_have_the_verdicts_of_the_checks_as_left() -> None:
    ring = ("terminal", "ring", "sheet")
    history = counted(
        job(
            "fail",
            check("fail", ring, tool="crimper 3", part="R-16"),
            check("pass", ring, tool="crimper 3"),
            check(None, tool="crimper 3"),
            check("pass", ("terminal", None, "unknown")),
            {**check("fail", ring, tool="crimper 9"), "stage": "as found"},
            {**check("fail", ring, tool="crimper 9"), "stage": "option"},
            {**check("fail"), "finding": None},
        )
    )
    assert rows(history, "tool") == {"crimper 3": [1, 0, 0, 1, 1], None: [1, 0, 0, 0, 1]}
    assert rows(history, "part") == {"R-16": [0, 0, 0, 1, 0], None: [2, 0, 0, 0, 2]}
    assert rows(history, "terminal") == {"ring": [1, 0, 0, 1, 0], None: [1, 0, 0, 0, 0]}


@pytest.mark.parametrize(
    ("days", "expected"),
    [
        (0, (1, 0, 0, 0)),
        (30, (1, 0, 0, 0)),
        (31, (0, 1, 0, 0)),
        (90, (0, 1, 0, 0)),
        (91, (0, 0, 1, 0)),
        (-1, (0, 0, 0, 1)),
        (None, (0, 0, 0, 1)),
    ],
)
def test_days_since_the_earlier_job(days: int | None, expected: tuple[int, ...]) -> None:
    dates = {} if days is None else {"earlier": DAY - datetime.timedelta(days=days)}
    history = counted(job("pass", callback_of="earlier", callback_cause="crimp"), **dates)
    (found,) = history.callbacks
    assert (found.cause, found.n) == ("crimp", 1)
    assert (found.soon, found.later, found.after, found.not_known) == expected


def test_callbacks_by_cause_with_the_most_frequent_first() -> None:
    causes = ("crimp", "part", "crimp", "Part")
    history = counted(
        *(job("pass", callback_of="a neighbour's word", callback_cause=c) for c in causes),
        *(job("pass", callback_of="earlier") for _ in range(3)),
        job("pass", callback_cause="crimp"),
        job("pass"),
    )
    assert [(c.cause, c.n) for c in history.callbacks] == [
        *(("crimp", 3), ("Part", 2)),
        (None, 3),
    ]
    assert "Callbacks: 8 of 9 jobs" in history_text(history)


def test_what_is_missing_is_counted_once_a_job() -> None:
    unknown = ("ambient", None, "unknown")
    history = counted(
        job("cannot tell", check("cannot tell", unknown), check("cannot tell", unknown)),
        job("pass", not_tested=[("insulation", True), ("insulation", False)]),
        job("pass", not_tested=[("insulation", False), ("ambient", False)]),
    )
    assert history.missing == [
        ("insulation", "not tested", 2, 1),
        ("ambient", "not tested", 1, 0),
        ("ambient", "said unknown", 1, 0),
    ]


def test_small_groups_are_marked_and_no_share_is_shown_without_its_number() -> None:
    history = counted(
        *(job("pass", technician="ann") for _ in range(5)),
        *(job("pass", technician="bo") for _ in range(4)),
    )
    few = {g["name"]: (g["n"], g["too_few"]) for g in history_object(history)["by_technician"]}
    assert few == {"ann": (5, False), "bo": (4, True)}
    text = history_text(history)
    assert [line.split() for line in text.splitlines() if line.startswith(("  ann", "  bo"))] == [
        ["ann", "5", "5", "0", "0", "0"],
        ["bo", "4", "4", "0", "0", "0", "too", "few"],
    ]
    assert "%" not in text


def test_text_keeps_to_80_columns_and_moves_no_cursor() -> None:
    name = "\x1b[2J" + "a long name of a person " * 9
    cause = dict.fromkeys(("technician", "callback_cause", "callback_of"), name)
    one = job("pass", check(None, tool="t" * 200), not_tested=[(name, True)], **cause)
    history = counted(*[one] * 1234)
    history.refuse("x\n\x1b" + "y" * 300, "is\x07 wrong " * 30)
    text = history_text(history)
    assert max(map(len, text.splitlines())) <= 80
    assert text.replace("\n", "").isprintable()


def test_order_of_the_records_does_not_matter() -> None:
    jobs = [job(v, technician=t) for v in ("pass", "fail") for t in ("b", "a", "c")]
    assert history_object(counted(*jobs)) == history_object(counted(*reversed(jobs)))


@pytest.mark.parametrize(
    "damage",
    [
        {"verdict": "safe"},
        {"verdict": None},
        {"checks": None},
        {"checks": ["x"]},
        {"checks": [{"stage": "as left"}]},
        {"checks": [{"stage": "as left", "finding": {"verdict": "ok"}}]},
        {"checks": [{"stage": "as left", "finding": {"inputs": [{}]}}]},
        {"not_tested": [{"name": "x"}]},
        {"about": "x"},
    ],
    ids=str,
)
def test_a_job_that_is_none_is_refused_whole(damage: dict[str, Any]) -> None:
    with pytest.raises(BadText, match="a field of its job is missing or wrong"):
        facts({**job("pass"), **damage})
