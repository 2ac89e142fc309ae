"""What a script calls: a calculation by its name, on one set of inputs, on many, or backwards."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import TYPE_CHECKING

from .base.errors import BadInput, PluginDefect
from .plugging.host import Catalogue, build
from .said.findings import Finding

if TYPE_CHECKING:
    import pyarrow

    from .engine.sought.seeking import Sought, SoughtTable

_catalogue: Catalogue | None = None


def run(calculation_name: str, /, **given: object) -> Finding:
    """Run a calculation by its name, with inputs as they would be typed.

    Quantities are texts with a unit ("23.4 lbf"); counts may be numbers, yes/no may be booleans,
    lists are lists of these. Plugins are loaded once in a process.

    Raises BadInput with everything that is wrong with the inputs, or for an unknown name, and
    PluginDefect where the calculation itself fails.
    """
    return _loaded().run(calculation_name, given)


def run_many(
    calculation_name: str, rows: Iterable[Mapping[str, object]], /
) -> Iterator[Finding | BadInput | PluginDefect]:
    """Run a calculation on each row, lazily: a mapping of its inputs, as `run` takes them.

    Yields a finding a row, in their order. For a row that is refused, or on which the calculation
    fails, the BadInput or PluginDefect is yielded and not raised, so that the rest goes on. Of
    rows that give the same texts one is worked out. Raises BadInput for an unknown name.
    """
    from .jobs.many_runs import runs

    loaded = _loaded()
    return runs(loaded.find(calculation_name).calculation, loaded.runner(calculation_name), rows)


def evaluate(
    frame: object, calculation_name: str, /, *, keep: Iterable[str] = (), **shared: object
) -> pyarrow.Table:
    """Run a calculation on each row of a data frame: of pandas, polars, Arrow or the like.

    Its columns are those of a batch; `keep` names those that are no inputs, `shared` has inputs of
    all rows. Yields an Arrow table: the frame, and behind it verdict, criterion, actual, limit,
    unit, margin, reason and next; of a row that is refused, why. Raises BadInput for wrong columns.
    """
    from .output.frames import evaluated

    return evaluated(_loaded(), frame, calculation_name, shared, tuple(keep))


def seek(
    calculation_name: str,
    /,
    *sought: str,
    target: str = "",
    target_alone: bool = False,
    **given: object,
) -> Sought | SoughtTable:
    """Find what an input would have to be, or two as a table: the spans of its values by verdict.

    `sought` names the inputs, `given` has the others as they would be typed; an input among them
    may say more of what to try, as `run_length="sought 10 to 200 ft"`. `target` asks for a figure
    beside the criteria, or alone: "volts lost <= 3 V". Raises what `run` does.
    """
    seeker = _loaded().seeker(calculation_name, target=target, criteria=not target_alone)
    return seeker.seek({**dict.fromkeys(sought, "sought"), **given})


def _loaded() -> Catalogue:
    global _catalogue
    if _catalogue is None:
        _catalogue = build()
    return _catalogue
