"""How a span of values that were sought is put in words, the same in every form."""

from __future__ import annotations

from ...said.verdicts import Verdict
from .seeking import Sought
from .spans import REFUSED, End, Span

BUT_FOR = "nothing else against it"  # of values that would pass, but for what is the same for all


def span_words(sought: Sought, span: Span) -> str:
    """Return the values of a span in words."""
    if not sought.ordered:
        return ", ".join(span.texts)
    first, last = span.first.shown, span.last.shown
    if first == last:
        return first
    at_start, at_end = first == sought.from_, last == sought.to
    if at_start and at_end:
        return f"all that were tried, {_between(first, last)}"
    if at_start:
        return f"up to {last}"
    return f"from {first} on" if at_end else _between(first, last)


def _between(first: str, last: str) -> str:
    number, _, unit = first.rpartition(" ")
    same = number and last.endswith(f" {unit}")
    return f"{number if same else first} to {last}"


def verdict_words(sought: Sought, span: Span) -> str:
    """Return what the values of a span come to; while something else stands against all, no pass.

    A fail stays one, whatever stands beside it.
    """
    if span.word == REFUSED:
        return "REFUSED"
    against = max((j.verdict for j in sought.aside), key=lambda v: v.rank, default=None)
    if against is None:
        return span.verdict.upper() if span.verdict else "NO VERDICT"
    if span.verdict is None or span.verdict is Verdict.PASS:
        return f"{against.upper()}, {BUT_FOR}"
    if against.rank <= span.verdict.rank:
        return span.verdict.upper()
    return f"{against.upper()}, and {span.verdict.upper()}"


def because(end: End) -> str:
    """Return what decides at an end of a span."""
    if end.refusal:
        return end.refusal
    return end.judged.by.because if end.judged.by else "nothing more is judged"


def edges(sought: Sought) -> list[tuple[Span, End]]:
    """Return both sides of each edge; the ends of the only span where there is none."""
    found = []
    for number, span in enumerate(sought.spans):
        ends = [span.first] if number else []
        if number < len(sought.spans) - 1 and (span.last.place != span.first.place or not ends):
            ends.append(span.last)
        found += [(span, end) for end in ends or [span.first]]
    return found


def best(sought: Sought) -> tuple[str, list[Span]]:
    """Return the mildest verdict of all spans, in words, and the spans that have it."""
    ran = [s for s in sought.spans if s.word != REFUSED]
    if not ran:
        return "REFUSED", list(sought.spans)
    least = min(map(_rank, ran))
    found = [s for s in ran if _rank(s) == least]
    return verdict_words(sought, found[0]), found


def _rank(span: Span) -> int:
    return span.verdict.rank if span.verdict else Verdict.PASS.rank
