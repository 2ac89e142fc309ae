"""Reasons that say why something was not tested, where one is wanted why it does not apply."""

from __future__ import annotations

import re

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


def no_reason(said: str, *, of_work: bool = False) -> str:
    """Say why words are no reason that something does not apply; empty where they may be one.

    That nobody touched it is a reason only for what is `of_work`: an untouched ground path is one.

    >>> no_reason("no time")
    "'no time' says why it was not tested, not why it does not apply"
    >>> no_reason("two wires, double-insulated")
    ''
    """
    if not said:
        return "it says no reason"
    if _EXCUSES.search(said) or (not of_work and _UNTOUCHED.search(said)):
        return f"{said!r} says why it was not tested, not why it does not apply"
    if len(re.findall(r"[^\W\d_]{2,}", said)) < _LEAST_WORDS:
        return f"{said!r} is no reason"
    return ""
