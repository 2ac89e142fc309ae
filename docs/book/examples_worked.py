"""The example of each calculation, worked, and what its variants come to."""

from __future__ import annotations

import contextlib
import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import islice
from typing import Any, NamedTuple

from wirecalc import Catalogue, Finding
from wirecalc.base.errors import BadInput, PluginDefect
from wirecalc.engine.declaration import Calculation
from wirecalc.engine.example_variants import variants
from wirecalc.plugging.worked_examples import tried, worked_example
from wirecalc.said.findings import Judged

MOST_TRIED = 60  # variants of an example that are tried for criteria and sources
FAR_OFF = (0.1, 0.7, 1.5, 10)  # times a number, so that a limit is missed
FURTHER: Mapping[str, Sequence[Mapping[str, str]]] = {  # what no single change leads to
    "windings": (
        {"reading_2_3": "8.1 ohm", "open_pin": "1", "common_pin": "2"},
        {"reading_1_2": "4 ohm", "reading_1_3": "4.1 ohm", "reading_2_3": "8.1 ohm"},
    ),
}
_NUMBER = re.compile(r"\d+(\.\d+)?(?= )")


class Worked(NamedTuple):
    """A calculation with what its example, and those of its variants, come to."""

    calc: Calculation[Any]
    example: Finding | str
    findings: Sequence[Finding]

    @property
    def limits(self) -> Sequence[Judged]:
        """Each limit that was met with, once: as the first has it that says what to do, if any."""
        return self._criteria(lambda judged: judged.criterion.sense != "cannot tell")

    @property
    def gaps(self) -> Sequence[Judged]:
        """What could not be told, each once."""
        return self._criteria(lambda judged: judged.criterion.sense == "cannot tell")

    def _criteria(self, wanted: Callable[[Judged], bool]) -> Sequence[Judged]:
        found: dict[str, Judged] = {}
        for judged in filter(wanted, (j for f in self.findings for j in f.criteria)):
            name = judged.criterion.name
            if name not in found or (judged.criterion.action and not found[name].criterion.action):
                found[name] = judged
        return list(found.values())


def work(loaded: Catalogue, name: str) -> Worked:
    """Work the example of a calculation, and its variants where a run of it is not dear."""
    calc = loaded.calculations[name].calculation
    example = worked_example(loaded, calc)
    most = 1 if calc.analysis else MOST_TRIED
    done = Worked(calc, example, list(islice(tried(loaded, calc), most)))
    if calc.analysis or all(judged.criterion.action for judged in done.limits):
        return done
    return done._replace(findings=[*done.findings, *_pushed(loaded, calc)])


def _pushed(loaded: Catalogue, calc: Calculation[Any]) -> Iterator[Finding]:
    """Yield findings with one number at a time far off: what to do then may be said only there."""
    for further in FURTHER.get(calc.name, ()):
        yield loaded.run(calc.name, further)
    for given in islice(variants(calc), MOST_TRIED):
        for name, text in given.items():
            if not (isinstance(text, str) and (number := _NUMBER.match(text))):
                continue
            for times in FAR_OFF:
                far = f"{float(number[0]) * times:.6g}{text[number.end() :]}"
                with contextlib.suppress(BadInput, PluginDefect):
                    yield loaded.run(calc.name, {**given, name: far})
