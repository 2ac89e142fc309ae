"""The picture of what was sought: a strip by verdict, or of two inputs a map."""

from __future__ import annotations

from collections.abc import Sequence

from ..engine.sought.seeking import Sought, SoughtTable
from ..engine.sought.spans import Span
from ..engine.sought.words import edges, span_words, verdict_words
from ..said.charts import Axis, Chart, Line, Points

LEVELS = ("refused", "fail", "cannot tell", "marginal", "pass")  # from below
_WIDE = 100  # times the least value: from here on the axis goes by ratio


def sought_chart(found: Sought | SoughtTable) -> Chart:
    """Return the chart of what was sought."""
    return _map(found) if isinstance(found, SoughtTable) else _strip(found)


def _strip(found: Sought) -> Chart:
    words = "; ".join(f"{span_words(found, s)}: {verdict_words(found, s)}" for s in found.spans)
    y = Axis("verdict", marks=tuple(_marks()), span=(-0.5, len(LEVELS) - 0.3))
    title = f"{found.calculation} by {found.input}"
    if not found.unit:
        texts = [(text, _level(s)) for s in found.spans for text in s.texts or (s.first.shown,)]
        at = Points("", range(len(texts)), [level for _, level in texts])
        unit, names = _without_unit([text for text, _ in texts])
        x = Axis(found.input, unit, places=names)
        return Chart(title, words, x, y, points=(at,))
    lines = tuple(Line("", _ends(s), (_level(s), _level(s)), strong=True) for s in found.spans)
    marked = [(end, _level(span)) for span, end in edges(found) if end.value is not None]
    points = Points(
        "",
        [end.value or 0.0 for end, _ in marked],
        [level for _, level in marked],
        [end.shown for end, _ in marked],
    )
    return Chart(title, words, _axis(found), y, points=(points,), lines=lines)


def _without_unit(texts: Sequence[str]) -> tuple[str, tuple[str, ...]]:
    """Part the unit that all of some texts end with from them, so that there is room for each."""
    units = {text.rpartition(" ")[2] for text in texts}
    if len(units) > 1 or not all(" " in text for text in texts):
        return "", tuple(texts)
    return units.pop(), tuple(text.rpartition(" ")[0] for text in texts)


def _map(found: SoughtTable) -> Chart:
    rows = list(enumerate(found.rows))
    words = "; ".join(
        f"{shown}: {span_words(one, s)} {verdict_words(one, s)}"
        for _, (shown, one) in rows
        for s in one.spans
    )
    y = Axis(
        found.across,
        marks=tuple((float(n), shown) for n, (shown, _) in rows),
        span=(-0.6, len(rows) - 0.4),
    )
    lines = []
    for level, name in enumerate(LEVELS):
        pieces = [
            (_ends(s), n)
            for n, (_, one) in rows
            for s in one.spans
            if one.unit and _level(s) == level
        ]
        lines += [
            Line("" if i else name, ends, (n, n), strong=name == "pass", fine=name == "refused")
            for i, (ends, n) in enumerate(pieces)
        ]
    first = found.rows[0][1]
    title = f"{found.calculation}: {first.input} by {found.across}"
    return Chart(title, words, _axis(first), y, lines=tuple(lines))


def _marks() -> list[tuple[float, str]]:
    return [(float(n), name) for n, name in enumerate(LEVELS)]


def _level(span: Span) -> float:
    return float(LEVELS.index(span.word)) if span.word in LEVELS else 0.0


def _ends(span: Span) -> tuple[float, float]:
    return span.first.value or 0.0, span.last.value or 0.0


def _axis(found: Sought) -> Axis:
    values = [v for s in found.spans for v in _ends(s)]
    positive = [v for v in values if v > 0]
    wide = min(values) >= 0 and len(positive) > 1 and max(positive) > _WIDE * min(positive)
    return Axis(found.input, found.unit, logarithmic=wide)
