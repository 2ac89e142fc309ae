"""What the command line and the job sheet call their own, no calculation and no input may take."""

from __future__ import annotations

from wirecalc.commands import COMMANDS
from wirecalc.commands.usage import GENERAL
from wirecalc.engine.reserved import RESERVED_INPUTS, RESERVED_NAMES


def test_every_command_is_reserved() -> None:
    assert {*COMMANDS, "help", "version"} <= RESERVED_NAMES


def test_every_option_beside_inputs_is_reserved() -> None:
    options = {*GENERAL, *COMMANDS["batch"].own}
    assert {o.removeprefix("--").replace("-", "_") for o in options} <= RESERVED_INPUTS
