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

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
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
    from .calls import evaluate, run, run_many, seek
    from .engine.declaration import Bands, Calculation, calculation
    from .engine.deferred_calculation import Deferred, deferred
    from .engine.exercises import Case, Drawn, Exercise, Luck, Slip
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
    from .recorded.files import FileColumns, ReadingsFile
    from .recorded.stream import ReadingsStream, RecordedColumns
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

# Loaded when it is asked for, so that a process starts with no more than it uses.
_MODULES = {"charts": "said.charts", "tables": "published.tables"}
_NAMES = {  # of a module: what of it is public
    "base.errors": (
        "BadInput BadText DeclarationError PluginDefect Problem TableError WirecalcError"
    ),
    "base.rounding": "put show show_band",
    "calls": "evaluate run run_many seek",
    "engine.declaration": "Bands Calculation calculation",
    "engine.deferred_calculation": "Deferred deferred",
    "engine.exercises": "Case Drawn Exercise Luck Slip",
    "engine.from_plugins": "HouseRule",
    "engine.left_out": "LeftOut asked assumed extra instead_of may_be_absent setting",
    "plugging.hooks": "API_VERSION hookimpl",
    "plugging.host": "Catalogue build",
    "published.sources": "Confidence MAKER PLATE PRACTICE Source computed confirmed from_memory",
    "recorded.files": "FileColumns ReadingsFile",
    "recorded.stream": "ReadingsStream RecordedColumns",
    "rules.requirements": "RequiredChecks",
    "said.criteria": "Criterion Origin at_least at_most cannot_tell requires",
    "said.findings": "Finding",
    "said.items": "Answer Caution Figure Item answer caution chart figure listing not_checked",
    "said.verdicts": "Verdict at_or_above at_or_below",
    "typed.counts": "Count",
    "typed.own_units": "declare_unit",
    "typed.quantity_kinds": "Nameplate Reading",
    "typed.size_ranges": "SizeRange read_size_range",
    "typed.wires": "CMIL_PER_MM2 GAUGES Wire gauge_cmil gauge_number read_wire",
    "typed.word_kinds": "OneOf Words YesNo",
}
_MODULE_OF = {name: module for module, names in _NAMES.items() for name in names.split()}


if not TYPE_CHECKING:  # a type checker knows the names from above, and no others

    def __getattr__(name: str) -> Any:
        """Load a public name from the module that has it."""
        import importlib

        if name in _MODULES:
            return importlib.import_module(f".{_MODULES[name]}", __name__)
        if name not in _MODULE_OF:
            import sys

            wrong = f"module {__name__!r} has no attribute {name!r}"
            raise AttributeError(wrong, name=name, obj=sys.modules[__name__])
        value = getattr(importlib.import_module(f".{_MODULE_OF[name]}", __name__), name)
        globals()[name] = value  # asked for once
        return value

    def __dir__() -> list[str]:
        return sorted({*globals(), *__all__})
