"""The instruments of the settings: in the settings file, and in the files that it names."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from ..base.errors import BadInput, BadText, Problem, did_you_mean
from ..base.text_files import read_toml
from ..instruments.declared import Declared, read

OF_INSTRUMENTS = ("instrument", "meters")  # what of a settings file is theirs
FILES = "instruments_files"


def read_instruments(path: Path, said: Mapping[str, Any]) -> Declared:
    """Return what a settings file and the files that it names declare.

    Raises BadInput with everything that is wrong there.
    """
    found = Declared()
    problems: list[Problem] = []
    for file in said.get(FILES, []):
        own, wrong = read_file(path.parent / file)
        found, problems = found.and_then(own), [*problems, *wrong]
    known = [i.name for i in found.instruments]
    own, wrong = read(said.get("instrument", []), said.get("meters", {}), str(path), known)
    if problems or wrong:
        raise BadInput([*problems, *wrong])
    return found.and_then(own)


def read_file(path: Path) -> tuple[Declared, list[Problem]]:
    """Read a file of instruments; what is wrong with it is returned beside them."""
    try:
        said = read_toml(path)
    except (OSError, BadText, tomllib.TOMLDecodeError) as error:
        why = getattr(error, "strerror", None) or error
        return Declared(), [
            Problem(str(path), f"cannot be read ({why})", "mend it, or leave it out")
        ]
    odd = [key for key in said if key not in OF_INSTRUMENTS]
    problems = [
        Problem(f"{path}: {key}", "is nothing of instruments", did_you_mean(key, OF_INSTRUMENTS))
        for key in odd
    ]
    found, wrong = read(said.get("instrument", []), said.get("meters", {}), str(path))
    return found, [*problems, *wrong]
