"""Reading a text file as people's editors write it."""

from __future__ import annotations

import codecs
from pathlib import Path

from .errors import BadText


def read_text(path: Path) -> str:
    """Return a file of text in UTF-8, without the mark that some editors put in front.

    Lines end alike, whatever system wrote them. Raises OSError where it cannot be read, and
    BadText where it is in another encoding.
    """
    content = path.read_bytes()
    try:
        return content.decode("utf-8-sig").replace("\r\n", "\n").replace("\r", "\n")
    except UnicodeDecodeError as error:
        of_two = content.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE))
        what = "it is in UTF-16" if of_two else f"byte {error.start} is not in UTF-8"
        raise BadText(what, "save it as UTF-8") from None
