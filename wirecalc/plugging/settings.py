"""What is settled for all runs: a trusted plugin folder, rules files, allowed plugins, strictness.

A TOML file, the one that WIRECALC_CONFIG names or `.config/wirecalc/config.toml` in the home
folder; nothing is ever read from the current directory.

    plugin_folder = "plugins"            # relative to this file
    rules_files = ["rules.toml"]
    only_plugins = ["shop-bench"]        # no other plugin from outside is loaded
    strict = true                        # what does not load stops every run
    instruments_files = ["van.toml"]     # [[instrument]] and [meters], which may stand here too

Switches of the command line and environment variables come before the file.
"""

from __future__ import annotations

import contextlib
import os
from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from pathlib import Path
from typing import Any, NamedTuple

from ..base.blame import TRACEBACK
from ..base.errors import BadInput, BadText, Problem, did_you_mean, nearest
from ..base.text_files import read_toml, turned
from .instrument_files import FILES, OF_INSTRUMENTS

CONFIG = "WIRECALC_CONFIG"
BUNDLED_ONLY = "WIRECALC_BUNDLED_ONLY"
ONLY_PLUGINS = "WIRECALC_ONLY_PLUGINS"
RULES = "WIRECALC_RULES"
STRICT = "WIRECALC_STRICT"
TESTED_WITH = ("WIRECALC_AXE", "WIRECALC_RUNTIME")  # only the tests read them
VARIABLES = (CONFIG, BUNDLED_ONLY, ONLY_PLUGINS, RULES, STRICT, TRACEBACK, *TESTED_WITH)
HOME = "~/.config/wirecalc/config.toml"  # on every system
_ON = ("1", "yes", "true")
_OFF = ("", "0", "no", "false")


class Settings(NamedTuple):
    """What decides which plugins and rules are loaded.

    `only_plugins` names the plugins from outside that may be loaded, None for all of them, and
    `only_from` says who named them. `folder_as_written` is the plugin folder as `file` has it.
    `unread` is the settings file that was left unread because only bundled plugins are wanted.
    `instruments` is what `file` says of them: it is read when the plugins, and the units that they
    declare, are there.
    """

    plugin_folder: Path | None = None
    rules_files: tuple[Path, ...] = ()
    only_plugins: tuple[str, ...] | None = None
    strict: bool = False
    bundled_only: bool = False
    only_from: str = ""
    folder_as_written: str = ""
    file: Path | None = None
    unread: Path | None = None
    instruments: Mapping[str, Any] = {}


def read(words: Sequence[str] = ()) -> Settings:
    """Read the settings: switches among the words, then the environment, then the file.

    With the rescue switch the file is not read, so that a broken one can't be in the way. Raises
    BadInput with everything that is wrong in it.
    """
    path = _file()
    bundled_only = "--bundled-only" in words or _switch(BUNDLED_ONLY)
    found = Settings() if path is None or bundled_only else _from_file(path)
    for source, typed in (
        (ONLY_PLUGINS, os.environ.get(ONLY_PLUGINS)),
        ("--only-plugins", _after(words, "--only-plugins")),
    ):
        if typed is not None:
            found = found._replace(only_plugins=_names(typed), only_from=source)
    rules = tuple(Path(n) for n in os.environ.get(RULES, "").split(os.pathsep) if n)
    return found._replace(
        rules_files=(*found.rules_files, *rules),
        strict=found.strict or "--strict" in words or _switch(STRICT),
        bundled_only=bundled_only,
        unread=path if bundled_only else None,
    )


def looked_at() -> Path:
    """Return the settings file that is looked for, whether it is there or not."""
    path = Path(os.environ.get(CONFIG) or HOME)
    with contextlib.suppress(RuntimeError):  # no home
        path = path.expanduser()
    return path


def misnamed() -> list[Path]:
    """Return what stands in the settings folder of the home in place of the settings file."""
    path = Path(HOME)
    with contextlib.suppress(OSError, RuntimeError):
        path = path.expanduser()
        if not os.environ.get(CONFIG) and path.is_absolute() and not path.is_file():
            return [p for p in sorted(path.parent.iterdir()) if _nearly_settings(p)]
    return []


def _nearly_settings(path: Path) -> bool:
    endings = [ending.casefold() for ending in path.suffixes]
    named = path.name.casefold().startswith(f"{Path(HOME).stem}.")
    return path.name[0] != "." and (named or any(nearest(e, [".toml"], 0.8) for e in endings))


def _go_on() -> str:
    """Say what a settings file that cannot be used asks for."""
    named = f"{CONFIG} names it; " if os.environ.get(CONFIG) else ""
    return f"{named}mend it, or run without it: --bundled-only"


def _file() -> Path | None:
    named = os.environ.get(CONFIG)
    try:
        path = Path(named or HOME).expanduser()
        if named and not path.is_absolute():
            wrong = f"{named} depends on the current directory"
            raise BadInput([Problem(CONFIG, wrong, "write the whole path")])
        return path if named or (path.is_absolute() and path.is_file()) else None
    except (OSError, RuntimeError):  # no home, or one that may not be looked into
        return None


def _switch(name: str) -> bool:
    said = os.environ.get(name, "").strip().casefold()
    if said not in (*_ON, *_OFF):
        raise BadInput([Problem(name, f"is {said!r}", "set it to 1, or leave it out")])
    return said in _ON


def _after(words: Sequence[str], option: str) -> str | None:
    """Return what stands behind an option. A missing value is complained of where it is split."""
    for word, value in pairwise([*words, ""]):
        if word == option:
            return None if value.startswith("--") else value
        if word.startswith(f"{option}="):
            return word.partition("=")[2]
    return None


def _names(text: str) -> tuple[str, ...]:
    return tuple(name.strip() for name in text.split(",") if name.strip())


def _from_file(path: Path) -> Settings:
    import tomllib

    try:
        said = read_toml(path)
    except tomllib.TOMLDecodeError as error:
        raise BadInput([Problem(str(path), f"is not TOML: {error}", _go_on())]) from None
    except (OSError, BadText) as error:
        why = getattr(error, "strerror", None) or error
        raise BadInput([Problem(str(path), f"cannot be read ({why})", _go_on())]) from None
    problems = list(_wrong(path, said))
    if problems:
        raise BadInput(problems)
    folder, only = said.get("plugin_folder"), said.get("only_plugins")
    return Settings(
        plugin_folder=None if folder is None else path.parent / Path(folder).expanduser(),
        rules_files=tuple(path.parent / Path(n).expanduser() for n in said.get("rules_files", [])),
        only_plugins=None if only is None else tuple(only),
        strict=said.get("strict", False),
        only_from="" if only is None else f"{path}: only_plugins",
        folder_as_written=folder or "",
        file=path,
        instruments={key: said[key] for key in said if key in (FILES, *OF_INSTRUMENTS)},
    )


_PATHS = ("plugin_folder", "rules_files", "instruments_files")
_SHAPES: dict[str, tuple[type, str]] = {
    "plugin_folder": (str, 'write a text: plugin_folder = "plugins"'),
    "rules_files": (list, 'write a list of texts: rules_files = ["rules.toml"]'),
    "only_plugins": (list, 'write a list of texts: only_plugins = ["shop-bench"]'),
    "strict": (bool, "write strict = true or strict = false"),
    "instruments_files": (list, 'write a list of texts: instruments_files = ["van.toml"]'),
}


def _wrong(path: Path, said: Mapping[str, Any]) -> Iterator[Problem]:
    for key, value in said.items():
        if key in OF_INSTRUMENTS:
            continue
        if key not in _SHAPES:
            would_do = did_you_mean(key, sorted([*_SHAPES, *OF_INSTRUMENTS]))
            yield Problem(f"{path}: {key}", "there is no such setting", would_do)
            continue
        shape, would_do = _SHAPES[key]
        texts = isinstance(value, list) and all(isinstance(v, str) and v for v in value)
        if not isinstance(value, shape) or value == "" or (shape is list and not texts):
            yield Problem(f"{path}: {key}", f"is {value!r}", would_do)
        elif key in _PATHS and not _may_be_paths(said[key]):
            would_do = turned("".join(said[key])) or "write a path that can be there"
            yield Problem(f"{path}: {key}", f"is {value!r}", would_do)


def _may_be_paths(said: str | list[str]) -> bool:
    """Whether texts can be paths: no odd sign in one, and no home of a person who is not here."""
    texts = [said] if isinstance(said, str) else said
    try:
        return not any(ord(sign) < 32 for t in texts for sign in str(Path(t).expanduser()))
    except RuntimeError:
        return False
