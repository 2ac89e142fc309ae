"""Which values of a quantity are tried where it is sought."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ..base.errors import BadText
from .quantities import read_number
from .trials import Ladder, Request, Scale
from .units import converter, read_unit

if TYPE_CHECKING:
    from .quantity_kinds import QuantityKind


def trials_of(kind: QuantityKind, request: Request) -> Ladder | Scale:
    """Return the steps that are sold or standard, else the span; raises BadText."""
    if not request.high and kind.high is None:
        raise BadText("has no end to try up to", f"say how far: sought 1 to 100 {kind.unit}")
    scale = _asked_span(kind, request) if request.high else _whole_span(kind, request.unit)
    steps = kind.steps() if callable(kind.steps) else kind.steps
    if steps and not request.error:
        inside = tuple(text for text in steps if _is_inside(text, scale, kind))
        if inside:
            return Ladder(inside)
    step = _last_digit(request.step, scale.unit, kind.dimension) if request.step else None
    behind = f"±{request.error}" if request.error else f"by {request.by}" if request.by else ""
    return scale._replace(behind=behind, step=step)


def _is_inside(text: str, scale: Scale, kind: QuantityKind) -> bool:
    number, word = read_number(text)
    value = _converted(number.value, read_unit(word, kind.dimension), scale.unit, kind.dimension)
    return scale.low <= value <= scale.high


def _whole_span(kind: QuantityKind, typed: str) -> Scale:
    unit = read_unit(typed, kind.dimension) if typed else kind.unit
    low = kind.above if kind.above is not None else kind.low
    ends = (low or 0.0, kind.high or 0.0)
    low, high = (_converted(v, kind.unit, unit, kind.dimension) for v in ends)
    return Scale(low, high, unit, above=kind.excludes(ends[0]))


def _asked_span(kind: QuantityKind, request: Request) -> Scale:
    end, word = read_number(request.high)
    if not word:
        raise BadText(f"{request.high!r} has no unit", f"write {request.high} {kind.unit}")
    unit = read_unit(word, kind.dimension)
    start, word = read_number(request.low)
    typed = read_unit(word, kind.dimension) if word else unit
    low, high = _converted(start.value, typed, unit, kind.dimension), end.value
    whole = _whole_span(kind, unit)
    if not whole.low <= low < high <= whole.high:
        wrong = f"{request.low} to {request.high} is no span within {kind.span}"
        raise BadText(wrong, "the smaller value first")
    return Scale(low, high, unit, above=whole.above and low <= whole.low)


def _last_digit(text: str, unit: str, dimension: str) -> float:
    number, word = read_number(text)
    if dimension == "temperature":  # a step of it is a difference
        dimension, unit = "temperature difference", "F" if unit == "F" else "K"
    step = _converted(number.value, read_unit(word, dimension), unit, dimension)
    if step <= 0:
        raise BadText(f"{text!r} is no digit of a display", "such as 0.1")
    return step


def _converted(value: float, unit: str, to: str, dimension: str) -> float:
    return value if unit == to else converter(unit, to, dimension)(value)
