"""What hypothesis draws for a calculation: any text, and what may be typed for its inputs."""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st

from ..engine.declaration import Calculation
from ..engine.example_variants import choices
from ..engine.inputs import Input
from ..typed.counts import Count
from ..typed.quantity_kinds import QuantityKind

__all__ = ["NASTY", "plausible", "texts", "typed"]

STEPS = 1000  # of a span, one as likely as another
PLACES = 6  # behind the point, of a number that is drawn
NASTY = (  # texts that nobody means, or that could be read as something else than is meant
    *("", " ", "\0", "18 AWG\0", "9" * 5000, "x" * 5000, "±" * 81, "⚡🔌 A", "nan", "nan A", "inf"),
    *("-inf A", "9**9**9", "9**9**9 A", "__import__('os').getcwd() A", "1e400 A", "1e5 A", "٣ A"),
    *("1,5 A", "±", "1 A ±", "± 3%", "1 A ±(2%+)", "1 A ±(2%+5", "1 A ±100%", "1/0 A", "0/0 in"),
    *("1 A ±1/0 A", "-", "--", "-1", "-18C", "−5 lbf", "unknown", "UNKNOWN ", "yes", "no", "\\"),
    *(
        "%s %d %(prog)s {0}",
        "\n",
        "a\nb\tc\r",
        "\x1b[31m",
        "\ud800",
        "\u202e18 AWG",
        "0 A",
        "0 AWG",
    ),
    *("0x30 AWG", "99999x40 AWG", "14-16 AWG", "1.5.2-3 mm2", "1" + "0" * 70 + " lbf"),
    *("1 A ±" + "9" * 70 + " A", "0." + "0" * 70 + "1 mm", "80 F", "1000 K"),
)


def texts() -> st.SearchStrategy[str]:
    """Return any text that somebody could type, nasty ones among them."""
    return st.text(max_size=90) | st.sampled_from(NASTY)


def typed(calc: Calculation[Any], *also: str) -> st.SearchStrategy[dict[str, Any]]:
    """Return what may be typed for a calculation: its needed inputs, and others or not.

    `also` names inputs that are always among them. A file is that of its example.
    """
    needed = {i.name: plausible(i) for i in calc.inputs if i.required or i.name in also}
    other = {i.name: plausible(i) for i in calc.inputs if i.name not in needed}
    files = {i.name for i in calc.inputs if i.kind.of_file and not i.required}
    other = {name: one for name, one in other.items() if name not in files}
    return st.fixed_dictionaries(needed, optional=other).map(lambda drawn: _whole(calc, drawn))


def plausible(declared: Input) -> st.SearchStrategy[Any]:
    """Return what may be typed for an input: over its span, its words, its example."""
    one = _one(declared)
    return st.lists(one, min_size=1, max_size=3) if declared.many else one


def _one(declared: Input) -> st.SearchStrategy[Any]:
    kind = declared.kind
    if isinstance(kind, QuantityKind):
        return _quantity(kind)
    if isinstance(kind, Count):
        return st.integers(kind.low, min(kind.high, kind.low + 20)).map(str)
    if words := choices(declared):
        return st.sampled_from(words)
    return st.sampled_from(kind.example.split("; "))


def _quantity(kind: QuantityKind) -> st.SearchStrategy[str]:
    """Return numbers with their unit, over the span and near the example."""
    centre = kind.read(kind.example).value or 1.0
    low = kind.above if kind.above is not None else kind.low
    low = -2 * abs(centre) if low is None else low
    high = max(low, 3 * abs(centre)) if kind.high is None else kind.high
    over = st.integers(0, STEPS).map(lambda step: low + step / STEPS * (high - low))
    values = over | st.integers(30, 300).map(lambda percent: percent / 100 * centre)
    inside = values.map(lambda v: round(v, PLACES)).filter(kind.inside)
    return inside.map(lambda v: f"{v:.{PLACES}f} {kind.unit}")


def _whole(calc: Calculation[Any], drawn: dict[str, Any]) -> dict[str, Any]:
    """Drop what means nothing without an input that was not drawn."""
    goes_with = {i.name: i.kind.goes_with for i in calc.inputs}
    return {n: v for n, v in drawn.items() if not goes_with[n] or goes_with[n] in drawn}
