"""A name in a rules file that is a slip of the pen: no example of its calculation has it.

A rule that may be left unjudged (`optional`) would be lost with it, in silence.
"""

from __future__ import annotations

import contextlib
import inspect
import sys
from collections.abc import Sequence
from typing import Any

from ..base.errors import BadInput, PluginDefect, nearest
from ..engine.declaration import Calculation
from ..engine.example_variants import variants
from ..engine.from_plugins import ProvidedCalculation
from ..engine.running import run

_ALIKE = 0.8  # how like another a name must be to be taken for it, mistyped


def meant_by(wanted: str, seen: Sequence[str], calc: Calculation[Any]) -> str:
    """Return the name of those `seen` that a mistyped one stands for; empty where it is no slip."""
    if wanted in seen or _in_source(wanted, calc):
        return ""
    return nearest(wanted, seen, alike=_ALIKE)


def names_of(calc: Calculation[Any], what: str) -> list[str]:
    """Return the names of the criteria, or of each `figure`, of the examples of a calculation."""
    seen: dict[str, None] = {}
    provided = ProvidedCalculation("", "", calc)
    for given in variants(calc):
        with contextlib.suppress(BadInput, PluginDefect):
            found = run(provided, given)
            figures = [f.figure.name for f in found.figures]
            criteria = [c.criterion.name for c in found.criteria]
            seen.update(dict.fromkeys(figures if what == "figure" else criteria))
    return list(seen)


def _in_source(name: str, calc: Calculation[Any]) -> bool:
    """Whether a text stands in the module of a calculation; a slip stands nowhere there."""
    try:
        return name in inspect.getsource(sys.modules[calc.function.__module__])
    except (KeyError, OSError, TypeError):
        return True  # nobody can say
