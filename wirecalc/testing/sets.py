"""Having some plugins and no others for a while."""

from __future__ import annotations

import contextlib
from collections.abc import Iterator
from importlib import metadata
from os import PathLike
from pathlib import Path
from unittest import mock

import wirecalc

from .. import discovery, host, items, settings, tables
from ..hooks import PROJECT

VERSION = "0"  # of the distribution that a plugin under test seems to come from


class _Given(metadata.EntryPoint):
    """An entry point that loads to an object at hand."""

    def __init__(self, name: str, plugin: object) -> None:
        super().__init__(name, name, PROJECT)
        vars(self).update(plugin=plugin)

    def load(self) -> object:
        return vars(self)["plugin"]


class _Seeming(metadata.Distribution):
    """A distribution that is nowhere: what a plugin under test seems to come from."""

    def __init__(self, plugin: object) -> None:
        self._name, self._plugin = name_of(plugin), plugin

    @property
    def entry_points(self) -> metadata.EntryPoints:
        return metadata.EntryPoints([_Given(self._name, self._plugin)])

    def read_text(self, filename: str | PathLike[str]) -> str | None:
        if str(filename) == "entry_points.txt":
            return f"[{PROJECT}]\n{self._name} = {self._name}\n"
        about = f"Name: {self._name.replace('_', '-')}\nVersion: {VERSION}\n"
        return about if str(filename) == "METADATA" else None

    def locate_file(self, path: str | PathLike[str]) -> Path:
        return Path(path)


def name_of(plugin: object) -> str:
    """Return the name under which a plugin under test is listed: the last part of the module's."""
    name = getattr(plugin, "__name__", None) or type(plugin).__name__
    return str(name).rpartition(".")[2]


@contextlib.contextmanager
def plugin_set(*plugins: object) -> Iterator[wirecalc.Catalogue]:
    """Have only these plugins and the bundled ones, whatever is installed; yield what they offer.

    A plugin is a module, or any object with functions that `hookimpl` marks. The command line in
    this process and `wirecalc.run` see the same set. Without plugins it is the bundled ones.
    """
    bundled = metadata.distribution(discovery.BUNDLED)
    there = [bundled, *(_Seeming(plugin) for plugin in plugins)]
    with (
        mock.patch.object(discovery, "distributions", lambda: there),
        mock.patch.object(settings, "_file", lambda: None),  # nor what this person has settled
    ):
        wirecalc._catalogue = None
        try:
            yield host.build()
        finally:
            wirecalc._catalogue = None
            tables.use_folders(())
            items.use_cautions(())
