"""Having some plugins and no others for a while."""

from __future__ import annotations

import contextlib
import os
from collections.abc import Iterator
from unittest import mock

import wirecalc

from .. import calls
from ..plugging import discovery, host, settings
from ..plugging.discovery import Candidate, Plugin
from ..published import tables
from ..said import items

VERSION = "0"  # of the distribution that a plugin under test seems to come from
_SETTLED = (settings.ONLY_PLUGINS, settings.BUNDLED_ONLY, settings.RULES, settings.STRICT)


def name_of(plugin: object) -> str:
    """Return the name under which a plugin under test is listed: the last part of the module's."""
    name = getattr(plugin, "__name__", None) or type(plugin).__name__
    return str(name).rpartition(".")[2]


def _candidate(plugin: object) -> Candidate:
    name = name_of(plugin)
    return Candidate(Plugin(name, name.replace("_", "-"), VERSION), lambda: plugin)


@contextlib.contextmanager
def plugin_set(*plugins: object) -> Iterator[wirecalc.Catalogue]:
    """Have only these plugins and the bundled ones, whatever is installed; yield what they offer.

    A plugin is a module, or any object with functions that `hookimpl` marks. The command line in
    this process and `wirecalc.run` see the same set. Settings of the person who runs the tests
    count for nothing. Without plugins it is the bundled ones.
    """

    def installed() -> list[Candidate]:  # anew: what became of one belongs to its catalogue
        return [_candidate(plugin) for plugin in plugins]

    with (
        mock.patch.object(discovery, "_installed", installed),
        mock.patch.object(settings, "_file", lambda: None),
        mock.patch.dict(os.environ),
    ):
        for name in _SETTLED:
            os.environ.pop(name, None)
        calls._catalogue = None
        try:
            yield host.build()
        finally:
            calls._catalogue = None
            tables.use_folders(())
            items.use_cautions(())
