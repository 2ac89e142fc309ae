"""Rows worked out by several processes come out as by one; here the processes are threads."""

from __future__ import annotations

from collections.abc import Iterator
from concurrent.futures import Executor, Future
from typing import Any

import pytest

import wirecalc
from wirecalc.jobs import batch, batch_columns, batch_processes
from wirecalc.jobs.batch_row import NOTHING, RowResult
from wirecalc.jobs.batch_rows import RawRow
from wirecalc.output.batch import Form
from wirecalc.output.batch_summary import InCommon

CATALOGUE = wirecalc.build(bundled_only=True)
HEAD = ["wire", "terminal", "force"]


class AtOnce(Executor):
    """A pool that works at once, and counts what it was given."""

    def __init__(self) -> None:
        self.given: list[Any] = []

    def submit(self, fn: Any, /, *args: Any, **kwargs: Any) -> Future[Any]:
        self.given += args[0]
        done: Future[Any] = Future()
        done.set_result(fn(*args, **kwargs))
        return done


def worker(most: int = batch.MOST_ROWS) -> batch.Worker[Any]:
    planned = batch_columns.plan(CATALOGUE.find("pull").calculation, HEAD, {})
    run = CATALOGUE.outcomes("pull", origin="sheet")
    return batch.Worker(run, planned, Form("text").make, gather=True, most=most)


def rows(count: int, different: int) -> Iterator[RawRow]:
    for n in range(2, count + 2):
        wrong = "the row has 1 cell" if n % 7 == 0 else ""
        wire = ("18 AWG", "16 AWG", "unknown", "20 AWGG")[n % 4]
        yield RawRow(n, [wire, "ring", f"{15 + n % different} lbf"], wrong)


def said(found: Iterator[RowResult]) -> tuple[list[RowResult], Any]:
    """What the rows came to, and apart from them what they had in common."""
    common = InCommon()
    each = [row._replace(found=row.found._replace(common=NOTHING)) for row in common.watch(found)]
    return each, (common.cautions, common.not_checked, common.sources, common.limits)


@pytest.mark.parametrize("most", [batch.MOST_ROWS, 5])
def test_what_comes_out_is_what_one_process_gives(
    monkeypatch: pytest.MonkeyPatch, most: int
) -> None:
    monkeypatch.setattr(batch_processes, "BLOCK", 10)
    monkeypatch.setattr(batch_processes, "_mine", worker(), raising=False)
    alone = said(batch.results(worker(most), rows(200, 9)))
    pool = AtOnce()
    assert said(batch_processes.in_blocks(pool, 3, worker(most), rows(200, 9))) == alone
    if most > 5:
        assert len(pool.given) == len(set(pool.given))  # each distinct row once


def test_no_more_than_some_blocks_are_read_ahead(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(batch_processes, "BLOCK", 10)
    monkeypatch.setattr(batch_processes, "_mine", worker(), raising=False)
    read: list[int] = []

    def watched() -> Iterator[RawRow]:
        for row in rows(1_000, 9):
            read.append(row.number)
            yield row

    found = batch_processes.in_blocks(AtOnce(), 3, worker(), watched())
    assert next(found).row == 2
    assert len(read) == 40
