"""`wirecalc explain NAME`: how a calculation works, with an example, or its declaration as JSON."""

from __future__ import annotations

import tempfile
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from ..declaration import Calculation
from ..errors import BadInput, Problem, WirecalcError
from ..findings import Finding
from ..host import Catalogue
from ..options import split
from ..readings_file import ReadingsFile
from ..readings_stream import ReadingsStream
from .loaded import catalogue_with, find
from .result import Result


def run(words: Sequence[str]) -> Result:
    """Explain a calculation."""
    options = split(words, most_words=1)
    options.refuse()
    if not options.words:
        raise BadInput(
            [Problem("explain", "needs the name of a calculation", "such as explain pull")]
        )
    name = options.words[0]
    loaded = catalogue_with(name, words)
    calc = find(loaded, name)
    files = _files(calc)
    example = worked_example(loaded, calc, files)
    if options.format == "json":
        return Result(_as_json(calc, example, files), output=options.output)
    from ..output.explanation import explanation

    return Result(explanation(calc, example, files), output=options.output)


def _as_json(calc: Calculation[Any], example: Finding | str, files: Mapping[str, str]) -> str:
    """Return the declaration with the worked example, or with why there is none."""
    from ..output.json import declaration_object, dump, finding_object

    more = {
        "worked_example": finding_object(example, working=True)
        if isinstance(example, Finding)
        else None,
        "not_worked": example if isinstance(example, str) else None,
        "example_files": dict(files),
    }
    return dump(declaration_object(calc) | more)


def _files(calc: Calculation[Any]) -> Mapping[str, str]:
    """Return the samples of the files that the example reads, by the name of the file."""
    kinds = (calc.input(name).kind for name in calc.example_inputs)
    return {kind.example: kind.sample for kind in kinds if kind.sample}


def worked_example(
    loaded: Catalogue, calc: Calculation[Any], files: Mapping[str, str]
) -> Finding | str:
    """Run the declared example; where that is not possible, return why, for the reader."""
    reads = (ReadingsFile, ReadingsStream)
    from_file = [n for n in calc.example_inputs if isinstance(calc.input(n).kind, reads)]
    missing = [n for n in from_file if calc.input(n).kind.example not in files]
    if missing:
        return f"it needs a file of yours, {calc.input(missing[0]).kind.span}."
    try:
        if not from_file:
            return loaded.run(calc.name, calc.example_inputs)
        with tempfile.TemporaryDirectory() as folder:
            return _with_files(loaded, calc, files, Path(folder))
    except WirecalcError as error:
        return f"{error}."


def _with_files(
    loaded: Catalogue, calc: Calculation[Any], files: Mapping[str, str], folder: Path
) -> Finding:
    """Run the example with its sample files; the finding names them without the folder."""
    for name, content in files.items():
        (folder / name).write_text(content, encoding="utf-8")
    paths = {str(folder / name): name for name in files}
    given = {
        name: str(folder / text) if isinstance(text, str) and text in files else text
        for name, text in calc.example_inputs.items()
    }
    return loaded.run(calc.name, given).with_names(paths)
