"""Small changes that matter in a calculation and that Cosmic Ray does not make by itself."""

from __future__ import annotations

import re
from collections.abc import Iterator
from decimal import Decimal
from typing import Any

from cosmic_ray import plugins
from cosmic_ray.ast import is_number
from cosmic_ray.operators.operator import Example, Operator
from parso.python.tree import Keyword, Name, Number

_DECIMAL = re.compile(r"\d*\.\d+")
_YIELDED = re.compile(r"\s*yield (caution|not_checked)\(")
_DECLARED = ("cautions", "not_checked")


class LastDigit(Operator):
    """A decimal by one in its last digit: the smallest step that a person could type."""

    def mutation_positions(self, node: Any) -> Iterator[Any]:
        """Yield up and down."""
        if is_number(node) and _DECIMAL.fullmatch(node.value):
            for _ in "+-":
                yield node.start_pos, node.end_pos

    def mutate(self, node: Any, index: int) -> Any:
        """Return the number beside it."""
        value = Decimal(node.value)
        step = Decimal(1).scaleb(int(value.as_tuple().exponent))
        return Number(f" {value - step if index else value + step}", node.start_pos)

    @classmethod
    def examples(cls) -> tuple[Example, ...]:
        """Return one each way."""
        return Example("x = 0.3", "x = 0.4"), Example("x = 0.30", "x = 0.29", occurrence=1)


class SaidNoMore(Operator):
    """A caution, or what is not checked, that is not yielded or not declared any more."""

    def mutation_positions(self, node: Any) -> Iterator[Any]:
        """Yield one for each."""
        if self._is_yielded(node) or self._is_declared(node):
            yield node.start_pos, node.end_pos

    def mutate(self, node: Any, index: int) -> Any:
        """Return nothing in its place."""
        if node.type == "string":
            return Name("*()", node.start_pos, prefix=node.prefix)
        return Keyword("pass", node.start_pos, prefix=node.get_first_leaf().prefix)

    @staticmethod
    def _is_yielded(node: Any) -> bool:
        return node.type == "yield_expr" and bool(_YIELDED.match(node.get_code()))

    @staticmethod
    def _is_declared(node: Any) -> bool:
        listed = node.parent if node.type == "string" else None
        while listed is not None and listed.type in ("testlist_comp", "atom"):
            listed = listed.parent
        return (
            listed is not None
            and listed.type == "argument"
            and listed.children[0].value in _DECLARED
        )

    @classmethod
    def examples(cls) -> tuple[Example, ...]:
        """Return one of each."""
        declared = Example('f(cautions=("a", "b"))', 'f(cautions=(*(), "b"))')
        return Example('yield caution("a")', "pass"), declared


OPERATORS = {"last-digit": LastDigit, "said-no-more": SaidNoMore}


def register() -> None:
    """Have these beside Cosmic Ray's own, under `trade/`."""
    plugins.OPERATOR_PROVIDERS["trade"] = OPERATORS
