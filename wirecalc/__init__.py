"""wirecalc: electrical-safety and wiring-repair calculations with sources and cautions.

    >>> import wirecalc
    >>> finding = wirecalc.run("pull", wire="18 AWG", terminal="ring", force="24 lbf")
    >>> str(finding.verdict)
    'pass'

The names below are the public ones: what a script or a plugin may use. `tables` is the module that
reads published tables and those of a shop, `charts` has what a chart is made of; the arithmetic of
the trade that calculations share is in `wirecalc.trade`.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import TYPE_CHECKING, Any

from .base.errors import (
    BadInput,
    BadText,
    DeclarationError,
    PluginDefect,
    Problem,
    TableError,
    WirecalcError,
)
from .base.rounding import put, show, show_band
from .engine.declaration import Bands, Calculation, calculation
from .engine.deferred_calculation import Deferred, deferred
from .engine.from_plugins import HouseRule
from .engine.left_out import LeftOut, asked, assumed, extra, instead_of, may_be_absent, setting
from .plugging.hooks import API_VERSION, hookimpl
from .plugging.host import Catalogue, build
from .published import tables
from .published.sources import (
    MAKER,
    PLATE,
    PRACTICE,
    Confidence,
    Source,
    computed,
    confirmed,
    from_memory,
)
from .rules.requirements import RequiredChecks
from .said import charts
from .said.criteria import Criterion, Origin, at_least, at_most, cannot_tell, requires
from .said.findings import Finding
from .said.items import (
    Answer,
    Caution,
    Figure,
    Item,
    answer,
    caution,
    chart,
    figure,
    listing,
    not_checked,
)
from .said.verdicts import Verdict, at_or_above, at_or_below
from .typed.counts import Count
from .typed.own_units import declare_unit
from .typed.quantity_kinds import Nameplate, Reading
from .typed.size_ranges import SizeRange, read_size_range
from .typed.wires import CMIL_PER_MM2, GAUGES, Wire, gauge_cmil, gauge_number, read_wire
from .typed.word_kinds import OneOf, Words, YesNo

__all__ = [
    "API_VERSION",
    "CMIL_PER_MM2",
    "GAUGES",
    "MAKER",
    "PLATE",
    "PRACTICE",
    "Answer",
    "BadInput",
    "BadText",
    "Bands",
    "Calculation",
    "Case",
    "Catalogue",
    "Caution",
    "Confidence",
    "Count",
    "Criterion",
    "DeclarationError",
    "Deferred",
    "Drawn",
    "Exercise",
    "Figure",
    "FileColumns",
    "Finding",
    "HouseRule",
    "Item",
    "LeftOut",
    "Luck",
    "Nameplate",
    "OneOf",
    "Origin",
    "PluginDefect",
    "Problem",
    "Reading",
    "ReadingsFile",
    "ReadingsStream",
    "RecordedColumns",
    "RequiredChecks",
    "SizeRange",
    "Slip",
    "Source",
    "TableError",
    "Verdict",
    "Wire",
    "WirecalcError",
    "Words",
    "YesNo",
    "answer",
    "asked",
    "assumed",
    "at_least",
    "at_most",
    "at_or_above",
    "at_or_below",
    "build",
    "calculation",
    "cannot_tell",
    "caution",
    "chart",
    "charts",
    "computed",
    "confirmed",
    "declare_unit",
    "deferred",
    "evaluate",
    "extra",
    "figure",
    "from_memory",
    "gauge_cmil",
    "gauge_number",
    "hookimpl",
    "instead_of",
    "listing",
    "may_be_absent",
    "not_checked",
    "put",
    "read_size_range",
    "read_wire",
    "requires",
    "run",
    "run_many",
    "seek",
    "setting",
    "show",
    "show_band",
    "tables",
]

if TYPE_CHECKING:
    import pyarrow

    from .engine.exercises import Case, Drawn, Exercise, Luck, Slip
    from .engine.sought.seeking import Sought, SoughtTable
    from .recorded.files import FileColumns, ReadingsFile
    from .recorded.stream import ReadingsStream, RecordedColumns

_catalogue: Catalogue | None = None
_LATER = {  # of few calculations: loaded when a plugin asks for them
    **dict.fromkeys(("Case", "Drawn", "Exercise", "Luck", "Slip"), "engine.exercises"),
    "FileColumns": "recorded.files",
    "ReadingsFile": "recorded.files",
    "ReadingsStream": "recorded.stream",
    "RecordedColumns": "recorded.stream",
}


def __getattr__(name: str) -> Any:
    """Load what few plugins ask for."""
    import importlib
    import sys

    if name not in _LATER:
        wrong = f"module {__name__!r} has no attribute {name!r}"
        raise AttributeError(wrong, name=name, obj=sys.modules[__name__])
    return getattr(importlib.import_module(f".{_LATER[name]}", __name__), name)


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
