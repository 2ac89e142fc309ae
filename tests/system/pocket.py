"""What is asked of the page here and in a browser, the runtime for it, and the file as built."""

from __future__ import annotations

import json
import os
from pathlib import Path
from typing import Any

import pytest

import wirecalc

ROOT = Path(__file__).parents[2]
RUNTIME = Path(os.environ["WIRECALC_RUNTIME"]) if os.environ.get("WIRECALC_RUNTIME") else None
NEEDS_RUNTIME = pytest.mark.skipif(
    RUNTIME is None, reason="needs Python for a browser: WIRECALC_RUNTIME names its folder"
)
SHEETS = sorted((ROOT / "docs/examples").glob("*.toml"))


def every_example() -> list[dict[str, Any]]:
    """Return a request of each worked example, and of each sheet of the docs."""
    known = wirecalc.build(bundled_only=True).calculations
    runs = [
        {"do": "answer", "name": name, "given": dict(known[name].calculation.example_inputs)}
        for name in known
    ]
    reports = [{"do": "report", "sheet": path.read_text(encoding="utf-8")} for path in SHEETS]
    return [*runs, *reports]


def answered(page: Any, request: dict[str, Any]) -> dict[str, Any]:
    """Return what a page answers."""
    done: dict[str, Any] = json.loads(page.do(json.dumps(request)))
    return done
