"""Slips that the author of a plugin makes: each is told with file, line, what and what would do."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, NamedTuple

import pytest

from .conftest import Outside

Command = Callable[..., Any]
PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "24 lbf")
FROST = ("frost", "--depth", "3 mm")

WHOLE = '''
from pathlib import Path
from typing import Annotated
from wirecalc import PRACTICE, HouseRule, Reading, at_least, at_most, calculation, figure, hookimpl


@calculation(part="shop", words=("ice",))
def frost(
    depth: Annotated[float, Reading("mm", low=0, high=100, text="thickest frost")],
):
    """Is there too much frost, in mm?"""
    yield figure("frost", depth / 25.4, "in")
    yield at_most("frost", depth, 6.0, "mm", source=PRACTICE)


def harder(inputs, items):
    yield at_least("harder", inputs["force"], 20.0, "lbf", source=PRACTICE)


@hookimpl
def wirecalc_calculations():
    return [frost]


@hookimpl
def wirecalc_house_rules():
    return [HouseRule("shop pull", ("pull",), harder)]
'''


class Slip(NamedTuple):
    """A slip: what it changes of a plugin that is whole, what is run, its status, what is said.

    It is told to be in the line `at`, which is marked in it unless another is named.
    """

    old: str
    new: str
    run: tuple[str, ...]
    status: int
    what: str
    would_do: str
    at: str = "# here"


AT_MOST = 'yield at_most("frost", depth, 6.0, "mm", source=PRACTICE)'
SLIPS = {
    "a name that wirecalc has not": Slip(
        "from wirecalc import PRACTICE",
        "from wirecalc import at_lest, PRACTICE",
        PULL,
        0,
        "wirecalc has no 'at_lest'",
        "did you mean at_least?",
        at="import at_lest",
    ),
    "a library that is not installed": Slip(
        "from pathlib import Path",
        "import frostlib  # here",
        PULL,
        0,
        "it needs the module frostlib, which is not installed beside it",
        "install it, and name it under `dependencies` in its pyproject.toml",
    ),
    "a bracket that is not closed": Slip(
        "return [frost]",
        "return [frost  # here",
        PULL,
        0,
        "SyntaxError: '[' was never closed",
        "was never closed",
    ),
    "a name with a letter too few": Slip(
        "@calculation(",
        "@calculatio(  # here\n    ",
        PULL,
        0,
        "NameError: name 'calculatio' is not defined",
        "did you mean calculation?",
    ),
    "a unit that is none": Slip(
        'Reading("mm", low=0, high=100, text="thickest frost")],',
        'Reading("millimetrs", text="frost")],  # here',
        PULL,
        0,
        "'millimetrs' is no unit that wirecalc knows",
        "did you mean millimetres, which is mm? Or declare one of your own with declare_unit",
    ),
    "an input without a kind": Slip(
        'depth: Annotated[float, Reading("mm", low=0, high=100, text="thickest frost")],',
        "depth: float,",
        PULL,
        0,
        "frost(depth)",
        "write Annotated[type, kind or text]",
        at="@calculation",
    ),
    "a kind for another type": Slip(
        "Annotated[float, Reading",
        "Annotated[int, Reading",
        PULL,
        0,
        "frost(depth): int with a Reading is no kind of input",
        "a float takes Reading or Nameplate, an int Count",
        at="@calculation",
    ),
    "no docstring": Slip(
        '"""Is there too much frost, in mm?"""',
        "",
        PULL,
        0,
        "frost has no docstring",
        "its first line is its question",
        at="@calculation",
    ),
    "no @calculation": Slip(
        '@calculation(part="shop", words=("ice",))\ndef frost(',
        "def frost(  # here",
        PULL,
        0,
        "wirecalc_calculations returned the function frost, which is no Calculation",
        "write @calculation(...) above it",
    ),
    "no list": Slip(
        "@hookimpl\ndef wirecalc_calculations():\n    return [frost]",
        "@hookimpl  # here\ndef wirecalc_calculations():\n    return frost",
        PULL,
        0,
        "wirecalc_calculations returned one Calculation",
        "return a list of them",
    ),
    "no @hookimpl": Slip(
        "@hookimpl\ndef wirecalc_calculations():",
        "def wirecalc_calculations():  # here",
        PULL,
        0,
        "wirecalc_calculations is not marked, so it is not used",
        "write @hookimpl above it",
    ),
    "a hook with a letter too few": Slip(
        "@hookimpl\ndef wirecalc_calculations():",
        "@hookimpl  # here\ndef wirecalc_calculation():",
        PULL,
        0,
        "wirecalc_calculation is no hook",
        "did you mean wirecalc_calculations?",
    ),
    "a hook that asks for something": Slip(
        "@hookimpl\ndef wirecalc_calculations():",
        "@hookimpl  # here\ndef wirecalc_calculations(config):",
        PULL,
        0,
        "wirecalc_calculations asks for config, and it is given nothing",
        "write wirecalc_calculations()",
    ),
    "no return": Slip(
        "@hookimpl\ndef wirecalc_calculations():\n    return",
        "@hookimpl  # here\ndef wirecalc_calculations():\n    ",
        PULL,
        0,
        "wirecalc_calculations returned None",
        "return a list, [] for nothing",
    ),
    "a name of the inputs that is none": Slip(
        'yield at_least("harder", inputs["force"]',
        'yield at_least("harder", inputs["forc"]',
        PULL,
        3,
        "house rule shop pull of demo_shop failed: there is no input 'forc'",
        "did you mean force?",
        at="inputs[",
    ),
    "a rule for a calculation that is none": Slip(
        '("pull",)',
        '("pul",)',
        PULL,
        0,
        "shop pull is for pul, which is no calculation",
        "did you mean pull?",
        at="def harder",
    ),
    "a rule for one text": Slip(
        '("pull",)',
        '"pull"',
        PULL,
        0,
        "rule 'shop pull': its calculations are 'pull'",
        "write ('pull',)",
        at="def harder",
    ),
    "return in place of yield": Slip(
        f'yield figure("frost", depth / 25.4, "in")\n    {AT_MOST}',
        f"return {AT_MOST.removeprefix('yield ')}",
        FROST,
        4,
        "it returns a Criterion",
        "write yield in front of each thing that it finds",
        at="@calculation",
    ),
    "no source": Slip(
        AT_MOST,
        'yield at_most("frost", depth, 6.0, "mm")  # here',
        FROST,
        4,
        "missing 1 required keyword-only argument: 'source'",
        "write source=",
    ),
    "a name twice": Slip(
        AT_MOST,
        f"{AT_MOST}\n    {AT_MOST}  # here",
        FROST,
        4,
        "it yields 'frost' twice",
        "give each a name of its own",
    ),
    "a truth in place of a number": Slip(
        AT_MOST,
        'yield at_most("frost", depth < 6, 1, source=PRACTICE)  # here',
        FROST,
        4,
        "actual of 'frost' is True",
        "write a number; what must hold is yielded with requires",
    ),
    "a text in place of a number": Slip(
        AT_MOST,
        'yield at_most("frost", depth, "6", "mm", source=PRACTICE)  # here',
        FROST,
        4,
        "limit of 'frost' is '6'",
        "write a number",
    ),
    "a key that a mapping has not": Slip(
        AT_MOST,
        '{"wire": 1}["wire_used"]  # here',
        FROST,
        4,
        "KeyError: there is no key 'wire_used'",
        "ask for one that there is, or with get",
    ),
    "a division by nothing": Slip(
        "depth / 25.4",
        "depth / 0",
        FROST,
        4,
        "ZeroDivisionError",
        "refuse the inputs that lead there, or yield cannot_tell",
        at="depth / 0",
    ),
    "a caution that nobody wrote": Slip(
        'words=("ice",)',
        'cautions=("ice-1",)',
        FROST,
        4,
        "there is no caution 'ice-1'",
        "`wirecalc tables cautions` lists them",
        at="@calculation",
    ),
    "a folder that depends on where one stands": Slip(
        "@hookimpl\ndef wirecalc_calculations",
        '@hookimpl  # here\ndef wirecalc_tables():\n    return [Path("tables")]\n\n\n'
        "@hookimpl\ndef wirecalc_calculations",
        PULL,
        0,
        "its folder of tables, tables, depends on the current directory",
        'write Path(__file__).parent / "tables"',
    ),
}


@pytest.mark.parametrize("case", SLIPS)
def test_a_slip_is_told_with_its_place(plugged: Command, outside: Outside, case: str) -> None:
    slip = SLIPS[case]
    source = WHOLE.replace(slip.old, slip.new)
    assert source != WHOLE
    outside.add("demo_shop", source)
    done = plugged(*slip.run)
    told = " ".join((done.out + done.err).split())
    assert done.status == slip.status, done.err
    assert "Traceback" not in told
    assert slip.what in told
    assert slip.would_do in told
    line = source[: source.index(slip.at)].count("\n") + 1
    assert f"(demo_shop.py, line {line})" in told


def test_there_are_twenty_and_the_plugin_without_them_is_whole(
    plugged: Command, outside: Outside
) -> None:
    assert len(SLIPS) >= 20
    outside.add("demo_shop", WHOLE)
    for words in (PULL, FROST):
        done = plugged(*words)
        assert (done.status, done.err) == (0, "")
