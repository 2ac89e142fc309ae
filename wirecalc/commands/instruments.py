"""`wirecalc instruments`: the declared meters, and for a calculation where each can still tell."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from typing import Any

from ..base.errors import BadInput
from ..engine.declaration import Calculation
from ..engine.sought.seeking import Sought
from ..instruments.readings import MAINS
from ..output.instruments import Tells, instruments_page, instruments_text, tells
from ..plugging.host import Catalogue
from ..typed.quantity_kinds import Reading
from . import COMMANDS
from .load_plugins import catalogue, find, warnings
from .options import split
from .result import Result


def run(words: Sequence[str]) -> Result:
    """List them; a file of the settings that declares one wrongly is refused before this."""
    loaded = catalogue(words)
    name = _asked(words)
    calc = find(loaded, name, asked_by="instruments") if name else None
    options = split(words, COMMANDS["instruments"], calc)
    options.refuse()
    found = list(_tells(loaded, calc, options.given)) if calc else []
    said = warnings(loaded)
    if options.format == "json":
        from ..output.json import dump

        text = dump(_object(loaded, found))
    elif options.format == "html":
        text = instruments_page(loaded.instruments, found, name)
    else:
        text = instruments_text(loaded.instruments, found, name)
    return Result(text, output=options.output, warnings=said)


def _asked(words: Sequence[str]) -> str:
    """Return the calculation that is asked for, whose inputs are options too."""
    for word, value in pairwise([*words, ""]):
        if word == "--for":
            return value
        if word.startswith("--for="):
            return word.partition("=")[2]
    return ""


def _tells(
    loaded: Catalogue, calc: Calculation[Any], given: Mapping[str, object]
) -> Iterator[Tells]:
    """Yield where each instrument tells, of each reading that it takes.

    All else is as given; what was not given is as in the worked example of the calculation.
    """
    typed = {**calc.example_inputs, **given}
    for declared in calc.inputs:
        kind = declared.kind
        if not isinstance(kind, Reading) or declared.many or declared.name not in typed:
            continue
        for instrument in loaded.instruments.instruments:
            hertz = MAINS if kind.wave == "ac" else ()
            if not instrument.of(kind.dimension, kind.wave, hertz):
                continue
            sought = {**typed, declared.name: f"sought by {instrument.name}"}
            try:
                found = loaded.seeker(calc.name).seek(sought)
            except BadInput:
                if given:
                    raise
                continue
            if isinstance(found, Sought):
                yield tells(instrument.name, found)


def _object(loaded: Catalogue, found: Sequence[Tells]) -> dict[str, Any]:
    return {
        "schema": "wirecalc.instruments/1",
        "instruments": [
            {
                "name": i.name,
                "category": str(i.category) if i.category else None,
                "due": i.due.isoformat() if i.due else None,
                "ranges": [
                    {
                        "reads": r.dimension,
                        "wave": r.wave or None,
                        "from": r.shown[0],
                        "to": r.shown[1],
                        "error": r.said,
                    }
                    for r in i.ranges
                ],
            }
            for i in loaded.instruments.instruments
        ],
        "meters": dict(loaded.instruments.meters),
        "tells": [t._asdict() for t in found],
    }
