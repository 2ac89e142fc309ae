"""Files that nobody means to give: endless, huge, deep, or not text. Exit 2, in words, and soon."""

import os
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from wirecalc import tables
from wirecalc.plugging import settings

Command = Callable[..., Any]
PULL = ("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "26 lbf")
SOON = 2.0  # s
SIDECAR = 'stricter_than = "pull-crimp"\n'
UNKIND = {  # what stands in the file -> what is said of it
    "digits": (f"a = {'9' * 5000}\n", "number with too many digits"),
    "a key": (f"{'a.' * 5000}a = 1\n", "a key of more than 20 parts"),
    "a quoted key": ('"a" . ' * 5000 + "a = 1\n", "a key of more than 20 parts"),
    "a heading": (f"[{'a.' * 5000}a]\n", "a key of more than 20 parts"),
    "an inline key": (f"x = {{ {'a.' * 5000}a = 1 }}\n", "a key of more than 20 parts"),
    "brackets": (f"a = {'[' * 5000}\n", "nested too deeply"),
    "NUL": ("a = 1\0\n", "holds a NUL"),
    "size": ("# comment\n" * 5_000_000, "is larger than 1 MB"),
    "a pipe": (os.mkfifo, "is a pipe"),
    "zeros": ("/dev/zero", "is larger than 1 MB"),
    "a folder": (os.mkdir, "directory"),
}
SOME = ("digits", "a key", "zeros", "a pipe")
CASES = [(of, case) for of in ("sheet", "settings", "rules", "sidecar") for case in UNKIND]
CASES += [("instruments", case) for case in SOME]


def _make(path: Path, what: Any) -> None:
    if callable(what):
        what(path)
    elif what.startswith("/dev/"):
        path.symlink_to(what)
    else:
        path.write_text(what, encoding="utf-8")


@pytest.fixture
def timed(cli_main: Command) -> Iterator[Command]:
    """Run the command line in this process, and be told that it took too long."""

    def run(*words: str) -> Any:
        start = time.perf_counter()
        done = cli_main(*words)
        assert time.perf_counter() - start < SOON
        return done

    yield run
    tables.use_folders([])


@pytest.mark.parametrize(("of", "case"), CASES)
def test_an_unkind_file_is_refused_soon(
    timed: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, of: str, case: str
) -> None:
    what, said = UNKIND[case]
    path = tmp_path / "unkind.toml"
    if of == "sidecar":
        (tmp_path / "ours").mkdir()
        path = tmp_path / "ours" / "our-pull.toml"
        (tmp_path / "ours" / "our-pull.csv").write_text("a,b\n", encoding="utf-8")
        (tmp_path / "shop.toml").write_text('tables = ["ours"]\n', encoding="utf-8")
    _make(path, what)
    if of == "settings":
        monkeypatch.setenv(settings.CONFIG, str(path))
        done = timed(*PULL)
    elif of == "instruments":
        (tmp_path / "config.toml").write_text('instruments_files = ["unkind.toml"]\n')
        monkeypatch.setenv(settings.CONFIG, str(tmp_path / "config.toml"))
        done = timed(*PULL)
    else:
        done = timed(*{"sheet": ("job", str(path)), "rules": ("rules", str(path)),
                       "sidecar": ("rules", str(tmp_path / "shop.toml"))}[of])  # fmt: skip
    assert (done.status, done.out) == (2, ""), done.err
    assert said.casefold() in " ".join(done.err.split()).casefold()
    assert "defect" not in done.err


def test_a_large_table_is_refused_and_large_readings_beside_plugins_are_no_matter(
    timed: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "plugins").mkdir()
    hook = "from wirecalc import hookimpl\n@hookimpl\ndef wirecalc_tables():\n    return []\n"
    (tmp_path / "plugins" / "ours.py").write_text(hook)
    (tmp_path / "plugins" / "log.csv").write_text("t_s,current_A\n" + "0,1\n" * 2_000_000)
    (tmp_path / "config.toml").write_text('plugin_folder = "plugins"\n')
    monkeypatch.setenv(settings.CONFIG, str(tmp_path / "config.toml"))
    assert timed(*PULL).status == 0
    (tmp_path / "ours").mkdir()
    (tmp_path / "ours" / "our-pull.csv").write_text("0,1\n" * 2_000_000)
    (tmp_path / "ours" / "our-pull.toml").write_text(
        f'{SIDECAR}title="t"\npurpose="p"\nnot_for="n"\nchecked="c"\nkey=["awg"]\n'
        '[sources.s]\ntitle="t"\n[columns.awg]\ntype="gauge"\n'
    )
    (tmp_path / "shop.toml").write_text('tables = ["ours"]\n')
    done = timed("rules", str(tmp_path / "shop.toml"))
    assert (done.status, done.out) == (2, "")
    assert "is larger than 5 MB" in done.err


def test_a_path_with_a_nul_in_a_settings_file_is_said(
    cli_main: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "config.toml"
    path.write_text('instruments_files = ["a\\u0000b"]\n', encoding="utf-8")
    monkeypatch.setenv(settings.CONFIG, str(path))
    done = cli_main(*PULL)
    assert (done.status, done.out) == (2, "")
    assert "write a path that can be there" in done.err


@pytest.mark.parametrize("name", ["pull", "trace", "pull-batch"])
def test_a_file_of_readings_without_an_end_is_refused_soon(timed: Command, name: str) -> None:
    words = {"pull": ("batch", "pull", "/dev/zero"),
             "trace": ("trace", "--recording", "/dev/zero"),
             "pull-batch": ("pull-batch", "--wire", "18 AWG", "--terminal", "ring",
                            "--readings", "/dev/zero")}[name]  # fmt: skip
    done = timed(*words)
    assert (done.status, done.out) == (2, "")
    assert "defect" not in done.err


@pytest.mark.parametrize(
    "words",
    [
        (*PULL, "--output", ""),
        (*PULL, "--chart", ""),
        ("job", "x.toml", "--output", ""),
        ("batch", "pull", "x.csv", "--summary", ""),
        ("tables", "--output", ""),
        ("drill", "pull", "--output", ""),
        ("new-plugin", "shop-bench", "--output", ""),
    ],
)
def test_an_empty_name_of_a_file_is_refused_in_words(cli_main: Command, words: Any) -> None:
    done = cli_main(*words)
    assert (done.status, done.out) == (2, "")
    option = words[-2]
    assert f"{option}: is empty; name a file" in done.err or f"{option}: is empty; name" in done.err
