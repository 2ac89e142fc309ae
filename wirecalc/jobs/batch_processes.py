"""The rows of a batch worked out by several processes, in the order of the file.

Rows are taken in blocks. What a block has that no block before it had goes to a process; what the
others came to is known here. So each distinct row is worked out once, no more than a few blocks
are in memory, and what comes out is what one process would have given.
"""

from __future__ import annotations

import multiprocessing
import os
import signal
import threading
from collections import deque
from collections.abc import Callable, Iterable, Iterator, Sequence
from concurrent.futures import Executor, Future, ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from itertools import islice
from typing import Any, NamedTuple

from ..base.errors import PluginDefect, Problem
from .batch import Cells, Worker, picker, remember, result
from .batch_row import Found, RowResult
from .batch_rows import RawRow

BLOCK = 500  # rows
AHEAD = 3  # blocks a process that are read and not yet printed
Start = Callable[..., Worker[Any]]  # a function of a module, so that another process finds it

_mine: Worker[Any]


class _Block(NamedTuple):
    """Rows, the cells of each (None where it cannot be used), and what is worked out of them."""

    rows: Sequence[RawRow]
    cells: Sequence[Cells | None]
    new: Sequence[Cells]
    found: Future[list[Found]] | None


def results_of(
    processes: int,
    start: Start,
    asked: Sequence[object],
    worker: Worker[Any],
    rows: Iterable[RawRow],
) -> Iterator[RowResult]:
    """Yield what each row comes to, as `results` does; each process makes `start(*asked)`.

    Raises PluginDefect where a process ended before its work was done.
    """
    pool = ProcessPoolExecutor(processes, initializer=_begin, initargs=(start, asked))
    try:
        yield from in_blocks(pool, processes * AHEAD, worker, rows)
    except BrokenProcessPool:
        wrong = "a process ended before its rows were done, or could not begin"
        raise PluginDefect(f"{wrong}; run it with --jobs 1") from None
    finally:
        pool.shutdown(wait=True, cancel_futures=True)


def in_blocks(
    pool: Executor, ahead: int, worker: Worker[Any], rows: Iterable[RawRow]
) -> Iterator[RowResult]:
    """Yield what each row comes to; so many blocks are worked out ahead of what is printed."""
    pick, source = picker(worker.planned), iter(rows)
    known: dict[Cells, Found] = {}
    asked: set[Cells] = set()
    waiting: deque[_Block] = deque()
    while block := list(islice(source, BLOCK)):
        cells = [None if row.wrong else pick(row.cells) for row in block]
        new = [
            c for c in dict.fromkeys(cells) if c is not None and c not in known and c not in asked
        ]
        asked.update(new)
        found = pool.submit(_work, new) if new else None
        waiting.append(_Block(block, cells, new, found))
        if len(waiting) > ahead:
            yield from _done(waiting.popleft(), known, asked, worker)
    while waiting:
        yield from _done(waiting.popleft(), known, asked, worker)


def _done(
    block: _Block, known: dict[Cells, Found], asked: set[Cells], worker: Worker[Any]
) -> Iterator[RowResult]:
    here = dict(zip(block.new, block.found.result(), strict=True)) if block.found else {}
    asked.difference_update(here)
    for row, cells in zip(block.rows, block.cells, strict=True):
        if cells is None:
            yield result(worker.planned, row, Found(problems=(Problem("", row.wrong),)))
            continue
        found = known.get(cells)
        if found is None:
            found = here[cells] if cells in here else worker.work(cells)  # forgotten since
            remember(known, cells, found, worker)
        yield result(worker.planned, row, found)


def _begin(start: Start, asked: Sequence[object]) -> None:
    global _mine
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # who asked for the rows ends this
    threading.Thread(target=_end_with_parent, daemon=True).start()
    _mine = start(*asked)


def _end_with_parent() -> None:
    """End this process when the one that asked for it has ended, however that was."""
    parent = multiprocessing.parent_process()
    if parent is not None:
        parent.join()
        os._exit(1)


def _work(cells: Sequence[Cells]) -> list[Found]:
    return [_mine.work(of_one) for of_one in cells]
