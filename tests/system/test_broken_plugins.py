"""Thirteen plugins, each broken in its own way, installed together: each is named, nothing else
notices.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

import wirecalc
from wirecalc import BadInput, Finding, PluginDefect

from .conftest import BUNDLED, Outside

Command = Callable[..., Any]
CALCULATION = '''
from typing import Annotated
from wirecalc import Reading, calculation, figure, hookimpl


@calculation(part="shop")
def {name}(
    current: Annotated[float, Reading("A", above=0, high=100, text="line current of the load")],
):
    """Is it the one of this plugin?"""
    {body}


@hookimpl
def wirecalc_calculations():
    return [{name}]
'''


def calculation(name: str, body: str = 'yield figure("made", 1.0)') -> str:
    return CALCULATION.format(name=name, body=body)


# what is wrong: the module, and the words that name the cause
AT_LOADING = {
    "import_error": ("from wirecalc import no_such_name", "no_such_name"),
    "missing_dependency": ("import a_library_that_is_not_there", "a_library_that_is_not_there"),
    "wrong_hook_name": (
        "from wirecalc import hookimpl\n@hookimpl\ndef wirecalc_calculation():\n    return []\n",
        "wirecalc_calculation",
    ),
    "wrong_argument": (
        "from wirecalc import hookimpl\n@hookimpl\ndef wirecalc_calculations(tables):\n"
        "    return []\n",
        "tables",
    ),
    "duplicate_name": (calculation("pull"), "pull is a bundled calculation"),
    "reserved_word": (calculation("explain"), "explain is a reserved word"),
    "exits_at_import": ("import sys\nsys.exit(0)\n", "SystemExit"),
    "another_version": ("WIRECALC_API = (2, 3)\n" + calculation("later"), "versions 2 to 3"),
}
WHEN_RUN = {
    "raises": (calculation("raises", "yield 1 / 0"), "ZeroDivisionError"),
    "runaway": (
        calculation("runaway", 'for i in range(20000): yield figure(f"figure {i}", 1.0)'),
        "more than 10000 items",
    ),
    "not_finite": (calculation("not_finite", 'yield figure("made", float("inf"))'), "inf"),
    "wrong_type": (calculation("wrong_type", 'yield "a text"'), "str"),
}
SLOW = {"slow_import": "import time\ntime.sleep(1.1)\n" + calculation("slow_import")}


@pytest.fixture
def broken(outside: Outside) -> Outside:
    sources = {n: s for n, (s, _) in {**AT_LOADING, **WHEN_RUN}.items()} | SLOW
    assert len(sources) == 13
    for name, source in sources.items():
        outside.add(f"demo_{name}", source)
    return outside


def test_each_is_named_with_version_and_cause(plugged: Command, broken: Outside) -> None:
    done = plugged("plugins", "--format", "json")
    assert done.status == 0
    by_name = {p["name"]: p for p in done.json["plugins"]}
    for name, (_, cause) in AT_LOADING.items():
        plugin = by_name[f"demo_{name}"]
        assert plugin["state"] in ("failed", "in part"), name
        assert plugin["version"] == "1.0"
        assert cause in plugin["reason"], name
    assert by_name["demo_slow_import"]["slow"]
    assert by_name["demo_slow_import"]["state"] == "loaded"
    assert by_name["demo_slow_import"]["load_time"] > 1.1
    for name in WHEN_RUN:
        assert by_name[f"demo_{name}"]["state"] == "loaded"
        assert by_name[f"demo_{name}"]["calculations"] == [name.replace("_", "-")]


def test_the_text_listing_keeps_to_80_columns(plugged: Command, broken: Outside) -> None:
    text = plugged("plugins").out
    assert max(map(len, text.splitlines())) <= 80
    for name, (_, cause) in AT_LOADING.items():
        assert f"demo_{name}" in text
        assert cause in " ".join(text.split())
    assert re.search(r"slow: its import took \d+\.\d", text)


def test_a_run_says_each_on_one_line_of_stderr(plugged: Command, broken: Outside) -> None:
    done = plugged("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "19.2 lbf")
    assert done.status == 1
    for name in (*AT_LOADING, "slow_import"):
        (line,) = [c for c in done.complaints if c.startswith(f"plugin demo_{name} of ")]
        assert f"plugin demo_{name} of demo-{name.replace('_', '-')} 1.0 " in line
    assert len(done.complaints) == len(AT_LOADING) + 1


def values(finding: Finding) -> list[tuple[str, float]]:
    return [(f.figure.name, f.figure.value) for f in finding.figures]


def test_every_bundled_calculation_works_beside_them(plugged: Command, broken: Outside) -> None:
    beside, alone = wirecalc.build(), wirecalc.build(bundled_only=True)
    names = [name for names in BUNDLED.values() for name in names]
    ran = 0
    for name in names:
        given = alone.calculations[name].calculation.example_inputs
        calc = alone.calculations[name].calculation
        given = calc.example_inputs
        try:
            expected = alone.run(name, given)
        except BadInput as error:  # its example is a file
            assert "there is no file" in str(error), name
            continue
        found = beside.run(name, given)
        assert found.verdict == expected.verdict, name
        assert values(found) == values(expected), name
        assert [c.reason for c in found.criteria] == [c.reason for c in expected.criteria], name
        ran += 1
    assert ran >= len(names) - 1


@pytest.mark.parametrize("name", WHEN_RUN)
def test_one_that_is_asked_for_is_a_defect_of_its_plugin(
    plugged: Command, broken: Outside, name: str
) -> None:
    done = plugged(name.replace("_", "-"), "--current", "5 A")
    assert (done.status, done.out) == (4, "")
    assert f"of plugin demo_{name} 1.0 failed" in done.err
    assert WHEN_RUN[name][1] in done.err


def test_a_slow_one_runs(plugged: Command, broken: Outside) -> None:
    assert plugged("slow-import", "--current", "5 A").status == 0


def test_strictly_nothing_is_computed(plugged: Command, broken: Outside) -> None:
    pull = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "24 lbf")
    done = plugged(*pull, "--strict")
    assert (done.status, done.out) == (4, "")
    for name in AT_LOADING:
        assert f"demo_{name}" in done.err
    assert plugged("plugins", "--strict").status == 4
    assert plugged(*pull, "--strict", "--only-plugins", "demo-raises").status == 0
    assert plugged(*pull, "--strict", "--bundled-only").status == 0


def test_strictly_in_python(broken: Outside, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("WIRECALC_STRICT", "1")
    monkeypatch.setenv("WIRECALC_ONLY_PLUGINS", "demo_exits_at_import")
    with pytest.raises(PluginDefect, match="demo_exits_at_import"):
        wirecalc.build()


STRANGE = {
    "raises what is no Exception": ("raise GeneratorExit('gone')\n", "GeneratorExit"),
    "raises its own kind": ("class Odd(BaseException): pass\nraise Odd('odd')\n", "Odd: odd"),
    "hook without its mark": ("def wirecalc_calculations():\n    return []\n", "@hookimpl"),
    "nearly a hook": ("def wirecalc_house_rule():\n    return []\n", "mean wirecalc_house_rules"),
    "version is a number": ("WIRECALC_API = 1\n", "WIRECALC_API = (1, 1)"),
    "versions backwards": ("WIRECALC_API = (2, 1)\n", "WIRECALC_API = (1, 1)"),
    "version true": ("WIRECALC_API = (True, True)\n", "WIRECALC_API = (1, 1)"),
}


@pytest.mark.parametrize("case", STRANGE)
def test_strange_ones(plugged: Command, outside: Outside, case: str) -> None:
    source, says = STRANGE[case]
    outside.add("demo_strange", source)
    done = plugged("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "24 lbf")
    assert done.status == 0
    (line,) = done.complaints
    assert "demo_strange of demo-strange 1.0" in line
    assert says in line


@pytest.mark.parametrize("said", ["", "WIRECALC_API = (1, 1)", "WIRECALC_API = (1, 4)"])
def test_a_plugin_that_supports_this_version_is_loaded(
    plugged: Command, outside: Outside, said: str
) -> None:
    outside.add("demo_good", f"{said}\n{calculation('good')}")
    assert plugged("good", "--current", "5 A").status == 0


def test_what_a_plugin_prints_at_import_is_no_output(plugged: Command, outside: Outside) -> None:
    outside.add("demo_chatty", "print('hello')\n" + calculation("chatty"))
    done = plugged("chatty", "--current", "5 A", "--format", "json")
    assert done.json["calculation"] == "chatty"
    assert "hello" in done.err


def test_the_allow_list(plugged: Command, outside: Outside) -> None:
    outside.add("demo_one", calculation("one"))
    outside.add("demo_two", "raise RuntimeError('imported')\n", "demo-other")
    for listed in ("demo_one", "demo-one", "Demo.One"):
        done = plugged("one", "--current", "5 A", "--only-plugins", listed)
        assert (done.status, done.err) == (0, "")
        assert "demo_two of demo-other 1.0: not among" in " ".join(done.out.split())
    assert plugged("one", "--current", "5 A", "--only-plugins=demo-other").status == 2
    done = plugged("pull", "--help", "--only-plugins", "demo_twoo")
    assert done.status == 0  # help of a bundled calculation looks for no plugin
    done = plugged("plugins", "--only-plugins", "demo_twoo")
    assert done.status == 2
    assert "demo_twoo" in done.err
    assert "did you mean demo_two?" in done.err
    done = plugged("plugins", "--only-plugins")
    assert done.status == 2


def test_calculation_of_a_plugin_that_did_not_load_is_not_just_unknown(
    plugged: Command, outside: Outside, tmp_path: Path
) -> None:
    outside.add("demo_broken", "raise RuntimeError('the sheet is missing')\n")
    said = "plugin demo_broken of demo-broken 1.0 was not loaded and may have it"
    for words in (("frost", "--thickness", "3 mm"), ("explain", "frost"), ("frost", "--help")):
        done = plugged(*words)
        assert (done.status, done.out) == (2, "")
        where = "(demo_broken.py, line 1)"
        assert f"{said} (RuntimeError: the sheet is missing {where})" in " ".join(done.err.split())
    left_out = "plugin demo_broken of demo-broken 1.0 was left out and may have it"
    assert left_out in " ".join(plugged("frost", "--bundled-only").err.split())
    with pytest.raises(BadInput, match="was not loaded and may have it"):
        wirecalc.build().run("frost", {})
    for entry in ("[[check]]\n", '[[not_tested]]\nname = "ice"\nreason = "thawed"\n'):
        sheet = tmp_path / "sheet.toml"
        sheet.write_text(f'[job]\ntitle = "t"\n{entry}calculation = "frost"\n', encoding="utf-8")
        done = plugged("job", str(sheet))
        assert (done.status, done.out) == (2, "")
        assert f"{said} (RuntimeError: the sheet is missing {where})" in done.err


ASKING = """
from wirecalc import RequiredChecks, hookimpl

@hookimpl
def wirecalc_house_rules():
    return [RequiredChecks("our list", ("{kind}", "boat"), ("ground",))]
"""


@pytest.mark.parametrize("kind", ["refrigeratr", "Refrigerator"])
def test_a_kind_of_job_that_is_nearly_a_listed_one_is_said(
    plugged: Command, outside: Outside, kind: str
) -> None:
    """Its required checks would never be asked for; a kind of the shop's own is no slip."""
    outside.add("demo_asking", ASKING.format(kind=kind))
    said = "its rule our list is for jobs of kind refrigeratr, which is not listed"
    for words in (("gauge", "--strands", "41"), ("plugins",)):
        done = plugged(*words)
        assert (said in " ".join((done.out + done.err).split())) == (kind == "refrigeratr")
    assert (plugged("plugins", "--strict").status == 4) == (kind == "refrigeratr")
    assert "boat" not in plugged("plugins").err
