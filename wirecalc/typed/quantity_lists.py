"""Several quantities in one text, parted by commas."""

from __future__ import annotations

import re

_SIZED = r"^\s*[<>]?[-+−]?[0-9.][0-9./ -]*[^0-9./ -]"  # a number and something behind it


def apart(text: str) -> list[str]:
    """Part a text at its commas or pluses, if each part has a unit and none an error."""
    parts = re.split("[,+]", text)
    alone = len(parts) == 1 or "±" in text or "+/-" in text or "+-" in text
    return [text] if alone or not all(re.search(_SIZED, part) for part in parts) else parts
