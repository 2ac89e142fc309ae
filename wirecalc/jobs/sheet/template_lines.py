"""Lines of a new sheet: words, keys to fill in, the facts and the answers of a kind of job."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator

from ...published import tables
from . import confirmed
from .kinds import usual
from .listed_reasons import choice
from .machine_facts import FACTS, deciding
from .shape import as_toml

_WIDTH = 88


def words(text: str) -> list[str]:
    """Return words as lines that are no keys."""
    return textwrap.wrap(
        text, _WIDTH, initial_indent="## ", subsequent_indent="## ", break_on_hyphens=False
    )


def key_line(key: str, value: str, text: str) -> Iterator[str]:
    """Yield a key with an example, to take the # off."""
    yield f"# {key} = {as_toml(value)}" + (f"  # {text}" if text else "")


def deciding_facts(kind: str) -> list[str]:
    """Return the keys of [job] that decide what a machine of this kind must have."""
    whens = [c.when for c in usual(kind)] + [one.when for one in confirmed.lines_of(kind)]
    whens += [row.text("when") for row in tables.load("job-stops").where(kind=kind)]
    return list(dict.fromkeys(deciding(when) for when in whens if when))


def facts_lines(kind: str) -> Iterator[str]:
    """Yield the lines of those keys."""
    for key in deciding_facts(kind):
        yield from key_line(key, FACTS[key][0], " or ".join(FACTS[key]))


def confirmed_lines(kind: str) -> Iterator[str]:
    """Yield the lines that are answered when the work is done."""
    lines = confirmed.lines_of(kind)
    if not lines:
        return
    yield from words("When the work is done, answer each line: yes, no, or does not apply.")
    yield "[confirmed]"
    for one in lines:
        may = {confirmed.NEVER: "; it always applies"}.get(one.may_not_apply, "")
        if one.may_not_apply == confirmed.WITH_A_REASON:
            may = f"; or does not apply, as {choice(one.reasons)}"
        yield from words(f"{one.says} ({one.why}{may})")
        yield from key_line(one.key, "yes", "")
