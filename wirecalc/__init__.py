"""wirecalc: electrical-safety and wiring-repair calculations with sources and cautions.

    >>> import wirecalc
    >>> finding = wirecalc.run("pull", wire="18 AWG", terminal="ring", force="24 lbf")
    >>> str(finding.verdict)
    'pass'

The names below are the public ones: what a script or a plugin may use. `tables` is the module that
reads published tables and those of a shop.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from . import tables
from .criteria import (
    Criterion,
    Origin,
    Verdict,
    at_least,
    at_most,
    at_or_below,
    cannot_tell,
    requires,
)
from .declaration import Bands, Calculation, calculation
from .errors import (
    BadInput,
    BadText,
    DeclarationError,
    PluginDefect,
    Problem,
    TableError,
    WirecalcError,
)
from .findings import Finding
from .hooks import API_VERSION, hookimpl
from .host import Catalogue, build
from .items import Caution, Item, answer, caution, chart, figure, listing, not_checked
from .left_out import LeftOut, asked, assumed, extra, instead_of, may_be_absent, setting
from .offers import Deferred, deferred
from .provided import HouseRule
from .quantity_kinds import Count, Nameplate, Reading
from .requirements import RequiredChecks
from .rounding import put
from .size_ranges import SizeRange
from .sources import MAKER, PLATE, PRACTICE, Confidence, Source
from .wires import Wire
from .word_kinds import OneOf, Words, YesNo

__all__ = [
    "API_VERSION",
    "MAKER",
    "PLATE",
    "PRACTICE",
    "BadInput",
    "BadText",
    "Bands",
    "Calculation",
    "Catalogue",
    "Caution",
    "Confidence",
    "Count",
    "Criterion",
    "DeclarationError",
    "Deferred",
    "FileColumns",
    "Finding",
    "HouseRule",
    "Item",
    "LeftOut",
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
    "at_or_below",
    "build",
    "calculation",
    "cannot_tell",
    "caution",
    "chart",
    "deferred",
    "extra",
    "figure",
    "hookimpl",
    "instead_of",
    "listing",
    "may_be_absent",
    "not_checked",
    "put",
    "requires",
    "run",
    "setting",
    "tables",
]

if TYPE_CHECKING:
    from .readings_file import FileColumns, ReadingsFile
    from .readings_stream import ReadingsStream, RecordedColumns

_catalogue: Catalogue | None = None
_LATER = {  # kinds of few calculations: loaded when a plugin asks for them
    "FileColumns": "readings_file",
    "ReadingsFile": "readings_file",
    "ReadingsStream": "readings_stream",
    "RecordedColumns": "readings_stream",
}


def __getattr__(name: str) -> Any:
    """Load what few plugins ask for."""
    if name not in _LATER:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    import importlib

    return getattr(importlib.import_module(f".{_LATER[name]}", __name__), name)


def run(calculation_name: str, /, **given: object) -> Finding:
    """Run a calculation by its name, with inputs as they would be typed.

    Quantities are texts with a unit ("23.4 lbf"); counts may be numbers, yes/no may be booleans,
    lists are lists of these. Plugins are loaded once in a process.

    Raises BadInput with everything that is wrong with the inputs, or for an unknown name, and
    PluginDefect where the calculation itself fails.
    """
    global _catalogue
    if _catalogue is None:
        _catalogue = build()
    return _catalogue.run(calculation_name, given)
