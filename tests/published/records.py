"""Where the values of a published check come from, as data beside them.

    @source("UL 486A", "8th edition, 1991/1995", "section 12", seen="three copies")
    def test_minimum_of_a_ring(...): ...

Each check has one such record or more; test_records.py refuses one without. A record that many
checks have is named once in seen.py, and stands over each by its name.
"""

from __future__ import annotations

import pytest


def source(title: str, edition: str, where: str, *, seen: str) -> pytest.MarkDecorator:
    """A standard, code, handbook or log: title, edition, table or clause, and how it was seen."""
    return pytest.mark.record(f"{title}; {edition}; {where} ({seen})")


def practice(what: str) -> pytest.MarkDecorator:
    """A fact of the trade; `what` says which."""
    return pytest.mark.record(f"common practice, no source: {what}")


def memory(what: str) -> pytest.MarkDecorator:
    """A published value of which no copy was seen; `what` says of which title and clause."""
    return pytest.mark.record(f"from memory: {what}")


def independent(method: str) -> pytest.MarkDecorator:
    """A value worked out outside the project's code: by which law, library or solution."""
    return pytest.mark.record(f"independent: {method}")


def case_file(folder: str) -> pytest.MarkDecorator:
    """Rows that carry their own record, in files of this folder."""
    return pytest.mark.record(f"each row its own: {folder}")
