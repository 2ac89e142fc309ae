"""What a shop meant with its settings, and what is not used: plugins, files, variables."""

from __future__ import annotations

import os
import re
from collections.abc import Iterator, Sequence
from pathlib import Path

from ..base.errors import nearest
from ..published.tables import LeftOver, Unused
from ..said.items import NotChecked
from .discovery import FOLDER, Plugin
from .settings import VARIABLES, Settings, looked_at, misnamed


def left_over(
    settings: Settings,
    plugins: Sequence[Plugin],
    own_folders: Sequence[Path],
    folders: Sequence[Path],
) -> LeftOver:
    """Return what is not used of what the settings name, other than the folders of rules files.

    `folders` are all folders of tables, `own_folders` those that plugins of the trusted folder
    give. A plugin of that folder that is not used whole leaves all in doubt: what its rules would
    have asked nobody knows.
    """
    found = LeftOver([], [])
    for plugin in plugins:
        if plugin.origin == FOLDER and plugin.broken:
            found.meant.append(Unused(Path(plugin.distribution).name, plugin.reason))
    for folder in own_folders:
        from ..rules.shop_folder import not_used

        found.add(not_used(folder, [*used_files(settings), *folders]))
    if settings.plugin_folder is not None:
        from . import trusted

        found.add(trusted.not_used(settings, folders))
    why = f"is not read; the settings file is {looked_at()}"
    found.meant.extend(Unused(str(path), why) for path in misnamed())
    return found


def used_files(settings: Settings) -> list[Path]:
    """Return the files that have a use of their own, though a folder of tables may hold them."""
    if settings.plugin_folder is None:
        return [*settings.rules_files, *([settings.file] if settings.file else [])]
    from . import trusted

    return trusted.used_files(settings)


def strange_variables() -> Iterator[NotChecked]:
    """Name the variables of the environment that look like ours and are none."""
    for name in sorted(os.environ):
        if name not in VARIABLES and re.match("WIRE?_?CALC", name, re.IGNORECASE):
            near = nearest(name, VARIABLES) or VARIABLES[0]
            why = f"there is no such variable; did you mean {near}?"
            yield NotChecked(f"what {name} asks for", why)
