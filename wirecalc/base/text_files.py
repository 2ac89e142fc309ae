"""Reading a text file as people's editors write it, and TOML within what a person writes."""

from __future__ import annotations

import codecs
import re
import stat
from pathlib import Path
from typing import Any

from .errors import BadText

MOST_TOML = 1_000_000  # bytes; a sheet of a hundred checks has 20,000
MOST_TEXT = 5_000_000  # bytes of a table; reading so many takes a second
_MOST_HEAD = 65_536  # bytes of a first line
_MOST_PARTS = 20  # of a key; reading more of them takes ever longer
_PART = r"(?:[\w-]+|\"[^\"\n]*\"|'[^'\n]*')[ \t]*"
_LONG_KEY = re.compile(rf"(?:^|[\[{{,])[ \t]*(?:{_PART}\.[ \t]*){{{_MOST_PARTS}}}", re.MULTILINE)
_ESCAPED = r"write a path with / in place of \, or in single quotes"
_OF_SHELL = ("/dev/", "/proc/")  # a pipe there was opened by a shell, and has a writer


def read_content(path: Path, most: int = MOST_TEXT) -> bytes:
    """Return what stands in a file of at most so many bytes.

    Raises OSError where it cannot be read, and BadText for a pipe, for more, and for a name that
    no file can have.
    """
    try:
        if stat.S_ISFIFO(path.stat().st_mode) and not str(path).startswith(_OF_SHELL):
            raise BadText("is a pipe, and no file", "write a file first")
        with path.open("rb") as file:
            content = file.read(most + 1)
    except OSError:
        raise
    except ValueError as error:
        if isinstance(error, BadText):
            raise
        raise BadText("is no name of a file", "check the name") from None
    if len(content) > most:
        raise BadText(f"is larger than {most // 1_000_000} MB", "is it the right file?")
    return content


def read_text(path: Path, most: int = MOST_TEXT) -> str:
    """Return a file of text in UTF-8, without the mark that some editors put in front.

    Lines end alike, whatever system wrote them. Raises OSError where it cannot be read, and
    BadText where it is in another encoding or is no file of a person's.
    """
    return _decoded(read_content(path, most))


def read_head(path: Path) -> str:
    """Return the first line of a file of text, however large it is; raises as `read_text`."""
    if stat.S_ISREG(path.stat().st_mode):
        with path.open("rb") as file:
            return _decoded(file.readline(_MOST_HEAD)).partition("\n")[0]
    return read_text(path).partition("\n")[0]


def _decoded(content: bytes) -> str:
    try:
        return content.decode("utf-8-sig").replace("\r\n", "\n").replace("\r", "\n")
    except UnicodeDecodeError as error:
        of_two = content.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE))
        what = "it is in UTF-16" if of_two else f"byte {error.start} is not in UTF-8"
        raise BadText(what, "save it as UTF-8") from None


def toml_of(text: str) -> dict[str, Any]:
    """Return what a text in TOML says.

    Raises tomllib.TOMLDecodeError for what is no TOML, and BadText for what would take too long
    or what Python cannot hold.
    """
    import tomllib  # dear, and most runs read no TOML

    if "\0" in text:
        raise BadText("holds a NUL, and no text does", "is it the right file?")
    if _LONG_KEY.search(text):
        raise BadText(f"has a key of more than {_MOST_PARTS} parts", "a key has a few at most")
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        if re.search(r"Unescaped '\\'|Invalid hex value", str(error)):  # a path of Windows
            raise tomllib.TOMLDecodeError(f"{error}: {_ESCAPED}") from None
        raise
    except RecursionError:
        raise BadText("is nested too deeply", "a few levels are all that it needs") from None
    except ValueError:  # Python reads no longer one
        raise BadText("holds a number with too many digits", "write it as a text") from None


def turned(path: object) -> str:
    r"""Say what to write for a path with signs that a backslash in double quotes made.

    >>> turned("our/tables"), turned("our\tables")[:25]
    ('', 'a \\ in double quotes was ')
    """
    odd = any(0 < ord(sign) < 32 for sign in str(path))
    return f"a \\ in double quotes was taken for another sign; {_ESCAPED}" if odd else ""


def read_toml(path: Path) -> dict[str, Any]:
    """Return what a file in TOML says; raises OSError, BadText, or tomllib.TOMLDecodeError."""
    return toml_of(read_text(path, MOST_TOML))
