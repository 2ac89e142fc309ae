"""The hooks that a plugin may implement. A plugin is a module named in the entry-point group
`wirecalc`; it marks its functions with `hookimpl`.

    from wirecalc import hookimpl

    @hookimpl
    def wirecalc_calculations():
        return [my_calculation]

Every hook returns a list of records; results are sorted by name, so the order of plugins never
matters. A hook that raises loses only its own plugin, which is reported by name.

These are the hooks of version 1: they may get more arguments, and never fewer or others. In the
examples an object stands for the module; docs/hooks.md has them as modules.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pluggy

if TYPE_CHECKING:
    from ..engine.declaration import Calculation
    from ..engine.deferred_calculation import Deferred
    from ..engine.from_plugins import HouseRule
    from ..rules.requirements import RequiredChecks
    from ..said.items import Caution

API_VERSION = 1  # of the hooks; a plugin may say which it supports, as WIRECALC_API = (1, 1)
PROJECT = "wirecalc"  # pluggy's project name and the entry-point group

hookspec = pluggy.HookspecMarker(PROJECT)
hookimpl = pluggy.HookimplMarker(PROJECT)


@hookspec
def wirecalc_calculations() -> Sequence[Calculation[Any] | Deferred]:  # type: ignore[empty-body]
    """Return the calculations that this plugin provides, themselves or `deferred`.

    Called once a run, after all plugins are loaded. A name that a bundled calculation has is
    refused; of two plugins with one name both are refused.

        >>> from typing import Annotated
        >>> from wirecalc import PRACTICE, Reading, at_most, calculation
        >>> from wirecalc.testing import plugin_set
        >>> @calculation(part="shop")
        ... def seal(seal_gap: Annotated[float, Reading("mm", low=0, high=20, text="its gap")]):
        ...     '''Is a seal of this gap, in mm, tight enough?'''
        ...     yield at_most("seal gap", seal_gap, 1.0, "mm", source=PRACTICE)
        >>> class Shop:
        ...     @hookimpl
        ...     def wirecalc_calculations(self):
        ...         return [seal]
        >>> with plugin_set(Shop()) as plugins:
        ...     str(plugins.run("seal", {"seal_gap": "1.2 mm"}).verdict)
        'fail'
    """


@hookspec
def wirecalc_tables() -> Sequence[Path]:  # type: ignore[empty-body]
    """Return folders with tables (CSV and TOML sidecar, as docs/tables.md describes).

    Tables may be added under new names. A folder that would replace a bundled table is refused. A
    table whose sidecar says `stricter_than = "NAME"` gives stricter rows beside a published one.

        >>> from wirecalc import tables
        >>> from wirecalc.testing import plugin_set
        >>> class Shop:
        ...     @hookimpl
        ...     def wirecalc_tables(self):
        ...         return [tables.bundled_folder()]  # a folder of your own, in earnest
        >>> with plugin_set(Shop()) as plugins:
        ...     plugins.plugins[-1].reason.endswith("add one under another name")
        True
    """


@hookspec
def wirecalc_cautions() -> Sequence[Caution]:  # type: ignore[empty-body]
    """Return cautions to add to the library. One whose key is there already changes nothing.

    >>> from wirecalc import Caution, caution
    >>> from wirecalc.testing import plugin_set
    >>> class Shop:
    ...     @hookimpl
    ...     def wirecalc_cautions(self):
    ...         return [Caution("shop-01", "Hang the tag on the machine.")]
    >>> with plugin_set(Shop()):
    ...     caution("shop-01").text
    'Hang the tag on the machine.'
    """


@hookspec
def wirecalc_house_rules() -> Sequence[HouseRule | RequiredChecks]:  # type: ignore[empty-body]
    """Return a shop's own criteria, and the checks that it wants in a kind of job.

    A house rule runs inside every run of the instrument's band, on that run's inputs and items.
    It can only add criteria, cautions and what was not checked, so it can make a verdict stricter
    and never milder.
    `RequiredChecks` says which checks a kind of job must have; one that is not made is a required
    check that was not tested.

        >>> from wirecalc import PRACTICE, HouseRule, at_least
        >>> from wirecalc.testing import plugin_set
        >>> def harder(inputs, items):
        ...     yield at_least("shop pull", inputs["force"], 25.0, "lbf", source=PRACTICE)
        >>> class Shop:
        ...     @hookimpl
        ...     def wirecalc_house_rules(self):
        ...         return [HouseRule("harder", ("pull",), harder)]
        >>> given = {"wire": "18 AWG", "terminal": "ring", "force": "24 lbf"}
        >>> with plugin_set(Shop()) as plugins:
        ...     [str(c.verdict) for c in plugins.run("pull", given).criteria]
        ['pass', 'fail']
    """
