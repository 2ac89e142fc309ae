"""The example that a calculation declares, worked, and what else it may be given."""

from __future__ import annotations

import contextlib
import tempfile
from collections.abc import Iterator, Mapping
from itertools import islice
from pathlib import Path
from typing import Any

from ..base.errors import BadInput, PluginDefect, WirecalcError
from ..engine.declaration import Calculation
from ..engine.example_variants import variants
from ..recorded.files import ReadingsFile
from ..recorded.stream import ReadingsStream
from ..said.findings import Finding
from .host import Catalogue


def example_files(calc: Calculation[Any]) -> Mapping[str, str]:
    """Return the samples of the files that the example reads, by the name of the file."""
    kinds = (calc.input(name).kind for name in calc.example_inputs)
    return {kind.example: kind.sample for kind in kinds if kind.sample}


def tried(loaded: Catalogue, calc: Calculation[Any]) -> Iterator[Finding]:
    """Yield the finding of the example, then those of its variants, of all that can be run."""
    first = worked_example(loaded, calc)
    if isinstance(first, Finding):
        yield first
    for given in islice(variants(calc), 1, None):
        with contextlib.suppress(BadInput, PluginDefect):
            yield loaded.run(calc.name, given)


def worked_example(loaded: Catalogue, calc: Calculation[Any]) -> Finding | str:
    """Run the declared example; where that is not possible, return why, for the reader."""
    files = example_files(calc)
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
