"""`wirecalc schema NAME`: a published JSON schema."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from ..base.errors import BadInput, Problem
from . import COMMANDS
from .options import split
from .result import Result

SCHEMAS = ("finding", "job", "history", "refused", "batch", "plugins", "sought")


def run(words: Sequence[str]) -> Result:
    """Print a published JSON schema."""
    options = split(words, COMMANDS["schema"], most_words=1)
    options.refuse()
    name = options.words[0] if options.words else ""
    if name not in SCHEMAS:
        wrong = f"there is no schema {name!r}" if name else "needs a name"
        raise BadInput([Problem("schema", wrong, f"write one of {', '.join(SCHEMAS)}")])
    path = Path(__file__).parent.parent / "output" / "schemas" / f"{name}.json"
    return Result(path.read_text(encoding="utf-8").rstrip("\n"), output=options.output)
