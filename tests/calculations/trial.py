"""What the shared tests need to know of a calculation, in one record beside this file.

`test_NAME.py` holds the `TRIAL` of a calculation, and may hold its published checks below. The
tests of bad input, of the meter's band, of cautions and of steps each side of a limit draw on it.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from hypothesis import strategies as st

Strategies = Mapping[str, st.SearchStrategy[Any]]


def _as_options(text: str) -> str:
    """Return a text with the inputs that it names spelled as options."""
    names = r"(?<![\w-])[a-z]+(?:_[a-z0-9]+)+(?![\w-])"
    return re.sub(names, lambda name: f"--{name[0].replace('_', '-')}", text)


@dataclass(frozen=True)
class Bad:
    """One spoiled input: what is given, what of it the refusal shows, and what would do."""

    input: str
    given: str | list[str] | bytes  # bytes: TOML, for a sheet only
    shows: str
    would_do: str

    def refused_by(self, name: str, line: str) -> bool:
        """Whether a line names the input, shows what was given and says what would do."""
        shows, would_do = self.shows, self.would_do
        if name.startswith("--"):  # typed, other inputs are named by their options too
            shows, would_do = _as_options(shows), _as_options(would_do)
        return f"{name}: " in line and shows in line and would_do in line


@dataclass(frozen=True)
class When:
    """Inputs that differ from the worked example ("" leaves one out), the cautions that then come
    with it and those that stay away.
    """

    about: str
    given: Mapping[str, Any]
    comes: Sequence[str] = ()
    stays: Sequence[str] = ()


@dataclass(frozen=True)
class Span:
    """From where to where a number of this calculation alone may be typed, and why; those that
    are shared stand in tests/unit/spans.toml. Where it starts `over` an end, that is none.
    """

    low: str
    high: str
    why: str
    over: bool = False


@dataclass(frozen=True)
class Worded:
    """What a caution that the calculation words itself must not lose."""

    severity: str
    words: Sequence[str]
    defers_to: Sequence[str]


@dataclass(frozen=True)
class Step:
    """One input typed a step each side of a limit, and the verdict of the criterion at each step,
    worked out by hand from the limit. `given` changes the worked example ("" leaves one out).
    """

    criterion: str
    input: str
    verdicts: Mapping[str, str]  # as typed: verdict, "not judged" or "refused"
    limit: str
    source: str
    given: Mapping[str, Any] = field(default_factory=dict)


@dataclass(frozen=True, kw_only=True)
class Trial:
    """What the shared tests need to know of one calculation."""

    # Bad input: one good run, with all inputs that are spoiled; of its quantities those of which
    # zero means something, and those that are printed and have no meter's error; its counts that
    # are whole numbers from 1 to 100 at most; what else is refused; the ends of its own numbers.
    good: Mapping[str, str] = field(default_factory=dict)
    zero: Sequence[str] = ()
    printed: Sequence[str] = ()
    counts: Sequence[str] = ()
    bad: Sequence[Bad] = ()
    spans: Mapping[str, Span] = field(default_factory=dict)
    # The meter's band: complete, plausible inputs, of a reading its number in the declared unit,
    # near and away from the limits that decide; or the files of tests/properties that draw them,
    # where readings are lists or files, or a run is dear.
    always: Strategies = field(default_factory=dict)
    sometimes: Strategies = field(default_factory=dict)
    drawn_in: Sequence[str] = ()
    # Cautions, from what can hurt the hands at this check: those of the worked example as
    # `example` changes it, no more and no fewer, the gravest first; key words of what it must list
    # as not checked, one a line of its own.
    why: str
    example: Mapping[str, Any] = field(default_factory=dict)
    cautions: Sequence[str]
    not_checked: Sequence[str]
    when: Sequence[When] = ()
    worded: Mapping[str, Worded] = field(default_factory=dict)
    steps: Sequence[Step] = ()
    # What is odd about it: inputs that contradict the examples of others; what to give in place
    # of an example that names a file; whether it works out a figure; whether it loads nothing dear
    # where no unit is converted; the inputs to draw at random where each run is dear.
    apart: Sequence[str] = ()
    files: Mapping[str, str] = field(default_factory=dict)
    figures: bool = True
    light: bool = True
    dear: Sequence[str] = ()


def near(*limits: float, low: float = 0.0, high: float) -> st.SearchStrategy[float]:
    """Values at, next to and away from the limits that decide."""
    edges = [e for v in limits for e in (v, v * 0.97, v * 1.03, v * (1 + 1e-10)) if low < e <= high]
    return st.sampled_from(edges) | st.floats(low, high, exclude_min=True)


texts = st.sampled_from

RUN = {  # what every run of wire in the building asks for
    "building_wire": texts(["14 AWG", "12 AWG", "12 AWG aluminum", "2.5 mm2", "2/0 AWG"]),
    "run_length": near(60, 100, high=300),
    "other_current": near(6.2, 20, high=60),
    "conductor_temperature": near(20, 75, low=-20, high=110),
}
