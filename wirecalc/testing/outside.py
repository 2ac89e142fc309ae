"""Distributions from outside, made on disk: as good as installed, without installing."""

from __future__ import annotations

import importlib
import sys
from pathlib import Path

from ..typed.own_units import forget_units


class Outside:
    """A folder that holds distributions with plugins, as an environment's site folder does.

    `env` has the variables with which another process finds them. This process finds them with the
    folder on `sys.path`, as the fixture `wirecalc_outside` has it.
    """

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.env = {"PYTHONPATH": str(folder), "PYTHONDONTWRITEBYTECODE": "1"}

    def add(self, name: str, source: str, distribution: str = "", version: str = "1.0") -> None:
        """Add a distribution with one plugin: an entry point, and a module of the same name."""
        distribution = distribution or name.replace("_", "-")
        info = self.folder / f"{distribution.replace('-', '_')}-{version}.dist-info"
        info.mkdir(parents=True)
        about = f"Metadata-Version: 2.1\nName: {distribution}\nVersion: {version}\n"
        (info / "METADATA").write_text(about, encoding="utf-8")
        (info / "entry_points.txt").write_text(f"[wirecalc]\n{name} = {name}\n", encoding="utf-8")
        (self.folder / f"{name}.py").write_text(source, encoding="utf-8")
        importlib.invalidate_caches()

    def forget(self) -> None:
        """Forget the modules that this process imported from here, and the units of theirs."""
        names = {path.stem for path in self.folder.iterdir() if path.suffix in ("", ".py")}
        for module in [name for name in sys.modules if name.partition(".")[0] in names]:
            del sys.modules[module]
        forget_units(names)
