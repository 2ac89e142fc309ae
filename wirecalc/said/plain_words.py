"""What a criterion is about, in words that a customer reads.

They are declared with the criterion (`plain="..."`), or stand in the table plain-words; a plugin
may bring a table plain-words-NAME. Where there are none, its name has to do.
"""

from __future__ import annotations

from ..published.tables import load, names
from .criteria import Criterion
from .findings import Judged

TABLE = "plain-words"


def plain_words(criterion: Criterion) -> str:
    """Return what a criterion is about, in plain words; empty where nobody declared any.

    Of a name such as "Ana: lowest pull, ul-486a" the words of "lowest pull" do, with whose it is.
    """
    if criterion.plain:
        return criterion.plain
    whose, _, what = criterion.name.rpartition(": ")
    while what:
        words = _declared(what)
        if words:
            return f"{words} ({whose})" if whose else words
        what = what.rpartition(", ")[0]
    return ""


def told(judged: Judged) -> str:
    """Return what a criterion comes to, for a customer: its plain words and the reason."""
    name = judged.criterion.name
    words = plain_words(judged.criterion) or name
    reason = judged.reason.removeprefix(f"{name} ")
    return f"{words}: {reason}" if reason else words


def _declared(name: str) -> str:
    tables = [n for n in names() if n == TABLE or n.startswith(f"{TABLE}-")]
    rows = (load(table).find(criterion=name) for table in tables)
    return next((row.text("words") for row in rows if row is not None), "")
