"""The kit for tests of a plugin: run the command line in process, have only some plugins, and
check a plugin, a calculation or a folder of tables against what wirecalc asks of it.

    import my_shop
    from wirecalc.testing import check_plugin, plugin_set, run_command

    def test_keeps_to_the_contract():
        assert check_plugin(my_shop) == []

    def test_command_line():
        with plugin_set(my_shop):
            assert run_command("door-gap", "--seal-gap", "1.2 mm").status == 1

`wirecalc.testing.properties` are ready made for hypothesis, `wirecalc.testing.strategies` draw.
Every check returns what is wrong as texts, none where nothing is. Only the fixtures need pytest:
`pytest_plugins = ["wirecalc.testing.fixtures"]` in a test module or conftest gives them.
"""

from __future__ import annotations

from ..rules.shop_folder import check_tables
from .calculations import check_calculation, finding_of
from .command import Outcome, run_command
from .outside import Outside
from .plugins import check_hooks, check_plugin
from .sets import plugin_set

__all__ = [
    "Outcome",
    "Outside",
    "check_calculation",
    "check_hooks",
    "check_plugin",
    "check_tables",
    "finding_of",
    "plugin_set",
    "run_command",
]
