"""What a shop's Windows PC has: simulated here, one thing at a time. Nobody ran it on one yet."""

from __future__ import annotations

import contextlib
import io
import os
import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from wirecalc import cli
from wirecalc.plugging import settings

Command = Callable[..., Any]
ROOT = Path(__file__).parents[2]
EXAMPLES = ROOT / "docs" / "examples"
PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force")
RULES = """
[[rule]]
name = "pull a shop's own"
calculations = ["pull"]
criterion = "pull-out force"
at_least = "25 lbf"
"""
INSTRUMENT = """
[[instrument]]
name = "scale"
[[instrument.function]]
reads = "force"
unit = "lbf"
error = "1 %"
"""
PLUGIN = """
from wirecalc import hookimpl, RequiredChecks
@hookimpl
def wirecalc_house_rules():
    return [RequiredChecks("ours", ("oven",), ("ground",))]
"""


def _recording(folder: Path) -> str:
    rows = (f"{i / 100:.2f},{8 if i < 40 else 1.3 if i < 90 else 0}" for i in range(120))
    path = folder / "run.csv"
    path.write_text("\n".join(["t_s,current_A", *rows, ""]), encoding="utf-8")
    return str(path)


def _copied(folder: Path, name: str) -> str:
    return str(shutil.copy(EXAMPLES / name, folder))


def _configured(folder: Path) -> None:
    (folder / "plugins").mkdir()
    (folder / "plugins" / "ours.py").write_text(PLUGIN, encoding="utf-8")
    (folder / "rules.toml").write_text(RULES, encoding="utf-8")
    said = 'plugin_folder = "plugins"\nrules_files = ["rules.toml"]\n'
    (folder / "config.toml").write_text(said, encoding="utf-8")


READ = {  # what is read -> the words of a command, given the folder that the files stand in
    "sheet": lambda f: ("job", _copied(f, "oven.toml"), "--format", "json"),
    "batch": lambda f: ("batch", "pull", _copied(f, "pulls.csv"), "--label", "sample",
                        "--keep", "learner"),
    "readings": lambda f: ("pull-batch", "--readings", _copied(f, "class.csv"), "--wire",
                           "18 AWG", "--terminal", "push-on"),
    "recording": lambda f: ("trace", "--recording", _recording(f)),
    "answers": lambda f: ("drill", "--grade", _copied(f, "drill-answers.csv"), "--format", "csv"),
    "settings, rules, plugin": lambda f: (_configured(f), (*PULL, "24 lbf"))[1],
}  # fmt: skip


@pytest.mark.parametrize("what", READ)
def test_every_file_is_read_alike_with_a_mark_and_line_ends_of_windows(
    cli_main: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, what: str
) -> None:
    words = READ[what](tmp_path)
    if (tmp_path / "config.toml").exists():
        monkeypatch.setenv(settings.CONFIG, str(tmp_path / "config.toml"))
    plain = cli_main(*words)
    assert plain.out
    assert plain.status in (0, 1, 2, 3)
    for path in [p for p in tmp_path.rglob("*") if p.suffix in (".toml", ".csv", ".py")]:
        path.write_bytes(b"\xef\xbb\xbf" + path.read_bytes().replace(b"\n", b"\r\n"))
    assert cli_main(*words) == plain
    if what.startswith("settings"):
        assert plain.status == 1  # the rule of the file holds: 25 lbf
        assert "pull a shop's own" in plain.out


@pytest.mark.parametrize("encoding", ["cp1252", "cp437", "cp850"])
@pytest.mark.parametrize(
    "words",
    [
        (*PULL, "20.3 lbf ±0.5 lbf"),
        (*PULL, "24 lb"),
        ("job", str(EXAMPLES / "dishwasher.toml")),
        ("job", str(EXAMPLES / "dishwasher.toml"), "--format", "html"),
        ("explain", "insulation"),
        ("windings", "--help"),
        ("tables", "cautions", "--format", "csv"),
        (),
    ],
)
def test_a_code_page_of_a_terminal_takes_every_output(
    cli_main: Command, words: tuple[str, ...], encoding: str
) -> None:
    out, err = (io.TextIOWrapper(io.BytesIO(), encoding=encoding, newline="\r\n") for _ in "ab")
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        status = cli.main(words)
    utf8 = cli_main(*words)
    assert status == utf8.status
    for stream, full in ((out, utf8.out), (err, utf8.err)):
        stream.flush()
        shown = stream.buffer.getvalue().decode(encoding)  # type: ignore[attr-defined]
        assert shown.count("\r\n") == shown.count("\n") == full.count("\n")
        if full.isascii():
            assert shown.replace("\r\n", "\n") == full


def test_a_system_without_owners_looks_at_none(
    cli_main: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    _configured(tmp_path)
    monkeypatch.setenv(settings.CONFIG, str(tmp_path / "config.toml"))
    plain = cli_main(*PULL, "24 lbf")
    monkeypatch.delattr(os, "geteuid")
    assert cli_main(*PULL, "24 lbf") == plain


def test_a_system_that_flushes_no_folder_records_as_ever(
    cli_main: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.delattr(os, "O_DIRECTORY")
    monkeypatch.setitem(__import__("sys").modules, "fcntl", None)  # no locks either
    sheet, shop = EXAMPLES / "shop-year" / "2026-03-02.toml", tmp_path / "records"
    cli_main("job", str(sheet), "--record", str(shop), "--output", str(tmp_path / "job.txt"))
    assert [p.name[:10] for p in shop.iterdir()] == ["2026-03-02"]
    assert cli_main("job", "--export", str(shop)).status == 0
    assert (tmp_path / "records-tables" / "records.sqlite").is_file()


@pytest.mark.parametrize(
    ("what", "held"),
    [
        ("sheet", "oven.toml"),
        ("batch", "pulls.csv"),
        ("readings", "class.csv"),
        ("recording", "run.csv"),
        ("answers", "drill-answers.csv"),
        ("settings, rules, plugin", "config.toml"),
    ],
)
def test_a_file_that_is_locked_against_reading_is_named(
    cli_main: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, what: str, held: str
) -> None:
    words, plain = READ[what](tmp_path), Path.open
    if held == "config.toml":
        monkeypatch.setenv(settings.CONFIG, str(tmp_path / held))

    def opened(self: Path, *how: Any, **more: Any) -> Any:
        if self.name == held:
            raise PermissionError(13, "Permission denied")
        return plain(self, *how, **more)

    monkeypatch.setattr(Path, "open", opened)
    done = cli_main(*words)
    assert (done.status, done.out) == (2, "")
    assert held in done.err
    assert "Permission denied" in done.err
    assert "defect" not in done.err


@pytest.mark.parametrize("held", ["report.txt", "records.sqlite", "checks.csv"])
def test_a_file_that_another_program_holds_open_is_said_and_stays(
    cli_main: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, held: str
) -> None:
    """Windows renames nothing onto a file that is open elsewhere, in a spreadsheet say."""
    sheet, shop = EXAMPLES / "shop-year" / "2026-03-02.toml", tmp_path / "records"
    cli_main("job", str(sheet), "--record", str(shop))
    words = ("job", "--export", str(shop))
    if held == "report.txt":
        words = (*PULL, "24 lbf", "--output", str(tmp_path / held))
        (tmp_path / held).write_text("before")
    else:
        cli_main(*words, "--with-names")
    (path,) = (p for p in tmp_path.rglob(held))
    before, plain = path.read_bytes(), os.replace

    def replace(source: str, target: str | Path) -> None:
        if Path(target).name == held:
            raise PermissionError(13, "Permission denied")
        plain(source, target)

    monkeypatch.setattr(os, "replace", replace)
    done = cli_main(*words)
    assert (done.status, done.out) == (2, "")
    assert f"{held}: cannot be written (Permission denied); is it open in another program?" in done.err  # fmt: skip  # noqa: E501
    assert path.read_bytes() == before
    assert not [p.name for p in tmp_path.rglob(".*")]


@pytest.mark.parametrize(
    ("written", "said"),
    [
        (r'"C:\plugins"', "in single quotes"),
        (r'"D:\Users\shop"', "in single quotes"),
        (r'"our\tables"', "was taken for another sign"),
        (r'"jobs\new"', "was taken for another sign"),
        (r'"D:\backup"', "was taken for another sign"),
    ],
)
@pytest.mark.parametrize("where", ["settings", "rules", "sheet"])
def test_a_backslash_in_double_quotes_is_said(
    cli_main: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, where: str, written: str,
    said: str,
) -> None:  # fmt: skip
    path = tmp_path / "x.toml"
    if where == "settings":
        path.write_text(f"instruments_files = [{written}]\n", encoding="utf-8")
        monkeypatch.setenv(settings.CONFIG, str(path))
        done = cli_main(*PULL, "24 lbf")
    elif where == "rules":
        path.write_text(f"tables = [{written}]\n", encoding="utf-8")
        done = cli_main("rules", str(path))
    else:
        path.write_text(
            '[job]\ntitle = "x"\nkind = "bench"\n[[check]]\ncalculation = "pull-batch"\n'
            f'wire = "18 AWG"\nterminal = "ring"\nreadings = {written}\n',
            encoding="utf-8",
        )
        done = cli_main("job", str(path))
    assert (done.status, done.out) == (2, "")
    assert said in " ".join(done.err.split())
    assert "/" in done.err


def test_a_path_in_single_quotes_is_taken_as_it_stands(cli_main: Command, tmp_path: Path) -> None:
    path = tmp_path / "x.toml"
    path.write_text("tables = ['D:\\Users\\shop']\n", encoding="utf-8")
    done = cli_main("rules", str(path))
    assert r"D:\Users\shop is no folder of tables" in done.err


def test_questions_need_no_name_of_a_terminal(monkeypatch: pytest.MonkeyPatch) -> None:
    from wirecalc.commands import terminal

    monkeypatch.delattr(os, "ttyname")
    monkeypatch.delattr(os, "O_NOCTTY")
    kept, read = os.dup(0), os.pipe()
    try:
        os.dup2(read[1], 0)
        with terminal.at_terminal():
            terminal.say("asked")
        assert os.read(read[0], 99) == b"asked\n"
    finally:
        os.dup2(kept, 0)
        for handle in (kept, *read):
            os.close(handle)


def test_the_pages_say_that_nobody_ran_it_there() -> None:
    page = " ".join((ROOT / "README.md").read_text(encoding="utf-8").split())
    assert "not run on Windows by us" in page
