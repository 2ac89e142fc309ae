"""Why something does not apply: a reason that its table lists, or words that are no excuse."""

from __future__ import annotations

import re
from collections.abc import Iterable

_LEAST_WORDS = 2
_EXCUSES = re.compile(
    r"""
    \b(no|without|out\s+of|lack\w*|miss(ed|es|ing)|broken|borrowed|flat|empty|lost)\b
        [^,.;]*\b(time|meters?|multimeters?|testers?|clamps?|tools?|instruments?|batter(y|ies)|
        probes?|reach|access|van|shop|idea|need|reason|point)\b
  | \b(meter|tester|clamp|tool|instrument|probes?)\b[^,.;]*\b(broken|flat|missing|lost|empty|lent|
        away|elsewhere)\b
  | \bnot\b(\s+\w+)?\s+(tested|done|measured|checked|made|read|taken|tried|needed|required|
        necessary|possible|asked|wanted|available|reached|here|there|now|today|yet|sure|known)\b
  | \b(could|can|did|do|does|was|were|would|will|is)(\s+not|n'?t)\s+(be\s+)?
        (test|measure|check|read|do|done|take|make|reach|need|tested|measured|checked|taken|
        made|reached|needed|required|apply|available)\b
  | \bcustomer\b[^,.;]*\b(want\w*|refus\w*|declin\w*|wait\w*|said|says|left)\b
  | \b(un(tested|measured|checked|known|necessary|available)|skip(ped)?|later|tomorrow|forgot\w*|
        n\.?/?a|tbd|todo|hurry|rush(ed)?|busy|late|next\s+visit|next\s+time)\b
    """,
    re.IGNORECASE | re.VERBOSE,
)
_UNTOUCHED = re.compile(
    r"\b(untouched|unchanged|nothing\s+(was\s+)?changed|not?\s+(\w+\s+)?(open(ed)?|touched|moved|"
    r"removed|changed|replaced|repaired|worked\s+on|part\s+of))\b",
    re.IGNORECASE,
)


def no_reason(said: str) -> str:
    """Say why words are no reason that something does not apply; empty where they may be one.

    It is for what no verdict waits for: what is required has its reasons in a table, see `listed`.

    >>> no_reason("no time")
    "'no time' says why it was not tested, not why it does not apply"
    >>> no_reason("two wires, double-insulated")
    ''
    """
    if not said:
        return "it says no reason"
    if _EXCUSES.search(said) or _UNTOUCHED.search(said):
        return f"{said!r} says why it was not tested, not why it does not apply"
    if len(re.findall(r"[^\W\d_]{2,}", said)) < _LEAST_WORDS:
        return f"{said!r} is no reason"
    return ""


def listed(said: str, reasons: Iterable[str]) -> bool:
    """Whether words are a listed reason; more may follow behind a comma, a colon or in brackets.

    >>> listed("Double-insulated: so its plate says", ["double insulated"])
    True
    >>> listed("double insulated or so", ["double insulated"]), listed("new house", ["none"])
    (False, False)
    """
    words = _plain(said)
    return any(
        words == one or words.startswith((f"{one},", f"{one}:", f"{one} ("))
        for one in map(_plain, reasons)
    )


def choice(reasons: Iterable[str]) -> str:
    """Say which reasons there are, in quotes."""
    return " or ".join(f'"{one}"' for one in reasons)


def _plain(text: str) -> str:
    """Return words without what does not part them: case, hyphens, blanks, articles."""
    bare = re.sub(r"\b(the|a|an|its)\b", " ", text.casefold().replace("-", " "))
    return re.sub(r"\s+([,:])", r"\1", " ".join(bare.split())).rstrip(".")
