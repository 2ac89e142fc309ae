"""Plugins that are plain files, in a folder that the settings file names and nobody else."""

from __future__ import annotations

import importlib.util
import marshal
import os
import struct
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from .conftest import Outside
from .test_broken_plugins import calculation

Command = Callable[..., Any]
RUN = ("shelf-lift", "--current", "5 A")


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A trusted folder with one plugin, and a settings file beside it."""
    folder = tmp_path / "trusted"
    folder.mkdir(mode=0o755)
    (folder / "shelf.py").write_text(calculation("shelf_lift"), encoding="utf-8")
    (folder / "shelf.py").chmod(0o644)
    config = tmp_path / "config.toml"
    config.write_text('plugin_folder = "trusted"\n', encoding="utf-8")
    monkeypatch.setenv("WIRECALC_CONFIG", str(config))
    return folder


def refused(cli_main: Command) -> str:
    """Return why the plugin was refused, after seeing that nothing passes without its rules."""
    done = cli_main(*RUN)
    assert done.status == 2
    listed = cli_main("plugins", "--format", "json").json["plugins"]
    (plugin,) = [p for p in listed if p["name"] == "shelf"]
    assert plugin["state"] == "failed"
    pull = cli_main("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "24 lbf")
    assert pull.status == 3
    assert "plugin shelf" in pull.err
    assert cli_main("plugins", "--strict").status == 4
    reason: str = plugin["reason"]
    return reason


def test_a_file_is_a_plugin(cli_main: Command, folder: Path) -> None:
    done = cli_main(*RUN)
    assert (done.status, done.err) == (0, "")
    listed = cli_main("plugins", "--format", "json").json["plugins"]
    (plugin,) = [p for p in listed if p["name"] == "shelf"]
    assert (plugin["state"], plugin["distribution"]) == ("loaded", str(folder / "shelf.py"))
    assert cli_main(*RUN, "--only-plugins", "shelf").status == 0
    assert cli_main(*RUN, "--bundled-only").status == 2


def test_a_broken_file_is_named(cli_main: Command, folder: Path) -> None:
    (folder / "shelf.py").write_text("raise RuntimeError('in the file')\n", encoding="utf-8")
    assert "in the file" in refused(cli_main)


@pytest.mark.skipif(os.name != "posix", reason="modes are POSIX")
def test_a_folder_or_file_that_everybody_may_write_is_refused(
    cli_main: Command, folder: Path
) -> None:
    folder.chmod(0o777)
    assert "everybody may write" in refused(cli_main)
    folder.chmod(0o1777)
    assert "everybody may write" in refused(cli_main)
    folder.chmod(0o755)
    (folder / "shelf.py").chmod(0o646)
    assert "everybody may write" in refused(cli_main)


@pytest.mark.skipif(os.name != "posix", reason="modes are POSIX")
def test_a_link_is_judged_by_where_it_leads(
    cli_main: Command, folder: Path, tmp_path: Path
) -> None:
    open_place = tmp_path / "open"
    open_place.mkdir()
    open_place.chmod(0o777)
    (folder / "shelf.py").rename(open_place / "real.py")
    (folder / "shelf.py").symlink_to(open_place / "real.py")
    assert "everybody may write" in refused(cli_main)


@pytest.mark.skipif(os.name != "posix" or os.geteuid() != 0, reason="only root can give away")
def test_a_file_of_somebody_else_is_refused(cli_main: Command, folder: Path) -> None:
    os.chown(folder / "shelf.py", 12345, 12345)
    assert "belongs to somebody else" in refused(cli_main)


def test_a_folder_that_is_not_there_is_named(cli_main: Command, folder: Path) -> None:
    (folder / "shelf.py").unlink()
    folder.rmdir()
    done = cli_main("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "24 lbf")
    assert done.status == 3
    assert "No such file" in done.err


def test_the_current_folder_is_never_looked_into(
    cli_main: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("config.toml", ".config/wirecalc/config.toml", "plugins/shelf.py", "shelf.py"):
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text("raise RuntimeError('imported')", encoding="utf-8")
    (tmp_path / "home").mkdir()
    monkeypatch.delenv("WIRECALC_CONFIG")
    monkeypatch.setenv("HOME", str(tmp_path / "home"))
    monkeypatch.chdir(tmp_path)
    done = cli_main("plugins", "--format", "json")
    assert [p["name"] for p in done.json["plugins"]] == ["bundled"]


def test_the_settings_file_of_the_home_folder(
    cli_main: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    config = tmp_path / ".config" / "wirecalc" / "config.toml"
    config.parent.mkdir(parents=True)
    config.write_text("strict = 7\n", encoding="utf-8")
    monkeypatch.delenv("WIRECALC_CONFIG")
    monkeypatch.setenv("HOME", str(tmp_path))
    done = cli_main("plugins")
    assert done.status == 2
    assert "strict" in done.err
    rescued = cli_main("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "24 lbf",
                       "--bundled-only")  # fmt: skip
    assert rescued.status == 0
    assert "config.toml asks for: only bundled" in " ".join(rescued.out.split())
    assert cli_main("--version").status == 0


def test_a_link_to_nowhere_is_named(cli_main: Command, folder: Path) -> None:
    (folder / "lost.py").symlink_to(folder / "nowhere.py")
    done = cli_main(*RUN)
    assert done.status == 3
    (line,) = done.complaints
    assert f"plugin lost of {folder / 'lost.py'} was not loaded" in line


def test_a_relative_path_or_link_to_the_current_folder_is_refused(
    cli_main: Command, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where a person happens to stand decides nothing; the whole path is a decision."""
    config = folder.parent / "config.toml"
    monkeypatch.chdir(folder)
    assert "current directory" in refused(cli_main)
    (folder.parent / "link").symlink_to(folder)
    config.write_text(f'plugin_folder = "{folder.parent / "link"}"\n', encoding="utf-8")
    assert "current directory" in refused(cli_main)
    config.write_text(f'plugin_folder = "{folder}"\n', encoding="utf-8")
    assert cli_main(*RUN).status == 0


@pytest.mark.skipif(os.name != "posix", reason="modes are POSIX")
def test_a_settings_file_that_everybody_may_write_names_no_trusted_folder(
    cli_main: Command, folder: Path
) -> None:
    (folder.parent / "config.toml").chmod(0o646)
    assert f"everybody may write to {folder.parent / 'config.toml'}" in refused(cli_main)


def test_nothing_compiled_is_read_or_left(
    command: Command, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A cache would be a second file to trust."""
    done = command(*RUN, env={"WIRECALC_CONFIG": str(folder.parent / "config.toml")})
    assert (done.status, done.err) == (0, "")
    assert [p.name for p in folder.iterdir()] == ["shelf.py"]
    cached = Path(importlib.util.cache_from_source(str(folder / "shelf.py")))
    cached.parent.mkdir()
    about = (folder / "shelf.py").stat()
    stamp = struct.pack(
        "<4sIII", importlib.util.MAGIC_NUMBER, 0, int(about.st_mtime), about.st_size
    )
    cached.write_bytes(stamp + marshal.dumps(compile("raise RuntimeError('cached')", "x", "exec")))
    done = command(*RUN, env={"WIRECALC_CONFIG": str(folder.parent / "config.toml")})
    assert (done.status, done.err) == (0, "")


def test_nothing_of_a_broken_file_stays(cli_main: Command, folder: Path) -> None:
    (folder / "shelf.py").write_text("half = 1\nraise RuntimeError('half')\n", encoding="utf-8")
    assert "half" in refused(cli_main)
    assert [n for n in sys.modules if n.endswith("shelf") and "folder" in n] == []


def test_the_folder_of_an_entry_point_name_is_no_way_around(
    plugged: Command, folder: Path, outside: Outside
) -> None:
    """A file and an installed plugin of one name are both refused."""
    outside.add("shelf", calculation("other"), "demo-shelf")
    done = plugged("pull", "--wire", "18 AWG", "--terminal", "ring", "--force", "24 lbf")
    assert done.status == 3
    assert len(done.complaints) == 2
    assert "shelf of demo-shelf 1.0" in done.complaints[0]
