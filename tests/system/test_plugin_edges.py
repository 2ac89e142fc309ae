"""Plugins that are broken in rarer ways: none takes the tool down, none passes in silence."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from .conftest import LONGEST_RUN, Outside, clean_environment
from .test_broken_plugins import calculation

Command = Callable[..., Any]
PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "24 lbf")
RULE = """
from wirecalc import HouseRule

class Odd(BaseException):
    pass

def rule(inputs, items):
    {body}

@hookimpl
def wirecalc_house_rules():
    return [HouseRule({name}, {calculations}, rule)]
"""


def rule(name: str = "'tight'", calculations: str = "('pull',)", body: str = "return []") -> str:
    return calculation("beside") + RULE.format(name=name, calculations=calculations, body=body)


def installed(outside: Outside, distribution: str, entry_points: bytes, about: str = "") -> None:
    """Add a distribution without a module of its own."""
    info = outside.folder / f"{distribution}-1.0.dist-info"
    info.mkdir()
    about = about or f"Name: {distribution}\nVersion: 1.0\n"
    (info / "METADATA").write_text(f"Metadata-Version: 2.1\n{about}", encoding="utf-8")
    (info / "entry_points.txt").write_bytes(entry_points)


def complaint(plugged: Command) -> str:
    """Return the one line that a run says, after seeing that its verdict stands."""
    done = plugged(*PULL)
    assert done.status == 0
    (line,) = done.complaints
    return str(line)


ODD = {
    "its own kind": "raise type('Odd', (BaseException,), {})('gone')",
    "GeneratorExit": "raise GeneratorExit('gone')",
    "exit": "raise SystemExit(0)",
    "one that cannot say what": "raise Mute",
}
MUTE = """
class Mute(Exception):
    def __str__(self):
        raise RuntimeError("no words")
"""


@pytest.mark.parametrize("case", ODD)
def test_what_is_no_exception_is_no_fail(plugged: Command, outside: Outside, case: str) -> None:
    """Python's own exit after it would be 1, which reads as a fail."""
    body = f"yield figure('a', 1.0)\n    {ODD[case]}"
    outside.add("demo_odd", calculation("odd", body) + MUTE)
    done = plugged("odd", "--current", "5 A")
    assert (done.status, done.out) == (4, "")
    assert "odd of plugin demo_odd 1.0 failed" in done.err
    assert "Traceback" not in done.err


@pytest.mark.parametrize("case", ODD)
def test_a_house_rule_that_ends_so_is_a_cannot_tell(
    plugged: Command, outside: Outside, case: str
) -> None:
    outside.add("demo_odd", rule(body=ODD[case]) + MUTE)
    done = plugged(*PULL)
    assert done.status == 3
    assert "house rule tight of demo_odd failed" in " ".join(done.out.split())


LATER = {  # what of a calculation is called beside its body
    "refuse=raises": "def raises(**given):\n    1 / 0\n",
    "refuse=exits": "def exits(**given):\n    raise SystemExit(0)\n",
    "refuse=numbers": "def numbers(**given):\n    return [5]\n",
    "refuse=number": "def number(**given):\n    return 5\n",
}


@pytest.mark.parametrize("case", LATER)
def test_a_refusal_that_fails_is_a_defect_of_its_plugin(
    plugged: Command, outside: Outside, write_sheet: Callable[..., Path], case: str
) -> None:
    """And it takes no fail of another calculation along."""
    source = calculation("odd").replace('(part="shop")', f'(part="shop", {case})')
    outside.add("demo_odd", LATER[case] + source)
    done = plugged("odd", "--current", "5 A")
    assert (done.status, done.out) == (4, "")
    assert "odd of plugin demo_odd 1.0 failed" in done.err
    sheet = write_sheet(
        {"calculation": "pull", "wire": "18 AWG", "terminal": "ring", "force": "19 lbf"},
        {"calculation": "odd", "current": "5 A"},
    )
    done = plugged("job", str(sheet))
    assert done.status == 1
    assert "odd of plugin demo_odd 1.0 failed" in " ".join(done.out.split())


@pytest.mark.parametrize("working", ["lambda: 1 / 0", "lambda: 5", "lambda: exit(0)"])
def test_a_working_that_fails_takes_no_verdict_along(
    plugged: Command, outside: Outside, write_sheet: Callable[..., Path], working: str
) -> None:
    outside.add("demo_odd", calculation("odd", f"yield figure('a', 1.0, working={working})"))
    sheet = write_sheet(
        {"calculation": "pull", "wire": "18 AWG", "terminal": "ring", "force": "19 lbf"},
        {"calculation": "odd", "current": "5 A"},
    )
    for form in ("text", "json"):
        done = plugged("job", str(sheet), "--working", "--format", form)
        assert done.status == 1
        assert "not shown, its working failed" in done.out
    assert plugged("odd", "--current", "5 A", "--working").status == 0


@pytest.mark.parametrize("build", ["lambda: 1 / 0", "lambda: 5"])
def test_a_chart_that_fails_is_a_defect_of_its_plugin(
    plugged: Command, outside: Outside, tmp_path: Path, build: str
) -> None:
    names = "from wirecalc import chart\n"
    outside.add("demo_odd", names + calculation("odd", f"yield chart({build})"))
    done = plugged("odd", "--current", "5 A", "--chart", str(tmp_path / "a.svg"))
    assert (done.status, done.out) == (4, "")
    assert "the chart of odd of plugin demo_odd 1.0 failed" in done.err
    assert plugged("odd", "--current", "5 A").status == 0


def test_a_deferred_one_that_ends_so_is_a_defect(plugged: Command, outside: Outside) -> None:
    source = "from wirecalc import deferred, hookimpl\n\n@hookimpl\ndef wirecalc_calculations():\n"
    source += "    return [deferred('demo_far:lift', part='shop', question='Is it?')]\n"
    outside.add("demo_near", source)
    (outside.folder / "demo_far.py").write_text("raise GeneratorExit('gone')\n", encoding="utf-8")
    done = plugged("lift", "--current", "5 A")
    assert (done.status, done.out) == (4, "")
    assert "demo_near" in done.err


AT_IMPORT = {
    "one that cannot say what": (f"{MUTE}\nraise Mute", "Mute: it cannot say what", 6),
    "a missing module without a name": ("raise ModuleNotFoundError", "ModuleNotFoundError", 1),
    "nothing said": ("assert False", "AssertionError", 1),
}


@pytest.mark.parametrize("case", AT_IMPORT)
def test_an_error_that_says_little(plugged: Command, outside: Outside, case: str) -> None:
    source, says, line = AT_IMPORT[case]
    outside.add("demo_odd", source)
    whole = f"demo_odd of demo-odd 1.0 was not loaded: {says} (demo_odd.py, line {line})"
    assert complaint(plugged).endswith(whole)


ENTRY_POINTS = {
    "a line that is none": (b"[wirecalc]\nno equals sign\n", "entry points"),
    "bytes that are no text": (b"[wirecalc]\nshop = \xff\xfe\n", "entry points"),
    "no module": (b"[wirecalc]\nshop = not a module\n", "'not a module'"),
    "a module that is not there": (b"[wirecalc]\nshop = demo_nowhere\n", "demo_nowhere"),
    "an attribute that is not there": (b"[wirecalc]\nshop = json:nothing\n", "nothing"),
}


@pytest.mark.parametrize("case", ENTRY_POINTS)
def test_damaged_entry_points(plugged: Command, outside: Outside, case: str) -> None:
    written, says = ENTRY_POINTS[case]
    installed(outside, "demo_damaged", written)
    line = complaint(plugged)
    assert "of demo_damaged 1.0 was not loaded" in line
    assert says in line
    assert "NoneType" not in line


def test_metadata_without_a_name(plugged: Command, outside: Outside) -> None:
    installed(outside, "demo_damaged", b"[wirecalc]\nshop = demo_nowhere\n", "Summary: none\n")
    assert "shop of unknown" in complaint(plugged)


def test_two_distributions_with_one_plugin_name(plugged: Command, outside: Outside) -> None:
    """Their criteria would be taken for one another's: both are refused, and named."""
    outside.add("shop", calculation("one"), "demo-a")
    installed(outside, "demo_b", b"[wirecalc]\nshop = demo_two\n")
    (outside.folder / "demo_two.py").write_text(calculation("two"), encoding="utf-8")
    done = plugged(*PULL)
    assert done.status == 0
    first, second = done.complaints
    assert "shop of demo-a 1.0 was not loaded" in first
    assert "demo_b 1.0" in first
    assert "shop of demo_b 1.0 was not loaded" in second
    assert plugged("one", "--current", "5 A").status == 2
    allowed = plugged("one", "--current", "5 A", "--only-plugins", "demo-a")
    assert (allowed.status, allowed.err) == (0, "")


def test_one_distribution_with_a_plugin_name_twice(plugged: Command, outside: Outside) -> None:
    installed(outside, "demo_b", b"[wirecalc]\nshop = demo_one\nshop = demo_two\n")
    done = plugged(*PULL)
    assert done.status == 0
    assert all(line.endswith("has the same name; rename one") for line in done.complaints)


def test_the_name_of_the_bundled_plugin_is_taken(plugged: Command, outside: Outside) -> None:
    installed(outside, "demo_b", b"[wirecalc]\nbundled = demo_two\n")
    (outside.folder / "demo_two.py").write_text(calculation("two"), encoding="utf-8")
    assert "bundled of demo_b 1.0 was not loaded" in complaint(plugged)


def test_one_module_under_two_names(plugged: Command, outside: Outside) -> None:
    outside.add("demo_one", calculation("one"))
    installed(outside, "demo_two", b"[wirecalc]\nagain = demo_one\n")
    line = complaint(plugged)
    assert "again of demo_two 1.0 was not loaded" in line
    assert "demo_one of demo-one 1.0" in line
    assert str(outside.folder) not in line


def test_a_calculation_offered_twice(plugged: Command, outside: Outside) -> None:
    outside.add("demo_twice", calculation("twice").replace("[twice]", "[twice, twice]"))
    assert complaint(plugged).endswith("the name twice is offered twice")


HOOK = "from wirecalc import hookimpl\n\n"
MARKED = {
    "nearly a hook": (
        f"{HOOK}@hookimpl\ndef wirecalc_calculation():\n    return []\n",
        "wirecalc_calculation is no hook; did you mean wirecalc_calculations?",
    ),
    "a wrapper": (
        f"{HOOK}@hookimpl(wrapper=True)\ndef wirecalc_house_rules():\n    yield\n    return []\n",
        "wirecalc_house_rules wraps a hook",
    ),
    "an old wrapper": (
        f"{HOOK}@hookimpl(hookwrapper=True)\ndef wirecalc_calculations():\n    yield\n",
        "wirecalc_calculations wraps a hook",
    ),
    "a name that is given": (
        f"{HOOK}@hookimpl(specname='wirecalc_rules')\ndef mine():\n    return []\n",
        "wirecalc_rules is no hook",
    ),
    "no end of it": (
        f"import itertools\n{HOOK}@hookimpl\ndef wirecalc_house_rules():\n"
        "    return itertools.repeat(None)\n",
        "more than 10000",
    ),
    "a slip in the prefix": (
        "def wirecal_house_rules():\n    return []\n",
        "did you mean wirecalc_house_rules?",
    ),
    "a reserved word, deferred": (
        f"{HOOK}from wirecalc import deferred\n\n@hookimpl\ndef wirecalc_calculations():\n"
        "    return [deferred('demo_far:batch', part='shop', question='Is it?')]\n",
        "batch is a reserved word",
    ),
    "a rule for one text": (rule(calculations="'pull'"), "its calculations are 'pull'"),
    "a rule for nothing there is": (rule(calculations="('pul',)"), "did you mean pull?"),
    "a rule without a name": (rule(name="7"), "its name is 7"),
    "a rule that is no function": (
        rule().replace("('pull',), rule)", "('pull',), 'rule')"),
        "its function is 'rule'",
    ),
    "a caution without a key": (
        f"{HOOK}from wirecalc import Caution\n\n@hookimpl\ndef wirecalc_cautions():\n"
        "    return [Caution([], 'Wait.')]\n",
        "key of a Caution is []",
    ),
    "a reserved word, past its check": (
        f"{HOOK}from wirecalc import Deferred\n\n@hookimpl\ndef wirecalc_calculations():\n"
        "    return [Deferred('demo_far:batch', 'shop', 'Is it?')]\n",
        "batch is a reserved word",
    ),
    "a deferred one without words": (
        f"{HOOK}from wirecalc import Deferred\n\n@hookimpl\ndef wirecalc_calculations():\n"
        "    return [Deferred('demo_far:lift', None, 'Is it?')]\n",
        "a part and a question",
    ),
    "a deferred one that is nowhere": (
        f"{HOOK}from wirecalc import Deferred\n\n@hookimpl\ndef wirecalc_calculations():\n"
        "    return [Deferred(7, 'shop', 'Is it?')]\n",
        "write module:function",
    ),
    "a name in other letters": (calculation("größe"), "'größe' is no name"),
    "a name with a capital": (calculation("Pull"), "'Pull' is no name"),
    "no name": (calculation("_"), "is no name"),
    "a deferred name with blanks": (
        f"{HOOK}from wirecalc import deferred\n\n@hookimpl\ndef wirecalc_calculations():\n"
        "    return [deferred('demo_far:a b', part='shop', question='Is it?')]\n",
        "'a b' is no name",
    ),
    "a folder whose name is too long": (
        f"{HOOK}from pathlib import Path\n\n@hookimpl\ndef wirecalc_tables():\n"
        "    return [Path('/', 'a' * 5000)]\n",
        "is no folder of tables",
    ),
    "a folder that depends on where one stands": (
        f"{HOOK}from pathlib import Path\n\n@hookimpl\ndef wirecalc_tables():\n"
        "    return [Path('.')]\n",
        "depends on the current directory",
    ),
    "no hook at all": ("import json\n", "it implements no hook, so it offers nothing"),
}


@pytest.mark.parametrize("case", MARKED)
def test_what_would_go_unused_is_named(plugged: Command, outside: Outside, case: str) -> None:
    source, says = MARKED[case]
    outside.add("demo_marked", source)
    line = complaint(plugged)
    assert "demo_marked of demo-marked 1.0" in line
    assert says in line
    assert str(outside.folder) not in line
    assert plugged(*PULL, "--strict").status == 4


def test_a_hook_of_a_later_version_may_be_optional(plugged: Command, outside: Outside) -> None:
    source = "\n@hookimpl(optionalhook=True)\ndef wirecalc_verdict_marks():\n    return []\n"
    outside.add("demo_later", calculation("later") + source)
    done = plugged("later", "--current", "5 A")
    assert (done.status, done.err) == (0, "")


def test_a_reason_is_short_and_plain(plugged: Command, outside: Outside) -> None:
    """What a plugin says about itself cannot colour the terminal or fill it."""
    text = "\\x1b[31mred\\x07 " + "word " * 5000
    outside.add("demo_loud", f"raise RuntimeError('{text}')\n")
    line = complaint(plugged)
    assert len(line) < 700
    assert line.isprintable()


STEERS = {  # what would hide or forge a line of the output
    "a criterion": "yield requires('a\x1b[2J', False, says='b\x9b1A', source=PRACTICE)",
    "a unit": "yield at_least('a', 1.0, 2.0, 'V\x1b[8m', source=PRACTICE)",
    "a caution": "yield Caution('c\x07', 'd\x1b[1A\u202e')",
    "a gap": "yield not_checked('e\rf', 'g\x08')",
}


@pytest.mark.parametrize("case", STEERS)
def test_no_item_of_a_plugin_steers_the_terminal(
    plugged: Command, outside: Outside, case: str
) -> None:
    names = "from wirecalc import PRACTICE, Caution, at_least, not_checked, requires\n"
    outside.add("demo_loud", names + rule(body=STEERS[case]))
    out = plugged(*PULL).out
    assert out.replace("\n", "").isprintable()


def test_no_name_of_a_plugin_steers_the_terminal(plugged: Command, outside: Outside) -> None:
    about = "Name: demo\x1b[2J\nVersion: 1\x1b[8m\n"
    installed(outside, "demo_loud", b"[wirecalc]\nsh\x1b[31mop = demo_nowhere\n", about)
    done = plugged(*PULL)
    for text in (done.out, done.err, plugged("plugins").out):
        assert text.replace("\n", "").isprintable()


@pytest.mark.parametrize("stream", ["sys.stderr", "sys.stdout", "sys.__stderr__"])
def test_a_stream_that_a_plugin_closed_is_no_fail(
    command: Command, outside: Outside, stream: str
) -> None:
    outside.add("demo_closes", f"import sys\n{stream}.close()\nraise RuntimeError\n")
    done = command(*PULL, env=outside.env)
    assert done.status == 0
    assert done.out.startswith("PASS")


def test_a_failed_import_that_took_long_says_so(plugged: Command, outside: Outside) -> None:
    outside.add("demo_late", "import time\ntime.sleep(0.05)\nraise RuntimeError('late')\n")
    listed = plugged("plugins", "--format", "json").json["plugins"]
    (late,) = [p for p in listed if p["name"] == "demo_late"]
    assert late["load_time"] >= 0.05


def test_print_at_import_is_no_output_of_a_script(outside: Outside) -> None:
    outside.add("demo_chatty", "print('hello')\n" + calculation("chatty"))
    done = subprocess.run(
        [sys.executable, "-c", "import wirecalc; print(len(wirecalc.build().plugins))"],
        env=clean_environment() | outside.env,
        capture_output=True,
        check=True,
        timeout=LONGEST_RUN,
    )
    assert done.stdout.split() == [b"2"]
    assert b"hello" in done.stderr


@pytest.mark.parametrize(
    "words", [("lead", "--help"), ("explain", "lead"), ("help", "lead")], ids=" ".join
)
def test_the_rescue_switch_holds_for_help(
    plugged: Command, outside: Outside, words: tuple[str, ...]
) -> None:
    outside.add("demo_lead", calculation("lead"))
    assert plugged(*words, "--bundled-only").status == 2
    assert "demo_lead" not in sys.modules
    assert plugged(*words).status == 0
    assert "demo_lead" in sys.modules


def test_an_allow_list_without_names_behind_it(plugged: Command, outside: Outside) -> None:
    outside.add("demo_one", calculation("one"))
    done = plugged(*PULL, "--only-plugins", "--format", "json")
    assert done.status == 2
    assert done.complaints == ["--only-plugins: has no value behind it"]


def test_who_limited_the_plugins_is_named(
    plugged: Command, outside: Outside, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    outside.add("demo_one", calculation("one"))
    assert plugged("--only-plugins", "demo_on").complaints == [
        "--only-plugins: no plugin 'demo_on' is installed; did you mean demo_one?"
    ]
    config = tmp_path / "config.toml"
    config.write_text('only_plugins = ["demo_on"]\n', encoding="utf-8")
    monkeypatch.setenv("WIRECALC_CONFIG", str(config))
    assert plugged().err.startswith(f"wirecalc: {config}: only_plugins: no plugin")
    monkeypatch.setenv("WIRECALC_ONLY_PLUGINS", "demo_on")
    assert plugged().err.startswith("wirecalc: WIRECALC_ONLY_PLUGINS: no plugin")


def test_a_strict_run_says_each_on_a_line(plugged: Command, outside: Outside) -> None:
    outside.add("demo_one", "raise RuntimeError('one')\n")
    outside.add("demo_two", "raise RuntimeError('two')\n")
    done = plugged(*PULL, "--strict")
    assert done.status == 4
    assert [line.split(":")[0] for line in done.complaints[-2:]] == [
        "plugin demo_one of demo-one 1.0",
        "plugin demo_two of demo-two 1.0",
    ]


@pytest.mark.skipif(os.name != "posix", reason="a signal that nobody can hold up")
def test_an_exit_that_nobody_can_catch_never_reads_as_a_verdict_here(
    command: Command, outside: Outside
) -> None:
    """A kill ends the process: the rescue switch still works."""
    outside.add("demo_gone", "import os\nos.kill(os.getpid(), 9)\n")
    assert command(*PULL, env=outside.env).status == -9
    assert command(*PULL, "--bundled-only", env=outside.env).status == 0
    done = command("plugins", "--bundled-only", env=outside.env)
    assert "demo_gone" in done.out
