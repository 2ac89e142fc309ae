"""Names and texts that others hand over: plain ones, of a length that somebody can read.

A class of text of a plugin's own could answer what it likes wherever its text is shown, and a text
of megabytes would take minutes and drown the rest.
"""

from __future__ import annotations

LONGEST_NAME = 200  # characters of the name of an item, a unit or a rule
LONGEST_TEXT = 10_000  # of what is said about it


def wrong_text(value: object, most: int = LONGEST_TEXT) -> str:
    """Say what is wrong with what is to be a text; nothing where it is one.

    >>> wrong_text("wire in the barrel"), wrong_text("x" * 201, 200)
    ('', 'has 201 characters, and 200 are the most')
    """
    if type(value) is str:
        there = len(value)
        return f"has {there} characters, and {most} are the most" if there > most else ""
    if isinstance(value, str):
        return f"is a {type(value).__name__}, and no plain text"
    return f"is {type(value).__name__} and no text"


def is_text(value: object, most: int = LONGEST_TEXT) -> bool:
    """Whether it is a plain text of at most so many characters."""
    return type(value) is str and len(value) <= most
