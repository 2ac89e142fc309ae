"""Python for a browser: the files of its npm package, of the one version that was tried."""

from __future__ import annotations

import hashlib
import io
import tarfile
from collections.abc import Mapping
from pathlib import Path

from ..base.errors import BadInput, Problem

VERSION = "0.29.5"  # 314.x refuses classic workers; 0.27.1 and 0.27.2 crash on iOS
GET = f"npm pack pyodide@{VERSION}"

# sha256 of each file that is embedded, of pyodide-0.29.5.tgz
_SUMS = {
    "pyodide.asm.js": "356c42f69e1695397e9d8670bd3c2e678248cde76e18bdae1731e848537b47d7",
    "pyodide.asm.wasm": "54309a5a2cfd757b1f0fdbc9093c92503f7b341500110329d932487183912718",
    "python_stdlib.zip": "831fd1e535084b972f87c6a35275de3d236efd5166f5e77ce89497710635e73c",
    "pyodide.js": "7f832a350240263d9946a9c3c877f7bcdab6c37d6dc65f72cd3be5905dca62dd",
    "pyodide-lock.json": "14d2c2dba101277999e17135e653d8f15389ad1437f53eae213bf0c3cdff723d",
}
_MOST = 50_000_000  # bytes of one file; the largest has 8.6 million


def read(path: Path) -> Mapping[str, bytes]:
    """Return the files of the runtime by name, from its unpacked folder or its .tgz.

    Raises BadInput where they are not those that were tried.
    """
    try:
        files = _unpacked(path) if path.is_dir() else _packed(path.read_bytes())
    except (OSError, tarfile.TarError) as error:
        raise BadInput([_problem(path, f"cannot be read ({error})")]) from None
    for name, sum_ in _SUMS.items():
        if name not in files:
            raise BadInput([_problem(path, f"has no {name}")])
        if hashlib.sha256(files[name]).hexdigest() != sum_:
            raise BadInput([_problem(path, f"has another {name} than version {VERSION}")])
    return files


def _problem(path: Path, wrong: str) -> Problem:
    how = f"{GET} gets the file pyodide-{VERSION}.tgz; name that, or its unpacked folder"
    return Problem(f"--runtime {path}", wrong, how)


def _unpacked(folder: Path) -> dict[str, bytes]:
    inner = folder / "package"
    here = inner if inner.is_dir() else folder
    there = [here / name for name in _SUMS if (here / name).is_file()]
    return {path.name: path.read_bytes() for path in there if path.stat().st_size <= _MOST}


def _packed(content: bytes) -> dict[str, bytes]:
    found = {}
    with tarfile.open(fileobj=io.BytesIO(content), mode="r:gz") as archive:
        for member in archive:
            name = member.name.removeprefix("package/")
            if name in _SUMS and member.isfile() and member.size <= _MOST:
                file = archive.extractfile(member)
                found[name] = file.read() if file else b""
    return found
