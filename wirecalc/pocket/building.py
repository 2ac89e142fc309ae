"""Writes the one file: runtime, packages, forms and pages, put into a page without any fetch."""

from __future__ import annotations

import base64
import gzip
import html
import json
from collections.abc import Iterator, Mapping, Sequence
from importlib import resources
from itertools import chain
from pathlib import Path
from typing import Any, NamedTuple

from ..plugging.settings import Settings
from ..version import VERSION
from . import bytecode, runtime, shop
from .installed import archive, packages, packed, zipped

SCRIPTS = ("element.js", "python.js", "fields.js", "result.js", "job.js", "pulls.js", "start.js")
# what is linked into the runtime, with its licence (from memory but for the first two)
_INSIDE = (
    ("Pyodide", runtime.VERSION, "MPL-2.0"),
    ("Python and its standard library", "3.13.2", "PSF-2.0"),
    ("Emscripten and musl", "4.0.9", "MIT"),
    ("zlib", "", "Zlib"),
    ("bzip2", "", "bzip2-1.0.6"),
    ("libffi", "", "MIT"),
    ("HACL*", "", "MIT or Apache-2.0"),
    ("expat", "", "MIT"),
    ("libmpdec", "", "BSD-2-Clause"),
)


class Asked(NamedTuple):
    """What is asked of the file: its last day, the day on which it is built, a stock list.

    `node` is the program that makes bytecode for it, empty where there is none.
    """

    ends: str
    today: str
    stock: Path | None = None
    node: str = ""


class Built(NamedTuple):
    """The page, and whether what it begins with is bytecode in it."""

    page: str
    compiled: bool


def build(
    files: Mapping[str, bytes],
    settings: Settings,
    calculations: Sequence[Mapping[str, Any]],
    about: Mapping[str, Any],
    asked: Asked,
) -> Built:
    """Return the page. `files` is the runtime, `calculations` what the forms show.

    Raises BadInput for a plugin or a shop's file that cannot be embedded.
    """
    dists = packages()
    archives = bytecode.made(files, archive(dists), asked.node)
    stock = list(shop.stock(asked.stock))
    known = {
        "version": VERSION,
        "built": asked.today,
        "ends": asked.ends,
        "files": [f"/{name}" for name, _ in stock],
        "settings": shop.settings_name(settings),
        "calculations": calculations,
        "packages": [*map(list, _INSIDE), *([p.name, p.version, p.licence] for p in packed(dists))],
        **about,
    }
    parts = {
        "runtime-script": files["pyodide.asm.js"] + b"\n;" + files["pyodide.js"],
        "runtime-wasm": files["pyodide.asm.wasm"],
        "runtime-lock": _lock(files["pyodide-lock.json"]),
        "library": archives.library,
        "packages": archives.packages,
        "shop": zipped(chain(shop.files(settings), stock)),
    }
    return Built(_page(known, parts), archives.compiled)


def _lock(content: bytes) -> bytes:
    """Return the runtime's list of packages without any: nothing is loaded from elsewhere."""
    return json.dumps({**json.loads(content), "packages": {}}).encode()


def _page(known: Mapping[str, Any], parts: Mapping[str, bytes]) -> str:
    data = json.dumps(known, ensure_ascii=False, separators=(",", ":"))
    replaced = {
        "/* style */": _own("page.css"),
        "<!-- data -->": f'<script type="application/json" id="known">{_apart(data)}</script>',
        "<!-- parts -->": "\n".join(_embedded(parts)),
        "<!-- worker -->": f'<script type="text/plain" id="worker">{_own("worker.js")}</script>',
        "<!-- scripts -->": "\n".join(f"<script>{_own(name)}</script>" for name in SCRIPTS),
        "<!-- version -->": html.escape(VERSION),
    }
    page = _own("page.html")
    for mark, text in replaced.items():
        page = page.replace(mark, text)
    return page


def _embedded(parts: Mapping[str, bytes]) -> Iterator[str]:
    for name, content in parts.items():
        text = base64.b64encode(gzip.compress(content, 9, mtime=0)).decode()
        yield f'<script type="text/plain" id="{name}">{text}</script>'


def _apart(text: str) -> str:
    """Return JSON that ends no script: what a sheet or a plugin says never becomes HTML."""
    return text.replace("<", "\\u003c").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")


def _own(name: str) -> str:
    return resources.files(__package__).joinpath(name).read_text(encoding="utf-8")
