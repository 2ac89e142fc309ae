"""A calculation that is imported when it is asked for.

    @hookimpl
    def wirecalc_calculations():
        return [deferred("my_shop.lift:lift_motor", part="motor", question="Does it lift?")]

A plugin with many calculations, or with slow imports, offers them so: the listing and every other
calculation then cost none of its imports.
"""

from __future__ import annotations

import importlib
from typing import Any, NamedTuple

from ..base.errors import DeclarationError
from .declaration import Calculation
from .reserved import check_name


class Deferred(NamedTuple):
    """Where a calculation is, and what a listing says of it."""

    target: str
    part: str
    question: str

    @property
    def name(self) -> str:
        """The name on the command line, from that of the function."""
        return self.target.partition(":")[2].strip("_").replace("_", "-")

    def load(self) -> Calculation[Any]:
        """Import it; raises DeclarationError where something else is found, and what it raises."""
        module, _, function = self.target.partition(":")
        found = getattr(importlib.import_module(module), function, None)
        if not isinstance(found, Calculation):
            raise DeclarationError(f"{self.target} is no calculation")
        if (found.name, found.part, found.question) != (self.name, self.part, self.question):
            raise DeclarationError(f"{self.target} has another name, part or question there")
        return found


def deferred(target: str, *, part: str, question: str) -> Deferred:
    """Offer a calculation by where it is: its `target` is "module:function".

    `part` and `question` are those that it declares itself; a listing shows them. Raises
    DeclarationError for a target without a colon, an empty text, or a name that will not do.
    """
    offered = Deferred(target, part, question)
    if not all(isinstance(text, str) and text for text in offered) or ":" not in target:
        raise DeclarationError(f"{target!r}: write module:function, a part and a question")
    check_name(offered.name)
    return offered
