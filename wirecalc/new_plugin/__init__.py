"""Writing a shop's first plugin: a package to install at once, and to change.

The files are templates beside this module; `$name`, `$module`, `$function` and `$calculation`
stand for the names in them.
"""

from __future__ import annotations

import importlib.util
import keyword
import re
import sys
from collections.abc import Collection
from pathlib import Path
from string import Template
from typing import NamedTuple

from ..base.errors import BadInput, Problem
from ..base.files import write_folder
from ..engine.reserved import RESERVED_NAMES

FILES = {  # where each is written -> its template; one without a template is empty
    "pyproject.toml": "pyproject.toml.tmpl",
    "README.md": "README.md.tmpl",
    "$module/__init__.py": "package.py.tmpl",
    "$module/py.typed": "",
    "tests/test_$module.py": "tests.py.tmpl",
}
BUNDLED = "bundled"  # a plugin of this name would be refused
LONGEST_NAME = 30  # so that the lines of the templates fit


class Names(NamedTuple):
    """The names of a new plugin: of the package, its module, its calculation and the function."""

    name: str
    module: str
    calculation: str
    function: str


def names_for(name: str, calculations: Collection[str] = ()) -> Names:
    """Return the names that a plugin of this name has.

    Raises BadInput, with the reason, for a name that will not do: badly spelt, too long, a word
    of Python or of wirecalc, one of its `calculations`, or a module that is here already.
    """
    module = name.replace("-", "_")
    wrong = _wrong(name, module, calculations)
    if wrong:
        raise BadInput([Problem(repr(name), wrong, _would_do(name))])
    return Names(name, module, f"{name}-gap", f"{module}_gap")


def _wrong(name: str, module: str, calculations: Collection[str]) -> str:
    if not re.fullmatch(r"[a-z][a-z0-9]*(-[a-z0-9]+)*", name):
        return "is not in lower-case letters, digits and single hyphens, a letter first"
    if len(name) > LONGEST_NAME:
        return f"has {len(name)} characters, more than {LONGEST_NAME}"
    if keyword.iskeyword(module) or keyword.issoftkeyword(module):
        return "is a word of Python itself"
    if name in RESERVED_NAMES:
        return "is a command of wirecalc"
    if name in calculations:
        return "is a calculation already"
    if name == BUNDLED:
        return "is the name of the plugin that comes with wirecalc"
    if module in sys.stdlib_module_names:
        return "is a module of Python's own library"
    if module == "tests" or importlib.util.find_spec(module) is not None:
        return f"will not do: a module {module} is here already"
    return ""


def _would_do(name: str) -> str:
    tidy = "-".join(re.findall(r"[a-z0-9]+", name.casefold())).lstrip("0123456789-")
    if tidy and tidy != name and not _wrong(tidy, tidy.replace("-", "_"), ()):
        return f"did you mean {tidy}?"
    return "such as shop-bench"


def write(names: Names, folder: Path) -> list[str]:
    """Write the package into a new folder, whole or not at all; return the names of its files.

    Raises BadInput where something is there already, or where it cannot be written.
    """
    words = names._asdict()
    files = {
        Template(path).substitute(words): Template(_template(name)).substitute(words).encode()
        for path, name in FILES.items()
    }
    elsewhere = "choose another place with --output"
    if not write_folder(folder, files, elsewhere):
        wrong = "is there already, and nothing of it was changed"
        raise BadInput([Problem(str(folder), wrong, elsewhere)])
    return list(files)


def _template(name: str) -> str:
    return (Path(__file__).parent / name).read_text(encoding="utf-8") if name else ""
