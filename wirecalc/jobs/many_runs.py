"""Many runs of a calculation in a script: one after another, as they are asked for."""

from __future__ import annotations

import functools
from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Any

from ..base.errors import BadInput, PluginDefect
from ..engine.declaration import Calculation
from ..said.findings import Finding

MOST_ROWS = 4_000  # distinct rows whose findings are remembered
Runner = Callable[[Mapping[str, object]], Finding]


def runs(
    calculation: Calculation[Any], run: Runner, rows: Iterable[Mapping[str, object]]
) -> Iterator[Finding | BadInput | PluginDefect]:
    """Yield what each row comes to; a row that was there before is not worked out again.

    A file is read each time, since it may have changed.
    """
    files = {i.name for i in calculation.inputs if i.kind.of_file}
    known = functools.lru_cache(MOST_ROWS)(lambda given: _one(run, dict(given)))
    for row in rows:
        texts = all(type(value) is str for value in row.values())
        if texts and files.isdisjoint(row):
            yield known(tuple(row.items()))
        else:
            yield _one(run, row)


def _one(run: Runner, given: Mapping[str, object]) -> Finding | BadInput | PluginDefect:
    try:
        return run(given)
    except (BadInput, PluginDefect) as error:
        return error.with_traceback(None)
