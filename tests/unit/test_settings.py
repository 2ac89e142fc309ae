"""The settings file, the environment and the switches."""

from __future__ import annotations

from pathlib import Path

import pytest

from wirecalc import BadInput
from wirecalc.plugging.settings import Settings, read


@pytest.fixture(autouse=True)
def nothing_set(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("HOME", str(tmp_path))
    for name in ("CONFIG", "BUNDLED_ONLY", "ONLY_PLUGINS", "RULES", "STRICT"):
        monkeypatch.delenv(f"WIRECALC_{name}", raising=False)


def written(folder: Path, text: str, monkeypatch: pytest.MonkeyPatch) -> Path:
    path = folder / "shop.toml"
    path.write_text(text, encoding="utf-8")
    monkeypatch.setenv("WIRECALC_CONFIG", str(path))
    return path


def test_nothing_is_settled_without_a_file() -> None:
    assert read() == Settings()


def test_a_file_is_read_and_its_paths_are_beside_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    text = (
        'plugin_folder = "plugins"\nrules_files = ["rules.toml", "/srv/more.toml"]\n'
        'only_plugins = ["shop-bench"]\nstrict = true\n'
    )
    path = written(tmp_path, text, monkeypatch)
    monkeypatch.chdir("/")
    assert read() == Settings(
        plugin_folder=tmp_path / "plugins",
        rules_files=(tmp_path / "rules.toml", Path("/srv/more.toml")),
        only_plugins=("shop-bench",),
        strict=True,
        only_from=f"{path}: only_plugins",
        folder_as_written="plugins",
        file=path,
    )


def test_switches_and_environment_come_first(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = written(tmp_path, 'only_plugins = ["one"]\n', monkeypatch)
    assert read(["pull", "--only-plugins", "two, three"]).only_plugins == ("two", "three")
    assert read(["--only-plugins=two"]).only_plugins == ("two",)
    monkeypatch.setenv("WIRECALC_ONLY_PLUGINS", "")
    assert read().only_plugins == ()
    assert read(["--strict"]).strict
    monkeypatch.setenv("WIRECALC_BUNDLED_ONLY", "yes")
    assert read() == Settings(
        only_plugins=(), only_from="WIRECALC_ONLY_PLUGINS", bundled_only=True, unread=path
    )


WRONG = {
    'plugin_foldre = "x"': "did you mean plugin_folder?",
    "plugin_folder = 7": "plugin_folder",
    'plugin_folder = ""': "plugin_folder",
    'rules_files = "rules.toml"': 'rules_files = ["rules.toml"]',
    "only_plugins = [1]": "only_plugins",
    'strict = "yes"': "strict = true",
    "strict": "is not TOML",
    'plugin_folder = "a\\u0000b"': "write a path that can be there",
    'rules_files = ["rules.toml", "a\\u0000b"]': "write a path that can be there",
    'plugin_folder = "~nobody-of-this-name/plugins"': "write a path that can be there",
    'rules_files = ["~nobody-of-this-name/rules.toml"]': "write a path that can be there",
    f"strict = {'[' * 5000}": "cannot be read",
}


@pytest.mark.parametrize("text", WRONG)
def test_a_wrong_file_is_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, text: str
) -> None:
    path = written(tmp_path, text, monkeypatch)
    with pytest.raises(BadInput) as caught:
        read()
    assert WRONG[text] in str(caught.value)
    assert str(path) in str(caught.value)


def test_a_file_that_is_named_and_not_there_is_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("WIRECALC_CONFIG", str(tmp_path / "none.toml"))
    with pytest.raises(BadInput, match=r"none\.toml"):
        read()


def test_a_switch_that_says_neither_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("WIRECALC_STRICT", "perhaps")
    with pytest.raises(BadInput, match="WIRECALC_STRICT"):
        read()


def test_a_file_that_depends_on_the_current_folder_is_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "shop.toml").write_text("strict = true\n", encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    for named in ("shop.toml", "./shop.toml"):
        monkeypatch.setenv("WIRECALC_CONFIG", named)
        with pytest.raises(BadInput, match="write the whole path"):
            read()
    monkeypatch.setenv("WIRECALC_CONFIG", "~/shop.toml")
    assert read().strict


@pytest.mark.parametrize("home", [".", ""])
def test_a_home_that_depends_on_the_current_folder_has_no_settings(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, home: str
) -> None:
    path = tmp_path / ".config" / "wirecalc" / "config.toml"
    path.parent.mkdir(parents=True)
    path.write_text("strict = true\n", encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("HOME", home)
    assert not read().strict


@pytest.mark.parametrize("content", [None, b"\xff", b"strict = "])
def test_a_file_that_cannot_be_used_says_who_names_it_and_how_to_go_on(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, content: bytes | None
) -> None:
    path = tmp_path / "shop.toml"
    if content is not None:
        path.write_bytes(content)
    monkeypatch.setenv("WIRECALC_CONFIG", str(path))
    with pytest.raises(BadInput) as caught:
        read()
    (problem,) = caught.value.problems
    assert problem.name == str(path)
    assert "WIRECALC_CONFIG names it" in problem.would_do
    assert "--bundled-only" in problem.would_do
    home = tmp_path / ".config" / "wirecalc" / "config.toml"
    home.parent.mkdir(parents=True)
    home.write_bytes(b"strict = ")
    monkeypatch.delenv("WIRECALC_CONFIG")
    with pytest.raises(BadInput) as caught:
        read()
    assert "WIRECALC_CONFIG" not in str(caught.value)
    assert "--bundled-only" in str(caught.value)
