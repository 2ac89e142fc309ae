"""What an optional package is got with, where it can be had at all."""

from __future__ import annotations

import sys


def install(extra: str) -> str:
    """Say how to get what an extra of wirecalc installs.

    >>> install("analysis")
    "install it with: pip install 'wirecalc[analysis]'"
    """
    if sys.platform == "emscripten":  # a browser, where nothing can be installed
        return "it needs the computer: run it there"
    return f"install it with: pip install 'wirecalc[{extra}]'"
