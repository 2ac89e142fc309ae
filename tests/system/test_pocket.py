"""The file for a browser as it is written: what is in it, and what cannot go into it."""

from __future__ import annotations

import base64
import datetime
import gzip
import importlib.util
import io
import marshal
import re
import tarfile
import zipfile
from importlib.metadata import Distribution
from pathlib import Path
from typing import Any

import pytest

from wirecalc.base.errors import BadInput
from wirecalc.cli import main
from wirecalc.plugging.settings import Settings, read
from wirecalc.pocket import building, bytecode, installed, runtime, shop, web

LIBRARY = {"json/__init__.py": b"LIMIT = 1\n", "this.py": b"", "zlib.txt": b"a"}
FILES = {name: f"{name} </script><!--".encode() for name in runtime._SUMS}
FILES["python_stdlib.zip"] = installed.zipped(iter(LIBRARY.items()))
FILES["pyodide-lock.json"] = b'{"info": {"python": "3.13.2"}, "packages": {"a": 1}}'
EVIL = "</script><script>alert(1)</script><!-- \u2028"


def built(**about: Any) -> str:
    said = {"rules": [], "plugins": [], "instruments": [], **about}
    return building.build(FILES, Settings(), [], said, building.Asked("", "2026-11-30")).page


def part(page: str, name: str) -> bytes:
    (text,) = re.findall(rf'<script type="text/plain" id="{name}">([^<]*)</script>', page)
    return gzip.decompress(base64.b64decode(text))


def unzipped(archive: bytes) -> dict[str, bytes]:
    files = zipfile.ZipFile(io.BytesIO(archive))
    return {name: files.read(name) for name in files.namelist()}


def test_what_is_embedded_comes_out_again() -> None:
    page = built()
    assert part(page, "runtime-wasm") == FILES["pyodide.asm.wasm"]
    assert unzipped(part(page, "library")) == LIBRARY
    assert b'"packages": {}' in part(page, "runtime-lock")
    names = zipfile.ZipFile(io.BytesIO(part(page, "packages"))).namelist()
    assert {"wirecalc/cli.py", "wirecalc_plugins/shelf.py", "pluggy/__init__.py"} <= set(names)
    assert [n for n in names if n.startswith("wirecalc-") and n.endswith("entry_points.txt")]
    assert [n for n in names if re.match(r"pluggy.*dist-info/.*LICENSE", n)]
    assert not [n for n in names if "__pycache__" in n or n.endswith((".so", ".pyc"))]


def test_what_is_loaded_before_an_answer_is_bytecode_and_a_plugin_keeps_its_source() -> None:
    shelf = {"wirecalc_plugins/shelf.py": b"pass\n", "wirecalc/cli.py": b"ENDS = 3\n"}
    found = unzipped(bytecode.compiled(installed.zipped(iter({**LIBRARY, **shelf}.items()))))
    made = {name for name in found if name.endswith(".pyc")}
    assert made == {"json/__init__.pyc", "wirecalc/cli.pyc"}
    assert not {name.removesuffix("c") for name in made} & set(found)
    assert found["wirecalc_plugins/shelf.py"] == b"pass\n"
    assert found["this.py"] == b""
    magic, flags, code = found["wirecalc/cli.pyc"][:4], found["wirecalc/cli.pyc"][4:8], 16
    assert magic == importlib.util.MAGIC_NUMBER
    assert flags == b"\x01\0\0\0"  # taken whatever day the source is of
    assert marshal.loads(found["wirecalc/cli.pyc"][code:]).co_consts[0] == 3


@pytest.mark.parametrize("node", ["", "false", "nowhere/node"])
def test_without_a_node_that_runs_it_is_written_from_source(node: str) -> None:
    found = bytecode.made(FILES, installed.zipped(iter(LIBRARY.items())), node)
    assert not found.compiled
    assert unzipped(found.library) == unzipped(found.packages) == LIBRARY


def test_the_same_packages_give_the_same_file() -> None:
    assert built() == built()


def test_no_text_of_a_shop_ends_a_script() -> None:
    page = built(plugins=[EVIL], instruments=[EVIL])
    assert "alert(1)</script>" not in page
    assert page.count("</script>") == len(re.findall(r"<script[ >]", page))


def test_nothing_is_fetched() -> None:
    page = built()
    (policy,) = re.findall(r'Content-Security-Policy" content="([^"]*)"', page)
    said = dict(p.strip().partition(" ")[::2] for p in policy.split(";"))
    assert said["default-src"] == said["connect-src"] == "'none'"
    assert "http" not in policy
    own = "".join(building._own(n) for n in (*building.SCRIPTS, "worker.js", "page.css"))
    outside = set(re.findall(r"https?://[^\"'\s]+", own))
    assert outside <= {"http://www.w3.org/2000/svg", "https://file.invalid/"}


def test_each_package_says_its_licence() -> None:
    said = {p.name.casefold(): p.licence for p in installed.packed(installed.packages())}
    assert said["wirecalc"] == said["pluggy"] == said["tabulate"] == "MIT"
    assert "BSD" in said["pint"]
    assert all(said.values())


def test_a_plugin_with_a_compiled_part_is_refused_by_name(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = tmp_path / "fast_bench-1.0.dist-info"
    folder.mkdir()
    (tmp_path / "fast.so").write_bytes(b"")
    (folder / "METADATA").write_text("Metadata-Version: 2.1\nName: fast-bench\nVersion: 1.0\n")
    (folder / "RECORD").write_text("fast.so,,\n")
    own = Distribution.at(folder)
    monkeypatch.setattr(installed, "_plugins", lambda: {"fast-bench"})
    there = installed.distribution
    monkeypatch.setattr(installed, "distribution", lambda n: own if n == "fast-bench" else there(n))
    monkeypatch.setattr(installed, "requirements", lambda _: [])
    with pytest.raises(BadInput, match=r"plugin fast-bench: fast-bench has a compiled part \(fast"):
        installed.packages()


def test_only_the_runtime_that_was_tried_is_taken(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    other = tmp_path / "other.tgz"
    with tarfile.open(other, "w:gz") as archive:
        for name in runtime._SUMS:
            info = tarfile.TarInfo(f"package/{name}")
            info.size = 4
            archive.addfile(info, io.BytesIO(b"else"))
    to = tmp_path / "w.html"
    assert main(["pocket", "--runtime", str(other), "--output", str(to)]) == 2
    said = capsys.readouterr().err
    assert "has another pyodide.asm.js than version 0.29.5" in said
    assert "npm pack pyodide@0.29.5" in said
    assert not to.exists()
    assert main(["pocket", "--runtime", str(tmp_path), "--output", str(to)]) == 2
    assert "has no pyodide.asm.js" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ([], "--output: is needed"),
        (["--output", "w.html"], "--runtime: is needed"),
        (["--output", "w.html", "--runtime", "nowhere.tgz"], "cannot be read"),
        (["drop", "--output", "w.html"], "drop'"),
        (["--output", "w.html", "--last-day", ""], "--last-day: '' is no date"),
        (["--output", "w.html", "--last-day", "2020-01-31"], "--last-day: 2020-01-31 is past"),
        (["--output", "w.html", "--last-day", "31.1.2099"], "such as 2027-06-30"),
        (["--output", "index.html", "--serve-worker"], "--output: index.html is written beside"),
        (["--output", "serve.js", "--serve-worker"], "--output: serve.js is written beside"),
    ],
)
def test_what_is_missing_is_said(
    words: list[str], says: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["pocket", *words]) == 2
    assert says in capsys.readouterr().err


def test_a_shops_files_lie_beside_its_settings(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "rules").mkdir()
    (tmp_path / "plugins").mkdir()
    (tmp_path / "rules" / "ours.toml").write_text('tables = ["our tables"]\n')
    (tmp_path / "rules" / "our tables").mkdir()
    (tmp_path / "rules" / "our tables" / "stock.csv").write_text("part\n")
    (tmp_path / "plugins" / "own.py").write_text("pass\n")
    own = tmp_path / "wirecalc.toml"
    own.write_text('rules_files = ["rules/ours.toml"]\nplugin_folder = "plugins"\n')
    monkeypatch.setenv("WIRECALC_CONFIG", str(own))
    names = [name for name, _ in shop.files(read())]
    assert names == [
        "shop/wirecalc.toml",
        "shop/rules/ours.toml",
        "shop/rules/our tables/stock.csv",
        "shop/plugins/own.py",
    ]
    assert not [n for n in names if str(tmp_path) in n]


def test_a_last_day_may_be_today(capsys: pytest.CaptureFixture[str]) -> None:
    today = datetime.date.today().isoformat()
    assert main(["pocket", "--output", "w.html", "--last-day", today]) == 2
    assert "--last-day" not in capsys.readouterr().err  # the runtime alone is missing


def test_a_web_address_gets_the_name_of_the_page_and_no_script_of_it() -> None:
    beside = dict(web.files_beside('our "van"</script>.html'))
    assert set(beside) == {"serve.js", "index.html"}
    for text in beside.values():
        assert "our%20%22van%22%3C/script%3E.html" in text
        assert "PAGE" not in text


def test_a_stock_list_goes_with_it(tmp_path: Path) -> None:
    (tmp_path / "van.csv").write_text("part,wire\n")
    said = {"rules": [], "plugins": [], "instruments": []}
    asked = building.Asked("", "2026-11-30", tmp_path / "van.csv")
    page = building.build(FILES, Settings(), [], said, asked).page
    assert zipfile.ZipFile(io.BytesIO(part(page, "shop"))).namelist() == ["shop/van.csv"]
    assert '"files":["/shop/van.csv"]' in page
    with pytest.raises(BadInput, match=r"gone\.csv cannot be read"):
        list(shop.stock(tmp_path / "gone.csv"))


def test_a_shops_file_from_elsewhere_is_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "here").mkdir()
    (tmp_path / "ours.toml").write_text("")
    own = tmp_path / "here" / "wirecalc.toml"
    own.write_text('rules_files = ["../ours.toml"]\n')
    monkeypatch.setenv("WIRECALC_CONFIG", str(own))
    with pytest.raises(BadInput, match="does not lie beside the settings file"):
        list(shop.files(read()))
