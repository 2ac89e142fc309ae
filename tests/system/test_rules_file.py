"""A shop's rules file, from the command line to the page: in force, listed, checked."""

from __future__ import annotations

import os
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

import wirecalc
from wirecalc import tables
from wirecalc.plugging import settings

from .conftest import Outside

Command = Callable[..., Any]
PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force")
SHOP = """
[[rule]]
name = "a quarter more"
calculations = ["pull"]
criterion = "pull-out force"
times = 1.25
source = "sheet 4, invented"

[[required]]
name = "before it goes back"
kinds = ["refrigerator"]
calculations = ["ground"]
"""
PLUGIN = '''
from wirecalc import HouseRule, hookimpl


def _rule(inputs, items):
    """Ask for nothing at all.

    More of it.
    """
    return []


@hookimpl
def wirecalc_house_rules():
    return [HouseRule("idle", ("pull", "strip"), _rule)]
'''


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Callable[[str], Path]:
    """Write a rules file and have it in force."""

    def write(text: str) -> Path:
        path = tmp_path / "our-shop.toml"
        path.write_text(text, encoding="utf-8")
        monkeypatch.setenv(settings.RULES, str(path))
        return path

    return write


@pytest.mark.parametrize(
    ("force", "status"),
    [("25 lbf", 0), ("24.9 lbf", 1), ("25 lbf ±0.5 lbf", 3), ("26 lbf ±0.5 lbf", 0), ("19 lbf", 1)],
)
def test_limit_times_a_factor(
    cli_main: Command, shop: Callable[[str], Path], force: str, status: int
) -> None:
    """UL 486A asks for 20 lbf on 18 AWG; a quarter more is 25."""
    shop(SHOP)
    done = cli_main(*PULL, force)
    assert (done.status, done.err) == (status, "")


def test_both_limits_and_the_rule_stand_in_every_form(
    cli_main: Command, shop: Callable[[str], Path]
) -> None:
    shop(SHOP)
    text = " ".join(cli_main(*PULL, "24 lbf").out.split())
    assert "FAIL a quarter more: 24 lbf is below 25 lbf" in text
    assert "PASS pull-out force: 24 lbf, at least 20 lbf" in text
    assert "rule 'a quarter more', sheet 4, invented, our-shop.toml (house)" in text
    finding = cli_main(*PULL, "24 lbf", "--format", "json").json
    assert [(c["name"], c["provider"], c["origin"], c["limit"]) for c in finding["criteria"]] == [
        ("pull-out force", "bundled", "standard", 20),
        ("a quarter more", "our-shop.toml", "house", 25),
    ]
    assert finding["decided_by"] == "a quarter more"
    page = cli_main(*PULL, "24 lbf", "--format", "html").out
    assert {"a quarter more", "25 lbf", "20 lbf", "our-shop.toml"} <= set(
        re.findall(r"a quarter more|25 lbf|20 lbf|our-shop\.toml", page)
    )
    assert str(Path(os.environ[settings.RULES]).parent) not in page


def test_finding_and_job_say_whose_rules_were_in_force(
    plugged: Command,
    outside: Outside,
    shop: Callable[[str], Path],
    write_sheet: Callable[..., Path],
) -> None:
    """Also where every rule holds, so that a pass by the shop's rules can be told from another."""
    assert plugged(*PULL, "26 lbf", "--format", "json").json["house_rules"] == []
    outside.add("demo_idle", PLUGIN)
    shop(SHOP)
    ours = ["demo_idle", "our-shop.toml"]
    assert plugged(*PULL, "26 lbf", "--format", "json").json["house_rules"] == ours
    given = {"wire": "18 AWG", "terminal": "ring", "force": "26 lbf"}
    sheet = write_sheet({"calculation": "pull", **given}, {"calculation": "gauge", "strands": "41"})
    job = plugged("job", str(sheet), "--format", "json").json
    assert job["house_rules"] == ours
    assert [c["finding"]["house_rules"] for c in job["checks"]] == [ours, []]
    bare = plugged(*PULL, "26 lbf", "--format", "json", "--bundled-only").json
    assert bare["house_rules"] == []
    told = "House rules\n  demo_idle, our-shop.toml\n"
    assert told in plugged(*PULL, "26 lbf").out
    assert told in plugged("job", str(sheet)).out
    assert "House rules" not in plugged(*PULL, "26 lbf", "--bundled-only").out
    on_page = re.compile(r"House rules</h2>\s*<p>demo_idle, our-shop\.toml</p>")
    assert on_page.search(plugged(*PULL, "26 lbf", "--format", "html").out)
    assert on_page.search(plugged("job", str(sheet), "--format", "html").out)


def test_job_sheet_keeps_to_rules_and_required_checks(
    cli_main: Command, shop: Callable[[str], Path], tmp_path: Path
) -> None:
    shop(SHOP)
    sheet = tmp_path / "sheet.toml"
    check = '[[check]]\ncalculation = "pull"\nwire = "18 AWG"\nterminal = "ring"\nforce = '
    for force, verdict in (("24 lbf", "fail"), ("26 lbf", "cannot tell")):
        head = '[job]\ntitle = "invented"\nkind = "refrigerator"\n'
        sheet.write_text(f'{head}{check}"{force}"\n', encoding="utf-8")
        done = cli_main("job", str(sheet), "--format", "json").json
        assert done["verdict"] == verdict
        assert any(n["name"] == "ground" and n["required"] for n in done["not_tested"])
        assert "our-shop.toml" in str(done["not_tested"])


def test_python_call_keeps_to_the_rules_too(shop: Callable[[str], Path], tmp_path: Path) -> None:
    path = shop(SHOP)
    given = {"wire": "18 AWG", "terminal": "ring", "force": "24 lbf"}
    assert wirecalc.build().run("pull", given).verdict == "fail"
    assert wirecalc.build(rules=[path]).run("pull", given).verdict == "fail"
    assert wirecalc.build(rules=[]).run("pull", given).verdict == "pass"
    assert wirecalc.build(rules=[tmp_path / "none.toml"]).run("pull", given).verdict == (
        "cannot tell"
    )


def test_bundled_only_leaves_it_out_and_says_so(
    cli_main: Command, shop: Callable[[str], Path]
) -> None:
    shop(SHOP)
    finding = cli_main(*PULL, "24 lbf", "--bundled-only", "--format", "json")
    assert finding.status == 0
    assert any("our-shop.toml" in n["what"] for n in finding.json["not_checked"])


def test_settings_file_names_it(command: Command, tmp_path: Path) -> None:
    (tmp_path / "ours.toml").write_text(SHOP, encoding="utf-8")
    config = tmp_path / "config.toml"
    config.write_text('rules_files = ["ours.toml"]\n', encoding="utf-8")
    env = {settings.CONFIG: str(config)}
    assert command(*PULL, "24 lbf", env=env).status == 1
    assert "ours.toml" in command("rules", env=env).out
    assert command(*PULL, "24 lbf", "--bundled-only", env=env).status == 0


@pytest.mark.parametrize("name", ["pull", "strip"])
def test_file_that_is_not_there_is_cannot_tell(command: Command, tmp_path: Path, name: str) -> None:
    env = {settings.RULES: str(tmp_path / "none.toml")}
    words = {"pull": (*PULL, "26 lbf"), "strip": ("strip", "--wire", "18 AWG", "--style", "closed")}
    done = command(*words[name], env=env)
    assert done.status == 3
    assert "there is no such file" in " ".join(done.out.split())


CANNOT_BE_USED = {
    "not TOML": ("[[rule", "is not TOML"),
    "an unknown key": (SHOP.replace("times", "tmes"), "line 6: there is no key 'tmes'"),
    "an unknown calculation": (SHOP.replace('"pull"', '"pul"'), "line 4: there is no calculation"),
    "an unknown check": (SHOP.replace('"ground"', '"grond"'), "did you mean ground?"),
    "an unknown input": (
        SHOP.replace('criterion = "pull-out force"\ntimes = 1.25', 'input = "forse"\nat_least = 1'),
        "line 5: pull has no input 'forse'; did you mean force?",
    ),
    "a folder of tables": (f'tables = ["none"]\n{SHOP}', "line 1: none is no folder of tables"),
}


@pytest.mark.parametrize("case", CANNOT_BE_USED)
def test_strictly_nothing_is_computed(
    cli_main: Command, shop: Callable[[str], Path], case: str
) -> None:
    text, says = CANNOT_BE_USED[case]
    path = shop(text)
    strip = ("strip", "--wire", "18 AWG", "--style", "closed")
    for words in ((*PULL, "26 lbf"), (*PULL, "19 lbf"), strip):
        done = cli_main(*words, "--strict")
        assert (done.status, done.out) == (4, "")
        assert done.err.count(f"rules file {path}: ") == 1
        assert says in done.err
    assert cli_main(*PULL, "26 lbf", "--strict", "--bundled-only").status == 0


def test_strictly_a_file_that_is_not_there_is_refused(
    cli_main: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv(settings.RULES, str(tmp_path / "none.toml"))
    done = cli_main(*PULL, "26 lbf", "--strict")
    assert (done.status, done.out) == (4, "")
    assert done.complaints[1:] == [
        f"rules file {tmp_path / 'none.toml'}: there is no such file; check the name"
    ]


def test_strictly_a_file_that_is_sound_is_in_force(
    cli_main: Command, shop: Callable[[str], Path]
) -> None:
    shop(SHOP)
    assert cli_main(*PULL, "24 lbf", "--strict").status == 1
    assert cli_main(*PULL, "26 lbf", "--strict").status == 0


def test_slip_is_told_with_file_line_and_nearest_word(cli_main: Command, tmp_path: Path) -> None:
    path = tmp_path / "our-shop.toml"
    text = SHOP.replace('["pull"]', '["pul"]').replace("times", "tmes")
    path.write_text(text, encoding="utf-8")
    done = cli_main("rules", str(path))
    assert (done.status, done.out) == (2, "")
    assert done.complaints == [
        "our-shop.toml, line 6: there is no key 'tmes' in a rule; did you mean times?"
    ]
    path.write_text(text.replace("tmes", "times"), encoding="utf-8")
    assert cli_main("rules", str(path)).complaints == [
        "our-shop.toml, line 4: there is no calculation 'pul'; did you mean pull?"
    ]


KINDS = {
    '"refrigerator"': (0, ""),
    '"*"': (0, ""),
    '"Refrigerator"': (2, "line 11: there is no kind of job 'Refrigerator'; did you mean"),
    '"fridge"': (
        2,
        "line 11: there is no kind of job 'fridge'; the kinds are refrigerator, freezer, ",
    ),
}


@pytest.mark.parametrize("kind", KINDS)
def test_kind_of_job_that_there_is_none_of_is_refused(
    cli_main: Command, shop: Callable[[str], Path], kind: str
) -> None:
    path = shop(SHOP.replace('"refrigerator"', kind))
    status, said = KINDS[kind]
    done = cli_main("rules", str(path))
    assert (done.status, said in done.err) == (status, True)
    assert cli_main(*PULL, "26 lbf").status == (3 if status else 0)
    assert cli_main(*PULL, "26 lbf", "--strict").status == (4 if status else 0)


def test_new_kind_of_job_is_said_to_be_one(
    cli_main: Command, shop: Callable[[str], Path], tmp_path: Path
) -> None:
    path = shop('new_kinds = ["boat fridge"]\n' + SHOP.replace("refrigerator", "boat fridge"))
    assert cli_main("rules", str(path)).status == 0
    sheet = tmp_path / "sheet.toml"
    head = '[job]\ntitle = "invented"\nkind = "boat fridge"\n'
    sheet.write_text(f'{head}[[check]]\ncalculation = "gauge"\nstrands = 41\n', encoding="utf-8")
    assert cli_main("job", str(sheet)).status == 3
    shop('new_kinds = ["boat fridge", "boat"]\n' + SHOP.replace("refrigerator", "boat fridge"))
    assert "line 1: no [[required]] names the new kind 'boat'" in cli_main("rules", str(path)).err
    shop('new_kinds = "boat"\n' + SHOP)
    assert 'line 1: new_kinds are texts; write new_kinds = ["boat fridge"]' in (
        cli_main("rules", str(path)).err
    )


def test_kinds_of_the_shops_own_table_are_known(
    cli_main: Command, shop: Callable[[str], Path], tmp_path: Path
) -> None:
    folder = tmp_path / "ours"
    folder.mkdir()
    for end in ("toml", "csv"):
        text = (tables.bundled_folder() / f"job-kinds.{end}").read_text(encoding="utf-8")
        text = text.replace("refrigerator,", "wine-cabinet,")
        (folder / f"job-kinds-ours.{end}").write_text(text, encoding="utf-8")
    path = shop('tables = ["ours"]\n' + SHOP.replace("refrigerator", "wine-cabinet"))
    assert cli_main("rules", str(path)).status == 0
    tables.use_folders([])


TRIED = {
    "times = 1.25": (0, ""),
    "times = 0.9": (2, "our-shop.toml, line 6: times = 0.9 would loosen a limit 'at least'"),
    'at_least = "25 V"': (2, "our-shop.toml, line 6: 'V' is a unit of voltage"),
    'at_most = "25 lbf"': (2, "write at_least"),
}


@pytest.mark.parametrize("asks", TRIED)
def test_checking_tries_a_rule_on_the_example(cli_main: Command, tmp_path: Path, asks: str) -> None:
    path = tmp_path / "our-shop.toml"
    path.write_text(SHOP.replace("times = 1.25", asks), encoding="utf-8")
    status, said = TRIED[asks]
    done = cli_main("rules", str(path))
    assert done.status == status
    assert said in done.err


NOT_SEEN = {  # what is asked -> status of the check, what it says
    'criterion = "pull out force"\ntimes = 1.25': (
        2,
        "our-shop.toml, line 5: no example of pull has a criterion 'pull out force'; "
        "did you mean pull-out force?",
    ),
    'criterion = "pull out force"\ntimes = 1.25\noptional = true': (2, "line 5: no example"),
    'criterion = "crimp height"\ntimes = 1.25': (
        0,
        "our-shop.toml, line 5: no example of pull has a criterion 'crimp height'; known: ",
    ),
    'figure = "minimm"\nat_least = "2 N"\noptional = true': (0, "has a figure 'minimm'"),
    'criterion = "pull-out force"\ntimes = 0.9\nwhen = { terminal = "push-on" }': (
        2,
        "line 6: times = 0.9 would loosen",
    ),
}


@pytest.mark.parametrize("asks", NOT_SEEN)
def test_checking_names_what_no_example_has(cli_main: Command, tmp_path: Path, asks: str) -> None:
    """It is a slip where a name is nearly that of another, else it may come with other inputs."""
    path = tmp_path / "our-shop.toml"
    written = 'criterion = "pull-out force"\ntimes = 1.25'
    path.write_text(SHOP.replace(written, asks), encoding="utf-8")
    status, said = NOT_SEEN[asks]
    done = cli_main("rules", str(path))
    assert done.status == status
    assert said in done.err


@pytest.mark.parametrize("asks", NOT_SEEN)
def test_the_list_of_rules_in_force_names_it_too(
    cli_main: Command, shop: Callable[[str], Path], asks: str
) -> None:
    """A limit that no finding can have is not in force, whatever the list says of it."""
    shop(SHOP.replace('criterion = "pull-out force"\ntimes = 1.25', asks))
    status, said = NOT_SEEN[asks]
    done = cli_main("rules")
    assert (done.status, said in done.err, done.out == "") == (status, True, status == 2)


def test_checking_works_an_example_with_a_file(cli_main: Command, tmp_path: Path) -> None:
    path = tmp_path / "our-shop.toml"
    path.write_text(SHOP.replace('"pull"', '"trace"'), encoding="utf-8")
    assert "line 5: no example of trace has a criterion" in cli_main("rules", str(path)).err


@pytest.mark.parametrize(("asks", "status"), [("at_least", 0), ("at_most", 2)])
def test_checking_tries_a_criterion_that_only_another_input_brings(
    cli_main: Command, tmp_path: Path, asks: str, status: int
) -> None:
    """The example of strip has no stripped length."""
    path = tmp_path / "our-shop.toml"
    text = SHOP.replace('"pull"', '"strip"').replace("pull-out force", "strip length, lower limit")
    path.write_text(text.replace("times = 1.25", f'{asks} = "7 mm"'), encoding="utf-8")
    done = cli_main("rules", str(path))
    assert (done.status, "write at_least" in done.err) == (status, status == 2)


def test_checking_hints_at_a_calculation_with_the_same_limit(
    cli_main: Command, tmp_path: Path
) -> None:
    """All judge by the pull-out forces of UL 486A: a rule for one would be gone round."""
    path = tmp_path / "our-shop.toml"
    path.write_text(SHOP, encoding="utf-8")
    done = cli_main("rules", str(path))
    hints = (
        "pull-batch judges 'lowest pull, ul-486a' by the same limit",
        "shared-barrel judges 'wire 1 by itself' by the same limit",
    )
    assert (done.status, done.complaints) == (
        0,
        [f"our-shop.toml, line 2: {hint}, and no rule here is for it" for hint in hints],
    )
    both = '["pull-batch", "shared-barrel"]'
    more = f'[[rule]]\nname = "b"\ncalculations = {both}\nforbid = true\n'
    path.write_text(SHOP + more, encoding="utf-8")
    assert cli_main("rules", str(path)).err == ""


TABLES = {  # what lies in the folder -> what is said of it
    "nothing": ({}, "our-tables holds no table"),
    "no sidecar": ({"stock.csv": "part\n"}, "our-tables/stock.csv: has no stock.toml beside it"),
    "damaged": ({"stock.toml": "key = ["}, "our-tables/stock.toml: its sidecar cannot be read"),
}


@pytest.mark.parametrize("case", TABLES)
def test_tables_of_a_rules_file_are_checked(
    cli_main: Command, shop: Callable[[str], Path], tmp_path: Path, case: str
) -> None:
    files, said = TABLES[case]
    path = shop(f'\ntables = ["our-tables"]\n{SHOP}')
    (tmp_path / "our-tables").mkdir()
    for name, content in files.items():
        (tmp_path / "our-tables" / name).write_text(content, encoding="utf-8")
    done = cli_main("rules", str(path))
    assert (done.status, done.out) == (2, "")
    assert done.err.startswith("wirecalc: our-shop.toml, line 2: ")
    assert said in done.err
    assert cli_main(*PULL, "26 lbf", "--strict").status == 4
    tables.use_folders([])


def test_rules_in_force_are_listed_with_where_they_are_from(
    plugged: Command, outside: Outside, shop: Callable[[str], Path]
) -> None:
    outside.add("demo_idle", PLUGIN)
    shop(SHOP)
    listed = plugged("rules", "--format", "json").json
    assert listed["schema"] == "wirecalc.rules/1"
    assert listed["rules"] == [
        {
            "name": "idle",
            "calculations": ["pull", "strip"],
            "asks": "Ask for nothing at all.",
            "origin": "plugin demo_idle 1.0",
        },
        {
            "name": "a quarter more",
            "calculations": ["pull"],
            "asks": "pull-out force: its limit x 1.25",
            "origin": "our-shop.toml, line 2",
        },
        {
            "name": "before it goes back",
            "calculations": ["ground"],
            "asks": "must be checked in every job (refrigerator)",
            "origin": "our-shop.toml, line 9",
        },
    ]
    text = plugged("rules").out
    assert max(map(len, text.splitlines())) <= 80
    assert "our-shop.toml, line 2" in " ".join(text.split())


def test_checking_says_whether_the_file_is_in_force(
    cli_main: Command, shop: Callable[[str], Path], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = shop(SHOP)
    monkeypatch.chdir(tmp_path)
    for words in ((str(path),), (path.name,)):
        assert cli_main("rules", *words).out.endswith("\nThis file is in force.\n")
        assert cli_main("rules", *words, "--format", "json").json["in_force"] is True
    monkeypatch.delenv(settings.RULES)
    text = " ".join(cli_main("rules", str(path)).out.split())
    assert "This file is not in force: neither the settings" in text
    assert cli_main("rules", str(path), "--format", "json").json["in_force"] is False


def test_no_word_of_a_rule_is_broken_in_the_list(
    cli_main: Command, shop: Callable[[str], Path]
) -> None:
    asks = (
        'when = { voltage_running = { at_least = "200 V" } }\ncaution = "A flammable refrigerant."'
    )
    shop(f'[[rule]]\nname = "two people"\ncalculations = ["supply", "upstream"]\n{asks}\n')
    text = cli_main("rules").out
    assert max(map(len, text.splitlines())) <= 80
    assert {"voltage_running", "refrigerant.", "our-shop.toml,"} <= set(text.split())


def test_no_rules_says_how_to_have_some(
    cli_main: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.delenv(settings.CONFIG, raising=False)
    done = cli_main("rules")
    assert done.status == 0
    assert settings.RULES in done.out
    looked = str(tmp_path / ".config" / "wirecalc" / "config.toml")
    said = f"Settings are looked for in {looked}, which is not there."
    assert said.replace(" ", "") in "".join(done.out.split())
    config = tmp_path / "config.toml"
    config.write_text("", encoding="utf-8")
    monkeypatch.setenv(settings.CONFIG, str(config))
    said = f"The settings are those of {config}."
    assert said.replace(" ", "") in "".join(cli_main("rules").out.split())
    assert cli_main("rules", "--format", "json").json["rules"] == []
