"""Plugins from outside that are broken: each is named, and the rest goes on as before."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from .conftest import BUNDLED, Outside

Command = Callable[..., Any]
PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force")
CALCULATION = '''
from collections.abc import Iterator
from typing import Annotated
from wirecalc import Item, Reading, calculation, figure, hookimpl


@calculation(part="shop")
def {name}(
    current: Annotated[float, Reading("A", above=0, high=100, text="line current of the load")],
) -> Iterator[Item]:
    """Is this the calculation of {by}?"""
    yield figure("made by {by}", 1.0)


@hookimpl
def wirecalc_calculations():
    return [{name}]
'''


def _calculation(name: str, by: str = "outside") -> str:
    return CALCULATION.format(name=name, by=by)


def _hook(name: str, arguments: str = "", body: str = "return []") -> str:
    return f"from wirecalc import hookimpl\n\n@hookimpl\ndef {name}({arguments}):\n    {body}\n"


# what is wrong, the module, and the words that say so
BROKEN = {
    "import error": ("import no_such_module_of_ours\n", "no_such_module_of_ours"),
    "syntax error": ("def broken(:\n", "SyntaxError"),
    "raises at import": ("raise RuntimeError('two\\nlines')\n", "two lines"),
    "exits at import": ("raise SystemExit(0)\n", "SystemExit"),
    "hook raises": (_hook("wirecalc_calculations", body="return 1 / 0"), "ZeroDivisionError"),
    "hook exits": (_hook("wirecalc_house_rules", body="raise SystemExit(0)"), "SystemExit"),
    "hook returns no list": (_hook("wirecalc_calculations", body="return 7"), "int"),
    "hook returns texts": (_hook("wirecalc_calculations", body="return ['pull']"), "'pull'"),
    "tables hook raises": (_hook("wirecalc_tables", body="return 1 / 0"), "ZeroDivisionError"),
    "cautions hook raises": (_hook("wirecalc_cautions", body="return 1 / 0"), "ZeroDivisionError"),
    "unknown hook": (_hook("wirecalc_verdicts"), "wirecalc_verdicts"),
    "unknown hook beside a good one": (
        _calculation("outside") + _hook("wirecalc_verdicts"),
        "wirecalc_verdicts",
    ),
    "wrong hook argument": (_hook("wirecalc_calculations", "findings"), "findings"),
    "wrong hook argument beside a good one": (
        _calculation("outside") + _hook("wirecalc_tables", "findings"),
        "findings",
    ),
    "reserved word": (_calculation("job"), "reserved"),
    "bundled name": (_calculation("pull"), "pull"),
    "no docstring": (_calculation("outside").replace('"""Is', "pass  # "), ""),
    "no unit in the signature": (
        _calculation("outside").replace('Reading("A",', 'Reading("amperes of old",'),
        "amperes of old",
    ),
    "table folder is not there": (
        "from pathlib import Path\n"
        + _hook("wirecalc_tables", body="return [Path('/nowhere/at/all')]"),
        "",
    ),
}
FAILING = {k: v for k, v in BROKEN.items() if k != "table folder is not there"}


VERDICTS = {"24 lbf": 0, "19.2 lbf": 1, "20.3 lbf ±0.5 lbf": 3}


def _not_checked(text: str) -> str:
    return " ".join(text.partition("\nNot checked\n")[2].partition("\n\n")[0].split())


@pytest.mark.parametrize("case", FAILING)
def test_broken_plugin_is_named_and_the_rest_goes_on(
    plugged: Command, outside: Outside, case: str
) -> None:
    source, says = BROKEN[case]
    outside.add("demo_broken", source, "demo-outside")
    for force, status in VERDICTS.items():
        done = plugged(*PULL, force)
        assert done.status == status
        assert len(done.err.splitlines()) == 1, done.err
        assert "demo_broken of demo-outside 1.0" in done.err
        assert says in done.err
        assert "demo_broken of demo-outside 1.0" in _not_checked(done.out)


@pytest.mark.parametrize("case", FAILING)
def test_broken_plugin_is_listed(plugged: Command, outside: Outside, case: str) -> None:
    outside.add("demo_broken", BROKEN[case][0], "demo-outside")
    done = plugged("plugins", "--format", "json")
    assert done.status == 0
    by_name = {p["name"]: p for p in done.json["plugins"]}
    assert by_name["demo_broken"]["state"] in ("failed", "in part")
    assert BROKEN[case][1] in by_name["demo_broken"]["reason"]
    assert by_name["demo_broken"]["calculations"] == []
    del by_name["demo_broken"]
    names = sorted(name for names in BUNDLED.values() for name in names)
    assert {n: p["calculations"] for n, p in by_name.items()} == {"bundled": names}


@pytest.mark.parametrize("case", BROKEN)
def test_trouble_nobody_asked_for_changes_no_output(
    command: Command, outside: Outside, case: str, alone: dict[str, Any]
) -> None:
    """The same verdict, decided by the same criterion, and the same numbers."""
    outside.add("demo_broken", BROKEN[case][0], "demo-outside")
    done = command(*PULL, "19.2 lbf", "--format", "json", env=outside.env)
    assert done.status == 1
    finding = done.json
    del finding["not_checked"]
    assert finding == alone


@pytest.fixture
def alone(cli_main: Command) -> dict[str, Any]:
    """The finding without any plugin from outside, less what was not checked."""
    finding: dict[str, Any] = cli_main(*PULL, "19.2 lbf", "--format", "json").json
    del finding["not_checked"]
    return finding


@pytest.mark.parametrize("case", ["exits at import", "table folder is not there"])
def test_table_look_up_goes_on(command: Command, outside: Outside, case: str) -> None:
    outside.add("demo_broken", BROKEN[case][0])
    done = command("tables", "awg", env=outside.env)
    assert (done.status, done.out) == (0, command("tables", "awg").out)


def test_listing_of_plugins_names_it_within_80_columns(plugged: Command, outside: Outside) -> None:
    outside.add("demo_broken", f"raise RuntimeError({'long words ' * 30!r})\n", "demo-outside")
    done = plugged("plugins")
    assert done.status == 0
    assert "demo_broken" in done.out
    assert "RuntimeError" in done.out
    assert [line for line in done.out.splitlines() if len(line) > 80] == []


def test_bundled_calculation_keeps_its_name(plugged: Command, outside: Outside) -> None:
    outside.add("aaa_first", _calculation("pull", "somebody else"))
    done = plugged(*PULL, "24 lbf")
    assert done.out.startswith("PASS  pull-out force")
    assert "somebody else" not in done.out
    assert "bundled" in done.err


def test_two_outsiders_with_one_name_are_both_refused(plugged: Command, outside: Outside) -> None:
    outside.add("demo_one", _calculation("clash", "one"))
    outside.add("demo_two", _calculation("clash", "two"))
    done = plugged("clash", "--current", "1 A")
    assert (done.status, done.out) == (2, "")
    done = plugged(*PULL, "24 lbf")
    assert done.status == 0
    assert sorted(line.split(" of ")[0] for line in done.complaints) == [
        "plugin demo_one",
        "plugin demo_two",
    ]
    listing = plugged()
    assert listing.status == 0
    assert "clash" not in listing.out


def test_two_broken_ones_are_both_named(plugged: Command, outside: Outside) -> None:
    outside.add("demo_one", "raise SystemExit(3)\n")
    outside.add("demo_two", _hook("wirecalc_verdicts"))
    outside.add("demo_three", _hook("wirecalc_verdicts"))
    done = plugged(*PULL, "24 lbf")
    assert done.status == 0
    assert len(done.complaints) == 3


@pytest.mark.parametrize(
    ("body", "says"),
    [
        ("yield figure('a', 1 / 0)", "ZeroDivisionError"),
        ("yield figure('a', float('nan'))", "nan"),
        ("yield 'a text'", "str"),
        ("raise SystemExit(0)", "SystemExit"),
        ("yield figure('a', 1)\n    yield figure('a', 2)", "twice"),
        ("while True: yield figure('a' + str(id(object())), 1)", ""),
        ("return 7", ""),
    ],
    ids=["raises", "nan", "no item", "exits", "twice", "endless", "no items"],
)
def test_calculation_that_raises_is_a_defect(
    command: Command, outside: Outside, write_sheet: Callable[..., Path], body: str, says: str
) -> None:
    outside.add(
        "demo_raises",
        _calculation("raises").replace('yield figure("made by outside"', f"{body}  # "),
    )
    done = command("raises", "--current", "1 A", env=outside.env)
    assert (done.status, done.out) == (4, "")
    assert "raises of plugin demo_raises" in done.err
    assert says in done.err
    assert "Traceback" not in done.err
    sheet = write_sheet(
        {"calculation": "raises", "current": "1 A"},
        {"calculation": "pull", "wire": "18 AWG", "terminal": "ring", "force": "24 lbf"},
    )
    job = command("job", str(sheet), "--format", "json", env=outside.env)
    assert job.status == 4
    broken, good = job.json["checks"]
    assert broken["finding"] is None
    assert "demo_raises" in broken["defect"]
    assert good["finding"]["verdict"] == "pass"


def test_fail_of_a_job_goes_before_a_defect(
    command: Command, outside: Outside, write_sheet: Callable[..., Path]
) -> None:
    outside.add("demo_raises", _calculation("raises").replace("1.0)", "1 / 0)"))
    pull = {"calculation": "pull", "wire": "18 AWG", "terminal": "ring", "force": "19 lbf"}
    sheet = write_sheet({"calculation": "raises", "current": "1 A"}, pull)
    assert command("job", str(sheet), env=outside.env).status == 1


def test_interrupt_exits_130(command: Command, outside: Outside) -> None:
    body = _calculation("waits").replace("yield figure", "raise KeyboardInterrupt  # ")
    outside.add("demo_waits", body)
    done = command("waits", "--current", "1 A", env=outside.env)
    assert (done.status, done.out) == (130, "")
    assert "Traceback" not in done.err
